// Multi-unit parallel track (PM): one ladder of legs shared by several crews.
//
// Problem: two or more crews search one sector together, so that it is done sooner, without two of
//   them being on neighbouring legs in opposite directions.
// Conventions: all rows are one track spacing apart, and cover the sector as parallel track does;
//   each crew has a Pattern of its own. Units are counted from 1, from the side where the pattern
//   begins.
//     abreast    crew k of n flies rows k, n + k, 2n + k, ...: side by side one spacing apart, all
//                on the same way at the same time, then all move over by n spacings
//     staggered  the rows are dealt out in blocks of neighbours: crews start at the same time on
//                the first row of their blocks, on the same way, creep the same way and stay a
//                block apart
//   Height separation and who leads are the crews' own business.
// Domain: 2 to kMostUnits units; a crew that no row is left for is an Error.
// Accuracy: as ladder.hpp.
// Promises: P1 together the crews fly each row of the one-crew pattern once; P2 abreast: rows flown
//   at the same time are neighbours.
// Source: multi-unit forms and letter M [US National SAR Manual Vol I, 1991, para 552, seen in
//   part]; PM, crews abreast one spacing apart [IAMSAR Manual Vol II, ch. 5, from memory];
//   staggered blocks are common practice, no source.
#pragma once

#include "sweepwright/pattern/ladder.hpp"

namespace sweepwright::pattern {

enum class Formation { abreast, staggered };
/// Throws Error(value) with the two names.
Formation parse_formation(std::string_view name);

inline constexpr int kMostUnits = 20;

/// Which crew's legs are wanted.
struct TeamPlace {
  int units = 2;  ///< 2 to kMostUnits
  int unit = 1;   ///< 1 to units
  Formation formation = Formation::abreast;
};

/// `legs` of the request counts the legs of all crews together.
Pattern make_multi_unit_parallel(const LadderFromStart& request, const TeamPlace& place);
/// Along the long side, as parallel track. Throw Error(value) when a number is out of range,
/// Error(impossible) when no leg is left for the crew.
Pattern make_multi_unit_parallel(const Region& region, const RegionPatternOptions& options,
                                 const TeamPlace& place);

}  // namespace sweepwright::pattern
