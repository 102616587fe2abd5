#include "sweepwright/hazard/crew_track.hpp"

#include <utility>

#include "sweepwright/flight/flown_path.hpp"

namespace sweepwright::hazard {

CrewTrack crew_track(std::string crew, std::string sector, const flight::FlownPattern& flown,
                     std::optional<Length> altitude) {
  CrewTrack track{std::move(crew), std::move(sector), {}};
  int leg = 0;
  for (const flight::FlownLegPath& path : flight::flown_paths(flown)) {
    for (const auto* points : {&path.straight, &path.turn}) {
      for (const flight::PathPoint& point : *points) {
        const Instant time =
            flown.depart + std::chrono::round<std::chrono::milliseconds>(point.time);
        const bool again = !track.points.empty() && track.points.back().time >= time;
        // Where two parts meet, the later one says which leg goes on from there.
        if (again) {
          track.points.back().leg = leg;
          track.points.back().position = point.position;
        } else {
          track.points.push_back({point.position, time, leg, altitude});
        }
      }
    }
    ++leg;
  }
  return track;
}

}  // namespace sweepwright::hazard
