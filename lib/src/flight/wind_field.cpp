#include "sweepwright/flight/wind_field.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::flight {
namespace {

Velocity between(Velocity a, Velocity b, double share) {
  return {a.east + (b.east - a.east) * share, a.north + (b.north - a.north) * share};
}

}  // namespace

WindField WindField::uniform(const Wind& wind) {
  return WindField({{Length(), TimePoint(), wind}});
}

WindField::WindField(std::vector<WindReport> reports) {
  std::sort(reports.begin(), reports.end(), [](const WindReport& a, const WindReport& b) {
    return a.time != b.time ? a.time < b.time : a.height < b.height;
  });
  for (const WindReport& report : reports) {
    if (!(report.wind.speed >= Speed())) {
      throw Error(
          ErrorCode::value,
          fmt::format("a wind speed is {}", format_speed(report.wind.speed, SpeedUnit::knot, 1)),
          "give a wind speed of 0 or more, and the direction that it comes from");
    }
    if (times_.empty() || times_.back().time != report.time) times_.push_back({report.time, {}});
    std::vector<Level>& levels = times_.back().levels;
    if (!levels.empty() && levels.back().height == report.height) {
      throw Error(ErrorCode::value,
                  fmt::format("there are two winds at {} for the same time",
                              format_length(report.height, LengthUnit::foot, 0)),
                  "give one wind for each height and time");
    }
    levels.push_back({report.height, velocity(report.wind)});
  }
}

Velocity WindField::at_height(const std::vector<Level>& levels, Length height) {
  const auto above = std::find_if(levels.begin(), levels.end(),
                                  [&](const Level& level) { return level.height >= height; });
  if (above == levels.begin()) return levels.front().wind;
  if (above == levels.end()) return levels.back().wind;
  const Level& below = *(above - 1);
  return between(below.wind, above->wind, (height - below.height) / (above->height - below.height));
}

Velocity WindField::at(Length height, TimePoint since, Duration after) const {
  if (times_.empty()) return {};
  if (times_.size() == 1) return at_height(times_.front().levels, height);
  const auto seconds_from = [&](const Forecast& forecast) {
    return Duration(since - forecast.time) + after;
  };
  const auto later = std::find_if(times_.begin(), times_.end(), [&](const Forecast& forecast) {
    return seconds_from(forecast) <= Duration();
  });
  if (later == times_.begin()) return at_height(times_.front().levels, height);
  if (later == times_.end()) return at_height(times_.back().levels, height);
  const Forecast& earlier = *(later - 1);
  return between(at_height(earlier.levels, height), at_height(later->levels, height),
                 seconds_from(earlier) / Duration(later->time - earlier.time));
}

bool WindField::covers(Length height, TimePoint time) const {
  const auto has_height = [&](const Forecast& forecast) {
    return forecast.levels.size() == 1 ||
           (height >= forecast.levels.front().height && height <= forecast.levels.back().height);
  };
  if (!std::all_of(times_.begin(), times_.end(), has_height)) return false;
  return times_.size() < 2 || (time >= times_.front().time && time <= times_.back().time);
}

}  // namespace sweepwright::flight
