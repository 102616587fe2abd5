// The map page: the whole plan as one HTML file that opens on a tablet or laptop with no network.
//
// Problem: the planner and each crew want to look closer than paper allows: zoom, switch layers,
//   read the position and the cell under the pointer, measure, find a place by its text.
// Conventions: the page holds the plan as the GeoJSON of plan_overlays.hpp, the chart sheets, the
//   crews' colours, and scripts of its own (lib/data/map_page) on the map library Leaflet, whose
//   licence stands in it. It loads nothing; it asks the device for its position only when told to.
// Domain: any plan; areas across the antimeridian are drawn in one piece. Web maps end at 85
//   degrees: north and south of that the page says so and the map on paper is for use.
// Accuracy: names of ground and positions as `locate` writes them, distances to a millimetre
//   (map_page_test.cpp).
// Promises: P1 same plan and provenance, same bytes; P2 texts stay texts whatever they hold; P3
//   nothing is loaded; P4 the cautions are on it (map_page_test.cpp).
// Source: Leaflet 1.9.4 (BSD-2-Clause); the methods named in lib/data/map_page.
#pragma once

#include <string>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

std::string write_map_page(const plan::Plan& plan, const Provenance& provenance);

}  // namespace sweepwright::formats
