// Runs a shell command and keeps everything that it said.
#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace sweepwright::test {

struct CommandResult {
  std::string standard_output;
  std::string standard_error;
  /// Exit status; 128 + n when signal n ended the command.
  int status = 0;
};

/// Runs `command` by `sh` in `folder`, with nothing on standard input and with exactly the given
/// environment.
CommandResult run_command(const std::string& command, const std::filesystem::path& folder,
                          const std::map<std::string, std::string>& environment);

/// The text as one word of a shell command.
std::string shell_word(const std::string& text);

}  // namespace sweepwright::test
