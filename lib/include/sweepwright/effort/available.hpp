// What is available: the hours that each unit can search, and the ground that it sweeps in them.
//
// Problem: a crew that can stay up for five hours does not search for five. The way out and back,
//   the reserve, and the turns and looks at sightings are taken off first.
// Conventions: in the order that a planner works,
//     on scene      endurance - way out - way back - reserve
//     search time   85 % of it (sweep/search_effort.hpp)
//     sweep rate    W x V, ground swept in an hour
//     effort        Z = W x V x T
//   The ways are times: distance / ground speed, each way with its own wind (transit_time()).
// Domain: sweep width and speed above 0; times 0 or more. A unit with no time left to search is an
//   error that names it.
// Accuracy: 1e-12 of the value (available_test.cpp).
// Source: IAMSAR Manual Volume II, chapter 4 [from memory]; Joint Pub 3-50 Volume I, paragraph
//   532.B, for the 85 percent [seen].
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::effort {

/// distance / ground speed. Throws Error(value) unless the distance is 0 or more and the speed
/// above 0: a head wind as strong as the aircraft is fast leaves no way home.
Duration transit_time(Length distance, Speed ground_speed);

/// What a unit has from leaving its base, and what of it is not for the search area.
struct TimeAway {
  Duration endurance{};  ///< from leaving the base until the fuel is gone
  Duration way_out{};
  Duration way_back{};
  Duration reserve{};  ///< what must be left on coming back
};

/// The time in the search area. Throws Error(impossible) when nothing is left, saying what took
/// it, and Error(value) for a negative time.
Duration on_scene_endurance(const TimeAway& away);

/// A unit, and what of it counts for a search.
struct Unit {
  std::string callsign;
  Length sweep_width;
  Speed search_speed;
  Duration search_time{};                  ///< on search legs
  std::optional<TimeAway> time_away = {};  ///< what the search time was worked out from
};

/// A unit whose search time is 85 % of what is left on scene. Errors as on_scene_endurance(), with
/// the callsign.
Unit make_unit(std::string callsign, Length sweep_width, Speed search_speed, const TimeAway& away);

/// Ground swept in an hour: W x V x 1 h.
Area swept_per_hour(const Unit& unit);

/// Z = W x V x T. Throws Error(value) for a width, speed or time that is not above 0, with the
/// callsign.
Area search_effort(const Unit& unit);

/// The efforts added up. Throws Error(value) when there are no units.
Area total_effort(std::span<const Unit> units);

/// The units with the hours that an effort needs: all search times stretched alike. Errors as
/// total_effort().
std::vector<Unit> with_hours_for(std::span<const Unit> units, Area effort);

}  // namespace sweepwright::effort
