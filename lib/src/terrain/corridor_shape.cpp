#include "terrain/corridor_shape.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::terrain {
namespace {

// Longer than any rounding, shorter than any post's step.
constexpr double kPadMetres = 1;
// Columns narrower by half at one end of the piece than at its middle: the pole is near.
constexpr double kNearPole = 0.5;

std::optional<Run> run_of(const Quad& quad, Run v) {
  std::optional<Run> run;
  const auto take = [&](double u) {
    if (!run) run = Run{u, u};
    run->least = std::min(run->least, u);
    run->most = std::max(run->most, u);
  };
  for (std::size_t i = 0; i < quad.corners.size(); ++i) {
    const LatticePoint a = quad.corners.at(i);
    const LatticePoint b = quad.corners.at((i + 1) % quad.corners.size());
    if (std::max(a.v, b.v) < v.least || std::min(a.v, b.v) > v.most) continue;
    const auto at_row = [&](double row) {
      if (a.v == b.v) return row == a.v ? a.u : b.u;
      return a.u + (b.u - a.u) * std::clamp((row - a.v) / (b.v - a.v), 0.0, 1.0);
    };
    // The side, cut at both rows; a side along a row is taken whole.
    take(a.v >= v.least && a.v <= v.most ? a.u : at_row(a.v < v.least ? v.least : v.most));
    take(b.v >= v.least && b.v <= v.most ? b.u : at_row(b.v < v.least ? v.least : v.most));
  }
  return run;
}

std::optional<Run> run_of(const Oval& oval, Run v) {
  const double nearest = std::clamp(oval.centre.v, v.least, v.most);
  const double share = oval.v_radius > 0 ? (nearest - oval.centre.v) / oval.v_radius : 0;
  if (std::abs(share) > 1) return std::nullopt;
  const double half = oval.u_radius * std::sqrt(1 - share * share);
  return Run{oval.centre.u - half, oval.centre.u + half};
}

LatticeBox box_of(LatticePoint a, LatticePoint b) {
  return {std::min(a.u, b.u), std::max(a.u, b.u), std::min(a.v, b.v), std::max(a.v, b.v)};
}

double metres_between(LatticePoint a, LatticePoint b, Metric metric) {
  return std::hypot((b.u - a.u) * metric.metres_per_u, (b.v - a.v) * metric.metres_per_v);
}

Quad quad_round(LatticePoint start, LatticePoint end, Metric metric, double half_width,
                double beyond) {
  const double x = (end.u - start.u) * metric.metres_per_u;
  const double y = (end.v - start.v) * metric.metres_per_v;
  const double length = std::hypot(x, y);
  const double along_x = length > 0 ? x / length : 1;
  const double along_y = length > 0 ? y / length : 0;
  const auto corner = [&](LatticePoint from, double along, double aside) {
    return LatticePoint{from.u + (along * along_x - aside * along_y) / metric.metres_per_u,
                        from.v + (along * along_y + aside * along_x) / metric.metres_per_v};
  };
  return {{corner(start, -beyond, -half_width), corner(end, beyond, -half_width),
           corner(end, beyond, half_width), corner(start, -beyond, half_width)}};
}

}  // namespace

Run rows_of(const Shape& shape) {
  if (const auto* oval = std::get_if<Oval>(&shape)) {
    return {oval->centre.v - oval->v_radius, oval->centre.v + oval->v_radius};
  }
  if (const auto* band = std::get_if<Band>(&shape)) return {band->v_least, band->v_most};
  const Quad& quad = std::get<Quad>(shape);
  const auto [least, most] =
      std::minmax_element(quad.corners.begin(), quad.corners.end(),
                          [](LatticePoint a, LatticePoint b) { return a.v < b.v; });
  return {least->v, most->v};
}

std::optional<Run> columns_of(const Shape& shape, Run v, Run whole) {
  if (const auto* quad = std::get_if<Quad>(&shape)) return run_of(*quad, v);
  if (const auto* oval = std::get_if<Oval>(&shape)) return run_of(*oval, v);
  const Band& band = std::get<Band>(shape);
  if (band.v_most < v.least || band.v_least > v.most) return std::nullopt;
  return whole;
}

std::optional<std::vector<Shape>> corridor_shapes(const Frame& frame, const Stretch& stretch,
                                                  Length half_width) {
  const auto reach = frame.box_round(
      stretch.middle, stretch.length / 2 + half_width + Length::metres(2 * kPadMetres));
  const auto middle = frame.to_lattice(stretch.middle);
  const auto start = frame.to_lattice(stretch.start);
  const auto end = frame.to_lattice(stretch.end);
  if (!reach || !middle || !start || !end) return std::nullopt;
  const Metric here = frame.least_metric(box_of(*middle, *middle));
  const Metric least = frame.least_metric(*reach);
  if (least.metres_per_u < kNearPole * here.metres_per_u) {
    return std::vector<Shape>{Band{reach->v_least, reach->v_most}};
  }
  const LatticePoint from = frame.unrolled(*start, *middle);
  const LatticePoint to = frame.unrolled(*end, *middle);
  // The line bends away from the chord; columns change their width across the corridor.
  const LatticePoint chord_middle{(from.u + to.u) / 2, (from.v + to.v) / 2};
  const double sag = metres_between(chord_middle, *middle, here);
  const double change = 2 * (here.metres_per_u / least.metres_per_u - 1) +
                        2 * (here.metres_per_v / least.metres_per_v - 1);
  const double width = half_width.metres() * (1 + change) + 1.5 * sag + kPadMetres;
  // Neighbouring rectangles meet at the angle by which the line turns over a piece: 8 sag / length.
  const double turn = stretch.length.metres() > 0 ? 8 * sag / stretch.length.metres() : 0;
  const double beyond = half_width.metres() * (change + turn) + kPadMetres;
  std::vector<Shape> shapes{quad_round(from, to, least, width, beyond)};
  const auto add_circle = [&](LatticePoint centre) {
    shapes.push_back(Oval{centre, width / least.metres_per_u, width / least.metres_per_v});
  };
  if (stretch.round_start) add_circle(from);
  if (stretch.round_end) add_circle(to);
  return shapes;
}

}  // namespace sweepwright::terrain
