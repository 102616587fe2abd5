#include "common/elevation_option.hpp"

#include "common/option_value.hpp"
#include "sweepwright/terrain/doubts.hpp"

namespace sweepwright::cli {
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
      files, {optional_value("--dem-unit", unit, formats::parse_height_unit),
              optional_value("--dem-zone", zone, formats::parse_utm_zone)});
  for (std::string& doubt : terrain::doubts(read.model)) read.remarks.push_back(std::move(doubt));
  return read;
}

}  // namespace sweepwright::cli
