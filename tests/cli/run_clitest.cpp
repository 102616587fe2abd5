// Runs one .clitest file: run_clitest FILE PROGRAM_FOLDER.
#include <cstdio>
#include <exception>
#include <string>

#include "cli/clitest.hpp"
#include "support/files.hpp"

int main(int count, char** arguments) {
  using namespace sweepwright::test;
  if (count != 3) {
    std::fputs("usage: run_clitest FILE PROGRAM_FOLDER\n", stderr);
    return 2;
  }
  try {
    const std::filesystem::path file = arguments[1];
    const CommandPlaces places{arguments[2], repository() / "tests/cli/data",
                               repository() / "demo-scenarios"};
    const std::string name = file.lexically_relative(repository()).string();
    const std::string report = failures(parse_clitest(read_file(file), name), name, places);
    std::fputs(report.c_str(), stdout);
    return report.empty() ? 0 : 1;
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  }
}
