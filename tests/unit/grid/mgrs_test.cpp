// MGRS: names against GeographicLib, cells against their zones, and the cells' own promises.
#include "sweepwright/grid/mgrs.hpp"

#include <gtest/gtest.h>

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <algorithm>
#include <random>
#include <set>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

using test::CheckRow;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

/// True when the place lies in the cell, or within a metre: curved edges are drawn with chords.
bool holds(const Cell& cell, Position place) {
  const TrueDirection inward = geodesic(place, label_point(cell)).start_track;
  return contains(cell.region, place) ||
         contains(cell.region, travel(place, inward, Length::metres(1)).position);
}

std::vector<std::string> names(const std::vector<Cell>& cells) {
  std::vector<std::string> all;
  for (const Cell& cell : cells) all.push_back(cell.name);
  return all;
}

class Mgrs : public testing::TestWithParam<CheckRow> {};
TEST_P(Mgrs, NamesPosition) {
  const CheckRow& row = GetParam();
  const Position place = at(row.number("lat_deg"), row.number("lon_deg"));
  const Grid& grid = mgrs_grid();
  EXPECT_EQ(grid.name_of(place, grid.level("100km")), row.text("mgrs_100km"));
  EXPECT_EQ(grid.name_of(place, grid.level("1km")), row.text("mgrs_1km"));
  EXPECT_EQ(grid.name_of(place, grid.level("100m")), row.text("mgrs_100m"));
  // The cell holds the place and answers to its name.
  for (const Level& level : grid.levels()) {
    const std::string name = grid.name_of(place, level);
    const Cell cell = grid.cell(name);
    EXPECT_EQ(cell.name, name);
    EXPECT_TRUE(holds(cell, place)) << name;
  }
}
INSTANTIATE_TEST_SUITE_P(Table, Mgrs,
                         testing::ValuesIn(test::check_rows(
                             "grid/mgrs.csv",
                             {"lat_deg", "lon_deg", "zone_0_is_ups", "hemisphere", "easting_m",
                              "northing_m", "mgrs_1m", "mgrs_100m", "mgrs_1km", "mgrs_100km",
                              "second_package_agrees", "note"})),
                         test::RowName());

// GeographicLib 2.1.2, its text of position at four precisions, from latitude and longitude alone.
TEST(MgrsAgainstGeographicLib, AgreesOnAMillionPlaces) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> latitude(-90, 90);
  std::uniform_real_distribution<double> longitude(-180, 180);
  const Grid& grid = mgrs_grid();
  std::string expected;
  for (int i = 0; i < 1'000'000; ++i) {
    const Position place = at(latitude(random), longitude(random));
    int zone = 0;
    bool north = false;
    double x = 0;
    double y = 0;
    GeographicLib::UTMUPS::Forward(place.latitude().degrees(), place.longitude().degrees(), zone,
                                   north, x, y);
    GeographicLib::MGRS::Forward(zone, north, x, y, i % 4, expected);
    ASSERT_EQ(grid.name_of(place, grid.levels()[static_cast<std::size_t>(i % 4)]), expected);
  }
}

std::vector<Position> places(int count) {
  std::mt19937_64 random(12);
  std::uniform_real_distribution<double> latitude(-90, 90);
  std::uniform_real_distribution<double> longitude(-180, 180);
  std::vector<Position> all;
  for (int i = 0; i < count; ++i) all.push_back(at(latitude(random), longitude(random)));
  for (const double lat :
       {-90.0, -80.01, -79.99, -0.001, 0.001, 55.99, 63.99, 71.99, 83.99, 84.01}) {
    for (const double lon : {-180.0, -0.001, 2.999, 3.001, 8.99, 20.99, 33.01, 179.999}) {
      all.push_back(at(lat, lon));
    }
  }
  return all;
}

TEST(MgrsCells, P1P2NameGivesBackACellThatHoldsThePlace) {
  const Grid& grid = mgrs_grid();
  for (const Position place : places(300)) {
    for (const Level& level : grid.levels()) {
      const std::string name = grid.name_of(place, level);
      const Cell cell = grid.cell(name);
      ASSERT_EQ(cell.name, name);
      ASSERT_TRUE(holds(cell, place)) << name;
      ASSERT_TRUE(contains(cell.region, label_point(cell))) << name;
    }
  }
}

TEST(MgrsCells, P4ChildrenTileTheirParent) {
  const Grid& grid = mgrs_grid();
  int number = 0;
  for (const Position place : places(60)) {
    const Level& level = grid.levels()[static_cast<std::size_t>(number++ % 3)];
    const Cell parent = grid.cell(grid.name_of(place, level));
    const std::vector<Cell> children = grid.children(parent);
    ASSERT_LE(children.size(), 100U);
    Area sum;
    std::set<std::string> seen;
    for (const Cell& child : children) {
      ASSERT_EQ(grid.parent(child)->name, parent.name) << child.name;
      ASSERT_TRUE(seen.insert(child.name).second);
      sum += area(child);
    }
    // Cells of less than a square metre do not exist; where a cell is cut, its corners are right to
    // 0.1 m and the chords along the cut to 5 cm.
    const double side = std::get<Length>(level.size).metres();
    EXPECT_NEAR(sum.square_metres(), area(parent).square_metres(), 0.1 * side + 100) << parent.name;
    EXPECT_TRUE(seen.count(grid.name_of(place, children[0].level)) == 1);
  }
}

TEST(MgrsCells, AreCutAtZoneEdges) {
  const Grid& grid = mgrs_grid();
  // 15STU and 14SQD meet at 96 W, where both are cut.
  for (const std::string_view name : {"15STU", "14SQD"}) {
    const Cell cell = grid.cell(name);
    double nearest = 1;
    for (const Position corner : cell.region.polygons[0].outer) {
      const double off = corner.longitude().degrees() + 96;
      EXPECT_GE(name == "15STU" ? off : -off, -1e-9);
      nearest = std::min(nearest, std::abs(off));
    }
    EXPECT_LT(nearest, 1e-9);
  }
  // A whole square kilometre on the map near the central meridian is larger on the ground: the
  // scale there is 0.9996 [NGA.SIG.0012, UTM].
  const Cell middle = grid.cell("31UEQ0050");
  EXPECT_NEAR(area(middle).square_kilometres(), 1 / (0.9996 * 0.9996), 2e-6);
  // Svalbard: 33X is 12 degrees wide, from 9 E to 21 E.
  EXPECT_EQ(grid.name_of(at(78, 9.01), grid.level("100km")).substr(0, 3), "33X");
  EXPECT_EQ(grid.name_of(at(78, 20.99), grid.level("100km")).substr(0, 3), "33X");
  // Norway: 32V begins at 3 E.
  EXPECT_EQ(grid.name_of(at(60, 3.01), grid.level("100km")).substr(0, 3), "32V");
}

TEST(MgrsCells, FillTheEarthFromPoleToPole) {
  // From Greenwich to 42 E: the zones of Norway and Svalbard, and both polar areas.
  const Grid& grid = mgrs_grid();
  const Level& level = grid.level("100km");
  const LatLonBox lune{Angle::degrees(-90), Angle::degrees(90), Angle::degrees(0),
                       Angle::degrees(42)};
  std::set<std::string> seen;
  double zones = 0;
  grid.visit(lune, level, Selection::touching, [&](const Cell& cell) {
    EXPECT_TRUE(seen.insert(cell.name).second) << cell.name;
    if (is_ascii_digit(cell.name[0])) zones += area(cell).square_metres();
  });
  LatLonBox between = lune;
  double expected = 0;
  for (int south = -80; south < 84; south += 4) {
    between.south = Angle::degrees(south);
    between.north = Angle::degrees(south + 4);
    expected += area(between).square_metres();
  }
  EXPECT_NEAR(zones / expected, 1, 1e-7);
  for (const Position place : places(5'000)) {
    if (place.longitude().degrees() < 0 || place.longitude().degrees() >= 42) continue;
    EXPECT_EQ(seen.count(grid.name_of(place, level)), 1U);
  }
}

TEST(MgrsNeighbours, CrossZoneEdgesAndTheAntimeridian) {
  const Grid& grid = mgrs_grid();
  // Inside a zone: the eight squares round it, clockwise from the north.
  EXPECT_EQ(names(grid.neighbours(grid.cell("31UEQ0050"))),
            (std::vector<std::string>{"31UEQ0051", "31UEQ0151", "31UEQ0150", "31UEQ0149",
                                      "31UEQ0049", "31UDQ9949", "31UDQ9950", "31UDQ9951"}));
  for (const Position place :
       {at(35, -96.0001), at(0.001, 179.999), at(-0.001, -179.999), at(63.999, 3.001),
        at(83.999, 12.001), at(84.001, -45), at(89.9, 10), at(-80.001, 100), at(-89.99, -179.99)}) {
    for (const std::string_view size : {"100km", "1km"}) {
      const Cell cell = grid.cell(grid.name_of(place, grid.level(size)));
      const std::vector<Cell> beside = grid.neighbours(cell);
      EXPECT_GE(beside.size(), 3U) << cell.name;
      bool other_zone = false;
      for (const Cell& neighbour : beside) {
        other_zone |= neighbour.name.substr(0, 3) != cell.name.substr(0, 3);
        const std::vector<std::string> back = names(grid.neighbours(neighbour));
        EXPECT_EQ(std::count(back.begin(), back.end(), cell.name), 1)
            << cell.name << " beside " << neighbour.name;
      }
      if (place != at(89.9, 10) && place != at(84.001, -45)) {
        EXPECT_TRUE(other_zone) << cell.name;
      }
    }
  }
}

TEST(MgrsVisit, FindsTheCellsOfAnAreaAcrossZones) {
  const Grid& grid = mgrs_grid();
  const LatLonBox box{Angle::degrees(34.9), Angle::degrees(35.1), Angle::degrees(-96.1),
                      Angle::degrees(-95.9)};
  const Level& level = grid.level("1km");
  std::set<std::string> found;
  grid.visit(box, level, Selection::touching, [&](const Cell& cell) { found.insert(cell.name); });
  // Every name of a fine lattice of places in the box, and nothing that none of them has.
  std::set<std::string> expected;
  for (int i = 0; i < 2'000; ++i) {
    for (int j = 0; j < 200; ++j) {
      expected.insert(grid.name_of(at(34.9 + (i + 0.5) * 1e-4, -96.1 + (j + 0.5) * 1e-3), level));
    }
  }
  for (const std::string& name : expected) EXPECT_EQ(found.count(name), 1U) << name;
  for (const std::string& name : found) {
    if (expected.count(name) == 0) {  // a sliver that the lattice missed
      EXPECT_LT(area(grid.cell(name)).square_metres(), 1e6) << name;
    }
  }
  EXPECT_LT(found.size(), expected.size() + 60);
}

TEST(MgrsNames, AreReadLeniently) {
  const Grid& grid = mgrs_grid();
  EXPECT_EQ(grid.cell("4q fj 18 56").name, "04QFJ1856");
  EXPECT_EQ(grid.cell(" 18suj233073 ").name, "18SUJ233073");
  EXPECT_THROW(grid.cell("32XLG"), Error);
  EXPECT_THROW(grid.cell("18SAA"), Error);  // no such column in zone 18
}

}  // namespace
}  // namespace sweepwright::grid
