// The sentences that every output carries, because people act on what it shows.
//
// This is their only home: writers and sheets take them from here, word for word.
#pragma once

#include <array>
#include <string_view>

namespace sweepwright::formats {

inline constexpr std::array<std::string_view, 3> kCautions = {
    "Planning aid only. Not for navigation.",
    "Check current charts, notices, terrain, obstacles and weather before and during the search.",
    "Local rules apply, and the pilot or person in command decides.",
};

}  // namespace sweepwright::formats
