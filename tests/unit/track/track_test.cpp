#include "sweepwright/track/track.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"

namespace sweepwright::track {
namespace {

using test::at;

// A degree of the WGS 84 equator: 2 pi a / 360 = 111319.4908 m.
constexpr double kEquatorDegree_m = 111319.4908;

TEST(Track, gaps_count_nothing) {
  const Track track{.name = "",
                    .source = "",
                    .segments = {{{at(0, 179), {}, {}}, {at(0, -180), {}, {}}},
                                 {{at(0, -170), {}, {}}, {at(0, -169), {}, {}}}}};
  EXPECT_EQ(fix_count(track), 4U);
  EXPECT_NEAR(length(track).metres(), 2 * kEquatorDegree_m, 0.001);
}

TEST(Track, nothing_has_no_length) {
  EXPECT_EQ(fix_count(Track{}), 0U);
  EXPECT_EQ(length(Track{}), Length());
}

}  // namespace
}  // namespace sweepwright::track
