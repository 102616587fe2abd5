#include "sweepwright/formats/geojson_writer.hpp"

#include <string_view>

#include "formats/box_text.hpp"
#include "formats/json_text.hpp"
#include "formats/number_text.hpp"
#include "formats/plot_pieces.hpp"
#include "formats/text_buffer.hpp"

namespace sweepwright::formats {
namespace {

using Lines = std::vector<PlotLine>;

void append_point(std::string& out, const PlotPoint& point) {
  out += '[';
  append_degrees(out, point.longitude);
  out += ',';
  append_degrees(out, point.latitude);
  out += ']';
}

template <typename List, typename Append>
void append_list(std::string& out, const List& list, const Append& append) {
  out += '[';
  bool first = true;
  for (const auto& entry : list) {
    if (!first) out += ',';
    first = false;
    append(out, entry);
  }
  out += ']';
}

void append_line(std::string& out, const PlotLine& line) {
  append_list(out, line, append_point);
}

void append_polygon(std::string& out, const PlotPolygon& polygon) {
  Lines rings{polygon.outer};
  rings.insert(rings.end(), polygon.holes.begin(), polygon.holes.end());
  append_list(out, rings, append_line);
}

/// The members `type` and `coordinates` of one piece, or of all pieces of the `Multi` type.
template <typename List, typename Append>
void append_pieces(std::string& out, std::string_view type, const List& pieces,
                   const Append& append) {
  const bool one = pieces.size() == 1;
  out += one ? "{\"type\":\"" : "{\"type\":\"Multi";
  out += type;
  out += "\",\"coordinates\":";
  if (one) {
    append(out, pieces.front());
  } else {
    append_list(out, pieces, append);
  }
  out += '}';
}

struct GeometryAppender {
  std::string& out;
  BoxText& box_text;
  void operator()(std::monostate) const { out += "null"; }
  void operator()(const Position& position) const {
    out += "{\"type\":\"Point\",\"coordinates\":";
    append_point(out, {position.longitude(), position.latitude()});
    out += '}';
  }
  void operator()(const Path& path) const {
    append_pieces(out, "LineString", lines_to_draw(path), append_line);
  }
  void operator()(const Region& region) const {
    append_pieces(out, "Polygon", polygons_to_draw(region), append_polygon);
  }
  void operator()(const grid::LatLonBox& box) const {
    const FlatBoxes flat = flat_boxes(box);
    append_pieces(out, "Polygon", std::span(flat.boxes).first(flat.count),
                  [this](std::string& to, const FlatBox& piece) {
                    static constexpr ShortText kBetween("],[");
                    to += "[[[";
                    box_text.append_corners(to, piece, kBetween);
                    to += "]]]";
                  });
  }
};

void append_members(std::string& out, std::span<const Property> members) {
  for (const Property& member : members) {
    out += ',';
    append_json_member(out, member);
  }
}

}  // namespace

GeoJsonWriter::GeoJsonWriter(Sink& sink, std::span<const Property> members,
                             std::optional<grid::LatLonBox> bounds)
    : out_(std::make_unique<TextBuffer>(sink)), box_text_(std::make_unique<BoxText>()) {
  std::string& out = out_->text;
  out += "{\"type\":\"FeatureCollection\"";
  if (bounds) {
    out += ",\"bbox\":[";
    append_degrees(out, bounds->west);
    for (const Angle limit : {bounds->south, bounds->east, bounds->north}) {
      out += ',';
      append_degrees(out, limit);
    }
    out += ']';
  }
  append_members(out, members);
  out += ",\"features\":[";
}

GeoJsonWriter::~GeoJsonWriter() = default;

void GeoJsonWriter::feature(const Geometry& geometry, std::span<const Property> properties) {
  begin_feature(geometry);
  std::string& out = out_->text;
  bool first = true;
  for (const Property& property : properties) {
    if (!first) out += ',';
    first = false;
    append_json_member(out, property);
  }
  end_feature();
}

void GeoJsonWriter::feature_with_members(const Geometry& geometry, std::string_view members) {
  begin_feature(geometry);
  out_->text += members;
  end_feature();
}

void GeoJsonWriter::begin_feature(const Geometry& geometry) {
  std::string& out = out_->text;
  out +=
      first_ ? "\n{\"type\":\"Feature\",\"geometry\":" : ",\n{\"type\":\"Feature\",\"geometry\":";
  first_ = false;
  std::visit(GeometryAppender{out, *box_text_}, geometry);
  out += ",\"properties\":{";
}

void GeoJsonWriter::end_feature() {
  out_->text += "}}";
  out_->hand_over_if_large();
}

void GeoJsonWriter::finish(std::span<const Property> members) {
  out_->text += "\n]";
  append_members(out_->text, members);
  out_->text += "}\n";
  out_->hand_over();
}

}  // namespace sweepwright::formats
