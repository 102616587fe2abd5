// The options of `pattern` that say how the legs are flown, and the flown pattern that they ask
// for.
#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "common/wind_option.hpp"
#include "sweepwright/formats/flown_pattern_writer.hpp"

namespace sweepwright::cli {

/// The options as typed; those not given are empty.
struct FlownOptions {
  std::string true_airspeed;
  std::string transit_airspeed;
  WindOption wind;
  std::string bank;
  std::string turn_rate;
  std::string row_order = "quickest";
  std::string drift;
  std::string depart;
  std::string base;
  std::string fuel_flow;
  std::string fuel;
  std::string endurance;
  std::string reserve;

  void add_to(CLI::App& command);
  /// Whether the pattern is to be flown at a true airspeed; the others are refused without it.
  bool is_asked_for() const;
  /// The wind at departure, at the height of flight. `place`, `now`: for the variation.
  flight::Wind wind_at(Position place, TimePoint now) const;
  std::optional<flight::Drift> drift_at(Position place, TimePoint now) const;
  /// When it departs; `now` when that is not given.
  TimePoint departure(TimePoint now) const;
};

/// `now`: for the variation when no departure is given.
formats::FlownReport make_flown_report(const FlownOptions& options, pattern::Pattern pattern,
                                       TimePoint now);

}  // namespace sweepwright::cli
