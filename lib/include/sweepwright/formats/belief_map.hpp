// The map of a belief: its cells shaded by probability, with their names and a legend.
//
// Conventions: as the other maps (map.hpp). Cells with room for it carry their name and their
//   probability in percent. Lines of equal containment are dashed and labelled with their share.
// Domain: 1 to kMostCellsOnMap cells; paper of at least kLeastMapSize.
// Promises: P1 all that is drawn lies on the paper; P2 same belief, same drawing
//   (belief_map_test.cpp).
#pragma once

#include <vector>

#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// Throws Error(value) for too many cells or too small a paper.
Drawing draw_belief_map(const belief::Belief& belief, const std::vector<ContainmentLine>& lines,
                        PaperSize size);

}  // namespace sweepwright::formats
