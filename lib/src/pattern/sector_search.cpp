#include "sweepwright/pattern/sector_search.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::pattern {
namespace {

/// Beyond it the spokes are far apart at the rim: the source's upper limit for aircraft.
constexpr Length kUsualRadius = Length::nautical_miles(30);

struct Stop {
  Position place;
  bool on_rim;
};

/// Degrees from the first track to a radius; none for the datum itself.
using Spoke = std::optional<double>;

std::vector<Spoke> circuit(const SectorSearch& request) {
  constexpr Spoke kDatum = std::nullopt;
  std::vector<Spoke> spokes = request.sectors == SectorCount::six
                                  ? std::vector<Spoke>{0, 60, kDatum, 240, 300, kDatum, 120, 180}
                                  : std::vector<Spoke>{0, 90, kDatum, 270, 180};
  if (request.start == SectorStart::rim) {
    spokes.insert(spokes.begin(), {180, kDatum});
  } else {
    spokes.insert(spokes.begin(), kDatum);
    spokes.push_back(kDatum);
  }
  return spokes;
}

Angle sector_angle(const SectorSearch& request) {
  return Angle::degrees(request.sectors == SectorCount::six ? 60 : 90);
}

Angle to_turn_side(const SectorSearch& request, Angle angle) {
  return request.first_turn == Turn::right ? angle : -angle;
}

void add_pass(const SectorSearch& request, TrueDirection first_track, std::vector<Stop>& stops) {
  for (const Spoke& spoke : circuit(request)) {
    if (spoke) {
      const TrueDirection out = first_track + to_turn_side(request, Angle::degrees(*spoke));
      stops.push_back({travel(request.datum, out, request.radius).position, true});
    } else if (stops.empty() || stops.back().on_rim) {
      stops.push_back({request.datum, false});
    }
  }
}

/// Distance between the ends of two neighbouring spokes of that length.
Length spoke_gap(Length spoke, Angle between) {
  return spoke * (2 * std::sin(between.radians() / 2));
}

}  // namespace

SectorCount parse_sector_count(std::string_view text) {
  const std::string_view number = trimmed(text);
  if (number == "4") return SectorCount::four;
  if (number == "6") return SectorCount::six;
  throw Error(ErrorCode::value,
              fmt::format("a sector search cannot have '{}' sectors", printable(text)),
              "write 4 or 6");
}

SectorStart parse_sector_start(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "datum") return SectorStart::datum;
  if (lower == "rim") return SectorStart::rim;
  throw Error(ErrorCode::value,
              fmt::format("a sector search cannot start at '{}'", printable(name)),
              "write datum or rim");
}

Pattern make_sector_search(const SectorSearch& request) {
  require_above_zero(request.radius, "radius");
  if (request.radius > kLocalPlaneReach) {
    throw Error(
        ErrorCode::value,
        fmt::format("a sector search of radius {} cannot be drawn",
                    format_length(request.radius, LengthUnit::nautical_mile, 0)),
        fmt::format("give a radius of at most {:.0f} NM", kLocalPlaneReach.nautical_miles()));
  }
  const TrueDirection turned =
      request.first_track + to_turn_side(request, sector_angle(request) / 2);
  std::vector<Stop> stops;
  if (request.passes != SectorPasses::second) add_pass(request, request.first_track, stops);
  if (request.passes != SectorPasses::first) add_pass(request, turned, stops);

  const Angle between = sector_angle(request) / (request.passes == SectorPasses::both ? 2 : 1);
  const Length half_way = spoke_gap(request.radius / 2, between);
  Pattern pattern{Kind::sector, half_way, request.first_turn, {}, {}};
  for (std::size_t i = 1; i < stops.size(); ++i) {
    const bool along_rim = stops[i - 1].on_rim && stops[i].on_rim;
    pattern.legs.push_back(
        make_leg(along_rim ? LegKind::cross : LegKind::search, stops[i - 1].place, stops[i].place));
  }
  pattern.remarks.push_back(fmt::format(
      "the track spacing grows from 0 at the datum to {} at the rim; half way out it is {}",
      format_length(half_way * 2, LengthUnit::nautical_mile, 2),
      format_length(half_way, LengthUnit::nautical_mile, 2)));
  if (request.radius > kUsualRadius) {
    pattern.remarks.push_back(
        fmt::format("the radius is over {:.0f} NM: sector searches are "
                    "usually smaller",
                    kUsualRadius.nautical_miles()));
  }
  return pattern;
}

}  // namespace sweepwright::pattern
