// Writes a pattern as it will be flown, in any of the open formats.
//
// Conventions: legs are numbered from 1 in the order flown, transits and the straight parts of
//   joins included; `drawn_leg` is the number in the pattern. Times of day are written when the
//   departure is known, else times count from it. Each leg is its straight part; its turn follows
//   it. JSON keys end in their unit; places in JSON are [longitude, latitude], over the ground.
// Accuracy: as flown_pattern.hpp and flown_path.hpp; JSON numbers read back to the same double.
#pragma once

#include <optional>

#include "sweepwright/flight/endurance.hpp"
#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/flight/search_light.hpp"
#include "sweepwright/formats/pattern_writer.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

/// A flown pattern and what was known of it.
struct FlownReport {
  pattern::Pattern pattern;
  flight::Aircraft aircraft;
  flight::FlownPattern flown;
  bool departure_is_known = false;
  std::optional<flight::EnduranceLimits> limits;
  std::optional<flight::EnduranceUse> endurance;
  std::optional<flight::SearchLight> light;
};

void write_flown_pattern(Sink& sink, const FlownReport& report, PatternFormat format,
                         const Provenance& provenance);

/// What the crew and the planner must be told, in whole sentences.
std::vector<std::string> flown_remarks(const FlownReport& report);

}  // namespace sweepwright::formats
