#include "sweepwright/formats/elevation_reader.hpp"

#include <fmt/format.h>

#include <array>

#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/dted_reader.hpp"
#include "sweepwright/formats/esri_ascii_reader.hpp"
#include "sweepwright/formats/geotiff_reader.hpp"
#include "sweepwright/formats/hgt_reader.hpp"

namespace sweepwright::formats {
namespace {

// NIST SP 811, appendix B: the US survey foot is 1200/3937 m.
constexpr double kMetresPerUsSurveyFoot = 1200.0 / 3937.0;

double metres_per(HeightUnit unit) {
  switch (unit) {
    case HeightUnit::foot:
      return kMetresPerFoot;
    case HeightUnit::us_survey_foot:
      return kMetresPerUsSurveyFoot;
    case HeightUnit::metre:
      break;
  }
  return 1;
}

/// Turns the heights into metres, by the user's word, else the file's; else metres, with a remark.
void to_metres(ElevationReading& reading, const ElevationOptions& options) {
  if (!options.unit && !reading.unit) {
    reading.remarks.push_back("the file does not state the unit of its heights: read as metres");
  }
  const double factor = metres_per(options.unit.value_or(reading.unit.value_or(HeightUnit::metre)));
  if (factor == 1) return;
  for (float& height : reading.tile.heights_m) {
    height = static_cast<float>(static_cast<double>(height) * factor);
  }
}

bool is_hgt_name(std::string_view name) {
  return to_lower_ascii(name).ends_with(".hgt");
}

bool is_esri_ascii(std::string_view bytes) {
  const std::string start = to_lower_ascii(trimmed(bytes.substr(0, 100)));
  return start.starts_with("ncols") || start.starts_with("nrows");
}

}  // namespace

UtmZone parse_utm_zone(std::string_view text) {
  const std::string shown = to_upper_ascii(trimmed(text));
  if (shown.empty() || (shown.back() != 'N' && shown.back() != 'S')) {
    throw Error(ErrorCode::value, fmt::format("'{}' is no UTM zone", printable(text)),
                "write the zone and N or S for the hemisphere, such as 13N");
  }
  return {parse_whole_number(shown.substr(0, shown.size() - 1), 1, 60, "the zone"),
          shown.back() == 'N' ? terrain::Hemisphere::north : terrain::Hemisphere::south};
}

ElevationReading parse_elevation(std::string_view bytes, std::string_view name,
                                 const ElevationOptions& options) {
  if (is_hgt_name(name)) return parse_hgt(bytes, name);
  if (is_dted(bytes)) return parse_dted(bytes, name);
  if (is_tiff(bytes)) return parse_geotiff(bytes, name);
  if (is_esri_ascii(bytes)) return parse_esri_ascii(bytes, name, options);
  throw Error(ErrorCode::input, "this is no elevation model that can be read here",
              "SRTM .hgt, DTED, GeoTIFF and Esri ASCII grids are read");
}

HeightUnit parse_height_unit(std::string_view text) {
  constexpr std::array<std::string_view, 3> kUnits = {"m", "ft", "us-ft"};
  const std::string wanted = to_lower_ascii(text);
  if (wanted == kUnits[0]) return HeightUnit::metre;
  if (wanted == kUnits[1]) return HeightUnit::foot;
  if (wanted == kUnits[2]) return HeightUnit::us_survey_foot;
  throw Error(ErrorCode::value, fmt::format("'{}' is no unit of heights", printable(text)),
              spelling_hint(text, kUnits));
}

ElevationFiles read_elevation_files(const std::vector<std::string>& paths,
                                    const ElevationOptions& options) {
  return load_elevation_files(paths, options, [](const std::string& path) {
    return read_binary_file(path, kLargestElevationBytes);
  });
}

ElevationFiles load_elevation_files(const std::vector<std::string>& names,
                                    const ElevationOptions& options, const BytesLoader& load) {
  ElevationFiles files;
  std::vector<terrain::ElevationTile> tiles;
  for (const std::string& path : names) {
    InputBytes input = load(path);
    try {
      ElevationReading reading = parse_elevation(input.bytes, path, options);
      to_metres(reading, options);
      terrain::check(reading.tile);
      for (const std::string& remark : reading.remarks) {
        files.remarks.push_back(fmt::format("{}: {}", path, remark));
      }
      tiles.push_back(std::move(reading.tile));
    } catch (const Error& error) {
      throw error.at(shown_path(path));
    }
    files.digests.push_back(std::move(input.digest));
  }
  files.model = terrain::ElevationModel(std::move(tiles));
  return files;
}

}  // namespace sweepwright::formats
