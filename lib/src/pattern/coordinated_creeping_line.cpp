#include "sweepwright/pattern/coordinated_creeping_line.hpp"

#include <fmt/format.h>

#include "pattern/require.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/pattern/ladder.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::pattern {
namespace {

/// The middle of the aircraft's first leg, and the direction of creep there.
Arrival first_middle(const CoordinatedCreepingLine& request) {
  const Arrival middle = travel(request.start, request.first_track, request.pace.leg_length / 2);
  return {middle.position, middle.track + quarter_turn(request.first_turn)};
}

}  // namespace

Pace pace_of_leg_length(Length leg_length, Length spacing, Speed ground_speed) {
  require_above_zero(leg_length, "leg length");
  require_above_zero(spacing, "track spacing");
  require_above_zero(ground_speed, "aircraft's speed");
  return {ground_speed * (spacing / (leg_length + spacing)), leg_length};
}

Pace pace_of_vessel(Speed vessel_speed, Length spacing, Speed ground_speed) {
  require_above_zero(vessel_speed, "vessel's speed");
  require_above_zero(spacing, "track spacing");
  require_above_zero(ground_speed, "aircraft's speed");
  if (vessel_speed >= ground_speed) {
    throw Error(ErrorCode::value,
                fmt::format("the vessel at {} is not slower than the aircraft at {}",
                            format_speed(vessel_speed, SpeedUnit::knot, 1),
                            format_speed(ground_speed, SpeedUnit::knot, 1)),
                "give a slower vessel: the aircraft flies a leg while it makes one spacing");
  }
  return {vessel_speed, spacing * (ground_speed / vessel_speed - 1)};
}

VesselLine vessel_line(const CoordinatedCreepingLine& request) {
  const Arrival middle = first_middle(request);
  const Duration to_middle = request.pace.leg_length / 2 / request.ground_speed;
  return {travel(middle.position, middle.track, -(request.pace.vessel_speed * to_middle)).position,
          travel(middle.position, middle.track, request.spacing * (request.legs - 1)).position};
}

Pattern make_coordinated_creeping_line(const CoordinatedCreepingLine& request) {
  require_above_zero(request.ground_speed, "aircraft's speed");
  require_above_zero(request.pace.vessel_speed, "vessel's speed");
  Pattern pattern =
      make_ladder(Kind::coordinated, {request.start, request.first_track, request.pace.leg_length,
                                      request.spacing, request.legs, request.first_turn});
  pattern.remarks.push_back(fmt::format(
      "the vessel is at {} when the aircraft commences, and makes good {} at {}; legs are {} long",
      format_position(vessel_line(request).at_commencement),
      format_direction(first_middle(request).track),
      format_speed(request.pace.vessel_speed, SpeedUnit::knot, 1),
      format_length(request.pace.leg_length, LengthUnit::nautical_mile, 2)));
  return pattern;
}

}  // namespace sweepwright::pattern
