#include "formats/mission_reader_units.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>

#include "formats/mission_reader_terrain.hpp"
#include "formats/mission_values.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostUnits = 200;
constexpr std::size_t kMostRemarks = 20;
constexpr std::size_t kCallsignCharacters = 40;

/// In the order of plan::PatternChoice, which begins with `automatic`.
constexpr std::array<std::string_view, 5> kPatterns{"parallel", "creeping", "square", "sector",
                                                    "contour"};

sweep::Platform unit_kind(const JsonCursor& cursor) {
  const auto names = sweep::platform_names();
  return sweep::parse_platform(one_of({names.begin(), names.end()}, "a kind of unit")(cursor));
}

plan::PatternChoice pattern_kind(const JsonCursor& cursor) {
  const std::string name = one_of({kPatterns.begin(), kPatterns.end()}, "a search pattern")(cursor);
  const auto index = std::find(kPatterns.begin(), kPatterns.end(), name) - kPatterns.begin();
  return static_cast<plan::PatternChoice>(index + 1);
}

pattern::ContourOrder contour_order(const JsonCursor& cursor) {
  return pattern::parse_contour_order(
      one_of({"descending", "ascending"}, "an order of levels")(cursor));
}

struct GivenPattern {
  plan::PatternChoice kind = plan::PatternChoice::automatic;
  plan::PatternDetails details;
};

/// A name, or an object with the kind and its details.
GivenPattern given_pattern(const JsonCursor& cursor) {
  if (cursor.value().kind != JsonKind::object) return {pattern_kind(cursor), {}};
  JsonObject in(cursor);
  GivenPattern given;
  given.kind = in.required("kind", pattern_kind);
  given.details.first_track = in.optional("first_track", true_direction);
  given.details.height_step = in.optional("height_step", length(Least::above_zero, "10000ft"));
  given.details.order = in.optional("order", contour_order).value_or(given.details.order);
  const bool contour = given.kind == plan::PatternChoice::contour;
  for (const char* field : {"height_step", "order"}) {
    if (in.has(field) && !contour) {
      in.mistake(field, Error(ErrorCode::value, "only a contour search has levels",
                              "leave the field out, or write \"kind\": \"contour\""));
    }
  }
  if (in.has("first_track") && contour) {
    in.mistake("first_track", Error(ErrorCode::value, "a contour search follows the ground",
                                    "leave the field out"));
  }
  in.finish();
  return given;
}

struct GivenSweepWidth {
  Length width;
  std::string source;
  bool corrected = true;
};

GivenSweepWidth given_sweep_width(const JsonCursor& cursor) {
  JsonObject in(cursor);
  GivenSweepWidth given;
  given.width = in.required("width", length(Least::above_zero, "100NM"));
  given.source = in.required("source", long_text);
  given.corrected = in.optional("corrected", yes_or_no).value_or(true);
  in.finish();
  return given;
}

void check_search_height(const JsonObject& in, sweep::Platform kind) {
  if (!sweep::flies(kind) && in.has("search_height")) {
    in.mistake("search_height", Error(ErrorCode::value, "only aircraft have a search height",
                                      "leave the field out"));
  } else if (sweep::flies(kind) && !in.has("search_height")) {
    in.mistake("search_height", Error(ErrorCode::input, "the field 'search_height' is missing",
                                      "write the height above ground or water, such as \"500ft\""));
  }
}

/// Time in the area, or time away from the base with a reserve.
void read_endurance(JsonObject& in, plan::SearchUnit& unit) {
  unit.on_scene_endurance = in.optional("on_scene_endurance", duration(Least::above_zero, "240h"));
  const auto endurance = in.optional("endurance", duration(Least::above_zero, "240h"));
  const auto reserve = in.optional("reserve", duration(Least::zero, "240h"));
  unit.transit_speed = in.optional("transit_speed", speed(Least::above_zero, "1000kt"));
  if (endurance && reserve) unit.time_away = {*endurance, *reserve};
  if (in.has("on_scene_endurance") == in.has("endurance")) {
    in.mistake(
        "on_scene_endurance",
        Error(ErrorCode::input,
              in.has("endurance") ? "on_scene_endurance and endurance are both given"
                                  : "neither on_scene_endurance nor endurance is given",
              "write how long the unit can stay in the area (on_scene_endurance), or how long it "
              "can be away from its base (endurance) with its reserve"));
  } else if (in.has("endurance") != in.has("reserve")) {
    in.mistake("reserve",
               Error(ErrorCode::input,
                     in.has("reserve") ? "a reserve is given without an endurance"
                                       : "an endurance is given without a reserve",
                     "write both, such as \"endurance\": \"5h\", \"reserve\": \"45min\""));
  } else if (unit.time_away && unit.time_away->reserve >= unit.time_away->endurance) {
    in.mistake("reserve", Error(ErrorCode::value, "the reserve is not shorter than the endurance",
                                "check both times"));
  }
}

flight::FuelFlow fuel_flow(const JsonCursor& cursor) {
  return flight::parse_fuel_flow(cursor.text("fuel per hour in quotes, such as \"30kg/h\""));
}

/// A number of degrees with a unit behind it.
Reader<double> degrees(std::string_view unit, double most) {
  return [unit = std::string(unit), most](const JsonCursor& cursor) {
    const std::string wanted =
        fmt::format("write a number above 0, up to {}, and {}, such as 3{}", most, unit, unit);
    std::string_view text = cursor.text(wanted);
    const bool has_unit = text.ends_with(unit);
    if (has_unit) text.remove_suffix(unit.size());
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (!has_unit || error != std::errc() || end != text.data() + text.size() ||
        !(value > 0 && value <= most)) {
      throw Error(ErrorCode::value,
                  fmt::format("'{}' cannot be used", printable(cursor.value().text)), wanted);
    }
    return value;
  };
}

/// How the unit turns: at the standard rate when nothing is said.
void read_turning(JsonObject& in, plan::SearchUnit& unit) {
  const auto rate = in.optional("turn_rate", degrees("deg/s", 30));
  const auto bank = in.optional("bank", degrees("deg", 60));
  if (rate) unit.turning = flight::RateOfTurn::degrees_per_second(*rate);
  if (bank) unit.turning = flight::Bank{Angle::degrees(*bank)};
  if (in.has("turn_rate") && in.has("bank")) {
    in.mistake("bank",
               Error(ErrorCode::input, "turn_rate and bank are both given", "keep one of them"));
  }
}

plan::SearchUnit search_unit(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::SearchUnit unit;
  unit.platform = in.required("kind", unit_kind);
  const bool kind_known = in.sound();
  unit.callsign = in.required("callsign", line_of_text(kCallsignCharacters));
  unit.type = in.optional("type", short_text).value_or("");
  unit.leader = in.optional("leader", short_text).value_or("");
  unit.crew = in.optional("crew", whole_number(1, 1000));
  unit.search_speed = in.required("search_speed", speed(Least::above_zero, "1000kt"));
  unit.search_height = in.optional("search_height", length(Least::zero, "60000ft"));
  read_endurance(in, unit);
  unit.searches_at_night = in.optional("searches_at_night", yes_or_no).value_or(false);
  read_turning(in, unit);
  unit.fuel_flow = in.optional("fuel_flow", fuel_flow);
  if (const auto depart = in.optional("depart", local_time)) unit.depart = depart->time;
  read_heights(in, unit);
  unit.base = in.required("base", named_place);
  const GivenPattern pattern = in.optional("pattern", given_pattern).value_or(GivenPattern());
  unit.pattern = pattern.kind;
  unit.pattern_details = pattern.details;
  if (const auto given = in.optional("sweep_width", given_sweep_width)) {
    unit.sweep_width = given->width;
    unit.sweep_width_source = given->source;
    unit.sweep_width_is_corrected = given->corrected;
  }
  unit.fatigued = in.optional("fatigued", yes_or_no).value_or(false);
  if (unit.fatigued && unit.sweep_width && unit.sweep_width_is_corrected) {
    in.mistake("fatigued", Error(ErrorCode::value,
                                 "no factor is applied to a corrected sweep width, that for "
                                 "fatigue neither",
                                 "leave 'fatigued' out, or write \"corrected\": false beside an "
                                 "uncorrected width"));
  }
  unit.remarks = in.list("remarks", kMostRemarks, long_text);
  if (kind_known) check_search_height(in, unit.platform);
  in.finish();
  return unit;
}

}  // namespace

std::vector<plan::SearchUnit> search_units(const JsonCursor& cursor) {
  // Overlays and sheets are named after callsigns, and some disks do not tell `A` from `a`.
  std::vector<std::string> taken;
  return cursor.list(1, kMostUnits, [&](const JsonCursor& item) {
    plan::SearchUnit unit = search_unit(item);
    const std::string name = to_lower_ascii(unit.callsign);
    if (!name.empty() && std::find(taken.begin(), taken.end(), name) != taken.end()) {
      throw Error(ErrorCode::value,
                  fmt::format("another unit has the callsign '{}' too", printable(unit.callsign)),
                  "give each unit its own");
    }
    taken.push_back(name);
    return unit;
  });
}

}  // namespace sweepwright::formats
