// Reads elevation models: SRTM .hgt, DTED, GeoTIFF and Esri ASCII, any number of files as one
// model.
//
// Problem: elevation files seldom state the unit of their heights, and a model in feet that is
//   taken for metres, or the other way, is off by more than three times. What a file states is
//   used, what it does not state is said in a remark, and terrain/doubts.hpp tells what looks
//   wrong.
// Conventions: the form is told by the content; `.hgt`, which has no header, by its name. Each
//   file is read once.
// Domain: files up to kLargestElevationBytes. WGS 84 or a reference system within metres of it.
// Errors: Error(unreadable), Error(input) and Error(value) with path and place in where().
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::formats {

/// A 1 arc-second tile is 26 MB; an ASCII grid of the same heights 90 MB.
inline constexpr std::size_t kLargestElevationBytes = 1'000'000'000;

enum class HeightUnit { metre, foot, us_survey_foot };
/// `m`, `ft`, `us-ft`.
HeightUnit parse_height_unit(std::string_view text);

struct UtmZone {
  int zone = 1;
  terrain::Hemisphere hemisphere = terrain::Hemisphere::north;
};

/// `13N`, `60S`: zone and hemisphere (not the latitude band of an MGRS name).
UtmZone parse_utm_zone(std::string_view text);

/// What the user knows and the files may not say.
struct ElevationOptions {
  std::optional<HeightUnit> unit;  ///< of all heights, whatever the files say
  std::optional<UtmZone> zone;     ///< of files with metres and without reference system
};

/// What one file holds, heights in the unit of the file.
struct ElevationReading {
  terrain::ElevationTile tile;
  std::optional<HeightUnit> unit;    ///< as the file or its form states it
  std::vector<std::string> remarks;  ///< how the odd things were read
};

/// `name`: of the file, for its ending and messages.
ElevationReading parse_elevation(std::string_view bytes, std::string_view name,
                                 const ElevationOptions& options = {});

struct ElevationFiles {
  terrain::ElevationModel model;
  std::vector<InputDigest> digests;
  std::vector<std::string> remarks;  ///< with the file in front
};

ElevationFiles read_elevation_files(const std::vector<std::string>& paths,
                                    const ElevationOptions& options = {});

/// The same for files that somebody else finds by their names.
ElevationFiles load_elevation_files(const std::vector<std::string>& names,
                                    const ElevationOptions& options, const BytesLoader& load);

}  // namespace sweepwright::formats
