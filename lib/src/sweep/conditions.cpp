#include "sweepwright/sweep/conditions.hpp"

#include <array>

#include "sweep/name_matching.hpp"

namespace sweepwright::sweep {
namespace {

// Each list stands in the order of its enumeration.
constexpr std::array<std::string_view, 5> kPlatformNames{"fixed-wing", "helicopter", "vessel",
                                                         "small-boat", "ground-team"};
constexpr std::array<std::string_view, 2> kSurfaceNames{"land", "water"};
constexpr std::array<std::string_view, 4> kTerrainNames{"open", "hilly", "mountainous",
                                                        "dense-vegetation"};
constexpr std::array<std::string_view, 4> kTerrainDescriptions{
    "open and flat, vegetation under 15 percent", "hilly, or vegetation 15 to 60 percent",
    "mountainous, or vegetation 60 to 85 percent", "dense: vegetation over 85 percent"};

}  // namespace

bool flies(Platform platform) {
  return platform == Platform::fixed_wing || platform == Platform::helicopter;
}

std::string_view name(Platform platform) {
  return kPlatformNames.at(static_cast<std::size_t>(platform));
}

std::string_view name(Surface surface) {
  return kSurfaceNames.at(static_cast<std::size_t>(surface));
}

std::string_view name(Terrain terrain) {
  return kTerrainNames.at(static_cast<std::size_t>(terrain));
}

std::string_view description(Terrain terrain) {
  return kTerrainDescriptions.at(static_cast<std::size_t>(terrain));
}

std::span<const std::string_view> platform_names() {
  return kPlatformNames;
}

std::span<const std::string_view> terrain_names() {
  return kTerrainNames;
}

Platform parse_platform(std::string_view text) {
  return static_cast<Platform>(index_of_name(text, kPlatformNames, "a search platform"));
}

Surface parse_surface(std::string_view text) {
  return static_cast<Surface>(index_of_name(text, kSurfaceNames, "a surface"));
}

Terrain parse_terrain(std::string_view text) {
  return static_cast<Terrain>(index_of_name(text, kTerrainNames, "a class of terrain"));
}

}  // namespace sweepwright::sweep
