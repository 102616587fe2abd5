// PROJ costs nothing until it is asked for, and its absence is told.
#include <dlfcn.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "support/command.hpp"
#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/reference/system.hpp"

namespace sweepwright::reference {
namespace {

using testing::HasSubstr;

/// Shared libraries that this program has in memory now.
std::string loaded_libraries() {
  std::ostringstream text;
  text << std::ifstream("/proc/self/maps").rdbuf();
  return text.str();
}

// Taken before any test runs.
const std::string kLoadedAtStart = loaded_libraries();
// In this variable, a run of this program is told to fail at PROJ.
constexpr const char* kInner = "SWEEPWRIGHT_TEST_WITHOUT_PROJ";

TEST(Loading, proj_comes_with_the_first_system) {
  EXPECT_THAT(kLoadedAtStart, HasSubstr("libc.so"));
  EXPECT_THAT(kLoadedAtStart, testing::Not(HasSubstr("libproj")));
  const System wgs84("EPSG:4326");
  EXPECT_THAT(loaded_libraries(), HasSubstr("libproj"));
}

/// Runs this test in a program of its own, which prints the error it meets.
std::string error_without_proj(const std::string& test,
                               std::map<std::string, std::string> environment) {
  environment[kInner] = "1";
  const std::string program = std::filesystem::read_symlink("/proc/self/exe").string();
  return test::run_command(test::shell_word(program) + " --gtest_filter=" + test, ".", environment)
      .standard_output;
}

void print_error_without_proj() {
  try {
    const System wgs84("EPSG:4326");
    std::cout << "no error\n";
  } catch (const Error& error) {
    std::cout << name(error.code()) << ": " << error.what() << '\n';
  }
}

TEST(Loading, a_computer_without_proj_is_told_what_to_install) {
  if (std::getenv(kInner)) return print_error_without_proj();
  const test::TemporaryFolder folder;
  for (const char* file : {"libproj.so.25", "libproj.so"}) {
    test::write_file(folder.path() / file, "not a library");
  }
  const std::string output =
      error_without_proj("Loading.a_computer_without_proj_is_told_what_to_install",
                         {{"LD_LIBRARY_PATH", folder.path().string()}});
  EXPECT_THAT(output, HasSubstr("impossible: other reference systems need PROJ"));
  EXPECT_THAT(output, HasSubstr("install PROJ"));
}

TEST(Loading, a_computer_without_projs_data_is_told_what_to_install) {
  if (std::getenv(kInner)) return print_error_without_proj();
  const test::TemporaryFolder folder;
  const std::string empty = folder.path().string();
  const std::string output =
      error_without_proj("Loading.a_computer_without_projs_data_is_told_what_to_install",
                         {{"PROJ_DATA", empty}, {"PROJ_LIB", empty}, {"HOME", empty}});
  EXPECT_THAT(output, HasSubstr("impossible: PROJ does not find its database"));
  EXPECT_THAT(output, HasSubstr("proj-data"));
}

}  // namespace
}  // namespace sweepwright::reference
