// Sweep width W: how wide a swath a search effectively cleans, and the working behind it.
//
// Problem: a crew sees much nearby and little far off. W is the width of the strip in which it
//   would find as many objects, finding all inside and none outside. Manuals tabulate it by
//   platform, object, height and visibility, and correct it by factors.
// Conventions: W = table value x weather factor x speed factor x fatigue factor over water;
//   W = table value x terrain factor x fatigue factor over land. Heights are above the ground or
//   the water.
// Domain: the tables' own. Between two heights or visibilities the value is interpolated linearly;
//   better visibility than the table's last counts as the last. All else outside a table, an empty
//   cell and a missing table are refused (ErrorCode::impossible): the planner then gives the width
//   from his manual. A value up to 2 percent outside counts as the table's edge, because manuals
//   print 150 m for 500 ft.
// Accuracy: the arithmetic is right to 1e-12 of the value (sweep_width_test.cpp); the tables
//   themselves are printed to 0.1 NM.
// Promises:
//   P1 at a table's own height and visibility the uncorrected width is the table's value.
//   P2 the width lies between the four table values around it.
//   P3 the width does not fall as visibility rises (the built-in tables do not).
//   P4 the product of the table value and of all factors in the working is the width.
//   P5 a width that rests on a table from memory says so in the working and in the cautions.
// Source: IAMSAR Manual Volume II, Appendix N [from memory]; Joint Pub 3-50 Volume I, Appendix D
//   "Interpolate as necessary", and fatigue [seen].
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/conditions.hpp"
#include "sweepwright/sweep/tables.hpp"
#include "sweepwright/sweep/working.hpp"

namespace sweepwright::sweep {

/// Tables already hold ordinary fatigue; this holds only when crews report that they are
/// excessively tired [Joint Pub 3-50 Volume I, Appendix D.C].
inline constexpr double kFatigueFactor = 0.9;

/// It belongs to the manual of the widths, and for rafts it is the more cautious one.
inline constexpr std::string_view kDefaultWeatherTable = "iamsar";

/// What sweep_width() needs to know. What is not known stays empty; the working says what was then
/// taken for it.
struct Request {
  Platform platform;
  std::string object;  ///< name or short name of a search object
  std::optional<Length> visibility = std::nullopt;
  std::optional<Length> height = std::nullopt;
  std::optional<Speed> wind = std::nullopt;
  std::optional<Length> sea = std::nullopt;  ///< height of the waves
  std::optional<Speed> ground_speed = std::nullopt;
  std::optional<Terrain> terrain = std::nullopt;
  bool fatigued = false;                            ///< crews report excessive fatigue
  std::string weather_table{kDefaultWeatherTable};  ///< its key; used over water
  /// The uncorrected width that the planner read in his manual, in place of our table; height and
  /// visibility are then not used. `uncorrected_source` says which manual.
  std::optional<Length> uncorrected = std::nullopt;
  std::string uncorrected_source = {};
};

struct SweepWidth {
  Length width;
  Length uncorrected;  ///< before the factors
  Working working;
  std::vector<std::string> cautions;  ///< what whoever acts on the width must know
};

/// The corrected sweep width. Throws Error: `value` for what makes no sense or is missing,
/// `impossible` for what the tables do not cover.
SweepWidth sweep_width(const Request& request, const Tables& tables = built_in_tables());

/// A corrected sweep width that the planner takes from elsewhere; `source` says where from (may be
/// empty). Throws Error (value) unless it is above 0.
SweepWidth given_sweep_width(Length width, std::string_view source);

}  // namespace sweepwright::sweep
