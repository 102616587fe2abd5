// The shape of the ground under a map, as a calm shading in greys; private to the formats room.
//
// Problem: a crew must see at a glance where ridges and valleys run under its legs, on a black and
//   white print too, with every line and letter still standing out.
// Conventions: slopes are lit from the upper left of the paper, 45 degrees high, as is usual for
//   relief on maps; heights are stretched so that the steepest tenth of the ground shown is drawn
//   in full. Ground without a height stays white. Greys are no darker than kDarkestShade, on which
//   ink still has a contrast of 10 to 1.
// Domain: any model and view.
// Accuracy: none is claimed: it shows form, not height. Clearance comes from the checks.
// Source: shaded relief by the cosine of the light's angle to the slope (Lambert), common practice.
#pragma once

#include "formats/map_symbols.hpp"
#include "formats/map_view.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::formats {

inline constexpr Colour kDarkestShade{200, 200, 200};

/// Nothing where the model knows none of the ground shown.
Elements terrain_shading(const MapView& view, const terrain::ElevationModel& model);
LegendItem legend_terrain_shading();

}  // namespace sweepwright::formats
