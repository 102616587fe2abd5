// The answer of a terrain question, as text and as JSON: highest ground, least clearance, safe
// heights.
//
// Conventions: heights above mean sea level; text in feet with metres beside them and nautical
//   miles, JSON in metres. JSON positions are [longitude, latitude].
// Promises: P1 what could not be checked stands in both as not checked, and the verdict is never
//   clear or marginal then (terrain_report_test.cpp).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/terrain/clearance.hpp"

namespace sweepwright::formats {

/// Heights that keep the minimum: one for the whole line, one for each leg, or steps.
enum class HeightSteps { line, leg, length };

struct TerrainQuestion {
  Path path;
  Length half_width = terrain::kCorridorHalfWidth;
  Length minimum = terrain::kMinimumClearance;
  /// Planned; without it the line is planned at the heights that keep the minimum.
  std::optional<Length> altitude;
  HeightSteps steps = HeightSteps::line;
  Length shortest_step;  ///< for HeightSteps::length
};

struct TerrainReport {
  TerrainQuestion question;
  terrain::Corridor corridor;
  terrain::HeightPlan heights;    ///< planned, or those that keep the minimum
  terrain::HeightPlan safe_legs;  ///< heights that keep the minimum, leg by leg
  terrain::Clearance clearance;
  std::vector<std::string> models;  ///< source and vertical reference of each tile
  std::vector<std::string> remarks;
  std::vector<std::string> leg_names;  ///< on the chart; empty where legs are just counted
};

TerrainReport make_terrain_report(const terrain::ElevationModel& model,
                                  const TerrainQuestion& question,
                                  std::vector<std::string> remarks = {});

/// The worst class that occurs anywhere on the line.
terrain::ClearanceClass verdict(const TerrainReport& report);

std::string terrain_report_text(const TerrainReport& report);
std::string terrain_report_json(const TerrainReport& report, const Provenance& provenance);

/// What no elevation model says, for everything that shows a clearance.
inline constexpr std::string_view kTerrainCaution =
    "Trees, masts, wires and errors of the elevation model are not in these heights.";

}  // namespace sweepwright::formats
