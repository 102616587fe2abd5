#include "sweepwright/flight/endurance.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "flight/leg_timing.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::flight {
namespace {

constexpr Duration kBingoTolerance{0.1};

void require_limits(const EnduranceLimits& limits, const FlyOptions& options) {
  if (!options.base) {
    throw Error(ErrorCode::value, "endurance needs a base to return to", "give the base");
  }
  if (!(limits.endurance >= Duration()) || !(limits.reserve >= Duration())) {
    throw Error(ErrorCode::value,
                fmt::format("the endurance is {} and the reserve {}",
                            format_duration(limits.endurance), format_duration(limits.reserve)),
                "give times of 0 or more");
  }
}

/// The place on the straight part of a leg after a share of it, over the ground.
Position place_on(const FlownPattern& flown, const FlownLeg& leg, double share) {
  const Length straight = leg.leg.line.length - leg.lead_in - leg.lead_out;
  const Length along = leg.joined ? leg.leg.line.length * share : leg.lead_in + straight * share;
  const Position meant = travel(leg.leg.from, leg.leg.line.start_track, along).position;
  return over_ground(flown, meant, leg.start + leg.time * share);
}

}  // namespace

Duration time_home(Position from, Position base, const Aircraft& aircraft, const WindField& wind,
                   const FlyOptions& options, Duration since_departure) {
  const Wind now = to_wind(wind.at(options.height, options.depart, since_departure));
  return leg_timing(from, geodesic(from, base),
                    aircraft.transit_airspeed.value_or(aircraft.true_airspeed), now)
      .time;
}

EnduranceUse endurance_use(const FlownPattern& flown, const Aircraft& aircraft,
                           const WindField& wind, const FlyOptions& options,
                           const EnduranceLimits& limits) {
  require_limits(limits, options);
  EnduranceUse use;
  use.needed = flown.total_time + limits.reserve;
  use.spare = limits.endurance - use.needed;
  /// What is left in hand when the crew leaves for home there and then.
  const auto in_hand = [&](Position from, Duration leaving) {
    return limits.endurance - limits.reserve - leaving -
           time_home(from, *options.base, aircraft, wind, options, leaving);
  };
  bool cut = false;
  int number = 0;
  for (const FlownLeg& leg : flown.legs) {
    ++number;
    if (!leg.searching) continue;
    const bool searched = !leg.joined && leg.leg.kind == pattern::LegKind::search;
    if (searched) ++use.search_legs;
    if (cut) continue;
    const auto in_hand_at = [&](double share) {
      return in_hand(place_on(flown, leg, share), leg.start + leg.time * share);
    };
    if (!use.bingo && in_hand_at(0) < Duration()) {
      cut = true;
      use.short_of = number;
      continue;
    }
    if (in_hand_at(1) >= Duration()) {
      use.bingo = leg.start + leg.time;
      if (searched) ++use.search_legs_flown;
      continue;
    }
    double low = 0;
    double high = 1;
    while ((high - low) * leg.time > kBingoTolerance) {
      const double middle = (low + high) / 2;
      (in_hand_at(middle) >= Duration() ? low : high) = middle;
    }
    // After a turn that used up what was in hand, the end of the leg before it was the last chance.
    if (in_hand_at(0) >= Duration()) use.bingo = leg.start + leg.time * low;
    cut = true;
    use.short_of = number;
  }
  if (!cut) use.bingo = std::max(*use.bingo, flown.search_end);
  return use;
}

}  // namespace sweepwright::flight
