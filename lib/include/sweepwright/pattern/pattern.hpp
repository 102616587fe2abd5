// Pattern: the legs that a search unit is to travel, in order, over the ground.
//
// Conventions: legs are shortest lines (geodesics), each starting where the last one ended. A
// search
//   leg is one on which the crew searches the full width; a cross leg joins two search legs; a
//   transit leg passes over ground outside the sector. Turns are points here: turn radius and wind
//   belong to the flight room.
// Accuracy: leg ends to a millimetre; lengths to 15 nanometres for the ends given.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::pattern {

/// The patterns that exist. Each has its file, its check table and its page in docs/methods.
enum class Kind {
  parallel,
  creeping,
  square,
  sector,
  track_line,
  contour,
  coordinated,
  multi_unit,
  waypoints
};

/// One line of the list of patterns.
struct KindInfo {
  Kind kind;
  std::string_view name;        ///< as on the command line and in the mission file
  std::string_view designator;  ///< of the IAMSAR Manual; empty when it has none
  std::string_view title;       ///< in words
};

/// All patterns, in the order of help texts.
const std::vector<KindInfo>& kinds();
const KindInfo& info(Kind kind);
/// `Parallel track search`, `Sector search`: the title of a document.
std::string search_title(Kind kind);
/// Throws Error(value) for an unknown name, with the nearest.
Kind parse_kind(std::string_view name);

enum class LegKind { search, cross, transit };
std::string_view name(LegKind kind);

enum class Turn { left, right };
std::string_view name(Turn turn);
Turn parse_turn(std::string_view name);
/// 90 degrees to that side, as an angle clockwise.
Angle quarter_turn(Turn turn);

struct Leg {
  LegKind kind = LegKind::search;
  Position from;
  Position to;
  GeodesicLine line;
};

Leg make_leg(LegKind kind, Position from, Position to);

/// A line that the pattern goes by, shown beside its legs: `route`, `vessel`.
struct GuideLine {
  std::string name;
  Path path;
};

struct Pattern {
  Kind kind = Kind::parallel;
  Length spacing;  ///< track spacing; 0 where there is none
  Turn first_turn = Turn::right;
  std::vector<Leg> legs;             ///< at least one
  std::vector<std::string> remarks;  ///< what a planner should know: a narrower last gap, say
  /// Of this form, where it is not that of the kind: TSN. designator() has both.
  std::string_view own_designator = {};
  std::vector<GuideLine> guides = {};
  /// The share of its area that lies within half a spacing of a leg, where the pattern found it
  /// out.
  std::optional<double> area_share = {};
};

std::string_view designator(const Pattern& pattern);

Position commence_search_point(const Pattern& pattern);
Length total_distance(const Pattern& pattern);
Length search_distance(const Pattern& pattern);
int search_leg_count(const Pattern& pattern);
/// The path through all leg ends, first to last.
Path path(const Pattern& pattern);

/// Most legs that any pattern may have: beyond it a slip of the spacing is likelier than a plan.
inline constexpr int kMostLegs = 10000;

}  // namespace sweepwright::pattern
