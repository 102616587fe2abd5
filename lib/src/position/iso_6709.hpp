// ISO 6709 positions, where each sign begins a coordinate: +3815-11702/ or +38.25-117.04.
#pragma once

#include <optional>

#include "position/coordinate_groups.hpp"

namespace sweepwright::detail {

/// The two coordinates when the text has the shape of ISO 6709: a sign and two digits of degrees
/// for the latitude, a sign and three for the longitude, with two digits each of minutes and
/// seconds or without, decimals after the last, perhaps a slash at the end.
std::optional<GroupPair> iso_6709(const PlainText& text);

}  // namespace sweepwright::detail
