#include "sweepwright/formats/debrief_map.hpp"

#include <fmt/format.h>

#include <cmath>

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/ramp.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kBlock = 0.7;            // mm: side of the squares that ground is sampled in
constexpr double kSeam = 0.06;            // mm: covers the hair lines between squares
constexpr double kTrackTolerance = 0.05;  // mm: a track is drawn this near to itself
constexpr double kOtherTrack = 0.16;
constexpr double kSearchTrack = 0.3;
constexpr double kSightingRadius = 1.5;
constexpr Colour kHoleColour{201, 49, 0};
const Stroke kHoleLine{kHoleColour, 0.45, {1.2, 0.7}};
const Hatch kHoleHatch{kHoleColour, 0.14, 1.8, 45};
const Stroke kOtherLine{style::kQuiet, kOtherTrack, {}};

/// Steps of a fifth, the darkest first; light enough that tracks can be seen on them.
std::vector<RampClass> pod_classes() {
  constexpr int kSteps = 5;
  constexpr double kDarkest = 0.62;
  std::vector<RampClass> classes;
  for (int i = kSteps - 1; i >= 0; --i) {
    RampClass step;
    step.least = static_cast<double>(i) / kSteps;
    step.label = fmt::format("{} to {} %", 100 * i / kSteps, 100 * (i + 1) / kSteps);
    step.colour = ramp_colour(kDarkest * i / (kSteps - 1));
    classes.push_back(std::move(step));
  }
  return classes;
}

PaperLine rectangle(double left, double top, double right, double bottom) {
  return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

/// The probability of detection at a place; none beyond the raster.
std::optional<double> pod_at(const debrief::Debriefing& found, Position position) {
  const debrief::CoverageFrame& frame = found.frame;
  if (geodesic(frame.plane.centre(), position).length > kLocalPlaneReach / 2) return std::nullopt;
  const PlanePoint point = frame.plane.to_plane(position);
  const double column = std::floor((point.right - frame.corner.right) / frame.cell);
  const double row = std::floor((point.up - frame.corner.up) / frame.cell);
  if (column < 0 || row < 0 || column >= static_cast<double>(frame.columns) ||
      row >= static_cast<double>(frame.rows)) {
    return std::nullopt;
  }
  return double{found.raster_pod[static_cast<std::size_t>(row) * frame.columns +
                                 static_cast<std::size_t>(column)]};
}

/// Squares of one step of the ramp, those in a row joined.
Elements shading(const MapView& view, const debrief::Debriefing& found,
                 const std::vector<RampClass>& classes) {
  std::vector<std::vector<PaperLine>> rings(classes.size());
  const PaperBox& frame = view.frame();
  for (double top = frame.top_mm; top < frame.bottom_mm; top += kBlock) {
    std::optional<std::size_t> running;
    double start = frame.left_mm;
    const auto close = [&](double at) {
      if (running) rings[*running].push_back(rectangle(start, top, at, top + kBlock));
    };
    for (double left = frame.left_mm; left < frame.right_mm; left += kBlock) {
      const auto pod = pod_at(found, view.to_position({left + kBlock / 2, top + kBlock / 2}));
      // The lightest step is left as paper: ground that was hardly looked at.
      std::optional<std::size_t> step;
      if (pod && *pod > 0) step = class_of(*pod, classes);
      if (step && *step + 1 == classes.size()) step.reset();
      if (step == running) continue;
      close(left);
      running = step;
      start = left;
    }
    close(frame.right_mm);
  }
  Elements elements;
  for (std::size_t i = 0; i < classes.size(); ++i) {
    if (rings[i].empty()) continue;
    elements.push_back(
        {Shape{std::move(rings[i]), Stroke{classes[i].colour, kSeam, {}}, classes[i].colour, {}}});
  }
  return elements;
}

/// The line with the points that it does not need left out: paper is a plane.
PaperLine simplified(const PaperLine& line) {
  PlaneLine points;
  for (const PaperPoint& p : line) {
    points.push_back({Length::metres(p.x_mm), Length::metres(p.y_mm)});
  }
  PaperLine shorter;
  for (const PlanePoint& p : thinned(points, Length::metres(kTrackTolerance))) {
    shorter.push_back({p.right.metres(), p.up.metres()});
  }
  return shorter;
}

/// The stretches of a sortie, joined while they have the same use and meet.
Elements track_lines(const MapView& view, const debrief::Sortie& sortie) {
  const CrewStyle crew = crew_style(sortie.input.assignment);
  Elements under;
  Elements over;
  PaperLine line;
  bool searching = false;
  std::optional<Position> end;
  const auto close = [&] {
    if (line.size() > 1) {
      (searching ? over : under)
          .push_back({Line{simplified(line),
                           searching ? Stroke{crew.colour, kSearchTrack, {}} : kOtherLine}});
    }
    line.clear();
  };
  for (const debrief::FlownPiece& piece : sortie.pieces) {
    const bool counts = piece.swept.sweep_width > Length();
    if (!end || *end != piece.swept.from || counts != searching) {
      close();
      searching = counts;
      line.push_back(view.to_paper(piece.swept.from));
    }
    line.push_back(view.to_paper(piece.swept.to));
    end = piece.swept.to;
  }
  close();
  append(under, std::move(over));
  return under;
}

Elements sighting_symbol(PaperPoint at) {
  return {{Disc{at, kSightingRadius, Stroke{kHoleColour, 0.5, {}}, kWhite}},
          {Disc{at, 0.45, {}, kHoleColour}}};
}

LegendItem swatch(const RampClass& step) {
  return {"POD " + step.label, [colour = step.colour](PaperBox box) {
            const PaperBox inner = grown(box, -0.3);
            return Elements{
                {Shape{{rectangle(inner.left_mm, inner.top_mm, inner.right_mm, inner.bottom_mm)},
                       Stroke{style::kFaint, style::kCellLine, {}},
                       colour,
                       {}}}};
          }};
}

std::vector<LegendItem> legend_items(const DebriefOutcome& outcome,
                                     const std::vector<RampClass>& classes) {
  std::vector<LegendItem> items;
  for (std::size_t i = 0; i + 1 < classes.size(); ++i) items.push_back(swatch(classes[i]));
  items.push_back(legend_line("sector", Stroke{style::kInk, style::kSectorOutline, {}}));
  items.push_back(
      legend_line(fmt::format("POD under {:.0f} %", 100 * outcome.hole_below.value()), kHoleLine));
  items.push_back(legend_line("track, search", Stroke{style::kInk, kSearchTrack, {}}));
  items.push_back(legend_line("track, not counted", kOtherLine));
  items.push_back(legend_symbol("sighting", sighting_symbol));
  return items;
}

std::vector<Position> shown_places(const DebriefOutcome& outcome) {
  std::vector<Position> shown;
  for (const plan::Assignment& assignment : outcome.plan.assignments) {
    const std::vector<Position> outer = corners(assignment.sector);
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  return shown;
}

std::string title(const DebriefOutcome& outcome) {
  return fmt::format("As flown: POS {:.1f} %", 100 * outcome.debriefing.success);
}

}  // namespace

Drawing draw_debrief_map(const DebriefOutcome& outcome, PaperSize size) {
  const std::vector<RampClass> classes = pod_classes();
  const std::vector<LegendItem> legend = legend_items(outcome, classes);
  GroundMap map = ground_map(shown_places(outcome), size, legend);
  Elements under = shading(map.view, outcome.debriefing, classes);
  append(under, std::move(map.graticule.lines));
  Elements over;
  for (const auto& of_sector : outcome.holes) {
    for (const debrief::Hole& hole : of_sector) {
      over.push_back({Shape{map.view.to_paper(hole.region), kHoleLine, {}, kHoleHatch}});
    }
  }
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    append(over, track_lines(map.view, result.sortie));
  }
  for (const plan::Assignment& assignment : outcome.plan.assignments) {
    over.push_back({Shape{map.view.to_paper(assignment.sector),
                          Stroke{style::kInk, style::kSectorOutline, {}},
                          {},
                          {}}});
  }
  const std::vector<CrewSighting> seen = sightings(outcome);
  for (const CrewSighting& sighting : seen) {
    if (!sighting.sighting.position || !map.view.shows(*sighting.sighting.position)) continue;
    const PaperPoint at = map.view.to_paper(*sighting.sighting.position);
    map.placer.keep_clear(box_round(at, {2 * kSightingRadius, 2 * kSightingRadius}));
    append(over, sighting_symbol(at));
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (!seen[i].sighting.position || !map.view.shows(*seen[i].sighting.position)) continue;
    append(over, named_beside(map.view.to_paper(*seen[i].sighting.position), kSightingRadius,
                              fmt::format("{}", i + 1), true, map.placer));
  }
  for (const plan::Assignment& assignment : outcome.plan.assignments) {
    append(over, sector_label(map.view, assignment.sector, assignment.sector_name,
                              assignment.unit.callsign, map.placer));
  }
  if (outcome.plan.mission.datum) {
    const Position datum = outcome.plan.mission.datum->position;
    if (map.view.shows(datum)) append(over, datum_symbol(map.view.to_paper(datum)));
  }
  return finished(std::move(map), size, title(outcome), std::move(under), std::move(over), legend);
}

std::vector<CrewSighting> sightings(const DebriefOutcome& outcome) {
  std::vector<CrewSighting> all;
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const debrief::SortieInput& input = result.sortie.input;
    if (!input.report) continue;
    const plan::Assignment& assignment = outcome.plan.assignments[input.assignment];
    for (const debrief::Sighting& sighting : input.report->sightings) {
      all.push_back({assignment.unit.callsign, assignment.sector_name, sighting});
    }
  }
  return all;
}

}  // namespace sweepwright::formats
