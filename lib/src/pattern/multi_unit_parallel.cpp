#include "sweepwright/pattern/multi_unit_parallel.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "pattern/ladder_rows.hpp"
#include "pattern/require.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {
namespace {

void require_in_range(const TeamPlace& place) {
  if (place.units < 2 || place.units > kMostUnits) {
    throw Error(ErrorCode::value, fmt::format("{} units cannot share a pattern", place.units),
                fmt::format("give 2 to {} units", kMostUnits));
  }
  if (place.unit < 1 || place.unit > place.units) {
    throw Error(ErrorCode::value, fmt::format("there is no unit {} of {}", place.unit, place.units),
                fmt::format("give a unit from 1 to {}", place.units));
  }
}

std::vector<LadderRow> rows_of_unit(const std::vector<LadderRow>& rows, const TeamPlace& place) {
  const auto units = static_cast<std::size_t>(place.units);
  const std::size_t index = static_cast<std::size_t>(place.unit) - 1;
  std::vector<LadderRow> own;
  if (place.formation == Formation::abreast) {
    for (std::size_t row = index; row < rows.size(); row += units) own.push_back(rows[row]);
    return own;
  }
  // Blocks as even as can be; the first ones are a row longer when the rows do not divide.
  const std::size_t each = rows.size() / units;
  const std::size_t longer = rows.size() % units;
  const std::size_t first = index * each + std::min(index, longer);
  const std::size_t count = each + (index < longer ? 1 : 0);
  for (std::size_t row = first; row < first + count; ++row) own.push_back(rows[row]);
  return own;
}

Pattern shared(LadderRows ladder, Turn first_turn, const TeamPlace& place) {
  require_in_range(place);
  if (joined_rows(ladder.rows).empty()) throw no_leg_fits(ladder.spacing);
  Pattern pattern{Kind::multi_unit, ladder.spacing, first_turn,
                  joined_rows(rows_of_unit(ladder.rows, place)), std::move(ladder.remarks)};
  if (pattern.legs.empty()) {
    throw Error(ErrorCode::impossible,
                fmt::format("no leg is left for unit {} of {}: the pattern has {} in all",
                            place.unit, place.units, ladder.rows.size()),
                "give fewer units or a closer track spacing");
  }
  pattern.remarks.push_back(fmt::format(
      "unit {} of {}: {}", place.unit, place.units,
      place.formation == Formation::abreast
          ? fmt::format("abreast, own legs {} apart",
                        format_length(ladder.spacing * place.units, LengthUnit::nautical_mile, 2))
          : "in a block of its own; all units start together on the same way"));
  return pattern;
}

}  // namespace

Formation parse_formation(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "abreast") return Formation::abreast;
  if (lower == "staggered") return Formation::staggered;
  throw Error(ErrorCode::value, fmt::format("'{}' is no formation", printable(name)),
              "write abreast (side by side) or staggered (each in a block of its own)");
}

Pattern make_multi_unit_parallel(const LadderFromStart& request, const TeamPlace& place) {
  return shared(ladder_rows(request), request.first_turn, place);
}

Pattern make_multi_unit_parallel(const Region& region, const RegionPatternOptions& options,
                                 const TeamPlace& place) {
  const LadderInRegion ladder = ladder_in_region(region, options, sector::long_side(region));
  return shared(ladder_rows(ladder), ladder.first_turn, place);
}

}  // namespace sweepwright::pattern
