# The same parts for WebAssembly, under the same target names: headers only, but for fmt.
# The system's include folder must stay off em++'s command line (it holds another C library), so
# a folder of links to just these headers takes its place.
set(deps "${CMAKE_BINARY_DIR}/deps")
file(MAKE_DIRECTORY "${deps}")
foreach(folder boost nlohmann tl toml++ eigen3)
  if(NOT EXISTS "/usr/include/${folder}")
    message(FATAL_ERROR "/usr/include/${folder} is missing: install what packages.txt lists")
  endif()
  file(CREATE_LINK "/usr/include/${folder}" "${deps}/${folder}" SYMBOLIC)
endforeach()

function(offplumb_header_part target)
  add_library(${target} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${target} INTERFACE ${ARGN})
endfunction()
offplumb_header_part(Eigen3::Eigen "${deps}/eigen3")
offplumb_header_part(Boost::headers "${deps}")
# Plain exceptions: those that collect what to tell bring string streams, and those all of
# std::locale, into the page.
target_compile_definitions(Boost::headers INTERFACE BOOST_EXCEPTION_DISABLE)
offplumb_header_part(tl::expected "${deps}")
offplumb_header_part(nlohmann_json::nlohmann_json "${deps}")
target_include_directories(offplumb_toml SYSTEM INTERFACE "${deps}")

# Text is put together by a small stand-in: see its comment.
add_library(offplumb_fmt STATIC "${PROJECT_SOURCE_DIR}/cmake/small_fmt/format.cpp")
target_include_directories(offplumb_fmt PUBLIC "${PROJECT_SOURCE_DIR}/cmake/small_fmt")
target_link_libraries(offplumb_fmt PRIVATE offplumb_flags)
offplumb_small_in_page(offplumb_fmt)

# GoogleTest from its sources: the installed library is native.
if(OFFPLUMB_BUILD_TESTS)
  set(sources /usr/src/googletest)
  add_library(offplumb_wasm_gtest STATIC
    ${sources}/googletest/src/gtest-all.cc ${sources}/googletest/src/gtest_main.cc
    ${sources}/googlemock/src/gmock-all.cc)
  target_compile_features(offplumb_wasm_gtest PUBLIC cxx_std_20)
  target_compile_options(offplumb_wasm_gtest PRIVATE -fwasm-exceptions)
  target_compile_definitions(offplumb_wasm_gtest PUBLIC GTEST_HAS_PTHREAD=0)
  target_include_directories(offplumb_wasm_gtest SYSTEM
    PUBLIC ${sources}/googletest/include ${sources}/googlemock/include
    PRIVATE ${sources}/googletest ${sources}/googlemock)
endif()
