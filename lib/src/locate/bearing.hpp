// Bearings as given, made true.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::locate {

inline constexpr std::string_view kNoVariation =
    "a magnetic bearing, and no magnetic variation is known here";
inline constexpr std::string_view kNoVariationHint = "give the true bearing, such as 045T";

struct TrueBearing {
  TrueDirection direction;
  std::string in_words;  ///< `045.0 true`, or `030.0 magnetic (variation 12.3 W, 017.7 true)`
};

/// Nothing for a magnetic bearing when Options::variation is empty.
std::optional<TrueBearing> to_true(std::variant<TrueDirection, MagneticDirection> bearing,
                                   Position at, const Options& options);

}  // namespace sweepwright::locate
