// Reads and writes positions as latitude and longitude.
//
// Problem: people write one place in dozens of ways. Each must be read rightly or refused, never
//   guessed, and the crew's own notation must never show 60 minutes.
// Conventions: written latitude first. Read in either order when hemisphere letters, words or
//   labels tell which is which; two bare pairs are latitude first where that can be, and the other
//   order is given as a further reading. docs/methods/reading-positions.md lists every form.
// Domain: all positions; latitudes beyond 90, longitudes beyond 180 and 60 minutes are refused.
// Accuracy: written to half a unit of the last place, halves away from zero; whole minutes and
//   seconds are read to the nearest double (position_text_test.cpp).
// Promises: P1 what format_position() writes is read back to within half a unit of its last place;
//   P2 no text with 60 minutes or 60 seconds is written.
// Source: ICAO Doc 4444 Appendix 2 item 15 (7 and 11 character forms, from memory; examples seen);
//   ISO 6709 (signs and digit groups, from memory).
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "sweepwright/position/plain_text.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright {

enum class Notation {
  decimal_degrees,          ///< `38.25000, -117.04167`
  degrees_minutes,          ///< `38-15.00N 117-02.50W`, the notation for aircrew
  degrees_minutes_seconds,  ///< `38-15-00.0N 117-02-30.0W`
  compact_seconds,          ///< `381500N1170230W`
  icao_minutes,             ///< `3815N11703W`, 11 characters
  icao_degrees,             ///< `38N117W`, 7 characters
};

/// The decimal places that people use: 5 for degrees (1 m on the ground), 2 for minutes (19 m), 1
/// for seconds (3 m), none in the forms without separators.
int usual_decimals(Notation notation);

/// `decimals`: places of the last part, 0 to 9. The ICAO forms have none: a number other than 0 is
/// an Error(value).
std::string format_position(Position position, Notation notation, int decimals);
std::string format_position(Position position, Notation notation = Notation::degrees_minutes);

/// One way to understand a text.
struct PositionReading {
  Position position;
  std::string read_as;  ///< in words: "latitude and longitude in degrees and decimal minutes"
};

/// All ways to understand a text, the likeliest first, or where reading failed.
using PositionOutcome = std::variant<std::vector<PositionReading>, TextFailure>;

/// Reads latitude and longitude in any of their notations.
PositionOutcome parse_latitude_longitude(const PlainText& text);

}  // namespace sweepwright
