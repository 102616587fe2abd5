// CrewReport: what a crew wrote on its debrief form.
//
// Problem: the plan assumed a visibility and a height; the crew knows what it met. What it saw, and
//   when it saw nothing of the ground, is known to nobody else.
// Conventions: times in UTC. A field that the crew left blank is empty, and the plan's value
// stands.
//   The crew's own estimate is shown beside the computed probability, and enters no computation.
// Source: fields as on the debrief page of the crew's sheet (formats/sheet.hpp).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/plan/plan.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::debrief {

/// Something that a crew saw.
struct Sighting {
  std::optional<TimePoint> time;
  std::optional<Position> position;
  std::string seen;  ///< in the crew's words
  std::string done;  ///< what was done about it; may be empty
};

struct CrewReport {
  std::string sector;    ///< may be empty when the callsign stands
  std::string callsign;  ///< may be empty when the sector stands
  std::optional<TimePoint> on_task;
  std::optional<TimePoint> off_task;
  std::optional<Length> visibility;
  std::optional<Length> height;  ///< above ground or water
  std::optional<Speed> speed;    ///< over the ground
  bool fatigued = false;         ///< excessively tired
  std::optional<sweep::Probability> own_pod;
  std::string own_estimate;               ///< in words: poor, fair, good; may be empty
  std::vector<plan::Period> above_cloud;  ///< saw nothing of the ground
  std::vector<Sighting> sightings;
  std::vector<std::string> remarks;
};

/// Two parts of one form as one: what the first left blank is taken from the second.
CrewReport merged(CrewReport first, const CrewReport& second);

/// The place in plan.assignments of the crew that reports. Throws Error(value) with the nearest
/// names for a sector or a callsign that the plan does not have, and when the two do not belong
/// together.
std::size_t assignment_of(const CrewReport& report, const plan::Plan& plan);

}  // namespace sweepwright::debrief
