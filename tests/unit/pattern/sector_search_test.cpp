#include "sweepwright/pattern/sector_search.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

SectorSearch boat_search(Position datum) {
  return {.datum = datum, .first_track = TrueDirection(), .radius = Length::nautical_miles(0.5)};
}

double miles(Position from, Position to) {
  return geodesic(from, to).length.nautical_miles();
}

class SectorSearchCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SectorSearchCheck, AgreesWithTheWorkedExample) {
  const test::CheckRow& row = GetParam();
  const std::size_t index = static_cast<std::size_t>(row.number("leg")) - 1;
  for (const Position& datum : test::awkward_places()) {
    const Pattern pattern = make_sector_search(boat_search(datum));
    ASSERT_EQ(pattern.legs.size(), 9u);
    const Leg& leg = pattern.legs[index];
    EXPECT_NEAR(leg.line.length.nautical_miles(), row.number("length_nm"), 1e-8);
    EXPECT_NEAR((leg.line.length / Speed::knots(5)).count() / 60, row.number("minutes_at_5kt"),
                1e-6);
  }
  // Tracks as on paper, where north is the same all over the pattern.
  const Leg leg = make_sector_search(boat_search(at(0, 0))).legs.at(index);
  EXPECT_NEAR(
      turn_between(leg.line.start_track, TrueDirection::degrees(row.number("track_deg"))).degrees(),
      0, 0.001);
}

INSTANTIATE_TEST_SUITE_P(Published, SectorSearchCheck,
                         testing::ValuesIn(test::check_rows("pattern/sector_search.csv",
                                                            {"leg", "track_deg", "length_nm",
                                                             "minutes_at_5kt"})),
                         test::RowName());

// Every form at every awkward place: sectors, start, passes, turn.
template <typename Expect>
void for_each_form(const Expect& expect) {
  for (const Position& datum : test::awkward_places()) {
    for (const SectorCount sectors : {SectorCount::four, SectorCount::six}) {
      for (const SectorStart start : {SectorStart::datum, SectorStart::rim}) {
        for (const SectorPasses passes :
             {SectorPasses::first, SectorPasses::second, SectorPasses::both}) {
          for (const Turn turn : {Turn::left, Turn::right}) {
            expect(SectorSearch{datum, TrueDirection::degrees(40), Length::nautical_miles(20), turn,
                                sectors, start, passes});
          }
        }
      }
    }
  }
}

TEST(SectorSearch, P1EachPassEndsWhereItBegan) {
  for_each_form([](const SectorSearch& search) {
    const Pattern pattern = make_sector_search(search);
    if (search.passes != SectorPasses::both) {
      EXPECT_LT(miles(commence_search_point(pattern), pattern.legs.back().to), 1e-6);
    } else {
      const std::size_t per_pass = search.sectors == SectorCount::six ? 9 : 6;
      EXPECT_LT(miles(commence_search_point(pattern), pattern.legs[per_pass - 1].to), 1e-6);
    }
  });
}

TEST(SectorSearch, P2SixSectorsAreNineRadiiLong) {
  for (const Position& datum : test::awkward_places()) {
    SectorSearch search{datum, TrueDirection::degrees(40), Length::nautical_miles(30)};
    // Legs along the rim follow the Earth's curve: 30 NM is 9 radii to 0.001 %.
    EXPECT_NEAR(total_distance(make_sector_search(search)) / search.radius, 9, 9e-5);
    search.start = SectorStart::rim;
    EXPECT_NEAR(total_distance(make_sector_search(search)) / search.radius, 9, 9e-5);
    search.sectors = SectorCount::four;
    EXPECT_NEAR(total_distance(make_sector_search(search)) / search.radius, 4 + 2 * std::sqrt(2),
                2e-4);
  }
}

TEST(SectorSearch, FliesEachRadiusOnceInOneOfTheSectors) {
  for_each_form([](const SectorSearch& search) {
    const Pattern pattern = make_sector_search(search);
    std::vector<int> flown(72, 0);
    for (const Leg& leg : pattern.legs) {
      if (leg.kind != LegKind::search) continue;
      EXPECT_NEAR(leg.line.length.nautical_miles(), 20, 1e-8);
      const bool out = miles(leg.from, search.datum) < 1e-6;
      EXPECT_TRUE(out || miles(leg.to, search.datum) < 1e-6);
      const TrueDirection spoke = geodesic(search.datum, out ? leg.to : leg.from).start_track;
      const double turned = normalized_360(turn_between(search.first_track, spoke)).degrees();
      const auto bin = static_cast<std::size_t>(std::lround(turned / 5)) % 72;
      EXPECT_NEAR(std::remainder(turned - 5.0 * static_cast<double>(bin), 360), 0, 1e-6);
      ++flown[bin];
    }
    const std::size_t step = search.sectors == SectorCount::six ? 12 : 18;
    const std::size_t half = step / 2;
    for (std::size_t bin = 0; bin < 72; ++bin) {
      const bool in_first = bin % step == 0 && search.passes != SectorPasses::second;
      const bool in_second =
          search.passes != SectorPasses::first && (bin + half) % step == 0;  // turned half a sector
      EXPECT_EQ(flown[bin], in_first || in_second ? 1 : 0) << "radius " << bin * 5;
    }
  });
}

TEST(SectorSearch, TurnsToOneSideInSixSectors) {
  for_each_form([](const SectorSearch& search) {
    if (search.sectors == SectorCount::four) return;
    const Pattern pattern = make_sector_search(search);
    for (std::size_t i = 1; i < pattern.legs.size(); ++i) {
      const double turn =
          turn_between(pattern.legs[i - 1].line.end_track, pattern.legs[i].line.start_track)
              .degrees();
      const double to_side = search.first_turn == Turn::right ? turn : -turn;
      const bool through_datum = std::abs(turn) < 1e-6;
      const bool between_passes = search.passes == SectorPasses::both && (i == 9 || i == 10);
      EXPECT_TRUE(through_datum || between_passes || std::abs(to_side - 120) < 0.02)
          << "before leg " << i + 1 << ": " << turn;
    }
  });
}

TEST(SectorSearch, SecondPassIsTurnedHalfASectorToTheSideOfTheTurns) {
  SectorSearch search = boat_search(at(38, -117));
  search.passes = SectorPasses::second;
  EXPECT_NEAR(make_sector_search(search).legs[0].line.start_track.degrees(), 30, 1e-9);
  search.first_turn = Turn::left;
  EXPECT_NEAR(make_sector_search(search).legs[0].line.start_track.degrees(), 330, 1e-9);
  search.sectors = SectorCount::four;
  EXPECT_NEAR(make_sector_search(search).legs[0].line.start_track.degrees(), 315, 1e-9);
}

TEST(SectorSearch, RunsThroughTheDatumFirstWhenItStartsOnTheRim) {
  SectorSearch search = boat_search(at(60, -180));
  search.first_track = TrueDirection::degrees(250);
  search.start = SectorStart::rim;
  const Pattern pattern = make_sector_search(search);
  EXPECT_NEAR(miles(commence_search_point(pattern), search.datum), 0.5, 1e-9);
  EXPECT_EQ(pattern.legs[0].to, search.datum);
  EXPECT_NEAR(pattern.legs[1].line.start_track.degrees(), 250, 1e-6);
}

TEST(SectorSearch, SaysHowFarApartTheRadiiAre) {
  // Half way out two neighbouring radii are half a radius apart, at the rim a whole one.
  const Pattern pattern = make_sector_search(boat_search(at(38, -117)));
  EXPECT_NEAR(pattern.spacing.nautical_miles(), 0.25, 1e-9);
  ASSERT_EQ(pattern.remarks.size(), 1u);
  EXPECT_NE(pattern.remarks[0].find("0.50 NM at the rim"), std::string::npos);
  SectorSearch wide = boat_search(at(38, -117));
  wide.radius = Length::nautical_miles(31);
  EXPECT_EQ(make_sector_search(wide).remarks.size(), 2u);
}

TEST(SectorSearch, RefusesWhatCannotBeFlown) {
  for (const double radius : {0.0, -1.0, 600.0, std::nan("")}) {
    SectorSearch search = boat_search(at(0, 0));
    search.radius = Length::nautical_miles(radius);
    EXPECT_THROW(make_sector_search(search), Error) << radius;
  }
  EXPECT_THROW(parse_sector_count("5"), Error);
  EXPECT_THROW(parse_sector_start("edge"), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
