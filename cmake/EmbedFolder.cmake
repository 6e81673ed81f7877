# offplumb_embed_folder(TARGET FOLDER): puts the files of a page into a program, as the function
# PageAssets() of apps/server/rules/asset.h. Each with its media type, a hash of its content and,
# where that is smaller, a form compressed by gzip -9. All of this is done when the program is
# built, and again when a file of the folder changed, came or went.
#
# The same file is the script that does it:
#   cmake -DFOLDER=... -DOUTPUT=... -DGZIP=... -P EmbedFolder.cmake

function(offplumb_embed_folder target folder)
  find_program(OFFPLUMB_GZIP gzip REQUIRED)
  mark_as_advanced(OFFPLUMB_GZIP)
  set(script "${CMAKE_CURRENT_FUNCTION_LIST_FILE}")
  set(output "${CMAKE_CURRENT_BINARY_DIR}/${target}_assets")
  add_custom_command(OUTPUT "${output}/assets.cpp"
    COMMAND "${CMAKE_COMMAND}" "-DFOLDER=${folder}" "-DOUTPUT=${output}" "-DGZIP=${OFFPLUMB_GZIP}"
            -P "${script}"
    DEPENDS "${script}" DEPFILE "${output}/assets.d"
    COMMENT "Putting the page into ${target}" VERBATIM)
  target_sources(${target} PRIVATE "${output}/assets.cpp")
endfunction()

if(NOT CMAKE_SCRIPT_MODE_FILE)
  return()
endif()

set(type_html "text/html; charset=utf-8")
set(type_css "text/css; charset=utf-8")
set(type_js "text/javascript; charset=utf-8")
set(type_mjs "text/javascript; charset=utf-8")
set(type_txt "text/plain; charset=utf-8")
set(type_toml "text/plain; charset=utf-8")
set(type_json "application/json")
set(type_map "application/json")
set(type_webmanifest "application/manifest+json")
set(type_wasm "application/wasm")
set(type_pdf "application/pdf")
set(type_svg "image/svg+xml")
set(type_png "image/png")
set(type_ico "image/x-icon")

# The folder and its subfolders are listed too: they change when a file comes or goes.
function(write_depfile files)
  set(needed "${FOLDER}")
  foreach(file ${files})
    cmake_path(GET file PARENT_PATH parent)
    while(parent)
      list(APPEND needed "${FOLDER}/${parent}")
      cmake_path(GET parent PARENT_PATH parent)
    endwhile()
    list(APPEND needed "${FOLDER}/${file}")
  endforeach()
  list(REMOVE_DUPLICATES needed)
  list(TRANSFORM needed REPLACE " " "\\\\ ")
  list(JOIN needed " \\\n  " listed)
  string(REPLACE " " "\\ " made "${OUTPUT}/assets.cpp")
  file(WRITE "${OUTPUT}/assets.d" "${made}: \\\n  ${listed}\n")
endfunction()

# Sets `type` for a file, and stops at one that a browser would be told a wrong type of.
function(find_type file)
  cmake_path(GET file EXTENSION LAST_ONLY ending)
  string(REPLACE "." "" ending "${ending}")
  if(NOT file MATCHES "^[A-Za-z0-9._/-]+$")
    message(FATAL_ERROR "${file}: give it a name of letters, digits, dots, dashes and underscores")
  elseif(NOT DEFINED type_${ending})
    message(FATAL_ERROR "${file}: name the media type of .${ending} in cmake/EmbedFolder.cmake")
  endif()
  set(type "${type_${ending}}" PARENT_SCOPE)
endfunction()

# Sets `compressed` to the file that holds the gzip form; empty if that is not smaller.
function(compress file name)
  set(result "${OUTPUT}/${name}.gz")
  # -n: the same bytes each time, without the file's date.
  execute_process(COMMAND "${GZIP}" -9 -n -c "${file}" OUTPUT_FILE "${result}"
    COMMAND_ERROR_IS_FATAL ANY)
  file(SIZE "${file}" plain)
  file(SIZE "${result}" packed)
  if(NOT packed LESS plain)
    file(REMOVE "${result}")
    set(result "")
  endif()
  set(compressed "${result}" PARENT_SCOPE)
endfunction()

# Adds the bytes of a file to `data` and `names` under a name.
macro(add_bytes name file)
  string(APPEND data "  .global ${name}_begin, ${name}_end\n  .hidden ${name}_begin, ${name}_end\n"
    "${name}_begin: .incbin \"${file}\"\n${name}_end:\n")
  string(APPEND names "extern const char ${name}_begin[], ${name}_end[];\n")
endmacro()

if(NOT EXISTS "${FOLDER}/index.html")
  message(FATAL_ERROR "There is no page in ${FOLDER} yet. This builds it first:\n  ./run serve")
endif()
file(GLOB_RECURSE files RELATIVE "${FOLDER}" "${FOLDER}/*")
list(FILTER files EXCLUDE REGEX "(^|/)\\.")
list(SORT files)
file(MAKE_DIRECTORY "${OUTPUT}")
write_depfile("${files}")

set(data "")
set(names "")
set(rows "")
set(number 0)
foreach(file ${files})
  set(name offplumb_asset_${number})
  math(EXPR number "${number} + 1")
  find_type("${file}")
  compress("${FOLDER}/${file}" ${name})
  file(SHA256 "${FOLDER}/${file}" hash)
  string(SUBSTRING ${hash} 0 32 hash)
  add_bytes(${name} "${FOLDER}/${file}")
  set(gzip "{}")
  if(compressed)
    add_bytes(${name}_gzip "${compressed}")
    set(gzip "Between(${name}_gzip_begin, ${name}_gzip_end)")
  endif()
  string(APPEND rows "      Asset{\"/${file}\", \"${type}\", \"${hash}\",\n"
    "            Between(${name}_begin, ${name}_end),\n            ${gzip}},\n")
endforeach()

file(WRITE "${OUTPUT}/assets.cpp" "// Written by cmake/EmbedFolder.cmake when the program is built.
#include <array>
#include <cstddef>

#include \"apps/server/rules/asset.h\"

asm(R\"(
  .pushsection .rodata
${data}  .popsection
)\");

extern \"C\" {
${names}}

namespace offplumb::server {
namespace {

std::string_view Between(const char* begin, const char* end) {
  return {begin, static_cast<std::size_t>(end - begin)};
}

}  // namespace

std::span<const Asset> PageAssets() {
  static const std::array<Asset, ${number}> assets{
${rows}  };
  return assets;
}

}  // namespace offplumb::server
")
