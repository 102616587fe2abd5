#include "sweepwright/grid/gars.hpp"

#include <algorithm>
#include <array>

#include "grid/lat_lon_grid.hpp"
#include "grid/name_error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

constexpr std::string_view kLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";  // no I, no O
constexpr int kHalfDegree = kStepsPerDegree / 2;
constexpr int kQuadrant = kStepsPerDegree / 4;
constexpr int kArea = kStepsPerDegree / 12;

// The parts of all names, made when the library is compiled: a name is put together by copying.
struct NameParts {
  std::array<std::array<char, 4>, 720>
      columns{};  ///< and a spare byte: four copy faster than three
  std::array<std::array<char, 2>, 360> rows{};
  std::array<std::array<char, 2>, 36> areas{};  ///< quadrant and area, by 6 x row + column of areas
};

constexpr NameParts make_name_parts() {
  NameParts parts;
  for (unsigned i = 0; i < parts.columns.size(); ++i) {
    const auto digit = [](unsigned value) { return static_cast<char>('0' + value % 10); };
    parts.columns[i] = {digit((i + 1) / 100), digit((i + 1) / 10), digit(i + 1), ' '};
  }
  for (unsigned i = 0; i < parts.rows.size(); ++i) {
    parts.rows[i] = {kLetters[i / 24], kLetters[i % 24]};
  }
  for (unsigned i = 0; i < parts.areas.size(); ++i) {
    const unsigned north = i / 6;
    const unsigned east = i % 6;
    parts.areas[i] = {static_cast<char>('1' + 2 * (1 - north / 3) + east / 3),
                      static_cast<char>('1' + 3 * (2 - north % 3) + east % 3)};
  }
  return parts;
}

constexpr NameParts kParts = make_name_parts();

class GarsGrid final : public LatLonGrid {
 public:
  GarsGrid()
      : LatLonGrid("gars", OwnedSide::west,
                   {{"30min", kHalfDegree}, {"15min", kQuadrant}, {"5min", kArea}}) {}

  // The base class's answer with fewer calls: millions of places are named.
  std::string name_of(Position position, const Level& level) const override {
    return name_at(west_owning_square(position), level.depth);
  }

 private:
  std::string name_at(StepSquare square, int depth) const override {
    const unsigned north = static_cast<unsigned>(square.north) / kArea;
    const unsigned east = static_cast<unsigned>(square.east) / kArea;
    std::string text = "000AA00";  // the longest name
    char* const out = text.data();
    std::copy_n(kParts.columns[east / 6].data(), 4, out);
    std::copy_n(kParts.rows[north / 6].data(), 2, out + 3);
    std::copy_n(kParts.areas[6 * (north % 6) + east % 6].data(), 2, out + 5);
    text.erase(text.begin() + 5 + depth, text.end());
    return text;
  }

  Place place_of(std::string_view name) const override {
    const auto wrong = [name](std::size_t at, std::string_view expected) {
      return name_error("a GARS cell", name, at, expected, "166LM, 166LM3 or 166LM37");
    };
    int column = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      if (i >= name.size() || !is_ascii_digit(name[i])) {
        throw wrong(i, "a column of three digits, 001 to 720,");
      }
      column = 10 * column + (name[i] - '0');
    }
    if (column < 1 || column > 720) throw wrong(0, "a column from 001 to 720");
    int row = 0;
    for (std::size_t i = 3; i < 5; ++i) {
      const std::size_t letter = i < name.size() ? kLetters.find(name[i]) : kLetters.npos;
      if (letter == kLetters.npos)
        throw wrong(i, "a row of two letters, AA to QZ without I and O,");
      row = 24 * row + static_cast<int>(letter);
    }
    if (row >= 360) throw wrong(3, "a row from AA to QZ");
    StepSquare corner{row * kHalfDegree, (column - 1) * kHalfDegree};
    if (name.size() == 5) return {0, corner};
    const int quadrant = name[5] - '1';
    if (quadrant < 0 || quadrant > 3) throw wrong(5, "a quadrant from 1 to 4");
    corner.north += (1 - quadrant / 2) * kQuadrant;
    corner.east += quadrant % 2 * kQuadrant;
    if (name.size() == 6) return {1, corner};
    const int key = name[6] - '1';
    if (key < 0 || key > 8) throw wrong(6, "an area from 1 to 9");
    corner.north += (2 - key / 3) * kArea;
    corner.east += key % 3 * kArea;
    if (name.size() > 7) throw wrong(7, "the end of the name");
    return {2, corner};
  }
};

}  // namespace

const Grid& gars_grid() {
  static const GarsGrid grid;
  return grid;
}

}  // namespace sweepwright::grid
