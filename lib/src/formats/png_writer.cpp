#include "sweepwright/formats/png_writer.hpp"

#include <fmt/format.h>

#include <cmath>

#include "formats/cairo_painter.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

std::string write_png(const Drawing& drawing, double pixels_per_mm) {
  constexpr double kMost = 50;
  if (!(pixels_per_mm > 0 && pixels_per_mm <= kMost)) {
    throw Error(ErrorCode::value,
                fmt::format("{} pixels in a millimetre are not above 0 and at most {}",
                            pixels_per_mm, kMost));
  }
  const auto pixels = [&](double length_mm) {
    return static_cast<int>(std::lround(length_mm * pixels_per_mm));
  };
  const CairoSurface surface(cairo_image_surface_create(
      CAIRO_FORMAT_RGB24, pixels(drawing.size.width_mm), pixels(drawing.size.height_mm)));
  check(cairo_surface_status(surface.get()));
  const CairoContext context(cairo_create(surface.get()));
  cairo_set_source_rgb(context.get(), 1, 1, 1);
  cairo_paint(context.get());
  const double scale = pixels_per_mm / kPointsPerMillimetre;
  cairo_scale(context.get(), scale, scale);
  paint(context.get(), drawing);
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), append, &bytes));
  return bytes;
}

}  // namespace sweepwright::formats
