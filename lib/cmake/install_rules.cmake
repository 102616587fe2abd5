# Installs the library, its headers, the command and the licence, and what
# find_package(sweepwright CONFIG) needs. tests/install proves that it works.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)
set(package ${CMAKE_INSTALL_LIBDIR}/cmake/sweepwright)
set(config ${CMAKE_CURRENT_BINARY_DIR}/sweepwright-config.cmake)
set(version ${CMAKE_CURRENT_BINARY_DIR}/sweepwright-config-version.cmake)

configure_package_config_file(lib/cmake/sweepwright-config.cmake.in ${config}
  INSTALL_DESTINATION ${package})
# Before version 1.0 a new minor version may change anything.
write_basic_package_version_file(${version} COMPATIBILITY SameMinorVersion)

install(TARGETS sweepwright EXPORT sweepwright-targets FILE_SET HEADERS)
install(TARGETS sweepwright_cli)
install(EXPORT sweepwright-targets NAMESPACE sweepwright:: DESTINATION ${package})
install(FILES ${config} ${version} lib/cmake/geographiclib.cmake DESTINATION ${package})
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
