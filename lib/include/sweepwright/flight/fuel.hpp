// Fuel and its flow, in the unit that the crew's gauges have.
//
// Problem: fuel is told in mass or in volume, and one becomes the other only with a density that
//   nobody here knows. Amounts keep the unit they came in.
// Conventions: text is a number and a unit, flow is an amount an hour: `30kg/h`, `8 USgal/h`.
//     mass     kg, lb
//     volume   L, USgal, impgal
//   `gal` alone is refused: a US gallon is 3.785 litres, an imperial one 4.546.
// Domain: finite amounts; a flow above 0.
// Accuracy: conversion factors are exact by definition (base/constants.hpp).
// Promises: P1 what is printed reads back to the digits printed (fuel_test.cpp).
// Source: unit definitions in base/constants.hpp.
#pragma once

#include <string>
#include <string_view>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::flight {

enum class FuelUnit { kilogram, pound, litre, us_gallon, imperial_gallon };

/// `kg`, `lb`, `L`, `USgal`, `impgal`.
std::string_view symbol(FuelUnit unit);
/// The end of a JSON key: `kg`, `lb`, `l`, `usgal`, `impgal`.
std::string_view key(FuelUnit unit);

struct Fuel {
  FuelUnit unit{};
  double amount = 0;
};

struct FuelFlow {
  FuelUnit unit{};
  double per_hour = 0;
};

inline Fuel operator*(FuelFlow flow, Duration time) {
  return {flow.unit, flow.per_hour * time.count() / 3600};
}
/// How long the fuel lasts. Throws Error(value) for mass against volume.
Duration operator/(Fuel fuel, FuelFlow flow);

Fuel parse_fuel(std::string_view text);
FuelFlow parse_fuel_flow(std::string_view text);
/// `23.4 kg`: with `decimals` places.
std::string format_fuel(Fuel fuel, int decimals);
std::string format_fuel_flow(FuelFlow flow, int decimals);

}  // namespace sweepwright::flight
