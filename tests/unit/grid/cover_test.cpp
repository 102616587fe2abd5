// Cells of an area: none missed, none extra. Witness: Boost.Geometry 1.74 on the plotted polygons.
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>
#include <numbers>
#include <random>
#include <set>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::grid {
namespace {

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using FlatPolygon = bg::model::polygon<Point>;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

LatLonBox box(double west, double south, double east, double north) {
  return {Angle::degrees(south), Angle::degrees(north), Angle::degrees(west), Angle::degrees(east)};
}

std::vector<std::string> names(const std::vector<Cell>& cells) {
  std::vector<std::string> all;
  for (const Cell& cell : cells) all.push_back(cell.name);
  return all;
}

/// A star-shaped ring with a ragged edge.
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

std::vector<FlatPolygon> flat(const Region& region) {
  std::vector<FlatPolygon> all;
  const auto append = [](const PlotLine& line, FlatPolygon::ring_type& ring) {
    for (const PlotPoint& p : line) ring.emplace_back(p.longitude.degrees(), p.latitude.degrees());
  };
  for (const PlotPolygon& polygon : plotted(region)) {
    FlatPolygon out;
    append(polygon.outer, out.outer());
    out.inners().resize(polygon.holes.size());
    for (std::size_t i = 0; i < polygon.holes.size(); ++i) {
      append(polygon.holes[i], out.inners()[i]);
    }
    bg::correct(out);
    all.push_back(out);
  }
  return all;
}

struct Selected {
  std::set<std::string> touching;
  std::set<std::string> centre_inside;
};

/// What Boost.Geometry says of every cell of the level within the limits.
Selected by_boost(const Region& region, const Grid& used, const Level& level,
                  const LatLonBox& limits) {
  const std::vector<FlatPolygon> polygons = flat(region);
  Selected out;
  used.visit(limits, level, Selection::touching, [&](const Cell& cell) {
    const LatLonBox& b = *cell.box;
    const bg::model::box<Point> square({b.west.degrees(), b.south.degrees()},
                                       {b.east.degrees(), b.north.degrees()});
    const Position middle = label_point(cell);
    const Point centre(middle.longitude().degrees(), middle.latitude().degrees());
    for (const FlatPolygon& polygon : polygons) {
      if (bg::intersects(square, polygon)) out.touching.insert(cell.name);
      if (bg::within(centre, polygon)) out.centre_inside.insert(cell.name);
    }
  });
  return out;
}

std::set<std::string> visited(const Region& region, const Grid& used, const Level& level,
                              Selection selection) {
  std::set<std::string> out;
  used.visit(region, level, selection, [&](const Cell& cell) {
    EXPECT_TRUE(out.insert(cell.name).second) << cell.name << " twice";
  });
  return out;
}

struct Case {
  const char* label;
  Region region;
  LatLonBox limits;
};

std::vector<Case> cases() {
  Ring lake = ragged(at(46.1, 8.2), 20, 30, 400, 3);
  std::reverse(lake.begin(), lake.end());
  const Ring second = ragged(at(46.2, 12.0), 30, 60, 50, 4);
  return {
      {"middle", {{{ragged(at(46.1, 8.2), 60, 140, 3'000, 1), {}}}}, box(5, 44, 12, 48)},
      {"hole_and_parts",
       {{{ragged(at(46.1, 8.2), 60, 140, 300, 2), {lake}}, {second, {}}}},
       box(5, 44, 14, 48)},
      {"antimeridian",
       {{{ragged(at(-17.3, 179.9), 60, 140, 300, 5), {}}}},
       box(177, -20, -177, -15)},
      {"north_pole", {{{ragged(at(89.6, 20), 100, 200, 200, 6), {}}}}, box(-180, 87.5, 180, 90)},
      {"south_pole", {{{ragged(at(-89.6, 20), 100, 200, 200, 7), {}}}}, box(-180, -90, 180, -87.5)},
      {"origin", {{{ragged(at(0.01, -0.02), 20, 90, 200, 8), {}}}}, box(-2, -2, 2, 2)},
  };
}

class Cover : public testing::TestWithParam<Case> {};

TEST_P(Cover, IsExact) {
  const Case& c = GetParam();
  const Grid& gars = grid("gars");
  for (const Level& level : gars.levels()) {
    const bool slow = width(c.limits) == Angle::degrees(360) && level.name == "5min";
    if (slow) continue;  // Boost.Geometry takes four seconds for the cells round a pole
    const Selected expected = by_boost(c.region, gars, level, c.limits);
    ASSERT_GT(expected.touching.size(), 4U);
    EXPECT_EQ(visited(c.region, gars, level, Selection::touching), expected.touching);
    EXPECT_EQ(visited(c.region, gars, level, Selection::centre_inside), expected.centre_inside);
  }
}

INSTANTIATE_TEST_SUITE_P(Areas, Cover, testing::ValuesIn(cases()),
                         [](const auto& test) { return std::string(test.param.label); });

Region plot_rectangle(double west, double south, double east, double north) {
  const Ring ring{at(south, west), at(south, east), at(north, east), at(north, west)};
  return {{{from_plotted_edges(ring, Length::metres(0.5)), {}}}};
}

TEST(Touching, SharedEdgesAreNotEnough) {
  const Grid& gars = grid("gars");
  const Level& level = gars.level("5min");
  const std::vector<std::string> expected{"181LW34", "181LW35"};
  const double fifth = 5 / 60.0;
  // South, north, west and east sides all lie on cell edges.
  EXPECT_EQ(names(gars.cells_touching(
                plot_rectangle(-90, 40 + fifth, -90 + 2 * fifth, 40 + 2 * fifth), level)),
            expected);
  EXPECT_EQ(
      names(gars.cells_touching(box(-90, 40 + fifth, -90 + 2 * fifth, 40 + 2 * fifth), level)),
      expected);
  // A millimetre more on each side takes the cells all round.
  const double more = 1e-8;
  EXPECT_EQ(gars.cells_touching(box(-90 - more, 40 + fifth - more, -90 + 2 * fifth + more,
                                    40 + 2 * fifth + more),
                                level)
                .size(),
            12U);
}

TEST(Touching, ACellsOutlineTouchesThatCellAndItsChildren) {
  for (const std::string_view system : {"quarter", "gars"}) {
    const Grid& used = grid(system);
    for (const double latitude : {-89.9, -45.3, 0.1, 61.2, 78.9, 89.9}) {
      for (const Level& level : used.levels()) {
        const Cell cell = used.cell(used.name_of(at(latitude, 179.98), level));
        const Region area = outline(cell);
        EXPECT_EQ(names(used.cells_touching(area, level)), std::vector<std::string>{cell.name});
        if (&level == &used.levels().back()) continue;
        EXPECT_EQ(
            names(used.cells_touching(area, used.levels()[std::size_t(level.depth) + 1])).size(),
            used.children(cell).size());
      }
    }
  }
}

TEST(Touching, ASliverWithinARowIsFound) {
  // Narrower than a cell, between the centres of two rows: only its sides tell.
  const Grid& gars = grid("gars");
  const Region sliver{{{{at(40.06, -89.99), at(40.06, -89.6), at(40.07, -89.6)}, {}}}};
  EXPECT_EQ(gars.cells_touching(sliver, gars.level("5min")).size(), 5U);
  std::vector<std::string> centres;
  gars.visit(sliver, gars.level("5min"), Selection::centre_inside,
             [&](const Cell& cell) { centres.push_back(cell.name); });
  EXPECT_TRUE(centres.empty());
}

TEST(CentreInside, AreasSideBySideShareEveryCellOnce) {
  // The common sides run through cell centres.
  const Grid& gars = grid("gars");
  const Level& level = gars.level("30min");
  std::multiset<std::string> seen;
  for (const double west : {10.25, 11.25}) {
    for (const double south : {50.25, 51.25}) {
      const auto count = [&](const Cell& cell) { seen.insert(cell.name); };
      gars.visit(plot_rectangle(west, south, west + 1, south + 1), level, Selection::centre_inside,
                 count);
      gars.visit(box(west, south, west + 1, south + 1), level, Selection::centre_inside, count);
    }
  }
  EXPECT_EQ(seen.size(), 32U);
  for (const std::string& name : seen) EXPECT_EQ(seen.count(name), 2U) << name;
}

TEST(Order, RowsFromTheNorthEachEastward) {
  const Grid& quarter = grid("quarter");
  EXPECT_EQ(names(quarter.cells_touching(box(179.5, -0.5, -179.5, 0.5), quarter.level("1deg"))),
            (std::vector<std::string>{"00N/180E", "00/179", "01S/180E", "01S/179W"}));
  EXPECT_EQ(names(quarter.cells_touching(plot_rectangle(-102.5, 36.5, -101.5, 37.5),
                                         quarter.level("1deg"))),
            (std::vector<std::string>{"37/102", "37/101", "36/102", "36/101"}));
}

TEST(Boxes, ReachRoundTheEarth) {
  const Grid& gars = grid("gars");
  const Level& level = gars.level("30min");
  EXPECT_EQ(gars.cells_touching(box(-180, 0, 180, 0.5), level).size(), 720U);
  EXPECT_EQ(gars.cells_touching(box(0.1, 0, 0.05, 0.5), level).size(), 720U);
  EXPECT_EQ(gars.cells_touching(box(179.9, 0, -179.9, 0.5), level).size(), 2U);
  EXPECT_THROW(gars.cells_touching(box(0, 1, 1, 0), level), Error);
}

TEST(Boxes, AMillionCellsStreamBy) {
  const Grid& gars = grid("gars");
  std::size_t count = 0;
  gars.visit(box(-90, 0, -6.75, 83.25), gars.level("5min"), Selection::touching,
             [&](const Cell&) { ++count; });
  EXPECT_EQ(count, 998'001U);
}

}  // namespace
}  // namespace sweepwright::grid
