// A mission without units, for tests of plans and debriefs.
#pragma once

#include "sweepwright/plan/mission.hpp"

namespace sweepwright::test {

/// A light aircraft is sought over that area, in 10 NM of visibility, on one day.
inline plan::Mission mission_without_units(const Region& area, const std::string& gars_level) {
  plan::Mission mission;
  mission.incident.name = "Test";
  const auto day = std::chrono::sys_days(std::chrono::year(2026) / 7 / 14);
  mission.incident.operational_period = {day + std::chrono::hours(13),
                                         day + std::chrono::hours(23)};
  mission.object.table_name = "Aircraft under 5700 kg";
  mission.conditions.visibility = Length::nautical_miles(10);
  mission.area = area;
  mission.grid = {"gars", gars_level};
  return mission;
}

}  // namespace sweepwright::test
