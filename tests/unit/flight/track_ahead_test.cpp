#include "sweepwright/flight/track_ahead.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

using test::at;

PresentMotion eastward(Position from) {
  return {from, TrueDirection::degrees(90), Speed::knots(90)};
}

TEST(TrackAhead, MarksEachStep) {
  for (const Position& place : test::awkward_places()) {
    const std::vector<PlaceAhead> marks =
        marks_ahead(eastward(place), Length::nautical_miles(1.5), Length::nautical_miles(15));
    ASSERT_EQ(marks.size(), 10u);
    for (std::size_t i = 0; i < marks.size(); ++i) {
      EXPECT_NEAR(geodesic(place, marks[i].position).length.nautical_miles(),
                  1.5 * static_cast<double>(i + 1), 1e-9);
      EXPECT_NEAR(marks[i].time.count(), 60.0 * static_cast<double>(i + 1), 1e-6);  // a minute each
    }
  }
}

// A square of 20 NM round a place 30 NM ahead: entered after 20 NM, left after 40.
TEST(TrackAhead, MeetsTheBoundary) {
  for (const Position& place : test::awkward_places()) {
    const Arrival middle = travel(place, TrueDirection::degrees(90), Length::nautical_miles(30));
    const Region square = test::rectangle(middle.position, middle.track, Length::nautical_miles(20),
                                          Length::nautical_miles(20));
    const std::vector<BoundaryMeeting> met =
        boundary_meetings(eastward(place), Length::nautical_miles(100), square);
    ASSERT_EQ(met.size(), 2u);
    EXPECT_TRUE(met[0].entering);
    EXPECT_FALSE(met[1].entering);
    EXPECT_NEAR(met[0].place.distance.metres(), 20 * 1852.0, 2);
    EXPECT_NEAR(met[1].place.distance.metres(), 40 * 1852.0, 2);
    EXPECT_NEAR(met[0].place.time.count(), 20 / 90.0 * 3600, 0.05);
    // Until a nearer limit, only the first edge is met.
    EXPECT_EQ(boundary_meetings(eastward(place), Length::nautical_miles(30), square).size(), 1u);
  }
}

TEST(TrackAhead, LeavesAnAreaThatItStartsIn) {
  const Region square = test::rectangle(at(38, -117), TrueDirection(), Length::nautical_miles(20),
                                        Length::nautical_miles(20));
  const std::vector<BoundaryMeeting> met =
      boundary_meetings(eastward(at(38, -117)), Length::nautical_miles(100), square);
  ASSERT_EQ(met.size(), 1u);
  EXPECT_FALSE(met[0].entering);
}

TEST(TrackAhead, FindsABoundaryFarAhead) {
  const Arrival middle = travel(at(38, -117), TrueDirection::degrees(90), Length::kilometres(1500));
  const Region square = test::rectangle(middle.position, middle.track, Length::kilometres(100),
                                        Length::kilometres(100));
  const std::vector<BoundaryMeeting> met =
      boundary_meetings(eastward(at(38, -117)), kFarthestAhead, square);
  ASSERT_EQ(met.size(), 2u);
  EXPECT_NEAR(met[0].place.distance.kilometres(), 1450, 0.002);
}

TEST(TrackAhead, MissesWhatLiesAside) {
  const Region aside = test::rectangle(at(45, -117), TrueDirection(), Length::nautical_miles(20),
                                       Length::nautical_miles(20));
  EXPECT_TRUE(
      boundary_meetings(eastward(at(38, -117)), Length::nautical_miles(100), aside).empty());
}

TEST(TrackAhead, RefusesWhatCannotBeMarked) {
  const PresentMotion still{at(0, 0), TrueDirection(), Speed()};
  EXPECT_THROW(marks_ahead(still, Length::nautical_miles(1), Length::nautical_miles(10)), Error);
  EXPECT_THROW(marks_ahead(eastward(at(0, 0)), Length(), Length::nautical_miles(10)), Error);
  EXPECT_THROW(marks_ahead(eastward(at(0, 0)), Length::metres(1), Length::nautical_miles(10)),
               Error);
  EXPECT_THROW(marks_ahead(eastward(at(0, 0)), Length::nautical_miles(1), Length()), Error);
}

}  // namespace
}  // namespace sweepwright::flight
