// Mission: everything a planner states about one search, as plain values.
//
// The mission file (docs/reference/mission-file.md) is read into this by
// formats/mission_reader.hpp; make_plan() (plan.hpp) turns it into a Plan. All values here have
// been checked one by one; what they mean together is make_plan()'s business.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/flight/aircraft.hpp"
#include "sweepwright/flight/wind_field.hpp"
#include "sweepwright/hazard/climb_performance.hpp"
#include "sweepwright/hazard/minima.hpp"
#include "sweepwright/hazard/terrain_check.hpp"
#include "sweepwright/pattern/contour_search.hpp"
#include "sweepwright/position/region.hpp"
#include "sweepwright/sweep/conditions.hpp"
#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::plan {

/// A span of time, UTC.
struct Period {
  TimePoint from;
  TimePoint to;
};

/// What people call the search, and for how long this plan holds.
struct Incident {
  std::string name;
  std::string number;       ///< may be empty
  std::string prepared_by;  ///< may be empty
  Period operational_period;
  /// What the wall clock shows at the incident: added to UTC wherever local time is printed.
  std::chrono::minutes offset_from_utc{0};
  /// The search day's letter, first part of each sector's name.
  std::string day_letter = "A";
};

/// What is sought.
struct SearchObject {
  std::string table_name;   ///< as in the sweep width tables: "Aircraft under 5700 kg"
  std::string description;  ///< what a crew should look for, in words
  std::optional<int> persons_on_board;
};

/// What the crews will meet.
struct Conditions {
  Length visibility;
  std::optional<Speed> wind_speed;
  std::optional<TrueDirection> wind_from;
  /// The wind by height above sea level and time; in place of the surface wind for aircraft.
  std::vector<flight::WindReport> winds_aloft;
  std::optional<Length> sea_height;
  std::optional<sweep::Terrain> terrain;
  std::string weather_table{sweep::kDefaultWeatherTable};  ///< which manual's weather factors
  std::string weather;                                     ///< the forecast in words; may be empty
};

struct NamedPlace {
  std::string name;
  Position position;
};

struct Channel {
  std::string name;       ///< what it is for: "air to ground"
  std::string frequency;  ///< as the crew sets it: "123.100 MHz"
};

/// Which pattern a unit is to fly; `automatic` leaves it to the planner.
enum class PatternChoice { automatic, parallel, creeping, square, sector, contour };

/// How that pattern is to be laid out, where the planner says it.
struct PatternDetails {
  std::optional<TrueDirection> first_track;  ///< not of a contour search
  std::optional<Length> height_step;         ///< of a contour search
  pattern::ContourOrder order = pattern::ContourOrder::descending;
};

/// How long a unit can be away from its base, for working out what is left for the area.
struct TimeAway {
  Duration endurance;  ///< from leaving the base until the fuel is gone
  Duration reserve;    ///< of it, what must be left on coming back
};

/// One aircraft, vessel or team, and what it brings.
struct SearchUnit {
  std::string callsign;
  sweep::Platform platform{};
  std::string type;    ///< what it is, in words; may be empty
  std::string leader;  ///< may be empty
  std::optional<int> crew;
  Speed search_speed;                   ///< true airspeed; through the water for a vessel
  std::optional<Length> search_height;  ///< above ground or water; none for a vessel
  /// How long it can stay in the area: as the planner states it, or to be worked out from
  /// `time_away` and the ways out and back.
  std::optional<Duration> on_scene_endurance;
  std::optional<TimeAway> time_away;   ///< stands when on_scene_endurance does not
  std::optional<Speed> transit_speed;  ///< on the way out and back; the search speed when not given
  bool searches_at_night = false;      ///< its time on scene is not cut at sunset
  flight::Turning turning = flight::kStandardRate;
  std::optional<flight::FuelFlow> fuel_flow;
  std::optional<TimePoint> depart;  ///< from its base; the period's begin when not given
  /// Above sea level, for the whole flight: the height of the wind that it meets, and that is
  /// checked against the ground. Without it heights are planned by `heights`.
  std::optional<Length> search_altitude;
  hazard::HeightsBy heights = hazard::HeightsBy::leg;
  Length shortest_step = hazard::kShortestStep;  ///< for HeightsBy::steps
  std::optional<hazard::ClimbPerformance> climb;
  std::optional<hazard::Minima> minima;  ///< in place of the mission's
  NamedPlace base;
  PatternChoice pattern = PatternChoice::automatic;
  PatternDetails pattern_details;
  /// The planner's own sweep width and where it comes from, in place of the tables.
  std::optional<Length> sweep_width;
  std::string sweep_width_source;
  bool sweep_width_is_corrected = true;  ///< false: the factors are still to be applied
  bool fatigued = false;                 ///< the crew reports that it is excessively tired
  std::vector<std::string> remarks;
};

/// The height of the ground, from the mission's elevation files.
struct Elevation {
  terrain::ElevationModel model;
  std::vector<std::string> remarks;  ///< how odd things in the files were read
};

/// The grid that names the ground on sheets and overlays.
struct GridChoice {
  std::string system;
  std::string level;
};

/// A file that the mission was read from, for the record on every output.
struct InputFile {
  std::string name;    ///< as written by the planner
  std::string digest;  ///< SHA-256, hexadecimal
};

struct Mission {
  Incident incident;
  SearchObject object;
  Conditions conditions;
  Region area;                              ///< empty: search where the belief is worth most
  std::string area_name;                    ///< may be empty
  std::vector<belief::Scenario> scenarios;  ///< what may have happened; may be empty
  /// The probability that the searches before this one would have found the object, as the belief's
  /// file states it.
  double earlier_success = 0;
  std::optional<NamedPlace> datum;
  GridChoice grid;
  sweep::Coverage wanted_coverage{1.0};  ///< above 0
  /// The law by which coverage becomes probability of detection.
  sweep::DetectionLaw detection_law = sweep::DetectionLaw::exponential;
  /// Direction of the search legs, when the planner wants one: either way along it.
  std::optional<TrueDirection> leg_direction;
  std::vector<SearchUnit> units;
  std::vector<Channel> channels;
  std::vector<std::string> hazards;
  std::optional<Elevation> elevation;  ///< none: nothing is checked against the ground
  hazard::Minima minima;
  std::vector<InputFile> inputs;  ///< the mission file first
  /// How odd things in the files were read, for the planner to check.
  std::vector<std::string> input_remarks;
};

}  // namespace sweepwright::plan
