// Turns an option's text into a value; errors name the option.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::cli {

template <typename Parse>
decltype(auto) option_value(std::string_view option, const std::string& text, Parse parse) {
  try {
    return parse(text);
  } catch (const Error& error) {
    throw error.at(option);
  }
}

/// The same for an option that may be absent: its text is empty.
template <typename Parse>
auto optional_value(std::string_view option, const std::string& text, Parse parse) {
  using Value = decltype(parse(text));
  return text.empty() ? std::optional<Value>()
                      : std::optional<Value>(option_value(option, text, parse));
}

/// A position; how it was read, and how it could also be read, goes to standard error.
Position position_option(std::string_view option, const std::string& text);

/// A direction of the legs. `45` and `45T` are true; a magnetic direction is refused, since the
/// command has no magnetic variation to turn it with.
TrueDirection parse_true_direction(const std::string& text);

}  // namespace sweepwright::cli
