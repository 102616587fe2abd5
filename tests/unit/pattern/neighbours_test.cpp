// Crews in neighbouring sectors: the ground between their outermost legs is half of one's spacing
// and half of the other's, so that none is left out and none is flown twice.
//
// Source of the rule: legs begin and end half a spacing inside the sector [civil air search
// training text, sec. 8, seen]; that neighbours are one spacing apart follows.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "support/ground.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {
namespace {

struct Neighbours {
  Pattern low;
  Pattern high;
};

/// Two crews on the halves of an area that is cut across its long side, which lies north-south.
Neighbours two_crews(Position place, TrueDirection track, Gaps gaps) {
  const Region area = test::rectangle(place, TrueDirection(), Length::nautical_miles(40),
                                      Length::nautical_miles(20));
  const std::vector<Region> pieces =
      sector::divide(area, std::vector<double>{1, 1.6}, TrueDirection());
  const auto pattern = [&](const Region& piece, double spacing) {
    return make_parallel_track(
        piece, {.spacing = Length::nautical_miles(spacing), .first_track = track, .gaps = gaps});
  };
  return {pattern(pieces[0], 1), pattern(pieces[1], 1.6)};
}

/// How far apart two patterns are, by the ends and middles of their search legs.
Length distance_between(const Pattern& a, const Pattern& b) {
  Length least = Length::kilometres(20000);
  const auto points = [](const Pattern& pattern) {
    std::vector<Position> out;
    for (const Leg& leg : pattern.legs) {
      if (leg.kind != LegKind::search) continue;
      out.insert(out.end(), {leg.from, leg.to,
                             travel(leg.from, leg.line.start_track, leg.line.length / 2).position});
    }
    return out;
  };
  const std::vector<Position> others = points(b);
  for (const Position& p : points(a)) {
    for (const Position& q : others) least = std::min(least, geodesic(p, q).length);
  }
  return least;
}

TEST(Neighbours, AreHalfOfEachSpacingApartAlongTheBorder) {
  for (const Position& place : test::awkward_places()) {
    for (const Gaps gaps : {Gaps::as_asked, Gaps::even}) {
      // Legs beside the border: their middles are nearest to each other.
      const Neighbours crews = two_crews(place, TrueDirection::degrees(90), gaps);
      const Length wanted = (crews.low.spacing + crews.high.spacing) / 2;
      EXPECT_NEAR(distance_between(crews.low, crews.high) / wanted, 1, 2e-3);
    }
  }
}

TEST(Neighbours, EndTheirLegsHalfOfEachSpacingFromTheBorder) {
  for (const Position& place : test::awkward_places()) {
    for (const Gaps gaps : {Gaps::as_asked, Gaps::even}) {
      // Legs end on to the border. Their ends need not lie opposite each other: compare how far
      // the patterns reach towards it, on the area's own axis.
      const Neighbours crews = two_crews(place, TrueDirection(), gaps);
      const LocalPlane plane(place, TrueDirection());
      const auto heights = [&](const Pattern& pattern) {
        std::vector<Length> out;
        for (const Leg& leg : pattern.legs) {
          if (leg.kind != LegKind::search) continue;
          out.push_back(plane.to_plane(leg.from).up);
          out.push_back(plane.to_plane(leg.to).up);
        }
        return out;
      };
      std::vector<Length> low = heights(crews.low);
      std::vector<Length> high = heights(crews.high);
      const Length gap =
          *std::min_element(high.begin(), high.end()) - *std::max_element(low.begin(), low.end());
      EXPECT_NEAR(gap / ((crews.low.spacing + crews.high.spacing) / 2), 1, 5e-3);
    }
  }
}

}  // namespace
}  // namespace sweepwright::pattern
