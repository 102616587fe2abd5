// Paints a Drawing with cairo and sets its texts with pango; private to the formats room.
//
// Conventions: a Painter writes to one surface of cairo, whose unit is the point (1/72 inch). Texts
//   stand on the fonts of the machine, the first of kSheetFonts that is there; hinting is off, so
//   that a text is as wide on paper as it was measured.
#pragma once

#include <pango/pangocairo.h>

#include <memory>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

inline constexpr double kPointsPerMillimetre = 72 / 25.4;

/// The fonts of sheets and maps, the first that is there.
inline constexpr const char* kSheetFonts =
    "Liberation Sans,Arial,Helvetica,DejaVu Sans Condensed,DejaVu Sans,sans-serif";

struct CairoDeleter {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using CairoSurface = std::unique_ptr<cairo_surface_t, CairoDeleter>;
using CairoContext = std::unique_ptr<cairo_t, CairoDeleter>;

struct GObjectDeleter {
  void operator()(void* object) const { g_object_unref(object); }
};
using PangoLayoutPointer = std::unique_ptr<PangoLayout, GObjectDeleter>;

/// An empty layout for texts of a size in points, on the surface of `context`.
PangoLayoutPointer make_layout(cairo_t* context, double size_points, bool bold);

/// Throws Error(unwritable) when cairo could not do what it was told.
void check(cairo_status_t status);

/// Paints the drawing with its top left corner at cairo's origin. Throws Error(unwritable).
void paint(cairo_t* context, const Drawing& drawing);

}  // namespace sweepwright::formats
