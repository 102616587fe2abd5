// Sectors: the ground of each search unit, with the name that crews use for it.
//
// Problem: one area is shared out among all units, or an effort plan has given some units a
//   rectangle of their own. Either way each unit gets one sector, and sectors are numbered through.
// Conventions: a sector's name is the search day's letter and a number from 1 on, in the order of
//   the units: A1, A2 ... Legs lie along the direction that the planner asks for (sun, swell or
//   terrain may ask for one), at each sector's middle; else along the sector's own long side.
// Domain: that of divide().
// Accuracy: that of divide().
// Promises: P1 sectors come in the order of grounds and units; P2 the sectors of one ground tile
//   it; P3 shares add up to 1 (sectors_test.cpp).
// Source: names from day letter and number: common practice, no source.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::sector {

/// The most units that one search is divided among.
inline constexpr std::size_t kMostUnits = 200;

struct UnitShare {
  std::string unit;
  double share = 1;  ///< what it can cover, in any one unit of measure; above 0
};

/// Ground, and the units that share it.
struct SharedGround {
  Region region;
  std::vector<UnitShare> units;
};

struct Sector {
  std::string name;
  std::string unit;
  Region region;
  Area area;
  double share = 1;         ///< of all ground together
  TrueDirection long_side;  ///< at the middle, 0 to 180 degrees
  TrueDirection legs;       ///< at the middle: either way along it
};

/// One or two capital letters. Throws Error(value).
std::string parse_day_letter(std::string_view text);

/// `A1`: the number counts from 1.
std::string sector_name(std::string_view day_letter, std::size_t number);

/// Throws Error(value) when there is no unit, there are too many, a share is not above 0 or two
/// units have the same name.
std::vector<Sector> make_sectors(std::span<const SharedGround> grounds, std::string_view day_letter,
                                 std::optional<TrueDirection> legs = {});

/// Pairs of sectors that share ground: places in the list. Sectors that only touch do not.
std::vector<std::pair<std::size_t, std::size_t>> overlaps(std::span<const Sector> sectors);

}  // namespace sweepwright::sector
