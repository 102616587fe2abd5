#include "sweepwright/formats/timeline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "formats/crew_times.hpp"
#include "formats/day_bands.hpp"
#include "formats/map_labels.hpp"
#include "formats/map_style.hpp"
#include "formats/map_symbols.hpp"
#include "formats/sheet_figures.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

using std::chrono::minutes;

constexpr double kNames = 38;   // mm: sector and callsign on the left
constexpr double kTop = 6.5;    // mm: UTC, and the sun
constexpr double kBottom = 12;  // mm: local time and the legend
constexpr double kRight = 6;    // mm: half of the last label
constexpr double kRow = 6.4;    // mm
constexpr double kBar = 0.62;   // of the row
constexpr Colour kNight{190, 190, 190};
constexpr Colour kTwilight{226, 226, 226};
constexpr std::array<minutes, 10> kSteps{minutes(5),   minutes(10),  minutes(15),  minutes(30),
                                         minutes(60),  minutes(120), minutes(180), minutes(360),
                                         minutes(720), minutes(1440)};

PaperLine box_ring(const PaperBox& box) {
  return {{box.left_mm, box.top_mm},
          {box.right_mm, box.top_mm},
          {box.right_mm, box.bottom_mm},
          {box.left_mm, box.bottom_mm}};
}

Element words(PaperPoint at, std::string text, TextAnchor anchor, bool bold) {
  return {Text{at, std::move(text), style::kSmallText, anchor, bold, 0, style::kInk, 0}};
}

/// From the first departure to the last return, the reserve included; as far as sunset and the end
/// of the period where those are near.
plan::Period shown_span(const plan::Plan& plan, Position place) {
  plan::Period span{TimePoint::max(), TimePoint::min()};
  for (const plan::Assignment& assignment : plan.assignments) {
    const CrewTimes times = crew_times(assignment);
    span.from = std::min(span.from, times.leaves_base);
    span.to = std::max({span.to, times.at_base, times.endurance_ends.value_or(times.at_base)});
  }
  const auto near =
      std::max(std::chrono::duration_cast<TimePoint::duration>(span.to - span.from) / 3,
               TimePoint::duration(minutes(30)));
  const TimePoint period_end = plan.mission.incident.operational_period.to;
  if (period_end <= span.to + near) span.to = std::max(span.to, period_end);
  const plan::Period wider{span.from, span.to + near};
  for (const plan::Period& sun : day_bands(place, wider).sun) {
    if (sun.to < wider.to) span.to = std::max(span.to, sun.to + minutes(10));
  }
  const auto quarter = minutes(15);
  return {std::chrono::floor<minutes>(span.from - quarter),
          std::chrono::ceil<minutes>(span.to + quarter)};
}

class Chart {
 public:
  Chart(const plan::Plan& plan, double width_mm)
      : plan_(plan),
        place_(middle(plan.area)),
        span_(shown_span(plan, place_)),
        frame_{kNames, kTop, width_mm - kRight,
               kTop + kRow * static_cast<double>(plan.assignments.size())} {}

  Elements elements() const {
    Elements out = darkness();
    append(out, ticks());
    append(out, period());
    for (std::size_t i = 0; i < plan_.assignments.size(); ++i) append(out, row(i));
    out.push_back({Shape{{box_ring(frame_)}, Stroke{style::kInk, style::kFrameLine, {}}, {}, {}}});
    append(out, legend(legend_items(), {0, frame_.bottom_mm + 5.2, frame_.right_mm + kRight,
                                        frame_.bottom_mm + kBottom}));
    return out;
  }

 private:
  double x_mm(TimePoint time) const {
    const double share = Duration(time - span_.from) / Duration(span_.to - span_.from);
    return frame_.left_mm + share * frame_.width_mm();
  }
  PaperBox across(const plan::Period& band) const {
    return {x_mm(band.from), frame_.top_mm, x_mm(band.to), frame_.bottom_mm};
  }
  minutes offset() const { return plan_.mission.incident.offset_from_utc; }

  Elements darkness() const {
    const DayBands bands = day_bands(place_, span_);
    Elements out{{Shape{{box_ring(frame_)}, {}, kNight, {}}}};
    for (const plan::Period& band : bands.civil_twilight) {
      out.push_back({Shape{{box_ring(across(band))}, {}, kTwilight, {}}});
    }
    for (const plan::Period& band : bands.sun) {
      out.push_back({Shape{{box_ring(across(band))}, {}, kWhite, {}}});
    }
    double free_from = frame_.left_mm;  // names keep clear of each other
    const auto mark = [&](TimePoint time, std::string_view name) {
      if (time <= span_.from || time >= span_.to) return;
      const double x = x_mm(time);
      out.push_back({Line{{{x, frame_.top_mm}, {x, frame_.bottom_mm}},
                          Stroke{style::kInk, 0.25, {1.2, 0.8}}}});
      const std::string text = fmt::format("{} {}", name, clock_text(time, offset()));
      const double half = text_width_mm(text, style::kSmallText, true) / 2;
      const double at = std::clamp(x, frame_.left_mm + half, frame_.right_mm + kRight - half);
      if (at - half < free_from) return;
      out.push_back(words({at, 1.6}, text, TextAnchor::middle, true));
      free_from = at + half + 1;
    };
    for (const plan::Period& band : bands.sun) {
      mark(band.from, "sunrise");
      mark(band.to, "sunset");
    }
    return out;
  }

  Elements ticks() const {
    constexpr double kLeastGap = 13;  // mm
    const auto length = span_.to - span_.from;
    minutes step = kSteps.back();
    for (const minutes each : kSteps) {
      if (Duration(each) / Duration(length) * frame_.width_mm() >= kLeastGap) {
        step = each;
        break;
      }
    }
    Elements out{
        words({frame_.left_mm - 6, frame_.top_mm - 1.6}, "UTC", TextAnchor::end, false),
        words({frame_.left_mm - 6, frame_.bottom_mm + 1.9}, "local", TextAnchor::end, true)};
    // Whole multiples of the step by the local clock.
    const TimePoint local = span_.from + offset();
    const TimePoint day = std::chrono::floor<std::chrono::days>(local);
    for (TimePoint tick = day; tick <= span_.to + offset(); tick += step) {
      if (tick < local) continue;
      const TimePoint time = tick - offset();
      const double x = x_mm(time);
      const bool midnight = tick == std::chrono::floor<std::chrono::days>(tick);
      out.push_back({Line{{{x, frame_.top_mm}, {x, frame_.bottom_mm}},
                          Stroke{style::kFaint, midnight ? 0.5 : 0.12, {}}}});
      out.push_back(
          words({x, frame_.bottom_mm + 1.9}, clock_text(time, offset()), TextAnchor::middle, true));
      out.push_back(
          words({x, frame_.top_mm - 1.6}, clock_text(time, minutes(0)), TextAnchor::middle, false));
    }
    return out;
  }

  Elements period() const {
    Elements out;
    const plan::Period& period = plan_.mission.incident.operational_period;
    for (const TimePoint time : {period.from, period.to}) {
      if (time < span_.from || time > span_.to) continue;
      const double x = x_mm(time);
      out.push_back(
          {Line{{{x, frame_.top_mm}, {x, frame_.bottom_mm}}, Stroke{style::kInk, 0.6, {}}}});
    }
    return out;
  }

  /// A bar of the row from one time to another.
  PaperBox bar(std::size_t row, TimePoint from, TimePoint to) const {
    const double middle = frame_.top_mm + kRow * (static_cast<double>(row) + 0.5);
    const double half = kRow * kBar / 2;
    return {x_mm(from), middle - half, x_mm(to), middle + half};
  }

  Elements row(std::size_t index) const;
  std::vector<LegendItem> legend_items() const;

  const plan::Plan& plan_;
  Position place_;
  plan::Period span_;
  PaperBox frame_;
};

Element way_bar(const PaperBox& box) {
  return {Shape{
      {box_ring(box)}, Stroke{style::kInk, 0.25, {}}, kWhite, Hatch{style::kQuiet, 0.12, 1.1, 45}}};
}

Element spare_bar(const PaperBox& box) {
  return {Shape{{box_ring(box)}, Stroke{style::kInk, 0.25, {0.8, 0.6}}, kWhite, {}}};
}

Element reserve_bar(const PaperBox& box) {
  return {Shape{
      {box_ring(box)}, Stroke{style::kInk, 0.25, {}}, kWhite, Hatch{style::kInk, 0.18, 0.7, 0}}};
}

Element scene_bar(const PaperBox& box, Colour colour) {
  return {Shape{{box_ring(box)}, Stroke{style::kInk, 0.25, {}}, colour, {}}};
}

/// A wedge that points at its time from above.
Elements bingo_mark(double x, double top, double bottom) {
  return {{Line{{{x, top}, {x, bottom}}, Stroke{kWhite, 1.1, {}}}},
          {Line{{{x, top}, {x, bottom}}, Stroke{style::kInk, 0.5, {}}}},
          {Shape{{{{x - 1.2, top - 0.9}, {x + 1.2, top - 0.9}, {x, top + 1}}},
                 Stroke{kWhite, 0.3, {}},
                 style::kInk,
                 {}}}};
}

/// Black or white, whichever stands out more on the colour (WCAG 2.1, relative luminance; a plain
/// power stands for its curve).
Colour on_colour(Colour colour) {
  const auto linear = [](std::uint8_t value) { return std::pow(value / 255.0, 2.2); };
  const double luminance =
      0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
  return luminance > 0.18 ? kBlack : kWhite;
}

Elements Chart::row(std::size_t index) const {
  const plan::Assignment& assignment = plan_.assignments[index];
  const CrewTimes times = crew_times(assignment);
  const double y = frame_.top_mm + kRow * (static_cast<double>(index) + 0.5);
  Elements out;
  out.push_back(words({0, y}, assignment.sector_name, TextAnchor::start, true));
  const double name_left =
      std::max(7.0, text_width_mm(assignment.sector_name, style::kSmallText, true) + 1.5);
  out.push_back(
      words({name_left, y},
            fitted(assignment.unit.callsign, style::kSmallText, false, kNames - name_left - 1),
            TextAnchor::start, false));
  if (index > 0) {
    const double top = y - kRow / 2;
    out.push_back({Line{{{0.1, top}, {frame_.right_mm, top}}, Stroke{style::kFaint, 0.12, {}}}});
  }
  out.push_back(way_bar(bar(index, times.leaves_base, times.on_scene)));
  const PaperBox scene = bar(index, times.on_scene, times.off_scene);
  const Colour colour = crew_style(index).colour;
  out.push_back(scene_bar(scene, colour));
  const std::string length = format_duration_minutes(assignment.pattern_time);
  if (text_width_mm(length, style::kSmallText, true) + 1 < scene.width_mm()) {
    out.push_back({Text{middle(scene), length, style::kSmallText, TextAnchor::middle, true, 0,
                        on_colour(colour), 0}});
  }
  out.push_back(way_bar(bar(index, times.off_scene, times.at_base)));
  if (times.reserve_begins && *times.reserve_begins > times.at_base) {
    out.push_back(spare_bar(bar(index, times.at_base, *times.reserve_begins)));
  }
  if (times.endurance_ends) {
    const TimePoint from = std::max(*times.reserve_begins, times.at_base);
    if (*times.endurance_ends > from)
      out.push_back(reserve_bar(bar(index, from, *times.endurance_ends)));
  }
  if (times.bingo) append(out, bingo_mark(x_mm(*times.bingo), scene.top_mm, scene.bottom_mm));
  return out;
}

std::vector<LegendItem> Chart::legend_items() const {
  const auto sample = [](PaperBox box) { return grown(box, -0.6); };
  bool endurance = false;
  bool bingo = false;
  for (const plan::Assignment& assignment : plan_.assignments) {
    const CrewTimes times = crew_times(assignment);
    endurance = endurance || times.endurance_ends;
    bingo = bingo || times.bingo;
  }
  std::vector<LegendItem> items{
      {"way out, way back", [=](PaperBox box) { return Elements{way_bar(sample(box))}; }},
      {"on scene, h:mm",
       [=](PaperBox box) { return Elements{scene_bar(sample(box), crew_style(0).colour)}; }}};
  if (endurance) {
    items.push_back({"to spare", [=](PaperBox box) { return Elements{spare_bar(sample(box))}; }});
    items.push_back({"reserve", [=](PaperBox box) { return Elements{reserve_bar(sample(box))}; }});
  }
  if (bingo) {
    items.push_back({"bingo", [=](PaperBox box) {
                       return bingo_mark(middle(box).x_mm, box.top_mm + 1, box.bottom_mm - 0.4);
                     }});
  }
  items.push_back({"operational period", [](PaperBox box) {
                     const double x = middle(box).x_mm;
                     return Elements{{Line{{{x, box.top_mm + 0.3}, {x, box.bottom_mm - 0.3}},
                                           Stroke{style::kInk, 0.6, {}}}}};
                   }});
  const auto shade = [=](Colour colour) {
    return [=](PaperBox box) {
      return Elements{{Shape{{box_ring(sample(box))}, Stroke{style::kInk, 0.15, {}}, colour, {}}}};
    };
  };
  const DayBands bands = day_bands(place_, span_);
  const auto throughout = [&](const std::vector<plan::Period>& spans) {
    return !spans.empty() && spans.front().from == span_.from && spans.front().to == span_.to;
  };
  if (!throughout(bands.sun)) items.push_back({"civil twilight", shade(kTwilight)});
  if (!throughout(bands.civil_twilight)) items.push_back({"night", shade(kNight)});
  return items;
}

}  // namespace

double timeline_height_mm(std::size_t crews) {
  return kTop + kBottom + kRow * static_cast<double>(crews);
}

Drawing draw_timeline(const plan::Plan& plan, double width_mm) {
  if (!(width_mm >= kLeastTimelineWidth)) {
    throw Error(ErrorCode::value,
                fmt::format("a timeline of {:.0f} mm is too narrow to read", width_mm),
                fmt::format("make it at least {:.0f} mm wide", kLeastTimelineWidth));
  }
  if (plan.assignments.empty()) throw Error(ErrorCode::value, "a timeline needs a crew");
  Drawing drawing;
  drawing.size = {width_mm, timeline_height_mm(plan.assignments.size())};
  drawing.title = "Timeline of all crews";
  for (const plan::Assignment& assignment : plan.assignments) {
    const CrewTimes times = crew_times(assignment);
    const auto clock = [&](TimePoint time) {
      return clock_text(time, plan.mission.incident.offset_from_utc);
    };
    drawing.description += fmt::format(
        "{}{} {}: leaves {}, on scene {} to {}, back {}.", drawing.description.empty() ? "" : " ",
        assignment.sector_name, assignment.unit.callsign, clock(times.leaves_base),
        clock(times.on_scene), clock(times.off_scene), clock(times.at_base));
  }
  drawing.elements = Chart(plan, width_mm).elements();
  return drawing;
}

}  // namespace sweepwright::formats
