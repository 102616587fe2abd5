// What searches, over what: the platforms, surfaces and terrain classes of the sweep width tables.
//
// Conventions: names are those of the command line and the mission file: `fixed-wing`,
//   `mountainous`. Letter case does not count; blanks, `-` and `_` are the same.
// Source: IAMSAR Manual Volume II, Appendix N, heads of Tables N-4, N-9 and N-10 [from memory].
#pragma once

#include <span>
#include <string_view>

namespace sweepwright::sweep {

/// What carries the lookouts.
enum class Platform {
  fixed_wing,
  helicopter,
  vessel,      ///< a ship's bridge: the height of eye of the merchant vessel tables
  small_boat,  ///< lookouts near the water
  ground_team,
};

/// True for aircraft: they have a search height, and the speed factors are theirs.
bool flies(Platform platform);

/// What the search object lies on.
enum class Surface { land, water };

/// Ground over which a land search is flown. Where two classes apply, take the one further down.
enum class Terrain {
  open,              ///< flat, vegetation under 15 percent
  hilly,             ///< hilly, or vegetation 15 to 60 percent
  mountainous,       ///< mountainous, or vegetation 60 to 85 percent
  dense_vegetation,  ///< vegetation over 85 percent
};

std::string_view name(Platform platform);
std::string_view name(Surface surface);
std::string_view name(Terrain terrain);

/// What the terrain class stands for, in words: "hilly, or vegetation 15 to 60 percent".
std::string_view description(Terrain terrain);

/// The names, in the order of the enumerations, for help texts.
std::span<const std::string_view> platform_names();
std::span<const std::string_view> terrain_names();

/// The value of that name. Throws Error (value) with the nearest spelling.
Platform parse_platform(std::string_view text);
Surface parse_surface(std::string_view text);
Terrain parse_terrain(std::string_view text);

}  // namespace sweepwright::sweep
