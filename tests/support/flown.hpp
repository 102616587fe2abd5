// Tracks as flown, made from a plan, for tests of the debrief.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "support/ground.hpp"
#include "support/mission.hpp"
#include "sweepwright/plan/plan.hpp"
#include "sweepwright/track/track.hpp"

namespace sweepwright::test {

/// One aircraft over a rectangle of 20 by 10 NM round a place.
inline plan::Mission small_mission(Position place) {
  plan::Mission mission =
      mission_without_units(rectangle(place, TrueDirection::degrees(30), Length::nautical_miles(20),
                                      Length::nautical_miles(10)),
                            "5min");
  mission.conditions.terrain = sweep::Terrain::open;
  plan::SearchUnit unit;
  unit.callsign = "Lark 1";
  unit.platform = sweep::Platform::fixed_wing;
  unit.search_speed = Speed::knots(90);
  unit.search_height = Length::feet(1000);
  unit.on_scene_endurance = std::chrono::hours(3);
  unit.searches_at_night = true;  // at one of the poles it is night
  unit.base = {"Base", place};
  mission.units = {unit};
  return mission;
}

/// How far a crew keeps beside its planned legs, positive to the right, and which legs it leaves
/// out.
struct Flying {
  Length offset = {};
  std::vector<int> left_out = {};  ///< numbers of the pattern's legs, from 1
  std::optional<Length> altitude = {};
  Duration step = Duration(5);
};

/// The search legs of a pattern, flown straight at a speed; a segment for each leg.
inline track::Track flown_track(const pattern::Pattern& pattern, Speed speed, Instant start,
                                const Flying& flying = {}) {
  track::Track track;
  track.name = "test";
  Instant now = start;
  int number = 0;
  for (const pattern::Leg& leg : pattern.legs) {
    ++number;
    const bool left_out =
        std::find(flying.left_out.begin(), flying.left_out.end(), number) != flying.left_out.end();
    if (leg.kind != pattern::LegKind::search || left_out) continue;
    track::Segment segment;
    const double steps = std::ceil(leg.line.length / (speed * flying.step));
    for (int i = 0; i <= static_cast<int>(steps); ++i) {
      const Arrival on = travel(leg.from, leg.line.start_track, leg.line.length * (i / steps));
      const Position beside =
          travel(on.position, on.track + Angle::degrees(90), flying.offset).position;
      segment.push_back({beside, now, flying.altitude});
      now += std::chrono::round<std::chrono::milliseconds>(leg.line.length / steps / speed);
    }
    track.segments.push_back(segment);
    now += std::chrono::minutes(2);
  }
  return track;
}

}  // namespace sweepwright::test
