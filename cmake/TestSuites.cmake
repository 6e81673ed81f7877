# offplumb_add_suite(LEAF LINK TARGETS...): one GoogleTest program of all *.cpp under tests/LEAF.
# Natively each of its tests is one test of ctest; as WebAssembly the program is one, since every
# start of Node.js costs more than a test. Files named *_property_test.cpp use RapidCheck, which
# is native only. Tests find the repository by OFFPLUMB_SOURCE_DIR.
include(GoogleTest)
set(OFFPLUMB_SUITES "" CACHE INTERNAL "The leaf folders that are spoken for")

function(offplumb_add_suite leaf)
  cmake_parse_arguments(arg "" "" "LINK" ${ARGN})
  set(OFFPLUMB_SUITES ${OFFPLUMB_SUITES} ${leaf} CACHE INTERNAL "")
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/${leaf}/*.cpp")
  # A suite inside this one's folder, named before it, keeps its files.
  foreach(other ${OFFPLUMB_SUITES})
    if(other MATCHES "^${leaf}/")
      list(FILTER sources EXCLUDE REGEX "/${other}/")
    endif()
  endforeach()
  if(EMSCRIPTEN)
    list(FILTER sources EXCLUDE REGEX "_property_test\\.cpp$")
  endif()
  if(NOT sources)
    offplumb_report_empty("tests/${leaf}")
    return()
  endif()

  string(REPLACE "/" "_" name ${leaf})
  string(REPLACE "/" "." dotted ${leaf})
  set(target test_${name})
  add_executable(${target} ${sources})
  target_compile_definitions(${target} PRIVATE OFFPLUMB_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  target_link_libraries(${target} PRIVATE ${arg_LINK} offplumb_flags)
  if(EMSCRIPTEN)
    offplumb_finish_wasm_suite(${target} ${dotted})
  else()
    offplumb_finish_native_suite(${target} ${dotted})
  endif()
endfunction()

function(offplumb_finish_native_suite target dotted)
  # Under sanitizers a test takes four times longer to compile optimised, and runs as well without;
  # what it tests stays optimised.
  if(OFFPLUMB_SANITIZERS)
    get_target_property(sources ${target} SOURCES)
    set_source_files_properties(${sources} PROPERTIES COMPILE_OPTIONS -O0)
  endif()
  target_link_libraries(${target} PRIVATE
    GTest::gtest GTest::gmock GTest::gtest_main rapidcheck rapidcheck_gtest)
  gtest_discover_tests(${target} DISCOVERY_MODE PRE_TEST DISCOVERY_TIMEOUT 60 NO_PRETTY_VALUES
    TEST_PREFIX "${OFFPLUMB_TEST_PREFIX}${dotted}." PROPERTIES TIMEOUT 600
    # Only the leak checker reads it: what others' libraries keep to the end.
    ENVIRONMENT "LSAN_OPTIONS=suppressions=${PROJECT_SOURCE_DIR}/tests/leaks.supp")
endfunction()

function(offplumb_finish_wasm_suite target dotted)
  target_link_libraries(${target} PRIVATE offplumb_wasm_gtest)
  # NODERAWFS: the tests see the real files, as they do natively. -O1 is for linking only, ten
  # times quicker than -O3; the code was compiled at -O3 before.
  target_link_options(${target} PRIVATE
    -sENVIRONMENT=node -sEXIT_RUNTIME=1 -sALLOW_MEMORY_GROWTH=1 -sNODERAWFS=1 -O1)
  add_test(NAME "${OFFPLUMB_TEST_PREFIX}${dotted}" COMMAND ${target})
  set_tests_properties("${OFFPLUMB_TEST_PREFIX}${dotted}" PROPERTIES TIMEOUT 300)
endfunction()

# A test file outside every suite would never run: refuse it.
function(offplumb_check_suites_cover_all_tests)
  file(GLOB_RECURSE files CONFIGURE_DEPENDS RELATIVE "${CMAKE_CURRENT_SOURCE_DIR}"
       "${CMAKE_CURRENT_SOURCE_DIR}/*_test.cpp")
  list(JOIN OFFPLUMB_SUITES "|" suites)
  foreach(file ${files})
    if(NOT file MATCHES "^(${suites})/")
      message(FATAL_ERROR "tests/${file} is in no suite of tests/CMakeLists.txt")
    endif()
  endforeach()
endfunction()
