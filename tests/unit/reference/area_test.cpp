// Areas of use: edges, margins, the antimeridian and the poles.
#include <gtest/gtest.h>

#include "sweepwright/reference/system.hpp"

namespace sweepwright::reference {
namespace {

Area area(double south, double west, double north, double east) {
  return {"test", Angle::degrees(south), Angle::degrees(west), Angle::degrees(north),
          Angle::degrees(east)};
}

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

TEST(Area, holds_its_edges) {
  const Area box = area(-10, 20, 30, 40);
  for (const Position inside : {at(-10, 20), at(30, 40), at(-10, 40), at(30, 20), at(0, 30)}) {
    EXPECT_TRUE(contains(box, inside));
  }
  for (const Position outside :
       {at(-10.1, 30), at(30.1, 30), at(0, 19.9), at(0, 40.1), at(0, -150)}) {
    EXPECT_FALSE(contains(box, outside));
  }
}

TEST(Area, grows_by_its_margin) {
  const Area box = area(-10, 20, 30, 40);
  const Angle margin = Angle::degrees(1);
  EXPECT_TRUE(contains(box, at(31, 40.9), margin));
  EXPECT_TRUE(contains(box, at(-11, 19.1), margin));
  EXPECT_FALSE(contains(box, at(31.1, 30), margin));
  EXPECT_FALSE(contains(box, at(0, 41.1), margin));
  EXPECT_FALSE(contains(box, at(0, 18.9), margin));
}

TEST(Area, may_cross_the_antimeridian) {
  const Area box = area(50, 170, 70, -160);
  for (const double longitude : {170.0, 179.9, 180.0, -180.0, -170.0, -160.0}) {
    EXPECT_TRUE(contains(box, at(60, longitude))) << longitude;
  }
  for (const double longitude : {169.9, -159.9, 0.0}) {
    EXPECT_FALSE(contains(box, at(60, longitude))) << longitude;
  }
  EXPECT_TRUE(contains(area(50, 179.5, 70, 180), at(60, -179.5), Angle::degrees(1)));
}

TEST(Area, may_be_the_whole_earth) {
  for (const Position any : {at(90, 0), at(-90, 0), at(0, 180), at(0, -180), at(12, 34)}) {
    EXPECT_TRUE(contains(Area{}, any));
    EXPECT_TRUE(contains(area(-90, -179.5, 90, 179.5), any, Angle::degrees(1)));
  }
}

}  // namespace
}  // namespace sweepwright::reference
