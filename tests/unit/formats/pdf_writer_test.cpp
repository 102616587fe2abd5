// PDF and PNG of a drawing, read back with poppler and by the PNG signature of ISO/IEC 15948.
#include "sweepwright/formats/pdf_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "outside_tools.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/png_writer.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Drawing drawing(PaperSize size, const std::string& words) {
  Drawing drawing;
  drawing.size = size;
  Text text;
  text.at = {50, 30};
  text.text = words;
  text.halo_mm = 0.4;
  Shape shape;
  shape.rings = {{{10, 10}, {90, 10}, {90, 60}, {10, 60}}};
  shape.outline = Stroke{kBlack, 0.3, {2, 1}};
  shape.hatch = Hatch{kBlack, 0.1, 2, 30};
  drawing.elements = {{shape}, {Disc{{20, 20}, 3, {}, kBlack}}, {text}};
  return drawing;
}

PdfDocument document() {
  return {"A <b>&\"( title", "Sweepwright 0.1.0",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(11)};
}

TEST(PdfWriter, PagesHaveTheirSizesAndTexts) {
  const std::vector<Drawing> pages{drawing({210, 297}, "Sector <b>&\" Äльфа"),
                                   drawing({148, 210}, "second page")};
  const std::string pdf = write_pdf(pages, document());
  const std::string info = test::pdfinfo(pdf);
  EXPECT_THAT(info, HasSubstr("Pages:           2"));
  EXPECT_THAT(info, HasSubstr("595.276 x 841.89 pts (A4)"));  // 210 mm x 72 / 25.4
  EXPECT_THAT(info, HasSubstr("A <b>&\"( title"));
  EXPECT_THAT(info, HasSubstr("Tue Jul 14 11:00:00 2026 UTC"));
  const std::string text = test::pdftotext(pdf);
  EXPECT_THAT(text, HasSubstr("Sector <b>&\" Äльфа"));
  EXPECT_THAT(text, HasSubstr("second page"));
}

TEST(PdfWriter, SameDrawingsSameBytes) {
  const std::vector<Drawing> pages{drawing({210, 297}, "again")};
  EXPECT_EQ(write_pdf(pages, document()), write_pdf(pages, document()));
  EXPECT_EQ(write_png(pages[0], 4), write_png(pages[0], 4));
}

TEST(PdfWriter, RefusesNoPages) {
  EXPECT_THROW(write_pdf({}, document()), Error);
}

/// Four bytes, most significant first, as PNG has them.
unsigned number_at(const std::string& bytes, std::size_t at) {
  unsigned value = 0;
  for (std::size_t i = at; i < at + 4; ++i) {
    value = value * 256 + static_cast<unsigned char>(bytes.at(i));
  }
  return value;
}

TEST(PngWriter, PictureHasItsSize) {
  const std::string png = write_png(drawing({100, 70}, "picture"), 4);
  ASSERT_THAT(png, StartsWith("\x89PNG\r\n\x1a\n"));
  EXPECT_EQ(number_at(png, 16), 400U);  // IHDR: width, height
  EXPECT_EQ(number_at(png, 20), 280U);
}

TEST(PngWriter, RefusesAResolutionThatIsNone) {
  EXPECT_THROW(write_png(drawing({100, 70}, ""), 0), Error);
  EXPECT_THROW(write_png(drawing({100, 70}, ""), 51), Error);
}

}  // namespace
}  // namespace sweepwright::formats
