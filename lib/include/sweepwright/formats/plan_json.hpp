// Writes every figure of a plan as JSON for machines: docs/reference/plan-json.md names each key.
#pragma once

#include <string>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

std::string plan_json(const plan::Plan& plan, const Provenance& provenance);

}  // namespace sweepwright::formats
