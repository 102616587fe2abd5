#include "commands/effort_units.hpp"

#include <fmt/format.h>

#include "common/option_value.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::cli {
namespace {

constexpr const char* kUnitForm =
    "write CALLSIGN,WIDTH,SPEED,HOURS, such as \"Lark 1,1NM,90kt,3h\", or with "
    "ENDURANCE,OUT,BACK,RESERVE in place of HOURS, such as \"Lark "
    "1,1NM,90kt,5h,30min,40min,45min\"";

std::vector<std::string> fields(const std::string& text) {
  std::vector<std::string> all(1);
  for (const char c : text) {
    if (c == ',') {
      all.emplace_back();
    } else {
      all.back() += c;
    }
  }
  for (std::string& field : all) field = std::string(trimmed(field));
  return all;
}

/// A time, or a distance and the ground speed: `40min`, `60NM/90kt`.
Duration parse_way(const std::string& text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string::npos) return parse_duration(text);
  return effort::transit_time(parse_length(text.substr(0, slash)),
                              parse_speed(text.substr(slash + 1)));
}

}  // namespace

effort::Unit parse_unit(const std::string& text) {
  const std::vector<std::string> part = fields(text);
  constexpr std::size_t kWithHours = 4;
  constexpr std::size_t kWithEndurance = 7;
  if ((part.size() != kWithHours && part.size() != kWithEndurance) || part[0].empty()) {
    throw Error(ErrorCode::value, fmt::format("'{}' is not a unit", printable(text)), kUnitForm);
  }
  effort::TimeAway away{.endurance = parse_duration(part[3])};
  if (part.size() == kWithEndurance) {
    away.way_out = parse_way(part[4]);
    away.way_back = parse_way(part[5]);
    away.reserve = parse_duration(part[6]);
  }
  effort::Unit unit = effort::make_unit(part[0], parse_length(part[1]), parse_speed(part[2]), away);
  effort::search_effort(unit);  // refuses a width or speed of 0
  return unit;
}

void UnitOptions::add_to(CLI::App& command) {
  command.add_option("--sweep-width", sweep_width_, "Sweep width of a single unit")
      ->type_name("LENGTH");
  command.add_option("--speed", speed_, "Search speed of a single unit")->type_name("SPEED");
  command
      .add_option("--hours", hours_,
                  "Time on scene of a single unit; 85 percent of it is spent searching")
      ->type_name("TIME");
  command
      .add_option("--unit", units_,
                  "One of several units: HOURS is its time on scene, or give ENDURANCE,OUT,BACK,"
                  "RESERVE; a way is a time or DISTANCE/GROUNDSPEED. May be given several times")
      ->type_name("CALLSIGN,WIDTH,SPEED,HOURS")
      ->take_all()
      ->expected(1);
  command.add_option("--least-leg", least_leg_, "Rectangles: no shorter leg")->type_name("LENGTH");
  command
      .add_option("--least-spacing", least_spacing_,
                  "Rectangles: no closer track spacing, such as the turn's diameter")
      ->type_name("LENGTH");
  command.add_option("--least-width", least_width_, "Rectangles: not narrower")
      ->type_name("LENGTH");
}

effort::Unit UnitOptions::single_unit(bool hours_wanted) const {
  for (const auto& [name, text] : {std::pair{"--sweep-width", sweep_width_},
                                   std::pair{"--speed", speed_}, std::pair{"--hours", hours_}}) {
    if (text.empty() && !(hours_wanted && name == std::string_view("--hours"))) {
      throw Error(ErrorCode::usage, fmt::format("{} is missing", name),
                  "give --sweep-width, --speed and --hours of one unit, or --unit for each of "
                  "several");
    }
  }
  if (hours_wanted && !hours_.empty()) {
    throw Error(ErrorCode::usage, "--wanted-pos works the hours out", "leave --hours out");
  }
  const effort::TimeAway away{
      .endurance =
          optional_value("--hours", hours_, parse_duration).value_or(std::chrono::hours(1))};
  effort::Unit unit =
      effort::make_unit("Unit 1", option_value("--sweep-width", sweep_width_, parse_length),
                        option_value("--speed", speed_, parse_speed), away);
  effort::search_effort(unit);
  return unit;
}

std::vector<effort::Unit> UnitOptions::units(bool hours_wanted) const {
  if (units_.empty()) return {single_unit(hours_wanted)};
  if (!sweep_width_.empty() || !speed_.empty() || !hours_.empty()) {
    throw Error(ErrorCode::usage, "--sweep-width, --speed and --hours are of a single unit",
                "name every unit with --unit");
  }
  std::vector<effort::Unit> units;
  for (const std::string& text : units_) {
    units.push_back(option_value("--unit", text, parse_unit));
    for (std::size_t i = 0; i + 1 < units.size(); ++i) {
      if (to_lower_ascii(units[i].callsign) != to_lower_ascii(units.back().callsign)) continue;
      throw Error(ErrorCode::value,
                  fmt::format("two units are called '{}'", printable(units.back().callsign)),
                  "give each a callsign of its own", "--unit");
    }
  }
  return units;
}

effort::FlyingLimits UnitOptions::limits() const {
  const auto limit = [](std::string_view option, const std::string& text) {
    return optional_value(option, text, parse_length).value_or(Length());
  };
  return {limit("--least-leg", least_leg_), limit("--least-spacing", least_spacing_),
          limit("--least-width", least_width_)};
}

}  // namespace sweepwright::cli
