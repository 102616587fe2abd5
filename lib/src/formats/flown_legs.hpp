// The legs of a flown pattern as properties, the same for all formats; private to the formats room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/flown_pattern_writer.hpp"
#include "sweepwright/formats/property.hpp"

namespace sweepwright::formats {

/// Everything about leg `i` but its places and its turn.
std::vector<Property> flown_leg_properties(const FlownReport& report, std::size_t i);
/// Radius, distance, time and form of a turn.
std::vector<Property> turn_properties(const flight::FlownTurn& turn);

/// `search leg 3: heading 076T (065M), ground speed 88 kt, ...` for people.
std::string flown_leg_text(const FlownReport& report, std::size_t i);

/// A point in the flight: `2026-07-14T18:30:00Z`, or `+0:12:30` when the departure is not known.
std::string time_text(const FlownReport& report, Duration since_departure);

}  // namespace sweepwright::formats
