# embed_data(ROOM file...)
#
# Builds data files into a room, so that the library needs no files at run time. Call it in the
# room's room.cmake after add_room(); each file is a path under lib/data:
#
#   include(embed_data)
#   add_room(sweep SOURCES tables.cpp)
#   embed_data(sweep sweep_width_land.csv)
#
# For each file, CMake writes into the build folder, and again whenever the file changes, a header and
# a source. The header is for the room's own .cpp files; it declares one function that returns the
# file's bytes, unchanged and never freed, named after the file without its last suffix (characters
# that cannot stand in a name become `_`):
#
#   #include "embedded/sweep_width_land.hpp"
#   std::string_view text = sweepwright::embedded::sweep_width_land();
#
# Two files whose names differ only in the last suffix cannot both be embedded.
if(CMAKE_SCRIPT_MODE_FILE)
  # Run at build time: cmake -DDATA=file -DNAME=name -DOUTPUT=file.cpp -P embed_data.cmake
  file(READ ${DATA} bytes HEX)
  string(LENGTH "${bytes}" digits)
  math(EXPR size "${digits} / 2")
  get_filename_component(file ${DATA} NAME)
  string(REGEX REPLACE "(..)" "'\\\\x\\1'," bytes "${bytes}")
  # Sixteen bytes on a line: `'\x00',` is seven characters.
  string(REPEAT "......." 16 line)
  string(REGEX REPLACE "(${line})" "\\1\n" bytes "${bytes}")
  file(WRITE ${OUTPUT}
"// Made from ${file} by lib/cmake/embed_data.cmake. Change that file, not this one.
#include \"embedded/${NAME}.hpp\"

namespace sweepwright::embedded {
namespace {
constexpr char kBytes[] = {
${bytes}'\\0'};
}  // namespace

std::string_view ${NAME}() { return {kBytes, ${size}}; }

}  // namespace sweepwright::embedded
")
  return()
endif()

include_guard(GLOBAL)
set(SWEEPWRIGHT_EMBED_SCRIPT ${CMAKE_CURRENT_LIST_FILE} CACHE INTERNAL "")

function(embed_data room)
  set(folder ${CMAKE_BINARY_DIR}/embedded_data)
  set(target sweepwright_room_${room})
  foreach(file ${ARGN})
    set(data ${CMAKE_CURRENT_SOURCE_DIR}/data/${file})
    if(NOT EXISTS ${data})
      message(FATAL_ERROR "embed_data(${room}): lib/data has no file ${file}")
    endif()
    get_filename_component(name ${file} NAME_WLE)
    string(MAKE_C_IDENTIFIER ${name} name)
    set(source ${folder}/embedded/${name}.cpp)
    set(header ${folder}/embedded/${name}.hpp)
    file(CONFIGURE OUTPUT ${header} @ONLY CONTENT
"// Made for lib/data/@file@ by lib/cmake/embed_data.cmake.
#pragma once

#include <string_view>

namespace sweepwright::embedded {

/// The bytes of lib/data/@file@.
std::string_view @name@();

}  // namespace sweepwright::embedded
")
    add_custom_command(OUTPUT ${source}
      COMMAND ${CMAKE_COMMAND} -DDATA=${data} -DNAME=${name} -DOUTPUT=${source}
              -P ${SWEEPWRIGHT_EMBED_SCRIPT}
      DEPENDS ${data} ${SWEEPWRIGHT_EMBED_SCRIPT} ${header}
      COMMENT "Embedding ${file}" VERBATIM)
    target_sources(${target} PRIVATE ${source})
  endforeach()
  target_include_directories(${target} PRIVATE ${folder})
endfunction()
