// When each crew of a plan is where, as points in time; private to the formats room.
#pragma once

#include <optional>

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

struct CrewTimes {
  TimePoint leaves_base;
  TimePoint on_scene;   ///< at the commence search point
  TimePoint off_scene;  ///< the pattern is done
  TimePoint at_base;
  std::optional<TimePoint> bingo;           ///< latest time to leave the pattern for the base
  std::optional<TimePoint> reserve_begins;  ///< none when the endurance is not stated
  std::optional<TimePoint> endurance_ends;
};

inline TimePoint moment(TimePoint since, Duration after) {
  return since + std::chrono::round<TimePoint::duration>(after);
}

inline CrewTimes crew_times(const plan::Assignment& assignment) {
  const flight::FlownPattern& flown = assignment.flown;
  CrewTimes times{flown.depart,
                  moment(flown.depart, flown.arrival),
                  moment(flown.depart, flown.search_end),
                  moment(flown.depart, flown.total_time),
                  {},
                  {},
                  {}};
  if (const auto& use = assignment.endurance_use; use && use->bingo) {
    times.bingo = moment(flown.depart, *use->bingo);
  }
  if (const auto& away = assignment.unit.time_away) {
    times.reserve_begins = moment(flown.depart, away->endurance - away->reserve);
    times.endurance_ends = moment(flown.depart, away->endurance);
  }
  return times;
}

}  // namespace sweepwright::formats
