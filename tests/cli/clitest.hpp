// Whole-command tests as text: `.clitest` files.
//
//   # A comment.
//   $ sweepwright locate "47 30.5N 011 15.2E"    a command for sh
//   > text           a line of its standard output
//   ! text           a line of its standard error
//   = 2              its exit status; 0 when there is no such line
//
// After `> ` or `! `, `...` stands for any number of lines, and `~REGEX` for a line that the
// ECMAScript regular expression matches as a whole. Standard output, standard error and exit status
// are all compared, so a command that should say nothing needs no line. What cannot be seen is made
// visible: a carriage return is `\r`, an escape `\e`, and output that does not end with a line end
// has the line `(no line end)` after it. Empty lines may stand anywhere; any other line is an
// error.
//
// The commands of a file run one after the other in the same folder, empty at first, with the built
// command on the PATH, LC_ALL=C, TZ=UTC, SOURCE_DATE_EPOCH=0, DATA (tests/cli/data) and DEMOS
// (demo-scenarios), and no other variables. In what they print, the paths of those two folders read
// `$DATA` and `$DEMOS`, and that of the folder itself `$PWD`.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::test {

/// One command and what it should do.
struct CommandCase {
  int line = 0;  ///< where it stands in its file
  std::string command;
  std::vector<std::string> standard_output;
  std::vector<std::string> standard_error;
  int status = 0;
};

/// The cases of a `.clitest` text. Throws std::runtime_error with `file` and the line for a line
/// that means nothing here, and when there is no case.
std::vector<CommandCase> parse_clitest(std::string_view text, const std::string& file);

/// The lines of a command's output, as they are compared.
std::vector<std::string> lines_of(std::string_view output);

/// Whether the lines are what is expected, with `...` and `~REGEX` in `expected`.
bool lines_match(const std::vector<std::string>& expected, const std::vector<std::string>& actual);

/// Where commands find things.
struct CommandPlaces {
  std::filesystem::path program_folder;  ///< holds the built command
  std::filesystem::path data;
  std::filesystem::path demos;
};

/// Runs the cases; returns what went wrong, for a person to read; empty when nothing did.
std::string failures(const std::vector<CommandCase>& cases, const std::string& file,
                     const CommandPlaces& places);

}  // namespace sweepwright::test
