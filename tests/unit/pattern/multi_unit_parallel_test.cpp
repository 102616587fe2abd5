#include "sweepwright/pattern/multi_unit_parallel.hpp"

#include <gtest/gtest.h>

#include <sstream>

#include "pattern_distance.hpp"
#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

LadderFromStart ladder(int rows) {
  return {at(38, -117),
          TrueDirection::degrees(30),
          Length::nautical_miles(20),
          Length::nautical_miles(1),
          rows,
          Turn::right};
}

/// The row of the one-crew pattern on which a leg lies, counted from 1.
int row_of(const Leg& leg, const std::vector<Leg>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double same = geodesic(leg.from, rows[i].from).length.metres() +
                        geodesic(leg.to, rows[i].to).length.metres();
    const double other_way = geodesic(leg.from, rows[i].to).length.metres() +
                             geodesic(leg.to, rows[i].from).length.metres();
    if (std::min(same, other_way) < 0.01) return static_cast<int>(i) + 1;
  }
  return 0;
}

class MultiUnitCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(MultiUnitCheck, FliesTheRowsOfItsPlace) {
  const test::CheckRow& row = GetParam();
  const LadderFromStart request = ladder(static_cast<int>(row.number("total_rows")));
  const std::vector<Leg> rows = search_legs(make_parallel_track(request));
  const Pattern own = make_multi_unit_parallel(
      request, {static_cast<int>(row.number("units")), static_cast<int>(row.number("unit")),
                parse_formation(row.text("formation"))});
  std::ostringstream flown;
  for (const Leg& leg : search_legs(own)) {
    flown << (flown.tellp() > 0 ? " " : "") << row_of(leg, rows);
  }
  EXPECT_EQ(flown.str(), row.text("rows"));
  // Everybody starts the same way.
  EXPECT_NEAR(turn_between(own.legs[0].line.start_track, rows[0].line.start_track).degrees(), 0,
              0.3);
}

INSTANTIATE_TEST_SUITE_P(Rule, MultiUnitCheck,
                         testing::ValuesIn(test::check_rows("pattern/multi_unit_parallel.csv",
                                                            {"total_rows", "units", "unit",
                                                             "formation", "rows"})),
                         test::RowName());

TEST(MultiUnit, P1TogetherTheCrewsFlyThePatternOfOne) {
  for (const Position& place : test::awkward_places()) {
    const Region sector = test::rectangle(place, TrueDirection::degrees(10),
                                          Length::nautical_miles(30), Length::nautical_miles(11));
    const RegionPatternOptions options{.spacing = Length::nautical_miles(1)};
    const std::vector<Leg> rows = search_legs(make_parallel_track(sector, options));
    for (const Formation formation : {Formation::abreast, Formation::staggered}) {
      std::vector<int> flown(rows.size(), 0);
      for (int unit = 1; unit <= 3; ++unit) {
        for (const Leg& leg :
             search_legs(make_multi_unit_parallel(sector, options, {3, unit, formation}))) {
          const int row = row_of(leg, rows);
          ASSERT_GT(row, 0);
          ++flown[static_cast<std::size_t>(row) - 1];
        }
      }
      EXPECT_EQ(flown, std::vector<int>(rows.size(), 1));
    }
  }
}

TEST(MultiUnit, P2AbreastCrewsFlyNeighbouringRowsTheSameWay) {
  const auto legs_of_unit = [](int unit) {
    return search_legs(make_multi_unit_parallel(ladder(9), {3, unit, Formation::abreast}));
  };
  const std::vector<Leg> first = legs_of_unit(1);
  for (int unit = 2; unit <= 3; ++unit) {
    const std::vector<Leg> other = legs_of_unit(unit);
    ASSERT_EQ(other.size(), first.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
      EXPECT_NEAR(geodesic(first[i].from, other[i].from).length.nautical_miles(), unit - 1, 0.001);
      EXPECT_NEAR(geodesic(first[i].to, other[i].to).length.nautical_miles(), unit - 1, 0.001);
    }
  }
}

TEST(MultiUnit, RefusesWhatCannotBeFlown) {
  EXPECT_THROW(make_multi_unit_parallel(ladder(6), {1, 1, Formation::abreast}), Error);
  EXPECT_THROW(make_multi_unit_parallel(ladder(6), {21, 1, Formation::abreast}), Error);
  EXPECT_THROW(make_multi_unit_parallel(ladder(6), {3, 4, Formation::abreast}), Error);
  EXPECT_THROW(make_multi_unit_parallel(ladder(6), {3, 0, Formation::abreast}), Error);
  EXPECT_THROW(make_multi_unit_parallel(ladder(2), {3, 3, Formation::abreast}), Error);
  EXPECT_THROW(make_multi_unit_parallel(ladder(2), {3, 3, Formation::staggered}), Error);
  EXPECT_THROW(parse_formation("trail"), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
