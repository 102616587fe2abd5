#include "sweepwright/debrief/sortie.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flown.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::debrief {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr Instant kStart =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(14);

plan::Plan small_plan(Position place) {
  return plan::make_plan(test::small_mission(place));
}

const UseTotal& total(const Sortie& sortie, Use use) {
  return sortie.totals[static_cast<std::size_t>(use)];
}

/// Flat ground of one height, a quarter of a degree round a place.
terrain::ElevationModel flat_ground(Position place, double height_m) {
  terrain::ElevationTile tile;
  tile.source = "test";
  tile.lattice = terrain::GeographicLattice{.north = place.latitude() + Angle::degrees(0.5),
                                            .west = place.longitude() - Angle::degrees(0.5),
                                            .latitude_step = Angle::degrees(0.1),
                                            .longitude_step = Angle::degrees(0.1)};
  tile.rows = 11;
  tile.columns = 11;
  tile.heights_m.assign(121, static_cast<float>(height_m));
  return terrain::ElevationModel({tile});
}

TEST(Sortie, P1_uses_add_up_to_the_track) {
  for (const Position& place : test::awkward_places()) {
    const plan::Plan plan = small_plan(place);
    SortieInput input;
    input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart);
    const Length flown = track::length(input.track);
    const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
    Length sum;
    for (const UseTotal& use : sortie.totals) sum += use.distance;
    EXPECT_NEAR(sum / flown, 1, 1e-12);
    EXPECT_NEAR(total(sortie, Use::search).distance / flown, 1, 1e-6);
  }
}

TEST(Sortie, the_width_is_that_of_the_plan_when_flown_as_planned) {
  const plan::Plan plan = small_plan(test::at(38.25, -117));
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart);
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  // Heights and speeds are rounded before the tables are asked.
  EXPECT_NEAR(sortie.mean_width / plan.assignments[0].sweep_width.width, 1, 0.01);
  EXPECT_THAT(sortie.remarks, Contains(HasSubstr("heights above ground are not known")));
}

TEST(Sortie, the_height_above_ground_is_altitude_less_ground) {
  // IAMSAR Volume II, Table N-9 [from memory]: aircraft under 5700 kg, visibility 10 NM: 1.4 NM at
  // 500 ft, 2.0 NM at 2000 ft.
  const Position place = test::at(38.25, -117);
  const plan::Plan plan = small_plan(place);
  const terrain::ElevationModel ground = flat_ground(place, 2000);
  const auto width = [&](Length height) {
    SortieInput input;
    input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart,
                                    {.altitude = Length::metres(2000) + height});
    return make_sortie(plan, input, ground).mean_width.nautical_miles();
  };
  EXPECT_NEAR(width(Length::feet(500)), 1.4, 0.01);
  EXPECT_NEAR(width(Length::feet(2000)), 2.0, 0.01);
  EXPECT_NEAR(width(Length::feet(300)), 1.4, 0.01);  // counts as the lowest of the table
  EXPECT_EQ(width(Length::feet(4000)), 0);           // the table ends far below
}

TEST(Sortie, an_altitude_below_the_ground_is_not_used) {
  const Position place = test::at(38.25, -117);
  const plan::Plan plan = small_plan(place);
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart,
                                  {.altitude = Length()});
  const Sortie sortie = make_sortie(plan, input, flat_ground(place, 2000));
  EXPECT_NEAR(sortie.mean_width / plan.assignments[0].sweep_width.width, 1, 0.01);
  EXPECT_THAT(sortie.remarks, Contains(HasSubstr("below the ground")));
}

TEST(Sortie, the_visibility_is_what_the_crew_met) {
  const plan::Plan plan = small_plan(test::at(38.25, -117));
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart);
  input.report = CrewReport();
  input.report->visibility = Length::nautical_miles(3);
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  // Table N-9 as above: 1.0 NM at a visibility of 3 NM, at any height.
  EXPECT_NEAR(sortie.mean_width.nautical_miles(), 1.0, 0.001);
}

TEST(Sortie, what_the_crew_reports_is_left_out) {
  const plan::Plan plan = small_plan(test::at(38.25, -117));
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart);
  const auto start = std::chrono::floor<std::chrono::seconds>(kStart);
  input.report = CrewReport();
  input.report->on_task = start + std::chrono::minutes(5);
  input.report->above_cloud = {{start + std::chrono::minutes(6), start + std::chrono::minutes(8)}};
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  EXPECT_NEAR(total(sortie, Use::off_task).time.count(), 300, 6);  // a stretch takes 5 s
  EXPECT_NEAR(total(sortie, Use::above_cloud).time.count(), 120, 6);
}

TEST(Sortie, turns_and_ground_outside_do_not_count_unless_asked_for) {
  const Position place = test::at(38.25, -117);
  const plan::Plan plan = small_plan(place);
  // A circle at the standard rate in the middle, then straight out of the sector for 40 NM.
  track::Segment segment;
  const Length radius = Speed::knots(90) * Duration(120) / (2 * 3.141592653589793);
  Position here = place;
  Instant now = kStart;
  TrueDirection track = TrueDirection::degrees(0);
  segment.push_back({here, now, {}});
  const auto go = [&](Angle turn, int times) {
    for (int i = 0; i < times; ++i) {
      now += std::chrono::seconds(2);
      track = track + turn;
      here = travel(here, track, Speed::knots(90) * Duration(2)).position;
      segment.push_back({here, now, {}});
    }
  };
  go(Angle::degrees(6), 60);
  go({}, 800);
  SortieInput input;
  input.track.segments = {segment};
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  EXPECT_GT(radius, Length::metres(800));
  EXPECT_NEAR(total(sortie, Use::turn).time.count(), 120, 12);
  EXPECT_GT(total(sortie, Use::outside).distance, Length::nautical_miles(25));
  const Sortie all = make_sortie(plan, input, terrain::ElevationModel(),
                                 {.count_turns = true, .count_outside = true, .left_out = {}});
  Length counted;
  for (const FlownPiece& piece : all.pieces) {
    if (piece.swept.sweep_width > Length()) {
      counted += geodesic(piece.swept.from, piece.swept.to).length;
    }
  }
  EXPECT_NEAR(counted / track::length(input.track), 1, 1e-9);
}

TEST(Sortie, ground_that_the_planner_leaves_out_does_not_count) {
  const Position place = test::at(38.25, -117);
  const plan::Plan plan = small_plan(place);
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart);
  SortieOptions options;
  options.left_out = plan.assignments[0].sector;
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel(), options);
  EXPECT_EQ(sortie.effort, Area());
  EXPECT_THAT(sortie.remarks, Contains("nothing of the track counts as search"));
}

TEST(Sortie, an_assignment_that_is_not_there_is_refused) {
  const plan::Plan plan = small_plan(test::at(38.25, -117));
  SortieInput input;
  input.assignment = 1;
  EXPECT_THROW(make_sortie(plan, input, terrain::ElevationModel()), Error);
}

}  // namespace
}  // namespace sweepwright::debrief
