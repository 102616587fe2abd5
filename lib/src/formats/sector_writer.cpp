#include "sweepwright/formats/sector_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "formats/map_corners.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

constexpr double kAreaUnits = 10;
constexpr double kShareUnits = 1e9;
constexpr double kAngleUnits = 1e4;
constexpr std::uint8_t kFillOpacity = 40;

double rounded(double value, double units) {
  return std::round(value * units) / units;
}

/// `A 38-15.00N 117-02.50W`, round the outer edges, then round the holes.
std::vector<std::string> corner_texts(const Region& region) {
  std::vector<std::string> texts;
  for (const CornerRing& ring : sector_corners(region).rings) {
    for (const Position& corner : ring.corners) {
      texts.push_back(fmt::format("{} {}{}", corner_letter(texts.size()), format_position(corner),
                                  ring.hole ? " (hole)" : ""));
    }
  }
  return texts;
}

std::vector<Property> properties(const SectorRow& row) {
  const sector::Sector& sector = row.sector;
  std::vector<Property> all{
      {"sector", sector.name},
      {"unit", sector.unit},
      {"area_m2", rounded(sector.area.square_metres(), kAreaUnits)},
      {"share", rounded(sector.share, kShareUnits)},
      {"long_side_true_deg", rounded(sector.long_side.degrees(), kAngleUnits)},
      {"leg_true_deg", rounded(sector.legs.degrees(), kAngleUnits)},
      {"corners", corner_texts(sector.region)},
  };
  for (const Property& property : row.more) {
    const bool ours = std::any_of(all.begin(), all.end(),
                                  [&](const Property& own) { return own.name == property.name; });
    if (!ours) all.push_back(property);
  }
  return all;
}

double total_m2(std::span<const SectorRow> rows) {
  double sum = 0;
  for (const SectorRow& row : rows) sum += row.sector.area.square_metres();
  return rounded(sum, kAreaUnits);
}

void write_geojson(Sink& sink, std::span<const SectorRow> rows,
                   const std::vector<std::string>& remarks, const Provenance& provenance) {
  const std::vector<Property> members{{"provenance", provenance_json(provenance)},
                                      {"area_m2", total_m2(rows)},
                                      {"remarks", remarks}};
  GeoJsonWriter writer(sink, members);
  for (const SectorRow& row : rows) writer.feature(row.sector.region, properties(row));
  writer.finish();
}

std::string sector_text(const sector::Sector& sector) {
  return fmt::format("{}: {:.1f} NM2, {:.1f} % of the ground; legs {} or back. Corners: {}",
                     sector.unit, sector.area.square_nautical_miles(), 100 * sector.share,
                     format_direction(sector.legs), fmt::join(corner_texts(sector.region), "; "));
}

void write_kml(Sink& sink, std::span<const SectorRow> rows, const std::vector<std::string>& remarks,
               const Provenance& provenance) {
  KmlDocument document{"Sectors", provenance_text(provenance), {}};
  for (const std::string& remark : remarks) document.description += "\n" + remark;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Colour colour = crew_style(i).colour;
    document.styles.push_back(
        {.id = "sector-" + rows[i].sector.name,
         .line = colour,
         .line_width_pixels = 3,
         .fill = Colour{colour.red, colour.green, colour.blue, kFillOpacity}});
  }
  KmlWriter writer(sink, document);
  for (const SectorRow& row : rows) {
    writer.placemark({.name = row.sector.name,
                      .description = sector_text(row.sector),
                      .time = {},
                      .style_id = "sector-" + row.sector.name,
                      .properties = properties(row),
                      .geometry = row.sector.region});
  }
  writer.finish();
}

void write_csv(Sink& sink, std::span<const SectorRow> rows) {
  std::vector<std::string> columns;
  std::vector<std::vector<Property>> lines;
  for (const SectorRow& row : rows) {
    lines.push_back(properties(row));
    for (const Property& property : lines.back()) {
      if (std::find(columns.begin(), columns.end(), property.name) == columns.end()) {
        columns.push_back(property.name);
      }
    }
  }
  CsvWriter writer(sink, columns);
  for (const std::vector<Property>& line : lines) {
    std::vector<PropertyValue> cells;
    for (const std::string& column : columns) {
      const auto found = std::find_if(line.begin(), line.end(),
                                      [&](const Property& p) { return p.name == column; });
      cells.push_back(found == line.end() ? PropertyValue() : found->value);
    }
    writer.row(cells);
  }
}

ordered_json rings(const Region& region) {
  ordered_json polygons = ordered_json::array();
  const auto to_json_ring = [](const Ring& ring) {
    ordered_json out = ordered_json::array();
    for (const Position& p : ring) {
      out.push_back({p.longitude().degrees(), p.latitude().degrees()});
    }
    return out;
  };
  for (const Polygon& polygon : region.polygons) {
    ordered_json out = ordered_json::array({to_json_ring(polygon.outer)});
    for (const Ring& hole : polygon.holes) out.push_back(to_json_ring(hole));
    polygons.push_back(std::move(out));
  }
  return polygons;
}

void write_json(Sink& sink, std::span<const SectorRow> rows,
                const std::vector<std::string>& remarks, const Provenance& provenance) {
  ordered_json json{{"area_m2", total_m2(rows)}, {"sectors", ordered_json::array()}};
  for (const SectorRow& row : rows) {
    ordered_json sector;
    for (const Property& property : properties(row)) {
      sector[property.name] = ordered_json::parse(to_json(property.value));
    }
    sector["polygons"] = rings(row.sector.region);
    json["sectors"].push_back(std::move(sector));
  }
  json["remarks"] = remarks;
  json["provenance"] = ordered_json::parse(provenance_json(provenance).text);
  sink.write(json.dump(2) + "\n");
}

}  // namespace

void write_sectors(Sink& sink, std::span<const SectorRow> rows,
                   const std::vector<std::string>& remarks, SectorFormat format,
                   const Provenance& provenance) {
  switch (format) {
    case SectorFormat::geojson:
      return write_geojson(sink, rows, remarks, provenance);
    case SectorFormat::kml:
      return write_kml(sink, rows, remarks, provenance);
    case SectorFormat::csv:
      return write_csv(sink, rows);
    case SectorFormat::json:
      return write_json(sink, rows, remarks, provenance);
  }
}

}  // namespace sweepwright::formats
