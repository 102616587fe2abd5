// Climbs to the top of a smooth hill in a few dimensions, without slopes; private to the effort
// room.
//
// Method: compass search: a step along each axis, either way, taken when it leads up; when none
//   does, all steps are halved. Deterministic.
// Source: R. Hooke and T. A. Jeeves, Direct search, J. ACM 8 (1961) [from memory].
#pragma once

#include <cstddef>
#include <vector>

namespace sweepwright::effort {

struct Summit {
  std::vector<double> at;
  double height = 0;
};

/// `step`: the first step along every axis; `least_step`: where the climb ends.
template <typename Height>
Summit climb(std::vector<double> start, double step, double least_step, Height height) {
  Summit summit{start, height(start)};
  while (step >= least_step) {
    bool rose = false;
    for (std::size_t axis = 0; axis < summit.at.size(); ++axis) {
      for (const double move : {step, -step}) {
        std::vector<double> next = summit.at;
        next[axis] += move;
        const double there = height(next);
        if (there > summit.height) {
          summit = {next, there};
          rose = true;
          break;
        }
      }
    }
    if (!rose) step /= 2;
  }
  return summit;
}

}  // namespace sweepwright::effort
