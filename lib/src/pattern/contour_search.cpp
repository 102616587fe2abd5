#include "sweepwright/pattern/contour_search.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "pattern/contour_levels.hpp"
#include "pattern/level_lines.hpp"
#include "pattern/plane_line.hpp"
#include "pattern/require.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::pattern {
namespace {

/// A level: the height of the ground under its lines, and its legs in the pattern.
struct Level {
  Length ground;
  std::size_t first_leg;
  std::size_t end_leg;
};

std::string in_feet(Length height) {
  return format_length(height, LengthUnit::foot, 0);
}

/// True for a line on the ground that the level is for.
bool belongs(const LevelLine& line, const ContourLevel& level, const GroundLattice& lattice) {
  if (level.only.empty()) return true;
  const auto near = std::count_if(line.points.begin(), line.points.end(), [&](PlanePoint point) {
    return level.only[lattice.nearest(point)];
  });
  return 2 * static_cast<std::size_t>(near) > line.points.size();
}

/// Flies all lines of a level, nearest first.
void add_level(std::vector<LevelLine> lines, const ContourSearch& request, const LocalPlane& plane,
               std::vector<Leg>& legs) {
  while (!lines.empty()) {
    const std::optional<PlanePoint> at =
        legs.empty() ? std::nullopt : std::optional(plane.to_plane(legs.back().to));
    const LevelLine line = take_nearest(lines, at);
    std::vector<Position> places;
    for (const PlanePoint point : line.points) places.push_back(plane.to_position(point));
    if (line.closed) places.back() = places.front();
    if (!legs.empty()) {
      const Leg joint = make_leg(LegKind::cross, legs.back().to, places.front());
      if (joint.line.length > kSamePlace) legs.push_back(joint);
      // A step to the next line is short; farther ways lead over ground that is not searched.
      if (joint.line.length > request.spacing * 2) legs.back().kind = LegKind::transit;
      places.front() = legs.back().to;
    }
    for (std::size_t i = 1; i < places.size(); ++i) {
      legs.push_back(make_leg(LegKind::search, places[i - 1], places[i]));
    }
    require_leg_count(static_cast<int>(legs.size()));
  }
}

/// Which nodes lie within half a spacing of a leg, along the slope, and which the model knows.
struct Searched {
  double share = 0;           ///< of the nodes with height
  double without_height = 0;  ///< share of the nodes inside the area
};

Searched searched_ground(const GroundLattice& lattice, const std::vector<Leg>& legs,
                         const std::vector<Level>& levels, const LocalPlane& plane,
                         Length spacing) {
  std::vector<bool> searched(lattice.nodes.size(), false);
  for (const Level& level : levels) {
    for (std::size_t i = level.first_leg; i < level.end_leg; ++i) {
      if (legs[i].kind != LegKind::search) continue;
      const PlanePoint from = plane.to_plane(legs[i].from);
      const PlanePoint to = plane.to_plane(legs[i].to);
      for (std::size_t k = 0; k < searched.size(); ++k) {
        const GroundNode& node = lattice.nodes[k];
        if (searched[k] || !node.height) continue;
        const double level_away = distance(node.place, from, to) / spacing;
        const double up_away = (*node.height - level.ground) / spacing;
        searched[k] = std::hypot(level_away, up_away) <= 0.5;
      }
    }
  }
  const auto inside = std::count_if(lattice.nodes.begin(), lattice.nodes.end(),
                                    [](const GroundNode& node) { return node.inside; });
  const auto known = std::count_if(lattice.nodes.begin(), lattice.nodes.end(),
                                   [](const GroundNode& node) { return node.height.has_value(); });
  const auto count = std::count(searched.begin(), searched.end(), true);
  return {static_cast<double>(count) / static_cast<double>(known),
          static_cast<double>(inside - known) / static_cast<double>(inside)};
}

/// The highest ground under a leg; none when the model does not know it all the way.
std::optional<Length> highest_ground(const Leg& leg, const terrain::ElevationModel& model) {
  constexpr Length kStep = Length::metres(50);
  const int steps = static_cast<int>(std::ceil(leg.line.length / kStep));
  Length highest = Length::metres(-1e6);
  for (int i = 0; i <= steps; ++i) {
    const Position at =
        travel(leg.from, leg.line.start_track, leg.line.length * i / steps).position;
    const auto height = terrain::height(model, at);
    if (!height) return std::nullopt;
    highest = std::max(highest, *height);
  }
  return highest;
}

/// The ways between lines that lead over ground which their height does not clear.
struct WaysOverGround {
  std::vector<std::size_t> legs;  ///< counted from 1
  Length highest;
  bool unknown = false;  ///< whether the model does not know some of that ground
};

/// Lines are thinned out, so a way along one may lie a little off its height.
Length way_tolerance(const ContourSearch& request) {
  const Length most = Length::feet(50);
  return request.clearance ? std::min(most, *request.clearance / 10) : most;
}

/// A way between two levels is flown at the height of the higher one.
WaysOverGround ways_over_ground(const ContourSearch& request, const std::vector<Level>& levels,
                                const std::vector<Leg>& legs,
                                const terrain::ElevationModel& model) {
  WaysOverGround out;
  const Level* before = nullptr;
  for (const Level& level : levels) {
    for (std::size_t i = level.first_leg; i < level.end_leg; ++i) {
      if (legs[i].kind == LegKind::search) continue;
      const bool between_levels = before != nullptr && i == level.first_leg;
      const Length line = between_levels ? std::max(level.ground, before->ground) : level.ground;
      const std::optional<Length> highest = highest_ground(legs[i], model);
      if (highest && *highest <= line + way_tolerance(request)) continue;
      out.legs.push_back(i + 1);
      out.highest = std::max(out.highest, highest.value_or(Length()));
      out.unknown = out.unknown || !highest;
    }
    before = &level;
  }
  return out;
}

std::string way_remark(const WaysOverGround& ways) {
  constexpr std::size_t kMostNamed = 12;
  const std::size_t named = std::min(ways.legs.size(), kMostNamed);
  std::string text = fmt::format(
      "{} {}", ways.legs.size() == 1 ? "leg" : "legs",
      fmt::join(ways.legs.begin(), ways.legs.begin() + static_cast<std::ptrdiff_t>(named), ", "));
  if (named < ways.legs.size()) text += fmt::format(" and {} more", ways.legs.size() - named);
  text += ways.legs.size() == 1 ? " leads" : " lead";
  if (ways.unknown) return text + " over ground whose height the model does not know";
  return text + fmt::format(" over higher ground, up to {}: climb first, or go round",
                            in_feet(ways.highest));
}

}  // namespace

ContourOrder parse_contour_order(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "descending") return ContourOrder::descending;
  if (lower == "ascending") return ContourOrder::ascending;
  throw Error(ErrorCode::value, fmt::format("'{}' is no order of levels", printable(name)),
              "write descending or ascending");
}

Pattern make_contour_search(const ContourSearch& request, const terrain::ElevationModel& model) {
  require_above_zero(request.spacing, "track spacing");
  if (request.clearance) require_above_zero(*request.clearance, "clearance");
  const LocalPlane plane = local_plane(request.region);
  const PlaneRegion flat = to_plane(request.region, plane);
  const SearchedGround ground{request.region, plane, flat, model};
  const GroundLattice lattice = make_ground_lattice(ground, request.spacing);
  const Length step = height_step(lattice, request.spacing, request.height_step);
  std::vector<ContourLevel> heights = contour_levels(ground, lattice, step);
  if (request.order == ContourOrder::ascending) std::reverse(heights.begin(), heights.end());
  const LevelLineFit fit{request.spacing / 2, request.spacing / 20, request.first_turn};

  Pattern pattern{Kind::contour, request.spacing, request.first_turn, {}, {}};
  std::vector<Level> levels;
  for (const ContourLevel& level : heights) {
    const std::size_t first = pattern.legs.size();
    std::vector<LevelLine> lines = level_lines(ground, level.height, fit);
    std::erase_if(lines, [&](const LevelLine& line) { return !belongs(line, level, lattice); });
    add_level(std::move(lines), request, plane, pattern.legs);
    if (pattern.legs.size() > first) levels.push_back({level.height, first, pattern.legs.size()});
  }
  if (pattern.legs.empty()) throw no_leg_fits(request.spacing);

  pattern.remarks.push_back(fmt::format("levels are {} apart", in_feet(step)));
  for (const Level& level : levels) {
    std::string remark = fmt::format("legs {} to {}: ground at {}", level.first_leg + 1,
                                     level.end_leg, in_feet(level.ground));
    if (request.clearance) {
      remark += fmt::format(", fly at {}", in_feet(level.ground + *request.clearance));
    }
    pattern.remarks.push_back(remark + " above mean sea level");
  }
  const WaysOverGround ways = ways_over_ground(request, levels, pattern.legs, model);
  if (!ways.legs.empty()) pattern.remarks.push_back(way_remark(ways));
  const Searched searched = searched_ground(lattice, pattern.legs, levels, plane, request.spacing);
  pattern.remarks.push_back(fmt::format(
      "{:.0f} % of the area lies within half a track spacing of a leg, measured along the slope",
      std::floor(100 * searched.share)));
  pattern.area_share = searched.share * (1 - searched.without_height);
  if (searched.without_height > 0) {
    pattern.remarks.push_back(
        fmt::format("the model knows no height on {:.1f} % of the area: no legs are drawn there",
                    searched.without_height * 100));
  }
  pattern.remarks.push_back(
      "heights are those of the elevation model: trees, masts, wires and its errors come on top");
  return pattern;
}

}  // namespace sweepwright::pattern
