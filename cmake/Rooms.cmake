# How the rooms of the house become targets. Each room is one static library of all *.cpp in its
# folder; its CMakeLists.txt is a line or two.

# The engine's rooms in order: each may use those before it, never those after it.
# scripts/check-house reads the same line.
set(OFFPLUMB_ENGINE_ROOMS water tackle tow bottom sky learn plan)

# What an empty folder means: see OFFPLUMB_ALLOW_EMPTY_ROOMS in the root CMakeLists.txt.
function(offplumb_report_empty what)
  if(NOT OFFPLUMB_ALLOW_EMPTY_ROOMS)
    message(FATAL_ERROR "${what} holds no source")
  endif()
  message(STATUS "Left out, no source yet: ${what}")
endfunction()

# offplumb_add_library(TARGET SOURCES... LINK TARGETS...): one room. A room of headers only, or
# still empty, becomes an INTERFACE target, so that the rooms below it can link it all the same.
function(offplumb_add_library target)
  cmake_parse_arguments(arg "" "" "SOURCES;LINK" ${ARGN})
  if(arg_SOURCES)
    add_library(${target} STATIC ${arg_SOURCES})
    target_link_libraries(${target} PUBLIC offplumb_flags ${arg_LINK})
    # The prior stays as it is too: only -O3 sees that Boost's checks, with all of std::locale behind
    # them, cannot fail.
    if(NOT target MATCHES "^offplumb_(tow|learn)$")
      offplumb_small_in_page(${target})
    endif()
  else()
    offplumb_report_empty(${target})
    add_library(${target} INTERFACE)
    target_link_libraries(${target} INTERFACE offplumb_flags ${arg_LINK})
  endif()
endfunction()

# offplumb_add_engine_room(ROOM): offplumb_ROOM, linking the rooms before it and nothing else.
function(offplumb_add_engine_room room)
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/*.cpp")
  set(above "")
  foreach(earlier ${OFFPLUMB_ENGINE_ROOMS})
    if(earlier STREQUAL room)
      break()
    elseif(TARGET offplumb_${earlier})
      list(PREPEND above offplumb_${earlier})
    endif()
  endforeach()
  offplumb_add_library(offplumb_${room} SOURCES ${sources}
    LINK ${above} Eigen3::Eigen Boost::headers tl::expected offplumb_fmt)
  if(OFFPLUMB_BUILD_TESTS AND NOT EMSCRIPTEN AND sources)
    offplumb_add_link_check(offplumb_${room})
  endif()
endfunction()

# A program that takes the whole room and only the rooms above it: it does not link if any
# function of the room calls down into a later one.
function(offplumb_add_link_check target)
  set(main "${CMAKE_BINARY_DIR}/link_check.cpp")
  file(CONFIGURE OUTPUT "${main}" CONTENT "int main() { return 0; }\n")
  add_executable(link_check_${target} "${main}")
  target_link_libraries(link_check_${target} PRIVATE "$<LINK_LIBRARY:WHOLE_ARCHIVE,${target}>")
endfunction()

# offplumb_add_port(PORT LINK TARGETS...): offplumb_port_PORT.
function(offplumb_add_port port)
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/*.cpp")
  offplumb_add_library(offplumb_port_${port} SOURCES ${sources} LINK offplumb_answers ${ARGN})
endfunction()
