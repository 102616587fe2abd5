// Finding: one thing that a check has to say before anyone flies.
//
// Conventions: severities order from what must not be flown to what is good to know. What could
//   not be checked stands above mere notes: silence never means safe.
// Promises: P1 sorting by worst_first keeps the order of findings that are equally bad.
// Source: the project's own; the words on a finding name the source of the limit it broke.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::hazard {

enum class Severity { must_not_fly, caution, not_checked, note };
/// `must not fly`, `caution`, `not checked`, `note`.
std::string_view name(Severity severity);

enum class Kind {
  terrain,
  obstacle,
  airspace,
  separation,
  climb,
  turning_room,
  daylight,
  fuel,
};
std::string_view name(Kind kind);

struct Finding {
  Severity severity = Severity::note;
  Kind kind = Kind::terrain;
  std::string crew;        ///< callsign; empty when it is about all
  std::string sector;      ///< may be empty
  std::optional<int> leg;  ///< row of the crew's leg table, from 1
  std::string text;        ///< what was found, with its figures, in one sentence
  std::string cure;        ///< how to mend it; may be empty
  std::optional<Position> where;
  std::optional<TimePoint> when;
};

void sort_worst_first(std::vector<Finding>& findings);
/// True when one of them says that something must not be flown.
bool forbids_flight(const std::vector<Finding>& findings);

}  // namespace sweepwright::hazard
