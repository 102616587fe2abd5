// Coverage as flown in files and on the map, read back with the general-purpose readers.
#include "sweepwright/formats/coverage_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "outside_tools.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/coverage_drawing.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

/// One pass through the middle of a square of 6 km.
CoverageReport one_pass(Position place, bool named) {
  CoverageReport report;
  report.sweep_width = Length::metres(1500);
  report.area = test::rectangle(place, {}, Length::kilometres(6), Length::kilometres(6));
  const TrueDirection way = TrueDirection::degrees(90);
  report.tracks = {{travel(place, way, Length::kilometres(-5)).position,
                    travel(place, way, Length::kilometres(5)).position}};
  report.track_length = length(report.tracks.front());
  debrief::CoverageAccumulator accumulator(
      debrief::coverage_frame(report.area, Length::metres(200)));
  accumulator.add(
      debrief::SweptPiece{report.tracks[0][0], report.tracks[0][1], report.sweep_width});
  report.map = accumulator.map();
  report.inside = debrief::cells_of(report.map.frame, report.area);
  report.figures = debrief::coverage_figures(report.map, report.inside, report.law).value();
  if (named) {
    const grid::Grid& grid = grid::grid("georef");
    report.named =
        debrief::grid_coverage(report.map, report.area, grid, grid.level("1min"), report.law);
  }
  report.wanted = sweep::Probability(0.5);
  report.holes = debrief::holes(report.map, report.inside, {report.law, *report.wanted, Area()});
  return report;
}

std::string written(const CoverageReport& report, CoverageFormat format) {
  StringSink sink;
  write_coverage(sink, report, format, {"0.1.0", "test", TimePoint{}, {}});
  return sink.text();
}

TEST(CoverageWriter, geojson_has_each_cell_with_its_figures_and_the_holes) {
  for (const bool named : {false, true}) {
    const CoverageReport report = one_pass(test::at(45, 7), named);
    ASSERT_EQ(report.holes.size(), 2U);
    const auto json = nlohmann::json::parse(written(report, CoverageFormat::geojson));
    EXPECT_NEAR(json.at("mean_pod"), report.figures.pod, 1e-5);
    EXPECT_EQ(json.at("hole_count"), 2);
    std::size_t cells = 0;
    std::size_t holes = 0;
    for (const auto& feature : json.at("features")) {
      const auto& properties = feature.at("properties");
      EXPECT_EQ(feature.at("geometry").at("type"), "Polygon");
      if (properties.contains("hole")) {
        ++holes;
        EXPECT_LT(properties.at("mean_pod"), 0.5);
        continue;
      }
      ++cells;
      for (const char* key :
           {"cell", "pod", "coverage", "passes", "nearest_m", "swept_share", "effort_m2"}) {
        EXPECT_TRUE(properties.contains(key)) << key;
      }
    }
    EXPECT_EQ(cells, named ? report.named.size() : report.inside.size());
    EXPECT_EQ(holes, 2U);
  }
}

TEST(CoverageWriter, P2_its_cells_are_read_back_as_the_area) {
  for (const Position place : test::awkward_places()) {
    CoverageReport report = one_pass(place, false);
    report.holes.clear();
    test::expect_rfc_7946(written(report, CoverageFormat::geojson));
    const Region read = parse_area(written(report, CoverageFormat::geojson)).region;
    EXPECT_NEAR(area(read) / area(report.area), 1, 0.01);
  }
}

TEST(CoverageWriter, P1_the_same_report_gives_the_same_bytes_in_every_format) {
  const CoverageReport report = one_pass(test::at(-17.5, 179.99), true);
  for (const CoverageFormat format :
       {CoverageFormat::geojson, CoverageFormat::csv, CoverageFormat::kml, CoverageFormat::json}) {
    EXPECT_EQ(written(report, format), written(report, format));
  }
  EXPECT_THAT(written(report, CoverageFormat::csv),
              HasSubstr("cell,system,level,pod,coverage,passes,nearest_m,swept_share,effort_m2"));
}

TEST(CoverageWriter, json_is_a_summary_with_the_holes_the_largest_first) {
  const CoverageReport report = one_pass(test::at(45, 7), false);
  const auto json = nlohmann::json::parse(written(report, CoverageFormat::json));
  EXPECT_EQ(json.at("detection_law"), "inverse-cube");
  EXPECT_EQ(json.at("holes").size(), 2U);
  EXPECT_GE(json.at("holes")[0].at("area_m2"), json.at("holes")[1].at("area_m2"));
  EXPECT_EQ(json.at("holes")[0].at("geometry").at("type"), "Polygon");
  EXPECT_FALSE(json.contains("cells"));
}

TEST(CoverageWriter, kml_is_valid_and_has_cells_holes_and_tracks) {
  const std::string kml = written(one_pass(test::at(45, 7), true), CoverageFormat::kml);
  test::expect_valid_xml(kml, test::kKmlSchema);
  EXPECT_THAT(test::ogrinfo(kml, "kml"), HasSubstr("Hole 2"));
  EXPECT_THAT(kml, HasSubstr("Holes: POD under 50 %"));
}

TEST(CoverageWriter, kml_refuses_more_cells_than_it_can_show) {
  CoverageReport report = one_pass(test::at(45, 7), false);
  report.inside.resize(kMostKmlCells + 1);
  EXPECT_THROW(written(report, CoverageFormat::kml), Error);
}

TEST(CoverageDrawing, P1_stays_on_the_paper_and_says_what_it_shows) {
  const PaperSize size{180, 140};
  for (const Position place : test::awkward_places()) {
    const Drawing drawing = draw_coverage_map(one_pass(place, false), size);
    for (const Element& element : drawing.elements) {
      const auto box = bounds(element);
      if (!box) continue;
      EXPECT_GE(box->left_mm, -1e-9);
      EXPECT_GE(box->top_mm, -1e-9);
      EXPECT_LE(box->right_mm, size.width_mm + 1e-9);
      EXPECT_LE(box->bottom_mm, size.height_mm + 1e-9);
    }
    const std::string svg = write_svg(drawing);
    for (const char* text :
         {"Coverage as flown", "2 holes under 50 %", "track as flown", "Not for navigation"}) {
      EXPECT_THAT(svg, HasSubstr(text));
    }
    EXPECT_EQ(svg, write_svg(draw_coverage_map(one_pass(place, false), size)));  // P2
  }
}

}  // namespace
}  // namespace sweepwright::formats
