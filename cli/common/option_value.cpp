#include "common/option_value.hpp"

#include <variant>

#include "sweepwright/base/text.hpp"

namespace sweepwright::cli {

TrueDirection parse_true_direction(const std::string& text) {
  const std::string_view shown = trimmed(text);
  const bool bare = !shown.empty() && (is_ascii_digit(shown.back()) || shown.back() == '.');
  const auto direction = parse_direction(bare ? std::string(shown) + "T" : text);
  if (const auto* true_direction = std::get_if<TrueDirection>(&direction)) return *true_direction;
  throw Error(
      ErrorCode::value, "'" + printable(text) + "' is magnetic",
      "give the true direction: add easterly variation to the magnetic direction, or subtract "
      "westerly");
}

}  // namespace sweepwright::cli
