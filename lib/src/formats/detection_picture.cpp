#include <cairo.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "formats/cairo_painter.hpp"
#include "sweepwright/formats/debrief_overlays.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kHighestLatitude = 85;
constexpr double kMetresPerDegree = 111'195;  // of latitude, on a sphere of the Earth's mean radius
constexpr std::size_t kLattice = 16;          // pixels between places that are worked out in full

/// WGS 84 in degrees, longitude first, as world files have it.
constexpr std::string_view kProjection =
    "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
    "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

struct Bounds {
  double west = 0;
  double east = 0;  ///< may be beyond 180
  double south = 90;
  double north = -90;
};

/// Of the raster's edge.
Bounds bounds_of(const debrief::CoverageFrame& frame) {
  Bounds bounds;
  const double middle = frame.plane.centre().longitude().degrees();
  double west = 0;
  double east = 0;
  constexpr int kSteps = 32;
  for (int i = 0; i <= kSteps; ++i) {
    for (int j = 0; j <= kSteps; ++j) {
      if (i % kSteps != 0 && j % kSteps != 0) continue;
      const double right = static_cast<double>(frame.columns) * i / kSteps;
      const double up = static_cast<double>(frame.rows) * j / kSteps;
      const Position place = frame.plane.to_position(
          {frame.corner.right + frame.cell * right, frame.corner.up + frame.cell * up});
      const double off =
          normalized_180(Angle::degrees(place.longitude().degrees() - middle)).degrees();
      west = std::min(west, off);
      east = std::max(east, off);
      bounds.south = std::min(bounds.south, place.latitude().degrees());
      bounds.north = std::max(bounds.north, place.latitude().degrees());
    }
  }
  bounds.west = middle + west;
  bounds.east = middle + east;
  return bounds;
}

/// The size of the picture, and where its upper left corner and its pixels lie.
struct Picture {
  std::size_t columns = 0;
  std::size_t rows = 0;
  double west = 0;
  double north = 0;
  double step_longitude = 0;
  double step_latitude = 0;

  /// A corner of pixels, on the raster in cells.
  std::pair<double, double> cell_at(const debrief::CoverageFrame& frame, double column,
                                    double row) const {
    const Position place =
        Position::at(Angle::degrees(std::clamp(north - row * step_latitude, -90.0, 90.0)),
                     Angle::degrees(west + column * step_longitude));
    const PlanePoint point = frame.plane.to_plane(place);
    return {(point.right - frame.corner.right) / frame.cell,
            (point.up - frame.corner.up) / frame.cell};
  }
};

Picture picture_of(const debrief::CoverageFrame& frame, const Bounds& bounds) {
  const double latitude = std::max(std::abs(bounds.south), std::abs(bounds.north));
  double step = frame.cell.metres() / kMetresPerDegree;
  const double narrow = std::max(0.05, std::cos(latitude * 0.017453292519943295));
  const double wanted =
      (bounds.north - bounds.south) / step * (bounds.east - bounds.west) / (step / narrow);
  if (wanted > static_cast<double>(kMostPicturePixels)) {
    step *= std::sqrt(wanted / static_cast<double>(kMostPicturePixels));
  }
  Picture picture;
  picture.west = bounds.west;
  picture.north = bounds.north;
  picture.step_latitude = step;
  picture.step_longitude = step / narrow;
  const auto count = [](double extent, double one) {
    return std::max<std::size_t>(1, static_cast<std::size_t>(std::floor(extent / one)));
  };
  picture.columns = count(bounds.east - bounds.west, picture.step_longitude);
  picture.rows = count(bounds.north - bounds.south, picture.step_latitude);
  return picture;
}

std::uint32_t pixel_of(double pod) {
  const Colour colour = ramp_colour(pod);
  constexpr std::uint32_t kOpacity = 200;
  const auto part = [](std::uint8_t value) { return std::uint32_t{value} * kOpacity / 255; };
  return (kOpacity << 24U) | (part(colour.red) << 16U) | (part(colour.green) << 8U) |
         part(colour.blue);
}

/// Fills one square of the lattice, places in it linear between its corners.
void fill(std::vector<std::uint32_t>& pixels, const Picture& picture,
          const debrief::Debriefing& found, std::size_t left, std::size_t top) {
  const debrief::CoverageFrame& frame = found.frame;
  const auto side = static_cast<double>(kLattice);
  const auto x = static_cast<double>(left);
  const auto y = static_cast<double>(top);
  const auto a = picture.cell_at(frame, x, y);
  const auto b = picture.cell_at(frame, x + side, y);
  const auto c = picture.cell_at(frame, x, y + side);
  const auto d = picture.cell_at(frame, x + side, y + side);
  for (std::size_t row = top; row < std::min(top + kLattice, picture.rows); ++row) {
    for (std::size_t column = left; column < std::min(left + kLattice, picture.columns); ++column) {
      const double u = (static_cast<double>(column - left) + 0.5) / side;
      const double v = (static_cast<double>(row - top) + 0.5) / side;
      const auto between = [&](double nw, double ne, double sw, double se) {
        return (nw * (1 - u) + ne * u) * (1 - v) + (sw * (1 - u) + se * u) * v;
      };
      const double right = std::floor(between(a.first, b.first, c.first, d.first));
      const double up = std::floor(between(a.second, b.second, c.second, d.second));
      if (right < 0 || up < 0 || right >= static_cast<double>(frame.columns) ||
          up >= static_cast<double>(frame.rows)) {
        continue;
      }
      const std::size_t cell =
          static_cast<std::size_t>(up) * frame.columns + static_cast<std::size_t>(right);
      pixels[row * picture.columns + column] = pixel_of(double{found.raster_pod[cell]});
    }
  }
}

cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

std::string png_of(std::vector<std::uint32_t>& pixels, const Picture& picture) {
  const int stride = static_cast<int>(picture.columns * sizeof(std::uint32_t));
  const CairoSurface surface(cairo_image_surface_create_for_data(
      reinterpret_cast<unsigned char*>(pixels.data()), CAIRO_FORMAT_ARGB32,
      static_cast<int>(picture.columns), static_cast<int>(picture.rows), stride));
  check(cairo_surface_status(surface.get()));
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes));
  return bytes;
}

}  // namespace

std::optional<RasterPicture> detection_picture(const debrief::Debriefing& found) {
  const Bounds bounds = bounds_of(found.frame);
  if (bounds.north > kHighestLatitude || bounds.south < -kHighestLatitude) return std::nullopt;
  const Picture picture = picture_of(found.frame, bounds);
  std::vector<std::uint32_t> pixels(picture.columns * picture.rows, 0);
  for (std::size_t top = 0; top < picture.rows; top += kLattice) {
    for (std::size_t left = 0; left < picture.columns; left += kLattice) {
      fill(pixels, picture, found, left, top);
    }
  }
  RasterPicture made;
  made.png = png_of(pixels, picture);
  // Steps, no turning, and the middle of the upper left pixel.
  made.world = fmt::format("{:.12f}\n0\n0\n{:.12f}\n{:.12f}\n{:.12f}\n", picture.step_longitude,
                           -picture.step_latitude, picture.west + picture.step_longitude / 2,
                           picture.north - picture.step_latitude / 2);
  made.projection = std::string(kProjection) + "\n";
  return made;
}

}  // namespace sweepwright::formats
