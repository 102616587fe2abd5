#include "piece_approach.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sweepwright::hazard {
namespace {

double dot(const SpacePoint& a, const SpacePoint& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

SpacePoint minus(const SpacePoint& a, const SpacePoint& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

/// Without any shift the allowed times are a line, which rounding would cut away: they get this
/// much width. The fastest aircraft moves under a millimetre in it.
constexpr double kRounding_s = 1e-6;

/// Times on both pieces, counted from the beginning of the first one: small numbers keep digits.
struct Times {
  double s = 0;
  double u = 0;
};

/// The corners of {0 <= s <= a_end, b_start <= u <= b_end, |s - u| <= shift}, in order.
std::vector<Times> allowed(double a_end, double b_start, double b_end, double shift) {
  std::vector<Times> polygon{{0, b_start}, {a_end, b_start}, {a_end, b_end}, {0, b_end}};
  for (const double side : {1.0, -1.0}) {
    std::vector<Times> kept;
    const auto room = [&](const Times& t) { return shift - side * (t.s - t.u); };
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Times& here = polygon[i];
      const Times& next = polygon[(i + 1) % polygon.size()];
      if (room(here) >= 0) kept.push_back(here);
      if ((room(here) < 0) != (room(next) < 0)) {
        const double share = room(here) / (room(here) - room(next));
        kept.push_back({here.s + share * (next.s - here.s), here.u + share * (next.u - here.u)});
      }
    }
    polygon = std::move(kept);
  }
  return polygon;
}

bool inside(const Times& t, double a_end, double b_start, double b_end, double shift) {
  return t.s >= 0 && t.s <= a_end && t.u >= b_start && t.u <= b_end && std::abs(t.s - t.u) <= shift;
}

}  // namespace

SpacePoint place_at(const SpacePiece& piece, double time_s) {
  const double duration = piece.to_s - piece.from_s;
  const double share = duration > 0 ? (time_s - piece.from_s) / duration : 0;
  return between(piece.start, piece.end, std::clamp(share, 0.0, 1.0));
}

std::optional<PieceApproach> piece_approach(const SpacePiece& a, const SpacePiece& b,
                                            double shift_s) {
  shift_s += kRounding_s;
  if (b.from_s - a.to_s > shift_s || a.from_s - b.to_s > shift_s) return std::nullopt;
  const double a_end = a.to_s - a.from_s;
  const double b_start = b.from_s - a.from_s;
  const double b_end = b.to_s - a.from_s;
  const std::vector<Times> polygon = allowed(a_end, b_start, b_end, shift_s);

  std::optional<PieceApproach> best;
  const auto offer = [&](const Times& t) {
    const double s = t.s + a.from_s;
    const double u = t.u + a.from_s;
    const double distance = distance_m(place_at(a, s), place_at(b, u));
    if (!best || distance < best->distance_m) best = PieceApproach{distance, s, u};
  };
  for (const Times& corner : polygon) offer(corner);
  if (!best) return std::nullopt;

  // The difference of the places is d + v s - w u.
  SpacePoint v = minus(a.end, a.start);
  SpacePoint w = minus(b.end, b.start);
  for (std::size_t i = 0; i < 3; ++i) {
    v[i] = a_end > 0 ? v[i] / a_end : 0;
    w[i] = b_end > b_start ? w[i] / (b_end - b_start) : 0;
  }
  SpacePoint d = minus(a.start, b.start);
  for (std::size_t i = 0; i < 3; ++i) d[i] += w[i] * b_start;

  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Times& from = polygon[i];
    const Times& to = polygon[(i + 1) % polygon.size()];
    SpacePoint start{};
    SpacePoint step{};
    for (std::size_t k = 0; k < 3; ++k) {
      start[k] = d[k] + v[k] * from.s - w[k] * from.u;
      step[k] = v[k] * (to.s - from.s) - w[k] * (to.u - from.u);
    }
    const double square = dot(step, step);
    if (square == 0) continue;
    const double share = std::clamp(-dot(start, step) / square, 0.0, 1.0);
    offer({from.s + share * (to.s - from.s), from.u + share * (to.u - from.u)});
  }

  const double vv = dot(v, v);
  const double ww = dot(w, w);
  const double vw = dot(v, w);
  const double determinant = vv * ww - vw * vw;
  // Nearly parallel lines come nearest on an edge as well.
  if (determinant > 1e-12 * vv * ww) {
    const double dv = dot(d, v);
    const double dw = dot(d, w);
    const Times t{(vw * dw - ww * dv) / determinant, (vv * dw - vw * dv) / determinant};
    if (inside(t, a_end, b_start, b_end, shift_s)) offer(t);
  }
  return best;
}

}  // namespace sweepwright::hazard
