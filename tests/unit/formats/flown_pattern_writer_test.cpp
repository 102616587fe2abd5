// Flown patterns and overlays in every format: valid by the schemas, read back by GDAL, and the
// figures of the JSON against each other. The numbers themselves are checked in tests/unit/flight.
#include "sweepwright/formats/flown_pattern_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "outside_tools.hpp"
#include "support/ground.hpp"
#include "sweepwright/flight/rings.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/overlay_writer.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::formats {
namespace {

using test::at;
using testing::HasSubstr;

const Provenance kProvenance{.version = "0.1.0", .command = "test", .stamp = {}, .inputs = {}};

/// Across the antimeridian, from a base and back, in the wind, with fuel.
FlownReport report() {
  const TimePoint depart =
      TimePoint(std::chrono::sys_days(std::chrono::year(2026) / 7 / 14)) + std::chrono::hours(20);
  FlownReport report;
  report.pattern = pattern::make_parallel_track(
      {at(-17, 179.9), TrueDirection::degrees(90), Length::nautical_miles(12),
       Length::nautical_miles(1.5), 5, pattern::Turn::right});
  report.aircraft = {.true_airspeed = Speed::knots(90),
                     .transit_airspeed = {},
                     .fuel_flow = flight::FuelFlow{flight::FuelUnit::us_gallon, 8}};
  const flight::WindField wind =
      flight::WindField::uniform({TrueDirection::degrees(310), Speed::knots(20)});
  const flight::FlyOptions options{
      .depart = depart,
      .base = at(-16.8, 179.7),
      .drift = flight::Drift{TrueDirection::degrees(75), Speed::knots(1)}};
  report.flown = flight::fly(report.pattern, report.aircraft, wind, options);
  report.departure_is_known = true;
  report.limits = flight::EnduranceLimits{Duration(7200), Duration(1800)};
  report.endurance =
      flight::endurance_use(report.flown, report.aircraft, wind, options, *report.limits);
  report.light = flight::search_light(report.flown, at(-17, 179.9));
  return report;
}

std::string text_of(PatternFormat format) {
  StringSink sink;
  write_flown_pattern(sink, report(), format, kProvenance);
  return sink.text();
}

TEST(FlownPatternWriter, overlays_are_valid_and_read_by_gdal) {
  const std::string geojson = text_of(PatternFormat::geojson);
  test::expect_rfc_7946(geojson);
  EXPECT_THAT(test::ogrinfo(geojson, "geojson"), HasSubstr("heading_true_deg (Real)"));
  const std::string kml = text_of(PatternFormat::kml);
  test::expect_valid_xml(kml, test::kKmlSchema);
  EXPECT_THAT(test::ogrinfo(kml, "kml"), HasSubstr("Name (String) = Turn 2"));
  const std::string gpx = text_of(PatternFormat::gpx);
  test::expect_valid_xml(gpx, test::kGpxSchema);
  EXPECT_THAT(test::ogrinfo(gpx, "gpx"), HasSubstr("Layer name: routes"));
}

TEST(FlownPatternWriter, json_adds_up) {
  const auto json = nlohmann::json::parse(text_of(PatternFormat::json));
  double time = 0;
  double fuel = 0;
  double distance = 0;
  std::string last_end = json.at("depart_time");
  for (const auto& leg : json.at("legs")) {
    time += leg.at("time_s").get<double>();
    distance += leg.at("distance_m").get<double>();
    fuel += leg.at("fuel_usgal").get<double>();
    if (leg.contains("turn")) {
      time += leg.at("turn").at("time_s").get<double>();
      distance += leg.at("turn").at("distance_m").get<double>();
    }
    EXPECT_NEAR(leg.at("running_time_s").get<double>(), time, 1e-6);
    EXPECT_NEAR(leg.at("running_distance_m").get<double>(), distance, 1e-6);
    EXPECT_NEAR(leg.at("running_fuel_usgal").get<double>(), fuel, 1e-9);
    EXPECT_EQ(leg.at("start_time"), last_end);
    last_end = leg.at("end_time");
    // Magnetic is true less the variation, east positive.
    const double magnetic = leg.at("heading_true_deg").get<double>() -
                            leg.at("variation_deg").get<double>() -
                            leg.at("heading_magnetic_deg").get<double>();
    EXPECT_NEAR(std::remainder(magnetic, 360), 0, 1e-9);
  }
  EXPECT_NEAR(json.at("total_time_s").get<double>(), time, 1e-6);
  EXPECT_NEAR(json.at("fuel_usgal").get<double>(), time / 3600 * 8, 1e-9);
  EXPECT_EQ(json.at("end_time"), last_end);
  EXPECT_EQ(json.at("daylight").at("state"), "sun rises or sets");
  EXPECT_TRUE(json.at("endurance").at("enough").get<bool>());
}

TEST(FlownPatternWriter, csv_has_a_row_a_leg_and_one_width) {
  const std::string csv = text_of(PatternFormat::csv);
  std::size_t width = 0;
  std::size_t rows = 0;
  for (std::size_t begin = 0; begin < csv.size();) {
    const std::size_t end = csv.find("\r\n", begin);
    const std::string line = csv.substr(begin, end - begin);
    const std::size_t commas = test::occurrences(line, ",");
    if (width == 0) width = commas;
    EXPECT_EQ(commas, width) << line;
    ++rows;
    begin = end + 2;
  }
  EXPECT_EQ(rows, report().flown.legs.size() + 1);
}

TEST(FlownPatternWriter, the_map_is_drawn_on_the_paper) {
  const Drawing drawing = draw_flown_map(report(), {}, {180, 140});
  const std::string svg = write_svg(drawing);
  EXPECT_THAT(svg, HasSubstr("search leg as flown"));
  EXPECT_THAT(svg, HasSubstr("Planning aid only. Not for navigation."));
  for (const Element& element : drawing.elements) {
    if (const auto* group = std::get_if<Group>(&element.what)) {
      EXPECT_TRUE(group->clip.has_value());
    }
  }
}

TEST(OverlayWriter, rings_are_valid_and_read_by_gdal) {
  const Position place = at(-17, 179.9);
  const Overlay overlay{"Rings",
                        {{"Centre", "where it began", {}, place},
                         {"10 NM",
                          "",
                          {{"radius_m", 18520.0}},
                          flight::distance_ring(place, Length::nautical_miles(10)).line},
                         {"Area",
                          "",
                          {},
                          test::rectangle(place, TrueDirection(), Length::nautical_miles(20),
                                          Length::nautical_miles(20))}}};
  for (const auto& [format, extension, schema] :
       {std::tuple{OverlayFormat::geojson, "geojson", ""},
        std::tuple{OverlayFormat::kml, "kml", test::kKmlSchema},
        std::tuple{OverlayFormat::gpx, "gpx", test::kGpxSchema}}) {
    StringSink sink;
    write_overlay(sink, overlay, format, kProvenance);
    if (*schema == '\0') {
      test::expect_rfc_7946(sink.text());
    } else {
      test::expect_valid_xml(sink.text(), schema);
    }
    EXPECT_THAT(test::ogrinfo(sink.text(), extension), HasSubstr("10 NM"));
  }
  EXPECT_THAT(write_svg(draw_overlay(overlay, {180, 140})), HasSubstr("10 NM"));
}

}  // namespace
}  // namespace sweepwright::formats
