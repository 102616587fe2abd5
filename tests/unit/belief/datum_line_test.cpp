// Datum lines against SciPy's integrals and the closed form of a band.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/grid/local.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::belief {
namespace {

using test::at;
using test::CheckRow;

Belief over(const Source& source, std::string_view system, std::string_view level) {
  const grid::Grid& grid = grid::grid(system);
  return make_belief({{1, "", source}}, grid, grid.level(level));
}

class LineBox : public testing::TestWithParam<CheckRow> {};

// The box is a sum of cells of a local grid of 100 m.
TEST_P(LineBox, agrees_with_scipy) {
  const CheckRow& row = GetParam();
  const Position middle = at(60, -180);
  const Length half = Length::metres(row.number("length_m") / 2);
  const DatumLine line{{travel(middle, TrueDirection::degrees(180), half).position,
                        travel(middle, TrueDirection::degrees(0), half).position},
                       Length::metres(row.number("spread_m")),
                       {}};
  const LocalPlane plane(middle);
  const double left = row.number("left_m");
  const double high = row.number("high_m");
  const Position corner = plane.to_position({Length::metres(left), Length::metres(high)});
  const TrueDirection up =
      geodesic(corner, middle).start_track +
      (TrueDirection::degrees(0).angle() - Angle::radians(std::atan2(-left, -high)));
  const auto grid = grid::make_local_grid({corner, up, Length::metres(100)});
  double total = 0;
  const int columns = static_cast<int>(std::lround((row.number("right_m") - left) / 100));
  const int rows = static_cast<int>(std::lround((high - row.number("low_m")) / 100));
  const Belief belief = make_belief(
      {{1, "", line}}, *grid, grid->levels().front(),
      {middle.latitude() - Angle::degrees(0.06), middle.latitude() + Angle::degrees(0.06),
       Angle::degrees(179.88), Angle::degrees(-179.88)});
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    const std::string& name = belief.cells[i].name;
    const std::size_t digits = name.find_first_of("0123456789");
    int column = 0;
    for (std::size_t j = 0; j < digits; ++j) column = column * 26 + (name[j] - 'A' + 1);
    if (column <= columns && std::stoi(name.substr(digits)) <= rows) total += belief.probability[i];
  }
  EXPECT_NEAR(total, row.number("probability"), 1e-6);
}

INSTANTIATE_TEST_SUITE_P(SciPy, LineBox,
                         testing::ValuesIn(test::check_rows("belief/datum_line_boxes.csv",
                                                            {"length_m", "spread_m", "left_m",
                                                             "right_m", "low_m", "high_m",
                                                             "probability"})),
                         test::RowName());

// Along the equator cells of 1 minute are bands: erf(d / (s sqrt 2)) within d of the track.
TEST(DatumLine, bands_hold_what_the_closed_form_says) {
  const DatumLine line{{at(0, 0), at(0, 8)}, Length::nautical_miles(5), {}};
  const Belief belief = over(line, "gars", "5min");
  double within = 0;
  double all = 0;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    const grid::LatLonBox& box = belief.cells[i].box.value();
    if (box.west.degrees() < 1.99 || box.east.degrees() > 6.01) continue;  // away from the ends
    all += belief.probability[i];
    if (std::abs(grid::centre(box).latitude().degrees()) < 1.0 / 12)
      within += belief.probability[i];
  }
  EXPECT_NEAR(all, 0.5, 1e-3);  // half of the line, less what of it lies in no cell
  const double d = geodesic(at(0, 4), at(1.0 / 12, 4)).length.metres();
  const double s = cross_track_deviation(line.spread).metres();
  EXPECT_NEAR(within, 0.5 * std::erf(d / (s * std::numbers::sqrt2)), 1e-5);
}

TEST(DatumLine, pieces_join_without_a_seam) {
  // 1000 km in pieces of 200 km: cells a piece apart hold the same.
  const DatumLine line{{at(0, 0), at(0, 9)}, Length::nautical_miles(10), {}};
  const Belief belief = over(line, "gars", "30min");
  double least = 1;
  double most = 0;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    const grid::LatLonBox& box = belief.cells[i].box.value();
    if (box.south != Angle() || box.west.degrees() < 2 || box.east.degrees() > 7) continue;
    least = std::min(least, belief.probability[i]);
    most = std::max(most, belief.probability[i]);
  }
  EXPECT_LT(most / least - 1, 1e-4);
}

TEST(DatumLine, weights_of_legs_count) {
  const Path route{at(10, 20), at(10, 21), at(11, 21)};
  const auto north_of = [&](const std::vector<double>& weights) {
    const Belief belief = over(DatumLine{route, Length::kilometres(1), weights}, "gars", "5min");
    double north = 0;
    for (std::size_t i = 0; i < belief.cells.size(); ++i) {
      if (grid::label_point(belief.cells[i]).latitude().degrees() > 10.1) {
        north += belief.probability[i];
      }
    }
    return north;
  };
  EXPECT_GT(north_of({0, 1}), 0.85);
  EXPECT_NEAR(north_of({3, 1}) / north_of({0, 1}), 0.25, 2e-3);
  EXPECT_LT(north_of({1, 0}), 1e-3);
}

TEST(DatumLine, crosses_the_antimeridian_and_the_pole) {
  for (const Path& route : {Path{at(-17, 179), at(-18, -179)}, Path{at(89, 0), at(89, 180)},
                            Path{at(78, 10), at(79, 20), at(78, 30)}}) {
    const Belief belief = over(DatumLine{route, Length::nautical_miles(4), {}}, "gars", "15min");
    EXPECT_LT(belief.outside, 1.0001e-3);
    EXPECT_NEAR(sum(belief.probability) + belief.outside, 1, 1e-12);
  }
}

TEST(DatumLine, refuses_what_is_no_route) {
  const Length spread = Length::kilometres(1);
  EXPECT_THROW(over(DatumLine{{at(0, 0)}, spread, {}}, "gars", "5min"), Error);
  EXPECT_THROW(over(DatumLine{{at(0, 0), at(0, 0)}, spread, {}}, "gars", "5min"), Error);
  EXPECT_THROW(over(DatumLine{{at(0, 0), at(0, 1)}, spread, {1, 1}}, "gars", "5min"), Error);
  EXPECT_THROW(over(DatumLine{{at(0, 0), at(0, 1)}, spread, {-1}}, "gars", "5min"), Error);
  EXPECT_THROW(over(DatumLine{{at(0, 0), at(0, 1)}, spread, {0}}, "gars", "5min"), Error);
  EXPECT_THROW(over(DatumLine{{at(0, 0), at(0, 1)}, Length(), {}}, "gars", "5min"), Error);
}

}  // namespace
}  // namespace sweepwright::belief
