#include "sweepwright/position/geodesic.hpp"

#include <GeographicLib/Geodesic.hpp>

namespace sweepwright {

GeodesicLine geodesic(Position from, Position to) {
  if (from == to) return {};
  double metres = 0;
  double start = 0;
  double end = 0;
  GeographicLib::Geodesic::WGS84().Inverse(from.latitude().degrees(), from.longitude().degrees(),
                                           to.latitude().degrees(), to.longitude().degrees(),
                                           metres, start, end);
  return {Length::metres(metres), TrueDirection::degrees(start), TrueDirection::degrees(end)};
}

Arrival travel(Position from, TrueDirection track, Length distance) {
  double latitude = 0;
  double longitude = 0;
  double arriving = 0;
  GeographicLib::Geodesic::WGS84().Direct(from.latitude().degrees(), from.longitude().degrees(),
                                          track.degrees(), distance.metres(), latitude, longitude,
                                          arriving);
  return {Position::at(Angle::degrees(latitude), Angle::degrees(longitude)),
          TrueDirection::degrees(arriving)};
}

Length length(const Path& path) {
  Length total;
  for (std::size_t i = 1; i < path.size(); ++i) total += geodesic(path[i - 1], path[i]).length;
  return total;
}

}  // namespace sweepwright
