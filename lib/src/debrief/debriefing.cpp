#include "sweepwright/debrief/debriefing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "debrief/missed_raster.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/patches.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/belief/update.hpp"
#include "sweepwright/debrief/coverage_map.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::debrief {
namespace {

constexpr double kCellsInSweep = 10;
/// How many sweep widths the raster reaches beyond the sectors.
constexpr double kMargin = 1;

/// A rectangle round all sectors, with a margin.
Region ground_of(const plan::Plan& plan) {
  const LocalPlane plane = local_plane(plan.area);
  Length margin;
  Length left, right, low, high;
  bool first = true;
  for (const plan::Assignment& assignment : plan.assignments) {
    margin = std::max(margin, kMargin * assignment.sweep_width.width);
    const PlaneRegion sector = to_plane(assignment.sector, plane);
    const Span across = extent_right(sector);
    const Span along = extent_up(sector);
    left = first ? across.low : std::min(left, across.low);
    right = first ? across.high : std::max(right, across.high);
    low = first ? along.low : std::min(low, along.low);
    high = first ? along.high : std::max(high, along.high);
    first = false;
  }
  const auto corner = [&](Length x, Length y) { return plane.to_position({x, y}); };
  return make_region(
      {Polygon{{corner(left - margin, low - margin), corner(right + margin, low - margin),
                corner(right + margin, high + margin), corner(left - margin, high + margin)},
               {}}});
}

CoverageFrame frame_of(const plan::Plan& plan, const std::vector<Sortie>& sorties,
                       const DebriefOptions& options) {
  const Region ground = ground_of(plan);
  Length cell = options.cell.value_or(Length());
  if (!options.cell) {
    for (const Sortie& sortie : sorties) {
      if (sortie.mean_width <= Length()) continue;
      const Length wanted = sortie.mean_width / kCellsInSweep;
      if (cell == Length() || wanted < cell) cell = wanted;
    }
    if (cell == Length()) cell = plan.assignments.front().sweep_width.width / kCellsInSweep;
  }
  return coverage_frame(ground, std::max(cell, least_cell(ground, kMostRasterCells)));
}

/// By time on scene; those without times keep their order, at the end.
void sort_by_time(std::vector<Sortie>& sorties) {
  std::stable_sort(sorties.begin(), sorties.end(), [](const Sortie& a, const Sortie& b) {
    if (!a.on_scene || !b.on_scene) return a.on_scene.has_value() && !b.on_scene.has_value();
    return *a.on_scene < *b.on_scene;
  });
}

/// A region, and the raster cells that stand for its ground.
struct Footprint {
  std::vector<std::size_t> cells;
  double whole = 1;  ///< raster cells that its whole ground would fill

  double mean(const std::vector<float>& values) const {
    double sum = 0;
    for (const std::size_t cell : cells) sum += double{values[cell]};
    return std::clamp(sum / whole, 0.0, 1.0);
  }
  /// Keeps the cells that are marked; their ground is then the whole of it.
  void keep(const std::vector<bool>& marked) {
    std::erase_if(cells, [&](std::size_t cell) { return !marked[cell]; });
    whole = std::max(1.0, static_cast<double>(cells.size()));
  }
  double sum(const std::vector<double>& values) const {
    double total = 0;
    for (const std::size_t cell : cells) total += values[cell];
    return total;
  }
};

Footprint footprint(const CoverageFrame& frame, const Region& region, Area ground) {
  if (geodesic(frame.plane.centre(), middle(region)).length > kLocalPlaneReach / 2) return {};
  Footprint found{cells_inside(frame, region), 1};
  // A region that lies wholly on the raster is the mean of its cells; one that reaches beyond it
  // counts the rest as not searched.
  found.whole = std::max(static_cast<double>(found.cells.size()), ground / frame.cell_area());
  const double count = static_cast<double>(found.cells.size());
  if (count > 0 && found.whole / count < 1.02) found.whole = count;
  return found;
}

belief::Belief belief_of(const plan::Plan& plan, bool& even) {
  if (plan.belief) return plan.belief->belief;
  even = true;
  const grid::Grid& grid = grid::grid(plan.mission.grid.system);
  return belief::make_belief({{1, "", belief::equal_chances(plan.area)}}, grid,
                             grid.level(plan.mission.grid.level));
}

/// Takes the sorties onto the raster one by one.
class Adder {
 public:
  Adder(const plan::Plan& plan, Debriefing& found, unsigned threads)
      : plan_(plan), found_(found), threads_(threads) {
    missed_.assign(found.frame.cells(), 1.0F);
    std::vector<bool> in_area(missed_.size());
    for (const std::size_t cell : cells_inside(found.frame, plan.area)) in_area[cell] = true;
    for (std::size_t i = 0; i < found.before.cells.size(); ++i) {
      cells_.push_back(
          footprint(found.frame, grid::outline(found.before.cells[i]), found.before.area[i]));
      // An even belief lies in the area alone: cells on its edge count for their part in it.
      if (found.even_belief) cells_.back().keep(in_area);
    }
    for (const plan::Assignment& assignment : plan.assignments) {
      sectors_.push_back(footprint(found.frame, assignment.sector, area(assignment.sector)));
    }
  }

  void add(Sortie sortie) {
    const plan::Assignment& assignment = plan_.assignments[sortie.input.assignment];
    CoverageAccumulator accumulator(found_.frame, threads_,
                                    {.passes = false,
                                     .swept = true,
                                     .detection = found_.law == sweep::DetectionLaw::inverse_cube});
    for (const FlownPiece& piece : sortie.pieces) {
      if (piece.swept.sweep_width > Length()) accumulator.add(piece.swept);
    }
    const CoverageMap map = accumulator.map();
    const std::vector<float> pods =
        raster_pod(map, found_.law, std::max(sortie.mean_width, assignment.pattern.spacing));
    for (std::size_t i = 0; i < missed_.size(); ++i) missed_[i] *= 1.0F - pods[i];

    SortieResult result;
    const Footprint& sector = sectors_[sortie.input.assignment];
    result.against = against_plan(assignment, sortie.pieces);
    result.planned_pod = assignment.probability_of_detection;
    result.pod = sweep::Probability(sector.mean(pods));
    result.coverage = sweep::Coverage(
        std::max(0.0, sector.sum(map.effort_m2) / area(assignment.sector).square_metres()));
    const double before = success_;
    take_pods();
    result.success_share = std::max(0.0, success_ - before);
    result.sortie = std::move(sortie);
    found_.sorties.push_back(std::move(result));
  }

  void finish() {
    const std::vector<double> held = held_by_cells();
    for (std::size_t i = 0; i < sectors_.size(); ++i) {
      SectorResult sector;
      sector.assignment = i;
      sector.planned_pod = plan_.assignments[i].probability_of_detection;
      sector.pod = sweep::Probability(sectors_[i].mean(found_.raster_pod));
      for (const std::size_t cell : sectors_[i].cells) {
        sector.containment_before += held[cell];
        sector.containment_after += held[cell] * double{missed_[cell]} / (1 - success_);
      }
      found_.sectors.push_back(sector);
    }
  }

 private:
  /// The probabilities of detection so far.
  void take_pods() {
    found_.raster_pod.resize(missed_.size());
    for (std::size_t i = 0; i < missed_.size(); ++i) found_.raster_pod[i] = 1.0F - missed_[i];
    found_.cell_pod.clear();
    for (const Footprint& cell : cells_) found_.cell_pod.push_back(cell.mean(found_.raster_pod));
    success_ = belief::success(found_.before.probability, found_.cell_pod);
  }

  /// The belief before, raster cell by raster cell.
  std::vector<double> held_by_cells() const {
    std::vector<double> held(missed_.size(), 0.0);
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      for (const std::size_t cell : cells_[i].cells) {
        held[cell] = found_.before.probability[i] / cells_[i].whole;
      }
    }
    return held;
  }

  const plan::Plan& plan_;
  Debriefing& found_;
  unsigned threads_;
  std::vector<float> missed_;
  std::vector<Footprint> cells_;
  std::vector<Footprint> sectors_;
  double success_ = 0;
};

}  // namespace

Debriefing make_debriefing(const plan::Plan& plan, std::vector<Sortie> sorties,
                           const DebriefOptions& options) {
  if (sorties.empty() || sorties.size() > kMostSorties) {
    throw Error(ErrorCode::value, fmt::format("there are {} sorties", sorties.size()),
                fmt::format("give 1 to {} flown tracks", kMostSorties));
  }
  Debriefing found;
  found.law = options.law.value_or(plan.mission.detection_law);
  found.frame = frame_of(plan, sorties, options);
  found.before = belief_of(plan, found.even_belief);
  sort_by_time(sorties);
  Adder adder(plan, found, std::max(1U, options.threads));
  for (Sortie& sortie : sorties) adder.add(std::move(sortie));
  adder.finish();

  const belief::Updated updated = belief::updated(found.before, found.cell_pod);
  found.after = updated.belief;
  found.success = updated.success;
  const double left =
      std::accumulate(found.after.probability.begin(), found.after.probability.end(), 0.0);
  if (left > 0 && plan.effort > Area()) {
    found.next = effort::optimal_allocation(effort::cells_of(found.after), plan.effort);
  }
  if (found.even_belief) {
    found.remarks.emplace_back(
        "the mission states no belief: each part of its area is taken as equally likely, and "
        "nothing as likely outside it");
  }
  if (!plan.mission.conditions.terrain) {
    found.remarks.emplace_back(
        "the belief is that of the time of these sorties: an object on the water drifts on, and "
        "the "
        "belief must be moved before the next search");
  }
  return found;
}

std::vector<std::vector<Hole>> sector_holes(const plan::Plan& plan, const Debriefing& found,
                                            const HoleLimit& limit) {
  // All sorties as one search, whatever their law: what it leaves unseen is exp(-potential).
  CoverageMap map{found.frame, {}, {}, {}, {}, {}};
  for (const float pod : found.raster_pod) map.potential.push_back(-std::log1p(-double{pod}));
  std::vector<std::vector<Hole>> all;
  for (const plan::Assignment& assignment : plan.assignments) {
    const HoleRule rule{sweep::DetectionLaw::inverse_cube, limit.wanted,
                        limit.least.value_or(area(assignment.sector) * kLeastHole)};
    all.push_back(holes(map, cells_inside(found.frame, assignment.sector), rule));
  }
  return all;
}

}  // namespace sweepwright::debrief
