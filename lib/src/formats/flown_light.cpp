#include "formats/flown_light.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json time_json(const std::optional<TimePoint>& time) {
  return time ? ordered_json(format_utc(*time)) : ordered_json();
}

std::string_view state_name(flight::SunState state) {
  switch (state) {
    case flight::SunState::above:
      return "polar day";
    case flight::SunState::below:
      return "polar night";
    case flight::SunState::crosses:
      return "sun rises or sets";
  }
  return "sun rises or sets";
}

/// `sunrise 2026-07-14T12:30:00Z, sunset ...`.
std::string sun_times_text(const flight::SunTimes& sun) {
  if (sun.state == flight::SunState::below) return "the sun does not rise that day (polar night)";
  if (sun.state == flight::SunState::above) return "the sun does not set that day (polar day)";
  std::string text;
  if (sun.rise) text = "sunrise " + format_utc(*sun.rise);
  if (sun.set) text += (text.empty() ? "sunset " : ", sunset ") + format_utc(*sun.set);
  return text;
}

}  // namespace

ordered_json light_json(const flight::SearchLight& light) {
  ordered_json json{{"state", state_name(light.day.sun.state)},
                    {"civil_dawn_time", time_json(light.day.civil_twilight.rise)},
                    {"sunrise_time", time_json(light.day.sun.rise)},
                    {"sunset_time", time_json(light.day.sun.set)},
                    {"civil_dusk_time", time_json(light.day.civil_twilight.set)},
                    {"search_s", light.search.count()},
                    {"search_in_light_s", light.in_light.count()},
                    {"sun_azimuth_true_deg", light.sun.azimuth.degrees()},
                    {"sun_elevation_deg", light.sun.elevation.degrees()},
                    {"search_into_sun_s", light.into_sun.count()}};
  if (light.direction_across) {
    json["leg_direction_across_sun_true_deg"] = light.direction_across->degrees();
  }
  return json;
}

std::vector<std::string> light_remarks(const flight::SearchLight& light) {
  std::vector<std::string> remarks;
  const Duration dark = light.search - light.in_light;
  if (dark > std::chrono::minutes(1)) {
    remarks.push_back(fmt::format("{} of the search of {} are not in daylight: {}",
                                  format_duration(dark), format_duration(light.search),
                                  sun_times_text(light.day.sun)));
  }
  if (light.into_sun > Duration() && light.direction_across) {
    remarks.push_back(
        fmt::format("search legs look into the sun for {}: it stands {:.0f} degrees high in {}; "
                    "legs on {} and {} "
                    "would not",
                    format_duration(light.into_sun), light.sun.elevation.degrees(),
                    format_direction(light.sun.azimuth), format_direction(*light.direction_across),
                    format_direction(light.direction_across->reversed())));
  }
  return remarks;
}

}  // namespace sweepwright::formats
