// Uses a function of each library underneath, so that a missing one shows when linking.
#include <cmath>
#include <iostream>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/geodesic.hpp"

int main() {
  using namespace sweepwright;
  const Position equator = Position::at(Angle::degrees(0), Angle::degrees(0));
  const Position east = Position::at(Angle::degrees(0), Angle::degrees(1));
  std::cout << format_length(geodesic(equator, east).length, LengthUnit::kilometre, 2) << '\n';
}
