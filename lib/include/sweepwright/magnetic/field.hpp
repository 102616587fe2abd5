// The Earth's magnetic field at a place and time, from a magnetic model.
//
// Conventions: north, east and down at the place, along the WGS 84 ellipsoid. Heights are above the
//   ellipsoid; taking a height above sea level instead changes the variation by less than 0.003
//   degree outside the caution zones (field_test.cpp).
// Domain: everywhere, 1 km below to 850 km above the ellipsoid, as the model's makers state; other
//   heights are Error(value). At a pole, north is along the meridian of the position's longitude.
//   Years far from the model's own are Error(value): see kFarthestYears.
// Accuracy: the published test values to 0.001 nT and to their hundredth of a degree
//   (field_test.cpp). The model is not the field: see Variation::uncertainty.
// Source: WMM technical report, section 1.2, equations 1 to 19 (from memory; numbers checked by its
//   test values).
// Example: world_magnetic_model() at 2025.0, 80 N 0 E on the ellipsoid: variation 1.28 E.
#pragma once

#include "sweepwright/magnetic/model.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::magnetic {

/// The strength of a magnetic field.
class FluxDensity : public detail::Quantity<FluxDensity> {
 public:
  static constexpr FluxDensity nanotesla(double v) { return make(v); }
  constexpr double nanotesla() const { return value_; }
};

struct MagneticField {
  FluxDensity north;
  FluxDensity east;
  FluxDensity down;

  FluxDensity horizontal() const;
  FluxDensity total() const;
  /// From the horizontal down, -90 to 90 degrees.
  Angle inclination() const;
  /// From true north to magnetic north, east positive.
  Angle declination() const;
};

/// How far outside a model's years its yearly change is still followed.
inline constexpr double kFarthestYears = 5;

MagneticField field(Position position, Length height, DecimalYear time,
                    const Model& model = world_magnetic_model());

}  // namespace sweepwright::magnetic
