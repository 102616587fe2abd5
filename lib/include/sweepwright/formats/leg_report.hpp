// The answer of `leg`: there and back between two places, as text and as JSON.
#pragma once

#include <optional>
#include <string>

#include "sweepwright/flight/fuel.hpp"
#include "sweepwright/flight/there_and_back.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {

struct LegReport {
  flight::ThereAndBack ways;
  std::optional<flight::FuelFlow> fuel_flow;
};

/// Both ways line by line, then the cautions.
std::string leg_report_text(const LegReport& report);
/// `out` and `back`, each with `distance_m`, bearings, and times and fuel where a speed was given.
std::string leg_report_json(const LegReport& report, const Provenance& provenance);

}  // namespace sweepwright::formats
