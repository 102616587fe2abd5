// The options --wind and --height: one wind, or a forecast of several heights and times.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "sweepwright/flight/wind_field.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::cli {

/// The options as typed. A wind is `DIRECTION/SPEED`, from, true unless marked M:
/// `250/15kt`, `240M/15kt`; `@HEIGHT` and `@TIME` after it make it one of several.
struct WindOption {
  std::vector<std::string> winds;
  std::string height;

  void add_to(CLI::App& command);
  bool is_given() const { return !winds.empty(); }
  /// Magnetic winds are turned true with the variation at the place on the date.
  flight::WindField field(Position place, TimePoint date) const;
  /// Height of flight: that of --height, else 0, which matters only to winds of several heights.
  Length flight_height() const;
};

/// `075/2kt`: a direction, true unless marked M, and a speed of 0 or more.
struct DirectionAndSpeed {
  TrueDirection direction;
  Speed speed;
};
DirectionAndSpeed parse_direction_and_speed(const std::string& text, Position place,
                                            TimePoint date);

}  // namespace sweepwright::cli
