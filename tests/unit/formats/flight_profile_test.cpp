// The profile of a whole flight: what joining pieces must not lose.
#include "sweepwright/formats/flight_profile.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "ground_cases.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using terrain::ClearanceClass;

TEST(FlightProfile, keeps_every_class_of_each_leg_and_the_least_clearance) {
  const plan::Plan plan = plan::make_plan(test::mission_over_a_cone());
  for (const plan::Assignment& assignment : plan.assignments) {
    const hazard::TerrainCheck& check = assignment.terrain.value();
    const TerrainReport profile = flight_profile(check, assignment.flown);
    Length whole;
    std::size_t pieces = 0;
    std::optional<Length> least;
    bool below = false;
    for (const hazard::LegTerrain& leg : check.legs) {
      whole += terrain::length(leg.corridor);
      pieces += leg.corridor.pieces.size();
      below = below || terrain::has(leg.clearance, ClearanceClass::below_minimum);
      if (!least || leg.clearance.least->clearance < *least) least = leg.clearance.least->clearance;
    }
    EXPECT_LT(profile.corridor.pieces.size(), pieces);
    EXPECT_NEAR(terrain::length(profile.corridor).metres(), whole.metres(), 1e-6);
    EXPECT_EQ(terrain::has(profile.clearance, ClearanceClass::below_minimum), below);
    EXPECT_EQ(profile.clearance.least->clearance, *least);
    EXPECT_EQ(profile.leg_names.front(), "out");
    EXPECT_EQ(profile.leg_names.size(), assignment.flown.legs.size());
  }
}

TEST(FlightProfile, of_no_legs_is_refused) {
  EXPECT_THROW(flight_profile({}, {}), Error);
}

}  // namespace
}  // namespace sweepwright::formats
