// Sweep width of sensors that no visual table covers: from a detection range.
//
// Problem: a beacon is heard, a radar echo seen, to some range; a ground team walks an object in
//   sight and out of sight. What is known is that range; the width follows by a factor that depends
//   on what the range stands for.
// Conventions: W = factor x range. No other correction is applied: the range holds for the day.
// Domain: ranges above 0, heights 0 or more.
// Accuracy: the arithmetic is right to 1e-12 of the value; the factors are printed to two digits
//   (sensor_test.cpp).
// Promises: P1 width, factor and source stand in the working.
// Source: Joint Pub 3-50 Volume I, paragraph 535.D (electronic sensors); Wilderness and
//   Environmental Medicine 2014, doi 10.1016/j.wem.2013.09.016, abstract (ground teams) [both
//   seen]; Federal Standard 1037C, "radio horizon range": 1.23 NM for the root of a foot, from an
//   Earth radius of 4/3 [seen].
#pragma once

#include <span>
#include <string_view>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::sweep {

/// What a detection range of an electronic sensor stands for.
enum class RangeKind {
  minimum,  ///< the least range known: factor 1.7
  average,  ///< the mean of them: factor 1.5
  maximum,  ///< the greatest: factor 1.0
  horizon,  ///< no range but that of the horizon is known: factor 0.5
};
std::string_view name(RangeKind kind);
std::span<const std::string_view> range_kind_names();
RangeKind parse_range_kind(std::string_view text);
double factor(RangeKind kind);

/// How well the object stands out from the ground that a team walks.
enum class Contrast {
  any,     ///< the mean over all objects: factor 1.645
  high,    ///< factor 1.8
  medium,  ///< factor 1.6
  low,     ///< factor 1.1
};
std::string_view name(Contrast contrast);
std::span<const std::string_view> contrast_names();
Contrast parse_contrast(std::string_view text);
double factor(Contrast contrast);

/// Of an electronic sensor or a beacon. Throws Error (value) unless the range is above 0.
SweepWidth electronic_sweep_width(Length detection_range, RangeKind kind);

/// Of a ground team: `range_of_detection` is the mean of the distances at which the object is lost
/// from sight walking away and seen again walking up, from all sides. Throws Error (value) unless
/// it is above 0.
SweepWidth ground_team_sweep_width(Length range_of_detection, Contrast contrast);

/// Heights above the surface of the searcher's aerial and of the beacon.
struct AerialHeights {
  Length searcher;
  Length beacon;
};

/// How far a radio ray reaches over smooth ground or sea: sqrt(2 k R h) for each height, with k =
/// 4/3; 1.23 NM for the root of a foot. Hills shorten it. Throws Error (value) unless the heights
/// are 0 or more and one of them above 0.
Length radio_horizon(AerialHeights heights);
/// Of a beacon when nothing but its horizon is known.
SweepWidth horizon_sweep_width(AerialHeights heights);

}  // namespace sweepwright::sweep
