// Reads each kind of data table into its value.
#pragma once

#include "sweep/data_table.hpp"
#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::sweep {

inline constexpr std::string_view kWidthKind = "sweep width";
inline constexpr std::string_view kWeatherKind = "weather factor";
inline constexpr std::string_view kTerrainKind = "terrain factor";
inline constexpr std::string_view kSpeedKind = "speed factor";
inline constexpr std::string_view kObjectsKind = "search objects";

WidthTable read_width_table(const DataTable& data);
WeatherTable read_weather_table(const DataTable& data);
TerrainTable read_terrain_table(const DataTable& data);
SpeedTable read_speed_table(const DataTable& data);
std::vector<ObjectAliases> read_object_aliases(const DataTable& data);

}  // namespace sweepwright::sweep
