#include "outside_tools.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <sstream>

#include "support/command.hpp"
#include "support/files.hpp"

namespace sweepwright::test {
namespace {

CommandResult run(const std::string& command, const TemporaryFolder& folder) {
  return run_command(command, folder.path(), {{"PATH", "/usr/local/bin:/usr/bin:/bin"}});
}

using nlohmann::json;

void expect_position(const json& position) {
  ASSERT_TRUE(position.is_array()) << position;
  ASSERT_EQ(position.size(), 2u) << position;
  EXPECT_LE(std::abs(position[0].get<double>()), 180) << position;
  EXPECT_LE(std::abs(position[1].get<double>()), 90) << position;
}

void expect_line(const json& line) {
  EXPECT_GE(line.size(), 2u);
  for (const json& position : line) expect_position(position);
}

void expect_polygon(const json& rings) {
  ASSERT_FALSE(rings.empty());
  bool outer = true;
  for (const json& ring : rings) {
    ASSERT_GE(ring.size(), 4u);
    EXPECT_EQ(ring.front(), ring.back()) << "section 3.1.6: a ring is closed";
    double twice_area = 0;
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
      expect_position(ring[i]);
      twice_area += ring[i][0].get<double>() * ring[i + 1][1].get<double>() -
                    ring[i + 1][0].get<double>() * ring[i][1].get<double>();
    }
    EXPECT_EQ(twice_area > 0, outer) << "section 3.1.6: right-hand rule";
    outer = false;
  }
}

void expect_geometry(const json& geometry) {
  if (geometry.is_null()) return;
  const std::string type = geometry.at("type");
  const json& coordinates = geometry.at("coordinates");
  if (type == "Point") {
    expect_position(coordinates);
  } else if (type == "LineString") {
    expect_line(coordinates);
  } else if (type == "MultiLineString") {
    for (const json& line : coordinates) expect_line(line);
  } else if (type == "Polygon") {
    expect_polygon(coordinates);
  } else if (type == "MultiPolygon") {
    for (const json& polygon : coordinates) expect_polygon(polygon);
  } else {
    ADD_FAILURE() << "unknown geometry " << type;
  }
}

}  // namespace

std::string ogrinfo(const std::string& text, const std::string& extension) {
  const TemporaryFolder folder;
  write_file(folder.path() / ("file." + extension), text);
  const CommandResult result = run("ogrinfo -ro -al file." + extension, folder);
  EXPECT_EQ(result.status, 0) << result.standard_error << "(Debian package gdal-bin)";
  EXPECT_EQ(result.standard_error, "");
  return result.standard_output;
}

namespace {

std::string poppler(const std::string& command, const std::string& pdf) {
  const TemporaryFolder folder;
  write_file(folder.path() / "file.pdf", pdf);
  const CommandResult result = run(command, folder);
  EXPECT_EQ(result.status, 0) << result.standard_error << "(Debian package poppler-utils)";
  EXPECT_EQ(result.standard_error, "");
  return result.standard_output;
}

}  // namespace

std::string pdfinfo(const std::string& pdf) {
  return poppler("pdfinfo file.pdf", pdf);
}

std::string pdftotext(const std::string& pdf, const std::string& options) {
  return poppler("pdftotext " + options + " file.pdf -", pdf);
}

int GreyPage::value(int x, int y) const {
  if (x < 0 || y < 0 || x >= width || y >= height) return 255;
  const auto at =
      static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  return static_cast<unsigned char>(values.at(at));
}

GreyPage printed_grey(const std::string& pdf, int dots_per_inch) {
  const std::string pgm =
      poppler("pdftoppm -gray -r " + std::to_string(dots_per_inch) + " -f 1 -l 1 file.pdf", pdf);
  // P5, width, height, 255, one line end, then the bytes.
  GreyPage page;
  int most = 0;
  std::string magic;
  std::istringstream in(pgm);
  in >> magic >> page.width >> page.height >> most;
  EXPECT_EQ(magic, "P5");
  EXPECT_EQ(most, 255);
  in.get();
  page.values.assign(std::istreambuf_iterator<char>(in), {});
  EXPECT_EQ(page.values.size(),
            static_cast<std::size_t>(page.width) * static_cast<std::size_t>(page.height));
  return page;
}

std::size_t occurrences(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos;
       at = text.find(part, at + part.size())) {
    ++count;
  }
  return count;
}

void expect_valid_xml(const std::string& text, const std::string& schema) {
  const TemporaryFolder folder;
  write_file(folder.path() / "file.xml", text);
  const std::string path =
      (repository() / "tests" / "checks" / "formats" / "schemas" / schema).string();
  const CommandResult result =
      run("xmllint --nonet --noout --schema " + shell_word(path) + " file.xml", folder);
  EXPECT_EQ(result.status, 0) << result.standard_error << "(Debian package libxml2-utils)";
}

void expect_rfc_7946(const std::string& text) {
  const json document = json::parse(text);
  EXPECT_EQ(document.at("type"), "FeatureCollection");
  EXPECT_FALSE(document.contains("crs")) << "section 4: no other reference systems";
  for (const json& feature : document.at("features")) {
    EXPECT_EQ(feature.at("type"), "Feature");
    EXPECT_TRUE(feature.at("properties").is_object());
    expect_geometry(feature.at("geometry"));
  }
}

}  // namespace sweepwright::test
