#include "commands/pattern_request.hpp"

#include <fmt/format.h>

#include "commands/pattern_kinds.hpp"
#include "common/output.hpp"
#include "common/route_file.hpp"
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

std::string as_typed(const std::string& text) {
  return text;
}

std::optional<Region> area_option(OptionTexts& options, formats::Provenance& provenance) {
  const auto path = options.optional("--area", as_typed);
  if (!path) return std::nullopt;
  formats::AreaFile area = formats::read_area_file(*path);
  for (const std::string& remark : area.reading.remarks) tell(fmt::format("{}: {}", *path, remark));
  provenance.inputs.push_back(area.digest);
  return std::move(area.reading.region);
}

std::optional<Path> route_option(OptionTexts& options, formats::Provenance& provenance) {
  const auto path = options.optional("--route", as_typed);
  if (!path) return std::nullopt;
  return read_route(*path, provenance.inputs);
}

}  // namespace

void PatternRequest::add_to(CLI::App& command) {
  command.add_option("--kind", kind, "The pattern")->required()->type_name(kind_names());
  options.add(command, "--start", "Commence search point", "POSITION");
  options.add(command, "--datum", "Datum: the middle of a sector search or an expanding square",
              "POSITION");
  options.add(command, "--area", "Cover the area in this GeoJSON or KML file", "FILE");
  options.add(command, "--route",
              "Route of a track line search, or the waypoints: GPX, GeoJSON, KML, or one "
              "position a line",
              "FILE");
  options.add(command, "--spacing", "Track spacing", "LENGTH");
  options.add(command, "--track",
              "True direction of the first leg; without it north, or along the area's side",
              "DEGREES");
  options.add(command, "--length", "Length of a search leg", "LENGTH");
  options.add(command, "--width", "Extent across the legs", "LENGTH");
  options.add(command, "--legs", "Number of search legs; of all legs for the square", "N");
  options.add(command, "--first-leg",
              "First leg of an expanding square, in place of --track: into the --wind or down the "
              "--drift (manuals differ)",
              "upwind|downdrift");
  options.add(command, "--radius", "Radius of a sector search", "LENGTH");
  options.add(command, "--sectors", "Sectors of a sector search [6]", "4|6");
  options.add(command, "--passes",
              "Passes of a sector search: 1 or 2 [1]; of a track line search: an even number comes "
              "back (TSR), an odd one ends at the far end (TSN) [2]",
              "N");
  options.add_flag(command, "--second",
                   "The second pattern over the same datum: a sector search turned half a sector, "
                   "an expanding square turned 45 degrees");
  terrain.add_to(command, "--terrain",
                 "Elevation models of a contour search: SRTM .hgt, DTED, GeoTIFF, Esri ASCII; "
                 "several are one");
  options.add(command, "--clearance", "Height of a contour search above the ground under its lines",
              "LENGTH");
  options.add(command, "--height-step",
              "Difference of height between lines; without it from the slopes and the spacing",
              "LENGTH");
  options.add(command, "--order", "Order of the levels of a contour search [descending]",
              "descending|ascending");
  options.add(command, "--vessel-speed", "Speed of the vessel of a coordinated creeping line",
              "SPEED");
  options.add(command, "--units", "Number of units that share a multi-unit pattern", "N");
  options.add(command, "--unit", "The unit whose legs are wanted, counted from where it begins",
              "N");
  options.add(command, "--formation", "Units side by side, or each in a block of its own [abreast]",
              "abreast|staggered");
  options.add(command, "--turn",
              "Side of the first turn [right]; of the high ground in a contour search",
              "left|right");
  options.add(command, "--commence",
              "Corner of the area to commence at; of a sector search: datum or rim [datum]",
              "nw|ne|sw|se|n|e|s|w|datum|rim");
  options.add(command, "--turn-room",
              "Legs end half a spacing inside the area, or run to its edge [inside]",
              "inside|outside");
}

RequestedPattern make_requested_pattern(PatternRequest& request, Speed speed,
                                        const FlownOptions* flown,
                                        formats::Provenance& provenance) {
  const pattern::Kind kind = option_value("--kind", request.kind, pattern::parse_kind);
  PatternGround ground;
  ground.area = area_option(request.options, provenance);
  ground.route = route_option(request.options, provenance);
  ground.speed = speed;
  ground.flown = flown;
  ground.now = provenance.stamp;
  if (!request.terrain.files.empty()) {
    formats::ElevationFiles files = request.terrain.read();
    for (const std::string& remark : files.remarks) tell(remark);
    provenance.inputs.insert(provenance.inputs.end(), files.digests.begin(), files.digests.end());
    ground.terrain = std::move(files.model);
  }
  pattern::Pattern pattern = pattern_of_kind(kind, request.options, ground);
  for (const std::string& remark : pattern.remarks) tell(remark);
  return {std::move(pattern), ground.area};
}

}  // namespace sweepwright::cli
