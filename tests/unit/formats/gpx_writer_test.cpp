// Source of what is checked: GPX 1.1 and its XML Schema. GDAL's ogrinfo is the independent reader,
// xmllint the independent validator.
#include "sweepwright/formats/gpx_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "outside_tools.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

GpxDocument document() {
  GpxDocument document;
  document.creator = "Sweepwright 0.1.0";
  document.name = "Search <A> & more";
  document.description = "Planning aid only. Not for navigation.";
  document.time = TimePoint{};
  document.waypoints = {{at(-16.5, 179.5), "Last known position", "seen at 12:00", "Flag"},
                        {at(0, 180), "Antimeridian", "", ""}};
  document.routes = {{"Crew 1 \"Falcon\"",
                      "parallel track",
                      {{at(-16, 179.99999999), "Commence search point", "", ""},
                       {at(-16, -179.5), "Leg 1 end", "turn left", ""},
                       {at(-16.1, -179.5), "Leg 2 end", "", ""}}},
                     {"Crew 2", "", {}}};
  return document;
}

std::string text_of(const GpxDocument& document, GpxNames names = GpxNames::full) {
  StringSink sink;
  write_gpx(sink, document, names);
  return sink.text();
}

TEST(GpxWriter, is_valid_and_read_by_gdal) {
  for (const GpxNames names : {GpxNames::full, GpxNames::short_names}) {
    const std::string text = text_of(document(), names);
    test::expect_valid_xml(text, test::kGpxSchema);
    const std::string read = test::ogrinfo(text, "gpx");
    EXPECT_THAT(read, HasSubstr("Layer name: waypoints"));
    EXPECT_THAT(read, HasSubstr("Layer name: routes"));
    EXPECT_THAT(read, HasSubstr("name (String) = Crew 1 \"Falcon\""));
    EXPECT_THAT(read, HasSubstr("desc (String) = seen at 12:00"));
    EXPECT_THAT(read, HasSubstr("POINT (179.5 -16.5)"));
  }
}

TEST(GpxWriter, an_empty_document_is_valid) {
  GpxDocument empty;
  empty.creator = "x";
  test::expect_valid_xml(text_of(empty), test::kGpxSchema);
}

TEST(GpxWriter, longitudes_stay_below_180) {
  // The schema's longitudeType ends before 180; 179.99999999 would be rounded up to it.
  const std::string text = text_of(document());
  EXPECT_THAT(text, Not(HasSubstr("lon=\"180\"")));
  EXPECT_EQ(test::occurrences(text, "lon=\"-180\""), 2u);
}

TEST(GpxWriter, short_names_stand_in_name_and_full_ones_in_the_comment) {
  const std::string text = text_of(document(), GpxNames::short_names);
  EXPECT_THAT(text, HasSubstr("<name>COMMEN</name><cmt>Commence search point</cmt>"));
  EXPECT_THAT(text, HasSubstr("<name>LEG1EN</name><cmt>Leg 1 end</cmt><desc>turn left</desc>"));
}

TEST(ShortNames, are_short_plain_and_unlike_each_other) {
  const std::vector<std::string> names{
      "A1-1", "A1-10", "Commence search point", "Commence sector", "A1-1", "commence", "COMMEN",
      "---",  "***"};
  EXPECT_THAT(short_names(names), ElementsAre("A11", "A110", "COMME2", "COMME3", "A11", "COMME4",
                                              "COMMEN", "WP", "WP2"));
}

TEST(ShortNames, do_not_run_out_early_and_say_so_when_they_do) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < 2000; ++i)
    names.push_back("Waypoint (" + std::string(i + 1, 'x') + ")");
  const std::vector<std::string> small = short_names(names);
  EXPECT_EQ(std::set<std::string>(small.begin(), small.end()).size(), names.size());
  for (const std::string& name : small) EXPECT_LE(name.size(), 6u);
  EXPECT_THROW(short_names(names, 3), Error);
  EXPECT_THROW(short_names(names, 2), Error);
}

TEST(GpxWriter, gives_the_same_bytes_twice) {
  EXPECT_EQ(text_of(document()), text_of(document()));
}

}  // namespace
}  // namespace sweepwright::formats
