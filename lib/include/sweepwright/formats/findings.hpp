// Writes what the checks of a plan found, for people and for machines.
//
// Conventions: one line for each finding, worst first: severity in capitals where it must not be
//   overlooked, kind, sector and crew, what was found, its cure, the place. JSON in metres,
//   positions [longitude, latitude].
// Promises: P1 a finding is one line, whatever texts it holds; P2 what was not checked is told as
//   such in both (findings_test.cpp).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// `MUST NOT FLY`, `CAUTION`, `NOT CHECKED`, `note`.
std::string_view severity_label(hazard::Severity severity);

/// `CAUTION: leg 3: ... Cure: ...`: for a sheet that names the crew itself.
std::string finding_text(const hazard::Finding& finding);

/// All of them, each with its crew; a sentence that says so when there are none.
std::string findings_text(const std::vector<hazard::Finding>& findings);

/// The minima that each crew was checked by, and on whose word.
std::string minima_text(const plan::Plan& plan);

/// Findings, and each crew's heights leg by leg.
std::string findings_json(const plan::Plan& plan, const Provenance& provenance);

}  // namespace sweepwright::formats
