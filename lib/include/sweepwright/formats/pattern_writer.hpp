// Writes one pattern with its times in any of the open formats.
//
// Conventions: legs are numbered from 1 in the order flown; times are those of the speed given,
// without
//   wind and turns; JSON keys end in their unit; places in JSON are [longitude, latitude].
// Accuracy: JSON numbers read back to the same double; other formats as their writers say.
#pragma once

#include <string_view>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::formats {

/// One row of a leg table: what a crew reads, and the running totals at the leg's end.
struct LegRow {
  int number = 0;
  pattern::Leg leg;
  Duration time{};
  Length running_distance;
  Duration running_time{};
};

/// The pattern's legs with times at `speed`. Throws Error(value) unless the speed is above 0.
std::vector<LegRow> leg_rows(const pattern::Pattern& pattern, Speed speed);

enum class PatternFormat { geojson, kml, gpx, csv, json };

void write_pattern(Sink& sink, const pattern::Pattern& pattern, Speed speed, PatternFormat format,
                   const Provenance& provenance);

/// The pattern as a JSON object: `legs`, totals, remarks.
RawJson pattern_json(const pattern::Pattern& pattern, Speed speed);

}  // namespace sweepwright::formats
