// ElevationTile: heights of the ground on a regular lattice, as one file holds them.
//
// Problem: elevation files differ in form (SRTM, DTED, ASCII, GeoTIFF) and agree in substance:
//   posts in rows and columns, one height each, some of them missing. Readers make this value; the
//   rest of the room knows no file.
// Conventions: heights in metres above mean sea level, rows from north to south, each from west to
//   east; NaN is a gap. The lattice names the north-west post. A post of kind `point` is the
//   height at its place; one of kind `area` stands for the ground half a step round it.
// Domain: 2 to kMostRows rows and columns, at most kMostPosts posts. Geographic lattices stay
//   within the poles and go at most once round the Earth; UTM lattices are in zones 1 to 60 on WGS
//   84.
// Promises: P1 check() refuses a tile outside the domain, or with infinite heights
//   (elevation_model_test.cpp).
// Source: own work; the two kinds of post are PixelIsPoint and PixelIsArea of OGC 19-008r4,
//   GeoTIFF 1.1, section 7.1.2 [from memory].
#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::terrain {

inline constexpr int kMostRows = 100'000;
inline constexpr std::size_t kMostPosts = 150'000'000;

/// Posts on parallels and meridians; steps are positive.
struct GeographicLattice {
  Angle north;  ///< latitude of the first row
  Angle west;   ///< longitude of the first column
  Angle latitude_step;
  Angle longitude_step;
  bool operator==(const GeographicLattice&) const = default;
};

enum class Hemisphere { north, south };

/// Posts on a square grid of the Universal Transverse Mercator projection; steps are positive.
struct UtmLattice {
  int zone = 1;
  Hemisphere hemisphere = Hemisphere::north;
  Length northing;  ///< of the first row
  Length easting;   ///< of the first column
  Length northing_step;
  Length easting_step;
  bool operator==(const UtmLattice&) const = default;
};

using Lattice = std::variant<GeographicLattice, UtmLattice>;

enum class PostKind { point, area };

struct ElevationTile {
  Lattice lattice;
  PostKind posts = PostKind::point;
  int rows = 0;
  int columns = 0;
  std::vector<float> heights_m;    ///< rows times columns of them
  std::string source;              ///< the file, for messages and remarks
  std::string vertical_reference;  ///< as the file states it; empty when it does not

  std::size_t index(int row, int column) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
           static_cast<std::size_t>(column);
  }
};

/// Throws Error(value) with the tile's source for a tile outside the domain.
void check(const ElevationTile& tile);

}  // namespace sweepwright::terrain
