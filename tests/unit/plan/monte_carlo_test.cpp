// Hidden positions against the legs of a pattern: the predicted probability of detection comes
// true.
//
// A million positions are hidden between the middle legs of a parallel track search, as this
// library draws it on the Earth. Each leg passes each position at the distance that the drawn legs
// have, and detects it by chance with the lateral range curve, independently of the other legs. The
// share found lies within three standard errors, sqrt(p (1 - p) / n), of the prediction.
//
// Source: Koopman, Search and Screening (1946), chapters 2 and 3 [from memory]: lateral range
//   curves; erf(sqrt(pi)/2 W/S) for endless legs under the inverse cube law.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <random>

#include "support/ground.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/sweep/parallel_sweeps.hpp"

namespace sweepwright::plan {
namespace {

using sweep::DetectionLaw;

constexpr int kLegs = 400;
constexpr int kPositions = 1'000'000;
const Length kSpacing = Length::nautical_miles(0.25);

/// A search leg on the plane: right = across + slope x up.
struct PlaneLeg {
  double across_m;
  double slope;
};

std::vector<PlaneLeg> plane_legs(const pattern::Pattern& pattern, const LocalPlane& plane) {
  std::vector<PlaneLeg> legs;
  for (const pattern::Leg& leg : pattern.legs) {
    if (leg.kind != pattern::LegKind::search) continue;
    const PlanePoint from = plane.to_plane(leg.from);
    const PlanePoint to = plane.to_plane(leg.to);
    const double slope = (to.right - from.right) / (to.up - from.up);
    legs.push_back({from.right.metres() - slope * from.up.metres(), slope});
  }
  return legs;
}

/// A way to detect, and what is said to come of it.
struct Detector {
  std::string name;
  std::function<double(Length offset)> near;  ///< chance that one of the nearest legs detects
  double far_factor_m2;  ///< of the sum of 1 / distance^2 over all other legs: their chance to miss
  double predicted;
  int found = 0;
};

Detector inverse_cube(double coverage) {
  const Length width = kSpacing * coverage;
  const double w = width.metres();
  return {"inverse cube, coverage " + std::to_string(coverage),
          [width](Length offset) {
            return sweep::lateral_range(DetectionLaw::inverse_cube, width, offset).value();
          },
          w * w / (4 * std::acos(-1.0)), std::erf(std::sqrt(std::acos(-1.0)) / 2 * coverage)};
}

Detector definite_range(double coverage) {
  const Length width = kSpacing * coverage;
  return {"definite range, coverage " + std::to_string(coverage),
          [width](Length offset) {
            return sweep::lateral_range(DetectionLaw::definite_range, width, offset).value();
          },
          0, coverage};
}

/// A curve that falls evenly to nothing at 1.6 spacings: three or four legs reach each place.
Detector cone() {
  const std::vector<sweep::LateralRangePoint> points{{Length(), sweep::Probability(0.7)},
                                                     {1.6 * kSpacing, sweep::Probability(0)}};
  const sweep::LateralRangeCurve curve(points, sweep::Sides::alike);
  return {"a planner's curve", [curve](Length offset) { return curve.at(offset).value(); }, 0,
          sweep::parallel_sweeps_probability(curve, kSpacing).value()};
}

class Chance {
 public:
  /// Evenly spread over 0 to 1; the same on every machine.
  double next() { return static_cast<double>(engine_() >> 11U) * 0x1p-53; }

 private:
  std::mt19937_64 engine_{20260714};
};

/// Hides positions round the ladder's middle and lets each detector search for them.
void search(const std::vector<PlaneLeg>& legs, std::vector<Detector>& detectors) {
  constexpr int kNear = 3;  // legs to each side that are passed one by one
  const int middle = static_cast<int>(legs.size()) / 2;
  const auto leg = [&](int i) { return legs[static_cast<std::size_t>(i)]; };
  Chance chance;
  for (int n = 0; n < kPositions; ++n) {
    // Within one spacing of the middle leg, along 8 NM of it.
    const double up = (chance.next() - 0.5) * Length::nautical_miles(8).metres();
    const double right = leg(middle).across_m + leg(middle).slope * up +
                         (chance.next() - 0.5) * 2 * kSpacing.metres();
    const auto distance = [&](const PlaneLeg& each) {
      return (right - each.across_m - each.slope * up) / std::sqrt(1 + each.slope * each.slope);
    };
    double far = 0;
    for (int i = 0; i < static_cast<int>(legs.size()); ++i) {
      if (std::abs(i - middle) <= kNear) continue;
      const double d = distance(leg(i));
      far += 1 / (d * d);
    }
    for (Detector& detector : detectors) {
      // All far passes together, then the near ones in turn.
      bool found = chance.next() >= std::exp(-detector.far_factor_m2 * far);
      for (int i = middle - kNear; i <= middle + kNear && !found; ++i) {
        found = chance.next() < detector.near(Length::metres(distance(leg(i))));
      }
      detector.found += found ? 1 : 0;
    }
  }
}

TEST(MonteCarlo, ParallelTrackFindsThePredictedShare) {
  const Position start = test::at(38.25, -117);
  const pattern::Pattern pattern =
      pattern::make_parallel_track({start, TrueDirection::degrees(35), Length::nautical_miles(20),
                                    kSpacing, kLegs, pattern::Turn::right});
  // The middle of the ladder: half its length on, half its width to the right.
  const Position halfway =
      travel(start, TrueDirection::degrees(35), Length::nautical_miles(10)).position;
  const Position middle =
      travel(halfway, TrueDirection::degrees(125), (kLegs / 2) * kSpacing).position;
  const std::vector<PlaneLeg> legs =
      plane_legs(pattern, LocalPlane(middle, TrueDirection::degrees(35)));
  ASSERT_EQ(legs.size(), static_cast<std::size_t>(kLegs));

  std::vector<Detector> detectors{inverse_cube(0.5),   inverse_cube(1),     inverse_cube(1.5),
                                  definite_range(0.5), definite_range(0.9), cone()};
  search(legs, detectors);
  for (const Detector& detector : detectors) {
    const double share = static_cast<double>(detector.found) / kPositions;
    const double error = std::sqrt(detector.predicted * (1 - detector.predicted) / kPositions);
    EXPECT_NEAR(share, detector.predicted, 3 * error) << detector.name;
    RecordProperty(detector.name, std::to_string((share - detector.predicted) / error));
  }
}

}  // namespace
}  // namespace sweepwright::plan
