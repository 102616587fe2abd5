// Programs by other people that read what we write. A test fails when one of them is missing.
#pragma once

#include <string>

namespace sweepwright::test {

/// What GDAL's `ogrinfo -ro -al` says of the text as a file with this extension (`geojson`, `kml`,
/// `gpx`). Any warning or failure is a test failure.
std::string ogrinfo(const std::string& text, const std::string& extension);

/// What poppler's `pdfinfo` says of a PDF document, and what `pdftotext` reads on its pages (a form
/// feed ends each). Any warning or failure is a test failure.
std::string pdfinfo(const std::string& pdf);
std::string pdftotext(const std::string& pdf, const std::string& options = "-layout");

/// A page in shades of grey, from black (0) to white (255).
struct GreyPage {
  int width = 0;
  int height = 0;
  std::string values;  ///< row by row from the top
  /// White beyond the edges.
  int value(int x, int y) const;
};

/// The first page of a PDF document as poppler's `pdftoppm -gray` prints it.
GreyPage printed_grey(const std::string& pdf, int dots_per_inch);

/// How often `part` occurs in `text`.
std::size_t occurrences(const std::string& text, const std::string& part);

/// Checks the text against a schema of tests/checks/formats/schemas with libxml2's xmllint; its
/// complaint is the test failure.
void expect_valid_xml(const std::string& text, const std::string& schema);

/// Checks what RFC 7946 wants and readers do not check: types, closed rings, right-hand rule,
/// limits of longitude and latitude, no `crs`.
void expect_rfc_7946(const std::string& text);

inline constexpr const char* kKmlSchema = "kml/ogckml22.xsd";
inline constexpr const char* kGpxSchema = "gpx/gpx11.xsd";

}  // namespace sweepwright::test
