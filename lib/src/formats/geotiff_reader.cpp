#include "sweepwright/formats/geotiff_reader.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

#include "formats/tiff_image.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::uint32_t kPixelScaleTag = 33550;
constexpr std::uint32_t kTiePointsTag = 33922;
constexpr std::uint32_t kTransformationTag = 34264;
constexpr double kMostHeight = 100'000;

/// Keys of the directory that have their value in it.
enum Key : std::uint16_t {
  kModelType = 1024,
  kRasterType = 1025,
  kGeographicSystem = 2048,
  kAngularUnit = 2054,
  kProjectedSystem = 3072,
  kLinearUnit = 3076,
  kVerticalSystem = 4096,
  kVerticalUnit = 4099,
};

constexpr int kProjectedModel = 1;
constexpr int kGeographicModel = 2;
constexpr int kPixelIsPoint = 2;
constexpr int kWgs84 = 4326;
constexpr int kNad83 = 4269;
constexpr int kWgs84InSpace = 4979;
constexpr int kDegree = 9102;
constexpr int kMetre = 9001;
constexpr int kFoot = 9002;
constexpr int kUsSurveyFoot = 9003;

[[noreturn]] void fail(std::string message, std::string hint = {}) {
  throw Error(ErrorCode::input, std::move(message), std::move(hint));
}

/// Section 7.1.1: four numbers head the directory, and four make each entry: key, tag that holds
/// the value (0: none), count, value.
std::map<int, int> keys_of(const TiffImage& image) {
  const std::vector<std::uint16_t> directory = image.keys();
  if (directory.empty()) {
    fail("this TIFF does not say where it lies on the Earth", "a GeoTIFF is wanted");
  }
  std::map<int, int> keys;
  for (std::size_t i = 4; i + 3 < directory.size(); i += 4) {
    if (directory[i + 1] == 0) keys.emplace(directory[i], directory[i + 3]);
  }
  return keys;
}

std::optional<UtmZone> utm_zone_of(int code) {
  using terrain::Hemisphere;
  if (code >= 32601 && code <= 32660) return UtmZone{code - 32600, Hemisphere::north};
  if (code >= 32701 && code <= 32760) return UtmZone{code - 32700, Hemisphere::south};
  if (code >= 26901 && code <= 26923) return UtmZone{code - 26900, Hemisphere::north};
  return std::nullopt;
}

class GeoTiffReader {
 public:
  GeoTiffReader(std::string_view bytes, std::string_view name)
      : image_(bytes), keys_(keys_of(image_)) {
    reading_.tile.source = std::string(name);
  }

  ElevationReading read() {
    terrain::ElevationTile& tile = reading_.tile;
    if (image_.width() > terrain::kMostRows || image_.height() > terrain::kMostRows) {
      fail(fmt::format("the image has {} rows of {} numbers: too many", image_.height(),
                       image_.width()));
    }
    tile.rows = static_cast<int>(image_.height());
    tile.columns = static_cast<int>(image_.width());
    tile.posts =
        key(kRasterType) == kPixelIsPoint ? terrain::PostKind::point : terrain::PostKind::area;
    tile.lattice = lattice();
    read_vertical();
    read_heights();
    return std::move(reading_);
  }

 private:
  std::optional<int> key(Key wanted) const {
    const auto found = keys_.find(wanted);
    if (found == keys_.end()) return std::nullopt;
    return found->second;
  }

  terrain::Lattice lattice() const {
    const std::vector<double> scale = image_.doubles(kPixelScaleTag);
    const std::vector<double> tie = image_.doubles(kTiePointsTag);
    if (!image_.doubles(kTransformationTag).empty() || scale.size() < 2 || tie.size() != 6) {
      fail("the image is not laid on the ground by one tie point and a scale",
           "turn it so that north is up, without rotation");
    }
    // A tie point is a corner of pixel (0, 0) when pixels are areas, and its middle when they are
    // points.
    const double half = reading_.tile.posts == terrain::PostKind::area ? 0.5 : 0;
    const double west = tie[3] + (half - tie[0]) * scale[0];
    const double north = tie[4] - (half - tie[1]) * scale[1];
    if (key(kModelType) == kGeographicModel) return geographic(north, west, scale);
    if (key(kModelType) == kProjectedModel) return projected(north, west, scale);
    fail("the image is neither geographic nor projected");
  }

  terrain::Lattice geographic(double north, double west, const std::vector<double>& scale) const {
    const int system = key(kGeographicSystem).value_or(0);
    if (system != kWgs84 && system != kNad83) {
      fail(fmt::format("positions are in the reference system EPSG:{}", system),
           "turn the model into WGS 84 first");
    }
    if (key(kAngularUnit).value_or(kDegree) != kDegree) fail("positions are not in degrees");
    return terrain::GeographicLattice{Angle::degrees(north), Angle::degrees(west),
                                      Angle::degrees(scale[1]), Angle::degrees(scale[0])};
  }

  terrain::Lattice projected(double north, double west, const std::vector<double>& scale) const {
    const int system = key(kProjectedSystem).value_or(0);
    const std::optional<UtmZone> zone = utm_zone_of(system);
    if (!zone) {
      fail(fmt::format("positions are in the projection EPSG:{}", system),
           "UTM on WGS 84 or NAD 83 is read: turn the model into that, or into degrees");
    }
    if (key(kLinearUnit).value_or(kMetre) != kMetre) fail("positions are not in metres");
    return terrain::UtmLattice{
        zone->zone,           zone->hemisphere,         Length::metres(north),
        Length::metres(west), Length::metres(scale[1]), Length::metres(scale[0])};
  }

  void read_vertical() {
    const int unit = key(kVerticalUnit).value_or(0);
    if (unit == kMetre) reading_.unit = HeightUnit::metre;
    if (unit == kFoot) reading_.unit = HeightUnit::foot;
    if (unit == kUsSurveyFoot) reading_.unit = HeightUnit::us_survey_foot;
    const int system = key(kVerticalSystem).value_or(0);
    // GeoTIFF 1.0 section 6.3.4.1: 5001 to 5033 are heights above ellipsoids; EPSG:4979 is the
    // three-dimensional WGS 84.
    if ((system >= 5001 && system <= 5033) || system == kWgs84InSpace) {
      fail(
          fmt::format("heights are above an ellipsoid (EPSG:{}), not above mean sea level", system),
          "the two differ by up to 100 m: turn the model into heights above the geoid");
    }
    const std::map<int, std::string> known = {{5773, "mean sea level (EGM96)"},
                                              {3855, "mean sea level (EGM2008)"},
                                              {5703, "mean sea level (NAVD 88)"}};
    const auto found = known.find(system);
    if (found != known.end()) {
      reading_.tile.vertical_reference = found->second;
    } else if (system != 0) {
      reading_.tile.vertical_reference = fmt::format("EPSG:{}", system);
    }
  }

  void read_heights() {
    reading_.tile.heights_m = image_.numbers();
    const std::string text = image_.gap();
    std::optional<float> gap;
    if (!text.empty() && to_lower_ascii(text) != "nan") {
      gap = static_cast<float>(gap_number(text));
    }
    for (float& height : reading_.tile.heights_m) {
      if (gap && height == *gap) {
        height = std::numeric_limits<float>::quiet_NaN();
      } else if (std::abs(height) > kMostHeight) {
        fail(fmt::format("{} is no height of ground", height),
             "is it a gap that the file does not name?");
      }
    }
    if (text.empty()) {
      reading_.remarks.push_back("the file names no gap: no height was taken for one");
    }
  }

  static double gap_number(const std::string& text) {
    double value = 0;
    const auto [stop, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc() || stop == text.data()) {
      fail(fmt::format("the gap '{}' is no number", printable(text)));
    }
    return value;
  }

  TiffImage image_;
  std::map<int, int> keys_;
  ElevationReading reading_;
};

}  // namespace

bool is_tiff(std::string_view bytes) {
  using namespace std::string_view_literals;
  for (const std::string_view start : {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv}) {
    if (bytes.starts_with(start)) return true;
  }
  return false;
}

ElevationReading parse_geotiff(std::string_view bytes, std::string_view name) {
  return GeoTiffReader(bytes, name).read();
}

}  // namespace sweepwright::formats
