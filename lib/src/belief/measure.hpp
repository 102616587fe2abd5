// Measure: how much of one source lies in each cell of a grid; what the kinds of source share.
#pragma once

#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "belief/normal_strip.hpp"
#include "sweepwright/belief/scenario.hpp"

namespace sweepwright::belief {

class Measure {
 public:
  virtual ~Measure() = default;
  /// The probability in a cell of the grid.
  virtual double of(const grid::Cell& cell) const = 0;
  /// Hands over cells that hold kHeldShare of all or more; some may come twice.
  virtual void visit(const grid::CellSink& sink) const = 0;
  /// True when the cells that visit() gives hold only a part, so that the poorest may be left out.
  virtual bool is_endless() const = 0;

 protected:
  Measure() = default;
  Measure(const Measure&) = delete;
  Measure& operator=(const Measure&) = delete;
};

/// A normal strip and its share of the source.
struct WeightedStrip {
  double share = 1;
  NormalStrip strip;
};

/// Datum, ellipse and line as strips. Throw Error(value) for what is outside their domain.
std::vector<WeightedStrip> strips(const Datum& datum);
std::vector<WeightedStrip> strips(const ErrorEllipse& ellipse);
std::vector<WeightedStrip> strips(const DatumLine& line);

/// Bands as patches.
Patches patches(const RouteBands& bands);

/// Throws Error(value) for a share that is not from 0 to 1 or shares that sum to more than 1.
void check_shares(const std::vector<double>& shares, std::string_view what);

std::unique_ptr<Measure> make_measure(const Source& source, const grid::Grid& grid,
                                      const grid::Level& level);

}  // namespace sweepwright::belief
