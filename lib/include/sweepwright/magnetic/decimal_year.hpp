// DecimalYear: a point in time as a number of years, as magnetic models count it.
//
// Conventions: 2025.0 is the first instant of 2025 UTC, 2025.5 the middle of that year.
// Accuracy: under a second (decimal_year_test.cpp).
// Source: WMM technical report: day of the year over the number of days in that year.
#pragma once

#include <compare>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::magnetic {

class DecimalYear {
 public:
  constexpr explicit DecimalYear(double years) : years_(years) {}
  constexpr double years() const { return years_; }
  constexpr auto operator<=>(const DecimalYear&) const = default;

 private:
  double years_;
};

DecimalYear to_decimal_year(TimePoint time);

}  // namespace sweepwright::magnetic
