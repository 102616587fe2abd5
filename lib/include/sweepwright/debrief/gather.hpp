// Logs and reports of each crew, put together as sorties.
//
// Method: logs of one crew whose times overlap are devices on one craft, and become one track
//   (track/devices.hpp); logs of other times are sorties of their own, such as a second day. Logs
//   without times are one sortie. A report belongs to the sorties that its times on task meet; one
//   without times to all of its crew, its sightings and remarks to the first.
// Promises: P1 every log is in exactly one sortie; P2 what was joined or not used is in `notes`
//   (gather_test.cpp).
// Source: own work.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/debrief/sortie.hpp"

namespace sweepwright::debrief {

/// What one crew brought home.
struct CrewLogs {
  std::vector<track::Track> logs;
  std::vector<CrewReport> reports;
};

struct Gathered {
  std::vector<SortieInput> sorties;
  std::vector<std::string> notes;
};

/// `crews`: one for each assignment of the plan, in its order.
Gathered gather(const plan::Plan& plan, std::vector<CrewLogs> crews);

}  // namespace sweepwright::debrief
