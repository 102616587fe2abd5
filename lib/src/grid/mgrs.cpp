#include "sweepwright/grid/mgrs.hpp"

#include <fmt/format.h>

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <algorithm>
#include <cmath>

#include "grid/cover.hpp"
#include "grid/mgrs_zone.hpp"
#include "grid/name_error.hpp"
#include "grid/surroundings.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

constexpr double kSides[] = {100'000, 10'000, 1'000, 100};  // metres, by depth
constexpr double kLeastCell = 1;                            // square metre
constexpr std::string_view kExample = "18SUJ, 18SUJ23, 18SUJ2307 or 18SUJ233073";

/// A square of a zone's map.
struct Square {
  const MgrsZone* zone;
  int depth;
  FlatPoint south_west;  ///< metres
};

std::string without_blanks(std::string_view name) {
  std::string text = to_upper_ascii(name);
  std::erase_if(text, [](char c) { return c == ' ' || c == '\t'; });
  return text;
}

/// Checks the form of a name letter by letter and gives its depth.
int check_form(std::string_view name) {
  const auto wrong = [name](std::size_t at, std::string_view expected) {
    return name_error("an MGRS cell", name, at, expected, kExample);
  };
  const auto has = [name](std::size_t at, std::string_view letters) {
    return at < name.size() && letters.find(name[at]) != letters.npos;
  };
  std::size_t at = 0;
  while (at < name.size() && is_ascii_digit(name[at])) ++at;
  if (at == 0) {
    if (!has(0, "ABYZ"))
      throw wrong(0, "a zone from 1 to 60, or A, B, Y or Z for the polar areas,");
  } else {
    const int zone = at <= 2 ? std::stoi(std::string(name.substr(0, at))) : 0;
    if (zone < 1 || zone > 60) throw wrong(0, "a zone from 1 to 60");
    if (!has(at, "CDEFGHJKLMNPQRSTUVWX")) throw wrong(at, "a band from C to X without I and O");
    if (find_zone(zone, name[at]) == nullptr) {
      throw wrong(0, "31X, 33X, 35X or 37X (over Svalbard the zones between are shared out)");
    }
  }
  ++at;
  for (const std::size_t end = at + 2; at < end; ++at) {
    if (!has(at, "ABCDEFGHJKLMNPQRSTUVWXYZ")) {
      throw wrong(at, "a letter of the 100 km square, without I and O,");
    }
  }
  const std::size_t digits_at = at;
  while (at < name.size() && is_ascii_digit(name[at])) ++at;
  if (at != name.size()) throw wrong(at, "a digit or the end of the name");
  const std::size_t digits = at - digits_at;
  if (digits % 2 != 0) throw wrong(at, "as many digits for the north as for the east");
  if (digits > 6) throw wrong(digits_at + 6, "the end of the name (the finest cell is 100 m)");
  return static_cast<int>(digits / 2);
}

Square square_of(std::string_view name) {
  const int depth = check_form(name);
  const std::size_t band_at = std::min(name.find_first_not_of("0123456789"), name.size());
  int number = 0;
  bool north = false;
  int precision = 0;
  FlatPoint south_west{};
  try {
    GeographicLib::MGRS::Reverse(std::string(name), number, north, south_west.x, south_west.y,
                                 precision, /*centerp=*/false);
  } catch (const GeographicLib::GeographicErr&) {
    throw name_error("an MGRS cell", name, band_at + 1, "a 100 km square of that zone and band",
                     kExample);
  }
  return {find_zone(number, name[band_at]), depth, south_west};
}

class MgrsGrid final : public Grid {
 public:
  std::string_view system() const override { return "mgrs"; }
  const std::vector<Level>& levels() const override { return levels_; }

  std::string name_of(Position position, const Level& level) const override {
    int number = 0;
    bool north = false;
    FlatPoint metres{};
    std::string name;
    const double latitude = position.latitude().degrees();
    GeographicLib::UTMUPS::Forward(latitude, position.longitude().degrees(), number, north,
                                   metres.x, metres.y);
    GeographicLib::MGRS::Forward(number, north, metres.x, metres.y, latitude, level.depth, name);
    return name;
  }

  Cell cell(std::string_view name) const override {
    const std::string plain = without_blanks(name);
    const std::optional<Cell> cell = make_cell(square_of(plain));
    if (!cell) {
      throw Error(ErrorCode::value,
                  fmt::format("the square {} has no ground in its zone and band, expected one that "
                              "reaches into them",
                              plain),
                  "a square that crosses an edge has another name on the other side");
    }
    return *cell;
  }

  void visit(const Region& area, const Level& level, Selection selection,
             const CellSink& sink) const override {
    visit_flat(flat(area), level, selection, sink);
  }
  void visit(const LatLonBox& area, const Level& level, Selection selection,
             const CellSink& sink) const override {
    check(area);
    visit_flat(flat(area), level, selection, sink);
  }

  std::optional<Cell> parent(const Cell& cell) const override {
    const Square square = square_of(cell.name);
    if (square.depth == 0) return std::nullopt;
    const double side = kSides[square.depth - 1];
    return make_cell({square.zone,
                      square.depth - 1,
                      {std::floor(square.south_west.x / side) * side,
                       std::floor(square.south_west.y / side) * side}});
  }

  std::vector<Cell> children(const Cell& cell) const override {
    std::vector<Cell> cells;
    const Square square = square_of(cell.name);
    if (square.depth == 3) return cells;
    const double side = kSides[square.depth + 1];
    for (int row = 9; row >= 0; --row) {
      for (int column = 0; column < 10; ++column) {
        const FlatPoint corner{square.south_west.x + column * side,
                               square.south_west.y + row * side};
        if (std::optional<Cell> child = make_cell({square.zone, square.depth + 1, corner})) {
          cells.push_back(std::move(*child));
        }
      }
    }
    return cells;
  }

  std::vector<Cell> neighbours(const Cell& cell) const override {
    return surroundings(*this, cell);
  }

 private:
  /// Nothing when the square has no ground in its zone and band. The map's straight lines are
  /// shortest lines as far as an edge goes here (4 cm in 10 km, and long edges have more corners).
  std::optional<Cell> make_cell(const Square& square) const {
    const double side = kSides[square.depth];
    const FlatRegion ground = square_on_ground(*square.zone, square.south_west, side);
    if (ground.empty() || area_of_degrees(ground).square_metres() < kLeastCell) return std::nullopt;
    const double latitude = (square.zone->limits.low.y + square.zone->limits.high.y) / 2;
    std::string name;
    try {
      GeographicLib::MGRS::Forward(square.zone->number, square.zone->north(),
                                   square.south_west.x + side / 2, square.south_west.y + side / 2,
                                   square.zone->polar() ? 0 : latitude, square.depth, name);
    } catch (const GeographicLib::GeographicErr&) {
      return std::nullopt;  // the square lies beside the band
    }
    return Cell{system(), levels_[static_cast<std::size_t>(square.depth)], name, std::nullopt,
                from_flat_parallels(ground)};
  }

  void visit_flat(const FlatRegion& area, const Level& level, Selection selection,
                  const CellSink& sink) const {
    const double side = kSides[level.depth];
    for (const MgrsZone& zone : mgrs_zones()) {
      const FlatRegion part = cut(area, zone.limits);
      if (part.empty()) continue;
      const auto take_row = [&](int row, const std::vector<Span>& spans) {
        for (const Span& span : spans) {
          for (int column = span.first; column <= span.last; ++column) {
            const std::optional<Cell> cell =
                make_cell({&zone, level.depth, {column * side, row * side}});
            if (cell && (selection == Selection::touching || centre_inside(area, *cell))) {
              sink(*cell);
            }
          }
        }
      };
      cover(metre_sides(to_map(zone, part)), static_cast<Ticks>(side) * kMicrometresPerMetre,
            Selection::touching, take_row);
    }
  }

  static bool centre_inside(const FlatRegion& area, const Cell& cell) {
    const Position centre = label_point(cell);
    return inside(area, {centre.longitude().degrees(), centre.latitude().degrees()});
  }

  const std::vector<Level> levels_{{"100km", 0, Length::kilometres(100)},
                                   {"10km", 1, Length::kilometres(10)},
                                   {"1km", 2, Length::kilometres(1)},
                                   {"100m", 3, Length::metres(100)}};
};

}  // namespace

const Grid& mgrs_grid() {
  static const MgrsGrid grid;
  return grid;
}

}  // namespace sweepwright::grid
