#include "sweepwright/flight/join.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "flight/join_forms.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/wind.hpp"

namespace sweepwright::flight {
namespace {

JoinProblem scaled(const JoinEnds& ends, const TurningFlight& flight) {
  const Length radius = turn_radius(flight.rate, flight.true_airspeed);
  return {ends.from.angle().radians(),
          ends.to.angle().radians(),
          {ends.way.east / radius, ends.way.north / radius},
          {flight.wind.east / flight.true_airspeed, flight.wind.north / flight.true_airspeed}};
}

Join unscaled(const JoinSolution& found, const JoinEnds& ends, const TurningFlight& flight) {
  const auto time = [&](double radians) { return turn_time(flight.rate, Angle::radians(radians)); };
  Join join;
  join.form = found.form;
  join.time = time(found.time);
  TrueDirection heading = ends.from;
  for (std::size_t i = 0; i < 3; ++i) {
    join.arcs[i] = {heading, Angle::radians(found.turns[i])};
    heading = join.arcs[i].end_heading();
  }
  join.straight.heading = join.arcs[1].heading;
  join.straight.time = time(found.straight);
  const Velocity ground = make_velocity(join.straight.heading, flight.true_airspeed) + flight.wind;
  join.straight.track = direction(ground);
  join.straight.ground_speed = speed(ground);
  return join;
}

void keep_quicker(std::optional<JoinSolution>& best, const std::optional<JoinSolution>& found) {
  if (found && (!best || found->time < best->time)) best = found;
}

double turned(const JoinSolution& found) {
  return std::abs(found.turns[0]) + std::abs(found.turns[1]) + std::abs(found.turns[2]);
}

std::optional<JoinSolution> solve(const JoinProblem& problem) {
  std::optional<JoinSolution> best;
  for (const Side side : {Side::right, Side::left})
    keep_quicker(best, plain_join(problem, side, 0));
  if (best && turned(*best) <= kPlainTurn.radians()) return best;
  for (const Side side : {Side::right, Side::left}) {
    keep_quicker(best, plain_join(problem, side, 1));
    keep_quicker(best, crossed_join(problem, side));
    keep_quicker(best, teardrop_join(problem, side));
  }
  return best;
}

}  // namespace

std::string_view name(TurnForm form) {
  constexpr std::array<std::string_view, 4> names{"led", "plain", "crossed", "teardrop"};
  return names[static_cast<std::size_t>(form)];
}

Join join(const JoinEnds& ends, const TurningFlight& flight) {
  const std::optional<JoinSolution> found =
      speed(flight.wind) < flight.true_airspeed ? solve(scaled(ends, flight)) : std::nullopt;
  if (!found) {
    throw Error(ErrorCode::impossible,
                fmt::format("no turn leads onto the next leg at a true airspeed of {} in a wind of "
                            "{}",
                            format_speed(flight.true_airspeed, SpeedUnit::knot, 1),
                            format_speed(speed(flight.wind), SpeedUnit::knot, 1)),
                "fly faster, or wait for less wind");
  }
  return unscaled(*found, ends, flight);
}

}  // namespace sweepwright::flight
