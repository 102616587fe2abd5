#include "sweepwright/pattern/pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::pattern {

const std::vector<KindInfo>& kinds() {
  static const std::vector<KindInfo> list{
      {Kind::parallel, "parallel", "PS", "Parallel track"},
      {Kind::creeping, "creeping", "CS", "Creeping line"},
      {Kind::square, "square", "SS", "Expanding square"},
      {Kind::sector, "sector", "VS", "Sector search"},
      {Kind::track_line, "track-line", "TSR", "Track line"},
      {Kind::contour, "contour", "OS", "Contour search"},
      {Kind::coordinated, "coordinated", "CSC", "Coordinated creeping line"},
      {Kind::multi_unit, "multi-unit", "PM", "Multi-unit parallel"},
      {Kind::waypoints, "waypoints", "", "Waypoints"},
  };
  return list;
}

const KindInfo& info(Kind kind) {
  for (const KindInfo& entry : kinds()) {
    if (entry.kind == kind) return entry;
  }
  throw std::logic_error("a pattern is missing from the list");
}

std::string search_title(Kind kind) {
  const std::string_view title = info(kind).title;
  return title.ends_with("search") ? std::string(title) : fmt::format("{} search", title);
}

Kind parse_kind(std::string_view name) {
  std::vector<std::string_view> names;
  for (const KindInfo& entry : kinds()) {
    if (entry.name == to_lower_ascii(name)) return entry.kind;
    names.push_back(entry.name);
  }
  throw Error(ErrorCode::value, fmt::format("there is no pattern '{}'", printable(name)),
              spelling_hint(name, names));
}

std::string_view name(LegKind kind) {
  constexpr std::array<std::string_view, 3> names{"search", "cross", "transit"};
  return names[static_cast<std::size_t>(kind)];
}

std::string_view name(Turn turn) {
  return turn == Turn::left ? "left" : "right";
}

Turn parse_turn(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "left") return Turn::left;
  if (lower == "right") return Turn::right;
  throw Error(ErrorCode::value, fmt::format("'{}' is not a turn", printable(name)),
              "write left or right");
}

Angle quarter_turn(Turn turn) {
  return Angle::degrees(turn == Turn::right ? 90 : -90);
}

Leg make_leg(LegKind kind, Position from, Position to) {
  return {kind, from, to, geodesic(from, to)};
}

std::string_view designator(const Pattern& pattern) {
  return pattern.own_designator.empty() ? info(pattern.kind).designator : pattern.own_designator;
}

Position commence_search_point(const Pattern& pattern) {
  return pattern.legs.front().from;
}

Length total_distance(const Pattern& pattern) {
  Length total;
  for (const Leg& leg : pattern.legs) total += leg.line.length;
  return total;
}

Length search_distance(const Pattern& pattern) {
  Length total;
  for (const Leg& leg : pattern.legs) {
    if (leg.kind == LegKind::search) total += leg.line.length;
  }
  return total;
}

int search_leg_count(const Pattern& pattern) {
  return static_cast<int>(
      std::count_if(pattern.legs.begin(), pattern.legs.end(),
                    [](const Leg& leg) { return leg.kind == LegKind::search; }));
}

Path path(const Pattern& pattern) {
  Path out{commence_search_point(pattern)};
  for (const Leg& leg : pattern.legs) out.push_back(leg.to);
  return out;
}

}  // namespace sweepwright::pattern
