// The options of `sweep` that say what is asked, and the report that answers it.
//
// The sweep width comes from one of five places (tables, the planner's own width, a lateral range
// curve, a detection range, a ground team's range of detection); then from it spacing, probability,
// ground and hours. Where the answer is written is the command's own business (sweep.cpp).
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "sweepwright/formats/sweep_report.hpp"
#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::cli {

/// The options as typed; those not given are empty.
struct SweepRequest {
  // From tables.
  std::string platform;
  std::string object;
  std::string height;
  std::string visibility;
  std::string wind;
  std::string sea;
  std::string terrain;
  std::string weather_table;
  std::string manual_width;
  std::string manual;
  bool fatigued = false;
  std::vector<std::string> tables;
  // From elsewhere.
  std::string sweep_width;
  std::string lateral_range;
  std::string detection_range;
  std::string range_kind;
  std::string beacon_height;
  std::string range_of_detection;
  std::string contrast;
  // What is asked.
  std::string spacing;
  std::string coverage;
  std::string pod;
  std::string law;
  std::string effort;
  std::string area;
  std::string hours;
  std::string speed;
  std::string sector_radius;
  std::string sectors;
  std::vector<std::string> earlier_pods;

  void add_to(CLI::App& command);
};

/// The built-in tables with those of --table put in. Files go into `provenance`.
sweep::Tables requested_tables(const SweepRequest& request, formats::Provenance& provenance);

/// Throws Error (usage) for options that are missing or contradict each other.
formats::SweepReport make_sweep_report(const SweepRequest& request,
                                       formats::Provenance& provenance);

}  // namespace sweepwright::cli
