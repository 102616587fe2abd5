// Variation: the angle between true and magnetic north, with the model and the date behind it.
//
// Problem: a crew flies and walks by compass, maps are drawn to true north. A variation without its
//   date and model cannot be checked, and one from an old model or near a magnetic pole misleads.
// Conventions: east positive: magnetic = true - variation. It is the variation of the Earth's main
//   field: rock, iron, cities and magnetic storms are not in it, nor is a compass's own deviation.
// Domain: as field(). Outside the model's years, and where the horizontal field is weak, there are
//   warnings to pass on to the crew.
// Promises: P1 a direction made magnetic and true again is the same to 1e-12 degree.
// Source: zones of weak horizontal field: WMM2025 technical report, blackout zone below 2,000 nT,
//   caution zone below 6,000 nT (from memory). Uncertainty: the error model of that report, one
//   standard deviation, sqrt(0.26^2 + (5417 / H)^2) degrees with H in nT (seen in public copies of
//   the model's software).
#pragma once

#include <string>
#include <vector>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/magnetic/field.hpp"

namespace sweepwright::magnetic {

inline constexpr FluxDensity kBlackoutZone = FluxDensity::nanotesla(2000);
inline constexpr FluxDensity kCautionZone = FluxDensity::nanotesla(6000);

struct Variation {
  Angle angle;                        ///< east positive
  Angle uncertainty;                  ///< one standard deviation
  std::string model;                  ///< "WMM-2025"
  TimePoint date;                     ///< for which it was computed
  std::vector<std::string> warnings;  ///< whole sentences for the crew
};

/// `height`: above the ellipsoid.
Variation variation(Position position, TimePoint date, Length height = {},
                    const Model& model = world_magnetic_model());

MagneticDirection to_magnetic(TrueDirection direction, const Variation& variation);
TrueDirection to_true(MagneticDirection direction, const Variation& variation);

/// `11.1 E (WMM-2025, 2026-07-04)`.
std::string format_variation(const Variation& variation);

}  // namespace sweepwright::magnetic
