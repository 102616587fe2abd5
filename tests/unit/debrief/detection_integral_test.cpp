// Detection along tracks as flown, against Koopman's closed forms and against chance itself.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>

#include "support/check_table.hpp"
#include "support/flown_raster.hpp"
#include "support/ground.hpp"
#include "sweepwright/debrief/coverage_map.hpp"
#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/sweep/lateral_range.hpp"

namespace sweepwright::debrief {
namespace {

using sweep::DetectionLaw;
using test::coverage_of;
using test::Dice;
using test::metres;
using test::square_frame;

double mean_pod(const CoverageMap& map, DetectionLaw law) {
  double sum = 0;
  for (std::size_t cell = 0; cell < map.frame.cells(); ++cell) sum += pod(map, cell, law);
  return sum / static_cast<double>(map.frame.cells());
}

// B. O. Koopman, Search and Screening (1946), chapter 2: p(x) = 1 - exp(-W^2 / (4 pi x^2)) for one
// endless straight pass at lateral distance x [from memory].
TEST(StraightPass, has_the_lateral_range_curve_of_the_inverse_cube_law) {
  const CoverageFrame frame = square_frame(Length::metres(6000), Length::metres(40));
  for (const double width : {200.0, 700.0, 1852.0}) {
    const Length sweep_width = Length::metres(width);
    const CoverageMap map =
        coverage_of(frame, {{metres(10, -900'000), metres(10, 900'000), sweep_width}});
    for (std::size_t column = 0; column < frame.columns; ++column) {
      const double x = -3000 + 40 * (static_cast<double>(column) + 0.5) - 10;
      const double expected = 1 - std::exp(-width * width / (4 * std::numbers::pi * x * x));
      for (const std::size_t row : {std::size_t{0}, std::size_t{77}, frame.rows - 1}) {
        const std::size_t cell = row * frame.columns + column;
        ASSERT_NEAR(pod(map, cell, DetectionLaw::inverse_cube), expected, 1e-4) << x;
        ASSERT_NEAR(pod(map, cell, DetectionLaw::inverse_cube),
                    sweep::lateral_range(DetectionLaw::inverse_cube, sweep_width, Length::metres(x))
                        .value(),
                    1e-4);
        ASSERT_EQ(map.passes[cell], 2 * std::abs(x) <= width ? 1U : 0U);
      }
    }
  }
}

/// Straight legs one spacing apart about a place, on the ground, each in pieces.
std::vector<SweptPiece> parallel_legs(Position middle, TrueDirection track, Length spacing,
                                      Length sweep_width) {
  // What legs further off would add is less, the closer the legs lie.
  const Length half = 75 * spacing;
  const int legs = static_cast<int>(std::ceil(half / spacing));
  std::vector<SweptPiece> pieces;
  for (int leg = -legs; leg <= legs; ++leg) {
    const Arrival abeam = travel(middle, track + Angle::degrees(90), spacing * leg);
    const TrueDirection along = abeam.track + Angle::degrees(-90);
    constexpr int kPieces = 3;
    for (int i = 0; i < kPieces; ++i) {
      const auto end = [&](int at) {
        return travel(abeam.position, along, half * (2.0 * at / kPieces - 1)).position;
      };
      pieces.push_back({end(i), end(i + 1), sweep_width});
    }
  }
  return pieces;
}

class Koopman : public testing::TestWithParam<double> {};

// B. O. Koopman, Search and Screening (1946), chapter 2: evenly spaced endless legs under the
// inverse cube law find erf(sqrt(pi)/2 x W/S) on the average [from memory].
TEST_P(Koopman, parallel_legs_find_the_error_function_of_the_coverage_anywhere) {
  const double coverage = GetParam();
  const Length sweep_width = Length::metres(200);
  const Length spacing = sweep_width / coverage;
  const double expected = std::erf(std::sqrt(std::numbers::pi) / 2 * coverage);
  std::vector<Position> places = test::awkward_places();
  places.push_back(test::at(75, -40));
  for (const Position place : places) {
    for (const double track : {0.0, 37.0, 90.0, 205.0}) {
      // Whole spacings, so that the mean is that of all places between two legs.
      const Region area =
          test::rectangle(place, TrueDirection::degrees(track), 2 * spacing, 2 * spacing);
      const CoverageFrame frame = coverage_frame(area, spacing / 40);
      CoverageAccumulator accumulator(frame);
      for (const SweptPiece& piece :
           parallel_legs(place, TrueDirection::degrees(track), spacing, sweep_width)) {
        accumulator.add(piece);
      }
      const CoverageMap map = accumulator.map();
      const auto inside = cells_inside(frame, area);
      double sum = 0;
      for (const std::size_t cell : inside) sum += pod(map, cell, DetectionLaw::inverse_cube);
      EXPECT_NEAR(sum / static_cast<double>(inside.size()) / expected, 1, 0.005)
          << place.latitude().degrees() << " track " << track;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Coverages, Koopman, testing::Values(0.25, 0.5, 1.0, 1.5, 2.0));

// B. O. Koopman, Search and Screening (1946), chapter 3: tracks at random find 1 - exp(-C), and an
// object is seen by law or by sweep alike [from memory]. Chords of a disc at random in direction
// and distance: N chords of mean length pi R / 2 on pi R^2 are C = N W / (2 R).
TEST(RandomChords, sweep_and_find_by_the_exponential_of_the_coverage) {
  const CoverageFrame frame = square_frame(Length::metres(6000), Length::metres(60));
  constexpr double kDisc = 40'000;
  for (const double coverage : {0.5, 1.0, 1.8}) {
    constexpr double kWidth = 200;
    const int chords = static_cast<int>(std::lround(coverage * 2 * kDisc / kWidth));
    Dice dice(11);
    double swept = 0;
    double found = 0;
    constexpr int kTurns = 12;
    for (int turn = 0; turn < kTurns; ++turn) {
      std::vector<PlanePiece> pieces;
      for (int i = 0; i < chords; ++i) {
        const double direction = dice.between(0, 2 * std::numbers::pi);
        const double off = dice.between(-kDisc, kDisc);
        const double half = std::sqrt(kDisc * kDisc - off * off);
        const double x = std::sin(direction);
        const double y = std::cos(direction);
        pieces.push_back({metres(off * y - half * x, -off * x - half * y),
                          metres(off * y + half * x, -off * x + half * y), Length::metres(kWidth)});
      }
      const CoverageMap map = coverage_of(frame, pieces);
      swept += mean_pod(map, DetectionLaw::definite_range) / kTurns;
      found += mean_pod(map, DetectionLaw::inverse_cube) / kTurns;
    }
    // The spread of the mean over this ground, from the spread of the turns, is 0.008.
    EXPECT_NEAR(swept, 1 - std::exp(-coverage), 0.025) << coverage;
    EXPECT_NEAR(found, 1 - std::exp(-coverage), 0.025) << coverage;
  }
}

/// The rate k h / r^3 summed in short steps: no closed form, no squares of cells.
double potential_by_steps(const CoverageFrame& frame, std::size_t cell,
                          const std::vector<PlanePiece>& pieces) {
  const double px = frame.corner.right.metres() +
                    frame.cell.metres() * (static_cast<double>(cell % frame.columns) + 0.5);
  const double py = frame.corner.up.metres() +
                    frame.cell.metres() * (static_cast<double>(cell / frame.columns) + 0.5);
  double sum = 0;
  for (const PlanePiece& piece : pieces) {
    const double dx = (piece.to.right - piece.from.right).metres();
    const double dy = (piece.to.up - piece.from.up).metres();
    const double length = std::hypot(dx, dy);
    const double width = piece.sweep_width.metres();
    constexpr int kSteps = 200;
    for (int i = 0; i < kSteps; ++i) {
      const double share = (i + 0.5) / kSteps;
      const double r = std::hypot(piece.from.right.metres() + share * dx - px,
                                  piece.from.up.metres() + share * dy - py);
      sum += width * width / (8 * std::numbers::pi) * length / kSteps / (r * r * r);
    }
  }
  return sum;
}

TEST(DetectionIntegral, is_the_rate_summed_along_the_track) {
  Dice dice(12);
  const CoverageFrame frame = square_frame(Length::metres(6000), Length::metres(60));
  for (const double width : {150.0, 600.0}) {
    auto pieces =
        test::pieces_of(test::wandering(dice, Length::metres(9000), 400, Length::metres(80)),
                        Length::metres(width));
    const CoverageMap map = coverage_of(frame, pieces);
    double worst = 0;
    for (std::size_t cell = 0; cell < frame.cells(); cell += 41) {
      const double expected = 1 - std::exp(-potential_by_steps(frame, cell, pieces));
      worst = std::max(worst, std::abs(pod(map, cell, DetectionLaw::inverse_cube) - expected));
    }
    EXPECT_LT(worst, 1e-4);
  }
}

// Objects hidden at random, and a crew that may see each in every metre of a recorded walk with the
// law's rate: what share is found, by dice alone?
TEST(DetectionIntegral, objects_hidden_along_a_recorded_walk_are_found_as_often_as_reckoned) {
  std::vector<Position> walk;
  for (const test::CheckRow& row :
       test::check_rows("debrief/recorded_walk.csv", {"latitude_deg", "longitude_deg"})) {
    walk.push_back(test::at(row.number("latitude_deg"), row.number("longitude_deg")));
  }
  ASSERT_EQ(walk.size(), 1549U);
  const Length width = Length::metres(300);
  const Region area = test::rectangle(middle(Region{{Polygon{walk, {}}}}), {},
                                      Length::kilometres(5), Length::kilometres(4));
  const CoverageFrame frame = coverage_frame(area, width / 10);
  CoverageAccumulator accumulator(frame);
  for (std::size_t i = 1; i < walk.size(); ++i) {
    accumulator.add(SweptPiece{walk[i - 1], walk[i], width});
  }
  const CoverageMap map = accumulator.map();
  Dice dice(20);
  constexpr int kObjects = 1000;
  double found = 0;
  double reckoned = 0;
  for (int object = 0; object < kObjects; ++object) {
    const auto cell = static_cast<std::size_t>(dice.between(0, static_cast<double>(frame.cells())));
    reckoned += pod(map, cell, DetectionLaw::inverse_cube);
    const PlanePoint hidden = frame.plane.to_plane(cell_centre(frame, cell));
    bool seen = false;
    PlanePoint from = frame.plane.to_plane(walk.front());
    for (std::size_t i = 1; i < walk.size() && !seen; ++i) {
      const PlanePoint to = frame.plane.to_plane(walk[i]);
      const double dx = (to.right - from.right).metres();
      const double dy = (to.up - from.up).metres();
      const double length = std::hypot(dx, dy);
      const int steps = static_cast<int>(std::ceil(length));
      for (int step = 0; step < steps && !seen; ++step) {
        const double share = (step + 0.5) / steps;
        const double r = std::hypot((from.right - hidden.right).metres() + share * dx,
                                    (from.up - hidden.up).metres() + share * dy);
        const double chance =
            300.0 * 300.0 / (8 * std::numbers::pi) * (length / steps) / (r * r * r);
        seen = dice.between(0, 1) < 1 - std::exp(-chance);
      }
      from = to;
    }
    found += seen ? 1 : 0;
  }
  const double share = reckoned / kObjects;
  const double spread = std::sqrt(share * (1 - share) / kObjects);
  EXPECT_GT(share, 0.1);
  EXPECT_LT(share, 0.9);
  EXPECT_NEAR(found / kObjects, share, 3 * spread);
}

const std::vector<std::string> kSweptColumns{"track_m", "sweep_width_m", "side_m", "swept_share"};

class SweptShare : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SweptShare, is_that_of_buffers_and_their_union) {
  const test::CheckRow& row = GetParam();
  const Length side = Length::metres(row.number("side_m"));
  const Length sweep_width = Length::metres(row.number("sweep_width_m"));
  std::vector<PlanePoint> track;
  std::istringstream in(row.text("track_m"));
  for (double right = 0, up = 0; in >> right >> up;) track.push_back(metres(right, up));
  ASSERT_GE(track.size(), 2U);
  const double cells = std::ceil(side / (sweep_width / 10));
  const CoverageFrame frame = square_frame(side, side / cells);
  const CoverageMap map = coverage_of(frame, test::pieces_of(track, sweep_width));
  EXPECT_NEAR(mean_pod(map, DetectionLaw::definite_range) / row.number("swept_share"), 1, 1e-3);
}

INSTANTIATE_TEST_SUITE_P(Geos, SweptShare,
                         testing::ValuesIn(test::check_rows("debrief/swept_share_geos.csv",
                                                            kSweptColumns)),
                         test::RowName());

}  // namespace
}  // namespace sweepwright::debrief
