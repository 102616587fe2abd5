#include "sweepwright/magnetic/decimal_year.hpp"

namespace sweepwright::magnetic {

DecimalYear to_decimal_year(TimePoint time) {
  using namespace std::chrono;
  const year current = year_month_day(floor<days>(time)).year();
  const sys_days start = current / January / 1;
  const sys_days end = (current + years(1)) / January / 1;
  return DecimalYear(static_cast<int>(current) + Duration(time - start) / Duration(end - start));
}

}  // namespace sweepwright::magnetic
