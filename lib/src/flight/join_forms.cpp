#include "flight/join_forms.hpp"

#include <cmath>
#include <numbers>

namespace sweepwright::flight {
namespace {

constexpr double kCircle = 2 * std::numbers::pi;
/// Turns this close to a whole circle are no turn: rounding, not flying.
constexpr double kNearlyCircle = kCircle - 1e-9;
/// How closely a root must meet its equation, in radians of turn or radii.
constexpr double kRootTolerance = 1e-7;
constexpr int kBisections = 60;
constexpr int kSamplesCrossed = 48;
constexpr int kSamplesTeardrop = 64;

Vector operator+(Vector a, Vector b) {
  return {a.east + b.east, a.north + b.north};
}
Vector operator-(Vector a, Vector b) {
  return {a.east - b.east, a.north - b.north};
}
Vector operator*(Vector a, double factor) {
  return {a.east * factor, a.north * factor};
}
double dot(Vector a, Vector b) {
  return a.east * b.east + a.north * b.north;
}
double cross(Vector a, Vector b) {
  return a.east * b.north - a.north * b.east;
}

double sign(Side side) {
  return side == Side::right ? 1 : -1;
}

/// An angle turned, in [0, circle).
double turned(double angle) {
  double rest = std::fmod(angle, kCircle);
  if (rest < 0) rest += kCircle;
  return rest >= kNearlyCircle ? 0 : rest;
}

Vector along(double heading) {
  return {std::sin(heading), std::cos(heading)};
}

/// A turn to the right from heading a to heading b leads rim(a) - rim(b) through the air; to the
/// left the reverse.
Vector rim(double heading) {
  return {std::cos(heading), -std::sin(heading)};
}

double heading_of_rim(Vector point) {
  return std::atan2(-point.north, point.east);
}

void keep_quicker(std::optional<JoinSolution>& best, const JoinSolution& found) {
  if (!best || found.time < best->time) best = found;
}

/// Hands every root of `f` between `low` and `high` to `use`: sign changes between samples,
/// narrowed down. A jump of `f` changes its sign too, and is not a root.
template <typename Function, typename Use>
void for_roots(double low, double high, int samples, Function f, Use use) {
  const double step = (high - low) / samples;
  double a = low;
  double f_a = f(a);
  for (int i = 1; i <= samples; ++i) {
    const double b = low + step * i;
    const double f_b = f(b);
    if ((f_a <= 0) != (f_b <= 0)) {
      double left = a;
      double right = b;
      for (int n = 0; n < kBisections && right - left > 1e-14 * kCircle; ++n) {
        const double middle = (left + right) / 2;
        ((f(middle) <= 0) == (f_a <= 0) ? left : right) = middle;
      }
      if (std::abs(f(left)) < kRootTolerance) use(left);
    }
    a = b;
    f_a = f_b;
  }
}

}  // namespace

std::optional<JoinSolution> plain_join(const JoinProblem& problem, Side side, int circles) {
  const double s = sign(side);
  const double needed = turned(s * (problem.to - problem.from));
  const double total = needed + kCircle * circles;
  // What the turns and the wind meanwhile do does not depend on where the straight part lies.
  const Vector rest =
      problem.way - (rim(problem.from) - rim(problem.to)) * s - problem.wind * total;
  const double distance = std::hypot(rest.east, rest.north);
  if (distance < 1e-9) return JoinSolution{TurnForm::plain, {s * total, 0, 0}, 0, total};
  const Vector track = rest * (1 / distance);
  const double wind_across = cross(track, problem.wind);
  const double wind_along = dot(track, problem.wind);
  const double ground_speed = std::sqrt(1 - wind_across * wind_across) + wind_along;
  if (!(ground_speed > 1e-6)) return std::nullopt;
  const Vector air = track * ground_speed - problem.wind;
  const double first = turned(s * (std::atan2(air.east, air.north) - problem.from));
  const double second = total - first;
  if (second < -1e-9 || second > kCircle) return std::nullopt;
  const double straight = distance / ground_speed;
  return JoinSolution{
      TurnForm::plain, {s * first, s * std::max(second, 0.0), 0}, straight, total + straight};
}

std::optional<JoinSolution> crossed_join(const JoinProblem& problem, Side side) {
  const double s = sign(side);
  const auto second_turn = [&](double first) {
    return turned(s * (problem.from - problem.to) + first);
  };
  const auto ground_motion = [&](double first) {
    return along(problem.from + s * first) + problem.wind;
  };
  /// What is left for the straight part once both turns are flown.
  const auto rest = [&](double first) {
    const Vector in_air =
        (rim(problem.from) + rim(problem.to) - rim(problem.from + s * first) * 2) * s;
    return problem.way - in_air - problem.wind * (first + second_turn(first));
  };
  std::optional<JoinSolution> best;
  const auto misses = [&](double first) { return cross(rest(first), ground_motion(first)); };
  const auto use = [&](double first) {
    const Vector motion = ground_motion(first);
    const double straight = dot(rest(first), motion) / dot(motion, motion);
    if (straight < 0) return;
    const double second = second_turn(first);
    keep_quicker(
        best,
        {TurnForm::crossed, {s * first, -s * second, 0}, straight, first + second + straight});
  };
  // The second turn jumps by a circle where the first one ends on the heading of arrival.
  const double jump = turned(s * (problem.to - problem.from));
  for_roots(0, jump, kSamplesCrossed, misses, use);
  for_roots(jump, kCircle, kSamplesCrossed, misses, use);
  return best;
}

std::optional<JoinSolution> teardrop_join(const JoinProblem& problem, Side side) {
  const double s = sign(side);
  const bool calm = problem.wind.east == 0 && problem.wind.north == 0;
  std::optional<JoinSolution> best;
  for (const double branch : {-1.0, 1.0}) {
    // For a time T that the wind blows, the chord rim(h1) - rim(h2) of the middle turn is known;
    // two middle turns have it.
    const auto turns_in = [&](double time) -> std::optional<std::array<double, 3>> {
      const Vector in_air = problem.way - problem.wind * time;
      const Vector chord = (rim(problem.from) - rim(problem.to) - in_air * s) * 0.5;
      const double size = std::hypot(chord.east, chord.north);
      if (size > 2 || size < 1e-9) return std::nullopt;
      const double height = branch * std::sqrt(1 - size * size / 4);
      const Vector up = Vector{-chord.north, chord.east} * (height / size);
      const double h1 = heading_of_rim(chord * 0.5 + up);
      const double h2 = heading_of_rim(chord * -0.5 + up);
      return std::array<double, 3>{turned(s * (h1 - problem.from)), turned(s * (h1 - h2)),
                                   turned(s * (problem.to - h2))};
    };
    const auto use = [&](double time) {
      const auto turns = turns_in(time);
      if (!turns) return;
      const auto [a, b, c] = *turns;
      keep_quicker(best, {TurnForm::teardrop, {s * a, -s * b, s * c}, 0, a + b + c});
    };
    if (calm) {
      use(0);
      continue;
    }
    const auto misses = [&](double time) {
      const auto turns = turns_in(time);
      return turns ? (*turns)[0] + (*turns)[1] + (*turns)[2] - time : 3 * kCircle;
    };
    for_roots(0, 2 * kCircle, kSamplesTeardrop, misses, use);
  }
  return best;
}

}  // namespace sweepwright::flight
