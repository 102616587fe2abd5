# Everything that the library and the command are built from. tests/CMakeLists.txt adds its own.
# Debian puts FindGeographicLib.cmake where CMake does not look by itself.
list(APPEND CMAKE_MODULE_PATH /usr/share/cmake/geographiclib)
find_package(GeographicLib REQUIRED)
find_package(Boost 1.74 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(fmt 9 REQUIRED)
find_package(pugixml 1.12 REQUIRED)
find_package(CLI11 2.1 REQUIRED)
