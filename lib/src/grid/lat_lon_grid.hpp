// LatLonGrid: what all grids of parallels and meridians share. A system adds its rule for names.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "grid/lattice.hpp"
#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

struct Span;  // cover.hpp

class LatLonGrid : public Grid {
 public:
  std::string_view system() const final { return system_; }
  const std::vector<Level>& levels() const final { return levels_; }
  std::string name_of(Position position, const Level& level) const override;
  bool covers(Position position) const override { return exists(square_of(position)); }
  Cell cell(std::string_view name) const final;
  void visit(const Region& area, const Level& level, Selection selection,
             const CellSink& sink) const final;
  void visit(const LatLonBox& area, const Level& level, Selection selection,
             const CellSink& sink) const final;
  std::optional<Cell> parent(const Cell& cell) const final;
  std::vector<Cell> children(const Cell& cell) const final;
  std::vector<Cell> neighbours(const Cell& cell) const final;

 protected:
  struct LevelSize {
    std::string_view name;
    int steps;  ///< side of a cell; each level's divides the one before
  };
  /// A cell, before it has a name: its size and its south-west corner.
  struct Place {
    int depth;
    StepSquare corner;
  };
  /// All cells own their south edge; a system also owns its west or its east one.
  enum class OwnedSide { west, east };
  LatLonGrid(std::string_view system, OwnedSide owned, std::initializer_list<LevelSize> levels);

  int steps(int depth) const { return steps_[static_cast<std::size_t>(depth)]; }

 private:
  /// The name of the cell that holds the square.
  virtual std::string name_at(StepSquare square, int depth) const = 0;
  /// The place of a name, trimmed and in capitals. Throws Error(value).
  virtual Place place_of(std::string_view name) const = 0;
  /// False where the system has no cells.
  virtual bool exists(StepSquare square) const;

  StepSquare square_of(Position position) const {
    return owned_ == OwnedSide::west ? west_owning_square(position) : east_owning_square(position);
  }
  Cell make_cell(Place place) const;
  void hand_over(int row, const std::vector<Span>& spans, int depth, const CellSink& sink) const;

  std::string_view system_;
  OwnedSide owned_;
  std::vector<Level> levels_;
  std::vector<int> steps_;
};

}  // namespace sweepwright::grid
