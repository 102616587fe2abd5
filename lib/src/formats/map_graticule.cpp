#include "formats/map_graticule.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "formats/map_style.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLeastGap = 24;  // mm between lines
constexpr std::array<double, 17> kStepsInMinutes{0.1, 0.2, 0.5, 1,   2,   5,   10,   15,  20,
                                                 30,  60,  120, 300, 600, 900, 1800, 2700};

/// The least usual step whose lines are far enough apart.
double step_minutes(double mm_per_minute) {
  for (const double step : kStepsInMinutes) {
    if (step * mm_per_minute >= kLeastGap) return step;
  }
  return kStepsInMinutes.back();
}

/// The latitudes and longitudes that a map shows; longitudes as turns from its middle's.
struct Reach {
  double south = 90;
  double north = -90;
  double west = 0;
  double east = 0;
  double middle_longitude = 0;
  bool pole = false;
};

Reach reach(const MapView& view) {
  constexpr int kSteps = 32;
  const PaperBox& frame = view.frame();
  Reach out;
  out.middle_longitude = view.to_position(middle(frame)).longitude().degrees();
  for (int row = 0; row <= kSteps; ++row) {
    for (int column = 0; column <= kSteps; ++column) {
      const Position at = view.to_position({frame.left_mm + frame.width_mm() * column / kSteps,
                                            frame.top_mm + frame.height_mm() * row / kSteps});
      const double latitude = at.latitude().degrees();
      const double turn =
          normalized_180(at.longitude() - Angle::degrees(out.middle_longitude)).degrees();
      out.south = std::min(out.south, latitude);
      out.north = std::max(out.north, latitude);
      out.west = std::min(out.west, turn);
      out.east = std::max(out.east, turn);
    }
  }
  for (const double latitude : {-90.0, 90.0}) {
    const Position pole = Position::at(Angle::degrees(latitude), Angle());
    if (!view.in_reach(pole) || !view.shows(pole)) continue;
    out.pole = true;
    (latitude < 0 ? out.south : out.north) = latitude;
    out.west = -180;
    out.east = 180;
  }
  return out;
}

std::string degrees_and_minutes(double tenths_of_minutes, const char* letters) {
  const auto tenths = static_cast<long long>(std::llround(std::abs(tenths_of_minutes)));
  const char letter = tenths_of_minutes < 0 ? letters[1] : letters[0];
  const long long degrees = tenths / 600;
  const long long minutes = tenths / 10 % 60;
  const bool bare = tenths == 0 || (letters[0] == 'E' && tenths == 180 * 600);
  std::string text = fmt::format("{}°", degrees);
  if (tenths % 600 != 0) text += fmt::format("{:02}", minutes);
  if (tenths % 10 != 0) text += fmt::format(".{}", tenths % 10);
  if (tenths % 600 != 0) text += "'";
  if (!bare) text += letter;
  return text;
}

/// One parallel or meridian on the paper, as far as the frame shows it.
struct GraticuleLine {
  std::vector<PaperLine> parts;
  std::string label;
  bool meridian = false;
};

/// `place_at(share)`: the place that far along the line, from 0 to 1.
template <typename PlaceAt>
std::vector<PaperLine> drawn(const MapView& view, int pieces, PlaceAt place_at) {
  std::vector<PaperLine> parts;
  PaperLine line;
  const auto finish = [&] {
    for (PaperLine& part : clipped(line, view.frame())) parts.push_back(std::move(part));
    line.clear();
  };
  for (int i = 0; i <= pieces; ++i) {
    const Position at = place_at(static_cast<double>(i) / pieces);
    if (view.in_reach(at)) {
      line.push_back(view.to_paper(at));
    } else {
      finish();
    }
  }
  finish();
  return parts;
}

std::vector<GraticuleLine> lines(const MapView& view) {
  const Reach shown = reach(view);
  const double mm_per_minute = view.on_paper_mm(Length::nautical_miles(1));
  const double middle_latitude = view.to_position(middle(view.frame())).latitude().degrees();
  const double across = shown.pole ? view.frame().width_mm() / 3 / kDegreesPerRadian / 60
                                   : mm_per_minute * std::cos(middle_latitude / kDegreesPerRadian);
  const double latitude_step = step_minutes(mm_per_minute);
  const double longitude_step = step_minutes(across);
  std::vector<GraticuleLine> out;

  const int pieces = shown.pole ? 180 : 60;
  const double first = std::ceil(shown.south * 60 / latitude_step);
  const double last = std::floor(shown.north * 60 / latitude_step);
  for (double k = first; k <= last; ++k) {
    const double latitude = k * latitude_step / 60;
    if (std::abs(latitude) >= 90) continue;
    auto parts = drawn(view, pieces, [&](double share) {
      const double turn = shown.west + share * (shown.east - shown.west);
      return Position::at(Angle::degrees(latitude), Angle::degrees(shown.middle_longitude + turn));
    });
    out.push_back({std::move(parts), degrees_and_minutes(k * latitude_step * 10, "NS"), false});
  }

  const double west = (shown.middle_longitude + shown.west) * 60 / longitude_step;
  const double east = (shown.middle_longitude + shown.east) * 60 / longitude_step;
  const double turn_round = 360 * 60 / longitude_step;
  for (double k = std::ceil(west); k <= std::floor(east); ++k) {
    if (k - std::ceil(west) >= turn_round - 0.5) break;  // round the pole and back at the first
    const Angle longitude = normalized_180(Angle::degrees(k * longitude_step / 60));
    auto parts = drawn(view, 24, [&](double share) {
      const double latitude = shown.south + share * (shown.north - shown.south);
      return Position::at(Angle::degrees(std::clamp(latitude, -90.0, 90.0)), longitude);
    });
    out.push_back({std::move(parts), degrees_and_minutes(longitude.degrees() * 600, "EW"), true});
  }
  return out;
}

enum class Side { left, right, top, bottom };

bool on_side(const PaperBox& frame, PaperPoint point, Side side) {
  constexpr double kNear = 1e-6;
  switch (side) {
    case Side::left:
      return point.x_mm <= frame.left_mm + kNear;
    case Side::right:
      return point.x_mm >= frame.right_mm - kNear;
    case Side::top:
      return point.y_mm <= frame.top_mm + kNear;
    case Side::bottom:
      return point.y_mm >= frame.bottom_mm - kNear;
  }
  return false;
}

Text edge_text(const PaperBox& frame, PaperPoint at, Side side, const std::string& label) {
  constexpr double kAway = 1.9;
  Text text{at, label, style::kSmallText, TextAnchor::middle, false, 0, style::kInk, 0};
  if (side == Side::bottom) text.at.y_mm = frame.bottom_mm + kAway;
  if (side == Side::top) text.at.y_mm = frame.top_mm - kAway;
  if (side == Side::left) text.at.x_mm = frame.left_mm - kAway;
  if (side == Side::right) text.at.x_mm = frame.right_mm + kAway;
  if (side == Side::left || side == Side::right) text.turned_deg = -90;
  return text;
}

/// Labels each line once, on the first of its sides that has room.
Elements edge_labels(const PaperBox& frame, const std::vector<GraticuleLine>& all) {
  constexpr std::array<Side, 4> kForParallels{Side::left, Side::right, Side::top, Side::bottom};
  constexpr std::array<Side, 4> kForMeridians{Side::bottom, Side::top, Side::left, Side::right};
  const PaperBox paper = grown(frame, kGraticuleMargin);
  Elements out;
  std::vector<PaperBox> taken;
  const auto place = [&](PaperPoint at, Side side, const std::string& label) {
    const Text text = edge_text(frame, at, side, label);
    const PaperBox box = bounds(text);
    if (!contains(paper, box)) return false;
    for (const PaperBox& other : taken) {
      const PaperBox shared = intersection(grown(box, 0.5), other);
      if (shared.width_mm() > 0 && shared.height_mm() > 0) return false;
    }
    taken.push_back(box);
    out.push_back({text});
    return true;
  };
  for (const GraticuleLine& line : all) {
    bool done = false;
    for (const Side side : line.meridian ? kForMeridians : kForParallels) {
      for (const PaperLine& part : line.parts) {
        for (const PaperPoint& end : {part.front(), part.back()}) {
          done = done || (on_side(frame, end, side) && place(end, side, line.label));
        }
      }
    }
  }
  return out;
}

}  // namespace

Graticule graticule(const MapView& view) {
  const std::vector<GraticuleLine> all = lines(view);
  Graticule out;
  for (const GraticuleLine& line : all) {
    for (const PaperLine& part : line.parts) {
      out.lines.push_back({Line{part, Stroke{style::kGraticule, style::kGraticuleLine, {}}}});
    }
  }
  out.labels = edge_labels(view.frame(), all);
  return out;
}

}  // namespace sweepwright::formats
