#include "sweepwright/hazard/finding.hpp"

#include <algorithm>

namespace sweepwright::hazard {

std::string_view name(Severity severity) {
  switch (severity) {
    case Severity::must_not_fly:
      return "must not fly";
    case Severity::caution:
      return "caution";
    case Severity::not_checked:
      return "not checked";
    case Severity::note:
      break;
  }
  return "note";
}

std::string_view name(Kind kind) {
  switch (kind) {
    case Kind::terrain:
      return "terrain";
    case Kind::obstacle:
      return "obstacle";
    case Kind::airspace:
      return "airspace";
    case Kind::separation:
      return "separation";
    case Kind::climb:
      return "climb";
    case Kind::turning_room:
      return "turning room";
    case Kind::daylight:
      return "daylight";
    case Kind::fuel:
      break;
  }
  return "fuel";
}

void sort_worst_first(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
}

bool forbids_flight(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.severity == Severity::must_not_fly;
  });
}

}  // namespace sweepwright::hazard
