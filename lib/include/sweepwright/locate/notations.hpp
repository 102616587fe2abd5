// Writes a position in every notation that read_position() reads.
//
// Problem: each agency wants its own notation, and no digit may say more or less than it should.
// Conventions: angles and metres are rounded, halves away from zero, with carry; names of cells
//   (MGRS, GARS, GEOREF, quarters, charts) are never rounded over an edge: they name the cell that
//   holds the position.
// Domain: all positions. Numbered chart cells exist only where a chart sheet lies.
// Promises: P1 what is written is read back by read_position() as a place no further off than the
//   written precision (notations_test.cpp); P2 the order of notations() is fixed.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/grid/grid.hpp"
#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::locate {

/// How positions are written.
struct Writing {
  int degree_decimals = 5;  ///< 1 m
  int minute_decimals = 2;  ///< 19 m; 3 for 2 m
  int second_decimals = 1;  ///< 3 m
  int utm_decimals = 0;     ///< 1 m
  int mgrs_digits = 5;      ///< digits each of easting and northing: 5 is 1 m, 0 is 100 km
  int georef_decimals = 2;  ///< decimals of the minutes: 2 is 19 m
  /// Quarters with hemisphere letters everywhere: `38N/117WDB`.
  bool hemisphere_letters = false;
  /// The grid of the chart sheets; the built-in one when this is empty.
  std::shared_ptr<const grid::Grid> charts = {};
};

/// `18 north 323394mE 4307396mN`, or `UPS north 2000000mE 2000000mN` in the polar areas. The
/// hemisphere is a word because a letter S would also be a latitude band.
std::string format_utm(Position position, int decimals = 0);

/// `18SUJ2339407395`: `digits` each of easting and northing, cut off, not rounded.
std::string format_mgrs(Position position, int digits = 5);

/// `GJPJ3517`, with `decimals` more digits of each minute, cut off, not rounded.
std::string format_georef(Position position, int decimals = 0);

/// `FROM 38-15.00N 117-02.50W 045.0T 12.00NM`: the true bearing at `from`, and the distance.
std::string format_bearing_distance(Position from, Position position);

/// `ABC180017`, the ICAO form: magnetic degrees and nautical miles, both whole. Throws
/// Error(impossible) beyond 999 NM, Error(value) without a variation or for a name that the form
/// does not have (two to five letters).
std::string format_icao_bearing(std::string_view point_name, Position point, Position position,
                                const MagneticVariation& variation);

/// A notation's key, as in JSON output, and the position written in it; empty where the notation
/// has no name for the place.
struct Written {
  std::string_view key;
  std::string text;
};

/// decimal, minutes, seconds, utm, mgrs, gars, georef, quarter, chart. GARS, quarters and charts at
/// their finest level.
std::vector<Written> notations(Position position, const Writing& writing = {});

/// The keys of notations(), in its order.
std::vector<std::string_view> notation_keys();

/// The text of one notation, without the work of the others. Throws Error(value) for an unknown
/// key, naming the choices.
std::string format_notation(std::string_view key, Position position, const Writing& writing = {});

}  // namespace sweepwright::locate
