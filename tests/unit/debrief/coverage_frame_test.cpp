#include "sweepwright/debrief/coverage_frame.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::debrief {
namespace {

using test::at;
using testing::HasSubstr;

constexpr Length kKilometre = Length::kilometres(1);

// Area by counting cells against the ellipsoidal area (Karney 2013, through GeographicLib).
TEST(CoverageFrame, cells_inside_make_up_the_area_everywhere) {
  for (const Position place : test::awkward_places()) {
    const Region region =
        test::rectangle(place, TrueDirection::degrees(30), 30 * kKilometre, 20 * kKilometre);
    const CoverageFrame frame = coverage_frame(region, Length::metres(150));
    const std::vector<std::size_t> inside = cells_inside(frame, region);
    EXPECT_TRUE(std::is_sorted(inside.begin(), inside.end()));
    EXPECT_NEAR(frame.cell_area() * static_cast<double>(inside.size()) / area(region), 1, 1e-3);
    for (std::size_t i = 0; i < inside.size(); i += 1009) {
      EXPECT_TRUE(contains(region, cell_centre(frame, inside[i])));
    }
  }
}

TEST(CoverageFrame, P1_the_middle_of_the_outline_is_the_centre) {
  const Region region = test::rectangle(at(60, -180), {}, 5 * kKilometre, 5 * kKilometre);
  const CoverageFrame frame = coverage_frame(region, Length::metres(500));
  for (std::size_t cell = 0; cell < frame.cells(); ++cell) {
    const Region outline = cell_outline(frame, cell);
    EXPECT_LT(geodesic(middle(outline), cell_centre(frame, cell)).length.metres(), 0.1);
    EXPECT_NEAR(area(outline) / frame.cell_area(), 1, 1e-5);
  }
}

TEST(CoverageFrame, P2_every_corner_of_the_area_lies_in_the_raster) {
  for (const Position place : test::awkward_places()) {
    const Region region =
        test::rectangle(place, TrueDirection::degrees(70), 30 * kKilometre, 9 * kKilometre);
    const CoverageFrame frame = coverage_frame(region, Length::metres(700));
    for (const Position corner : region.polygons.front().outer) {
      const PlanePoint laid = frame.plane.to_plane(corner);
      const double column = (laid.right - frame.corner.right) / frame.cell;
      const double row = (laid.up - frame.corner.up) / frame.cell;
      EXPECT_GT(column, -1e-3);
      EXPECT_LT(column, static_cast<double>(frame.columns) + 1e-3);
      EXPECT_GT(row, -1e-3);
      EXPECT_LT(row, static_cast<double>(frame.rows) + 1e-3);
    }
  }
}

// The accuracy that the header states, against geodesics.
TEST(CoverageFrame, lengths_on_the_plane_are_too_long_by_the_stated_share_at_most) {
  const LocalPlane plane(at(45, 7));
  for (const double reach_km : {40.0, 100.0, 200.0}) {
    for (int bearing = 0; bearing < 360; bearing += 30) {
      const Position place =
          travel(plane.centre(), TrueDirection::degrees(bearing), Length::kilometres(reach_km))
              .position;
      const Position further =
          travel(plane.centre(), TrueDirection::degrees(bearing), Length::kilometres(reach_km + 1))
              .position;
      const PlanePoint a = plane.to_plane(place);
      const PlanePoint b = plane.to_plane(further);
      const double laid = std::hypot((b.right - a.right).metres(), (b.up - a.up).metres());
      EXPECT_GE(laid / 1000, 1);
      const double middle_km = reach_km + 0.5;
      EXPECT_LT(laid / 1000 - 1, 1.02 * (middle_km / 6371) * (middle_km / 6371));
    }
  }
}

TEST(CoverageFrame, least_cell_keeps_to_the_number_of_cells) {
  const Region region = test::rectangle(at(10, 10), {}, 40 * kKilometre, 3 * kKilometre);
  for (const std::size_t most : {10U, 1000U, 1'000'000U}) {
    const std::size_t cells = coverage_frame(region, least_cell(region, most)).cells();
    EXPECT_LE(cells, most);
    EXPECT_GT(cells, most / 3);
  }
}

TEST(CoverageFrame, refuses_what_is_too_large_or_has_no_size) {
  const auto message = [](const Region& region, Length cell) -> std::string {
    try {
      static_cast<void>(coverage_frame(region, cell));
    } catch (const Error& error) {
      return error.what();
    }
    return "accepted";
  };
  const Region small = test::rectangle(at(10, 10), {}, kKilometre, kKilometre);
  EXPECT_THAT(message(small, Length()), HasSubstr("expected more than 0"));
  EXPECT_THAT(message(small, Length::metres(0.1)), HasSubstr("expected at most"));
  const Region large = test::rectangle(at(10, 10), {}, 500 * kKilometre, 10 * kKilometre);
  EXPECT_THAT(message(large, kKilometre), HasSubstr("200 km"));
}

}  // namespace
}  // namespace sweepwright::debrief
