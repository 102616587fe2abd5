// GDAL (ogr2ogr) is the independent reader of GPX and KML. IGC and NMEA records are written after
// their specifications, from memory; the NMEA sentences with their checksums are the widely
// published examples of RMC and GGA.
#include "sweepwright/formats/track_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "support/command.hpp"
#include "support/files.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

struct Log {
  LogReport report;
  std::vector<track::RawFix> fixes;
};

Log read(const std::string& text, const TrackReadOptions& options = {}) {
  std::istringstream stream(text);
  Log log;
  log.report =
      read_log(stream, options, [&](const track::RawFix& raw) { log.fixes.push_back(raw); });
  return log;
}

Instant instant(std::chrono::year_month_day day, int hour, int minute, double second) {
  return Instant(std::chrono::sys_days(day)) + std::chrono::hours(hour) +
         std::chrono::minutes(minute) +
         std::chrono::round<std::chrono::milliseconds>(Duration(second));
}

using std::chrono::year;

const std::string kGpx = R"(<?xml version="1.0"?>
<gpx version="1.1" creator="a device" xmlns="http://www.topografix.com/GPX/1/1">
 <metadata><name>not this one</name></metadata>
 <wpt lat="1" lon="2"><name>nor this</name></wpt>
 <trk><name>Sortie &amp; return</name><trkseg>
  <trkpt lat="38.5" lon="-117.25"><ele>1850.5</ele><time>2026-07-14T12:00:00Z</time></trkpt>
  <trkpt lat="38.501" lon="-117.25"><ele>1850</ele><time>2026-07-14T05:00:01.250-07:00</time></trkpt>
 </trkseg><trkseg>
  <trkpt lat="96" lon="-117.25"><time>2026-07-14T12:00:02Z</time></trkpt>
  <trkpt lat="38.502" lon="-117.25"><time>2026-07-14T12:00:03Z</time></trkpt>
 </trkseg></trk>
</gpx>
)";

TEST(TrackReader, gpx) {
  const Log log = read(kGpx);
  EXPECT_EQ(log.report.format, TrackFormat::gpx);
  EXPECT_EQ(log.report.name, "Sortie & return");
  ASSERT_EQ(log.fixes.size(), 3U);
  EXPECT_EQ(log.fixes[0].fix.position, Position::at(Angle::degrees(38.5), Angle::degrees(-117.25)));
  EXPECT_EQ(log.fixes[0].fix.altitude, Length::metres(1850.5));
  EXPECT_EQ(log.fixes[1].fix.time, instant(year(2026) / 7 / 14, 12, 0, 1.25));
  EXPECT_EQ(log.fixes[2].fix.altitude, std::nullopt);
  EXPECT_NE(log.fixes[1].log_part, log.fixes[2].log_part);
  EXPECT_EQ(log.report.bad_rows, 1U);
  EXPECT_THAT(log.report.first_bad_rows, ElementsAre("row 9: lat 96 lon -117.25 is no place"));
}

TEST(TrackReader, a_log_that_breaks_off_gives_what_stands_before) {
  const Log log = read(kGpx.substr(0, kGpx.find("</trkseg>")));
  EXPECT_EQ(log.fixes.size(), 2U);
  EXPECT_THAT(log.report.remarks, ElementsAre(HasSubstr("the XML breaks off on line 8")));
}

TEST(TrackReader, a_document_type_is_refused_and_nothing_is_expanded) {
  const std::string bomb = R"(<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">
<!ENTITY b SYSTEM "file:///etc/passwd">]><gpx><trk><name>&a;&b;</name></trk></gpx>)";
  try {
    read(bomb);
    FAIL() << "read";
  } catch (const Error& error) {
    EXPECT_THAT(error.what(), HasSubstr("document type"));
  }
}

TEST(TrackReader, kml_track_and_line) {
  const Log log = read(R"(<kml xmlns="http://www.opengis.net/kml/2.2"
 xmlns:gx="http://www.google.com/kml/ext/2.2"><Document><Placemark><name>B</name><gx:Track>
<when>2026-07-14T12:00:00Z</when><when>2026-07-14T12:00:02Z</when>
<gx:coord>-117.25 38.5 1850</gx:coord><gx:coord>-117.25 38.501 1851</gx:coord>
</gx:Track></Placemark><Placemark><LineString><coordinates>
-117,38,100
-117.001,38.001
rubbish
</coordinates></LineString></Placemark></Document></kml>)");
  EXPECT_EQ(log.report.format, TrackFormat::kml);
  EXPECT_EQ(log.report.name, "B");
  ASSERT_EQ(log.fixes.size(), 4U);
  EXPECT_EQ(log.fixes[1].fix.position,
            Position::at(Angle::degrees(38.501), Angle::degrees(-117.25)));
  EXPECT_EQ(log.fixes[1].fix.time, instant(year(2026) / 7 / 14, 12, 0, 2));
  EXPECT_EQ(log.fixes[1].fix.altitude, Length::metres(1851));
  EXPECT_EQ(log.fixes[2].fix.time, std::nullopt);
  EXPECT_EQ(log.fixes[3].fix.altitude, std::nullopt);
  EXPECT_EQ(log.report.bad_rows, 1U);
  EXPECT_THAT(log.report.remarks, ElementsAre("a LineString has no times of its own"));
}

TEST(TrackReader, igc_passes_midnight) {
  const Log log = read(
      "AXXXABC\r\nHFDTE140726\r\nHFGIDGLIDERID:SW-1\r\n"
      "B2359585106443N00046120EA0058700615\r\n"
      "B0000015106443S00046120WV0058700000\r\n"
      "B000002510644\r\n");
  EXPECT_EQ(log.report.format, TrackFormat::igc);
  EXPECT_EQ(log.report.name, "SW-1");
  ASSERT_EQ(log.fixes.size(), 2U);
  EXPECT_NEAR(log.fixes[0].fix.position.latitude().degrees(), 51 + 6.443 / 60, 1e-12);
  EXPECT_NEAR(log.fixes[0].fix.position.longitude().degrees(), 46.12 / 60, 1e-12);
  EXPECT_EQ(log.fixes[0].fix.altitude, Length::metres(615));
  EXPECT_EQ(log.fixes[1].fix.time, instant(year(2026) / 7 / 15, 0, 0, 1));
  EXPECT_NEAR(log.fixes[1].fix.position.latitude().degrees(), -(51 + 6.443 / 60), 1e-12);
  EXPECT_EQ(log.fixes[1].fix.altitude, Length::metres(587)) << "2D: the pressure altitude";
  EXPECT_EQ(log.report.bad_rows, 1U);
  EXPECT_THAT(log.report.remarks, testing::Contains(HasSubstr("passes midnight")));
}

TEST(TrackReader, nmea_joins_sentences_of_one_time_and_checks_their_sums) {
  const Log log = read(
      "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\r\n"
      "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n"
      "$GPGSV,2,1,08,01,40,083,46*75\r\n"
      "$GPRMC,123520,A,4807.039,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\r\n"
      "$GPRMC,123521,V,4807.039,N,01131.000,E,022.4,084.4,230394,003.1,W\r\n");
  EXPECT_EQ(log.report.format, TrackFormat::nmea);
  ASSERT_EQ(log.fixes.size(), 1U);
  EXPECT_NEAR(log.fixes[0].fix.position.latitude().degrees(), 48 + 7.038 / 60, 1e-12);
  EXPECT_NEAR(log.fixes[0].fix.position.longitude().degrees(), 11 + 31.0 / 60, 1e-12);
  EXPECT_EQ(log.fixes[0].fix.altitude, Length::metres(545.4));
  EXPECT_EQ(log.fixes[0].fix.time, instant(year(1994) / 3 / 23, 12, 35, 19));
  EXPECT_THAT(
      log.report.first_bad_rows,
      ElementsAre("row 4: the checksum is wrong", "row 5: the receiver says that its fix is void"));
}

TEST(TrackReader, nmea_past_midnight_with_an_old_date_goes_on_to_the_next_day) {
  const Log log = read(
      "$GPRMC,235959,A,4807.038,N,01131.000,E,022.4,084.4,230326,003.1,W\n"
      "$GPRMC,000000,A,4807.038,N,01131.010,E,022.4,084.4,230326,003.1,W\n"
      "$GPRMC,000001,A,4807.038,N,01131.020,E,022.4,084.4,240326,003.1,W\n");
  ASSERT_EQ(log.fixes.size(), 3U);
  EXPECT_EQ(log.fixes[1].fix.time, instant(year(2026) / 3 / 24, 0, 0, 0));
  EXPECT_EQ(log.fixes[2].fix.time, instant(year(2026) / 3 / 24, 0, 0, 1));
  EXPECT_THAT(log.report.remarks, testing::Contains(HasSubstr("passes midnight")));
}

TEST(TrackReader, csv_in_any_order) {
  const Log log = read(
      "Longitude;Height (ft);Time;Latitude\n"
      "-117,25;1000;2026-07-14 12:00:00;38,5\n"
      "\"-117,26\";;2026-07-14 12:00:01;38,5\n"
      "east;;2026-07-14 12:00:02;38,5\n",
      {.format = {}, .offset_from_utc = std::chrono::hours(-7), .day = {}, .columns = {}});
  EXPECT_EQ(log.report.format, TrackFormat::csv);
  ASSERT_EQ(log.fixes.size(), 2U);
  EXPECT_EQ(log.fixes[0].fix.position, Position::at(Angle::degrees(38.5), Angle::degrees(-117.25)));
  EXPECT_EQ(log.fixes[0].fix.altitude, Length::feet(1000));
  EXPECT_EQ(log.fixes[0].fix.time, instant(year(2026) / 7 / 14, 19, 0, 0));
  EXPECT_EQ(log.report.bad_rows, 1U);
  EXPECT_THAT(log.report.remarks, ElementsAre("times without a zone were read as UTC-420 min"));
}

TEST(TrackReader, csv_with_named_columns_seconds_and_other_notations) {
  const Log named =
      read("n,t,where,wide\n1,1784030400,-117.5,38.25\n",
           {.format = TrackFormat::csv,
            .offset_from_utc = {},
            .day = {},
            .columns = {{"time", "t"}, {"latitude", "wide"}, {"longitude", "where"}}});
  ASSERT_EQ(named.fixes.size(), 1U);
  EXPECT_EQ(named.fixes[0].fix.time, instant(year(2026) / 7 / 14, 12, 0, 0));
  EXPECT_THAT(named.report.remarks, ElementsAre("times were read as seconds since 1970"));

  const Log minutes = read("lat,lon,date,time\n38-15.00N,117-30.00W,2026-07-14,12:00:00\n");
  ASSERT_EQ(minutes.fixes.size(), 1U);
  EXPECT_EQ(minutes.fixes[0].fix.position, named.fixes[0].fix.position);
  EXPECT_EQ(minutes.fixes[0].fix.time, named.fixes[0].fix.time);
}

TEST(TrackReader, geojson_lines_and_points) {
  const Log log = read(R"({"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"name":"A","coordTimes":["2026-07-14T12:00:00Z","2026-07-14T12:00:01Z"]},
 "geometry":{"type":"LineString","coordinates":[[-117.5,38.25,900],[-117.5,38.26,901]]}},
{"type":"Feature","properties":{"time":"2026-07-14T12:00:02Z"},
 "geometry":{"type":"Point","coordinates":[-117.5,38.27]}},
{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":["x",38.27]}}]})");
  ASSERT_EQ(log.fixes.size(), 3U);
  EXPECT_EQ(log.report.name, "A");
  EXPECT_EQ(log.fixes[1].fix.altitude, Length::metres(901));
  EXPECT_EQ(log.fixes[2].fix.time, instant(year(2026) / 7 / 14, 12, 0, 2));
  EXPECT_EQ(log.report.bad_rows, 1U);
}

TEST(TrackReader, what_is_no_log_is_refused_in_one_sentence) {
  const auto message = [](const std::string& text) -> std::string {
    try {
      read(text);
      return "read";
    } catch (const Error& error) {
      return error.what();
    }
  };
  EXPECT_THAT(message(""), HasSubstr("the file is empty"));
  EXPECT_THAT(message(std::string("\x7F"
                                  "ELF\0\0\1",
                                  7)),
              HasSubstr("this is no log"));
  EXPECT_THAT(message("PK\x03\x04zip"), HasSubstr("unpack it"));
  EXPECT_THAT(message("<svg/>"), HasSubstr("neither GPX nor KML"));
  EXPECT_THAT(message("<gpx></gpx>"), HasSubstr("no fix could be read as GPX"));
  EXPECT_THAT(message("a,b,c\n1,2,3\n"), HasSubstr("names no latitude and longitude"));
  EXPECT_THAT(message("{\"type\":\"FeatureCollection\",\"features\":[]}"),
              HasSubstr("no fix could be read as GeoJSON"));
}

/// Rows of GDAL's CSV of a layer's points: X, Y and the wanted column.
std::vector<std::array<std::string, 3>> gdal_points(const std::string& bytes,
                                                    const std::string& extension,
                                                    const std::string& layer,
                                                    const std::string& column) {
  const test::TemporaryFolder folder;
  test::write_file(folder.path() / ("log." + extension), bytes);
  const auto result = test::run_command("ogr2ogr -f CSV /vsistdout/ -lco GEOMETRY=AS_XY -select " +
                                            column + " log." + extension + " " + layer,
                                        folder.path(), {{"PATH", "/usr/local/bin:/usr/bin:/bin"}});
  EXPECT_EQ(result.status, 0) << result.standard_error;
  std::vector<std::array<std::string, 3>> rows;
  std::istringstream lines(result.standard_output);
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    std::array<std::string, 3> row;
    std::istringstream cells(line);
    for (std::string& cell : row) std::getline(cells, cell, ',');
    rows.push_back(row);
  }
  return rows;
}

// A real log: see tests/checks/formats/tracks/SOURCES.md.
TEST(TrackReader, a_real_log_has_the_fixes_that_gdal_reads) {
  const std::string bytes = test::read_file(test::checks() / "formats/tracks/on_foot.gpx");
  const Log log = read(bytes);
  const auto rows = gdal_points(bytes, "gpx", "track_points", "ele");
  ASSERT_GT(rows.size(), 500U);
  ASSERT_EQ(log.fixes.size(), rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const track::Fix& fix = log.fixes[i].fix;
    EXPECT_NEAR(fix.position.longitude().degrees(), std::stod(rows[i][0]), 1e-9) << i;
    EXPECT_NEAR(fix.position.latitude().degrees(), std::stod(rows[i][1]), 1e-9) << i;
    ASSERT_TRUE(fix.altitude);
    EXPECT_NEAR(fix.altitude->metres(), std::stod(rows[i][2]), 1e-6) << i;
    EXPECT_TRUE(fix.time);
  }
}

}  // namespace
}  // namespace sweepwright::formats
