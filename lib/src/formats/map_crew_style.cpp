#include <array>

#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

struct NamedColour {
  std::string_view name;
  Colour colour;
};

// Found by search for the largest least difference in normal, red-, green- and blue-blind sight and
// in grey: docs/style-guide.md. Crews next to each other get colours far apart in grey.
constexpr std::array<NamedColour, kCrewColours> kPalette{{{"blue", {31, 0, 245}},
                                                          {"red", {201, 49, 0}},
                                                          {"black", {26, 26, 26}},
                                                          {"violet", {210, 74, 255}},
                                                          {"teal", {46, 96, 109}},
                                                          {"plum", {75, 0, 99}},
                                                          {"tan", {140, 120, 89}},
                                                          {"maroon", {124, 4, 0}}}};

const std::array<std::vector<double>, kCrewColours> kDashes{{{},
                                                             {3, 1},
                                                             {0.7, 0.9},
                                                             {4, 0.9, 0.7, 0.9},
                                                             {1.5, 1},
                                                             {6, 1.2},
                                                             {3, 0.8, 0.7, 0.8, 0.7, 0.8},
                                                             {2, 2}}};

constexpr std::array<double, kCrewColours> kHatchDirections{45, 135, 0, 90, 22, 158, 68, 112};

}  // namespace

CrewStyle crew_style(std::size_t crew) {
  const std::size_t place = crew % kCrewColours;
  // From the ninth crew on the same colour comes with another line pattern.
  const std::size_t pattern = (crew + crew / kCrewColours) % kCrewColours;
  return {kPalette[place].name, kPalette[place].colour, kDashes[pattern],
          kHatchDirections[pattern]};
}

}  // namespace sweepwright::formats
