#include "commands/pattern_flown.hpp"

#include <fmt/format.h>

#include <array>

#include "common/option_value.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/local_time.hpp"

namespace sweepwright::cli {
namespace {

[[noreturn]] void usage(std::string message, std::string hint) {
  throw Error(ErrorCode::usage, std::move(message), std::move(hint));
}

Angle parse_bank(const std::string& text) {
  return Angle::degrees(parse_number(text, "the bank in degrees"));
}

flight::RateOfTurn parse_rate(const std::string& text) {
  return flight::RateOfTurn::degrees_per_second(
      parse_number(text, "the rate of turn in degrees a second"));
}

flight::Turning turning(const FlownOptions& options, Speed airspeed) {
  if (!options.bank.empty() && !options.turn_rate.empty()) {
    usage("--bank and --turn-rate both say how the crew turns", "leave out one of them");
  }
  const auto checked = [&](flight::Turning turning) {
    flight::rate_of_turn(turning, airspeed);  // refuses what cannot be flown
    return turning;
  };
  if (!options.bank.empty()) {
    return option_value("--bank", options.bank, [&](const std::string& text) {
      return checked(flight::Bank{parse_bank(text)});
    });
  }
  if (!options.turn_rate.empty()) {
    return option_value("--turn-rate", options.turn_rate,
                        [&](const std::string& text) { return checked(parse_rate(text)); });
  }
  return flight::kStandardRate;
}

flight::RowOrder parse_row_order(const std::string& text) {
  constexpr std::array<std::string_view, 2> choices{"quickest", "drawn"};
  const std::string name = to_lower_ascii(text);
  if (name == choices[0]) return flight::RowOrder::quickest;
  if (name == choices[1]) return flight::RowOrder::drawn;
  throw Error(ErrorCode::value, fmt::format("there is no row order '{}'", printable(text)),
              spelling_hint(text, choices));
}

/// Fuel on board or endurance, and the reserve, each as fuel or as time.
std::optional<flight::EnduranceLimits> limits(const FlownOptions& options,
                                              const flight::Aircraft& aircraft) {
  const auto as_time = [&](const std::string& text) {
    // A time has no letters but h, m, i, n, s; fuel has a unit of its own.
    try {
      return parse_duration(text);
    } catch (const Error&) {
      if (!aircraft.fuel_flow) throw;
      return flight::parse_fuel(text) / *aircraft.fuel_flow;
    }
  };
  if (options.fuel.empty() && options.endurance.empty()) {
    if (!options.reserve.empty()) {
      usage("a reserve is left of the endurance, which is not given", "add --endurance or --fuel");
    }
    return std::nullopt;
  }
  if (!options.fuel.empty() && !options.endurance.empty()) {
    usage("--fuel and --endurance both say how long the crew can fly", "leave out one of them");
  }
  if (!options.fuel.empty() && !aircraft.fuel_flow) {
    usage("how long the fuel lasts depends on its flow", "add --fuel-flow");
  }
  if (options.base.empty()) usage("endurance needs a base to return to", "add --base");
  if (options.reserve.empty()) usage("the reserve is not given", "add --reserve; 0min for none");
  flight::EnduranceLimits limits;
  limits.endurance = options.fuel.empty()
                         ? option_value("--endurance", options.endurance, parse_duration)
                         : option_value("--fuel", options.fuel, [&](const std::string& text) {
                             return flight::parse_fuel(text) / *aircraft.fuel_flow;
                           });
  limits.reserve = option_value("--reserve", options.reserve, as_time);
  return limits;
}

}  // namespace

void FlownOptions::add_to(CLI::App& command) {
  command
      .add_option("--true-airspeed", true_airspeed,
                  "Fly the legs at this speed through the air, with wind and turns")
      ->type_name("SPEED");
  wind.add_to(command);
  command.add_option("--bank", bank, "Bank of turns, in degrees")->type_name("DEGREES");
  command
      .add_option("--turn-rate", turn_rate,
                  "Rate of turns in degrees a second; without it and --bank, 3")
      ->type_name("DEG_PER_S");
  command
      .add_option("--row-order", row_order,
                  "Rows too close for plain turns: in the quickest order, or as drawn")
      ->type_name("quickest|drawn")
      ->capture_default_str();
  command
      .add_option("--drift", drift,
                  "Fly relative to an object that drifts so: towards, true unless marked M")
      ->type_name("DIRECTION/SPEED");
  command.add_option("--depart", depart, "Departure from the base, else start of the search")
      ->type_name("TIME");
  command.add_option("--base", base, "Fly from there and return")->type_name("POSITION");
  command
      .add_option("--transit-airspeed", transit_airspeed,
                  "True airspeed from and to the base, when it differs")
      ->type_name("SPEED");
  command
      .add_option("--fuel-flow", fuel_flow, "Fuel used in an hour: 30kg/h, 60lb/h, 40L/h, 8USgal/h")
      ->type_name("AMOUNT/h");
  command.add_option("--fuel", fuel, "Usable fuel at departure")->type_name("AMOUNT");
  command
      .add_option("--endurance", endurance, "How long the usable fuel lasts, in place of --fuel")
      ->type_name("TIME");
  command.add_option("--reserve", reserve, "What must be left on return")->type_name("TIME|AMOUNT");
}

bool FlownOptions::is_asked_for() const {
  if (!true_airspeed.empty()) return true;
  const std::array<std::pair<std::string_view, bool>, 12> others{
      {{"--wind", wind.is_given()},
       {"--height", !wind.height.empty()},
       {"--bank", !bank.empty()},
       {"--turn-rate", !turn_rate.empty()},
       {"--drift", !drift.empty()},
       {"--depart", !depart.empty()},
       {"--base", !base.empty()},
       {"--transit-airspeed", !transit_airspeed.empty()},
       {"--fuel-flow", !fuel_flow.empty()},
       {"--fuel", !fuel.empty()},
       {"--endurance", !endurance.empty()},
       {"--reserve", !reserve.empty()}}};
  for (const auto& [name, given] : others) {
    if (given) {
      usage(fmt::format("{} says how the pattern is flown, but not how fast", name),
            "add --true-airspeed");
    }
  }
  return false;
}

TimePoint FlownOptions::departure(TimePoint now) const {
  const auto given = optional_value("--depart", depart, formats::parse_local_time);
  return given ? given->time : now;
}

flight::Wind FlownOptions::wind_at(Position place, TimePoint now) const {
  const TimePoint at = departure(now);
  return flight::to_wind(wind.field(place, at).at(wind.flight_height(), at));
}

std::optional<flight::Drift> FlownOptions::drift_at(Position place, TimePoint now) const {
  if (drift.empty()) return std::nullopt;
  const DirectionAndSpeed given = option_value("--drift", drift, [&](const std::string& text) {
    return parse_direction_and_speed(text, place, departure(now));
  });
  return flight::Drift{given.direction, given.speed};
}

formats::FlownReport make_flown_report(const FlownOptions& options, pattern::Pattern pattern,
                                       TimePoint now) {
  const Position place = commence_search_point(pattern);
  flight::Aircraft aircraft;
  aircraft.true_airspeed = option_value("--true-airspeed", options.true_airspeed, parse_speed);
  aircraft.transit_airspeed =
      optional_value("--transit-airspeed", options.transit_airspeed, parse_speed);
  aircraft.turning = turning(options, aircraft.true_airspeed);
  aircraft.fuel_flow = optional_value("--fuel-flow", options.fuel_flow, flight::parse_fuel_flow);

  flight::FlyOptions fly;
  fly.depart = options.departure(now);
  if (!options.base.empty()) fly.base = position_option("--base", options.base);
  fly.height = options.wind.flight_height();
  fly.order = option_value("--row-order", options.row_order, parse_row_order);
  fly.drift = options.drift_at(place, now);
  const flight::WindField wind = options.wind.field(place, fly.depart);
  formats::FlownReport report{.pattern = std::move(pattern),
                              .aircraft = aircraft,
                              .flown = {},
                              .departure_is_known = !options.depart.empty(),
                              .limits = limits(options, aircraft),
                              .endurance = {},
                              .light = {}};
  report.flown = flight::fly(report.pattern, aircraft, wind, fly);
  if (report.limits) {
    report.endurance = flight::endurance_use(report.flown, aircraft, wind, fly, *report.limits);
  }
  if (report.departure_is_known) report.light = flight::search_light(report.flown, place);
  return report;
}

}  // namespace sweepwright::cli
