// Plans for the tests of maps and sheets: invented searches on real-Earth coordinates.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::test {

inline Position place(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

inline plan::SearchUnit search_unit(std::string callsign, Speed speed, plan::NamedPlace base) {
  plan::SearchUnit unit;
  unit.callsign = std::move(callsign);
  unit.platform = sweep::Platform::fixed_wing;
  unit.type = "single-engine";
  unit.leader = "M. Tvedt";
  unit.crew = 3;
  unit.search_speed = speed;
  unit.search_height = Length::feet(1000);
  unit.on_scene_endurance = std::chrono::hours(3);
  unit.base = std::move(base);
  unit.sweep_width = Length::nautical_miles(1.2);
  unit.sweep_width_source = "crew's own manual";
  return unit;
}

/// Four corners, two crews, a base beside the area.
inline plan::Mission mission_in(std::vector<Position> corners, Position base) {
  plan::Mission mission;
  mission.incident.name = "Overdue aircraft, Antler Range";
  mission.incident.number = "T-7";
  mission.incident.prepared_by = "J. Okafor";
  const auto day = std::chrono::sys_days(std::chrono::year(2026) / 7 / 14);
  mission.incident.operational_period = {day + std::chrono::hours(13),
                                         day + std::chrono::hours(27)};
  mission.incident.offset_from_utc = std::chrono::hours(-7);
  mission.object.table_name = "Aircraft under 5700 kg";
  mission.object.description = "white, high wing";
  mission.object.persons_on_board = 2;
  mission.conditions.visibility = Length::nautical_miles(10);
  mission.conditions.wind_speed = Speed::knots(12);
  mission.conditions.wind_from = TrueDirection::degrees(240);
  mission.area = make_region({Polygon{std::move(corners), {}}});
  mission.datum = plan::NamedPlace{"last radar return", middle(mission.area)};
  mission.grid = {"gars", "15min"};
  mission.units = {search_unit("FALCON 2", Speed::knots(90), {"Dryfork Field", base}),
                   search_unit("HERON 1", Speed::knots(70), {"Dryfork Field", base})};
  mission.channels = {{"Air to air", "122.850 MHz"}, {"Air to ground", "123.100 MHz"}};
  mission.hazards = {"Power line across Antler Gap"};
  return mission;
}

inline plan::Mission mountain_mission() {
  return mission_in(
      {place(38.55, -117.25), place(38.5, -116.7), place(38.9, -116.65), place(38.95, -117.2)},
      place(38.45, -117.35));
}

struct NamedMission {
  std::string name;
  plan::Mission mission;
};

/// Ground of every kind that maps must bear: both hemispheres, the equator, the antimeridian, far
/// north, a pole inside the area.
inline std::vector<NamedMission> missions_everywhere() {
  return {
      {"mid latitude", mountain_mission()},
      {"antimeridian", mission_in({place(-17.3, 179.7), place(-17.3, -179.75),
                                   place(-16.9, -179.75), place(-16.9, 179.7)},
                                  place(-16.78, -179.6))},
      {"equator",
       mission_in({place(-0.2, -0.25), place(-0.2, 0.25), place(0.2, 0.25), place(0.2, -0.25)},
                  place(0.9, 2.5))},
      {"far north",
       mission_in({place(78.3, 15.4), place(78.3, 16.8), place(78.55, 16.9), place(78.5, 15.3)},
                  place(78.246, 15.49))},
      {"pole", mission_in({place(89.8, 10), place(89.8, 100), place(89.8, -170), place(89.8, -80)},
                          place(89.2, 40))}};
}

}  // namespace sweepwright::test
