// The options of `pattern` that say which legs are wanted, and the pattern that they ask for.
//
// How the legs are flown (speed, wind, fuel) and where they are written is the command's own
// business (pattern.cpp).
#pragma once

#include <CLI/CLI.hpp>
#include <optional>
#include <string>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::cli {

/// The options as typed; those not given are empty.
struct PatternRequest {
  std::string kind;
  std::string start;
  std::string area;
  std::string spacing;
  std::string track;
  std::string length;
  std::string width;
  std::string legs;
  std::string turn = "right";
  std::string turn_room = "inside";

  void add_to(CLI::App& command);
};

struct RequestedPattern {
  pattern::Pattern pattern;
  std::optional<Region> area;  ///< that the pattern covers, of --area
};

/// Input files go into `provenance`; their remarks, and how positions were read, are told.
RequestedPattern make_requested_pattern(const PatternRequest& request,
                                        formats::Provenance& provenance);

}  // namespace sweepwright::cli
