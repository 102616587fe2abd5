#include "debrief/flown_width.hpp"

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::debrief {
namespace {

constexpr double kHeightStep = 10;  // m
constexpr double kSpeedStep = 1;    // m/s
constexpr Length kHighestLowest = Length::metres(600);

}  // namespace

FlownWidth::FlownWidth(const plan::Mission& mission, const plan::Assignment& assignment,
                       const std::optional<CrewReport>& report)
    : mission_(mission),
      unit_(assignment.unit),
      planned_width_(assignment.sweep_width.width),
      visibility_(mission.conditions.visibility),
      height_(assignment.unit.search_height),
      speed_(assignment.unit.search_speed),
      fatigued_(assignment.unit.fatigued) {
  if (!report) return;
  visibility_ = report->visibility.value_or(visibility_);
  if (height_ && report->height) height_ = report->height;
  speed_ = report->speed.value_or(speed_);
  fatigued_ = fatigued_ || report->fatigued;
}

std::optional<Length> FlownWidth::look_up(std::optional<Length> height, Speed speed) const {
  const plan::Conditions& conditions = mission_.conditions;
  try {
    return sweep::sweep_width({.platform = unit_.platform,
                               .object = mission_.object.table_name,
                               .visibility = visibility_,
                               .height = height,
                               .wind = conditions.wind_speed,
                               .sea = conditions.sea_height,
                               .ground_speed = speed,
                               .terrain = conditions.terrain,
                               .fatigued = fatigued_,
                               .weather_table = conditions.weather_table,
                               .uncorrected = unit_.sweep_width,
                               .uncorrected_source = unit_.sweep_width_source})
        .width;
  } catch (const Error& error) {
    if (error.code() == ErrorCode::impossible || error.code() == ErrorCode::value) return {};
    throw;
  }
}

std::optional<Length> FlownWidth::lowest_height(Speed speed) {
  if (!lowest_) {
    lowest_ = std::optional<Length>();
    for (Length height = Length::metres(kHeightStep); height <= kHighestLowest;
         height += Length::metres(kHeightStep)) {
      if (look_up(height, speed)) {
        lowest_ = height;
        break;
      }
    }
  }
  return *lowest_;
}

std::optional<Length> FlownWidth::at(std::optional<Length> height, std::optional<Speed> speed) {
  if (unit_.sweep_width && unit_.sweep_width_is_corrected) return planned_width_;
  if (!unit_.search_height) height.reset();
  if (unit_.search_height && !height) height = height_;
  const double fast = speed.value_or(speed_).metres_per_second();
  const std::pair<long, long> key{height ? std::lround(height->metres() / kHeightStep) : 0,
                                  std::max(1L, std::lround(fast / kSpeedStep))};
  const auto known = known_.find(key);
  if (known != known_.end()) return known->second;
  const Speed rounded = Speed::metres_per_second(kSpeedStep * static_cast<double>(key.second));
  if (height) height = Length::metres(kHeightStep * static_cast<double>(key.first));
  std::optional<Length> width = look_up(height, rounded);
  if (!width && height) {
    const std::optional<Length> lowest = lowest_height(rounded);
    if (lowest && *height < *lowest) {
      width = look_up(lowest, rounded);
      raised_ = true;
    }
  }
  return known_[key] = width;
}

}  // namespace sweepwright::debrief
