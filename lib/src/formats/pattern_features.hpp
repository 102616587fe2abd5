// How a pattern's legs appear in overlays; shared by the writers of patterns and of plans.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/gpx_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/formats/pattern_writer.hpp"

namespace sweepwright::formats {

inline constexpr std::string_view kCommenceSearchPoint = "Commence search point";

/// Number, kind, true track, distance, time and running totals of a leg.
std::vector<Property> leg_properties(const LegRow& row);

/// The styles `<id>-search`, `<id>-joint` and `<id>-start` in one colour: search legs wide, cross
/// and transit legs thin, so that they differ in black and white too.
std::vector<KmlStyle> pattern_styles(std::string_view id, Colour colour);

/// `Vessel`, `Route`: the name of a guide line in an overlay.
std::string guide_title(const pattern::GuideLine& guide);

/// Lines that the pattern goes by, as features of their own.
void write_guides(GeoJsonWriter& writer, const pattern::Pattern& pattern);
void write_guides(KmlWriter& writer, const pattern::Pattern& pattern, std::string_view style_id);

/// Legs, commence search point and guide lines, into the folder that is open.
void write_pattern_folder(KmlWriter& writer, const pattern::Pattern& pattern, Speed speed,
                          std::string_view style_id);

/// The commence search point and the end of each leg, in order: `A1CSP`, `A1L01`, ... for the
/// sector A1; `CSP`, `L01`, ... for an empty prefix.
std::vector<GpxPoint> route_points(const pattern::Pattern& pattern, std::string_view prefix);

}  // namespace sweepwright::formats
