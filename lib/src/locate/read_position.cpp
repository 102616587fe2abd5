#include "sweepwright/locate/read_position.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "locate/readers.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::locate {
namespace {

/// All readers; those whose readings are the likelier come first.
constexpr Reader kBearingReaders[] = {read_icao_bearing, read_bearing_distance};
constexpr Reader kReaders[] = {
    read_named_point,
    read_plain_quarter,
    read_latitude_longitude,
    read_lettered_quarter,
    read_utm,
    read_ups,
    read_mgrs,
    read_gars,
    read_georef,
    read_chart,
};

/// A word that says which notation follows. UTM and UPS are read with their word.
struct Prefix {
  std::string_view word;
  Reader reader;
};
constexpr Prefix kPrefixes[] = {
    {"MGRS", read_mgrs},         {"USNG", read_mgrs},           {"GARS", read_gars},
    {"GEOREF", read_georef},     {"CELL", read_either_quarter}, {"CHART", read_chart},
    {"POINT", read_named_point},
};

constexpr std::string_view kGeneralHint =
    "write latitude and longitude such as 38-15.00N 117-02.50W, or a name of UTM, MGRS, GARS or "
    "GEOREF";

/// Collects what the readers say.
class Verdict {
 public:
  void add(const Attempt& attempt) {
    if (const auto* readings = attempt.readings()) {
      for (const PositionReading& reading : *readings) add_reading(reading);
    } else if (attempt.claimed &&
               (!claimed_ || attempt.failure()->character > claimed_->character)) {
      claimed_ = *attempt.failure();
    }
  }
  bool understood() const { return !readings_.empty(); }
  const std::vector<PositionReading>& readings() const { return readings_; }
  /// The failure of the notation whose shape the text has; where several claim it, of the one that
  /// read furthest.
  const std::optional<TextFailure>& claimed_failure() const { return claimed_; }

 private:
  void add_reading(const PositionReading& reading) {
    const bool known = std::any_of(readings_.begin(), readings_.end(), [&](const auto& other) {
      return other.position == reading.position;
    });
    if (!known) readings_.push_back(reading);
  }
  std::vector<PositionReading> readings_;
  std::optional<TextFailure> claimed_;
};

bool has_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), is_ascii_digit);
}

/// A text without digits is a word that nobody knows, or a point with a slip in its name.
TextFailure unknown_name(const PlainText& text, const Options& options) {
  std::vector<std::string_view> names;
  for (const auto& [name, position] : options.points) names.push_back(name);
  if (!nearest_spellings(text.text(), names).empty()) {
    return {text.character(0), fmt::format("no point {} is defined", printable(text.text())),
            spelling_hint(text.text(), names)};
  }
  return {text.character(0), "not a point that is defined, and no notation is without digits",
          std::string(kGeneralHint)};
}

/// The reader that a leading word asks for, with the text after the word.
std::optional<std::pair<Prefix, PlainText>> asked_for(const PlainText& text) {
  for (const Prefix& prefix : kPrefixes) {
    const std::size_t size = prefix.word.size();
    if (!text.text().starts_with(prefix.word) || text.text().size() <= size) continue;
    if (std::string_view(" :=").find(text.text()[size]) == std::string_view::npos) continue;
    const std::size_t begin = text.text().find_first_not_of(" :=", size);
    return std::pair(prefix, text.part(begin));
  }
  return std::nullopt;
}

PositionOutcome read_as_asked(const Prefix& prefix, const PlainText& rest, const Options& options) {
  const Attempt attempt = rest.text().empty() ? not_mine() : prefix.reader(rest, options);
  if (attempt.readings() != nullptr || attempt.claimed) return attempt.outcome;
  return TextFailure{rest.character(0), fmt::format("what follows is not {}", prefix.word),
                     std::string(kGeneralHint)};
}

Error refusal(std::string_view typed, const TextFailure& failure) {
  return Error(ErrorCode::value,
               fmt::format("cannot read the position '{}': {}", printable(typed), failure.message),
               failure.hint, fmt::format("character {}", failure.character));
}

Error ambiguity(std::string_view typed, const std::vector<PositionReading>& readings) {
  std::string ways;
  for (const PositionReading& reading : readings) {
    ways += fmt::format("{}{} ({})", ways.empty() ? "" : ", or ", format_position(reading.position),
                        reading.read_as);
  }
  return Error(
      ErrorCode::value,
      fmt::format("'{}' can be read in {} ways: {}", printable(typed), readings.size(), ways),
      "write hemisphere letters, or name the notation", "character 1");
}

}  // namespace

Attempt read_latitude_longitude(const PlainText& text, const Options&) {
  return {parse_latitude_longitude(text), false};
}

PositionOutcome read_any(const PlainText& text, const Options& options, bool with_bearings) {
  if (const auto asked = asked_for(text)) {
    return read_as_asked(asked->first, asked->second, options);
  }
  Verdict verdict;
  if (with_bearings) {
    for (const Reader reader : kBearingReaders) verdict.add(reader(text, options));
  }
  for (const Reader reader : kReaders) verdict.add(reader(text, options));
  if (verdict.understood()) return verdict.readings();
  if (verdict.claimed_failure()) return *verdict.claimed_failure();
  if (!has_digit(text.text()) && !text.text().empty()) {
    return unknown_name(text, options);
  }
  return std::get<TextFailure>(parse_latitude_longitude(text));
}

Reading read_position(std::string_view typed, const Options& options) {
  if (typed.size() > kLongestText) {
    throw refusal(typed, {kLongestText + 1, "too long for one position", {}});
  }
  const PositionOutcome outcome = read_any(PlainText(typed).unwrapped(), options, true);
  if (const auto* failure = std::get_if<TextFailure>(&outcome)) throw refusal(typed, *failure);
  const auto& readings = std::get<std::vector<PositionReading>>(outcome);
  if (options.strict && readings.size() > 1) throw ambiguity(typed, readings);
  Reading reading{readings[0].position, readings[0].read_as, {}};
  for (std::size_t i = 1; i < readings.size(); ++i) {
    reading.other_readings.push_back({readings[i].position, readings[i].read_as});
  }
  return reading;
}

}  // namespace sweepwright::locate
