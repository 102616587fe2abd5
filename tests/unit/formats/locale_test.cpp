// The user's locale changes neither what is written nor what is read.
#include <gtest/gtest.h>

#include <clocale>
#include <locale>

#include "support/ground.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/gpx_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"

namespace sweepwright::formats {
namespace {

using test::at;

/// Numbers as in much of Europe: 1.234,5.
class CommaDecimals : public std::numpunct<char> {
 protected:
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

/// Makes that the locale of C++ streams and, where the system has such a locale, of C as well.
class CommaLocale {
 public:
  CommaLocale() : before_(std::locale::global(std::locale(std::locale(), new CommaDecimals))) {
    for (const char* name : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "nb_NO.UTF-8"}) {
      if (std::setlocale(LC_ALL, name) != nullptr) break;
    }
  }
  ~CommaLocale() {
    std::locale::global(before_);
    std::setlocale(LC_ALL, "C");
  }
  CommaLocale(const CommaLocale&) = delete;
  CommaLocale& operator=(const CommaLocale&) = delete;

 private:
  std::locale before_;
};

Region region() {
  return make_region({{{at(38.25, -117), at(38.25, -116.5), at(39, -116.5), at(39, -117)}, {}}});
}

std::string geojson() {
  StringSink sink;
  GeoJsonWriter writer(sink);
  writer.feature(region(), std::vector<Property>{{"area_m2", 1234567.25}});
  writer.finish();
  return sink.text();
}

std::string kml() {
  StringSink sink;
  KmlWriter writer(sink,
                   {"K", "", {{.id = "s", .line = {}, .line_width_pixels = 1.5, .fill = {}}}});
  Placemark placemark;
  placemark.geometry = region();
  placemark.properties = {{"spacing_m", 1234.5}};
  writer.placemark(placemark);
  writer.finish();
  return sink.text();
}

std::string gpx_and_csv() {
  StringSink sink;
  GpxDocument document;
  document.time = TimePoint(std::chrono::hours(500'000));
  document.waypoints = {{at(38.25, -117.125), "A", "", ""}};
  write_gpx(sink, document);
  const std::vector<std::string> columns{"c"};
  CsvWriter csv(sink, columns);
  csv.row(std::vector<PropertyValue>{1234.5});
  return sink.text();
}

TEST(Locale, changes_no_byte_that_is_written) {
  const std::string plain = geojson() + kml() + gpx_and_csv();
  const CommaLocale comma;
  EXPECT_EQ(geojson() + kml() + gpx_and_csv(), plain);
}

TEST(Locale, changes_no_number_that_is_read) {
  const Region from_geojson = parse_area(geojson()).region;
  const Region from_kml = parse_area(kml()).region;
  const CommaLocale comma;
  EXPECT_EQ(parse_area(geojson()).region, from_geojson);
  EXPECT_EQ(parse_area(kml()).region, from_kml);
}

}  // namespace
}  // namespace sweepwright::formats
