// The units of the effort command, from their options.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "sweepwright/effort/assign.hpp"

namespace sweepwright::cli {

class UnitOptions {
 public:
  void add_to(CLI::App& command);

  /// At least one. With `hours_wanted`, the hours are what the command works out: a single unit
  /// needs none and gets one hour; those of several units are in proportion. Throws Error(usage).
  std::vector<effort::Unit> units(bool hours_wanted) const;
  effort::FlyingLimits limits() const;

 private:
  effort::Unit single_unit(bool hours_wanted) const;

  std::string sweep_width_;
  std::string speed_;
  std::string hours_;
  std::vector<std::string> units_;
  std::string least_leg_;
  std::string least_spacing_;
  std::string least_width_;
};

/// `CALLSIGN,WIDTH,SPEED,HOURS` or `CALLSIGN,WIDTH,SPEED,ENDURANCE,OUT,BACK,RESERVE`. Throws
/// Error(value).
effort::Unit parse_unit(const std::string& text);

}  // namespace sweepwright::cli
