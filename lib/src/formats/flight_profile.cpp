#include "sweepwright/formats/flight_profile.hpp"

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using terrain::CorridorPiece;
using terrain::HighGround;

void raise(std::optional<HighGround>& to, const std::optional<HighGround>& more) {
  if (more && (!to || more->height > to->height)) to = more;
}

bool ends_a_step(const terrain::HeightPlan& heights, Length distance) {
  for (const terrain::HeightStep& step : heights) {
    if (step.to == distance) return true;
  }
  return false;
}

/// The leg's pieces, `done` further on, joined up to `least` each.
void append_pieces(std::vector<CorridorPiece>& pieces, const hazard::LegTerrain& leg, Length done,
                   Length least) {
  bool open = false;
  for (CorridorPiece piece : leg.corridor.pieces) {
    const bool closes = ends_a_step(leg.heights, piece.to);
    piece.from += done;
    piece.to += done;
    if (open) {
      CorridorPiece& last = pieces.back();
      last.to = piece.to;
      last.end = piece.end;
      last.known = last.known && piece.known;
      raise(last.below, piece.below);
      raise(last.highest, piece.highest);
    } else {
      pieces.push_back(piece);
    }
    open = !closes && pieces.back().to - pieces.back().from < least;
  }
}

/// `out`, `3`, `back`; none for cross legs and the like, which are too short to be marked.
std::string mark_of(const flight::FlownPattern& flown, std::size_t index) {
  const flight::FlownLeg& leg = flown.legs.at(index);
  if (!leg.searching) return index == 0 ? "out" : "back";
  if (leg.leg.kind != pattern::LegKind::search) return "";
  return leg.drawn ? std::to_string(*leg.drawn) : "";
}

Length whole_length(const hazard::TerrainCheck& check) {
  Length whole;
  for (const hazard::LegTerrain& leg : check.legs) whole += terrain::length(leg.corridor);
  return whole;
}

}  // namespace

TerrainReport flight_profile(const hazard::TerrainCheck& check, const flight::FlownPattern& flown) {
  if (check.legs.empty()) throw Error(ErrorCode::value, "a flight without legs has no profile");
  TerrainReport report;
  report.question.minimum = check.task.minimum;
  report.question.half_width = check.task.half_width;
  report.question.altitude = check.task.altitude;
  report.corridor.half_width = check.task.half_width;
  const Length least = whole_length(check) / kPiecesOfAChart;
  Length done;
  for (std::size_t i = 0; i < check.legs.size(); ++i) {
    const hazard::LegTerrain& leg = check.legs[i];
    append_pieces(report.corridor.pieces, leg, done, least);
    for (const terrain::HeightStep& step : leg.heights) {
      report.heights.push_back({done + step.to, step.altitude});
    }
    done += terrain::length(leg.corridor);
    report.safe_legs.push_back({done, leg.safe});
    report.leg_names.push_back(mark_of(flown, i));
  }
  report.clearance =
      terrain::check_clearance(report.corridor, report.heights, report.question.minimum);
  return report;
}

}  // namespace sweepwright::formats
