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

void require_speeds(const LadderSpeeds& aircraft) {
  for (const Speed speed : {aircraft.out, aircraft.back, aircraft.creep}) {
    require_above_zero(speed, "aircraft's speed");
  }
}

/// Time to fly a length half on the way out and half on the way back.
Duration out_and_back(Length length, const LadderSpeeds& aircraft) {
  return length / 2 / aircraft.out + length / 2 / aircraft.back;
}

}  // namespace

Pace pace_of_leg_length(Length leg_length, Length spacing, const LadderSpeeds& aircraft) {
  require_above_zero(leg_length, "leg length");
  require_above_zero(spacing, "track spacing");
  require_speeds(aircraft);
  return {spacing / (out_and_back(leg_length, aircraft) + spacing / aircraft.creep), leg_length};
}

Pace pace_of_vessel(Speed vessel_speed, Length spacing, const LadderSpeeds& aircraft) {
  require_above_zero(vessel_speed, "vessel's speed");
  require_above_zero(spacing, "track spacing");
  require_speeds(aircraft);
  if (vessel_speed >= aircraft.creep) {
    throw Error(ErrorCode::value,
                fmt::format("the vessel at {} is not slower than the aircraft at {}",
                            format_speed(vessel_speed, SpeedUnit::knot, 1),
                            format_speed(aircraft.creep, SpeedUnit::knot, 1)),
                "give a slower vessel: the aircraft flies a leg while it makes one spacing");
  }
  const Duration for_leg = spacing / vessel_speed - spacing / aircraft.creep;
  const Duration a_metre = out_and_back(Length::metres(1), aircraft);
  return {vessel_speed, Length::metres(for_leg / a_metre)};
}

VesselLine vessel_line(const CoordinatedCreepingLine& request) {
  const Arrival middle = first_middle(request);
  const Duration to_middle = request.pace.leg_length / 2 / request.aircraft.out;
  return {travel(middle.position, middle.track, -(request.pace.vessel_speed * to_middle)).position,
          travel(middle.position, middle.track, request.spacing * (request.legs - 1)).position};
}

Pattern make_coordinated_creeping_line(const CoordinatedCreepingLine& request) {
  require_speeds(request.aircraft);
  require_above_zero(request.pace.vessel_speed, "vessel's speed");
  Pattern pattern =
      make_ladder(Kind::coordinated, {request.start, request.first_track, request.pace.leg_length,
                                      request.spacing, request.legs, request.first_turn});
  const VesselLine vessel = vessel_line(request);
  pattern.guides.push_back({"vessel", {vessel.at_commencement, vessel.at_last_leg}});
  pattern.remarks.push_back(fmt::format(
      "the vessel is at {} when the aircraft commences, and makes good {} at {}; legs are {} long",
      format_position(vessel.at_commencement), format_direction(first_middle(request).track),
      format_speed(request.pace.vessel_speed, SpeedUnit::knot, 1),
      format_length(request.pace.leg_length, LengthUnit::nautical_mile, 2)));
  return pattern;
}

}  // namespace sweepwright::pattern
