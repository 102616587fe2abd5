#include "space_track.hpp"

#include <GeographicLib/Geocentric.hpp>
#include <algorithm>
#include <cmath>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::hazard {
namespace {

double seconds(Instant time) {
  return Duration(time.time_since_epoch()).count();
}

void add_pieces(const TrackPoint& from, const TrackPoint& to, std::vector<SpacePiece>& pieces) {
  const GeodesicLine line = geodesic(from.position, to.position);
  const int count = std::max(1, static_cast<int>(std::ceil(line.length / kLongestPiece)));
  SpacePiece piece;
  if (from.altitude && to.altitude) {
    piece.lowest = std::min(*from.altitude, *to.altitude);
    piece.highest = std::max(*from.altitude, *to.altitude);
  }
  piece.start = space_point(from.position);
  piece.from_s = seconds(from.time);
  for (int i = 1; i <= count; ++i) {
    const double share = 1.0 * i / count;
    piece.end = space_point(
        i == count ? to.position
                   : travel(from.position, line.start_track, line.length * share).position);
    piece.to_s = seconds(from.time) + share * (seconds(to.time) - seconds(from.time));
    pieces.push_back(piece);
    piece.start = piece.end;
    piece.from_s = piece.to_s;
  }
}

}  // namespace

SpacePoint space_point(Position position) {
  SpacePoint point{};
  GeographicLib::Geocentric::WGS84().Forward(position.latitude().degrees(),
                                             position.longitude().degrees(), 0, point[0], point[1],
                                             point[2]);
  return point;
}

std::vector<SpacePiece> space_track(const CrewTrack& track) {
  std::vector<SpacePiece> pieces;
  for (std::size_t i = 1; i < track.points.size(); ++i) {
    add_pieces(track.points[i - 1], track.points[i], pieces);
  }
  return pieces;
}

Position position(const SpacePoint& point) {
  double latitude = 0;
  double longitude = 0;
  double height = 0;
  GeographicLib::Geocentric::WGS84().Reverse(point[0], point[1], point[2], latitude, longitude,
                                             height);
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

SpacePoint between(const SpacePoint& from, const SpacePoint& to, double share) {
  SpacePoint point{};
  for (std::size_t i = 0; i < 3; ++i) point[i] = from[i] + share * (to[i] - from[i]);
  return point;
}

double distance_m(const SpacePoint& a, const SpacePoint& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

}  // namespace sweepwright::hazard
