#include "formats/flown_legs.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

TimePoint time_of_day(const FlownReport& report, Duration since_departure) {
  return report.flown.depart + std::chrono::seconds(std::llround(since_departure.count()));
}

/// Over all arcs, positive to the right.
double turned_degrees(const flight::FlownTurn& turn) {
  Angle sum;
  for (const flight::Arc& arc : turn.arcs) sum += arc.turned;
  return sum.degrees();
}

}  // namespace

std::string time_text(const FlownReport& report, Duration since_departure) {
  if (report.departure_is_known) return format_utc(time_of_day(report, since_departure));
  return "+" + format_duration(since_departure);
}

std::vector<Property> flown_leg_properties(const FlownReport& report, std::size_t i) {
  const flight::FlownLeg& leg = report.flown.legs.at(i);
  const PropertyValue drawn = leg.drawn ? PropertyValue(std::int64_t{*leg.drawn}) : PropertyValue();
  std::vector<Property> properties{{"number", static_cast<std::int64_t>(i + 1)},
                                   {"kind", std::string(pattern::name(leg.leg.kind))},
                                   {"drawn_leg", drawn},
                                   {"true_track_deg", leg.triangle.track.degrees()},
                                   {"heading_true_deg", leg.triangle.heading.degrees()}};
  if (const auto magnetic = leg.magnetic_heading()) {
    properties.push_back({"heading_magnetic_deg", magnetic->degrees()});
    properties.push_back({"variation_deg", leg.variation->degrees()});
  }
  properties.insert(properties.end(),
                    {{"wind_correction_deg", leg.triangle.wind_correction.degrees()},
                     {"ground_speed_mps", leg.triangle.ground_speed.metres_per_second()},
                     {"distance_m", leg.distance.metres()},
                     {"time_s", leg.time.count()},
                     {"running_distance_m", leg.running_distance.metres()},
                     {"running_time_s", leg.end.count()}});
  if (report.departure_is_known) {
    properties.push_back({"start_time", time_text(report, leg.start)});
    properties.push_back({"end_time", time_text(report, leg.end)});
  }
  if (const auto& flow = report.aircraft.fuel_flow) {
    const std::string unit(flight::key(flow->unit));
    properties.push_back({"fuel_" + unit, (*flow * (leg.end - leg.start)).amount});
    properties.push_back({"running_fuel_" + unit, (*flow * leg.end).amount});
  }
  return properties;
}

std::vector<Property> turn_properties(const flight::FlownTurn& turn) {
  return {{"form", std::string(flight::name(turn.form))},
          {"turned_deg", turned_degrees(turn)},
          {"radius_m", turn.radius.metres()},
          {"distance_m", turn.distance.metres()},
          {"time_s", turn.time.count()}};
}

std::string flown_leg_text(const FlownReport& report, std::size_t i) {
  const flight::FlownLeg& leg = report.flown.legs.at(i);
  std::string headings = format_direction(leg.triangle.heading);
  if (const auto magnetic = leg.magnetic_heading()) {
    headings += fmt::format(" ({})", format_direction(*magnetic));
  }
  std::string text = fmt::format(
      "{} leg {}: track {}, heading {}, ground speed {}, {}, {}", pattern::name(leg.leg.kind),
      i + 1, format_direction(leg.triangle.track), headings,
      format_speed(leg.triangle.ground_speed, SpeedUnit::knot, 0),
      format_length(leg.distance, LengthUnit::nautical_mile, 2), format_duration(leg.time));
  if (leg.turn) {
    text += fmt::format("; then a turn of {}", format_duration(leg.turn->time));
  }
  text += fmt::format("; total {}, {}",
                      format_length(leg.running_distance, LengthUnit::nautical_mile, 1),
                      time_text(report, leg.end));
  if (report.aircraft.fuel_flow) {
    text += ", " + flight::format_fuel(*report.aircraft.fuel_flow * leg.end, 1);
  }
  return text;
}

}  // namespace sweepwright::formats
