// Which crew of the plan flew a track.
//
// Method, the first that tells: the name asked for; a callsign in the track's own name or in its
//   file's name (the longest that fits); a sector's name there, as a word; else the sector that
//   holds most of the track. How it was told is said.
// Conventions: letters and digits count, blanks, dashes and letter case do not: `lark-21.gpx` is
//   Lark 21's.
// Errors: Error(value) for a name that the plan does not have, with the nearest; Error(impossible)
//   for a track of which nothing tells whose it is.
// Source: own work.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "sweepwright/plan/plan.hpp"
#include "sweepwright/track/track.hpp"

namespace sweepwright::debrief {

struct CrewMatch {
  std::size_t assignment = 0;
  std::string reason;  ///< `by its file's name`
};

/// `asked`: a callsign or a sector's name; empty when nobody said.
CrewMatch crew_of(const plan::Plan& plan, const track::Track& track, std::string_view asked = {});

}  // namespace sweepwright::debrief
