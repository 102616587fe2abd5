#include "sweepwright/grid/chart.hpp"

#include <fmt/format.h>

#include "grid/lat_lon_grid.hpp"
#include "grid/name_error.hpp"
#include "grid/sheet_lattice.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

std::vector<SheetLattice> lattices(const std::vector<ChartSheet>& sheets) {
  return {sheets.begin(), sheets.end()};
}

class ChartGrid final : public LatLonGrid {
 public:
  explicit ChartGrid(const std::vector<ChartSheet>& sheets)
      : LatLonGrid("chart", OwnedSide::east, {{"15min", kChartCell}, {"7.5min", kChartQuarter}}),
        sheets_(lattices(sheets)) {}

  bool covers(Position position) const override {
    return chart_square(sheets_, position).has_value();
  }

  std::string name_of(Position position, const Level& level) const override {
    const std::optional<StepSquare> square = chart_square(sheets_, position);
    if (!square) {
      throw Error(ErrorCode::value,
                  fmt::format("no chart sheet holds {:.4f}, {:.4f}", position.latitude().degrees(),
                              position.longitude().degrees()),
                  "use another grid there, or a table of charts that has a sheet for it");
    }
    return name_at(*square, level.depth);
  }

 private:
  std::string name_at(StepSquare square, int depth) const override {
    return sheets_at(sheets_, square).front()->name_at(square, depth);
  }

  bool exists(StepSquare square) const override { return !sheets_at(sheets_, square).empty(); }

  Place place_of(std::string_view name) const override {
    const auto wrong = [name](std::size_t at, std::string_view expected) {
      return name_error("a chart cell", name, at, expected, "STL 104 or STL 104D");
    };
    std::size_t at = 0;
    const auto skip_separators = [&] {
      while (at < name.size() && (name[at] == ' ' || name[at] == '-')) ++at;
    };
    while (at < name.size() && is_ascii_letter(name[at])) ++at;
    if (at == 0) throw wrong(0, "the letters of a chart");
    const SheetLattice& sheet = sheet_called(name.substr(0, at));
    skip_separators();
    const std::size_t number_at = at;
    const int most = sheet.rows * sheet.columns;
    int number = 0;
    while (at < name.size() && is_ascii_digit(name[at]) && number <= most) {
      number = 10 * number + (name[at++] - '0');
    }
    if (at == number_at) throw wrong(at, "the number of a cell");
    if (number < 1 || number > most) {
      throw wrong(number_at, fmt::format("a number from 1 to {} on {}", most, sheet.code));
    }
    StepSquare corner = sheet.corner_of(number);
    skip_separators();
    if (at == name.size()) return {0, corner};
    const int quarter = name[at] - 'A';
    if (quarter < 0 || quarter > 3) throw wrong(at, "a quarter from A to D");
    if (at + 1 != name.size()) throw wrong(at + 1, "the end of the name");
    corner.north += (1 - quarter / 2) * kChartQuarter;
    corner.east += quarter % 2 * kChartQuarter;
    return {1, corner};
  }

  const SheetLattice& sheet_called(std::string_view code) const {
    std::vector<std::string_view> codes;
    for (const SheetLattice& sheet : sheets_) {
      if (sheet.code == code) return sheet;
      codes.push_back(sheet.code);
    }
    throw Error(ErrorCode::value,
                fmt::format("there is no chart '{}', expected one of {} charts", printable(code),
                            codes.size()),
                spelling_hint(code, codes), "character 1");
  }

  std::vector<SheetLattice> sheets_;
};

}  // namespace

std::unique_ptr<Grid> make_chart_grid(const std::vector<ChartSheet>& sheets) {
  return std::make_unique<ChartGrid>(sheets);
}

const Grid& chart_grid() {
  static const ChartGrid grid(built_in_chart_sheets());
  return grid;
}

std::vector<ChartName> chart_names(const std::vector<ChartSheet>& sheets, Position position,
                                   const Level& level) {
  const std::vector<SheetLattice> all = lattices(sheets);
  std::vector<ChartName> names;
  if (const std::optional<StepSquare> square = chart_square(all, position)) {
    for (const SheetLattice* sheet : sheets_at(all, *square)) {
      names.push_back({sheet->code, sheet->name_at(*square, level.depth)});
    }
  }
  return names;
}

}  // namespace sweepwright::grid
