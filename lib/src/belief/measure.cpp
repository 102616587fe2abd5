#include "belief/measure.hpp"

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/clip.hpp"

namespace sweepwright::belief {
namespace {

class StripMeasure : public Measure {
 public:
  StripMeasure(std::vector<WeightedStrip> strips, const grid::Grid& grid, grid::Level level)
      : strips_(std::move(strips)), grid_(grid), level_(std::move(level)) {}

  double of(const grid::Cell& cell) const override {
    double sum = 0;
    for (const WeightedStrip& piece : strips_) sum += piece.share * mass(piece.strip, cell);
    return std::min(sum, 1.0);
  }
  void visit(const grid::CellSink& sink) const override {
    // The share within k deviations is 1 - exp(-k^2 / 2).
    const double factor = std::sqrt(-2 * std::log(1 - kHeldShare));
    for (const WeightedStrip& piece : strips_) {
      grid_.visit(ring(piece.strip, factor, RingCorners::outside_it), level_,
                  grid::Selection::touching, sink);
    }
  }
  bool is_endless() const override { return true; }

 private:
  std::vector<WeightedStrip> strips_;
  const grid::Grid& grid_;
  grid::Level level_;
};

/// Shares of cells, worked out once.
class PatchMeasure : public Measure {
 public:
  PatchMeasure(const Patches& patches, const grid::Grid& grid, const grid::Level& level)
      : grid_(grid) {
    std::vector<double> shares;
    for (const Patch& patch : patches.patches) shares.push_back(patch.share);
    check_shares(shares, "the parts of an area");
    for (const Patch& patch : patches.patches) {
      if (patch.share > 0) add(patch, level);
    }
  }
  double of(const grid::Cell& cell) const override {
    const auto found = shares_.find(cell.name);
    return found == shares_.end() ? 0 : std::min(found->second, 1.0);
  }
  void visit(const grid::CellSink& sink) const override {
    for (const std::string& name : order_) sink(grid_.cell(name));
  }
  bool is_endless() const override { return false; }

 private:
  void add(const std::string& name, double share) {
    if (shares_.size() > kMostCells) {
      throw Error(ErrorCode::value, "the belief has more than a million cells",
                  "take a coarser level");
    }
    const auto [place, is_new] = shares_.emplace(name, 0.0);
    if (is_new) order_.push_back(name);
    place->second += share;
  }

  void add(const Patch& patch, const grid::Level& level) {
    if (const auto* box = std::get_if<grid::LatLonBox>(&patch.ground)) {
      add_box(*box, patch.share, level);
    } else {
      add_region(std::get<Region>(patch.ground), patch.share, level);
    }
  }

  void add_region(const Region& region, double share, const grid::Level& level) {
    std::vector<std::pair<std::string, Area>> parts;
    Area whole;
    grid::visit_clipped(grid_, region, level, [&](const grid::ClippedCell& part) {
      parts.emplace_back(part.cell.name, part.area);
      whole += part.area;
    });
    // Where the grid names only a part of the region, the rest of its share is outside. Less than
    // the seam is the difference between the region's edges and those of its parts.
    constexpr double kSeam = 1e-3;
    if (const Area stated = area(region); whole < stated * (1 - kSeam)) whole = stated;
    for (const auto& [name, area] : parts) add(name, share * (area / whole));
  }

  /// The part of a box in a cell that lies between parallels and meridians, too.
  static Area shared(const grid::LatLonBox& a, const grid::LatLonBox& b) {
    const Angle south = std::max(a.south, b.south);
    const Angle north = std::min(a.north, b.north);
    // b's west as seen from a's west, in [0, 360).
    const Angle start = normalized_360(b.west - a.west);
    Angle across;
    for (const Angle from : {start - Angle::degrees(360), start}) {
      across += std::max(Angle(),
                         std::min(from + grid::width(b), grid::width(a)) - std::max(from, Angle()));
    }
    if (north <= south || across <= Angle()) return {};
    grid::LatLonBox part{south, north, Angle::degrees(-90), Angle::degrees(-90) + across};
    return grid::area(part);
  }

  void add_box(const grid::LatLonBox& box, double share, const grid::Level& level) {
    const Area whole = grid::area(box);
    bool boxes_only = true;
    std::vector<std::pair<std::string, Area>> parts;
    grid_.visit(box, level, grid::Selection::touching, [&](const grid::Cell& cell) {
      boxes_only = boxes_only && cell.box.has_value();
      if (boxes_only) parts.emplace_back(cell.name, shared(box, *cell.box));
    });
    if (!boxes_only) return add_region(grid::outline(box), share, level);
    for (const auto& [name, area] : parts) {
      if (area > Area()) add(name, share * (area / whole));
    }
  }

  const grid::Grid& grid_;
  std::unordered_map<std::string, double> shares_;
  std::vector<std::string> order_;
};

}  // namespace

std::unique_ptr<Measure> make_measure(const Source& source, const grid::Grid& grid,
                                      const grid::Level& level) {
  return std::visit(
      [&](const auto& given) -> std::unique_ptr<Measure> {
        using Given = std::decay_t<decltype(given)>;
        if constexpr (std::is_same_v<Given, Patches>) {
          return std::make_unique<PatchMeasure>(given, grid, level);
        } else if constexpr (std::is_same_v<Given, RouteBands>) {
          return std::make_unique<PatchMeasure>(patches(given), grid, level);
        } else {
          return std::make_unique<StripMeasure>(strips(given), grid, level);
        }
      },
      source);
}

}  // namespace sweepwright::belief
