#include "sweepwright/debrief/crew_report.hpp"

#include <fmt/format.h>

#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::debrief {
namespace {

template <typename T>
void take_blank(std::optional<T>& value, const std::optional<T>& other) {
  if (!value) value = other;
}

template <typename T>
void append(std::vector<T>& list, const std::vector<T>& more) {
  list.insert(list.end(), more.begin(), more.end());
}

/// The place of the assignment whose name is `wanted`; letter case does not count.
template <typename NameOf>
std::size_t place_of(const plan::Plan& plan, const std::string& wanted, std::string_view what,
                     const NameOf& name_of) {
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const std::string& name = name_of(plan.assignments[i]);
    if (to_lower_ascii(trimmed(name)) == to_lower_ascii(trimmed(wanted))) return i;
    names.push_back(name);
  }
  throw Error(ErrorCode::value, fmt::format("the plan has no {} '{}'", what, printable(wanted)),
              spelling_hint(wanted, names));
}

}  // namespace

CrewReport merged(CrewReport first, const CrewReport& second) {
  if (first.sector.empty()) first.sector = second.sector;
  if (first.callsign.empty()) first.callsign = second.callsign;
  take_blank(first.on_task, second.on_task);
  take_blank(first.off_task, second.off_task);
  take_blank(first.visibility, second.visibility);
  take_blank(first.height, second.height);
  take_blank(first.speed, second.speed);
  take_blank(first.own_pod, second.own_pod);
  if (first.own_estimate.empty()) first.own_estimate = second.own_estimate;
  first.fatigued = first.fatigued || second.fatigued;
  append(first.above_cloud, second.above_cloud);
  append(first.sightings, second.sightings);
  append(first.remarks, second.remarks);
  return first;
}

std::size_t assignment_of(const CrewReport& report, const plan::Plan& plan) {
  if (report.sector.empty() && report.callsign.empty()) {
    throw Error(ErrorCode::value, "the report names neither a sector nor a callsign",
                "write the sector, such as A1");
  }
  const auto by_callsign = [&] {
    return place_of(plan, report.callsign, "crew",
                    [](const plan::Assignment& assignment) -> const std::string& {
                      return assignment.unit.callsign;
                    });
  };
  if (report.sector.empty()) return by_callsign();
  const std::size_t place = place_of(plan, report.sector, "sector",
                                     [](const plan::Assignment& assignment) -> const std::string& {
                                       return assignment.sector_name;
                                     });
  if (!report.callsign.empty() && by_callsign() != place) {
    throw Error(ErrorCode::value,
                fmt::format("sector {} is not that of {}, but of {}", report.sector,
                            printable(report.callsign), plan.assignments[place].unit.callsign),
                "mend the sector or the callsign");
  }
  return place;
}

}  // namespace sweepwright::debrief
