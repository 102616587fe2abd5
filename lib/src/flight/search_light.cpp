#include "sweepwright/flight/search_light.hpp"

namespace sweepwright::flight {

SearchLight search_light(const FlownPattern& flown, Position commence_search_point) {
  const auto time = [&](Duration since_departure) {
    return flown.depart + std::chrono::duration_cast<std::chrono::seconds>(since_departure);
  };
  SearchLight light;
  light.day =
      daylight(commence_search_point, local_date(commence_search_point, time(flown.arrival)));
  light.search = flown.search_end - flown.arrival;
  light.in_light =
      time_in_light(commence_search_point, time(flown.arrival), time(flown.search_end));
  light.sun = sun_position(commence_search_point, time((flown.arrival + flown.search_end) / 2));
  light.into_sun = time_into_sun(flown);
  light.direction_across = leg_direction_across(light.sun);
  return light;
}

}  // namespace sweepwright::flight
