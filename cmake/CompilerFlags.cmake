# offplumb_flags: how every target here is compiled. Linked by the functions of Rooms.cmake.
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_POSITION_INDEPENDENT_CODE OFF)

# Emscripten calls ccache by itself (EM_COMPILER_WRAPPER), around the compiler it wraps.
find_program(OFFPLUMB_CCACHE ccache)
mark_as_advanced(OFFPLUMB_CCACHE)
if(OFFPLUMB_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER AND NOT EMSCRIPTEN)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${OFFPLUMB_CCACHE}")
endif()

add_library(offplumb_flags INTERFACE)
target_compile_features(offplumb_flags INTERFACE cxx_std_20)
# Every include is written from the repository root: #include "engine/tow/tree.h".
target_include_directories(offplumb_flags INTERFACE "${PROJECT_SOURCE_DIR}")

target_compile_options(offplumb_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow
  # A compiler that may fuse a*b+c gives other last digits on another machine.
  -ffp-contract=off)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # g++ 12 warns of overlap inside std::string where there is none (its bug 105651).
  target_compile_options(offplumb_flags INTERFACE -Wno-restrict)
  if(OFFPLUMB_SANITIZERS)
    # Its manual: sanitizers make this warning see what is not there (here, in std::regex).
    target_compile_options(offplumb_flags INTERFACE -Wno-maybe-uninitialized)
  endif()
endif()
if(OFFPLUMB_WARNINGS_AS_ERRORS)
  target_compile_options(offplumb_flags INTERFACE -Werror)
endif()

# WebAssembly's own exceptions: a fifth less code than with those made of calls out to JavaScript,
# and every browser since 2022 has them. -flto: what is never called is seen as such, a fourteenth less.
if(EMSCRIPTEN)
  target_compile_options(offplumb_flags INTERFACE -fwasm-exceptions -flto)
  target_link_options(offplumb_flags INTERFACE -fwasm-exceptions -flto)
endif()

# offplumb_small_in_page(TARGET): in WebAssembly its code is made small, not quick, since a phone has
# to fetch it. Not for the rooms that solve: Eigen made small is some fifty times slower.
function(offplumb_small_in_page target)
  if(EMSCRIPTEN)
    target_compile_options(${target} PRIVATE -Oz)
  endif()
endfunction()

if(OFFPLUMB_SANITIZERS)
  list(JOIN OFFPLUMB_SANITIZERS "," sanitizers)
  target_compile_options(offplumb_flags INTERFACE
    -O1 -g1 -fno-omit-frame-pointer -fsanitize=${sanitizers} -fno-sanitize-recover=all)
  target_link_options(offplumb_flags INTERFACE -fsanitize=${sanitizers})
endif()

if(OFFPLUMB_BUILD_FUZZ)
  target_compile_options(offplumb_flags INTERFACE -fsanitize=fuzzer-no-link)
endif()

# The TOML parser, headers only in every build, so that sanitizers and fuzzers see inside it. Its
# own assertions go: they stop the program on broken text such as "[[[[", which the lines after
# them refuse properly.
add_library(offplumb_toml INTERFACE)
target_compile_definitions(offplumb_toml INTERFACE TOML_HEADER_ONLY=1 "TOML_ASSERT=(void)")
