// Source of what is checked: OGC KML 2.2 and its XML Schema. GDAL's ogrinfo is the independent
// reader, xmllint the independent validator.
#include "sweepwright/formats/kml_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "outside_tools.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

grid::LatLonBox box(double south, double west, double north, double east) {
  return {Angle::degrees(south), Angle::degrees(north), Angle::degrees(west), Angle::degrees(east)};
}

KmlDocument document() {
  return {"Search A",
          provenance_text({"0.1.0", "sweepwright plan a.json", TimePoint{}, {}}),
          {{.id = "cell", .line = {10, 20, 30}, .line_width_pixels = 1.5, .fill = {}},
           {.id = "sector_1", .line = {0, 90, 181}, .fill = Colour{0, 90, 181, 64}}}};
}

std::string one(const Placemark& placemark) {
  StringSink sink;
  KmlWriter writer(sink, document());
  writer.placemark(placemark);
  writer.finish();
  return sink.text();
}

Placemark showing(const Geometry& geometry) {
  Placemark placemark;
  placemark.name = "P";
  placemark.geometry = geometry;
  return placemark;
}

/// A document that holds everything that a writer can write.
std::string everything() {
  StringSink sink;
  KmlWriter writer(sink, document());
  writer.open_folder("Area", "what is searched");
  writer.placemark(
      {.name = "Area <1> & \"more\"",
       .description = "first line\nsecond <b>line</b>",
       .time = KmlTimeSpan{TimePoint{}, TimePoint{std::chrono::hours(3)}},
       .style_id = "sector_1",
       .properties = {{"callsign", "<b>&\""}, {"spacing_m", 1852.0}, {"legs", std::int64_t{7}}},
       .geometry = make_region(
           {Polygon{{at(10, 10), at(10, 11), at(11, 11), at(11, 10)},
                    {{at(10.2, 10.2), at(10.2, 10.4), at(10.4, 10.4), at(10.4, 10.2)}}}})});
  writer.open_folder("Nested");
  writer.placemark(showing(at(1, 2)));
  writer.placemark(showing(Path{at(1, 2), at(3, 4)}));
  writer.close_folder();
  writer.close_folder();
  writer.open_folder("Across");
  writer.placemark(showing(Path{at(1, 179), at(3, -178)}));
  writer.placemark(showing(
      make_region({Polygon{{at(-18, 179), at(-18, -179), at(-17, -179), at(-17, 179)}, {}}})));
  Placemark cell = showing(box(50, 179.5, 51, -179.5));
  cell.style_id = "cell";
  cell.time = KmlTimeSpan{TimePoint{}, {}};
  writer.placemark(cell);
  writer.placemark(showing(std::monostate{}));
  writer.finish();
  return sink.text();
}

TEST(KmlWriter, everything_is_valid_and_read_by_gdal) {
  const std::string text = everything();
  test::expect_valid_xml(text, test::kKmlSchema);
  const std::string read = test::ogrinfo(text, "kml");
  EXPECT_EQ(test::occurrences(read, "OGRFeature("), 7u);
  EXPECT_THAT(read, HasSubstr("Layer name: Area"));
  EXPECT_THAT(read, HasSubstr("Layer name: Nested"));
  EXPECT_THAT(read, HasSubstr("Name (String) = Area <1> & \"more\""));
  EXPECT_THAT(read, HasSubstr("POINT"));
  EXPECT_THAT(read, HasSubstr("MULTIPOLYGON"));
  EXPECT_THAT(read, HasSubstr("MULTILINESTRING"));
}

TEST(KmlWriter, an_empty_document_is_valid) {
  StringSink sink;
  KmlWriter writer(sink, {});
  writer.finish();
  test::expect_valid_xml(sink.text(), test::kKmlSchema);
}

TEST(KmlWriter, carries_the_cautions) {
  for (const std::string_view caution : kCautions) {
    EXPECT_THAT(everything(), HasSubstr(std::string(caution)));
  }
}

TEST(KmlWriter, colours_are_written_backwards) {
  // KML 2.2 section 12.5.2.1: aabbggrr.
  EXPECT_THAT(everything(), HasSubstr("<color>40b55a00</color><fill>1</fill>"));
  EXPECT_THAT(everything(), HasSubstr("<LineStyle><color>ff1e140a</color><width>1.5</width>"));
  EXPECT_THAT(everything(), HasSubstr("<PolyStyle><fill>0</fill></PolyStyle>"));
}

TEST(KmlWriter, texts_stay_texts) {
  const std::string text = everything();
  // Programs show a description as HTML: mark-up is escaped once for HTML and once for XML.
  EXPECT_THAT(text,
              HasSubstr("first line&lt;br/&gt;second &amp;lt;b&amp;gt;line&amp;lt;/b&amp;gt;"));
  EXPECT_THAT(text,
              HasSubstr("<Data name=\"callsign\"><value>&lt;b&gt;&amp;&quot;</value></Data>"));
}

TEST(KmlWriter, characters_that_xml_cannot_hold_are_replaced) {
  Placemark placemark = showing(at(1, 2));
  placemark.name = std::string("a\x01\xFF\xEF\xBF\xBE") + "z\rend";
  const std::string text = one(placemark);
  EXPECT_THAT(text, HasSubstr("a\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBDz&#13;end"));
  test::expect_valid_xml(text, test::kKmlSchema);
}

TEST(KmlWriter, small_cells_have_four_corners_and_large_ones_follow_their_parallels) {
  EXPECT_THAT(one(showing(box(60, 10, 60.0625, 10.0625))),
              HasSubstr("<coordinates>10,60 10.0625,60 10.0625,60.0625 10,60.0625 10,60"
                        "</coordinates>"));
  const std::string large = one(showing(box(60, 10, 61, 11)));
  const std::string points = large.substr(large.find("<LinearRing>"));
  EXPECT_GT(test::occurrences(points, ","), 10u);
  // Every added point lies on one of the two parallels.
  EXPECT_EQ(test::occurrences(points, ",60 ") + test::occurrences(points, ",61 ") +
                test::occurrences(points, ",60<"),
            test::occurrences(points, ","));
}

TEST(KmlWriter, refuses_what_it_cannot_hold) {
  StringSink sink;
  KmlDocument bad = document();
  bad.styles[0].id = "a b";
  EXPECT_THROW(KmlWriter(sink, bad), Error);
  KmlWriter writer(sink, document());
  EXPECT_THROW(writer.close_folder(), Error);
  Placemark placemark = showing(at(1, 2));
  placemark.style_id = "unknown";
  EXPECT_THROW(writer.placemark(placemark), Error);
}

TEST(KmlWriter, gives_the_same_bytes_twice) {
  EXPECT_EQ(everything(), everything());
}

}  // namespace
}  // namespace sweepwright::formats
