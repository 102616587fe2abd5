// A belief that was written is read back, in each format; mistakes in files are named with their
// place.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <numeric>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/grid/local.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

belief::Belief of_cells(const std::vector<grid::Cell>& cells) {
  std::vector<double> probability(cells.size());
  std::iota(probability.begin(), probability.end(), 1.0);
  const double total = std::accumulate(probability.begin(), probability.end(), 0.0);
  for (double& p : probability) p *= 0.9 / total;
  belief::Belief belief = belief::make_belief(cells, probability);
  belief.cumulative_success = 0.25;
  return belief;
}

std::string written(const belief::Belief& belief, BeliefFormat format) {
  StringSink sink;
  BeliefExtras extras;
  extras.members = {{"note", std::string("kept")}};
  extras.lines = {
      {0.5, "a line",
       test::rectangle(test::at(38, -117), {}, Length::kilometres(9), Length::kilometres(9))}};
  write_belief(sink, belief, format, {}, extras);
  return sink.text();
}

std::string message_of(const std::function<void()>& action) {
  try {
    action();
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

TEST(BeliefFiles, P1_what_was_written_is_read_back) {
  for (const auto& [system, level] :
       {std::pair{"gars", "15min"}, std::pair{"mgrs", "10km"}, std::pair{"quarter", "15min"}}) {
    for (const Position place : {test::at(38.25, -117), test::at(-17.5, 179.95)}) {
      const Region area =
          test::rectangle(place, {}, Length::kilometres(60), Length::kilometres(60));
      const grid::Grid& grid = grid::grid(system);
      const belief::Belief belief = of_cells(grid.cells_touching(area, grid.level(level)));
      for (const BeliefFormat format :
           {BeliefFormat::geojson, BeliefFormat::csv, BeliefFormat::json}) {
        const belief::Belief read = parse_belief(written(belief, format));
        ASSERT_EQ(read.cells.size(), belief.cells.size());
        for (std::size_t i = 0; i < read.cells.size(); ++i) {
          EXPECT_EQ(read.cells[i].name, belief.cells[i].name);
          EXPECT_NEAR(read.probability[i], belief.probability[i], 1e-15);
          EXPECT_EQ(read.area[i], belief.area[i]);
        }
        EXPECT_NEAR(read.outside, 0.1, 1e-12);
        EXPECT_EQ(read.cumulative_success, format == BeliefFormat::csv ? 0 : 0.25);
      }
    }
  }
}

// Cells of a local grid have no ground but their own polygon.
TEST(BeliefFiles, P1_cells_of_no_list_bring_their_ground) {
  const auto grid = grid::make_local_grid({test::at(60, 10), {}, Length::kilometres(1)});
  const Region area = test::rectangle(
      travel(test::at(60, 10), TrueDirection::degrees(135), Length::kilometres(5)).position, {},
      Length::kilometres(3), Length::kilometres(3));
  const belief::Belief belief = of_cells(grid->cells_touching(area, grid->levels().front()));
  const belief::Belief read = parse_belief(written(belief, BeliefFormat::geojson));
  ASSERT_EQ(read.cells.size(), belief.cells.size());
  for (std::size_t i = 0; i < read.cells.size(); ++i) {
    EXPECT_EQ(read.cells[i].name, belief.cells[i].name);
    EXPECT_NEAR(read.area[i] / belief.area[i], 1, 1e-5);
  }
  EXPECT_THAT(message_of([&] { parse_belief(written(belief, BeliefFormat::csv)); }),
              HasSubstr("local"));
}

TEST(BeliefFiles, members_stand_beside_the_cells) {
  const belief::Belief belief = of_cells({grid::grid("gars").cell("006AG39")});
  EXPECT_THAT(written(belief, BeliefFormat::geojson), HasSubstr("\"note\":\"kept\""));
  EXPECT_THAT(written(belief, BeliefFormat::geojson), HasSubstr("\"containment\":0.5"));
  EXPECT_THAT(written(belief, BeliefFormat::json), HasSubstr("\"note\": \"kept\""));
}

TEST(BeliefFiles, a_table_by_hand_is_read) {
  const belief::Belief belief = parse_belief(
      "# by hand\r\n Probability "
      ",system,\"cell\"\r\n0.5,GARS,006ag39\r\n\r\n0.25,gars,007AG39\r\n");
  ASSERT_EQ(belief.cells.size(), 2U);
  EXPECT_EQ(belief.cells[0].name, "006AG39");
  EXPECT_EQ(belief.outside, 0.25);
}

TEST(BeliefFiles, mistakes_are_named_with_their_line) {
  const auto message = [](std::string_view text) {
    return message_of([&] { parse_belief(text); });
  };
  EXPECT_THAT(message(""), HasSubstr("empty"));
  EXPECT_THAT(message("cell,system\n"), HasSubstr("no column 'probability'"));
  EXPECT_THAT(message("cell,system,probabilty\n"), HasSubstr("did you mean"));
  EXPECT_THAT(message("cell,probability\n"), HasSubstr("no cells"));
  EXPECT_THAT(message("cell,probability\n006AG39,0.5\n"), HasSubstr("line 2"));
  EXPECT_THAT(message("cell,probability\n006AG39,0.5\n"), HasSubstr("system"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,half\n"), HasSubstr("line 2"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars\n"), HasSubstr("2 cells"));
  EXPECT_THAT(message("cell,system,probability\n006AG99,gars,1\n"), HasSubstr("line 2"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,1.5\n"), HasSubstr("006AG39"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,-1\n"), HasSubstr("from 0 to 1"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,0.5\n006ag39,gars,0.5\n"),
              HasSubstr("stands twice, first on line 2"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,0.8\n007AG39,gars,0.8\n"),
              HasSubstr("more than 1"));
  EXPECT_THAT(message("cell,system,probability\n006AG39,gars,0\n"), HasSubstr("outside"));
  EXPECT_THAT(message("{}"), HasSubstr("features"));
  EXPECT_THAT(message(R"({"cells":[{"cell":"006AG39","system":"gars","probability":"1"}]})"),
              HasSubstr("without quotes"));
  EXPECT_THAT(message(R"({"cells":[{"cell":"006AG39","system":"gars","probability":1}],
                          "outside":0.5})"),
              HasSubstr("not 1"));
}

TEST(BeliefFiles, detection_of_named_cells) {
  const std::vector<grid::Cell> cells{grid::grid("gars").cell("006AG39"),
                                      grid::grid("gars").cell("007AG39")};
  EXPECT_EQ(parse_cell_pods("cell,pod\n007ag39,0.8\n", cells), (std::vector<double>{0, 0.8}));
  EXPECT_EQ(parse_cell_pods(R"({"type":"FeatureCollection","features":[{"type":"Feature",
      "geometry":null,"properties":{"cell":"006AG39","pod":0.5}}]})",
                            cells),
            (std::vector<double>{0.5, 0}));
  const auto message = [&](std::string_view text) {
    return message_of([&] { parse_cell_pods(text, cells); });
  };
  EXPECT_THAT(message("cell,pod\n008AG39,0.8\n"), HasSubstr("no cell '008AG39'"));
  EXPECT_THAT(message("cell,pod\n006AG39,80\n"), HasSubstr("78 percent as 0.78"));
}

}  // namespace
}  // namespace sweepwright::formats
