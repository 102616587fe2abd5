#include "common/usage_error.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "sweepwright/base/text.hpp"

namespace sweepwright::cli {
namespace {

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    names.push_back(command->get_name());
  }
  return names;
}

std::string hint_for(const std::string& word, const std::vector<std::string>& choices,
                     const std::string& otherwise) {
  const std::vector<std::string_view> views(choices.begin(), choices.end());
  if (nearest_spellings(word, views).empty()) return otherwise;
  return spelling_hint(word, views);
}

}  // namespace

Error usage_error(const CLI::App& app, const CLI::ParseError& error) {
  const std::vector<CLI::App*> chosen = app.get_subcommands();
  const std::string help =
      chosen.empty() ? std::string("see sweepwright --help")
                     : fmt::format("see sweepwright {} --help", chosen.front()->get_name());
  // A slip in an option's name also leaves the option itself missing: the slip is the better news.
  const std::vector<std::string> rest = app.remaining(/*recurse=*/true);
  if (rest.empty()) {
    return Error(ErrorCode::usage, chosen.empty() ? "no command is given" : error.what(), help);
  }
  const std::string word = rest.front().substr(0, rest.front().find('='));
  if (chosen.empty() && !word.starts_with("-")) {
    return Error(ErrorCode::usage, fmt::format("there is no command '{}'", printable(word)),
                 hint_for(word, command_names(app), help));
  }
  return Error(ErrorCode::usage,
               fmt::format("'{}' is not an option or value here", printable(word)),
               hint_for(word, option_names(chosen.empty() ? app : *chosen.front()), help));
}

}  // namespace sweepwright::cli
