#include "sweepwright/pattern/track_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::pattern {
namespace {

/// Bends sharper than this are worth a remark on the ground inside them.
constexpr Angle kWorthARemark = Angle::degrees(90);

/// Offset of a pass, positive to the right of the route, when all turns are to the right.
Length offset_of(int pass, const TrackLine& request) {
  const bool returns = request.passes % 2 == 0;
  const double spacings = returns ? pass / 2 + 0.5 : (pass + 1) / 2;
  const bool on_right = pass % 2 == 1;
  return request.spacing * (on_right ? spacings : -spacings);
}

std::string in_words(Length offset) {
  if (offset == Length()) return "the pass along the route";
  return fmt::format(
      "the pass {} {} of the route",
      format_length(Length::metres(std::abs(offset.metres())), LengthUnit::nautical_mile, 2),
      offset > Length() ? "right" : "left");
}

void require_in_range(const TrackLine& request) {
  require_above_zero(request.spacing, "track spacing");
  if (request.passes < 1 || request.passes > kMostTrackLinePasses) {
    throw Error(ErrorCode::value,
                fmt::format("a track line search cannot have {} passes", request.passes),
                fmt::format("give 1 to {} passes", kMostTrackLinePasses));
  }
  const Length width = request.spacing * request.passes;
  if (width > kLocalPlaneReach) {
    throw Error(ErrorCode::value,
                fmt::format("the passes would reach over a width of {}",
                            format_length(width, LengthUnit::nautical_mile, 0)),
                fmt::format("keep it under {:.0f} NM", kLocalPlaneReach.nautical_miles()));
  }
}

}  // namespace

Pattern make_track_line(const TrackLine& request) {
  require_in_range(request);
  const Path route = checked_route(request.route);
  Pattern pattern{Kind::track_line, request.spacing, request.first_turn, {}, {}};
  if (request.passes % 2 == 1) pattern.own_designator = "TSN";
  for (int pass = 0; pass < request.passes; ++pass) {
    const Length offset = offset_of(pass, request) * (request.first_turn == Turn::right ? 1 : -1);
    std::vector<Path> pieces = line_beside(route, offset);
    if (pieces.empty()) {
      throw Error(ErrorCode::impossible,
                  fmt::format("{} has no room: the route turns too closely", in_words(offset)),
                  "give fewer passes or a closer track spacing");
    }
    if (pieces.size() > 1) {
      pattern.remarks.push_back(
          fmt::format("{} is broken where the route comes back near to itself", in_words(offset)));
    }
    if (pass % 2 == 1) {
      std::reverse(pieces.begin(), pieces.end());
      for (Path& piece : pieces) std::reverse(piece.begin(), piece.end());
    }
    LegKind joint = LegKind::cross;
    for (const Path& piece : pieces) {
      if (!pattern.legs.empty()) {
        pattern.legs.push_back(make_leg(joint, pattern.legs.back().to, piece.front()));
      }
      for (std::size_t i = 1; i < piece.size(); ++i) {
        pattern.legs.push_back(make_leg(LegKind::search, piece[i - 1], piece[i]));
      }
      joint = LegKind::transit;
    }
  }
  pattern.guides.push_back({"route", route});
  const Angle bend = sharpest_bend(route);
  if (request.passes > 1 && bend > kWorthARemark) {
    pattern.remarks.push_back(
        fmt::format("the route bends by {:.0f} degrees: ground inside that bend lies up to {:.2f} "
                    "track spacings "
                    "from a pass",
                    bend.degrees(), 1 / (1 + std::cos(bend.radians() / 2))));
  }
  return pattern;
}

}  // namespace sweepwright::pattern
