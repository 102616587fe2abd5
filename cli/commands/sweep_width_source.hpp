// Where the sweep width of `sweep` comes from: the one of five places that the options name.
#pragma once

#include <optional>

#include "commands/sweep_request.hpp"

namespace sweepwright::cli {

struct SourcedWidth {
  sweep::SweepWidth width;
  std::optional<sweep::LateralRangeCurve> curve;
};

/// Throws Error (usage) unless the options name one place, and none that another place needs.
SourcedWidth make_sourced_width(const SweepRequest& request, formats::Provenance& provenance);

}  // namespace sweepwright::cli
