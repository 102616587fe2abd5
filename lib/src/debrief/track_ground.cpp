#include "sweepwright/debrief/track_ground.hpp"

#include <algorithm>
#include <limits>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::debrief {

void ThinnedTracks::add(const debrief::SweptPiece& piece) {
  if (!last_ || *last_ != piece.from) {
    end_path();
    paths_.push_back({piece.from});
  }
  if (geodesic(paths_.back().back(), piece.to).length >= step_) paths_.back().push_back(piece.to);
  last_ = piece.to;
}

void ThinnedTracks::end_path() {
  if (last_ && paths_.back().back() != *last_) paths_.back().push_back(*last_);
}

std::vector<Path> ThinnedTracks::paths() {
  end_path();
  last_.reset();
  return std::move(paths_);
}

Region area_round(const std::vector<Path>& tracks, Length margin) {
  Ring places;
  for (const Path& path : tracks) places.insert(places.end(), path.begin(), path.end());
  if (places.size() < 2) {
    throw Error(ErrorCode::geometry, "the tracks have no ground that was flown over",
                "give a log with two fixes or more that follow each other");
  }
  const LocalPlane plane(middle(Region{{Polygon{places, {}}}}));
  constexpr Length kFar = Length::metres(std::numeric_limits<double>::max());
  PlanePoint low{kFar, kFar};
  PlanePoint high{-kFar, -kFar};
  for (const Position& place : places) {
    const PlanePoint at = plane.to_plane(place);
    low = {std::min(low.right, at.right), std::min(low.up, at.up)};
    high = {std::max(high.right, at.right), std::max(high.up, at.up)};
  }
  low = {low.right - margin, low.up - margin};
  high = {high.right + margin, high.up + margin};
  return make_region({{{plane.to_position(low), plane.to_position({high.right, low.up}),
                        plane.to_position(high), plane.to_position({low.right, high.up})},
                       {}}});
}

}  // namespace sweepwright::debrief
