// Writes placemarks in folders as KML 2.2, one after the other, in constant memory.
//
// Conventions: WGS 84, longitude first, no altitudes (all lies on the ground); cut at the
//   antimeridian; 7 decimals. KML does not say how programs join two points, so points are added
//   until straight lines in longitude and latitude and shortest lines both agree with what is meant
//   (plotting.hpp). Texts are plain: what looks like mark-up is shown as typed, line ends are kept.
// Domain: everywhere; an area round a pole is closed along the pole.
// Accuracy: kPlottingTolerance between added points, 1 cm at points (kml_writer_test.cpp).
// Source: OGC 07-147r2, KML 2.2, and its XML Schema (tests validate against it).
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/formats/colour.hpp"
#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

class BoxText;
class TextBuffer;

struct KmlStyle {
  std::string id;  ///< letters, digits, `-` and `_`, a letter first
  Colour line;
  double line_width_pixels = 2;
  std::optional<Colour> fill;  ///< none: outlines only
  double label_scale = 1;      ///< 0 hides the labels of points
  double icon_scale = 1;       ///< 0 hides the icons of points
};

struct KmlDocument {
  std::string name;
  std::string description;  ///< cautions and provenance: provenance_text()
  std::vector<KmlStyle> styles;
};

/// A span of time; either end may be open.
struct KmlTimeSpan {
  std::optional<TimePoint> begin;
  std::optional<TimePoint> end;
};

struct Placemark {
  std::string name;
  std::string description;  ///< may be empty
  std::optional<KmlTimeSpan> time;
  std::string style_id;  ///< one of the document's; may be empty
  std::vector<Property> properties;
  Geometry geometry;
  /// Further properties as text, made by append_kml_data(): a million placemarks that share most of
  /// it need not make it anew.
  std::string data = {};
};

/// Appends the property as KML text. Throws Error(value) for a number that is not finite.
void append_kml_data(std::string& out, const Property& property);

class KmlWriter {
 public:
  /// The sink must outlive the writer. Throws Error(value) for a style id that KML cannot hold.
  KmlWriter(Sink& sink, const KmlDocument& document);
  ~KmlWriter();
  KmlWriter(const KmlWriter&) = delete;
  KmlWriter& operator=(const KmlWriter&) = delete;

  /// Folders nest: what follows lies in the folder opened last.
  void open_folder(std::string_view name, std::string_view description = {});
  void close_folder();
  /// Throws Error(value) for a style that the document does not have, a line of fewer than two
  /// places or a number that is not finite.
  void placemark(const Placemark& placemark);
  /// Closes open folders and the document. Without it the text is unfinished.
  void finish();

 private:
  std::unique_ptr<TextBuffer> out_;
  std::unique_ptr<BoxText> box_text_;
  std::vector<std::string> style_ids_;
  int open_folders_ = 0;
};

}  // namespace sweepwright::formats
