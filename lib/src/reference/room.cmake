# PROJ is loaded when it is first asked for, not linked (docs/decisions/0004): the build needs its
# header and the name of its shared library.
get_target_property(proj_configurations PROJ::proj IMPORTED_CONFIGURATIONS)
list(GET proj_configurations 0 proj_configuration)
get_target_property(proj_library PROJ::proj IMPORTED_SONAME_${proj_configuration})
if(NOT proj_library)
  message(FATAL_ERROR "PROJ is not a shared library here; the room `reference` needs one")
endif()
add_library(sweepwright_proj_header INTERFACE)
target_include_directories(sweepwright_proj_header SYSTEM INTERFACE
  $<TARGET_PROPERTY:PROJ::proj,INTERFACE_INCLUDE_DIRECTORIES>)

add_room(reference
  SOURCES coordinates_text.cpp proj_library.cpp shifts.cpp system.cpp system_info.cpp
  LIBRARIES fmt::fmt sweepwright_proj_header ${CMAKE_DL_LIBS})
set_source_files_properties(src/reference/proj_library.cpp PROPERTIES
  COMPILE_DEFINITIONS SWEEPWRIGHT_PROJ_LIBRARY="${proj_library}")
