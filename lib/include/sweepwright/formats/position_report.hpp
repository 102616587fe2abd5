// A position that was read: how it was understood and what it is called everywhere, as text and as
// JSON.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/grid/chart.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/magnetic/variation.hpp"

namespace sweepwright::formats {

struct PositionReport {
  locate::Reading reading;
  std::vector<locate::Written> notations;
  std::vector<grid::ChartName> chart_sheets;  ///< all that hold the place, the naming one first
  std::optional<magnetic::Variation> variation;
  std::vector<std::string> remarks;  ///< what whoever uses the position must know
};

/// The position, how it was read, other readings, notations, variation, remarks. Where several
/// chart sheets overlap, also the names on the others.
std::string position_report_text(const PositionReport& report);
/// `latitude`, `longitude`, `read_as`, `other_readings`, `notations`, `chart_sheets`,
/// `variation_deg`. On one line, or over several.
std::string position_report_json(const PositionReport& report, bool on_one_line);

}  // namespace sweepwright::formats
