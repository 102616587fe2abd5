#include "common/elevation_option.hpp"

#include <fmt/format.h>

#include <array>

#include "common/option_value.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/terrain/doubts.hpp"

namespace sweepwright::cli {
namespace {

formats::HeightUnit parse_height_unit(const std::string& text) {
  constexpr std::array<std::string_view, 3> kUnits = {"m", "ft", "us-ft"};
  const std::string wanted = to_lower_ascii(text);
  if (wanted == kUnits[0]) return formats::HeightUnit::metre;
  if (wanted == kUnits[1]) return formats::HeightUnit::foot;
  if (wanted == kUnits[2]) return formats::HeightUnit::us_survey_foot;
  throw Error(ErrorCode::value, fmt::format("'{}' is no unit of heights", printable(text)),
              spelling_hint(text, kUnits));
}

}  // namespace

CLI::Option* ElevationOption::add_to(CLI::App& command, const std::string& name,
                                     const std::string& help) {
  CLI::Option* const option = command.add_option(name, files, help)->type_name("FILE");
  command.add_option("--dem-unit", unit, "Unit of all heights, whatever the files say")
      ->type_name("m|ft|us-ft");
  command.add_option("--dem-zone", zone, "UTM zone of files with metres that do not name it: 13N")
      ->type_name("ZONE");
  return option;
}

formats::ElevationFiles ElevationOption::read() const {
  formats::ElevationFiles read = formats::read_elevation_files(
      files, {optional_value("--dem-unit", unit, parse_height_unit),
              optional_value("--dem-zone", zone, formats::parse_utm_zone)});
  for (std::string& doubt : terrain::doubts(read.model)) read.remarks.push_back(std::move(doubt));
  return read;
}

}  // namespace sweepwright::cli
