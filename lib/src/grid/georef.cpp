#include "sweepwright/grid/georef.hpp"

#include "grid/lat_lon_grid.hpp"
#include "grid/name_error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";  // no I, no O
constexpr std::string_view kTileColumns = kLetters;
constexpr std::string_view kTileRows = kLetters.substr(0, 12);  // A to M
constexpr std::string_view kDegrees = kLetters.substr(0, 15);   // A to Q
constexpr int kTile = 15 * kStepsPerDegree;
constexpr int kMinute = kStepsPerDegree / 60;

class GeorefGrid final : public LatLonGrid {
 public:
  GeorefGrid()
      : LatLonGrid("georef", OwnedSide::west,
                   {{"15deg", kTile}, {"1deg", kStepsPerDegree}, {"1min", kMinute}}) {}

 private:
  std::string name_at(StepSquare square, int depth) const override {
    const auto north = static_cast<unsigned>(square.north);
    const auto east = static_cast<unsigned>(square.east);
    const auto digit = [](unsigned value) { return static_cast<char>('0' + value % 10); };
    const unsigned east_minute = east % kStepsPerDegree / kMinute;
    const unsigned north_minute = north % kStepsPerDegree / kMinute;
    std::string text = "AAAA0000";  // the longest name
    text[0] = kTileColumns[east / kTile];
    text[1] = kTileRows[north / kTile];
    text[2] = kDegrees[east % kTile / kStepsPerDegree];
    text[3] = kDegrees[north % kTile / kStepsPerDegree];
    text[4] = digit(east_minute / 10);
    text[5] = digit(east_minute);
    text[6] = digit(north_minute / 10);
    text[7] = digit(north_minute);
    text.erase(text.begin() + (2 << depth), text.end());
    return text;
  }

  Place place_of(std::string_view name) const override {
    const auto wrong = [name](std::size_t at, std::string_view expected) {
      return name_error("a GEOREF cell", name, at, expected, "NK, NKLN or NKLN2438");
    };
    const auto letter = [&](std::size_t at, std::string_view letters, std::string_view expected) {
      const std::size_t index = at < name.size() ? letters.find(name[at]) : letters.npos;
      if (index == letters.npos) throw wrong(at, expected);
      return static_cast<int>(index);
    };
    const auto minutes = [&](std::size_t at) {
      for (std::size_t i = at; i < at + 2; ++i) {
        if (i >= name.size() || !is_ascii_digit(name[i])) {
          throw wrong(i, "minutes of two digits, east and then north,");
        }
      }
      const int value = 10 * (name[at] - '0') + (name[at + 1] - '0');
      if (value > 59) throw wrong(at, "minutes from 00 to 59");
      return value;
    };
    StepSquare corner{};
    corner.east = letter(0, kTileColumns, "a column from A to Z without I and O") * kTile;
    corner.north = letter(1, kTileRows, "a row from A to M without I") * kTile;
    if (name.size() == 2) return {0, corner};
    constexpr std::string_view kDegreeLetter = "a letter from A to Q without I and O";
    corner.east += letter(2, kDegrees, kDegreeLetter) * kStepsPerDegree;
    corner.north += letter(3, kDegrees, kDegreeLetter) * kStepsPerDegree;
    if (name.size() == 4) return {1, corner};
    corner.east += minutes(4) * kMinute;
    corner.north += minutes(6) * kMinute;
    if (name.size() > 8) throw wrong(8, "the end of the name (the finest cell is one minute)");
    return {2, corner};
  }
};

}  // namespace

const Grid& georef_grid() {
  static const GeorefGrid grid;
  return grid;
}

}  // namespace sweepwright::grid
