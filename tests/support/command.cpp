#include "support/command.hpp"

#include <sys/wait.h>

#include <cstdlib>
#include <stdexcept>

#include "support/files.hpp"

namespace sweepwright::test {

std::string shell_word(const std::string& text) {
  std::string word = "'";
  for (const char c : text) {
    if (c == '\'') {
      word += "'\\''";
    } else {
      word += c;
    }
  }
  return word + "'";
}

CommandResult run_command(const std::string& command, const std::filesystem::path& folder,
                          const std::map<std::string, std::string>& environment) {
  const TemporaryFolder kept;
  const std::filesystem::path output = kept.path() / "output";
  const std::filesystem::path error = kept.path() / "error";
  std::string line = "cd " + shell_word(folder.string()) + " && exec env -i";
  for (const auto& [name, value] : environment) line += " " + shell_word(name + "=" + value);
  line += " sh -c " + shell_word(command) + " >" + shell_word(output.string()) + " 2>" +
          shell_word(error.string()) + " </dev/null";
  const int ended = std::system(line.c_str());
  if (ended == -1) throw std::runtime_error("cannot run " + command);
  const int status = WIFSIGNALED(ended) ? 128 + WTERMSIG(ended) : WEXITSTATUS(ended);
  return {read_file(output), read_file(error), status};
}

}  // namespace sweepwright::test
