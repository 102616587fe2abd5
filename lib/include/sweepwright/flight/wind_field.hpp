// WindField: the wind by height and time, from one wind or from a forecast of several levels.
//
// Problem: forecasts give winds at a few heights and hours; legs lie between them.
// Conventions: heights are all of one kind (above sea level, as forecasts write them); between
//   reports the wind's parts towards east and north are interpolated, in height first, then in
//   time: between a north and an east wind of 20 kt lies a north-east wind of 14 kt, as hand
//   methods draw it. Below the lowest and above the highest level, before the first and after the
//   last time, the nearest report holds: covers() says so, and flown patterns carry a remark.
// Domain: any reports; levels may differ from time to time. Two reports of the same height and
//   time are Error(value). Without reports the air is calm.
// Accuracy: as interpolated: exact at the reports (wind_field_test.cpp).
// Promises: P1 reports in any order give the same field; P2 the wind is continuous in height and
//   time.
// Source: common practice, no source.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/flight/wind.hpp"

namespace sweepwright::flight {

struct WindReport {
  Length height;
  TimePoint time;
  Wind wind;
};

class WindField {
 public:
  /// Calm air.
  WindField() = default;
  /// The same wind everywhere and always.
  static WindField uniform(const Wind& wind);
  explicit WindField(std::vector<WindReport> reports);

  /// The wind `after` a point in time.
  Velocity at(Length height, TimePoint since, Duration after = {}) const;
  /// True where the wind lies between reports, or where one wind is all that is known.
  bool covers(Length height, TimePoint time) const;
  /// True when reports differ in time.
  bool varies_in_time() const { return times_.size() > 1; }

 private:
  struct Level {
    Length height;
    Velocity wind;
  };
  struct Forecast {
    TimePoint time;
    std::vector<Level> levels;  ///< lowest first
  };
  static Velocity at_height(const std::vector<Level>& levels, Length height);

  std::vector<Forecast> times_;  ///< earliest first
};

}  // namespace sweepwright::flight
