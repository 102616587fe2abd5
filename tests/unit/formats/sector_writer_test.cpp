#include "sweepwright/formats/sector_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "outside_tools.hpp"
#include "support/ground.hpp"
#include "support/shapes.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/formats/unit_area_reader.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::json;
using testing::HasSubstr;

std::vector<SectorRow> rows_of(const test::Shape& shape, Position place) {
  const std::vector<sector::SharedGround> ground{
      {test::on_ground(shape, place), {{"Kestrel 1", 3}, {"Tern & 2", 1}, {"Plover", 2}}}};
  std::vector<SectorRow> rows;
  for (const sector::Sector& sector : sector::make_sectors(ground, "A")) {
    rows.push_back({sector, {{"pos", 0.25}, {"unit", std::string("not ours")}}});
  }
  return rows;
}

std::string text(std::span<const SectorRow> rows, SectorFormat format) {
  StringSink sink;
  write_sectors(sink, rows, {"mind the gap"}, format, {"0.1.0", "sweepwright sectors", {}, {}});
  return sink.text();
}

TEST(WriteSectors, GeoJsonIsReadBackAsTheSameGroundAndUnits) {
  for (const Position& place : {test::at(38, -117), test::at(0, 0), test::at(-17.5, 179.9)}) {
    for (const test::Shape& shape : test::ugly_shapes()) {
      const std::vector<SectorRow> rows = rows_of(shape, place);
      const std::string written = text(rows, SectorFormat::geojson);
      test::expect_rfc_7946(written);
      const UnitAreas read = parse_unit_areas(written);
      ASSERT_EQ(read.areas.size(), rows.size());
      for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_EQ(read.areas[i].unit, rows[i].sector.unit);
        EXPECT_NEAR(area(read.areas[i].region) / rows[i].sector.area, 1, 1e-5);
      }
      // All sectors together: joined by their shared edges into the area again.
      EXPECT_EQ(parse_area(written).region.polygons.size(), 1u) << shape.name;
    }
  }
}

/// Each edge with the number of rings that run along it, whichever way.
std::map<std::string, int> edges(const json& collection) {
  std::map<std::string, int> counts;
  for (const json& feature : collection["features"]) {
    for (const json& ring : feature["geometry"]["coordinates"]) {
      for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
        const std::string from = ring[i].dump();
        const std::string to = ring[i + 1].dump();
        ++counts[std::min(from, to) + std::max(from, to)];
      }
    }
  }
  return counts;
}

TEST(WriteSectors, SharedEdgesHaveTheSamePointsInBoth) {
  // Long edges get points between their corners: those must be the same on both sides. Then the
  // edges that one ring alone runs along are as long as the undivided area's outline.
  for (const double latitude : {0.0, 60.0, -45.0}) {
    const std::vector<SectorRow> rows = rows_of(test::ugly_shapes()[0], test::at(latitude, 10));
    const std::map<std::string, int> all = edges(json::parse(text(rows, SectorFormat::geojson)));
    const std::vector<sector::SharedGround> undivided{
        {test::on_ground(test::ugly_shapes()[0], test::at(latitude, 10)), {{"All", 1}}}};
    Length single;
    Length outline;
    const auto length = [](const std::string& edge) {
      const json ends = json::parse("[" + std::string(edge).insert(edge.find(']') + 1, ",") + "]");
      return geodesic(test::at(ends[0][1], ends[0][0]), test::at(ends[1][1], ends[1][0])).length;
    };
    for (const auto& [edge, count] : all) {
      EXPECT_LE(count, 2) << edge;
      if (count == 1) single += length(edge);
    }
    const SectorRow whole{sector::make_sectors(undivided, "A")[0], {}};
    for (const auto& [edge, count] :
         edges(json::parse(text(std::vector<SectorRow>{whole}, SectorFormat::geojson)))) {
      outline += length(edge);
    }
    EXPECT_NEAR(single / outline, 1, 1e-6);
  }
}

TEST(WriteSectors, CarryAllFigures) {
  const std::vector<SectorRow> rows = rows_of(test::ugly_shapes()[0], test::at(38, -117));
  const json written = json::parse(text(rows, SectorFormat::json));
  EXPECT_EQ(written["remarks"][0], "mind the gap");
  ASSERT_EQ(written["sectors"].size(), 3u);
  const json& first = written["sectors"][0];
  EXPECT_EQ(first["sector"], "A1");
  EXPECT_EQ(first["unit"], "Kestrel 1");  // our own names win
  EXPECT_EQ(first["pos"], 0.25);
  EXPECT_NEAR(first["share"].get<double>(), 0.5, 1e-8);
  EXPECT_NEAR(first["area_m2"].get<double>() / written["area_m2"].get<double>(), 0.5, 1e-8);
  EXPECT_THAT(first["corners"][0].get<std::string>(), testing::StartsWith("A "));
  EXPECT_GE(first["polygons"][0][0].size(), 3u);
}

TEST(WriteSectors, OtherFormatsStandUpToOutsideReaders) {
  const std::vector<SectorRow> rows = rows_of(test::ugly_shapes()[4], test::at(-17.5, 179.9));
  const std::string kml = text(rows, SectorFormat::kml);
  test::expect_valid_xml(kml, test::kKmlSchema);
  EXPECT_THAT(test::ogrinfo(kml, "kml"), HasSubstr("Tern & 2"));
  EXPECT_EQ(
      test::occurrences(test::ogrinfo(text(rows, SectorFormat::geojson), "geojson"), "OGRFeature("),
      3u);
  const std::string csv = text(rows, SectorFormat::csv);
  EXPECT_THAT(csv, testing::StartsWith("sector,unit,area_m2,share,long_side_true_deg,leg_true_deg,"
                                       "corners,pos\r\nA1,Kestrel 1,"));
}

TEST(DrawSectorsMap, ShowsEachSectorsNameInsideThePaper) {
  std::vector<sector::Sector> sectors;
  for (const SectorRow& row : rows_of(test::ugly_shapes()[3], test::at(78, 16))) {
    sectors.push_back(row.sector);
  }
  const std::string svg = write_svg(draw_sectors_map(sectors, {180, 140}));
  for (const char* name : {">A1<", ">A2<", ">A3<", ">search legs<"})
    EXPECT_THAT(svg, HasSubstr(name));
}

}  // namespace
}  // namespace sweepwright::formats
