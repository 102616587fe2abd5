#include "sweepwright/reference/system.hpp"

#include <fmt/format.h>

#include <cmath>

#include "reference/proj_library.hpp"
#include "reference/shifts.hpp"
#include "reference/system_info.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::reference {
namespace {

/// From a projected system to the geographic one below it; nothing for a geographic system.
ProjObject make_projection(PJ_CONTEXT* context, const PJ* system, const PJ* geographic) {
  if (proj_library().get_type(system) == PJ_TYPE_GEOGRAPHIC_2D_CRS) return nullptr;
  const ProjList found = operations(context, system, geographic);
  if (!found || proj_library().list_get_count(found.get()) == 0) return nullptr;
  return ProjObject(proj_library().list_get(context, found.get(), 0));
}

}  // namespace

class System::Implementation {
 public:
  explicit Implementation(const std::string& number)
      : context_(make_context()),
        system_(find_system(context_.get(), number)),
        info_(describe(context_.get(), system_.get(), number)),
        geographic_(proj_library().crs_get_geodetic_crs(context_.get(), system_.get())),
        projection_(make_projection(context_.get(), system_.get(), geographic_.get())),
        shifts_(context_.get(), geographic_.get()) {
    if (!info_.geographic && !projection_) {
      throw Error(ErrorCode::impossible,
                  fmt::format("PROJ cannot do the projection of {} ({})", info_.code, info_.name),
                  "give the position in another system");
    }
  }

  const SystemInfo& info() const { return info_; }

  Conversion to_wgs84(Coordinates coordinates) const {
    const PJ_COORD geographic = unprojected(coordinates);
    const std::optional<Position> place = shifts_.rough_place(geographic);
    if (!place) throw no_such_place(coordinates, "");
    if (!contains(info_.area, *place, kAreaMargin)) {
      throw no_such_place(coordinates,
                          fmt::format(" (it is used in: {})", printable(info_.area.name)));
    }
    ShiftedPlace shifted = shifts_.apply(geographic, *place);
    Conversion result{shifted.position, shifted.accuracy, shifted.operation, {}};
    if (!contains(info_.area, *place)) {
      result.warnings.push_back(
          fmt::format("The position lies outside the area where {} is used: {}", info_.code,
                      printable(info_.area.name)));
    }
    if (info_.deprecated) {
      result.warnings.push_back(fmt::format(
          "The EPSG registry has withdrawn {} ({}): check the code.", info_.code, info_.name));
    }
    result.warnings.insert(result.warnings.end(), shifted.warnings.begin(), shifted.warnings.end());
    return result;
  }

 private:
  PJ_COORD unprojected(Coordinates coordinates) const {
    PJ_COORD result{};
    result.v[0] = coordinates.first;
    result.v[1] = coordinates.second;
    result.v[3] = HUGE_VAL;  // no time
    if (!std::isfinite(coordinates.first) || !std::isfinite(coordinates.second)) {
      throw no_such_place(coordinates, "");
    }
    if (!projection_) return result;
    const auto found = transformed(projection_.get(), result, PJ_FWD);
    if (!found) throw no_such_place(coordinates, "");
    return *found;
  }

  Error no_such_place(Coordinates coordinates, std::string_view why) const {
    return Error(ErrorCode::value,
                 fmt::format("{} ({}) has no place at {}, {}{}", info_.code, info_.name,
                             coordinates.first, coordinates.second, why),
                 "check the numbers, their order and units: " + axes_in_words(info_));
  }

  ProjContext context_;  // first, so that it goes last
  ProjObject system_;
  SystemInfo info_;
  ProjObject geographic_;
  ProjObject projection_;
  Shifts shifts_;
};

System::System(std::string_view code)
    : implementation_(std::make_shared<const Implementation>(registry_number(code))) {}

const SystemInfo& System::info() const {
  return implementation_->info();
}

Conversion System::to_wgs84(Coordinates coordinates) const {
  return implementation_->to_wgs84(coordinates);
}

}  // namespace sweepwright::reference
