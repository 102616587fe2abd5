// The route that an option names, told about on standard error.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::cli {

/// Tells how odd things in the file were read, and adds its digest to `inputs`.
Path read_route(const std::string& path, std::vector<formats::InputDigest>& inputs);

}  // namespace sweepwright::cli
