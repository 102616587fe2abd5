# Everything that the library and the command are built from. tests/CMakeLists.txt adds its own.
include(geographiclib)
find_package(Boost 1.74 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(EXPAT 2.4 REQUIRED)  # logs of any length, read element by element
find_package(fmt 9 REQUIRED)
find_package(pugixml 1.12 REQUIRED)
find_package(PkgConfig REQUIRED)
pkg_check_modules(pangocairo REQUIRED IMPORTED_TARGET pangocairo)  # with cairo: PDF, PNG
pkg_check_modules(tiff REQUIRED IMPORTED_TARGET libtiff-4>=4.5)  # per-file error handlers
find_package(PROJ 9 CONFIG REQUIRED)  # loaded at run time, not linked: docs/decisions/0004
find_package(CLI11 2.1 REQUIRED)
# libmd (SHA-256) has no CMake package: its presence is checked here, and it is linked as `md`.
find_library(SWEEPWRIGHT_LIBMD md REQUIRED)
mark_as_advanced(SWEEPWRIGHT_LIBMD)
