// Points in time as the open formats write them: `2026-07-14T18:30:00Z`.
//
// Domain: years 0000 to 9999; Error(value) beyond.
// Source: RFC 3339 section 5.6, which is also a dateTime of XML Schema (KML, GPX).
#pragma once

#include <string>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {

std::string format_utc(TimePoint time);

}  // namespace sweepwright::formats
