// Reads a mission's elevation model, its minima and how units climb; private to the formats room.
#pragma once

#include "formats/json_cursor.hpp"
#include "sweepwright/formats/mission_reader.hpp"

namespace sweepwright::formats {

/// The field `elevation`: the files are read, and stand among the mission's inputs.
void read_elevation(JsonObject& in, const BytesLoader& load, plan::Mission& mission);

hazard::Minima minima(const JsonCursor& cursor);

/// The fields of a unit that say how high it flies and how it climbs.
void read_heights(JsonObject& in, plan::SearchUnit& unit);

}  // namespace sweepwright::formats
