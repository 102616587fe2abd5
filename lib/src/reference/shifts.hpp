// The shifts from one datum to WGS 84, and the choice among them for a place.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reference/proj_library.hpp"
#include "sweepwright/reference/system.hpp"

namespace sweepwright::reference {

/// One way from a geographic system to WGS 84.
struct Shift {
  ProjObject operation;
  std::string name;
  std::optional<Length> accuracy;
  Area area;
  bool possible = true;  ///< false when a grid is missing
  bool guess = false;    ///< takes the datums for the same
  std::vector<std::string> missing_grids;
};

/// What remains of the shifts' results for one place.
struct ShiftedPlace {
  Position position;
  std::string operation;
  std::optional<Length> accuracy;
  std::vector<std::string> warnings;
};

class Shifts {
 public:
  Shifts(PJ_CONTEXT* context, const PJ* geographic_system);

  /// Where the coordinates are, right to within a kilometre; for looking up areas. Nothing when
  /// the system has no such coordinates.
  std::optional<Position> rough_place(PJ_COORD coordinates) const;

  /// By the most accurate shift that serves `place`. Throws Error(impossible) when there is none.
  ShiftedPlace apply(PJ_COORD coordinates, Position place) const;

 private:
  [[noreturn]] void refuse(Position place) const;
  const Shift* better_without_grid(Position place, const std::optional<Length>& accuracy) const;
  std::string name_;
  std::vector<Shift> shifts_;  ///< the most accurate first
};

/// `coordinates` after the operation; nothing when it cannot be done.
std::optional<PJ_COORD> transformed(PJ* operation, PJ_COORD coordinates, PJ_DIRECTION direction);

}  // namespace sweepwright::reference
