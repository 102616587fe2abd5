// Sector search, single unit (VS): straight runs through the datum, like the spokes of a wheel.
//
// Problem: a datum that is well known is searched most closely at the datum itself, and again from
//   another side on each run. A crew without good navigation needs a marker at the datum only.
// Conventions: radii are search legs, the legs along the rim between them cross legs. Both forms
//   are a closed circuit in which each radius is flown once. Angles below are from the first
//   track, for turns to the right:
//     six sectors   datum, 0, 60, datum, 240, 300, datum, 120, 180, datum: nine legs of one radius
//                   on the tracks 0, 120, 240, 240, 0, 120, 120, 240, 0; all turns to one side
//     four sectors  datum, 0, 90, datum, 270, 180, datum: four radii and two legs of sqrt(2) radii.
//                   With turns to one side only, the last radius cannot be reached: the second
//                   half turns the other way
//   A start on the rim begins the same circuit at the 180 end, so that the first run goes through
//   the datum on the first track.
// Pattern::spacing is the distance of neighbouring radii half way out, by which coverage may be
//   averaged.
// Domain: radius above 0, to kLocalPlaneReach; a remark says when it is over 30 NM.
// Accuracy: leg ends to a millimetre; a rim leg of six sectors is one radius long to
//   radius^2 / (7 R^2): 0.001 % at 30 NM (sector_search_test.cpp).
// Promises: P1 a pass ends where it began; P2 six sectors from the datum are 9 radii long.
// Source: right turns, six and four sectors, start at the perimeter or the datum, cross leg as
//   largest spacing, averaging at mid-leg, radius to 20-30 miles [US National SAR Manual Vol I,
//   1991, para 552.F, seen]; turns of 120 degrees and equal legs [US Coast Guard Auxiliary training
//   slides, seen]; nine legs, second pass turned 30 degrees, and to the right [IAMSAR Manual
//   Vol II, ch. 5, from memory]. The order of legs of four sectors and its second pass, turned half
//   a sector, are worked out here: no source that we read gives them.
#pragma once

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

enum class SectorCount { four, six };
/// `4` or `6`. Throws Error(value).
SectorCount parse_sector_count(std::string_view text);

enum class SectorStart { datum, rim };
/// Throws Error(value) with the two names.
SectorStart parse_sector_start(std::string_view name);

enum class SectorPasses {
  first,   ///< one pass
  second,  ///< one pass, turned half a sector to the side of the first turn
  both,    ///< the first, then the second
};

struct SectorSearch {
  Position datum;
  TrueDirection first_track;  ///< of the first pass, at the datum
  Length radius;
  Turn first_turn = Turn::right;
  SectorCount sectors = SectorCount::six;
  SectorStart start = SectorStart::datum;
  SectorPasses passes = SectorPasses::first;
};

/// Throws Error(value) when the radius is out of range.
Pattern make_sector_search(const SectorSearch& request);

}  // namespace sweepwright::pattern
