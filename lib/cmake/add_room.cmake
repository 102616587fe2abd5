# add_room(NAME SOURCES file... [LIBRARIES target...])
#
# Makes the object library sweepwright_room_NAME from lib/src/NAME and links it to the rooms that
# lib/rooms.txt allows it to use. All rooms together are the library `sweepwright`.
set(SWEEPWRIGHT_ROOMS_FILE ${CMAKE_CURRENT_LIST_DIR}/../rooms.txt)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${SWEEPWRIGHT_ROOMS_FILE})

function(add_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;LIBRARIES" ${ARGN})
  file(STRINGS ${SWEEPWRIGHT_ROOMS_FILE} line REGEX "^${name}:")
  if(NOT line)
    message(FATAL_ERROR "Room ${name} has no line in lib/rooms.txt")
  endif()
  string(REGEX REPLACE "^${name}: *" "" uses "${line}")
  string(REPLACE " " ";" uses "${uses}")
  list(TRANSFORM uses PREPEND sweepwright_room_)

  list(TRANSFORM ROOM_SOURCES PREPEND ${CMAKE_CURRENT_SOURCE_DIR}/src/${name}/)
  set(target sweepwright_room_${name})
  add_library(${target} OBJECT ${ROOM_SOURCES})
  target_include_directories(${target} PUBLIC ${CMAKE_CURRENT_SOURCE_DIR}/include
                             PRIVATE ${CMAKE_CURRENT_SOURCE_DIR}/src)
  target_link_libraries(${target} PUBLIC ${uses} ${ROOM_LIBRARIES} PRIVATE sweepwright_flags)
  set_target_properties(${target} PROPERTIES POSITION_INDEPENDENT_CODE ON)
  set_property(GLOBAL APPEND PROPERTY SWEEPWRIGHT_ROOM_TARGETS ${target})
endfunction()
