// How a unit's pattern is flown, and the time that it has for it; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

/// The wind that it flies in: of the forecast's levels when there are any, else the surface wind;
/// none for a vessel or a team.
flight::WindField wind_field(const Conditions& conditions, const SearchUnit& unit);

flight::FlyOptions fly_options(const Mission& mission, const SearchUnit& unit);

/// Sets on-scene endurance and search time as if the sector were at `place`: a first guess, before
/// there is a sector. Throws Error(impossible), naming the unit, when the ways and the reserve
/// leave nothing, or when a way cannot be flown in the wind.
void guess_time_on_scene(const Mission& mission, Position place, Assignment& assignment);

/// Flies the pattern from base to base; sets the ways, all times, and the endurance that it uses.
/// Throws as guess_time_on_scene().
void fly_pattern(const Mission& mission, Assignment& assignment);

}  // namespace sweepwright::plan
