// A ladder commences at the corner asked for.
#include <gtest/gtest.h>

#include <cmath>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

/// Direction from the middle of a region to where the pattern begins.
double commence_deg(const Region& region, const Pattern& pattern) {
  return geodesic(middle(region), commence_search_point(pattern)).start_track.degrees();
}

TEST(Commence, AtEachCornerOfARectangle) {
  for (const Position& place : {at(38, -117), at(0, 0), at(-17.5, 179.9), at(75, 16)}) {
    const Region sector = test::rectangle(place, TrueDirection(), Length::nautical_miles(30),
                                          Length::nautical_miles(20));
    for (const double corner : {45.0, 135.0, 225.0, 315.0}) {
      const RegionPatternOptions options{.spacing = Length::nautical_miles(2),
                                         .commence = TrueDirection::degrees(corner)};
      for (const Pattern& pattern :
           {make_parallel_track(sector, options), make_creeping_line(sector, options)}) {
        const double away = std::remainder(commence_deg(sector, pattern) - corner, 360);
        EXPECT_LT(std::abs(away), 20) << corner;
        // Half a spacing inside both edges, wherever it begins.
        EXPECT_NEAR(
            geodesic(middle(sector), commence_search_point(pattern)).length.nautical_miles(),
            std::hypot(14, 9), 0.02);
        // The pattern creeps away from the corner, into the area.
        EXPECT_TRUE(contains(sector, pattern.legs.back().to));
      }
    }
  }
}

TEST(Commence, AtTheCornerOfAnAreaThatStandsOnOne) {
  const Region diamond = test::rectangle(at(45, 7), TrueDirection::degrees(45),
                                         Length::nautical_miles(20), Length::nautical_miles(20));
  for (const auto& [name, corner] :
       {std::pair("n", 0.0), {"e", 90.0}, {"s", 180.0}, {"w", 270.0}}) {
    const Pattern pattern = make_parallel_track(
        diamond, {.spacing = Length::nautical_miles(1), .commence = parse_corner(name)});
    EXPECT_NEAR(std::remainder(commence_deg(diamond, pattern) - corner, 360), 0, 1) << name;
  }
}

TEST(Commence, RefusesASideThatHasTwoCorners) {
  const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                        Length::nautical_miles(20));
  EXPECT_THROW(make_parallel_track(
                   sector, {.spacing = Length::nautical_miles(1), .commence = parse_corner("n")}),
               Error);
  EXPECT_THROW(parse_corner("nnw"), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
