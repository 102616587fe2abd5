// The files and the picture of an effort: what is written is read back by our own readers.
#include "sweepwright/formats/effort_report.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/effort_map.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

using std::chrono::hours;

/// A hill of probability over the 36 cells of a half degree.
EffortReport report(bool plan) {
  const grid::Grid& grid = grid::grid("gars");
  std::vector<grid::Cell> cells;
  grid.visit({.south = Angle::degrees(38),
              .north = Angle::degrees(38.5),
              .west = Angle::degrees(-117.5),
              .east = Angle::degrees(-117)},
             grid.level("5min"), grid::Selection::centre_inside,
             [&](const grid::Cell& cell) { cells.push_back(cell); });
  std::vector<double> probability;
  double total = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double along = static_cast<double>(i % 6) - 2.5;
    const double up = std::floor(static_cast<double>(i) / 6) - 2.5;
    probability.push_back(std::exp(-(along * along + up * up) / 4));
    total += probability.back();
  }
  for (double& p : probability) p *= 0.9 / total;
  EffortReport made;
  made.belief = belief::make_belief(cells, probability);
  const Length width = Length::nautical_miles(1);
  made.units = {
      effort::make_unit("Lark 1", width, Speed::knots(90), {.endurance = hours(3)}),
      effort::make_unit("Heron <2>", width * 0.5, Speed::knots(60), {.endurance = hours(2)})};
  const Area total_effort = effort::total_effort(made.units);
  made.allocation = effort::optimal_allocation(effort::cells_of(made.belief), total_effort);
  if (!plan) return made;
  std::vector<effort::Searcher> searchers;
  for (const effort::Unit& unit : made.units) searchers.push_back({unit, {}});
  made.plan = effort::assign(effort::ground_of(made.belief), searchers);
  return made;
}

template <typename Write>
std::string written(Write write, const EffortReport& report, EffortFormat format) {
  StringSink sink;
  write(sink, report, format, Provenance{});
  return sink.text();
}

TEST(EffortReport, P1_rectangles_are_read_as_areas) {
  const EffortReport made = report(true);
  const std::string text = written(write_effort_rectangles, made, EffortFormat::geojson);
  Area searched;
  for (const effort::Assignment& assignment : made.plan->assignments) searched += assignment.area;
  EXPECT_NEAR(area(parse_area(text).region) / searched, 1, 1e-4);
}

TEST(EffortReport, P2_pods_go_back_into_the_belief) {
  const EffortReport made = report(false);
  for (const EffortFormat format : {EffortFormat::geojson, EffortFormat::csv, EffortFormat::json}) {
    const std::vector<double> pods =
        parse_cell_pods(written(write_effort_cells, made, format), made.belief.cells);
    ASSERT_EQ(pods.size(), made.belief.cells.size());
    double pos = 0;
    for (std::size_t i = 0; i < pods.size(); ++i) {
      EXPECT_NEAR(pods[i], 1 - std::exp(-made.allocation.coverages[i]), 1e-15);
      pos += pods[i] * made.belief.probability[i];
    }
    EXPECT_NEAR(pos, made.allocation.pos.value(), 1e-12);
  }
}

TEST(EffortReport, json_of_rectangles_says_the_same_as_the_plan) {
  const EffortReport made = report(true);
  const auto json =
      nlohmann::json::parse(written(write_effort_rectangles, made, EffortFormat::json));
  EXPECT_EQ(json.at("pos").get<double>(), made.plan->pos.value());
  // The same bound, over outlines of the cells.
  EXPECT_NEAR(json.at("bound").get<double>(), made.allocation.pos.value(), 1e-6);
  EXPECT_LE(json.at("ratio").get<double>(), 1);
  ASSERT_EQ(json.at("rectangles").size(), 2U);
  double pos = 0;
  for (const auto& rectangle : json.at("rectangles")) pos += rectangle.at("pos").get<double>();
  EXPECT_NEAR(pos, made.plan->pos.value(), 1e-12);
  EXPECT_EQ(json.at("rectangles")[1].at("unit"), "Heron <2>");
  EXPECT_FALSE(json.at("working").empty());
}

TEST(EffortMap, P1_all_lies_on_the_paper) {
  for (const bool plan : {false, true}) {
    const Drawing drawing = draw_effort_map(report(plan), {180, 140});
    for (const Element& element : drawing.elements) {
      const auto box = bounds(element);
      if (!box) continue;
      EXPECT_GE(box->left_mm, 0);
      EXPECT_GE(box->top_mm, 0);
      EXPECT_LE(box->right_mm, drawing.size.width_mm);
      EXPECT_LE(box->bottom_mm, drawing.size.height_mm);
    }
  }
}

TEST(EffortMap, P2_same_report_same_drawing) {
  EXPECT_EQ(write_svg(draw_effort_map(report(true), {180, 140})),
            write_svg(draw_effort_map(report(true), {180, 140})));
}

}  // namespace
}  // namespace sweepwright::formats
