#include "sweepwright/debrief/gather.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "sweepwright/track/devices.hpp"

namespace sweepwright::debrief {
namespace {

struct Times {
  std::optional<Instant> begin;
  std::optional<Instant> end;
};

Times times_of(const track::Track& track) {
  Times times;
  for (const track::Segment& segment : track.segments) {
    for (const track::Fix& fix : segment) {
      if (!fix.time) continue;
      if (!times.begin || *fix.time < *times.begin) times.begin = fix.time;
      if (!times.end || *fix.time > *times.end) times.end = fix.time;
    }
  }
  return times;
}

/// Logs that overlap in time, or have none.
struct Group {
  std::vector<track::Track> logs;
  Times times;
};

std::vector<Group> groups(std::vector<track::Track> logs) {
  std::vector<std::pair<Times, track::Track>> timed;
  std::vector<Group> found;
  Group untimed;
  for (track::Track& log : logs) {
    const Times times = times_of(log);
    if (times.begin) {
      timed.emplace_back(times, std::move(log));
    } else {
      untimed.logs.push_back(std::move(log));
    }
  }
  std::stable_sort(timed.begin(), timed.end(),
                   [](const auto& a, const auto& b) { return *a.first.begin < *b.first.begin; });
  for (auto& [times, log] : timed) {
    if (found.empty() || *times.begin >= *found.back().times.end) found.push_back({{}, times});
    Group& group = found.back();
    group.times.end = std::max(*group.times.end, *times.end);
    group.logs.push_back(std::move(log));
  }
  if (!untimed.logs.empty()) found.push_back(std::move(untimed));
  return found;
}

bool has_times(const CrewReport& report) {
  return report.on_task || report.off_task;
}

/// True when the report's times on task meet those of the logs, or either has none.
bool belongs(const CrewReport& report, const Times& times) {
  if (!times.begin || !has_times(report)) return true;
  const bool begins_after = report.on_task && *report.on_task > *times.end;
  const bool ends_before = report.off_task && *report.off_task < *times.begin;
  return !begins_after && !ends_before;
}

}  // namespace

Gathered gather(const plan::Plan& plan, std::vector<CrewLogs> crews) {
  Gathered found;
  for (std::size_t i = 0; i < crews.size(); ++i) {
    const std::string& crew = plan.assignments.at(i).unit.callsign;
    std::vector<bool> used(crews[i].reports.size(), false);
    for (Group& group : groups(std::move(crews[i].logs))) {
      SortieInput input;
      input.assignment = i;
      const std::size_t count = group.logs.size();
      track::JoinedTrack joined = track::join_devices(std::move(group.logs));
      if (count > 1) {
        found.notes.push_back(
            fmt::format("{} logs of {} are of one sortie; {} fixes that another log has better are "
                        "left out",
                        count, crew, joined.left_out));
      }
      input.track = std::move(joined.track);
      for (std::size_t j = 0; j < used.size(); ++j) {
        CrewReport& report = crews[i].reports[j];
        if (!belongs(report, group.times)) continue;
        used[j] = true;
        input.report = input.report ? merged(*input.report, report) : report;
        // Told once, though the conditions hold for all of the crew's sorties.
        report.sightings.clear();
        report.remarks.clear();
      }
      found.sorties.push_back(std::move(input));
    }
    for (std::size_t j = 0; j < used.size(); ++j) {
      if (!used[j]) {
        found.notes.push_back(fmt::format(
            "a report of {} is not used: no log of that crew has its times on task", crew));
      }
    }
  }
  return found;
}

}  // namespace sweepwright::debrief
