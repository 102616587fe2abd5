#include "sweepwright/flight/flown_pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "flight/flight_log.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/corner.hpp"

namespace sweepwright::flight {
namespace {

/// Corners up to it are followed along the legs where there is no room to lead the turn. Level
/// lines have many short legs: a crew cuts their corners rather than loop at each. Own choice.
Angle followed_bend(pattern::Kind kind) {
  return kind == pattern::Kind::contour ? Angle::degrees(120) : kBend;
}

FlownPattern fly_in_order(const std::vector<LegToFly>& legs, const Aircraft& aircraft,
                          const WindField& wind, const FlyOptions& options, Angle bend) {
  FlightLog log(aircraft, wind, options, bend);
  if (options.base) log.fly_out(*options.base, legs.front().leg);
  log.fly_pattern(legs);
  if (options.base) log.fly_home(*options.base);
  return log.take();
}

bool is_loop(const FlownLeg& leg) {
  return !leg.joined && leg.turn &&
         (leg.turn->form == TurnForm::crossed || leg.turn->form == TurnForm::teardrop);
}

/// Skips of rows that are worth a try: those that just clear the turn, and half of all rows.
std::vector<int> skips_to_try(int rows, Length turn_diameter, Length spacing) {
  const int clear = static_cast<int>(std::min(std::ceil(turn_diameter / spacing), 1.0 * rows));
  std::vector<int> skips;
  for (const int skip : {clear, clear + 1, clear + 2, (rows + 1) / 2}) {
    const bool new_skip = std::find(skips.begin(), skips.end(), skip) == skips.end();
    if (skip >= 2 && 2 * skip <= rows + 1 && new_skip) skips.push_back(skip);
  }
  return skips;
}

/// True when the pattern is nothing but rows side by side.
bool is_ladder(pattern::Kind kind, const std::vector<LegToFly>& legs) {
  if (kind != pattern::Kind::parallel && kind != pattern::Kind::creeping) return false;
  return std::none_of(legs.begin(), legs.end(),
                      [](const LegToFly& leg) { return leg.leg.kind == pattern::LegKind::cross; });
}

/// Corners beyond kBend that are followed along the legs.
std::ptrdiff_t cut_corners(const FlownPattern& flown) {
  std::ptrdiff_t count = 0;
  for (std::size_t i = 1; i < flown.legs.size(); ++i) {
    const FlownLeg& before = flown.legs[i - 1];
    if (before.turn || !before.searching || !flown.legs[i].searching) continue;
    const Angle turn = turn_between(before.leg.line.end_track, flown.legs[i].leg.line.start_track);
    if (std::abs(turn.degrees()) > kBend.degrees()) ++count;
  }
  return count;
}

void add_magnetic(FlownPattern& flown, Length height, const magnetic::Model& model) {
  for (FlownLeg& leg : flown.legs) {
    const TimePoint start =
        flown.depart + std::chrono::duration_cast<std::chrono::seconds>(leg.start);
    leg.variation = magnetic::variation(leg.leg.from, start, height, model).angle;
    if (leg.searching && !flown.variation) {
      flown.variation = magnetic::variation(leg.leg.from, start, height, model);
      for (const std::string& warning : flown.variation->warnings) {
        flown.remarks.push_back(warning);
      }
    }
  }
}

void add_remarks(FlownPattern& flown, const pattern::Pattern& pattern, const WindField& wind,
                 const FlyOptions& options) {
  const auto loops = std::count_if(flown.legs.begin(), flown.legs.end(), is_loop);
  const auto turning = std::find_if(flown.legs.begin(), flown.legs.end(),
                                    [](const FlownLeg& leg) { return leg.turn.has_value(); });
  if (turning != flown.legs.end() && (loops > 0 || flown.skipped_rows > 0)) {
    const std::string diameter =
        format_length(turning->turn->radius * 2, LengthUnit::nautical_mile, 2);
    const std::string spacing = format_length(pattern.spacing, LengthUnit::nautical_mile, 2);
    if (flown.skipped_rows > 0) {
      flown.remarks.push_back(
          fmt::format("rows are flown in the order 1, {}, 2, {}, ...: quicker than one after the "
                      "other, at a turn {} across in calm air and a spacing of {}",
                      flown.skipped_rows + 1, flown.skipped_rows + 2, diameter, spacing));
    }
    if (loops > 0) {
      flown.remarks.push_back(fmt::format(
          "{} in a turn to the other side first: the spacing is {}, the turn's diameter in calm "
          "air {}",
          loops == 1 ? "1 leg ends" : fmt::format("{} legs end", loops), spacing, diameter));
    }
  }
  if (const std::ptrdiff_t cut = cut_corners(flown); cut > 0) {
    flown.remarks.push_back(fmt::format(
        "{} sharper than the crew can turn between the legs, and flown as drawn here: allow for "
        "cutting {}, and for the time of climbing away and coming back where there is no room",
        cut == 1 ? "1 corner is" : fmt::format("{} corners are", cut), cut == 1 ? "it" : "them"));
  }
  if (!wind.covers(options.height, options.depart) ||
      !wind.covers(
          options.height,
          options.depart + std::chrono::duration_cast<std::chrono::seconds>(flown.total_time))) {
    flown.remarks.push_back(fmt::format(
        "the wind at {} is not between the heights and times of the reports: the nearest is taken",
        format_length(options.height, LengthUnit::foot, 0)));
  }
}

}  // namespace

std::optional<MagneticDirection> FlownLeg::magnetic_heading() const {
  if (!variation) return std::nullopt;
  return MagneticDirection(triangle.heading.angle() - *variation);
}

FlownPattern fly(const pattern::Pattern& pattern, const Aircraft& aircraft, const WindField& wind,
                 const FlyOptions& options, const magnetic::Model& model) {
  const std::vector<LegToFly> drawn = legs_as_drawn(pattern);
  const Angle bend = followed_bend(pattern.kind);
  FlownPattern flown = fly_in_order(drawn, aircraft, wind, options, bend);
  const bool loops = std::any_of(flown.legs.begin(), flown.legs.end(), is_loop);
  if (loops && options.order == RowOrder::quickest && is_ladder(pattern.kind, drawn)) {
    const int rows = row_count(drawn);
    const Length diameter = turn_radius(rate_of_turn(aircraft.turning, aircraft.true_airspeed),
                                        aircraft.true_airspeed) *
                            2;
    for (const int skip : skips_to_try(rows, diameter, pattern.spacing)) {
      FlownPattern other = fly_in_order(legs_in_order(drawn, skip_and_fill(rows, skip)), aircraft,
                                        wind, options, bend);
      if (other.total_time >= flown.total_time) continue;
      flown = std::move(other);
      flown.skipped_rows = skip;
    }
  }
  if (options.magnetic_headings) add_magnetic(flown, options.height, model);
  add_remarks(flown, pattern, wind, options);
  return flown;
}

Position over_ground(const FlownPattern& flown, Position meant, Duration since_departure) {
  if (!flown.drift || since_departure <= flown.arrival) return meant;
  return travel(meant, flown.drift->towards, flown.drift->speed * (since_departure - flown.arrival))
      .position;
}

}  // namespace sweepwright::flight
