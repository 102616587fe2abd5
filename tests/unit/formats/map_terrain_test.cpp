// The shading of the ground under a map.
//
// Checks against the outside: the light falls from the upper left, so that on a cone the shaded
// side is the lower right one; contrast of ink on the darkest shade by WCAG 2.1.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "drawn.hpp"
#include "plan_cases.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::uint8_t kDarkestShade = 200;  // docs/style-guide.md: #c8c8c8

/// A cone of 2000 m on the test area's middle, 60 posts a degree, within a degree and a half.
terrain::ElevationModel cone() {
  terrain::ElevationTile tile;
  tile.lattice = terrain::GeographicLattice{Angle::degrees(39.5), Angle::degrees(-118),
                                            Angle::degrees(1.0 / 60), Angle::degrees(1.0 / 60)};
  tile.rows = 91;
  tile.columns = 121;
  for (int row = 0; row < tile.rows; ++row) {
    for (int column = 0; column < tile.columns; ++column) {
      const double north = 39.5 - row / 60.0 - 38.73;
      const double east = (-118 + column / 60.0 + 116.95) * std::cos(0.676);
      tile.heights_m.push_back(
          static_cast<float>(std::max(0.0, 2000 - 8000 * std::hypot(north, east))));
    }
  }
  return terrain::ElevationModel({tile});
}

plan::Plan plan_with_ground() {
  plan::Plan plan = make_plan(test::mountain_mission());
  plan.mission.elevation = plan::Elevation{cone(), {}};
  return plan;
}

std::vector<Shape> shades(const Drawing& map) {
  std::vector<Shape> found;
  for (const Shape& shape : test::all<Shape>(map)) {
    const bool grey = shape.fill && shape.fill->red == shape.fill->green &&
                      shape.fill->red == shape.fill->blue && shape.fill->red >= 200 &&
                      shape.fill->red < 255;
    if (grey && shape.rings.size() > 1) found.push_back(shape);
  }
  return found;
}

TEST(MapTerrain, TheSideAwayFromTheUpperLeftIsDark) {
  const Drawing map = draw_overview_map(plan_with_ground(), {180, 150});
  const std::vector<Shape> found = shades(map);
  ASSERT_FALSE(found.empty());
  double x = 0;
  double y = 0;
  double squares = 0;
  for (const Shape& shape : found) {
    if (shape.fill->red > 213) continue;
    for (const PaperLine& ring : shape.rings) {
      const double width = ring[1].x_mm - ring[0].x_mm;
      x += width * (ring[0].x_mm + ring[1].x_mm) / 2;
      y += width * ring[0].y_mm;
      squares += width;
    }
  }
  ASSERT_GT(squares, 0);
  // The summit lies where the datum, the middle of the area, is drawn.
  PaperPoint summit;
  for (const Text& text : test::all<Text>(map)) {
    if (text.text == "datum" && text.size_mm > 2.5) summit = text.at;
  }
  const Group& over = std::get<Group>(map.elements.at(1).what);
  for (const Element& element : over.elements) {
    const Disc* disc = std::get_if<Disc>(&element.what);
    if (disc != nullptr && disc->radius_mm == 1.4) summit = disc->centre;
  }
  EXPECT_GT(x / squares, summit.x_mm + 3);
  EXPECT_GT(y / squares, summit.y_mm + 3);
}

TEST(MapTerrain, InkStandsOutOnTheDarkestShade) {
  const auto luminance = [](Colour colour) {
    return std::pow((colour.red / 255.0 + 0.055) / 1.055, 2.4);  // greys above 0.04
  };
  const double ink = luminance({26, 26, 26});
  EXPECT_GE((luminance({kDarkestShade, kDarkestShade, kDarkestShade}) + 0.05) / (ink + 0.05), 10);
  for (const Shape& shape : shades(draw_sector_map(plan_with_ground(), 0, {117, 130}))) {
    EXPECT_GE(shape.fill->red, kDarkestShade);
  }
}

TEST(MapTerrain, IsExplainedOnlyWhereItIsShown) {
  const std::string item = "shaded slopes";
  const plan::Plan with = plan_with_ground();
  EXPECT_EQ(test::words(draw_sector_map(with, 0, {117, 130})).count(item), 1U);
  EXPECT_EQ(test::words(draw_overview_map(with, {180, 150})).count(item), 1U);
  plan::Plan elsewhere = with;
  elsewhere.mission.elevation = plan::Elevation{terrain::ElevationModel(), {}};
  EXPECT_EQ(test::words(draw_sector_map(elsewhere, 0, {117, 130})).count(item), 0U);
  EXPECT_TRUE(shades(draw_sector_map(elsewhere, 0, {117, 130})).empty());
}

TEST(MapTerrain, GroundWithoutHeightStaysWhite) {
  const Drawing map = draw_overview_map(plan_with_ground(), {277, 150});
  // The model ends at 116 W, some 0.65 degrees east of the area: the right edge is off it.
  const PaperBox frame = *std::get<Group>(map.elements.at(0).what).clip;
  for (const Shape& shape : shades(map)) {
    for (const PaperLine& ring : shape.rings) EXPECT_LT(ring[1].x_mm, frame.right_mm - 5);
  }
}

TEST(MapTerrain, SamePlanSameDrawing) {
  const plan::Plan plan = plan_with_ground();
  EXPECT_EQ(write_svg(draw_sector_map(plan, 0, {117, 130})),
            write_svg(draw_sector_map(plan, 0, {117, 130})));
}

}  // namespace
}  // namespace sweepwright::formats
