#include "formats/belief_kml.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::uint8_t kFillOpacity = 170;
constexpr Colour kEdge{70, 70, 70, 160};
constexpr Colour kRing{26, 26, 26};

std::string style_id(std::size_t step) {
  return fmt::format("step-{}", step + 1);
}

KmlDocument document(const belief::Belief& belief, const Provenance& provenance,
                     const std::vector<RampClass>& classes) {
  KmlDocument document;
  document.name = "Probability of containment";
  document.description = fmt::format("{:.2f} % lies outside the cells.\n{}", 100 * belief.outside,
                                     provenance_text(provenance));
  for (std::size_t i = 0; i < classes.size(); ++i) {
    Colour fill = classes[i].colour;
    fill.opacity = kFillOpacity;
    document.styles.push_back(
        {.id = style_id(i), .line = kEdge, .line_width_pixels = 1, .fill = fill});
  }
  document.styles.push_back({.id = "ring", .line = kRing, .line_width_pixels = 2, .fill = {}});
  return document;
}

}  // namespace

void write_belief_kml(Sink& sink, const belief::Belief& belief, const Provenance& provenance,
                      const std::vector<ContainmentLine>& lines) {
  const std::vector<RampClass> classes =
      ramp_classes(belief.probability.empty() ? 0 : std::ranges::max(belief.probability));
  KmlWriter writer(sink, document(belief, provenance, classes));
  for (std::size_t step = 0; step < classes.size(); ++step) {
    bool open = false;
    for (std::size_t i = 0; i < belief.cells.size(); ++i) {
      if (class_of(belief.probability[i], classes) != step) continue;
      if (!open) writer.open_folder(classes[step].label);
      open = true;
      const grid::Cell& cell = belief.cells[i];
      Placemark placemark;
      placemark.name = cell.name;
      placemark.description = fmt::format("{:.2f} %", 100 * belief.probability[i]);
      placemark.style_id = style_id(step);
      placemark.properties = {{"probability", belief.probability[i]},
                              {"system", std::string(cell.system)},
                              {"level", std::string(cell.level.name)}};
      placemark.geometry = cell.box ? Geometry(*cell.box) : Geometry(cell.region);
      writer.placemark(placemark);
    }
    if (open) writer.close_folder();
  }
  if (!lines.empty()) writer.open_folder("Lines of equal containment");
  for (const ContainmentLine& line : lines) {
    Placemark placemark;
    placemark.name = fmt::format("{:g} %", 100 * line.containment);
    placemark.description = line.name;
    placemark.style_id = "ring";
    placemark.geometry = line.ground;
    writer.placemark(placemark);
  }
  writer.finish();
}

}  // namespace sweepwright::formats
