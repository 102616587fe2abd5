// Detection: coverage, probability of detection, and the track spacing between them.
//
// Problem: how likely is the object found, if it is in the area and the area is swept at track
//   spacing S with sweep width W? Coverage C = W / S decides; how, depends on the detection law.
// Conventions: probabilities lie in 0 to 1, not in percent. Laws, with C the coverage:
//     inverse cube    POD = erf(sqrt(pi)/2 C)  evenly spaced parallel legs, visual search, ideal
//     exponential     POD = 1 - exp(-C)        random search, or legs badly kept: the cautious one
//     definite range  POD = min(C, 1)          sees all within W/2 and nothing beyond
// Domain: coverage from 0 up, probabilities from 0 to 1, spacing and width above 0. No finite
//   coverage gives a probability of 1 under the first two laws: refused (ErrorCode::impossible).
// Accuracy: 2e-16 for the probability; the coverage found for a probability p gives back p within
//   4e-16, and 1 - p within 1e-14 of its size (detection_test.cpp).
// Promises:
//   P1 probability rises with coverage and is 0 at 0.
//   P2 definite range >= inverse cube >= exponential, at any coverage.
//   P3 coverage_for() undoes probability_of_detection() and the other way round.
//   P4 coverage() undoes track_spacing().
// Source: B. O. Koopman, Search and Screening, OEG Report 56 (1946), reissued 1980, chapters 2 and
//   3; IAMSAR Manual Volume II, chapter 4 and Appendix N [both from memory].
#pragma once

#include <compare>
#include <span>
#include <string_view>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::sweep {

/// Coverage factor W / S: a finite number, 0 or more.
class Coverage {
 public:
  constexpr Coverage() = default;
  /// Throws Error (value) for a negative number, NaN or an infinity.
  explicit Coverage(double value);
  constexpr double value() const { return value_; }
  constexpr auto operator<=>(const Coverage&) const = default;

 private:
  double value_ = 0;
};

/// A probability, 0 to 1.
class Probability {
 public:
  constexpr Probability() = default;
  /// Throws Error (value) for a number outside 0 to 1 or NaN.
  explicit Probability(double value);
  constexpr double value() const { return value_; }
  constexpr auto operator<=>(const Probability&) const = default;

 private:
  double value_ = 0;
};

enum class DetectionLaw { inverse_cube, exponential, definite_range };

/// `inverse-cube`, `exponential`, `definite-range`.
std::string_view name(DetectionLaw law);
/// The formula, as text for the working: "erf(sqrt(pi)/2 x C)".
std::string_view formula(DetectionLaw law);
std::span<const std::string_view> detection_law_names();
/// Throws Error (value) with the nearest spelling.
DetectionLaw parse_detection_law(std::string_view text);

/// The chance that an object in the area is found by one search of that coverage.
Probability probability_of_detection(DetectionLaw law, Coverage coverage);

/// The least coverage that gives the probability. Throws Error (impossible) for a probability of 1
/// under inverse cube and exponential.
Coverage coverage_for(DetectionLaw law, Probability wanted);

/// C = W / S. Throws Error (value) unless both are above 0.
Coverage coverage(Length sweep_width, Length track_spacing);

/// S = W / C. Throws Error (value) unless both are above 0.
Length track_spacing(Length sweep_width, Coverage wanted);

/// The chance that at least one of several searches finds the object: 1 - (1 - p1)(1 - p2)...
/// Holds when the searches are independent: what hid the object from one does not hide it from the
/// next. The same crew, the same legs and the same light are not independent, and find less.
Probability cumulative_probability_of_detection(std::span<const Probability> searches);

}  // namespace sweepwright::sweep
