#include "reference/system_info.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::reference {
namespace {

constexpr std::string_view kPrefix = "EPSG:";
constexpr std::size_t kLongestNumber = 6;
constexpr std::string_view kHint =
    "give the number of a geographic or projected system in two dimensions: EPSG:4267 is NAD27, "
    "EPSG:27700 the British National Grid";

Error unfit(std::string message) {
  return Error(ErrorCode::value, std::move(message), std::string(kHint));
}

std::string_view kind_in_words(PJ_TYPE type) {
  switch (type) {
    case PJ_TYPE_GEOCENTRIC_CRS:
      return "a geocentric system";
    case PJ_TYPE_GEOGRAPHIC_3D_CRS:
    case PJ_TYPE_PROJECTED_CRS:
      return "a system in three dimensions";
    case PJ_TYPE_VERTICAL_CRS:
      return "a system of heights";
    case PJ_TYPE_COMPOUND_CRS:
      return "a system with heights";
    case PJ_TYPE_ENGINEERING_CRS:
      return "a system of one building site";
    default:
      return "a system of another kind";
  }
}

Axis describe_axis(PJ_CONTEXT* context, const PJ* coordinate_system, int index) {
  const char* name = nullptr;
  const char* direction = nullptr;
  const char* unit = nullptr;
  proj_library().cs_get_axis_info(context, coordinate_system, index, &name, nullptr, &direction,
                                  nullptr, &unit, nullptr, nullptr);
  return {name ? name : "", direction ? direction : "", unit ? unit : ""};
}

std::string in_words(const Axis& axis) {
  return fmt::format("{} ({}, {})", to_lower_ascii(axis.name), axis.unit, axis.direction);
}

}  // namespace

std::string registry_number(std::string_view code) {
  const std::string_view text = trimmed(code);
  const std::string_view number = text.substr(std::min(kPrefix.size(), text.size()));
  const bool has_prefix = to_upper_ascii(text.substr(0, kPrefix.size())) == kPrefix;
  if (!has_prefix || number.empty() || number.size() > kLongestNumber ||
      !std::all_of(number.begin(), number.end(), is_ascii_digit)) {
    throw Error(ErrorCode::value,
                fmt::format("'{}' is not the code of a reference system", printable(code)),
                "write EPSG: and a number, such as EPSG:4267");
  }
  return std::string(number);
}

ProjObject find_system(PJ_CONTEXT* context, const std::string& number) {
  ProjObject system(proj_library().create_from_database(context, "EPSG", number.c_str(),
                                                        PJ_CATEGORY_CRS, 0, nullptr));
  if (!system) {
    throw unfit(fmt::format("the EPSG registry of this computer has no reference system {}{}",
                            kPrefix, number));
  }
  return system;
}

SystemInfo describe(PJ_CONTEXT* context, const PJ* system, const std::string& number) {
  const ProjLibrary& proj = proj_library();
  SystemInfo info{
      .code = std::string(kPrefix) + number,
      .name = proj.get_name(system),
      .geographic = proj.get_type(system) == PJ_TYPE_GEOGRAPHIC_2D_CRS,
      .deprecated = proj.is_deprecated(system) != 0,
      .axes = {},
      .area = area_of_use(context, system),
      .software = fmt::format("PROJ {}, EPSG registry {}", proj.info().version,
                              proj.context_get_database_metadata(context, "EPSG.VERSION"))};
  const PJ_TYPE type = proj.get_type(system);
  const ProjObject axes(proj.crs_get_coordinate_system(context, system));
  const bool flat = axes && proj.cs_get_axis_count(context, axes.get()) == 2;
  if (!flat || !(info.geographic || type == PJ_TYPE_PROJECTED_CRS)) {
    throw unfit(fmt::format("{} ({}) is {}", info.code, info.name, kind_in_words(type)));
  }
  info.axes = {describe_axis(context, axes.get(), 0), describe_axis(context, axes.get(), 1)};
  return info;
}

Area area_of_use(PJ_CONTEXT* context, const PJ* object) {
  Area area;
  double west = 0;
  double south = 0;
  double east = 0;
  double north = 0;
  const char* name = nullptr;
  constexpr double kUnknown = -1000;  // as PROJ gives it
  if (proj_library().get_area_of_use(context, object, &west, &south, &east, &north, &name) &&
      south != kUnknown) {
    area = {name ? name : "", Angle::degrees(south), Angle::degrees(west), Angle::degrees(north),
            Angle::degrees(east)};
  }
  return area;
}

bool contains(const Area& area, Position position, Angle margin) {
  const Angle latitude = position.latitude();
  if (latitude < area.south - margin || latitude > area.north + margin) return false;
  // Longitudes are counted eastwards from the western edge, so that no edge is a special case.
  const double width = normalized_360(area.east - area.west).degrees() + 2 * margin.degrees();
  const bool whole_round = area.east - area.west >= Angle::degrees(360);
  const Angle from_west = normalized_360(position.longitude() - (area.west - margin));
  return whole_round || width >= 360 || from_west.degrees() <= width;
}

std::string axes_in_words(const SystemInfo& info) {
  return fmt::format("first {}, then {}", in_words(info.axes[0]), in_words(info.axes[1]));
}

}  // namespace sweepwright::reference
