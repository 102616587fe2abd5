// Elevation tiles made from a function of the place, and written for outside tools to read.
#pragma once

#include <GeographicLib/UTMUPS.hpp>
#include <cmath>
#include <filesystem>
#include <limits>
#include <string>

#include "support/files.hpp"
#include "support/ground.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::test {

inline constexpr float kGap = std::numeric_limits<float>::quiet_NaN();

inline terrain::GeographicLattice degrees_lattice(double north, double west, double step) {
  return {Angle::degrees(north), Angle::degrees(west), Angle::degrees(step), Angle::degrees(step)};
}

/// Where a post lies, by GeographicLib's UTM for the projected kind.
inline Position post_position(const terrain::Lattice& lattice, int row, int column) {
  if (const auto* degrees = std::get_if<terrain::GeographicLattice>(&lattice)) {
    return Position::at(degrees->north - row * degrees->latitude_step,
                        degrees->west + column * degrees->longitude_step);
  }
  const auto& utm = std::get<terrain::UtmLattice>(lattice);
  double latitude = 0;
  double longitude = 0;
  GeographicLib::UTMUPS::Reverse(utm.zone, utm.hemisphere == terrain::Hemisphere::north,
                                 (utm.easting + column * utm.easting_step).metres(),
                                 (utm.northing - row * utm.northing_step).metres(), latitude,
                                 longitude);
  return at(latitude, longitude);
}

/// `height_m`: metres, as a function of the Position.
template <typename Height>
terrain::ElevationTile make_tile(const terrain::Lattice& lattice, int rows, int columns,
                                 const Height& height_m,
                                 terrain::PostKind posts = terrain::PostKind::point) {
  terrain::ElevationTile tile{lattice, posts, rows, columns, {}, "test", "mean sea level"};
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      tile.heights_m.push_back(static_cast<float>(height_m(post_position(lattice, row, column))));
    }
  }
  return tile;
}

/// A hill: `top` metres at `summit`, falling by `slope` metres for each metre of distance.
struct Cone {
  Position summit;
  double top = 1000;
  double slope = 0.1;
  double operator()(Position place) const {
    return top - slope * geodesic(summit, place).length.metres();
  }
};

/// Hills and hollows everywhere, a few hundred metres high.
inline double rolling_ground(Position place) {
  const double x = place.longitude().degrees();
  const double y = place.latitude().degrees();
  return 800 + 300 * std::sin(61 * x) * std::cos(47 * y) + 170 * std::sin(113 * x + 89 * y);
}

/// Rows and columns of a tile as a tile of their own.
inline terrain::ElevationTile part_of(const terrain::ElevationTile& whole, int first_row, int rows,
                                      int first_column, int columns) {
  terrain::ElevationTile part = whole;
  auto& lattice = std::get<terrain::GeographicLattice>(part.lattice);
  lattice.north = lattice.north - first_row * lattice.latitude_step;
  lattice.west = lattice.west + first_column * lattice.longitude_step;
  part.rows = rows;
  part.columns = columns;
  part.heights_m.clear();
  for (int row = 0; row < rows; ++row) {
    const auto from = whole.heights_m.begin() +
                      static_cast<std::ptrdiff_t>(whole.index(first_row + row, first_column));
    part.heights_m.insert(part.heights_m.end(), from, from + columns);
  }
  return part;
}

/// The tile as an Esri ASCII grid, gaps as -9999; for geographic tiles with square cells.
inline void write_ascii_grid(const std::filesystem::path& file,
                             const terrain::ElevationTile& tile) {
  const auto& lattice = std::get<terrain::GeographicLattice>(tile.lattice);
  const double step = lattice.latitude_step.degrees();
  std::string text = "ncols " + std::to_string(tile.columns) + "\nnrows " +
                     std::to_string(tile.rows) + "\nxllcenter " +
                     std::to_string(lattice.west.degrees()) + "\nyllcenter " +
                     std::to_string(lattice.north.degrees() - (tile.rows - 1) * step) +
                     "\ncellsize " + std::to_string(step) + "\nnodata_value -9999\n";
  for (int row = 0; row < tile.rows; ++row) {
    for (int column = 0; column < tile.columns; ++column) {
      const float height = tile.heights_m[tile.index(row, column)];
      text += std::isnan(height) ? "-9999 " : std::to_string(height) + " ";
    }
    text += "\n";
  }
  write_file(file, text);
}

}  // namespace sweepwright::test
