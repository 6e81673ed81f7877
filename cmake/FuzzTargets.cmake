# offplumb_add_fuzzer(NAME): fuzz/NAME.cpp under libFuzzer, and a test that feeds it for a few
# seconds, starting from fuzz/corpus/NAME. What it finds on the way stays in the build folder.
set(OFFPLUMB_FUZZ_SECONDS 5 CACHE STRING "How long each fuzzer runs as a test")

function(offplumb_add_fuzzer name)
  set(target ${name})
  add_executable(${target} "${CMAKE_CURRENT_SOURCE_DIR}/${name}.cpp")
  target_link_libraries(${target} PRIVATE offplumb_answers offplumb_port_files)
  target_link_options(${target} PRIVATE -fsanitize=fuzzer)

  set(seeds "${CMAKE_CURRENT_SOURCE_DIR}/corpus/${name}")
  if(NOT IS_DIRECTORY "${seeds}")
    message(FATAL_ERROR "The fuzzer ${name} needs seeds to start from, in ${seeds}")
  endif()
  set(found "${CMAKE_CURRENT_BINARY_DIR}/found/${name}")
  file(MAKE_DIRECTORY "${found}")
  # A fixed seed, so that the same tree gives much the same run.
  add_test(NAME "${OFFPLUMB_TEST_PREFIX}${name}"
    COMMAND ${target} -seed=1 -max_total_time=${OFFPLUMB_FUZZ_SECONDS} -timeout=5
            -print_final_stats=1 "-artifact_prefix=${CMAKE_CURRENT_BINARY_DIR}/"
            "${found}" "${seeds}")
  set_tests_properties("${OFFPLUMB_TEST_PREFIX}${name}" PROPERTIES TIMEOUT 300)
endfunction()
