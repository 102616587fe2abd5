// Writes features as a GeoJSON FeatureCollection, one after the other, in constant memory.
//
// Conventions: RFC 7946: WGS 84, longitude first, no `crs`; outer rings counterclockwise, holes
//   clockwise; cut at the antimeridian; 7 decimals (1 cm), trailing zeros dropped. Geodesic edges
//   get points until straight lines in longitude and latitude agree with them (plotting.hpp); a
//   LatLonBox needs its four corners only.
// Domain: everywhere; an area round a pole is closed along the pole.
// Accuracy: kPlottingTolerance between added points, 1 cm at points (geojson_writer_test.cpp).
// Promises: P1 parse_area() reads back the areas written; P2 the text depends on nothing but what
//   is handed in.
// Source: RFC 7946, The GeoJSON Format, sections 3 and 4.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string_view>

#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

class BoxText;
class TextBuffer;

class GeoJsonWriter {
 public:
  /// `members` stand before the features (provenance, say); `bounds` becomes `bbox`. The sink must
  /// outlive the writer.
  explicit GeoJsonWriter(Sink& sink, std::span<const Property> members = {},
                         std::optional<grid::LatLonBox> bounds = {});
  ~GeoJsonWriter();
  GeoJsonWriter(const GeoJsonWriter&) = delete;
  GeoJsonWriter& operator=(const GeoJsonWriter&) = delete;

  /// Throws Error(value) for a line of fewer than two places or a number that is not finite.
  void feature(const Geometry& geometry, std::span<const Property> properties);
  /// The same with the properties as text, `"cell":"36/102","level":"1deg"`: a million features
  /// that share most of it need not make it anew.
  void feature_with_members(const Geometry& geometry, std::string_view members);
  /// Closes the collection, `members` after the features. Without it the text is unfinished.
  void finish(std::span<const Property> members = {});

 private:
  void begin_feature(const Geometry& geometry);
  void end_feature();

  std::unique_ptr<TextBuffer> out_;
  std::unique_ptr<BoxText> box_text_;
  bool first_ = true;
};

}  // namespace sweepwright::formats
