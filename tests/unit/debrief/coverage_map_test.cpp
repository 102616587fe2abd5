#include "sweepwright/debrief/coverage_map.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "support/flown_raster.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::debrief {
namespace {

using test::coverage_of;
using test::Dice;
using test::metres;
using test::pieces_of;
using test::square_frame;

constexpr Length kSweepWidth = Length::metres(400);

PlanePoint middle_of(const CoverageFrame& frame, std::size_t cell) {
  return {frame.corner.right + frame.cell * (static_cast<double>(cell % frame.columns) + 0.5),
          frame.corner.up + frame.cell * (static_cast<double>(cell / frame.columns) + 0.5)};
}

double metres_between(PlanePoint a, PlanePoint b) {
  return std::hypot((a.right - b.right).metres(), (a.up - b.up).metres());
}

PlanePoint at_share(const PlanePiece& piece, double share) {
  return {piece.from.right + (piece.to.right - piece.from.right) * share,
          piece.from.up + (piece.to.up - piece.from.up) * share};
}

double distance(PlanePoint place, const PlanePiece& piece) {
  const double dx = (piece.to.right - piece.from.right).metres();
  const double dy = (piece.to.up - piece.from.up).metres();
  const double along =
      ((place.right - piece.from.right).metres() * dx + (place.up - piece.from.up).metres() * dy) /
      (dx * dx + dy * dy);
  return metres_between(place, at_share(piece, std::clamp(along, 0.0, 1.0)));
}

/// What a walk along the track in steps of a metre finds at a place.
struct Walked {
  std::uint32_t passes = 0;
  double nearest = 1e9;
  bool grazed = false;  ///< a piece comes so close to the edge of its sweep that a step may miss it
};

Walked walk(PlanePoint place, const std::vector<PlanePiece>& pieces) {
  Walked walked;
  bool inside = false;
  for (const PlanePiece& piece : pieces) {
    const double off = distance(place, piece);
    const double half_width = piece.sweep_width.metres() / 2;
    walked.nearest = std::min(walked.nearest, off);
    walked.grazed = walked.grazed || std::abs(off - half_width) < 3;
    const double length = metres_between(piece.from, piece.to);
    for (double s = 0; s <= length; s += 1) {
      const bool now = metres_between(place, at_share(piece, s / length)) <= half_width;
      if (now && !inside) ++walked.passes;
      inside = now;
    }
  }
  return walked;
}

TEST(CoverageMap, passes_and_nearest_are_those_of_a_walk_along_the_track) {
  Dice dice(5);
  const CoverageFrame frame = square_frame(Length::metres(4000), Length::metres(80));
  for (int turn = 0; turn < 4; ++turn) {
    const auto pieces = pieces_of(
        test::wandering(dice, Length::metres(4500), 150, Length::metres(90)), kSweepWidth);
    const CoverageMap map = coverage_of(frame, pieces);
    std::size_t compared = 0;
    for (std::size_t cell = 0; cell < frame.cells(); cell += 3) {
      const Walked walked = walk(middle_of(frame, cell), pieces);
      if (walked.nearest < 398) {
        ASSERT_NEAR(static_cast<double>(map.nearest_m[cell]), walked.nearest, 0.02 * 80 + 0.01);
      } else if (walked.nearest > 402) {
        ASSERT_FALSE(nearest(map, cell));
      }
      if (walked.grazed) continue;
      ++compared;
      ASSERT_EQ(map.passes[cell], walked.passes) << "cell " << cell << " of turn " << turn;
    }
    EXPECT_GT(compared, 500U);
  }
}

TEST(CoverageMap, effort_is_length_times_sweep_width) {
  Dice dice(6);
  const CoverageFrame frame = square_frame(Length::metres(4000), Length::metres(90));
  const auto track = test::wandering(dice, Length::metres(1500), 80, Length::metres(70));
  const CoverageMap map = coverage_of(frame, pieces_of(track, kSweepWidth));
  double length = 0;
  for (std::size_t i = 1; i < track.size(); ++i) {
    length += std::hypot((track[i].right - track[i - 1].right).metres(),
                         (track[i].up - track[i - 1].up).metres());
  }
  const double effort = std::accumulate(map.effort_m2.begin(), map.effort_m2.end(), 0.0);
  EXPECT_NEAR(effort / (length * 400), 1, 1e-9);
}

TEST(CoverageMap, one_way_out_and_back_is_two_passes_and_a_crossing_three) {
  const CoverageFrame frame = square_frame(Length::metres(2100), Length::metres(100));
  const std::vector<PlanePoint> there_and_back{
      metres(-1500, 0), metres(1500, 0), metres(1500, 1000), metres(0, 1000), metres(0, -2000)};
  std::vector<PlanePiece> pieces = pieces_of(there_and_back, kSweepWidth);
  pieces.push_back({metres(1500, 0), metres(-1500, 0), kSweepWidth});  // another track
  const CoverageMap map = coverage_of(frame, pieces);
  const std::size_t middle = frame.cells() / 2;
  EXPECT_EQ(map.passes[middle], 3U);
  EXPECT_EQ(map.passes[middle + 5], 2U);
  EXPECT_EQ(map.passes[middle + 5 * frame.columns], 1U);
  EXPECT_EQ(map.passes[0], 0U);
}

TEST(CoverageMap, P1_the_number_of_threads_changes_no_bit) {
  Dice dice(7);
  const CoverageFrame frame = square_frame(Length::metres(9000), Length::metres(60));
  const auto pieces = pieces_of(
      test::wandering(dice, Length::metres(9000), 20'000, Length::metres(60)), kSweepWidth);
  const CoverageMap one = coverage_of(frame, pieces, 1);
  for (const unsigned threads : {2U, 3U, 7U}) {
    const CoverageMap other = coverage_of(frame, pieces, threads);
    EXPECT_EQ(one.passes, other.passes);
    EXPECT_EQ(one.nearest_m, other.nearest_m);
    EXPECT_EQ(one.swept_share, other.swept_share);
    EXPECT_EQ(one.effort_m2, other.effort_m2);
    EXPECT_EQ(one.potential, other.potential);
  }
}

void expect_alike(const CoverageMap& a, const CoverageMap& b) {
  EXPECT_EQ(a.passes, b.passes);
  for (std::size_t cell = 0; cell < a.frame.cells(); ++cell) {
    if (nearest(a, cell)) {
      ASSERT_NEAR(static_cast<double>(a.nearest_m[cell]), static_cast<double>(b.nearest_m[cell]),
                  1e-3);
    }
    ASSERT_NEAR(static_cast<double>(a.swept_share[cell]), static_cast<double>(b.swept_share[cell]),
                0.04);  // a place or two on the very edge
    ASSERT_NEAR(a.effort_m2[cell], b.effort_m2[cell], 1e-6 * a.frame.cell_area().square_metres());
    ASSERT_NEAR(pod(a, cell, sweep::DetectionLaw::inverse_cube),
                pod(b, cell, sweep::DetectionLaw::inverse_cube), 1e-4);
  }
}

TEST(CoverageMap, P2_the_order_of_tracks_changes_last_digits_only) {
  Dice dice(8);
  const CoverageFrame frame = square_frame(Length::metres(4000), Length::metres(60));
  const auto first =
      pieces_of(test::wandering(dice, Length::metres(4000), 500, Length::metres(60)), kSweepWidth);
  const auto second =
      pieces_of(test::wandering(dice, Length::metres(4000), 500, Length::metres(60)), kSweepWidth);
  std::vector<PlanePiece> forth = first;
  forth.insert(forth.end(), second.begin(), second.end());
  std::vector<PlanePiece> back = second;
  back.insert(back.end(), first.begin(), first.end());
  expect_alike(coverage_of(frame, forth), coverage_of(frame, back));
}

TEST(CoverageMap, P3_cutting_a_piece_changes_last_digits_only) {
  const CoverageFrame frame = square_frame(Length::metres(3900), Length::metres(60));
  const PlanePoint from = metres(-5012, -1503);
  const PlanePoint to = metres(4107, 1911);
  std::vector<PlanePoint> cut;
  constexpr int kParts = 977;
  for (int i = 0; i <= kParts; ++i) {
    const double share = static_cast<double>(i) / kParts;
    cut.push_back(
        {from.right + (to.right - from.right) * share, from.up + (to.up - from.up) * share});
  }
  expect_alike(coverage_of(frame, {{from, to, kSweepWidth}}),
               coverage_of(frame, pieces_of(cut, kSweepWidth)));
}

TEST(CoverageMap, ground_far_away_and_pieces_of_no_length_take_no_part) {
  const Region region =
      test::rectangle(test::at(-17.5, 179.9), {}, Length::kilometres(4), Length::kilometres(4));
  CoverageAccumulator coverage(coverage_frame(region, Length::metres(100)));
  coverage.add(SweptPiece{test::at(40, 5), test::at(41, 5), kSweepWidth});
  coverage.add(SweptPiece{test::at(-17.5, 179.9), test::at(-17.5, 179.9), kSweepWidth});
  const CoverageMap map = coverage.map();
  EXPECT_EQ(std::accumulate(map.passes.begin(), map.passes.end(), 0U), 0U);
  EXPECT_EQ(std::accumulate(map.potential.begin(), map.potential.end(), 0.0), 0);
}

TEST(CoverageMap, a_piece_that_comes_from_beyond_the_reach_counts_where_it_is_near) {
  const Position place = test::at(60, -180);
  const Region region = test::rectangle(place, {}, Length::kilometres(4), Length::kilometres(4));
  const CoverageFrame frame = coverage_frame(region, Length::metres(80));
  const Position far = travel(place, TrueDirection::degrees(90), Length::kilometres(1500)).position;
  CoverageAccumulator coverage(frame);
  coverage.add(SweptPiece{far, place, kSweepWidth});
  const CoverageMap map = coverage.map();
  const std::size_t middle = (frame.rows / 2) * frame.columns + frame.columns / 2;
  EXPECT_EQ(map.passes[middle + 10], 1U);
  EXPECT_EQ(map.passes[middle - 10], 0U);
}

TEST(CoverageMap, refuses_a_sweep_width_out_of_range) {
  CoverageAccumulator coverage(square_frame(Length::metres(1000), Length::metres(100)));
  const Position place = test::at(45, 7);
  EXPECT_THROW(coverage.add(SweptPiece{place, place, Length::metres(-1)}), Error);
  EXPECT_THROW(coverage.add(SweptPiece{place, place, Length::kilometres(201)}), Error);
}

}  // namespace
}  // namespace sweepwright::debrief
