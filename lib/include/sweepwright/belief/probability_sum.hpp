// ProbabilitySum: adds probabilities so that the order in which they come does not matter.
//
// Problem: floating sums depend on their order, and so on the number of threads. Probabilities lie
//   in a known range: each is cut to a whole number of 2^-84 and added as such, without error.
// Domain: values from 0 to 1, up to 2^31 of them; a value outside is an Error(value).
// Accuracy: what is cut off is below 2^-84 (5e-26) a value; value() rounds once
//   (probability_sum_test.cpp).
// Promises: P1 the same values in any order, or in parts that are joined, give the same number.
// Source: fixed-point accumulation, own work.
#pragma once

#include <cstdint>
#include <span>

namespace sweepwright::belief {

class ProbabilitySum {
 public:
  void add(double probability) {
    if (!(probability >= 0 && probability <= 1)) refuse(probability);
    const double high = probability * kHighUnits;
    const auto whole = static_cast<std::uint64_t>(high);
    high_ += whole;
    low_ += static_cast<std::uint64_t>((high - static_cast<double>(whole)) * kLowUnits);
    carry();
  }
  void add(const ProbabilitySum& other) {
    high_ += other.high_;
    low_ += other.low_;
    carry();
  }
  double value() const {
    return (static_cast<double>(high_) + static_cast<double>(low_) / kLowUnits) / kHighUnits;
  }

 private:
  static constexpr double kHighUnits = 4294967296.0;       // 2^32
  static constexpr double kLowUnits = 4503599627370496.0;  // 2^52
  static constexpr std::uint64_t kLowMask = (std::uint64_t{1} << 52U) - 1;

  void carry() {
    high_ += low_ >> 52U;
    low_ &= kLowMask;
  }
  [[noreturn]] static void refuse(double probability);

  std::uint64_t high_ = 0;  ///< units of 2^-32
  std::uint64_t low_ = 0;   ///< units of 2^-84, below 2^52
};

/// The sum of probabilities. Throws Error(value) for one outside 0 to 1.
double sum(std::span<const double> probabilities);

}  // namespace sweepwright::belief
