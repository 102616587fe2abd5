// Promises P1 to P4 of grid.hpp, for every system.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

#include "sweepwright/grid/systems.hpp"

namespace sweepwright::grid {
namespace {

constexpr int kPlaces = 2'000;

/// Places all over the Earth, and some within the built-in chart sheets, that the grid covers.
std::vector<Position> places(const Grid& used) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> latitude(-90, 90);
  std::uniform_real_distribution<double> longitude(-180, 180);
  std::vector<Position> all;
  for (int i = 0; i < kPlaces; ++i) {
    all.push_back(
        Position::at(Angle::degrees(latitude(random)), Angle::degrees(longitude(random))));
  }
  std::uniform_real_distribution<double> chart_latitude(24, 49);
  std::uniform_real_distribution<double> chart_longitude(-125, -61);
  for (int i = 0; i < kPlaces / 4; ++i) {
    all.push_back(Position::at(Angle::degrees(chart_latitude(random)),
                               Angle::degrees(chart_longitude(random))));
  }
  for (const double lat : {-90.0, -0.001, 0.0, 0.001, 90.0}) {
    for (const double lon : {-180.0, -179.999, -0.001, 0.0, 0.001, 179.999}) {
      all.push_back(Position::at(Angle::degrees(lat), Angle::degrees(lon)));
    }
  }
  std::erase_if(all, [&used](Position place) { return !used.covers(place); });
  return all;
}

bool holds(const LatLonBox& box, Position place) {
  const double longitude = place.longitude().degrees();
  const bool across = (box.west.degrees() <= longitude && longitude <= box.east.degrees()) ||
                      (longitude == -180 && box.east.degrees() == 180);
  return box.south <= place.latitude() && place.latitude() <= box.north && across;
}

std::vector<std::string> names(const std::vector<Cell>& cells) {
  std::vector<std::string> all;
  for (const Cell& cell : cells) all.push_back(cell.name);
  return all;
}

class Rectangles : public testing::TestWithParam<std::string_view> {
 protected:
  const Grid& used_ = grid(GetParam());
};

TEST_P(Rectangles, P1P2NameGivesBackACellThatHoldsThePlace) {
  for (const Position place : places(used_)) {
    for (const Level& level : used_.levels()) {
      const std::string name = used_.name_of(place, level);
      const Cell cell = used_.cell(name);
      ASSERT_EQ(cell.name, name);
      ASSERT_EQ(cell.level.depth, level.depth);
      ASSERT_TRUE(holds(*cell.box, place)) << name;
      ASSERT_EQ(used_.name_of(label_point(cell), level), name);
    }
  }
}

/// Systems that name the whole Earth (chart_test.cpp counts the cells of all sheets).
class WholeEarth : public Rectangles {};

TEST_P(WholeEarth, P3NamesAreUnique) {
  // All cells of the coarsest level, and all of the finest in a strip round the Earth.
  const LatLonBox world{Angle::degrees(-90), Angle::degrees(90), Angle::degrees(-180),
                        Angle::degrees(180)};
  LatLonBox strip = world;
  strip.south = Angle::degrees(-0.2);
  strip.north = Angle::degrees(0.2);
  const auto count_different = [&](const LatLonBox& box, const Level& level, std::size_t expected) {
    std::set<std::string> seen;
    used_.visit(box, level, Selection::touching, [&](const Cell& c) { seen.insert(c.name); });
    EXPECT_EQ(seen.size(), expected) << level.name;
  };
  const auto across = [](double degrees, const Level& level) {
    return static_cast<std::size_t>(std::ceil(degrees / std::get<Angle>(level.size).degrees()));
  };
  const Level& coarse = used_.levels().front();
  count_different(world, coarse, across(180, coarse) * across(360, coarse));
  const Level& fine = used_.levels().back();
  if (GetParam() == "georef") {  // a whole strip of 1' cells would take a second
    strip.west = Angle::degrees(170);
    strip.east = Angle::degrees(-170);
  }
  count_different(strip, fine, 2 * across(0.2, fine) * across(width(strip).degrees(), fine));
}

TEST_P(Rectangles, P4ChildrenTileTheirParent) {
  int number = 0;
  for (const Position place : places(used_)) {
    // GEOREF has thousands of children: fewer parents will do.
    if (GetParam() == "georef" && ++number % 50 != 0) continue;
    for (std::size_t depth = 0; depth + 1 < used_.levels().size(); ++depth) {
      const Cell parent = used_.cell(used_.name_of(place, used_.levels()[depth]));
      const std::vector<Cell> children = used_.children(parent);
      const double per_side =
          std::get<Angle>(parent.level.size) / std::get<Angle>(used_.levels()[depth + 1].size);
      ASSERT_EQ(static_cast<double>(children.size()), per_side * per_side);
      std::set<std::pair<double, double>> corners;
      Area sum;
      for (const Cell& child : children) {
        ASSERT_EQ(used_.parent(child)->name, parent.name);
        corners.insert({child.box->south.degrees(), child.box->west.degrees()});
        ASSERT_GE(child.box->south, parent.box->south);
        ASSERT_LE(child.box->north, parent.box->north);
        ASSERT_GE(child.box->west, parent.box->west);
        ASSERT_LE(child.box->east, parent.box->east);
        sum += area(child);
      }
      ASSERT_EQ(corners.size(), children.size());
      ASSERT_NEAR(sum / area(parent), 1, 1e-11);
      // What touches the parent at the finer level is its children, in the same order or another.
      std::vector<std::string> touching =
          names(used_.cells_touching(*parent.box, children[0].level));
      std::vector<std::string> listed = names(children);
      std::sort(touching.begin(), touching.end());
      std::sort(listed.begin(), listed.end());
      ASSERT_EQ(touching, listed);
    }
  }
}

TEST_P(Rectangles, EndsOfTheFamily) {
  const Position place = Position::at(Angle::degrees(40.1), Angle::degrees(-100.1));
  EXPECT_FALSE(used_.parent(used_.cell(used_.name_of(place, used_.levels().front()))));
  EXPECT_TRUE(used_.children(used_.cell(used_.name_of(place, used_.levels().back()))).empty());
}

TEST_P(Rectangles, NeighboursAreMutual) {
  for (const Position place : places(used_)) {
    for (const Level& level : used_.levels()) {
      const Cell cell = used_.cell(used_.name_of(place, level));
      const std::vector<Cell> all = used_.neighbours(cell);
      const bool at_pole = cell.box->south.degrees() == -90 || cell.box->north.degrees() == 90;
      if (GetParam() != "chart") {
        ASSERT_EQ(all.size(), at_pole ? 5U : 8U);
      }
      for (const Cell& neighbour : all) {
        const std::vector<std::string> back = names(used_.neighbours(neighbour));
        ASSERT_EQ(std::count(back.begin(), back.end(), cell.name), 1);
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Systems, WholeEarth, testing::Values("quarter", "gars", "georef"),
                         [](const auto& test) { return std::string(test.param); });
INSTANTIATE_TEST_SUITE_P(Systems, Rectangles, testing::Values("quarter", "chart", "gars", "georef"),
                         [](const auto& test) { return std::string(test.param); });

TEST(Neighbours, CrossTheAntimeridian) {
  EXPECT_EQ(names(grid("gars").neighbours(grid("gars").cell("001HN"))),
            (std::vector<std::string>{"001HP", "002HP", "002HN", "002HM", "001HM", "720HM", "720HN",
                                      "720HP"}));
  EXPECT_EQ(names(grid("quarter").neighbours(grid("quarter").cell("51N/180E"))),
            (std::vector<std::string>{"52N/180E", "52/179", "51/179", "50/179", "50N/180E",
                                      "50N/179E", "51N/179E", "52N/179E"}));
}

TEST(Children, OfTheQuarterGridRunAToD) {
  const Grid& quarter = grid("quarter");
  EXPECT_EQ(names(quarter.children(quarter.cell("36/102"))),
            (std::vector<std::string>{"36/102A", "36/102B", "36/102C", "36/102D"}));
}

}  // namespace
}  // namespace sweepwright::grid
