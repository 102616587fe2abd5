// Datums and error ellipses against closed forms, SciPy's integrals, and a plain sum over small
// cells whose densities come from GeographicLib.
#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <cmath>
#include <numbers>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::belief {
namespace {

using test::at;
using test::CheckRow;

/// A grid of one cell, to ask for the probability of any ground.
class OneCell : public grid::Grid {
 public:
  explicit OneCell(grid::Cell cell) : cell_(std::move(cell)) {}
  std::string_view system() const override { return "one"; }
  const std::vector<grid::Level>& levels() const override { return levels_; }
  std::string name_of(Position, const grid::Level&) const override { return "one"; }
  grid::Cell cell(std::string_view) const override { return cell_; }
  void visit(const Region&, const grid::Level&, grid::Selection,
             const grid::CellSink& sink) const override {
    sink(cell_);
  }
  void visit(const grid::LatLonBox&, const grid::Level&, grid::Selection,
             const grid::CellSink& sink) const override {
    sink(cell_);
  }
  std::optional<grid::Cell> parent(const grid::Cell&) const override { return std::nullopt; }
  std::vector<grid::Cell> children(const grid::Cell&) const override { return {}; }
  std::vector<grid::Cell> neighbours(const grid::Cell&) const override { return {}; }

 private:
  grid::Cell cell_;
  std::vector<grid::Level> levels_{{"one", 0, Angle::degrees(1)}};
};

const grid::LatLonBox kAnywhere{Angle::degrees(-1), Angle::degrees(1), Angle::degrees(-1),
                                Angle::degrees(1)};

double probability(const Source& source, const grid::Cell& cell) {
  const OneCell grid(cell);
  return make_belief({{1, "", source}}, grid, grid.levels().front(), kAnywhere).probability.at(0);
}

/// The same with 0 for a cell that holds nothing, which is otherwise refused.
double probability_or_none(const Source& source, const grid::Cell& cell) {
  try {
    return probability(source, cell);
  } catch (const Error& error) {
    if (error.message().find("outside the cells") == std::string::npos) throw;
    return 0;
  }
}

grid::Cell of_region(Region region) {
  return {.system = "one", .level = {}, .name = "one", .box = {}, .region = std::move(region)};
}

/// A box of the plane round a place; small, so that plane and ground agree to 1e-7.
Region box_at(Position centre, double left, double right, double low, double high) {
  const LocalPlane plane(centre);
  const auto corner = [&](double x, double y) {
    return plane.to_position({Length::metres(x), Length::metres(y)});
  };
  return make_region(
      {{{corner(left, low), corner(right, low), corner(right, high), corner(left, high)}, {}}});
}

Region circle(Position centre, Length radius, int corners) {
  Polygon polygon;
  for (int i = 0; i < corners; ++i) {
    polygon.outer.push_back(
        travel(centre, TrueDirection::degrees(-360.0 * i / corners), radius).position);
  }
  return make_region({polygon});
}

class NormalBox : public testing::TestWithParam<CheckRow> {};

TEST_P(NormalBox, agrees_with_scipy) {
  const CheckRow& row = GetParam();
  for (const Position place : test::awkward_places()) {
    const ErrorEllipse ellipse{place, Length::metres(row.number("semi_major_m")),
                               Length::metres(row.number("semi_minor_m")),
                               TrueDirection::degrees(row.number("axis_deg"))};
    const Region box = box_at(place, row.number("left_m"), row.number("right_m"),
                              row.number("low_m"), row.number("high_m"));
    EXPECT_NEAR(probability_or_none(ellipse, of_region(box)), row.number("probability"), 2e-7);
  }
}

INSTANTIATE_TEST_SUITE_P(SciPy, NormalBox,
                         testing::ValuesIn(test::check_rows("belief/normal_boxes.csv",
                                                            {"semi_major_m", "semi_minor_m",
                                                             "axis_deg", "left_m", "right_m",
                                                             "low_m", "high_m", "probability"})),
                         test::RowName());

// Closed form 1 - exp(-R^2 / (2 s^2)). A ring of n corners misses about (2 pi / n)^2 / 6 of its
// area: 2e-6 for 1800 corners; mass is off by less.
TEST(Normal, a_circle_holds_what_the_closed_form_says) {
  for (const Position place : test::awkward_places()) {
    for (const double error_nm : {1.0, 10.0, 100.0}) {
      const Length error = Length::nautical_miles(error_nm);
      for (const double radii : {0.5, 1.0, 2.0}) {
        const double r = radii * (error / deviation(error));
        EXPECT_NEAR(probability(Datum{place, error}, of_region(circle(place, error * radii, 1800))),
                    1 - std::exp(-r * r / 2), 2e-6);
      }
    }
  }
}

TEST(Normal, half_lies_within_the_total_probable_error) {
  const Length error = Length::nautical_miles(5);
  EXPECT_NEAR(probability(Datum{at(45, 7), error}, of_region(circle(at(45, 7), error, 3600))), 0.5,
              1e-6);
  // E / sqrt(2 ln 2) with sqrt(2 ln 2) = 1.17741 (5 decimals, any table of logarithms).
  EXPECT_NEAR(error / deviation(error), 1.17741, 5e-6);
}

TEST(Normal, total_probable_error_by_hand) {
  // sqrt(3^2 + 4^2 + 12^2) = 13
  const ProbableErrors parts{Length::nautical_miles(3), Length::nautical_miles(4),
                             Length::nautical_miles(12)};
  EXPECT_NEAR(total_probable_error(parts).nautical_miles(), 13, 1e-12);
  EXPECT_THROW(total_probable_error({Length::metres(-1), {}, {}}), Error);
}

/// The witness: the density at the middle of many small boxes, times their area.
double midpoint_sum(Position centre, Length s, const grid::LatLonBox& box, int parts) {
  double sum = 0;
  const double high = (box.north - box.south).degrees() / parts;
  const double wide = grid::width(box).degrees() / parts;
  for (int i = 0; i < parts; ++i) {
    const Angle south = box.south + Angle::degrees(high * i);
    grid::LatLonBox piece{south, south + Angle::degrees(high), Angle(), Angle::degrees(wide)};
    const double area = grid::area(piece).square_metres();
    for (int j = 0; j < parts; ++j) {
      double distance = 0;
      double start = 0;
      double end = 0;
      double reduced = 0;
      GeographicLib::Geodesic::WGS84().Inverse(
          centre.latitude().degrees(), centre.longitude().degrees(), south.degrees() + high / 2,
          box.west.degrees() + wide * (j + 0.5), distance, start, end, reduced);
      const double r = distance / s.metres();
      const double stretch = reduced > 0 ? distance / reduced : 1;
      sum +=
          std::exp(-r * r / 2) / (2 * std::numbers::pi * s.metres() * s.metres()) * area * stretch;
    }
  }
  return sum;
}

TEST(Normal, cells_of_parallels_and_meridians_agree_with_a_plain_sum) {
  const struct {
    Position centre;
    double error_km;
    grid::LatLonBox box;
  } cases[] = {
      {at(60, 10),
       20,
       {Angle::degrees(59.75), Angle::degrees(60.25), Angle::degrees(9.5), Angle::degrees(10)}},
      {at(0, 179.9),
       15,
       {Angle::degrees(-0.25), Angle::degrees(0), Angle::degrees(179.75), Angle::degrees(-180)}},
      {at(78.2, 16),
       30,
       {Angle::degrees(78), Angle::degrees(78.5), Angle::degrees(15.5), Angle::degrees(17)}},
      {at(89.8, 0),
       30,
       {Angle::degrees(89.5), Angle::degrees(90), Angle::degrees(-30), Angle::degrees(90)}},
      {at(-35, 150),
       200,
       {Angle::degrees(-36), Angle::degrees(-34), Angle::degrees(152), Angle::degrees(155)}},
  };
  for (const auto& one : cases) {
    const Length error = Length::kilometres(one.error_km);
    grid::Cell cell{.system = "one", .level = {}, .name = "one", .box = one.box, .region = {}};
    const double coarse = midpoint_sum(one.centre, deviation(error), one.box, 200);
    const double fine = midpoint_sum(one.centre, deviation(error), one.box, 400);
    // Halving the boxes quarters the error of the sum.
    EXPECT_NEAR(probability(Datum{one.centre, error}, cell), fine + (fine - coarse) / 3, 1e-8);
  }
}

// Cells with edges in common add up: every cell round a datum together is 1, at any place.
TEST(Normal, all_cells_round_a_datum_sum_to_one) {
  for (const Position place : test::awkward_places()) {
    const Datum datum{place, Length::kilometres(5)};
    const grid::Grid& gars = grid::grid("gars");
    const Region around = circle(place, Length::kilometres(5 / 1.1774 * 7), 72);
    double total = 0;
    gars.visit(around, gars.level("5min"), grid::Selection::touching,
               [&](const grid::Cell& cell) { total += probability_or_none(datum, cell); });
    // Beyond seven deviations lie 2e-11.
    EXPECT_NEAR(total, 1, 1e-9);
  }
}

TEST(Normal, a_huge_cell_of_a_tiny_datum_is_all_or_nothing) {
  grid::Cell cell{.system = "one", .level = {}, .name = "one", .box = {}, .region = {}};
  cell.box =
      grid::LatLonBox{Angle::degrees(0), Angle::degrees(15), Angle::degrees(0), Angle::degrees(15)};
  EXPECT_NEAR(probability(Datum{at(7, 7), Length::metres(1)}, cell), 1, 1e-9);
  EXPECT_NEAR(probability(Datum{at(0, 7), Length::metres(10)}, cell), 0.5, 1e-5);
  EXPECT_THROW(probability(Datum{at(-1, 7), Length::metres(1)}, cell), Error);
}

TEST(Normal, rings_hold_their_share) {
  const ErrorEllipse ellipse{at(78.2, 16), Length::kilometres(9), Length::kilometres(3),
                             TrueDirection::degrees(60)};
  for (const double share : {0.5, 0.9, 0.95}) {
    const auto ring = containment_ring(ellipse, share);
    ASSERT_TRUE(ring);
    // 72 corners on the line: the polygon misses up to 0.13 % of the area.
    EXPECT_NEAR(probability(ellipse, of_region(*ring)), share, 2e-3);
    EXPECT_LT(probability(ellipse, of_region(*ring)), share);
  }
  EXPECT_THROW(containment_ring(ellipse, 1), Error);
}

TEST(Normal, refuses_errors_outside_their_domain) {
  for (const double metres : {0.0, -5.0, 0.5, 1e9, std::nan("")}) {
    EXPECT_THROW(probability(Datum{at(0, 0), Length::metres(metres)},
                             of_region(circle(at(0, 0), Length::kilometres(1), 12))),
                 Error);
  }
}

}  // namespace
}  // namespace sweepwright::belief
