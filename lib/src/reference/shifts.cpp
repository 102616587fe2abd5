#include "reference/shifts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "reference/system_info.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::reference {
namespace {

/// WGS 84, latitude first.
constexpr const char* kWgs84Number = "4326";

std::vector<std::string> missing_grids(PJ_CONTEXT* context, const PJ* operation) {
  const ProjLibrary& proj = proj_library();
  std::vector<std::string> missing;
  const int count = proj.coordoperation_get_grid_used_count(context, operation);
  for (int i = 0; i < count; ++i) {
    const char* name = nullptr;
    int available = 0;
    proj.coordoperation_get_grid_used(context, operation, i, &name, nullptr, nullptr, nullptr,
                                      nullptr, nullptr, &available);
    if (!available && name) missing.emplace_back(name);
  }
  return missing;
}

Shift make_shift(PJ_CONTEXT* context, ProjObject operation) {
  const ProjLibrary& proj = proj_library();
  PJ* const raw = operation.get();
  const double accuracy = proj.coordoperation_get_accuracy(context, raw);
  return {.operation = std::move(operation),
          .name = proj.get_name(raw),
          .accuracy = accuracy < 0 ? std::nullopt : std::optional(Length::metres(accuracy)),
          .area = area_of_use(context, raw),
          .possible = proj.coordoperation_is_instantiable(context, raw) != 0,
          .guess = proj.coordoperation_has_ballpark_transformation(context, raw) != 0,
          .missing_grids = missing_grids(context, raw)};
}

/// One whose accuracy is not stated comes last.
bool is_better(const std::optional<Length>& a, const std::optional<Length>& b) {
  return a && (!b || *a < *b);
}

std::optional<Position> shifted(const Shift& shift, PJ_COORD coordinates) {
  if (!shift.possible) return std::nullopt;
  const auto result = transformed(shift.operation.get(), coordinates, PJ_FWD);
  if (!result || std::abs(result->v[0]) > 90) return std::nullopt;
  return Position::at(Angle::degrees(result->v[0]), Angle::degrees(result->v[1]));
}

}  // namespace

std::optional<PJ_COORD> transformed(PJ* operation, PJ_COORD coordinates, PJ_DIRECTION direction) {
  proj_library().errno_reset(operation);
  const PJ_COORD result = proj_library().trans(operation, direction, coordinates);
  if (!std::isfinite(result.v[0]) || !std::isfinite(result.v[1])) return std::nullopt;
  return result;
}

Shifts::Shifts(PJ_CONTEXT* context, const PJ* geographic_system)
    : name_(proj_library().get_name(geographic_system)) {
  const ProjObject wgs84 = find_system(context, kWgs84Number);
  const ProjList found = operations(context, geographic_system, wgs84.get());
  const int count = found ? proj_library().list_get_count(found.get()) : 0;
  for (int i = 0; i < count; ++i) {
    shifts_.push_back(
        make_shift(context, ProjObject(proj_library().list_get(context, found.get(), i))));
  }
  std::stable_sort(shifts_.begin(), shifts_.end(), [](const Shift& a, const Shift& b) {
    return is_better(a.accuracy, b.accuracy);
  });
}

std::optional<Position> Shifts::rough_place(PJ_COORD coordinates) const {
  for (const Shift& shift : shifts_) {
    if (const auto place = shifted(shift, coordinates)) return place;
  }
  return std::nullopt;
}

const Shift* Shifts::better_without_grid(Position place,
                                         const std::optional<Length>& accuracy) const {
  for (const Shift& shift : shifts_) {
    if (!is_better(shift.accuracy, accuracy)) return nullptr;
    if (!shift.missing_grids.empty() && contains(shift.area, place)) return &shift;
  }
  return nullptr;
}

ShiftedPlace Shifts::apply(PJ_COORD coordinates, Position place) const {
  std::optional<ShiftedPlace> best;
  Length farthest;  // of the other results from the best one
  for (const Shift& shift : shifts_) {
    if (shift.guess || !contains(shift.area, place)) continue;
    const std::optional<Position> position = shifted(shift, coordinates);
    if (!position) continue;
    if (best) {
      farthest = std::max(farthest, geodesic(best->position, *position).length);
    } else {
      best = ShiftedPlace{*position, shift.name, shift.accuracy, {}};
    }
  }
  if (!best) refuse(place);

  if (!best->accuracy) {
    best->warnings.push_back(
        fmt::format("The EPSG registry states no accuracy for the shift '{}'.", best->operation));
  }
  if (farthest > best->accuracy.value_or(Length())) {
    best->warnings.push_back(fmt::format(
        "Other shifts that the EPSG registry lists for this place end up to {:.0f} m away.",
        std::ceil(farthest.metres())));
  }
  if (const Shift* better = better_without_grid(place, best->accuracy)) {
    best->warnings.push_back(fmt::format(
        "The better shift '{}' ({:g} m) needs {}, which this computer does not have.", better->name,
        better->accuracy->metres(), fmt::join(better->missing_grids, ", ")));
  }
  return *best;
}

void Shifts::refuse(Position place) const {
  const std::string where = format_position(place, Notation::degrees_minutes, 0);
  constexpr std::string_view kOtherwise = "give the position in WGS 84 (EPSG:4326)";
  if (const Shift* shift = better_without_grid(place, std::nullopt)) {
    throw Error(ErrorCode::impossible,
                fmt::format("there is no accurate shift from {} to WGS 84 near {} on this computer",
                            name_, where),
                fmt::format("the shift '{}' needs {}: put it into the folder of PROJ's data; or {}",
                            shift->name, fmt::join(shift->missing_grids, ", "), kOtherwise));
  }
  throw Error(ErrorCode::impossible,
              fmt::format("the EPSG registry of this computer has no accurate shift from {} to "
                          "WGS 84 near {}",
                          name_, where),
              std::string(kOtherwise));
}

}  // namespace sweepwright::reference
