#include "sweepwright/debrief/crew_match.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::debrief {
namespace {

/// At most so many fixes are asked for their sector.
constexpr std::size_t kFixesAsked = 500;

bool counts(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// Small letters and digits alone.
std::string bare(std::string_view text) {
  std::string kept;
  for (const char c : text) {
    if (counts(c)) kept += c;
  }
  return to_lower_ascii(kept);
}

/// The name of the file without its folder and ending.
std::string_view stem(std::string_view path) {
  const std::size_t slash = path.find_last_of("/\\");
  if (slash != std::string_view::npos) path.remove_prefix(slash + 1);
  const std::size_t dot = path.find_last_of('.');
  return dot == std::string_view::npos || dot == 0 ? path : path.substr(0, dot);
}

std::vector<std::string> words(std::string_view text) {
  std::vector<std::string> found(1);
  for (const char c : text) {
    if (counts(c)) {
      found.back() += c;
    } else if (!found.back().empty()) {
      found.emplace_back();
    }
  }
  for (std::string& word : found) word = to_lower_ascii(word);
  return found;
}

std::optional<std::size_t> by_callsign(const plan::Plan& plan, std::string_view text) {
  const std::string name = bare(text);
  std::optional<std::size_t> best;
  std::size_t longest = 0;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const std::string callsign = bare(plan.assignments[i].unit.callsign);
    if (callsign.size() <= longest || name.find(callsign) == std::string::npos) continue;
    best = i;
    longest = callsign.size();
  }
  return best;
}

std::optional<std::size_t> by_sector(const plan::Plan& plan, std::string_view text) {
  const std::vector<std::string> parts = words(text);
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const std::string sector = to_lower_ascii(plan.assignments[i].sector_name);
    if (std::find(parts.begin(), parts.end(), sector) != parts.end()) return i;
  }
  return std::nullopt;
}

std::optional<std::size_t> by_ground(const plan::Plan& plan, const track::Track& track) {
  const std::size_t step = std::max<std::size_t>(1, track::fix_count(track) / kFixesAsked);
  std::vector<std::size_t> inside(plan.assignments.size(), 0);
  std::size_t number = 0;
  for (const track::Segment& segment : track.segments) {
    for (const track::Fix& fix : segment) {
      if (number++ % step != 0) continue;
      for (std::size_t i = 0; i < inside.size(); ++i) {
        const Region& sector = plan.assignments[i].sector;
        const bool near = geodesic(middle(sector), fix.position).length < kLocalPlaneReach / 2;
        if (near && contains(sector, fix.position)) ++inside[i];
      }
    }
  }
  const auto most = std::max_element(inside.begin(), inside.end());
  if (most == inside.end() || *most == 0) return std::nullopt;
  return static_cast<std::size_t>(most - inside.begin());
}

std::size_t as_asked(const plan::Plan& plan, std::string_view asked) {
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const plan::Assignment& assignment = plan.assignments[i];
    for (const std::string* name : {&assignment.unit.callsign, &assignment.sector_name}) {
      if (bare(*name) == bare(asked)) return i;
      names.push_back(*name);
    }
  }
  throw Error(ErrorCode::value,
              fmt::format("the plan has no crew or sector '{}'", printable(asked)),
              spelling_hint(asked, names));
}

}  // namespace

CrewMatch crew_of(const plan::Plan& plan, const track::Track& track, std::string_view asked) {
  if (!asked.empty()) return {as_asked(plan, asked), "as stated"};
  const std::string_view file = stem(track.source);
  if (const auto found = by_callsign(plan, track.name)) return {*found, "by the log's name"};
  if (const auto found = by_callsign(plan, file)) return {*found, "by its file's name"};
  if (const auto found = by_sector(plan, file)) return {*found, "by the sector in its file's name"};
  if (const auto found = by_ground(plan, track)) {
    return {*found, "by the sector in which most of it lies: check"};
  }
  throw Error(ErrorCode::impossible,
              "nothing tells which crew flew this track: no callsign or sector in its name, and no "
              "fix in any sector",
              "say whose it is: CALLSIGN=FILE", track.source);
}

}  // namespace sweepwright::debrief
