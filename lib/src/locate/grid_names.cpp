// Names of cells that the grid room knows: the reader finds out whose name it is, the grid does
// the rest.
#include <fmt/format.h>

#include <charconv>

#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/grid/gars.hpp"
#include "sweepwright/grid/quarter.hpp"

namespace sweepwright::locate {
namespace {

/// The number in `character N`, from 1.
std::size_t failing_index(const Error& error) {
  constexpr std::string_view kWhere = "character ";
  std::size_t number = 1;
  if (error.where().starts_with(kWhere)) {
    const std::string_view digits = std::string_view(error.where()).substr(kWhere.size());
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
  }
  return number - 1;
}

/// The middle of the cell that a grid finds under the name.
Attempt read_cell(const PlainText& name, const grid::Grid& grid, std::string_view in_words) {
  try {
    const grid::Cell cell = grid.cell(name.text());
    return understood(grid::label_point(cell),
                      fmt::format("{} {} ({}), its middle", in_words, cell.name, cell.level.name));
  } catch (const Error& error) {
    return wrong(name, failing_index(error), error.message(), error.hint());
  }
}

}  // namespace

Attempt read_gars(const PlainText& typed, const Options&) {
  const PlainText name = typed.without(" -");
  Cursor cursor(name.text());
  const std::size_t digits = cursor.take_digits().size();
  const std::size_t letters = cursor.take_letters().size();
  cursor.take_digits();
  if (digits != 3 || letters != 2 || !cursor.ended()) return not_mine();
  return read_cell(name, grid::gars_grid(), "GARS cell");
}

namespace {

Attempt read_quarter(const PlainText& typed, bool with_letters) {
  const PlainText name = typed.without(" ");
  Cursor cursor(name.text());
  const std::size_t latitude = cursor.take_digits().size();
  const bool lettered = !cursor.take_any("NS").empty();
  if (lettered != with_letters) return not_mine();
  if (latitude == 0 || latitude > 2 || cursor.take_any("/").size() != 1) return not_mine();
  if (cursor.take_digits().size() != 3) return not_mine();
  cursor.take_any("EW");
  const bool quarters = !cursor.take_letters().empty();
  if (!cursor.ended()) return not_mine();
  Attempt attempt = read_cell(name, grid::quarter_grid(), "one-degree grid cell");
  // Without quarters it is also a latitude and longitude, whose reader tells what is wrong with it.
  attempt.claimed = attempt.claimed && (quarters || attempt.readings() != nullptr);
  return attempt;
}

}  // namespace

Attempt read_plain_quarter(const PlainText& typed, const Options&) {
  return read_quarter(typed, false);
}

Attempt read_lettered_quarter(const PlainText& typed, const Options&) {
  return read_quarter(typed, true);
}

Attempt read_either_quarter(const PlainText& typed, const Options& options) {
  const Attempt plain = read_plain_quarter(typed, options);
  return plain.claimed ? plain : read_lettered_quarter(typed, options);
}

Attempt read_chart(const PlainText& typed, const Options& options) {
  const PlainText name = typed.without(" -");
  Cursor cursor(name.text());
  const std::size_t chart = cursor.take_letters().size();
  const std::size_t number = cursor.take_digits().size();
  cursor.take_letters();
  if (chart < 2 || chart > 4 || number == 0 || number > 3 || !cursor.ended()) return not_mine();
  const grid::Grid& charts = options.charts ? *options.charts : grid::chart_grid();
  Attempt attempt = read_cell(name, charts, "chart cell");
  const TextFailure* failure = attempt.failure();
  // Any letters and digits have this shape: it is a chart's when the sheet is known, or nearly.
  if (failure != nullptr && failure->character == name.character(0)) {
    attempt.claimed = failure->hint.starts_with("did you mean");
  }
  return attempt;
}

}  // namespace sweepwright::locate
