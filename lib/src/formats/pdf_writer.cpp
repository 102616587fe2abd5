#include "sweepwright/formats/pdf_writer.hpp"

#include <cairo-pdf.h>

#include "formats/cairo_painter.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

std::string write_pdf(std::span<const Drawing> pages, const PdfDocument& document) {
  if (pages.empty()) throw Error(ErrorCode::value, "a document needs a page");
  std::string text;
  const CairoSurface surface(cairo_pdf_surface_create_for_stream(
      append, &text, pages[0].size.width_mm * kPointsPerMillimetre,
      pages[0].size.height_mm * kPointsPerMillimetre));
  cairo_surface_t* const pdf = surface.get();
  cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_TITLE, document.title.c_str());
  cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATOR, document.creator.c_str());
  const std::string created = format_utc(document.created);
  cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATE_DATE, created.c_str());
  {
    const CairoContext context(cairo_create(pdf));
    for (const Drawing& page : pages) {
      cairo_pdf_surface_set_size(pdf, page.size.width_mm * kPointsPerMillimetre,
                                 page.size.height_mm * kPointsPerMillimetre);
      paint(context.get(), page);
      cairo_show_page(context.get());
    }
  }
  cairo_surface_finish(pdf);
  check(cairo_surface_status(pdf));
  return text;
}

}  // namespace sweepwright::formats
