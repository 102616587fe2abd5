// Plane geometry on paper, as far as maps need it; private to the formats room.
//
// Conventions: those of drawing.hpp: millimetres, y down, angles clockwise from straight up.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

inline PaperPoint operator+(PaperPoint a, PaperPoint b) {
  return {a.x_mm + b.x_mm, a.y_mm + b.y_mm};
}
inline PaperPoint operator-(PaperPoint a, PaperPoint b) {
  return {a.x_mm - b.x_mm, a.y_mm - b.y_mm};
}
inline PaperPoint operator*(double factor, PaperPoint a) {
  return {factor * a.x_mm, factor * a.y_mm};
}
double length_mm(PaperPoint vector);
/// The point turned clockwise about the corner of the paper.
PaperPoint turned(PaperPoint point, double clockwise_deg);
/// The step of one millimetre in a direction.
PaperPoint unit_vector(double direction_deg);
/// The direction from one point to another.
double direction_deg(PaperPoint from, PaperPoint to);

PaperBox box_round(PaperPoint centre, PaperSize size);
/// The box with `by_mm` more on each side.
PaperBox grown(PaperBox box, double by_mm);
/// Where two boxes overlap; a negative width or height when they do not.
PaperBox intersection(const PaperBox& a, const PaperBox& b);
bool contains(const PaperBox& box, PaperPoint point);
bool contains(const PaperBox& outer, const PaperBox& inner);
PaperPoint middle(const PaperBox& box);

struct PaperSegment {
  PaperPoint from;
  PaperPoint to;
};
/// The part of a straight line in a box.
std::optional<PaperSegment> clipped(const PaperSegment& segment, const PaperBox& box);
/// The parts of a line in a box.
std::vector<PaperLine> clipped(const PaperLine& line, const PaperBox& box);

/// Rings with holes, by the even-odd rule.
using PaperArea = std::vector<PaperLine>;
/// Where the rings cross the level line at `y_mm`, in rising order.
std::vector<double> crossings_at_height(const PaperArea& area, double y_mm);
bool contains(const PaperArea& area, PaperPoint point);
/// True when no part of the box lies outside the area.
bool contains(const PaperArea& area, const PaperBox& box);
/// The box round all rings; none for an empty area.
std::optional<PaperBox> bounds(const PaperArea& area);
/// Area of the rings, holes taken off when they run the other way round.
double area_mm2(const PaperArea& area);
/// Distance to the nearest edge.
double distance_to_edge_mm(const PaperArea& area, PaperPoint point);

/// The place in the area and the box that is farthest from the edges of both; none when they share
/// nothing worth a label.
std::optional<PaperPoint> visible_middle(const PaperArea& area, const PaperBox& box);

}  // namespace sweepwright::formats
