#include "sweepwright/sector/divide.hpp"

#include <gtest/gtest.h>

#include <random>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::sector {
namespace {

using test::at;

double km2(const Region& region) {
  return area(region).square_kilometres();
}

/// Checks P1: areas add up, are in proportion, and no random place lies in two pieces or in none.
void expect_tiles(const Region& whole, const std::vector<Region>& pieces,
                  const std::vector<double>& shares) {
  ASSERT_EQ(pieces.size(), shares.size());
  double sum = 0;
  double share_sum = 0;
  for (const double share : shares) share_sum += share;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    sum += km2(pieces[i]);
    EXPECT_NEAR(km2(pieces[i]) / km2(whole), shares[i] / share_sum, 1e-8) << "piece " << i;
  }
  EXPECT_NEAR(sum / km2(whole), 1, 1e-9);

  const LocalPlane plane = local_plane(whole);
  const PlaneRegion laid = to_plane(whole, plane);
  const Span right = extent_right(laid);
  const Span up = extent_up(laid);
  std::mt19937 random(20261125);  // fixed: a failure can be repeated
  std::uniform_real_distribution<double> unit(0, 1);
  for (int i = 0; i < 200; ++i) {
    const Position place = plane.to_position(
        {right.low + right.extent() * unit(random), up.low + up.extent() * unit(random)});
    int holders = 0;
    for (const Region& piece : pieces) holders += contains(piece, place) ? 1 : 0;
    EXPECT_EQ(holders, contains(whole, place) ? 1 : 0);
  }
}

TEST(Divide, TilesARectangleAnywhereOnEarth) {
  const std::vector<double> shares{3, 1, 2, 2, 1.5};
  for (const Position& place : test::awkward_places()) {
    const Region whole = test::rectangle(place, TrueDirection::degrees(35),
                                         Length::nautical_miles(40), Length::nautical_miles(25));
    expect_tiles(whole, divide(whole, shares), shares);
  }
}

TEST(Divide, CutsRectanglesIntoRectangles) {
  const Region whole = test::rectangle(at(45, 7), TrueDirection::degrees(20),
                                       Length::nautical_miles(40), Length::nautical_miles(20));
  for (const Region& piece : divide(whole, std::vector<double>{1, 1, 1, 1, 1, 1})) {
    ASSERT_EQ(piece.polygons.size(), 1u);
    const Ring corners = main_corners(piece.polygons[0].outer, Length::metres(20));
    ASSERT_EQ(corners.size(), 4u);
    for (std::size_t i = 0; i < 4; ++i) {
      const TrueDirection in = geodesic(corners[(i + 3) % 4], corners[i]).end_track;
      const TrueDirection out = geodesic(corners[i], corners[(i + 1) % 4]).start_track;
      // Counterclockwise: each corner turns left; opposite sides of 40 NM converge by 0.3 degree.
      EXPECT_NEAR(turn_between(in, out).degrees(), -90, 0.35);
    }
  }
}

TEST(Divide, TilesAConcaveAreaWithAHole) {
  const Region whole =
      make_region({{{at(38, -117), at(38, -116), at(38.3, -116), at(38.3, -116.6), at(38.7, -116.6),
                     at(38.7, -117)},
                    {{at(38.1, -116.8), at(38.2, -116.8), at(38.2, -116.7), at(38.1, -116.7)}}}});
  const std::vector<double> shares{1, 2, 3, 4};
  expect_tiles(whole, divide(whole, shares), shares);
}

TEST(Divide, TilesAnAreaRoundThePole) {
  Ring ring;
  for (int i = 0; i < 12; ++i) ring.push_back(at(88, 30 * i));
  const Region whole = make_region({{ring, {}}});
  const std::vector<double> shares{1, 1, 1};
  expect_tiles(whole, divide(whole, shares), shares);
}

TEST(Divide, SharesCornersBetweenNeighbours) {
  const Region whole = test::rectangle(at(10, 20), TrueDirection(), Length::nautical_miles(30),
                                       Length::nautical_miles(30));
  const std::vector<Region> pieces = divide(whole, std::vector<double>{2, 1, 1});
  // Every corner inside the whole's boundary belongs to at least two pieces, to the last digit.
  for (const Region& piece : pieces) {
    for (const Position& corner : piece.polygons[0].outer) {
      int owners = 0;
      for (const Region& other : pieces) {
        const Ring& ring = other.polygons[0].outer;
        owners += std::find(ring.begin(), ring.end(), corner) != ring.end() ? 1 : 0;
      }
      const Ring& outer = whole.polygons[0].outer;
      bool is_whole_corner = false;
      for (const Position& p : outer)
        is_whole_corner |= geodesic(p, corner).length < Length::metres(0.01);
      EXPECT_EQ(owners >= 2, !is_whole_corner);
    }
  }
}

TEST(Divide, KeepsToTheAxisAskedFor) {
  const Region whole = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(20),
                                       Length::nautical_miles(20));
  const std::vector<Region> pieces =
      divide(whole, std::vector<double>{1, 1}, TrueDirection::degrees(45));
  // A square cut on its diagonal: two triangles.
  EXPECT_EQ(main_corners(pieces[0].polygons[0].outer, Length::metres(50)).size(), 3u);
}

TEST(Divide, RefusesSharesThatMakeNoSense) {
  const Region whole = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(20),
                                       Length::nautical_miles(20));
  EXPECT_THROW(divide(whole, std::vector<double>{}), Error);
  EXPECT_THROW(divide(whole, std::vector<double>{1, 0}), Error);
  EXPECT_THROW(divide(whole, std::vector<double>{1, -1}), Error);
  EXPECT_THROW(divide(whole, std::vector<double>{1, NAN}), Error);
  EXPECT_THROW(divide(whole, std::vector<double>{1, 1e-9}), Error);
}

TEST(LongSide, FindsTheLongSideOfARectangle) {
  for (const double axis : {0.0, 35.0, 90.0, 135.0}) {
    const Region whole = test::rectangle(at(38, -117), TrueDirection::degrees(axis),
                                         Length::nautical_miles(40), Length::nautical_miles(10));
    // Either way along the side is right: compare the doubled angles.
    const Angle off = turn_between(long_side(whole), TrueDirection::degrees(axis));
    EXPECT_NEAR(normalized_180(off * 2).degrees(), 0, 0.4);
  }
}

}  // namespace
}  // namespace sweepwright::sector
