#include "common/option_texts.hpp"

#include <fmt/format.h>

namespace sweepwright::cli {

void OptionTexts::add(CLI::App& command, const std::string& option, const std::string& help,
                      const std::string& type) {
  command.add_option(option, texts_[option], help)->type_name(type);
}

void OptionTexts::add_flag(CLI::App& command, const std::string& option, const std::string& help) {
  std::string& text = texts_[option];
  command.add_flag_callback(
      option, [&text] { text = "yes"; }, help);
}

Position OptionTexts::position(const std::string& option, std::string_view what) {
  if (!has(option)) refuse_missing(option, what);
  read_.insert(option);
  return position_option(option, text(option));
}

void OptionTexts::refuse_missing(const std::string& option, std::string_view what) {
  throw Error(ErrorCode::usage, fmt::format("{} needs {}", what, option),
              fmt::format("add {}", option));
}

void OptionTexts::refuse_unread(std::string_view what) const {
  std::string unread;
  for (const auto& [option, typed] : texts_) {
    if (typed.empty() || read_.contains(option)) continue;
    unread += (unread.empty() ? "" : ", ") + option;
  }
  if (unread.empty()) return;
  throw Error(ErrorCode::usage, fmt::format("{} does not use {}", what, unread),
              fmt::format("leave out {}", unread));
}

}  // namespace sweepwright::cli
