#include "sweepwright/sweep/sweep_width.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweep/correction.hpp"
#include "sweep/interpolation.hpp"
#include "sweep/width_lookup.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/sweep/search_object.hpp"

namespace sweepwright::sweep {
namespace {

constexpr std::string_view kFromMemory =
    "Sweep width rests on tables from memory, unconfirmed: check it against your manual";

void check(bool fine, std::string_view what, std::string_view expected) {
  if (fine) return;
  throw Error(ErrorCode::value, fmt::format("the {} cannot be used, expected {}", what, expected));
}

// Comparisons with NaN are false, so these refuse it.
template <typename Quantity>
bool above_zero(const std::optional<Quantity>& value) {
  return !value || *value > Quantity();
}

template <typename Quantity>
bool not_negative(const std::optional<Quantity>& value) {
  return !value || *value >= Quantity();
}

void check_request(const Request& request) {
  check(above_zero(request.visibility), "visibility", "more than 0");
  check(above_zero(request.height), "search height", "more than 0");
  check(above_zero(request.ground_speed), "ground speed", "more than 0");
  check(above_zero(request.uncorrected), "uncorrected sweep width", "more than 0");
  check(not_negative(request.wind), "wind speed", "0 or more");
  check(not_negative(request.sea), "sea height", "0 or more");
}

const WidthTable& width_table(const Tables& tables, Platform platform, const SearchObject& object) {
  for (const WidthTable& table : tables.widths) {
    const bool serves = std::count(table.platforms.begin(), table.platforms.end(), platform) > 0;
    if (table.surface == object.surface && serves) return table;
  }
  throw Error(
      ErrorCode::impossible,
      fmt::format("no sweep width table covers a {} search for '{}' on {}", name(platform),
                  printable(object.name), name(object.surface)),
      platform == Platform::ground_team
          ? "give the team's range of detection, or a sweep width of your own"
          : "take the uncorrected sweep width from your own manual and give it, or give a table of "
            "your own");
}

void add_caution(SweepWidth& result, std::string_view caution) {
  if (caution.empty()) return;
  std::vector<std::string>& cautions = result.cautions;
  if (std::count(cautions.begin(), cautions.end(), caution) == 0) cautions.emplace_back(caution);
}

void find_uncorrected(const Request& request, const SearchObject& object, const Tables& tables,
                      SweepWidth& result) {
  if (request.uncorrected) {
    result.uncorrected = *request.uncorrected;
    result.working.push_back({"Uncorrected sweep width", "given by the planner",
                              format_value(request.uncorrected->nautical_miles()) + " NM",
                              request.uncorrected_source});
    return;
  }
  const WidthTable& table = width_table(tables, request.platform, object);
  TableWidth found = look_up_width(table, {object.name, request.visibility, request.height});
  if (found.width <= Length()) {
    throw Error(
        ErrorCode::impossible,
        fmt::format("the table gives a sweep width of 0 for '{}': this search would not find "
                    "it",
                    printable(object.name)));
  }
  result.uncorrected = found.width;
  result.working.insert(result.working.end(), found.working.begin(), found.working.end());
  if (table.info.status == TableStatus::from_memory) add_caution(result, kFromMemory);
  if (request.height && !table.rows.front().height) {
    result.working.push_back({"Height", "not used: the table has no heights", "", ""});
  }
}

std::vector<Correction> corrections(const Request& request, const SearchObject& object,
                                    const Tables& tables) {
  std::vector<Correction> result;
  if (object.surface == Surface::land) {
    result.push_back(terrain_correction(request, object.name, tables.terrain));
  } else {
    result.push_back(weather_correction(request, object.name, tables));
    if (flies(request.platform)) {
      result.push_back(speed_correction(request, object.name, tables.speed));
    }
  }
  result.push_back(fatigue_correction(request.fatigued));
  return result;
}

/// What was given and has no place in the manuals' rule for this search.
void add_remarks(const Request& request, Surface surface, Working& working) {
  if (surface == Surface::land && (request.wind || request.sea)) {
    working.push_back(
        {"Wind and sea", "not used: the manuals have no weather factor over land", "", ""});
  }
  if (surface == Surface::land && request.ground_speed) {
    working.push_back({"Ground speed",
                       "not used: the manuals' speed factors are for objects on "
                       "water",
                       "", ""});
  }
  if (surface == Surface::water && request.ground_speed && !flies(request.platform)) {
    working.push_back({"Speed", "not used: the manuals' speed factors are for aircraft", "", ""});
  }
  if (surface == Surface::water && request.terrain) {
    working.push_back({"Terrain", "not used over water", "", ""});
  }
}

}  // namespace

SweepWidth sweep_width(const Request& request, const Tables& tables) {
  check_request(request);
  const SearchObject object = parse_search_object(request.object, tables);
  SweepWidth result;
  result.working.push_back(
      {"Search",
       fmt::format("{} for '{}' on {}", name(request.platform), object.name, name(object.surface)),
       "", ""});
  find_uncorrected(request, object, tables, result);

  result.width = result.uncorrected;
  std::string product = format_value(result.uncorrected.nautical_miles()) + " NM";
  for (const Correction& each : corrections(request, object, tables)) {
    result.working.push_back(each.line);
    result.width = result.width * *each.line.factor;
    product += " x " + each.line.value;
    add_caution(result, each.caution);
    if (each.from_memory) add_caution(result, kFromMemory);
  }
  add_remarks(request, object.surface, result.working);
  if (!(result.width > Length()) || !std::isfinite(result.width.metres())) {
    throw Error(ErrorCode::impossible,
                fmt::format("the sweep width comes out as {} NM", result.width.nautical_miles()));
  }
  result.working.push_back(
      {"Sweep width", product, format_value(result.width.nautical_miles()) + " NM", ""});
  return result;
}

SweepWidth given_sweep_width(Length width, std::string_view source) {
  check(width > Length() && std::isfinite(width.metres()), "sweep width", "more than 0");
  return {width,
          width,
          {{"Sweep width", "given by the planner", working_length(width), std::string(source)}},
          {}};
}

}  // namespace sweepwright::sweep
