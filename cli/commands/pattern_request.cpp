#include "commands/pattern_request.hpp"

#include <fmt/format.h>

#include "commands/pattern_kinds.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::cli {
namespace {

std::string kind_names() {
  std::string names;
  for (const pattern::KindInfo& entry : pattern::kinds()) {
    names += names.empty() ? "" : "|";
    names += entry.name;
  }
  return names;
}

std::optional<Region> area_option(OptionTexts& options, formats::Provenance& provenance) {
  const auto path = options.optional("--area", [](const std::string& text) { return text; });
  if (!path) return std::nullopt;
  formats::AreaFile area = formats::read_area_file(*path);
  for (const std::string& remark : area.reading.remarks) tell(fmt::format("{}: {}", *path, remark));
  provenance.inputs.push_back(area.digest);
  return std::move(area.reading.region);
}

}  // namespace

void PatternRequest::add_to(CLI::App& command) {
  command.add_option("--kind", kind, "The pattern")->required()->type_name(kind_names());
  options.add(command, "--start", "Commence search point", "POSITION");
  options.add(command, "--datum", "Datum: the middle of a sector search or an expanding square",
              "POSITION");
  options.add(command, "--area", "Cover the area in this GeoJSON or KML file", "FILE");
  options.add(command, "--spacing", "Track spacing", "LENGTH");
  options.add(command, "--track",
              "True direction of the first leg; without it north, or along the area's side",
              "DEGREES");
  options.add(command, "--length", "Length of a search leg", "LENGTH");
  options.add(command, "--width", "Extent across the legs", "LENGTH");
  options.add(command, "--legs", "Number of search legs; of all legs for the square", "N");
  options.add(command, "--radius", "Radius of a sector search", "LENGTH");
  options.add(command, "--sectors", "Sectors of a sector search [6]", "4|6");
  options.add(command, "--passes", "Passes: 1 or 2 of a sector search", "N");
  options.add_flag(command, "--second",
                   "The second pattern over the same datum: a sector search turned half a sector, "
                   "an expanding square turned 45 degrees");
  options.add(command, "--turn", "Side of the first turn [right]", "left|right");
  options.add(command, "--commence",
              "Corner of the area to commence at; of a sector search: datum or rim [datum]",
              "nw|ne|sw|se|n|e|s|w|datum|rim");
  options.add(command, "--turn-room",
              "Legs end half a spacing inside the area, or run to its edge [inside]",
              "inside|outside");
}

RequestedPattern make_requested_pattern(PatternRequest& request, Speed ground_speed,
                                        formats::Provenance& provenance) {
  const pattern::Kind kind = option_value("--kind", request.kind, pattern::parse_kind);
  PatternGround ground{area_option(request.options, provenance), ground_speed};
  pattern::Pattern pattern = pattern_of_kind(kind, request.options, ground);
  for (const std::string& remark : pattern.remarks) tell(remark);
  return {std::move(pattern), std::move(ground.area)};
}

}  // namespace sweepwright::cli
