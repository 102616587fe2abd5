// Areas with bays, arms and holes: the promises of divide.hpp where they are hardest to keep.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "support/ground.hpp"
#include "support/shapes.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::sector {
namespace {

using test::at;
using test::on_ground;
using test::Shape;

std::size_t parts(const std::vector<Region>& pieces) {
  std::size_t count = 0;
  for (const Region& piece : pieces) count += piece.polygons.size();
  return count;
}

TEST(UglyShapes, AreTiledInProportionAnywhereOnEarth) {
  const std::vector<double> shares{3, 1, 2, 2, 1.5};
  const double all = 9.5;
  for (const Position& place : test::awkward_places()) {
    for (const Shape& shape : test::ugly_shapes()) {
      const Region whole = on_ground(shape, place, TrueDirection::degrees(20));
      const std::vector<Region> pieces = divide(whole, shares);
      ASSERT_EQ(pieces.size(), shares.size());
      Area sum;
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        sum += area(pieces[i]);
        EXPECT_NEAR(area(pieces[i]) / area(whole), shares[i] / all, 1e-8) << shape.name;
        for (std::size_t j = 0; j < i; ++j) {
          EXPECT_LT(common_area(pieces[i], pieces[j]) / area(whole), 1e-9) << shape.name;
        }
      }
      EXPECT_NEAR(sum / area(whole), 1, 1e-9) << shape.name;
    }
  }
}

TEST(UglyShapes, AreCutIntoSectorsOfOnePart) {
  for (const Shape& shape : test::ugly_shapes()) {
    const Region whole = on_ground(shape, at(38, -117));
    for (std::size_t units = 1; units <= 8; ++units) {
      EXPECT_EQ(parts(divide(whole, std::vector<double>(units, 1.0))), units) << shape.name;
    }
  }
}

// What "wherever a straight cut allows" means for two units: the four ways to cut along or across
// the axis, tried here by halving, without the search of the library.
TEST(UglyShapes, ComeInOnePartWheneverOneStraightCutDoesIt) {
  std::mt19937 random(7);  // fixed: a failure can be repeated
  std::uniform_real_distribution<double> reach(4, 30);
  int possible = 0;
  for (int round = 0; round < 150; ++round) {
    Shape shape{"random", {}, {}};
    for (int i = 0; i < 11; ++i) {
      const double r = reach(random);
      const double angle = i * 2 * std::numbers::pi / 11;
      shape.outer.emplace_back(r * std::cos(angle), r * std::sin(angle));
    }
    const Region whole = on_ground(shape, at(52, 5));
    const TrueDirection axis;
    const LocalPlane plane = local_plane(whole, axis);
    const PlaneRegion laid = to_plane(whole, plane);
    bool one_cut_does = false;
    for (const bool across : {false, true}) {
      for (const double share : {0.3, 0.7}) {
        const auto split = [&](Length here) {
          return across ? split_up(laid, here) : split_right(laid, here);
        };
        Span span = across ? extent_up(laid) : extent_right(laid);
        for (int step = 0; step < 50; ++step) {
          const Length middle = (span.low + span.high) / 2;
          const bool low = area(to_region(split(middle).first, plane)) < share * area(whole);
          (low ? span.low : span.high) = middle;
        }
        const auto [first, second] = split(span.low);
        one_cut_does |= first.polygons.size() == 1 && second.polygons.size() == 1;
      }
    }
    possible += one_cut_does ? 1 : 0;
    const std::vector<Region> pieces = divide(whole, std::vector<double>{0.3, 0.7}, axis);
    EXPECT_EQ(parts(pieces) == 2, one_cut_does) << "round " << round;
  }
  EXPECT_GT(possible, 50);
}

TEST(UglyShapes, ShareTheirCornersToTheLastDigit) {
  for (const Shape& shape : test::ugly_shapes()) {
    const std::vector<Region> pieces =
        divide(on_ground(shape, at(-17.5, 179.9)), std::vector<double>{3, 1, 2, 2, 1.5});
    for (const Region& piece : pieces) {
      for (const Region& other : pieces) {
        if (&piece == &other) continue;
        for (const Position& corner : piece.polygons[0].outer) {
          if (!contains(other, corner)) continue;
          // It lies on the other's edge, so it is one of its corners.
          const auto is_corner = [&](const Ring& ring) {
            return std::find(ring.begin(), ring.end(), corner) != ring.end();
          };
          const Polygon& polygon = other.polygons[0];
          EXPECT_TRUE(is_corner(polygon.outer) ||
                      std::any_of(polygon.holes.begin(), polygon.holes.end(), is_corner))
              << shape.name;
        }
      }
    }
  }
}

TEST(UglyShapes, LeaveNoCrewAcrossTheLake) {
  // Five crews round an island: no sector goes all the way round it.
  for (const Region& piece :
       divide(on_ground(test::ugly_shapes()[4], at(0, 0)), std::vector<double>(5, 1.0))) {
    EXPECT_TRUE(piece.polygons[0].holes.empty());
  }
}

TEST(UglyShapes, SeveralRectanglesNeedNotBeJoined) {
  // Two rectangles apart, and two units that can cover just one each.
  const Region near = test::rectangle(at(38, -117), TrueDirection(), Length::nautical_miles(20),
                                      Length::nautical_miles(10));
  const Region far = test::rectangle(at(39, -115), TrueDirection::degrees(60),
                                     Length::nautical_miles(30), Length::nautical_miles(10));
  const Region both{{near.polygons[0], far.polygons[0]}};
  const std::vector<double> shares{area(far).square_metres(), area(near).square_metres()};
  const std::vector<Region> pieces = divide(both, shares);
  EXPECT_EQ(parts(pieces), 2u);
  EXPECT_NEAR(common_area(pieces[0], far) / area(far), 1, 1e-9);
}

}  // namespace
}  // namespace sweepwright::sector
