add_room(base
  SOURCES error.cpp quantity_text.cpp text.cpp version.cpp
  LIBRARIES fmt::fmt)
set_source_files_properties(src/base/version.cpp PROPERTIES
  COMPILE_DEFINITIONS SWEEPWRIGHT_VERSION="${PROJECT_VERSION}")
