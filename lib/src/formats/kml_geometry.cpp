#include "formats/kml_geometry.hpp"

#include <span>

#include "formats/number_text.hpp"
#include "formats/plot_pieces.hpp"

namespace sweepwright::formats {
namespace {

void append_point(std::string& out, Angle longitude, Angle latitude) {
  append_degrees(out, longitude);
  out += ',';
  append_degrees(out, latitude);
}

void append_coordinates(std::string& out, const PlotLine& line) {
  out += "<coordinates>";
  bool first = true;
  for (const PlotPoint& p : line) {
    if (!first) out += ' ';
    first = false;
    append_point(out, p.longitude, p.latitude);
  }
  out += "</coordinates>";
}

void append_line(std::string& out, const PlotLine& line) {
  out += "<LineString><tessellate>1</tessellate>";
  append_coordinates(out, line);
  out += "</LineString>";
}

void append_polygon(std::string& out, const PlotPolygon& polygon) {
  out += "<Polygon><tessellate>1</tessellate><outerBoundaryIs><LinearRing>";
  append_coordinates(out, polygon.outer);
  out += "</LinearRing></outerBoundaryIs>";
  for (const PlotLine& hole : polygon.holes) {
    out += "<innerBoundaryIs><LinearRing>";
    append_coordinates(out, hole);
    out += "</LinearRing></innerBoundaryIs>";
  }
  out += "</Polygon>";
}

/// The points of one parallel of a box after its first, eastward or back, each after a blank.
void append_parallel(std::string& out, const FlatBox& box, Angle latitude, bool eastward) {
  const Angle from = eastward ? box.west : box.east;
  const Angle to = eastward ? box.east : box.west;
  const int pieces = pieces_of_parallel(box, latitude);
  for (int i = 1; i <= pieces; ++i) {
    out += ' ';
    append_point(out, i == pieces ? to : from + (to - from) * (static_cast<double>(i) / pieces),
                 latitude);
  }
}

/// The points round a box whose parallels are long.
void append_long_box(std::string& out, const FlatBox& box) {
  append_point(out, box.west, box.south);
  append_parallel(out, box, box.south, /*eastward=*/true);
  out += ' ';
  append_point(out, box.east, box.north);
  append_parallel(out, box, box.north, /*eastward=*/false);
  out += ' ';
  append_point(out, box.west, box.south);
}

void append_box(std::string& out, const FlatBox& box, BoxText& box_text) {
  static constexpr ShortText kBetween(" ");
  out += "<Polygon><tessellate>1</tessellate><outerBoundaryIs><LinearRing><coordinates>";
  if (pieces_of_parallel(box, box.south) == 1 && pieces_of_parallel(box, box.north) == 1) {
    box_text.append_corners(out, box, kBetween);
  } else {
    append_long_box(out, box);
  }
  out += "</coordinates></LinearRing></outerBoundaryIs></Polygon>";
}

template <typename List, typename Append>
void append_pieces(std::string& out, const List& pieces, const Append& append) {
  if (pieces.size() == 1) return append(out, pieces.front());
  out += "<MultiGeometry>";
  for (const auto& piece : pieces) append(out, piece);
  out += "</MultiGeometry>";
}

struct GeometryAppender {
  std::string& out;
  BoxText& box_text;
  void operator()(std::monostate) const {}
  void operator()(const Position& position) const {
    out += "<Point><coordinates>";
    append_point(out, position.longitude(), position.latitude());
    out += "</coordinates></Point>";
  }
  void operator()(const Path& path) const { append_pieces(out, lines_to_draw(path), append_line); }
  void operator()(const Region& region) const {
    append_pieces(out, polygons_to_draw(region), append_polygon);
  }
  void operator()(const grid::LatLonBox& box) const {
    const FlatBoxes flat = flat_boxes(box);
    append_pieces(
        out, std::span(flat.boxes).first(flat.count),
        [this](std::string& to, const FlatBox& piece) { append_box(to, piece, box_text); });
  }
};

}  // namespace

void append_kml_geometry(std::string& out, const Geometry& geometry, BoxText& box_text) {
  std::visit(GeometryAppender{out, box_text}, geometry);
}

}  // namespace sweepwright::formats
