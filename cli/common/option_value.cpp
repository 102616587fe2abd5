#include "common/option_value.hpp"

#include <fmt/format.h>

#include <variant>

#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::cli {

Position position_option(std::string_view option, const std::string& text) {
  const locate::Reading reading = option_value(
      option, text, [](const std::string& typed) { return locate::read_position(typed); });
  tell(fmt::format("{} read as {}", option, reading.read_as));
  for (const locate::OtherReading& other : reading.other_readings) {
    tell(fmt::format("{} could also be {}, read as {}", option, format_position(other.position),
                     other.read_as));
  }
  return reading.position;
}

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
