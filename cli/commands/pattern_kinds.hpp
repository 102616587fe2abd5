// What each kind of pattern asks of the command line.
#pragma once

#include <optional>

#include "commands/pattern_flown.hpp"
#include "common/option_texts.hpp"
#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/position/region.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::cli {

/// What a pattern is made from, besides the options.
struct PatternGround {
  std::optional<Region> area;                      ///< of --area
  std::optional<Path> route;                       ///< of --route
  std::optional<terrain::ElevationModel> terrain;  ///< of --terrain
  Speed speed;                          ///< over the ground, or through the air when `flown`
  const FlownOptions* flown = nullptr;  ///< of a pattern that is flown in the wind
  TimePoint now;                        ///< for the variation when no departure is given
};

/// The pattern that the options ask for. Throws Error(usage) for options that are missing, or that
/// the kind does not use.
pattern::Pattern pattern_of_kind(pattern::Kind kind, OptionTexts& options,
                                 const PatternGround& ground);

}  // namespace sweepwright::cli
