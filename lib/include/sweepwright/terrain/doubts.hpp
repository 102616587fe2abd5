// Doubts: what makes an elevation model look wrong before anyone relies on it.
//
// Problem: heights in feet that are read as metres are still heights. So are gaps that carry a
//   number the file does not declare. Such models can be told by what no ground does.
// Conventions: one sentence for each doubt, with the tile's source in front; none when nothing is
//   strange. A doubt is no proof, and no doubt is no proof either.
//
//     above 8,900 m or below -450 m   higher than any summit, lower than any dry shore
//     steep all over                  more than 2 in 100 pieces between posts 60 m or more apart
//     are
//                                     steeper than 45 degrees. Measured on 3 arc-seconds of the
//                                     Sangre de Cristo range: 0.02 in 100, round its highest summit
//                                     0.96; the same heights in feet 3.2 and 34 (doubts_test.cpp)
//     a jump                          500 m or more between neighbouring posts, steeper than 80
//                                     degrees
//     tiles that disagree             by more than 30 m in the middle, on posts that they share
//
// Source: Mount Everest 8,849 m, shore of the Dead Sea about -430 m: general knowledge, no source;
//   the other limits are ours.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::terrain {

std::vector<std::string> doubts(const ElevationTile& tile);

/// Those of all tiles, and of tiles that disagree.
std::vector<std::string> doubts(const ElevationModel& model);

}  // namespace sweepwright::terrain
