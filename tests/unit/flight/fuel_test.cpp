#include "sweepwright/flight/fuel.hpp"

#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

TEST(Fuel, FlowTimesTimeIsFuel) {
  const Fuel used = parse_fuel_flow("30 kg/h") * Duration(90 * 60);
  EXPECT_EQ(used.unit, FuelUnit::kilogram);
  EXPECT_DOUBLE_EQ(used.amount, 45);
  EXPECT_EQ(format_fuel(used, 1), "45.0 kg");
}

TEST(Fuel, LastsWithinMassOrVolume) {
  EXPECT_NEAR((parse_fuel("60kg") / parse_fuel_flow("30kg/h")).count(), 7200, 1e-9);
  // 100 lb at 20 kg/h: 45.359237 kg.
  EXPECT_NEAR((parse_fuel("100lb") / parse_fuel_flow("20kg/h")).count(), 45.359237 / 20 * 3600,
              1e-6);
  // Ten US gallons are 37.85411784 litres [NIST SP 811, from memory].
  EXPECT_NEAR((parse_fuel("10 USgal") / parse_fuel_flow("1L/h")).count(), 37.85411784 * 3600, 1e-6);
  EXPECT_NEAR((parse_fuel("1impgal") / parse_fuel_flow("1l/h")).count(), 4.54609 * 3600, 1e-9);
  EXPECT_THROW(parse_fuel("60kg") / parse_fuel_flow("30L/h"), Error);
}

TEST(Fuel, P1_ReadsBackWhatIsPrinted) {
  for (const FuelUnit unit : {FuelUnit::kilogram, FuelUnit::pound, FuelUnit::litre,
                              FuelUnit::us_gallon, FuelUnit::imperial_gallon}) {
    const Fuel back = parse_fuel(format_fuel({unit, 12.25}, 2));
    EXPECT_EQ(back.unit, unit);
    EXPECT_DOUBLE_EQ(back.amount, 12.25);
    EXPECT_EQ(parse_fuel_flow(format_fuel_flow({unit, 8.5}, 1)).unit, unit);
  }
}

TEST(Fuel, RefusesWhatCannotBeUnderstood) {
  for (const char* text : {"", "30", "kg", "30 gal", "30 stone", "-3kg", "1e3kg", "30kg/h"}) {
    EXPECT_THROW(parse_fuel(text), Error) << text;
  }
  for (const char* text : {"", "30kg", "30kg/min", "0kg/h", "8gal/h", "8/h", "kg/h"}) {
    EXPECT_THROW(parse_fuel_flow(text), Error) << text;
  }
}

}  // namespace
}  // namespace sweepwright::flight
