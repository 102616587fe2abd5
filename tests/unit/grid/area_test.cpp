// Exact areas of cells, against GeographicLib's areas of polygons with rhumb lines for edges
// (parallels and meridians are rhumb lines), class PolygonAreaRhumb, 2.1.2.
#include <gtest/gtest.h>

#include <GeographicLib/PolygonArea.hpp>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::grid {
namespace {

double rhumb_area(const LatLonBox& box) {
  GeographicLib::PolygonAreaRhumb polygon(GeographicLib::Rhumb::WGS84());
  const auto add = [&](Angle latitude, Angle longitude) {
    polygon.AddPoint(latitude.degrees(), longitude.degrees());
  };
  const Angle middle = box.west + width(box) / 2;  // so that no edge is longer than half way round
  add(box.south, box.west);
  add(box.south, middle);
  add(box.south, box.east);
  add(box.north, box.east);
  add(box.north, middle);
  add(box.north, box.west);
  double perimeter = 0;
  double square_metres = 0;
  polygon.Compute(false, true, perimeter, square_metres);
  return square_metres;
}

TEST(Area, OfCellsAgreesWithRhumbPolygons) {
  for (const std::string_view system : {"quarter", "gars"}) {
    const Grid& used = grid(system);
    for (const Level& level : used.levels()) {
      for (double latitude = -89.99; latitude < 90; latitude += 7.3) {
        const Cell cell = used.cell(
            used.name_of(Position::at(Angle::degrees(latitude), Angle::degrees(77.7)), level));
        // GeographicLib's polygon areas are right to 0.1 square metre.
        ASSERT_NEAR(area(cell).square_metres(), rhumb_area(*cell.box), 0.1) << cell.name;
      }
    }
  }
}

TEST(Area, OfTheWorldsCellsIsTheEllipsoid) {
  const Grid& quarter = grid("quarter");
  double sum = 0;
  quarter.visit(
      LatLonBox{Angle::degrees(-90), Angle::degrees(90), Angle::degrees(-180), Angle::degrees(180)},
      quarter.level("1deg"), Selection::touching,
      [&](const Cell& cell) { sum += area(cell).square_metres(); });
  // WGS 84 surface area 510,065,621.7 square kilometres [NIMA TR8350.2, from the defining
  // constants].
  EXPECT_NEAR(sum / 510'065'621'724'078.9, 1, 1e-11);
}

TEST(Outline, HasTheAreaOfTheCell) {
  for (const std::string_view name : {"166LM37", "166LM", "001AA", "720QZ23", "001HN1"}) {
    const Cell cell = grid("gars").cell(name);
    EXPECT_NEAR(sweepwright::area(outline(cell)) / area(cell), 1, 3e-5) << name;
  }
}

TEST(Box, RefusesWhatHasNoArea) {
  const auto box = [](double south, double north, double west, double east) {
    return LatLonBox{Angle::degrees(south), Angle::degrees(north), Angle::degrees(west),
                     Angle::degrees(east)};
  };
  EXPECT_NO_THROW(check(box(1, 2, 179, -179)));
  EXPECT_THROW(check(box(2, 1, 3, 4)), Error);
  EXPECT_THROW(check(box(1, 1, 3, 4)), Error);
  EXPECT_THROW(check(box(1, 2, 3, 3)), Error);
  EXPECT_THROW(check(box(1, 91, 3, 4)), Error);
  EXPECT_THROW(check(box(1, 2, 3, 181)), Error);
  EXPECT_THROW(check(box(1, 2, 3, std::numeric_limits<double>::quiet_NaN())), Error);
}

}  // namespace
}  // namespace sweepwright::grid
