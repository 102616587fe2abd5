// OptionTexts: a command's options as typed, for a command of which each kind needs its own.
//
// Problem: with many kinds behind one command, an option that the kind does not use must not be
//   passed over in silence.
// Conventions: an option's value is read once, by needed() or optional(); refuse_unread() then
//   refuses what was typed and not read. Errors name the option.
#pragma once

#include <CLI/CLI.hpp>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "common/option_value.hpp"

namespace sweepwright::cli {

class OptionTexts {
 public:
  /// Declares an option, or a flag. The object must stay where it is while the command is parsed.
  void add(CLI::App& command, const std::string& option, const std::string& help,
           const std::string& type);
  void add_flag(CLI::App& command, const std::string& option, const std::string& help);

  /// True when it was typed. Does not count as reading it.
  bool has(const std::string& option) const { return !text(option).empty(); }

  /// True when the flag was typed.
  bool flag(const std::string& option) {
    read_.insert(option);
    return has(option);
  }

  /// The value; Error(usage) when it was not typed: `what` needs it.
  template <typename Parse>
  auto needed(const std::string& option, std::string_view what, Parse parse) {
    if (!has(option)) refuse_missing(option, what);
    return *optional(option, parse);
  }

  /// The value when it was typed.
  template <typename Parse>
  auto optional(const std::string& option, Parse parse) {
    read_.insert(option);
    return optional_value(option, text(option), parse);
  }

  /// A position, which says how it was read.
  Position position(const std::string& option, std::string_view what);

  /// Throws Error(usage) naming the options that were typed and that `what` does not use.
  void refuse_unread(std::string_view what) const;

 private:
  const std::string& text(const std::string& option) const { return texts_.at(option); }
  [[noreturn]] static void refuse_missing(const std::string& option, std::string_view what);

  std::map<std::string, std::string> texts_;
  std::set<std::string> read_;
};

}  // namespace sweepwright::cli
