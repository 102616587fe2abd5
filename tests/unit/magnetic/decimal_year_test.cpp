// Decimal years against dates counted by hand.
#include "sweepwright/magnetic/decimal_year.hpp"

#include <gtest/gtest.h>

namespace sweepwright::magnetic {
namespace {

using namespace std::chrono;
using namespace std::chrono_literals;

constexpr double kSecond = 1.0 / (366 * 86400);

TEST(DecimalYear, starts_with_the_year) {
  EXPECT_EQ(to_decimal_year(sys_days(2025y / January / 1)).years(), 2025.0);
  EXPECT_EQ(to_decimal_year(sys_days(2030y / January / 1)).years(), 2030.0);
}

TEST(DecimalYear, counts_365_days_or_366) {
  EXPECT_NEAR(to_decimal_year(sys_days(2025y / July / 2) + 12h).years(), 2025.5, kSecond);
  EXPECT_NEAR(to_decimal_year(sys_days(2028y / July / 2)).years(), 2028.5, kSecond);
  EXPECT_NEAR(to_decimal_year(sys_days(2026y / December / 31)).years(), 2026 + 364.0 / 365,
              kSecond);
  EXPECT_NEAR(to_decimal_year(sys_days(2028y / December / 31)).years(), 2028 + 365.0 / 366,
              kSecond);
}

TEST(DecimalYear, never_runs_backwards) {
  TimePoint time = sys_days(2027y / December / 30);
  double last = 0;
  for (int i = 0; i < 4 * 86400; i += 977, time += 977s) {
    const double years = to_decimal_year(time).years();
    EXPECT_GT(years, last);
    last = years;
  }
}

}  // namespace
}  // namespace sweepwright::magnetic
