// MGRS, the Military Grid Reference System (in the United States: USNG): `18SUJ`, `18SUJ23`,
// `18SUJ2307`, `18SUJ233073`.
//
// Rule: zones of 6 degrees (UTM, 1 to 60 from 180 W) in bands of 8 degrees (C to X from 80 S, X 12
//   degrees); zone 32 is widened over Norway (band V) and 31, 33, 35, 37 over Svalbard (band X).
//   Two letters name a square of 100 km of the zone's map, then digits the 10 km, 1 km or 100 m
//   square in it, east before north, cut off and not rounded. North of 84 N and south of 80 S the
//   polar maps (UPS) take over, with the letters Y, Z, A, B and no zone number.
// Cells: a square is cut where its zone or band ends: the cell is what remains. A square that
//   crosses a band's edge is two cells with two names. Cells of less than a square metre do not
//   exist.
// Edges: a cell owns its south and west edges on the zone's map; a zone its west edge, a band its
//   south edge; 84 N belongs to UPS, 80 S to UTM, 180 to zone 1.
// Order of visit(): one zone and band after the other, from the north-west.
// Accuracy: names as GeographicLib's, which works to 5 nm. Cells of an area are found on the zone's
//   map: an edge within a metre of the area may take the cell behind it.
// Read: with or without blanks and the leading zero: `4q fj 18 56`. Written: `04QFJ1856`.
// Source: NGA.STND.0037; the code that makes and reads names is GeographicLib 2.1.2.
#pragma once

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

const Grid& mgrs_grid();

}  // namespace sweepwright::grid
