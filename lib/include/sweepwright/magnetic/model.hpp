// Model: the coefficients of a magnetic model of the World Magnetic Model's form.
//
// Problem: the Earth's field changes; every five years new coefficients are published. The built-in
//   ones are a file in lib/data, and a newer file of the same form replaces them.
// Conventions: text as NOAA publishes it (`WMM.COF`): a line with epoch, name and date of release;
//   90 lines `n m g h rate-of-g rate-of-h` in nanotesla and nanotesla a year, by rising degree n,
//   then order m; a line of nines ends it. Lines that begin with `#` are remarks.
// Domain: degree 12 exactly. Missing, doubled, disordered or unreadable lines are Error(input) with
//   the line.
// Source: WMM technical report, section 1 (from memory); the coefficient file itself (seen).
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "sweepwright/magnetic/decimal_year.hpp"

namespace sweepwright::magnetic {

/// The highest degree and order of the model.
inline constexpr int kDegree = 12;
inline constexpr std::size_t kCoefficients = (kDegree + 1) * (kDegree + 2) / 2;

/// The place of degree n and order m in an array of kCoefficients.
constexpr std::size_t index(int degree, int order) {
  return static_cast<std::size_t>(degree * (degree + 1) / 2 + order);
}

/// Schmidt semi-normalised Gauss coefficients at the epoch, in nanotesla, and their yearly change.
struct Coefficient {
  double g = 0;
  double h = 0;
  double g_rate = 0;
  double h_rate = 0;
};

struct Model {
  std::string name;      ///< "WMM-2025"
  std::string released;  ///< as the file writes it: month/day/year
  DecimalYear epoch{0};
  std::array<Coefficient, kCoefficients> coefficients{};  ///< by index(); degree 0 is all zero

  DecimalYear valid_from() const { return epoch; }
  /// A model holds for five years.
  DecimalYear valid_until() const { return DecimalYear(epoch.years() + 5); }
};

/// The World Magnetic Model 2025, valid from 2025.0 to 2030.0.
const Model& world_magnetic_model();

/// `where` names the text in messages: a file name.
Model parse_model(std::string_view text, std::string_view where);

}  // namespace sweepwright::magnetic
