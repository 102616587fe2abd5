// The options of `pattern` that say which legs are wanted, and the pattern that they ask for.
//
// How the legs are flown (speed, wind, fuel) and where they are written is the command's own
// business (pattern.cpp). What each kind of pattern asks for is in pattern_kinds.cpp.
#pragma once

#include <CLI/CLI.hpp>
#include <optional>
#include <string>

#include "commands/pattern_flown.hpp"
#include "common/elevation_option.hpp"
#include "common/option_texts.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::cli {

/// The options as typed.
struct PatternRequest {
  std::string kind;
  OptionTexts options;
  ElevationOption terrain;

  void add_to(CLI::App& command);
};

struct RequestedPattern {
  pattern::Pattern pattern;
  std::optional<Region> area;  ///< that the pattern covers, of --area
};

/// Input files go into `provenance`; their remarks, and how positions were read, are told.
/// `speed` is for the kinds whose legs depend on it: over the ground, or through the air of
/// `flown`.
RequestedPattern make_requested_pattern(PatternRequest& request, Speed speed,
                                        const FlownOptions* flown, formats::Provenance& provenance);

}  // namespace sweepwright::cli
