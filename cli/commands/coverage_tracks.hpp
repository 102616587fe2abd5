// The tracks of `sweepwright coverage`: read once for where they lie, once for what they swept.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "common/track_option.hpp"
#include "sweepwright/debrief/swept_piece.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::cli {

/// Hands on every piece of every track, in the order of the files; what was dropped and assumed
/// goes to standard error when `tell_all`.
void for_each_piece(const TrackOptions& tracks, Length sweep_width, bool tell_all,
                    const std::function<void(const debrief::SweptPiece&)>& sink);

/// The digests of the files. Throws Error(usage) for standard input, which cannot be read twice.
std::vector<formats::InputDigest> digests(const TrackOptions& tracks);

}  // namespace sweepwright::cli
