// The options that name elevation models and what their files do not say.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::cli {

struct ElevationOption {
  std::vector<std::string> files;
  std::string unit;
  std::string zone;

  /// Declares the option for the files under the name given, --dem-unit and --dem-zone.
  CLI::Option* add_to(CLI::App& command, const std::string& name, const std::string& help);

  /// Remarks say also what looks wrong in the heights.
  formats::ElevationFiles read() const;
};

}  // namespace sweepwright::cli
