#include "sweepwright/hazard/separation.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <random>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;

const Instant kNoon =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(12);

struct Flight {
  Position from;
  TrueDirection track;
  Length length;
  Speed speed = Speed::knots(90);
  Duration delay{};
  std::optional<Length> altitude = Length::feet(1000);
};

CrewTrack flown(const std::string& crew, const Flight& flight) {
  const auto time = [&](Duration since) {
    return kNoon + std::chrono::round<std::chrono::milliseconds>(since);
  };
  const Position to = travel(flight.from, flight.track, flight.length).position;
  return {crew,
          "",
          {{flight.from, time(flight.delay), 0, flight.altitude},
           {to, time(flight.delay + flight.length / flight.speed), 0, flight.altitude}}};
}

/// Two crews that cross in the middle, at right angles.
std::pair<CrewTrack, CrewTrack> crossing_at(Position place, Duration delay,
                                            std::optional<Length> second_altitude) {
  const auto through = [&](double direction) {
    return travel(place, TrueDirection::degrees(direction + 180), Length::nautical_miles(10))
        .position;
  };
  const auto leaving = [&](double direction) {
    const Position from = through(direction);
    return Flight{from, geodesic(from, place).start_track, Length::nautical_miles(20)};
  };
  Flight first = leaving(20);
  Flight second = leaving(110);
  second.delay = delay;
  second.altitude = second_altitude;
  return {flown("ALFA", first), flown("BRAVO", second)};
}

const TrackUncertainty kNone{.time = {}, .lateral = {}, .height = {}};

TEST(Separation, crews_that_cross_meet_at_the_crossing_everywhere_on_earth) {
  for (const Position place : test::awkward_places()) {
    const auto [first, second] = crossing_at(place, {}, Length::feet(1000));
    const auto near = nearest_approach(first, second, kNone);
    ASSERT_TRUE(near);
    EXPECT_LT(near->distance.metres(), 5);
    EXPECT_LT(geodesic(near->first, place).length.metres(), 20);
    EXPECT_EQ(near->height_difference, Length());
  }
}

// At right angles with one speed v and a delay T the crews are v T / sqrt(2) apart at their
// nearest: plane geometry.
TEST(Separation, a_delay_parts_them_as_plane_geometry_says) {
  for (const Position place : test::awkward_places()) {
    const auto [first, second] = crossing_at(place, std::chrono::minutes(4), Length::feet(1000));
    const auto near = nearest_approach(first, second, kNone);
    ASSERT_TRUE(near);
    const double expected_m = (Speed::knots(90) * Duration(240)).metres() / std::sqrt(2.0);
    EXPECT_NEAR(near->distance.metres(), expected_m, 0.001 * expected_m + 5);
    // The delay is made up when each may be two minutes early or late.
    const auto late = nearest_approach(
        first, second, {.time = std::chrono::minutes(2), .lateral = {}, .height = {}});
    ASSERT_TRUE(late);
    EXPECT_LT(late->distance.metres(), 5);
  }
}

// A dense search over both times stands for the closed form.
TEST(Separation, nearest_approach_is_that_of_a_dense_search_in_time) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share(0, 1);
  for (int trial = 0; trial < 40; ++trial) {
    const Position middle = at(-40 + 100 * share(random), -180 + 360 * share(random));
    const auto somewhere = [&](const std::string& crew) {
      CrewTrack track{crew, "", {}};
      Instant time = kNoon + std::chrono::seconds(static_cast<int>(600 * share(random)));
      for (int i = 0; i < 4; ++i) {
        track.points.push_back({travel(middle, TrueDirection::degrees(360 * share(random)),
                                       Length::nautical_miles(8 * share(random)))
                                    .position,
                                time, i, Length()});
        time += std::chrono::seconds(60 + static_cast<int>(300 * share(random)));
      }
      return track;
    };
    const CrewTrack first = somewhere("ALFA");
    const CrewTrack second = somewhere("BRAVO");
    const Duration early_or_late(100 * share(random));
    const auto place = [](const CrewTrack& track, double s) {
      for (std::size_t i = 1; i < track.points.size(); ++i) {
        const double from = Duration(track.points[i - 1].time - kNoon).count();
        const double to = Duration(track.points[i].time - kNoon).count();
        if (s > to) continue;
        const auto line = geodesic(track.points[i - 1].position, track.points[i].position);
        return travel(track.points[i - 1].position, line.start_track,
                      line.length * ((s - from) / (to - from)))
            .position;
      }
      return track.points.back().position;
    };
    const auto span = [](const CrewTrack& track) {
      return std::pair(Duration(track.points.front().time - kNoon).count(),
                       Duration(track.points.back().time - kNoon).count());
    };
    double best = 1e9;
    const double step = 5;
    for (double s = span(first).first; s <= span(first).second; s += step) {
      const Position here = place(first, s);
      const double reach = 2 * early_or_late.count();
      for (double u = std::max(span(second).first, s - reach);
           u <= std::min(span(second).second, s + reach); u += step) {
        best = std::min(best, geodesic(here, place(second, u)).length.metres());
      }
    }
    const auto near =
        nearest_approach(first, second, {.time = early_or_late, .lateral = {}, .height = {}});
    if (best == 1e9) {
      EXPECT_TRUE(!near || near->distance.metres() > 0);
      continue;
    }
    ASSERT_TRUE(near) << trial;
    EXPECT_LE(near->distance.metres(), best + 5) << trial;
    // In a step neither crew goes farther than its speed times the step: 8 NM x 2 in a minute.
    EXPECT_GE(near->distance.metres(), best - 2 * step * 16 * 1852 / 60.0) << trial;
    EXPECT_NEAR(near->distance.metres(), geodesic(near->first, near->second).length.metres(), 5);
    EXPECT_LE(std::abs(Duration(near->first_time - near->second_time).count()),
              2 * early_or_late.count() + 0.002);
  }
}

// With one clock for both, the crews are nowhere nearer than the nearest approach, and it is met.
TEST(Separation, without_uncertainty_both_fly_by_one_clock) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> share(0, 1);
  for (int trial = 0; trial < 200; ++trial) {
    const Position middle = at(59.9, 179.9);
    const auto any_flight = [&] {
      return Flight{travel(middle, TrueDirection::degrees(360 * share(random)),
                           Length::nautical_miles(6 * share(random)))
                        .position,
                    TrueDirection::degrees(360 * share(random)),
                    Length::nautical_miles(2 + 28 * share(random)),
                    Speed::knots(40 + 140 * share(random)), Duration(1200 * share(random))};
    };
    const Flight a = any_flight();
    const Flight b = any_flight();
    const auto end = [](const Flight& flight) {
      return flight.delay + flight.length / flight.speed;
    };
    const auto place = [](const Flight& flight, Duration time) {
      return travel(flight.from, flight.track, flight.speed * (time - flight.delay)).position;
    };
    const auto near = nearest_approach(flown("ALFA", a), flown("BRAVO", b), kNone);
    const Duration last = std::min(end(a), end(b));
    Length least = Length::kilometres(1000);
    for (Duration time = std::max(a.delay, b.delay); time < last; time += Duration(1)) {
      ASSERT_TRUE(near) << trial;
      least = std::min(least, geodesic(place(a, time), place(b, time)).length);
    }
    if (!near) continue;
    EXPECT_LE(near->distance.metres(), least.metres() + 5) << trial;
    // In a second the two go no farther than their speeds.
    EXPECT_GE(near->distance.metres(), least.metres() - (a.speed + b.speed).metres_per_second() - 5)
        << trial;
  }
}

TEST(Separation, heights_apart_are_enough_and_unknown_heights_are_none) {
  const Position place = at(46, 8);
  const auto found = [&](std::optional<Length> altitude) {
    const auto [first, second] = crossing_at(place, {}, altitude);
    return check_separation({first, second});
  };
  EXPECT_TRUE(found(Length::feet(1500)).empty());
  EXPECT_TRUE(found(Length::feet(500)).empty());
  ASSERT_EQ(found(Length::feet(1499)).size(), 1U);
  EXPECT_EQ(found(Length::feet(1499)).front().severity, Severity::must_not_fly);
  ASSERT_EQ(found(std::nullopt).size(), 1U);
  EXPECT_EQ(found(std::nullopt).front().severity, Severity::caution);
  EXPECT_THAT(found(std::nullopt).front().text, testing::HasSubstr("heights not both known"));
}

TEST(Separation, a_finding_names_both_crews_the_place_and_a_cure_that_works) {
  const Position place = at(46, 8);
  const auto [first, second] = crossing_at(place, {}, Length::feet(1000));
  const std::vector<Finding> findings = check_separation({first, second});
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_THAT(findings[0].text,
              testing::AllOf(testing::HasSubstr("ALFA"), testing::HasSubstr("BRAVO")));
  ASSERT_TRUE(findings[0].where);
  EXPECT_LT(geodesic(*findings[0].where, place).length.nautical_miles(), 1.5);

  const SeparationMinima minima;
  const auto delay = delay_that_separates(first, second, minima, std::chrono::minutes(60));
  ASSERT_TRUE(delay);
  EXPECT_THAT(findings[0].cure,
              testing::HasSubstr("BRAVO leave " + std::to_string(delay->count()) + " min later"));
  const auto later = [&, &leaving = second](std::chrono::minutes by) {
    CrewTrack track = leaving;
    for (TrackPoint& point : track.points) point.time += by;
    return conflicts(first, track, minima);
  };
  EXPECT_TRUE(later(*delay).empty());
  EXPECT_FALSE(later(*delay - std::chrono::minutes(1)).empty());
}

TEST(Separation, round_a_shared_base_the_aerodrome_keeps_them_apart) {
  const Position base = at(46, 8);
  const auto leaving = [&](const std::string& crew, double direction) {
    return flown(crew, {base, TrueDirection::degrees(direction), Length::nautical_miles(30)});
  };
  EXPECT_TRUE(conflicts(leaving("ALFA", 0), leaving("BRAVO", 90)).empty());
  EXPECT_FALSE(conflicts(leaving("ALFA", 0), leaving("BRAVO", 5)).empty());
}

TEST(Separation, never_in_the_air_together_is_apart) {
  const auto [first, second] = crossing_at(at(46, 8), std::chrono::hours(3), Length::feet(1000));
  EXPECT_EQ(nearest_approach(first, second), std::nullopt);
  EXPECT_TRUE(conflicts(first, second).empty());
}

TEST(Separation, a_negative_uncertainty_is_refused) {
  const auto [first, second] = crossing_at(at(46, 8), {}, Length::feet(1000));
  EXPECT_THROW(nearest_approach(first, second, {.time = Duration(-1), .lateral = {}, .height = {}}),
               Error);
}

RC_GTEST_PROP(Separation, order_does_not_matter_and_doubt_never_parts, ()) {
  const auto number = [](int low, int high) { return *rc::gen::inRange(low, high); };
  const auto any_flight = [&](const std::string& crew) {
    return flown(crew,
                 {at(60 + number(-50, 50) / 500.0, 179.9 + number(-50, 50) / 500.0),
                  TrueDirection::degrees(number(0, 360)), Length::nautical_miles(number(2, 30)),
                  Speed::knots(number(40, 180)), Duration(number(0, 1200)), Length()});
  };
  const CrewTrack first = any_flight("ALFA");
  const CrewTrack second = any_flight("BRAVO");
  const TrackUncertainty little{.time = Duration(number(0, 300)), .lateral = {}, .height = {}};
  TrackUncertainty more = little;
  more.time += Duration(number(0, 300));
  const auto one = nearest_approach(first, second, little);
  const auto other = nearest_approach(second, first, little);
  RC_ASSERT(one.has_value() == other.has_value());
  if (!one) return;
  RC_ASSERT(std::abs((one->distance - other->distance).metres()) < 0.001);
  RC_ASSERT(nearest_approach(first, second, more)->distance <=
            one->distance + Length::metres(0.001));
}

}  // namespace
}  // namespace sweepwright::hazard
