# The target sweepwright_geographiclib. Used by our build and, installed, by programs that use ours.
if(NOT TARGET sweepwright_geographiclib)
  # Debian puts FindGeographicLib.cmake where CMake does not look by itself.
  list(APPEND CMAKE_MODULE_PATH /usr/share/cmake/geographiclib)
  find_package(GeographicLib REQUIRED)
  list(REMOVE_ITEM CMAKE_MODULE_PATH /usr/share/cmake/geographiclib)
  add_library(sweepwright_geographiclib INTERFACE IMPORTED GLOBAL)
  target_include_directories(sweepwright_geographiclib SYSTEM INTERFACE
    ${GeographicLib_INCLUDE_DIRS})
  target_link_libraries(sweepwright_geographiclib INTERFACE ${GeographicLib_LIBRARIES})
endif()
