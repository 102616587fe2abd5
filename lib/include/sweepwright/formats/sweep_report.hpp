// The answer of a sweep width question, with its working, as text and as JSON.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/sweep/sector_search.hpp"
#include "sweepwright/sweep/spacing_plan.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::formats {

struct SpacingAnswer {
  /// What the planner gave, from which the rest was worked out.
  enum class Given { spacing, coverage, probability, effort };
  sweep::SpacingPlan plan;
  Given given{};
};

struct GroundAnswer {
  /// What was worked out from the other two.
  enum class Found { coverage, hours, area };
  sweep::GroundPlan plan;
  Found found{};
};

struct SweepReport {
  sweep::SweepWidth width;
  sweep::DetectionModel model;
  std::optional<SpacingAnswer> spacing = std::nullopt;
  std::optional<GroundAnswer> ground = std::nullopt;
  std::optional<sweep::SectorSearch> sector_search = std::nullopt;
  std::vector<sweep::Probability> earlier_searches = {};  ///< of the same area
};

/// The working line by line, then the cautions.
std::string sweep_report_text(const SweepReport& report);
/// `sweep_width_m`, `spacing_m`, `coverage`, `probability_of_detection`, `working`, `cautions` and
/// more: docs/reference/formats.md.
std::string sweep_report_json(const SweepReport& report, const Provenance& provenance);

}  // namespace sweepwright::formats
