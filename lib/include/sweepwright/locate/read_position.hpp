// Reads a position in any notation, says how it read it, and lists the other readings.
//
// Problem: wrong coordinates kill time, and every agency has its own notation. Nearly anything that
//   a person writes is read; what was understood is always said in words; a text that can mean two
//   places names both.
// Conventions: letter case, kinds of dash, quote and space do not matter. A name of a cell stands
//   for the middle of the cell. Readings are ordered, the likeliest first.
// Domain: one position in at most kLongestText bytes; docs/methods/reading-positions.md has every
//   form.
// Promises: P1 a text is read or refused, never both, and a refusal names the character where
//   reading failed; P2 with Options::strict no text with two readings is read.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/grid.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::locate {

/// Longer texts are no positions.
inline constexpr std::size_t kLongestText = 500;

/// The angle from true north to magnetic north at a place, east positive.
using MagneticVariation = std::function<Angle(Position)>;

struct Options {
  /// A text with more than one reading becomes an error.
  bool strict = false;
  /// Points that the user defined, by name in capitals: `ABC`.
  std::map<std::string, Position, std::less<>> points;
  /// For magnetic bearings, which are refused when this is empty.
  MagneticVariation variation;
  /// The grid of the chart sheets; the built-in one when this is empty.
  std::shared_ptr<const grid::Grid> charts;
};

/// Another way to understand the same text.
struct OtherReading {
  Position position;
  std::string read_as;
};

struct Reading {
  Position position;
  std::string read_as;  ///< in words: "latitude and longitude in degrees and decimal minutes"
  std::vector<OtherReading> other_readings;
  /// What whoever uses the position must know, such as the accuracy of a shift between reference
  /// systems; read_position() has none.
  std::vector<std::string> remarks = {};
};

/// Throws Error(value). Its where() is `character N`, counted from 1 in what was typed.
Reading read_position(std::string_view text, const Options& options = {});

/// The text on one line and a caret under the character that the error names; empty when it names
/// none.
std::string caret_lines(std::string_view text, const Error& error);

}  // namespace sweepwright::locate
