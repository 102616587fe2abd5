// Overlay: a few named places, lines and areas, written in any of the open formats or drawn.
//
// Problem: rings and tracks ahead are things to lay over a map, not patterns or plans.
// Conventions: each item is a feature, placemark, waypoint or route with its name and properties.
//   GPX has no areas: their edges are routes, as lines are.
// Accuracy: as the writers of each format say.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

struct OverlayItem {
  std::string name;
  std::string description;  ///< for people; may be empty
  std::vector<Property> properties;
  Geometry geometry;  ///< a place, a line or an area
};

struct Overlay {
  std::string title;
  std::vector<OverlayItem> items;  ///< at least one
};

enum class OverlayFormat { geojson, kml, gpx };

void write_overlay(Sink& sink, const Overlay& overlay, OverlayFormat format,
                   const Provenance& provenance);

/// Names beside places and lines, where there is room. Throws Error(value) for paper that is too
/// small.
Drawing draw_overlay(const Overlay& overlay, PaperSize size);

}  // namespace sweepwright::formats
