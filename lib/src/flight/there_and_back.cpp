#include "sweepwright/flight/there_and_back.hpp"

#include "flight/leg_timing.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

Way way(Position from, Position to, const WayConditions& conditions, Duration start,
        std::string_view what) {
  Way found{.from = from,
            .to = to,
            .line = geodesic(from, to),
            .variation = magnetic::variation(from, conditions.depart, conditions.height),
            .flown = {}};
  if (!conditions.true_airspeed) return found;
  const auto timing_in = [&](Velocity wind) {
    return leg_timing(from, found.line, *conditions.true_airspeed, to_wind(wind));
  };
  try {
    LegTiming timing = timing_in(conditions.wind.at(conditions.height, conditions.depart, start));
    if (conditions.wind.varies_in_time()) {
      timing = timing_in(
          conditions.wind.at(conditions.height, conditions.depart, start + timing.time / 2));
    }
    found.flown = WayFlown{timing.start, timing.time};
  } catch (const Error& error) {
    throw error.at(what);
  }
  return found;
}

}  // namespace

ThereAndBack there_and_back(Position a, Position b, const WayConditions& conditions) {
  ThereAndBack found;
  found.out = way(a, b, conditions, Duration(), "the way out");
  const Duration out = found.out.flown ? found.out.flown->time : Duration();
  found.back = way(b, a, conditions, out, "the way back");
  return found;
}

}  // namespace sweepwright::flight
