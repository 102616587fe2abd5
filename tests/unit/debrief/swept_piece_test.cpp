#include "sweepwright/debrief/swept_piece.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"

namespace sweepwright::debrief {
namespace {

using test::at;

TEST(SweptPiece, effort_is_length_times_sweep_width) {
  // A degree of the WGS 84 equator: 2 pi a / 360 = 111319.4908 m.
  const SweptPiece piece{at(0, 179.5), at(0, -179.5), Length::kilometres(2)};
  EXPECT_NEAR(effort(piece).square_metres(), 111319.4908 * 2000, 1);
}

}  // namespace
}  // namespace sweepwright::debrief
