// Corridor: the highest ground along a line and to both sides of it.
//
// Problem: a pilot asks what may stand in the way, and sampling heights along the line misses the
//   summit beside it and the one between two samples. Here every cell of the elevation model that
//   the corridor touches is visited, so no summit of the model is missed.
// Conventions: the corridor holds all places within `half_width` of the path, its round ends
//   included. It is told in pieces, in the order of travel. A cell is the ground between four
//   neighbouring posts, and its height the highest of the four, so ground up to one step outside
//   counts too. Every lattice that the model has there counts, the coarser ones as well. A piece
//   is known when no part of its corridor lies in a gap of all lattices; what is known of it
//   counts in any case.
// Domain: everywhere; paths up to kMostPieces pieces. Where the corridor comes so near a pole that
//   columns change by half across it, whole rows count.
// Accuracy: never too narrow. Too wide by less than 1 % of the half-width and 2 m (where columns
//   do not narrow much across the corridor), and by the cells that it only touches
//   (corridor_test.cpp compares with every cell of the box round it).
// Promises: P1 a spike on any post that bounds a cell touched by the corridor is found: at its
//   edge, on seams, across the antimeridian, at high latitudes; P2 a piece is never called known
//   when a place of its corridor has no height; P3 heights come from posts: nothing is
//   interpolated.
// Source: own work.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::terrain {

struct HighGround {
  Length height;
  Position position;  ///< of the post
};

struct CorridorPiece {
  int leg = 0;  ///< of the path, from 0
  Length from;  ///< distance along the path
  Length to;
  Position start;
  Position end;
  std::optional<HighGround> below;    ///< highest cell that the line itself crosses
  std::optional<HighGround> highest;  ///< in the corridor
  bool known = false;
};

struct Corridor {
  Length half_width;
  std::vector<CorridorPiece> pieces;  ///< at least one
};

/// Half-width where nobody says otherwise. No source: common practice is half a track spacing or
/// this.
inline constexpr Length kCorridorHalfWidth = Length::nautical_miles(0.5);

inline constexpr int kMostPieces = 500'000;

struct CorridorOptions {
  Length half_width = kCorridorHalfWidth;
  /// Longest piece; zero takes the path's length / 200, but 100 m at least and the half-width at
  /// most.
  Length piece;
};

/// Throws Error(value) for a path of fewer than two places or without length, a half-width that is
/// negative or beyond 100 km, and too many pieces.
Corridor make_corridor(const ElevationModel& model, const Path& path,
                       const CorridorOptions& options = {});

Length length(const Corridor& corridor);
/// Highest ground of all pieces; none when nothing is known.
std::optional<HighGround> highest(const Corridor& corridor);
/// True when every piece is known.
bool known(const Corridor& corridor);

}  // namespace sweepwright::terrain
