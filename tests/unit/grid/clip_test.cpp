// Cells clipped to an area, conversion between grids, the local grid.
#include "sweepwright/grid/clip.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/local.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::grid {
namespace {

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

std::vector<std::string> names(const std::vector<Cell>& cells) {
  std::vector<std::string> all;
  for (const Cell& cell : cells) all.push_back(cell.name);
  return all;
}

Ring ragged(Position middle, double inner_km, double outer_km, int corners, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> radius(inner_km, outer_km);
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double track = 360.0 - 360.0 * i / corners;
    ring.push_back(
        travel(middle, TrueDirection::degrees(track), Length::kilometres(radius(random))).position);
  }
  return ring;
}

struct Case {
  const char* label;
  Region region;
};

std::vector<Case> cases() {
  Ring lake = ragged(at(46.1, 8.2), 20, 30, 400, 3);
  std::reverse(lake.begin(), lake.end());
  return {
      {"middle", {{{ragged(at(46.1, 8.2), 60, 140, 3'000, 1), {}}}}},
      {"hole", {{{ragged(at(46.1, 8.2), 60, 140, 300, 2), {lake}}}}},
      {"parts",
       {{{ragged(at(46.1, 8.2), 10, 14, 30, 2), {}}, {ragged(at(46.9, 8.2), 10, 40, 30, 9), {}}}}},
      {"antimeridian", {{{ragged(at(-17.3, 179.9), 60, 140, 300, 5), {}}}}},
      {"north_pole", {{{ragged(at(89.6, 20), 100, 200, 200, 6), {}}}}},
      {"south_pole", {{{ragged(at(-89.6, 20), 100, 200, 200, 7), {}}}}},
      {"origin", {{{ragged(at(0.01, -0.02), 20, 90, 200, 8), {}}}}},
      {"rectangle", outline(LatLonBox{Angle::degrees(40), Angle::degrees(41),
                                      Angle::degrees(-90.25), Angle::degrees(-89)})},
  };
}

class Clip : public testing::TestWithParam<Case> {};

TEST_P(Clip, PartsAddUpToTheArea) {
  const Region& region = GetParam().region;
  struct Used {
    const char* system;
    const char* level;
    double tolerance;  // of the parts' sum, against their area as drawn
  };
  for (const Used& used :
       {Used{"gars", "5min", 1e-9}, Used{"gars", "30min", 1e-9}, Used{"quarter", "7.5min", 1e-9},
        Used{"georef", "1deg", 1e-9}, Used{"mgrs", "10km", 1e-5}}) {
    const Grid& system = grid(used.system);
    const Level& level = system.level(used.level);
    Area sum;
    Area ground;
    std::vector<std::string> clipped;
    visit_clipped(system, region, level, [&](const ClippedCell& part) {
      sum += part.area;
      ground += sweepwright::area(part.ground);
      clipped.push_back(part.cell.name);
      EXPECT_EQ(part.whole, part.area == area(part.cell)) << part.cell.name;
      EXPECT_LE(part.area / area(part.cell), 1 + 1e-6);
    });
    // Every cell that touches has its part (MGRS: but for seams of the zones' maps).
    const std::vector<std::string> touching = names(system.cells_touching(region, level));
    if (std::string(used.system) != "mgrs") {
      EXPECT_EQ(clipped, touching);
    } else {
      EXPECT_LE(touching.size() - clipped.size(), touching.size() / 20);
    }
    // Against the region's own area: its edges are drawn within 1 m.
    Length edges;
    for (const Polygon& polygon : region.polygons) {
      edges += length(polygon.outer);
      for (const Ring& hole : polygon.holes) edges += length(hole);
    }
    const Area drawing = edges * Length::metres(0.7);
    EXPECT_NEAR(sum.square_metres(), sweepwright::area(region).square_metres(),
                drawing.square_metres())
        << used.system;
    // The same drawn polygons, cut otherwise, have the same area.
    Area whole;
    visit_clipped(grid("georef"), region, grid("georef").level("15deg"),
                  [&](const ClippedCell& part) { whole += part.area; });
    EXPECT_NEAR(sum / whole, 1, used.tolerance) << used.system;
    EXPECT_NEAR(ground / whole, 1, 1e-4) << used.system;
  }
}

INSTANTIATE_TEST_SUITE_P(Areas, Clip, testing::ValuesIn(cases()),
                         [](const auto& test) { return std::string(test.param.label); });

TEST(ClipExactly, RectanglesAgreeWithTheirFormula) {
  const LatLonBox box{Angle::degrees(40.03), Angle::degrees(40.97), Angle::degrees(-90.2),
                      Angle::degrees(-89.01)};
  Area sum;
  visit_clipped(
      grid("gars"), outline(box), grid("gars").level("5min"), [&](const ClippedCell& part) {
        sum += part.area;
        const LatLonBox& cell = *part.cell.box;
        const LatLonBox common{std::max(cell.south, box.south), std::min(cell.north, box.north),
                               std::max(cell.west, box.west), std::min(cell.east, box.east)};
        EXPECT_NEAR(part.area / area(common), 1, 1e-8) << part.cell.name;
      });
  EXPECT_NEAR(sum / area(box), 1, 1e-9);
}

TEST(Convert, OneDegreeBecomesGarsAndBack) {
  const Grid& quarter = grid("quarter");
  const Grid& gars = grid("gars");
  const std::vector<SharedCell> shared =
      convert_cells({quarter.cell("36/102"), quarter.cell("36/101A")}, gars, gars.level("30min"));
  ASSERT_EQ(shared.size(), 5U);
  std::vector<Cell> cells;
  for (const SharedCell& each : shared) {
    EXPECT_DOUBLE_EQ(each.share, 1) << each.cell.name;
    cells.push_back(each.cell);
  }
  const std::vector<SharedCell> back = convert_cells(cells, quarter, quarter.level("1deg"));
  ASSERT_EQ(back.size(), 2U);
  EXPECT_EQ(back[0].cell.name, "36/102");
  EXPECT_NEAR(back[0].share, 1, 1e-9);
  EXPECT_EQ(back[1].cell.name, "36/101");
  EXPECT_NEAR(back[1].share, area(quarter.cell("36/101A")) / area(quarter.cell("36/101")), 1e-9);
}

TEST(Convert, SharesAddUp) {
  const Grid& gars = grid("gars");
  const Grid& mgrs = grid("mgrs");
  for (const std::string_view name : {"166LM37", "001HN37", "420NV11", "720QZ37"}) {
    const Cell old = gars.cell(name);
    Area sum;
    for (const SharedCell& each : convert_cells({old}, mgrs, mgrs.level("1km"))) {
      sum += each.shared;
      EXPECT_GT(each.share, 0);
      EXPECT_LE(each.share, 1);
    }
    EXPECT_NEAR(sum / area(old), 1, 2e-4) << name;
  }
  const Cell square = mgrs.cell("15STU");
  Area sum;
  for (const SharedCell& each : convert_cells({square}, gars, gars.level("5min")))
    sum += each.shared;
  EXPECT_NEAR(sum / area(square), 1, 1e-5);
}

LocalGrid form(Position origin, double up, double metres) {
  return {origin, TrueDirection::degrees(up), Length::metres(metres)};
}

TEST(Local, LettersRunRightAndNumbersDown) {
  const Position origin = at(61.2, -149.9);
  const std::unique_ptr<Grid> local = make_local_grid(form(origin, 30, 200));
  const Level& level = local->levels()[0];
  const auto from_origin = [&](double right, double down) {
    const Position across =
        travel(origin, TrueDirection::degrees(30 + 90), Length::metres(right)).position;
    return travel(across, TrueDirection::degrees(30 + 180), Length::metres(down)).position;
  };
  EXPECT_EQ(local->name_of(from_origin(1, 1), level), "A1");
  EXPECT_EQ(local->name_of(from_origin(501, 1301), level), "C7");
  EXPECT_EQ(local->name_of(from_origin(26 * 200 + 1, 1), level), "AA1");
  EXPECT_EQ(local->name_of(from_origin((26 + 26 + 3) * 200 + 10, 2210), level), "BD12");
  EXPECT_EQ(local->name_of(origin, level), "A1");  // left and upper edges are owned
  EXPECT_FALSE(local->covers(from_origin(-1, 1)));
  EXPECT_FALSE(local->covers(from_origin(1, -1)));
  EXPECT_FALSE(local->covers(at(-61, 30)));
  EXPECT_THROW(local->name_of(from_origin(1, -1), level), Error);
  EXPECT_EQ(names(local->neighbours(local->cell("B2"))),
            (std::vector<std::string>{"B1", "C1", "C2", "C3", "B3", "A3", "A2", "A1"}));
  EXPECT_EQ(local->neighbours(local->cell("A1")).size(), 3U);
  EXPECT_EQ(local->cell("zz999").name, "ZZ999");
  for (const std::string_view bad : {"", "7", "A", "A0", "A1000", "AAA1", "A1B", "A-1", "A+1"}) {
    EXPECT_THROW(local->cell(bad), Error) << bad;
  }
  EXPECT_THROW(make_local_grid(form(origin, 0, 0)), Error);
}

TEST(Local, CellsAreSquareAndTileTheArea) {
  const Region region{{{ragged(at(-17.3, 179.99), 2, 4, 60, 5), {}}}};
  const LocalGrid over = local_grid_over(region, TrueDirection::degrees(25), Length::metres(250));
  const std::unique_ptr<Grid> local = make_local_grid(over);
  const std::vector<Cell> cells = local->cells_touching(region, local->levels()[0]);
  ASSERT_GT(cells.size(), 400U);
  bool first_column = false;
  bool first_row = false;
  for (const Cell& cell : cells) {
    // The plane is stretched by 2e-6 at 8 km.
    EXPECT_NEAR(area(cell).square_metres(), 62'500, 0.3);
    EXPECT_EQ(local->name_of(label_point(cell), cell.level), cell.name);
    EXPECT_EQ(local->cell(cell.name).name, cell.name);
    first_column |= cell.name[0] == 'A' && cell.name[1] < 'A';
    first_row |= cell.name == "A1" || cell.name.substr(cell.name.size() - 1) == "1";
  }
  EXPECT_TRUE(first_column);
  EXPECT_TRUE(first_row);
  Area sum;
  visit_clipped(*local, region, local->levels()[0],
                [&](const ClippedCell& part) { sum += part.area; });
  EXPECT_NEAR(sum / sweepwright::area(region), 1, 1e-6);
}

}  // namespace
}  // namespace sweepwright::grid
