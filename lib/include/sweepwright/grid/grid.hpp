// Grid: the one interface of all systems that give names to ground.
//
// Problem: every agency has its own grid. All of them answer the same few questions: what is the
//   name of this place at this size, where is the ground of this name, which cells does an area
//   need, which cell holds this one, which cells does it hold, which lie beside it.
// Conventions: levels run from coarse to fine; a Level belongs to the grid that it came from. Names
//   are read in any letter case, with blanks round them, and written in one canonical form.
// Domain: positions anywhere that covers() is true. Cells that end at a pole own it.
// Exactness: a position is taken to a billionth of an arc second (31 nanometres on the ground);
//   from there on grids of parallels and meridians use integers only. So the double nearest to an
//   edge (35 + 5/60, however it was computed) lies on the edge, and each system says which cell
//   owns an edge.
// Promises: P1 name_of(p, level) is the name of a cell that holds p; P2 cell(name_of(...)) has that
//   name; P3 two cells of a level share no area; P4 children() tile their parent exactly.
// Source: each system's header.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/grid/cell.hpp"

namespace sweepwright::grid {

/// Takes cells one at a time, so that any number of them needs no memory.
using CellSink = std::function<void(const Cell&)>;

/// Which cells belong to an area.
enum class Selection {
  touching,  ///< the cell and the area share some ground (a shared edge or corner is not enough)
  centre_inside,  ///< the middle of the cell lies in the area
};

class Grid {
 public:
  virtual ~Grid() = default;

  /// The system's name on the command line: `gars`.
  virtual std::string_view system() const = 0;
  /// All levels, coarsest first.
  virtual const std::vector<Level>& levels() const = 0;
  /// The level called `name`. Throws Error(value) naming the choices.
  const Level& level(std::string_view name) const;

  /// False where the system gives no names.
  virtual bool covers(Position position) const;
  /// The name of the cell that holds the position. Throws Error(value) where covers() is false.
  virtual std::string name_of(Position position, const Level& level) const = 0;
  /// The cell of a name. Throws Error(value): what was found, at which character, what is expected.
  virtual Cell cell(std::string_view name) const = 0;

  /// Hands over the cells of an area, each once: row by row from the north, each row eastward from
  /// 180 W. A grid with zones does one zone after the other.
  virtual void visit(const Region& area, const Level& level, Selection selection,
                     const CellSink& sink) const = 0;
  /// The same for the ground between parallels and meridians; rows start at the box's west.
  virtual void visit(const LatLonBox& area, const Level& level, Selection selection,
                     const CellSink& sink) const = 0;
  std::vector<Cell> cells_touching(const Region& area, const Level& level) const;
  std::vector<Cell> cells_touching(const LatLonBox& area, const Level& level) const;

  /// The cell of the next coarser level that holds this one; none at the coarsest.
  virtual std::optional<Cell> parent(const Cell& cell) const = 0;
  /// The cells of the next finer level in this one, in the system's own order; none at the finest.
  virtual std::vector<Cell> children(const Cell& cell) const = 0;
  /// The cells of the same level that share an edge or a corner, clockwise from the north. Where
  /// meridians are edges, cells that meet only at a pole are not neighbours.
  virtual std::vector<Cell> neighbours(const Cell& cell) const = 0;

 protected:
  Grid() = default;
  Grid(const Grid&) = default;
  Grid& operator=(const Grid&) = default;
};

}  // namespace sweepwright::grid
