// Where the hours go: the effort of the units, its best spread over the cells of a belief, and the
// rectangles that the units can fly, written in open formats with the working.
//
// Conventions: as JSON members, GeoJSON properties and CSV columns:
//     of a cell        `cell`, `system`, `level`, `probability`, `area_m2`, `coverage`, `pod`,
//     `pos` of a rectangle   `unit`, `coverage`, `poc`, `pod`, `pos`, `area_m2`, `effort_m2`,
//     `spacing_m`,
//                      `leg_m`, `leg_direction_true_deg`, `search_time_s`
//     beside them      `pos`, `bound`, `effort_m2`, `units`, `working`; for cells also
//                      `threshold_per_m2` and `outside`, for rectangles `ratio`
//   `bound` is the probability of success of the theoretical optimum, `pos` that of what the file
//   shows: the same for cells, less for rectangles.
// Promises: P1 parse_area() reads the rectangles as areas; P2 a cell's `pod` can go back into the
//   belief with `belief --update`; P3 same report, same bytes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/effort/assign.hpp"
#include "sweepwright/effort/available.hpp"
#include "sweepwright/effort/optimal.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/sweep/working.hpp"

namespace sweepwright::formats {

struct EffortReport {
  belief::Belief belief;
  std::vector<effort::Unit> units;
  effort::Allocation allocation;  ///< of the units' whole effort
  /// The probability of success that the hours were worked out for.
  std::optional<sweep::Probability> wanted_pos;
  std::optional<effort::FlyablePlan> plan;  ///< one rectangle for each unit
};

enum class EffortFormat { geojson, csv, json };

/// How the effort and its answer were found, for a planner to check.
sweep::Working effort_working(const EffortReport& report);

/// Each cell with its coverage.
void write_effort_cells(Sink& sink, const EffortReport& report, EffortFormat format,
                        const Provenance& provenance);

/// Each unit with its rectangle. The report must have a plan.
void write_effort_rectangles(Sink& sink, const EffortReport& report, EffortFormat format,
                             const Provenance& provenance);

}  // namespace sweepwright::formats
