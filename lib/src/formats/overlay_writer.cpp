#include "sweepwright/formats/overlay_writer.hpp"

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/gpx_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"

namespace sweepwright::formats {
namespace {

void write_geojson(Sink& sink, const Overlay& overlay, const Provenance& provenance) {
  const std::vector<Property> members{{"provenance", provenance_json(provenance)}};
  GeoJsonWriter writer(sink, members);
  for (const OverlayItem& item : overlay.items) {
    std::vector<Property> properties{{"name", item.name}};
    properties.insert(properties.end(), item.properties.begin(), item.properties.end());
    writer.feature(item.geometry, properties);
  }
  writer.finish();
}

void write_kml(Sink& sink, const Overlay& overlay, const Provenance& provenance) {
  KmlWriter writer(sink, {.name = overlay.title,
                          .description = provenance_text(provenance),
                          .styles = {{.id = "overlay", .line = {0, 60, 120}, .fill = {}}}});
  for (const OverlayItem& item : overlay.items) {
    writer.placemark({.name = item.name,
                      .description = item.description,
                      .time = {},
                      .style_id = "overlay",
                      .properties = item.properties,
                      .geometry = item.geometry});
  }
  writer.finish();
}

GpxRoute gpx_route(const OverlayItem& item, const Path& path) {
  GpxRoute route{item.name, item.description, {}};
  for (const Position& position : path) route.points.push_back({position, "", "", ""});
  return route;
}

void write_gpx_file(Sink& sink, const Overlay& overlay, const Provenance& provenance) {
  GpxDocument document;
  document.creator = creator(provenance);
  document.name = overlay.title;
  document.description = provenance_text(provenance);
  document.time = provenance.stamp;
  for (const OverlayItem& item : overlay.items) {
    if (const auto* place = std::get_if<Position>(&item.geometry)) {
      document.waypoints.push_back({*place, item.name, item.description, ""});
    } else if (const auto* line = std::get_if<Path>(&item.geometry)) {
      document.routes.push_back(gpx_route(item, *line));
    } else if (const auto* region = std::get_if<Region>(&item.geometry)) {
      for (const Polygon& polygon : region->polygons) {
        Path edge = polygon.outer;
        edge.push_back(edge.front());
        document.routes.push_back(gpx_route(item, edge));
      }
    }
  }
  formats::write_gpx(sink, document);
}

Text label(const std::string& name) {
  Text text;
  text.text = name;
  text.size_mm = style::kLegNumber;
  text.colour = style::kInk;
  text.halo_mm = style::kHalo;
  return text;
}

/// Places of a label round a point on paper, the nearest to where people look first.
std::vector<PaperPoint> places_round(PaperPoint point, const std::string& name) {
  const double beside = text_width_mm(name, style::kLegNumber, false) / 2 + 1.8;
  return {point + PaperPoint{beside, 0},  point + PaperPoint{-beside, 0},
          point + PaperPoint{0, -2.6},    point + PaperPoint{0, 2.6},
          point + PaperPoint{beside, -2}, point + PaperPoint{beside, 2}};
}

}  // namespace

void write_overlay(Sink& sink, const Overlay& overlay, OverlayFormat format,
                   const Provenance& provenance) {
  switch (format) {
    case OverlayFormat::geojson:
      return write_geojson(sink, overlay, provenance);
    case OverlayFormat::kml:
      return write_kml(sink, overlay, provenance);
    case OverlayFormat::gpx:
      return write_gpx_file(sink, overlay, provenance);
  }
}

Drawing draw_overlay(const Overlay& overlay, PaperSize size) {
  std::vector<Position> shown;
  for (const OverlayItem& item : overlay.items) {
    if (const auto* place = std::get_if<Position>(&item.geometry)) shown.push_back(*place);
    if (const auto* line = std::get_if<Path>(&item.geometry)) {
      shown.insert(shown.end(), line->begin(), line->end());
    }
    if (const auto* region = std::get_if<Region>(&item.geometry)) {
      const std::vector<Position> outer = corners(*region);
      shown.insert(shown.end(), outer.begin(), outer.end());
    }
  }
  const Colour colour = crew_style(0).colour;
  GroundMap map = ground_map(shown, size, {});
  Elements under = map.graticule.lines;
  Elements over;
  for (const OverlayItem& item : overlay.items) {
    if (const auto* region = std::get_if<Region>(&item.geometry)) {
      under.push_back(area_outline(map.view, *region));
    } else if (const auto* line = std::get_if<Path>(&item.geometry)) {
      PaperLine on_paper;
      for (const Position& position : *line) on_paper.push_back(map.view.to_paper(position));
      under.push_back({Line{on_paper, {colour, style::kSearchLeg, {}}}});
      if (on_paper.size() == 2) continue;  // the ends of a straight line have their own labels
      append(over, placed(label(item.name),
                          {on_paper.front(), on_paper[on_paper.size() / 2],
                           on_paper[on_paper.size() / 4], on_paper[on_paper.size() * 3 / 4]},
                          map.placer));
    } else if (const auto* place = std::get_if<Position>(&item.geometry)) {
      const PaperPoint at = map.view.to_paper(*place);
      over.push_back({Disc{at, 0.7, {}, style::kInk}});
      map.placer.keep_clear(box_round(at, {1.4, 1.4}));
      append(over, placed(label(item.name), places_round(at, item.name), map.placer));
    }
  }
  return finished(std::move(map), size, overlay.title, std::move(under), std::move(over), {});
}

}  // namespace sweepwright::formats
