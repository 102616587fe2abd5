#include "pattern/contour_levels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/pattern/contour_search.hpp"

namespace sweepwright::pattern {
namespace {

/// The share of sloping ground that may be gentler than the height step suits.
constexpr double kGentlestLeftOut = 0.1;
/// Less sloping ground than this share of the area is no mountain side.
constexpr double kLeastSlopes = 0.2;
constexpr int kMostLevels = 200;

/// Heights that are worked out are whole numbers of it: what an altimeter is read to, less where
/// levels lie close together.
Length height_unit(Length step) {
  if (step >= Length::feet(200)) return Length::feet(50);
  return step >= Length::feet(40) ? Length::feet(10) : Length::feet(1);
}

Length rounded_down(Length height, Length unit) {
  return unit * std::floor(height / unit);
}

Length rounded_up(Length height, Length unit) {
  return unit * std::ceil(height / unit);
}

/// Half a step under the top, to a unit nearer to it rather than farther from it.
Length under(Length top, Length step) {
  const Length level = rounded_up(top - step / 2, height_unit(step));
  return level < top ? level : top - step / 2;
}

Length over(Length bottom, Length step) {
  const Length level = rounded_down(bottom + step / 2, height_unit(step));
  return level > bottom ? level : bottom + step / 2;
}

std::vector<Angle> slopes_of(const GroundLattice& lattice, std::size_t& known) {
  std::vector<Angle> slopes;
  known = 0;
  for (const GroundNode& node : lattice.nodes) {
    if (!node.height) continue;
    ++known;
    if (node.slope > kFlat) slopes.push_back(node.slope);
  }
  return slopes;
}

/// The node that is highest or lowest.
std::size_t extreme_node(const GroundLattice& lattice, Extreme extreme) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < lattice.nodes.size(); ++i) {
    const auto& height = lattice.nodes[i].height;
    if (!height) continue;
    const bool better =
        !found || (extreme == Extreme::summit ? *height > *lattice.nodes[*found].height
                                              : *height < *lattice.nodes[*found].height);
    if (better) found = i;
  }
  return found.value();
}

/// One level of each height, for all the ground that any of them is for.
std::vector<ContourLevel> merged(const std::vector<ContourLevel>& levels) {
  std::vector<ContourLevel> out;
  for (const ContourLevel& level : levels) {
    if (out.empty() || out.back().height != level.height) {
      out.push_back(level);
    } else if (level.only.empty()) {
      out.back().only.clear();
    } else if (!out.back().only.empty()) {
      for (std::size_t i = 0; i < level.only.size(); ++i) {
        if (level.only[i]) out.back().only[i] = true;
      }
    }
  }
  return out;
}

}  // namespace

Length height_step(const GroundLattice& lattice, Length spacing, std::optional<Length> asked) {
  std::size_t known = 0;
  std::vector<Angle> slopes = slopes_of(lattice, known);
  const double share = static_cast<double>(slopes.size()) / static_cast<double>(known);
  if (share < kLeastSlopes) {
    throw Error(ErrorCode::impossible,
                fmt::format("only {:.0f} % of the area is steeper than {:.0f} degrees",
                            std::floor(share * 100), kFlat.degrees()),
                "a contour search needs slopes: fly parallel track or creeping line");
  }
  if (asked) {
    require_above_zero(*asked, "height step");
    return *asked;
  }
  std::sort(slopes.begin(), slopes.end());
  const Angle gentle =
      slopes[static_cast<std::size_t>(kGentlestLeftOut * static_cast<double>(slopes.size()))];
  const Length step = spacing * std::sin(gentle.radians());
  const Length whole = rounded_down(step, height_unit(step));
  return whole > Length() ? whole : step;
}

std::vector<ContourLevel> contour_levels(const SearchedGround& ground, const GroundLattice& lattice,
                                         Length step) {
  const auto reached = [&](Extreme extreme) {
    return extreme_height(ground, lattice, extreme_node(lattice, extreme), extreme);
  };
  const Length highest = reached(Extreme::summit);
  const Length lowest = reached(Extreme::hollow);
  const double count = (highest - lowest) / step;
  if (!(count <= kMostLevels)) {
    const auto in_feet = [](Length height) { return format_length(height, LengthUnit::foot, 0); };
    throw Error(ErrorCode::value,
                fmt::format("a height step of {} makes {:.0f} levels between {} and {}",
                            in_feet(step), count, in_feet(lowest), in_feet(highest)),
                fmt::format("give a wider track spacing or a height step for at most {} levels",
                            kMostLevels));
  }
  std::vector<Length> heights;
  for (Length height = under(highest, step); height > lowest; height = height - step) {
    heights.push_back(height);
  }
  std::vector<ContourLevel> levels;
  const auto own_level = [&](Length height, StandingOut& out) {
    levels.push_back({height, std::move(out.ground)});
  };
  for (std::size_t i = 0; i < heights.size(); ++i) {
    levels.push_back({heights[i], {}});
    const auto above = i > 0 ? std::optional(heights[i - 1]) : std::nullopt;
    const auto below = i + 1 < heights.size() ? std::optional(heights[i + 1]) : std::nullopt;
    for (StandingOut& top : standing_out(ground, lattice, heights[i], above, Extreme::summit)) {
      const Length height = under(top.extreme, step);
      if (height > heights[i]) own_level(height, top);
    }
    for (StandingOut& hole : standing_out(ground, lattice, heights[i], below, Extreme::hollow)) {
      const Length height = over(hole.extreme, step);
      if (height < heights[i]) own_level(height, hole);
    }
  }
  std::stable_sort(levels.begin(), levels.end(), [](const ContourLevel& a, const ContourLevel& b) {
    return a.height > b.height;
  });
  return merged(levels);
}

}  // namespace sweepwright::pattern
