#include "sweepwright/sector/sectors.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::sector {
namespace {

/// Common ground of less than this is the seam of two edges.
constexpr Area kSeam = Area::square_metres(100);

void require_units(std::span<const SharedGround> grounds) {
  std::set<std::string_view> names;
  std::size_t count = 0;
  for (const SharedGround& ground : grounds) {
    count += ground.units.size();
    for (const UnitShare& unit : ground.units) {
      if (names.insert(unit.unit).second) continue;
      throw Error(ErrorCode::value, fmt::format("two units are called '{}'", printable(unit.unit)),
                  "give each unit its own name");
    }
  }
  if (count <= kMostUnits) return;
  throw Error(ErrorCode::value, fmt::format("there are {} search units", count),
              fmt::format("divide the ground among {} at the most", kMostUnits));
}

}  // namespace

std::string parse_day_letter(std::string_view text) {
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (text.empty() || text.size() > 2 || !capital(text.front()) || !capital(text.back())) {
    throw Error(ErrorCode::value, fmt::format("'{}' is not a day letter", printable(text)),
                "write one or two capital letters, A to Z");
  }
  return std::string(text);
}

std::string sector_name(std::string_view day_letter, std::size_t number) {
  return fmt::format("{}{}", day_letter, number);
}

std::vector<Sector> make_sectors(std::span<const SharedGround> grounds, std::string_view day_letter,
                                 std::optional<TrueDirection> legs) {
  require_units(grounds);
  std::vector<Sector> sectors;
  Area whole;
  for (const SharedGround& ground : grounds) {
    std::vector<double> shares;
    for (const UnitShare& unit : ground.units) shares.push_back(unit.share);
    const std::vector<Region> pieces = divide(ground.region, shares, legs);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const TrueDirection side = long_side(pieces[i]);
      const Area piece = area(pieces[i]);
      sectors.push_back({sector_name(day_letter, sectors.size() + 1), ground.units[i].unit,
                         pieces[i], piece, 1, side, legs.value_or(side)});
      whole += piece;
    }
  }
  for (Sector& sector : sectors) sector.share = sector.area / whole;
  return sectors;
}

std::vector<std::pair<std::size_t, std::size_t>> overlaps(std::span<const Sector> sectors) {
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (std::size_t i = 0; i < sectors.size(); ++i) {
    for (std::size_t j = i + 1; j < sectors.size(); ++j) {
      if (common_area(sectors[i].region, sectors[j].region) > kSeam) pairs.emplace_back(i, j);
    }
  }
  return pairs;
}

}  // namespace sweepwright::sector
