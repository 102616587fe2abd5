#include "sweepwright/formats/geojson_writer.hpp"

#include <array>
#include <string_view>

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

/// The hot path: a million cells pass here. Each limit becomes text once.
void append_box(std::string& out, const FlatBox& box) {
  struct Text {
    std::array<char, 24> characters;
    std::size_t size;
    explicit Text(Angle angle)
        : size(static_cast<std::size_t>(write_degrees(characters.data(), angle) -
                                        characters.data())) {}
    operator std::string_view() const {  // NOLINT(google-explicit-constructor): it is text
      return {characters.data(), size};
    }
  };
  const Text south(box.south);
  const Text north(box.north);
  const Text west(box.west);
  const Text east(box.east);
  const auto corner = [&](std::string_view before, std::string_view x, std::string_view y) {
    out += before;
    out += x;
    out += ',';
    out += y;
  };
  corner("[[[", west, south);
  corner("],[", east, south);
  corner("],[", east, north);
  corner("],[", west, north);
  corner("],[", west, south);
  out += "]]]";
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
    append_pieces(out, "Polygon", std::span(flat.boxes).first(flat.count), append_box);
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
    : out_(std::make_unique<TextBuffer>(sink)) {
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
  std::string& out = out_->text;
  out +=
      first_ ? "\n{\"type\":\"Feature\",\"geometry\":" : ",\n{\"type\":\"Feature\",\"geometry\":";
  first_ = false;
  std::visit(GeometryAppender{out}, geometry);
  out += ",\"properties\":{";
  bool first = true;
  for (const Property& property : properties) {
    if (!first) out += ',';
    first = false;
    append_json_member(out, property);
  }
  out += "}}";
  out_->hand_over_if_large();
}

void GeoJsonWriter::finish(std::span<const Property> members) {
  out_->text += "\n]";
  append_members(out_->text, members);
  out_->text += "}\n";
  out_->hand_over();
}

}  // namespace sweepwright::formats
