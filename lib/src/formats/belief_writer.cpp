#include "sweepwright/formats/belief_writer.hpp"

#include <array>
#include <cmath>

#include "formats/belief_kml.hpp"
#include "sweepwright/formats/cell_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"

namespace sweepwright::formats {
namespace {

std::vector<Property> members(const belief::Belief& belief, const BeliefExtras& extras) {
  std::vector<Property> all{{"outside", belief.outside},
                            {"cumulative_pos", belief.cumulative_success}};
  all.insert(all.end(), extras.members.begin(), extras.members.end());
  return all;
}

double whole_metres(Area area) {
  return std::round(area.square_metres());
}

void write_geojson(Sink& sink, const belief::Belief& belief, const Provenance& provenance,
                   const BeliefExtras& extras) {
  std::vector<Property> top = members(belief, extras);
  top.insert(top.begin(), {"provenance", provenance_json(provenance)});
  GeoJsonWriter writer(sink, top);
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    const grid::Cell& cell = belief.cells[i];
    const std::array properties{Property{"cell", cell.name},
                                Property{"system", std::string(cell.system)},
                                Property{"level", std::string(cell.level.name)},
                                Property{"probability", belief.probability[i]},
                                Property{"area_m2", whole_metres(belief.area[i])}};
    writer.feature(cell.box ? Geometry(*cell.box) : Geometry(cell.region), properties);
  }
  for (const ContainmentLine& line : extras.lines) {
    const std::array properties{Property{"containment", line.containment},
                                Property{"name", line.name}};
    writer.feature(line.ground, properties);
  }
  writer.finish();
}

}  // namespace

void write_belief(Sink& sink, const belief::Belief& belief, BeliefFormat format,
                  const Provenance& provenance, const BeliefExtras& extras) {
  if (format == BeliefFormat::geojson) return write_geojson(sink, belief, provenance, extras);
  if (format == BeliefFormat::kml) return write_belief_kml(sink, belief, provenance, extras.lines);
  const CellFile file{.format = format == BeliefFormat::csv ? CellFormat::csv : CellFormat::json,
                      .more = {"probability", "area_m2"},
                      .members = members(belief, extras)};
  const auto writer = make_cell_writer(sink, file, provenance);
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    writer->cell(belief.cells[i],
                 std::array<PropertyValue, 2>{belief.probability[i], whole_metres(belief.area[i])});
  }
  writer->finish();
}

}  // namespace sweepwright::formats
