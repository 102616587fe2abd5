// The frame of a map without a plan round it: cells, a pattern, sectors; private to the formats
// room.
#pragma once

#include <string>
#include <vector>

#include "formats/map_graticule.hpp"
#include "formats/map_layers.hpp"

namespace sweepwright::formats {

struct GroundMap {
  MapPaper paper;
  MapView view;
  Graticule graticule;
  LabelPlacer placer;
  NorthArrows norths;
};

/// A map that shows all of the places, with room for the legend. Throws Error(value) when the paper
/// is too small.
GroundMap ground_map(const std::vector<Position>& shown, PaperSize size,
                     const std::vector<LegendItem>& legend);

/// The drawing: title and caution on top, furniture below. The graticule's lines are for the caller
/// to put under what it draws.
Drawing finished(GroundMap map, PaperSize size, const std::string& title, Elements under,
                 Elements over, const std::vector<LegendItem>& legend);

/// All ends of legs and all places of guide lines.
std::vector<Position> shown_places(const pattern::Pattern& pattern);

Element area_outline(const MapView& view, const Region& area);

}  // namespace sweepwright::formats
