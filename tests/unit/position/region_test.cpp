// Regions. Areas are Planimeter's (GeographicLib 2.1.2, the tool's own output on these corners).
#include "sweepwright/position/region.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <numbers>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright {
namespace {

using testing::HasSubstr;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

Region region_of(Ring outer, std::vector<Ring> holes = {}) {
  return make_region({Polygon{std::move(outer), std::move(holes)}});
}

Ring box(double south, double west, double north, double east) {
  return {at(south, west), at(south, east), at(north, east), at(north, west)};
}

std::string fault(const std::function<void()>& call) {
  try {
    call();
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::geometry);
    return error.what();
  }
  return "no error";
}

std::string fault(std::vector<Polygon> polygons) {
  return fault([&] { make_region(polygons); });
}

TEST(RegionArea, agrees_with_planimeter) {
  // printf '60 10\n60 11\n61 11\n61 10\n' | Planimeter
  EXPECT_NEAR(area(region_of(box(60, 10, 61, 11))).square_metres(), 6122943163.1, 0.1);
  // A ring round the pole; also GeographicLib's own test Planimeter0.
  EXPECT_NEAR(area(region_of({at(89, 0), at(89, 90), at(89, 180), at(89, 270)})).square_metres(),
              24952305678.0, 0.1);
  EXPECT_NEAR(
      area(region_of({at(-89, 0), at(-89, 90), at(-89, 180), at(-89, 270)})).square_metres(),
      24952305678.0, 0.1);
  // Across the equator and Greenwich; also Planimeter0.
  EXPECT_NEAR(area(region_of({at(0, -1), at(-1, 0), at(0, 1), at(1, 0)})).square_metres(),
              24619419146.9, 0.1);
}

TEST(RegionArea, takes_holes_off) {
  const Region whole = region_of(box(10, 10, 12, 12));
  const Region hole = region_of(box(11, 11, 11.5, 11.5));
  const Region open = region_of(box(10, 10, 12, 12), {box(11, 11, 11.5, 11.5)});
  EXPECT_NEAR(area(open).square_metres(), (area(whole) - area(hole)).square_metres(), 0.1);
}

TEST(MakeRegion, keeps_the_corners_of_one_polygon_and_turns_rings_the_right_way_round) {
  Ring clockwise = box(38, -117, 39, -116);
  std::reverse(clockwise.begin(), clockwise.end());
  Ring hole = box(38.2, -116.8, 38.4, -116.6);
  const Region region = region_of(clockwise, {hole});
  ASSERT_EQ(region.polygons.size(), 1u);
  Ring turned = clockwise;
  std::reverse(turned.begin(), turned.end());
  std::reverse(hole.begin(), hole.end());
  EXPECT_EQ(region.polygons[0].outer, turned);
  EXPECT_EQ(region.polygons[0].holes, std::vector<Ring>{hole});
}

TEST(MakeRegion, drops_repeated_and_closing_corners) {
  Ring ring = box(38, -117, 39, -116);
  const Ring clean = ring;
  ring.insert(ring.begin() + 1, ring[0]);
  ring.push_back(ring[0]);
  EXPECT_EQ(region_of(ring).polygons[0].outer, clean);
}

TEST(MakeRegion, refuses_what_has_no_area) {
  EXPECT_THAT(fault(std::vector<Polygon>{}), HasSubstr("no polygon"));
  EXPECT_THAT(fault({{{at(1, 1), at(2, 2)}, {}}}), HasSubstr("2 different corners"));
  EXPECT_THAT(fault({{{at(1, 1), at(1, 1), at(1, 1)}, {}}}), HasSubstr("1 different corner;"));
  // Places of one meridian lie on one line.
  EXPECT_THAT(fault({{{at(1, 1), at(2, 1), at(3, 1)}, {}}}), HasSubstr("on one line"));
}

TEST(MakeRegion, names_the_place_where_edges_cross) {
  // A bow tie whose edges meet half way up: near 38.5 N 116.5 W.
  const std::string message =
      fault({{{at(38, -117), at(38, -116), at(39, -117), at(39, -116)}, {}}});
  EXPECT_THAT(message, HasSubstr("cross near 38-30."));
  EXPECT_THAT(message, HasSubstr("116-30."));
  // One that has area, because one loop is larger.
  EXPECT_THAT(fault({{{at(0, 0), at(0, 3), at(2, 3), at(-1, 1), at(2, 0)}, {}}}),
              HasSubstr("cross near"));
}

TEST(MakeRegion, refuses_rings_that_touch_themselves_and_holes_outside) {
  // A spike out and back.
  EXPECT_THAT(fault({{{at(0, 0), at(0, 1), at(0, 2), at(0, 1), at(1, 1), at(1, 0)}, {}}}),
              HasSubstr("near 00-00.00N 001-00.00E"));
  EXPECT_THAT(fault({{box(0, 0, 1, 1), {box(2, 2, 3, 3)}}}), HasSubstr("hole"));
  EXPECT_THAT(fault({{box(0, 0, 1, 1), {box(0.5, 0.5, 1.5, 1.5)}}}), HasSubstr("hole"));
}

TEST(MakeRegion, refuses_overlap_and_what_is_too_large) {
  EXPECT_THAT(fault({{box(0, 0, 1, 1), {}}, {box(0.5, 0.5, 1.5, 1.5), {}}}), HasSubstr("overlap"));
  EXPECT_THAT(fault({{box(0, 0, 30, 30), {}}}), HasSubstr("km"));
  EXPECT_THAT(fault({{box(0, 0, 1, 1), {}}, {box(0, 50, 1, 51), {}}}), HasSubstr("km"));
}

TEST(MakeRegion, keeps_polygons_that_lie_apart) {
  const Region region = make_region({{box(0, 0, 1, 1), {}}, {box(0, 2, 1, 3), {}}});
  EXPECT_EQ(region.polygons.size(), 2u);
  EXPECT_NEAR(area(region).square_metres(),
              (area(region_of(box(0, 0, 1, 1))) + area(region_of(box(0, 2, 1, 3)))).square_metres(),
              10);
}

TEST(MakeRegion, joins_halves_that_meet_at_the_antimeridian) {
  for (const double latitude : {-17.0, 0.0, 52.0, 75.0}) {
    const Ring west{at(latitude, 179), at(latitude, 180), at(latitude + 1, 180),
                    at(latitude + 1, 179)};
    const Ring east{at(latitude, -180), at(latitude, -179), at(latitude + 1, -179),
                    at(latitude + 1, -180)};
    const Region region = make_region({{west, {}}, {east, {}}});
    ASSERT_EQ(region.polygons.size(), 1u) << latitude;
    EXPECT_TRUE(region.polygons[0].holes.empty()) << latitude;
    EXPECT_NEAR(area(region).square_metres(),
                (area(region_of(west)) + area(region_of(east))).square_metres(), 10);
  }
}

TEST(MakeRegion, thousands_of_corners_take_no_long_time_even_when_they_cross) {
  Ring star;
  constexpr int kCorners = 20000;
  for (int i = 0; i < kCorners; ++i) {
    star.push_back(travel(at(45, 7), TrueDirection::degrees(360.0 * i / kCorners),
                          Length::kilometres(i % 2 == 0 ? 50 : 51))
                       .position);
  }
  const auto before = std::chrono::steady_clock::now();
  EXPECT_EQ(region_of(star).polygons[0].outer.size(), static_cast<std::size_t>(kCorners));
  std::swap(star[10000], star[10002]);
  EXPECT_THAT(fault({{star, {}}}), HasSubstr("cross near"));
  EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::seconds(60));
}

TEST(RegionContains, inside_boundary_hole_and_far_away) {
  const Region region = region_of(box(10, 10, 12, 12), {box(11, 11, 11.5, 11.5)});
  EXPECT_TRUE(contains(region, at(10.5, 10.5)));
  EXPECT_TRUE(contains(region, at(10, 10)));
  EXPECT_TRUE(contains(region, at(11, 10)));
  EXPECT_TRUE(contains(region, at(11, 11.25)));  // the hole's edge, a geodesic: just north of it
  EXPECT_FALSE(contains(region, at(11.2, 11.2)));
  EXPECT_FALSE(contains(region, at(9.9, 11)));
  EXPECT_FALSE(contains(region, at(-10, -170)));
}

TEST(RegionContains, across_the_antimeridian_and_at_the_pole) {
  EXPECT_TRUE(contains(region_of({at(-18, 179), at(-18, -179), at(-17, -179), at(-17, 179)}),
                       at(-17.5, 180)));
  const Region cap = region_of({at(85, 0), at(85, 120), at(85, -120)});
  EXPECT_TRUE(contains(cap, at(90, 0)));
  EXPECT_TRUE(contains(cap, at(89, 17)));
  EXPECT_FALSE(contains(cap, at(84, 17)));
}

TEST(RegionMiddle, does_not_depend_on_the_first_corner_nor_on_extra_corners) {
  const Ring ring = box(10, 179, 12, -179);
  const Position once = middle(region_of(ring));
  EXPECT_NEAR(once.latitude().degrees(), 11, 0.01);
  EXPECT_NEAR(std::abs(once.longitude().degrees()), 180, 1e-9);
  Ring rotated = ring;
  std::rotate(rotated.begin(), rotated.begin() + 1, rotated.end());
  EXPECT_LT(geodesic(once, middle(region_of(rotated))).length, Length::metres(1e-3));
  Ring more = ring;
  const GeodesicLine edge = geodesic(ring[0], ring[1]);
  more.insert(more.begin() + 1, travel(ring[0], edge.start_track, edge.length / 2).position);
  EXPECT_LT(geodesic(once, middle(region_of(more))).length, Length::metres(50));
}

TEST(RegionMiddle, of_an_area_round_the_pole_lies_at_the_pole) {
  EXPECT_NEAR(
      middle(region_of({at(85, 0), at(85, 90), at(85, 180), at(85, -90)})).latitude().degrees(), 90,
      1e-6);
}

TEST(MainCorners, drop_corners_on_straight_sides) {
  const Ring ring = box(38, -117, 39, -116);
  Ring dense;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Position next = ring[(i + 1) % ring.size()];
    const GeodesicLine edge = geodesic(ring[i], next);
    for (int k = 0; k < 10; ++k) {
      dense.push_back(travel(ring[i], edge.start_track, edge.length * (0.1 * k)).position);
    }
  }
  Ring kept = main_corners(dense, Length::metres(1));
  ASSERT_EQ(kept.size(), 4u);
  std::sort(kept.begin(), kept.end());
  Ring corners = ring;
  std::sort(corners.begin(), corners.end());
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_LT(geodesic(kept[i], corners[i]).length, Length::metres(1e-3));
  }
}

TEST(Thinned, keeps_the_ends_and_no_point_that_the_rest_can_do_without) {
  // A quarter of a circle of 1000 m: chords of n degrees lie 1000 (1 - cos(n / 2)) m inside it.
  PlaneLine arc;
  for (int i = 0; i <= 900; ++i) {
    const double angle = i * std::numbers::pi / 1800;
    arc.push_back({Length::metres(1000 * std::sin(angle)), Length::metres(1000 * std::cos(angle))});
  }
  const PlaneLine few = thinned(arc, Length::metres(1));
  // An arc is halved until its chords lie 1 m inside: 5.6 degrees are too much, 2.8 are enough.
  EXPECT_EQ(few.size(), 33U);
  EXPECT_EQ(few.front().right, arc.front().right);
  EXPECT_EQ(few.back().up, arc.back().up);
  for (std::size_t i = 1; i < few.size(); ++i) {
    const double middle_m = std::hypot((few[i - 1].right + few[i].right).metres() / 2,
                                       (few[i - 1].up + few[i].up).metres() / 2);
    EXPECT_GT(middle_m, 999 - 1e-9);
  }
  const PlaneLine straight{
      arc[0],
      {arc[0].right * 0.5 + arc[900].right * 0.5, arc[0].up * 0.5 + arc[900].up * 0.5},
      arc[900]};
  EXPECT_EQ(thinned(straight, Length::metres(0.001)).size(), 2U);
}

}  // namespace
}  // namespace sweepwright
