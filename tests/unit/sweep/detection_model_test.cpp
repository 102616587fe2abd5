#include "sweepwright/sweep/detection_model.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/parallel_sweeps.hpp"

namespace sweepwright::sweep {
namespace {

LateralRangeCurve cone() {
  const std::vector<LateralRangePoint> points{{Length(), Probability(1)},
                                              {Length::metres(400), Probability(0)}};
  return LateralRangeCurve(points, Sides::alike);
}

std::vector<DetectionModel> models() {
  return {{EffortLayout::parallel, DetectionLaw::inverse_cube},
          {EffortLayout::parallel, DetectionLaw::exponential},
          {EffortLayout::parallel, DetectionLaw::definite_range},
          {EffortLayout::random, DetectionLaw::inverse_cube},
          {EffortLayout::parallel, {}, cone()},
          {EffortLayout::random, {}, cone()}};
}

TEST(DetectionModelPromise1, SpacingFindsTheWantedProbability) {
  const Length width = area_under(cone());
  for (const DetectionModel& model : models()) {
    for (double wanted = 0.05; wanted < 0.99; wanted += 0.05) {
      const Length spacing = spacing_for(model, width, Probability(wanted));
      EXPECT_NEAR(probability_of_detection(model, width, spacing).value(), wanted, 1e-9)
          << description(model);
    }
  }
}

TEST(DetectionModel, RandomEffortIsExponentialWhateverOnePassFinds) {
  // Koopman: 1 - exp(-W L / A) for tracks laid at random.
  const Length width = Length::metres(400);
  for (const DetectionModel& model : models()) {
    if (model.layout == EffortLayout::parallel) continue;
    EXPECT_NEAR(probability_of_detection(model, width, Length::metres(200)).value(),
                1 - std::exp(-2), 1e-15);
  }
}

TEST(DetectionModel, TakesTheCurveInPlaceOfTheLaw) {
  const Length spacing = Length::metres(250);
  EXPECT_EQ(probability_of_detection({EffortLayout::parallel, DetectionLaw::definite_range, cone()},
                                     area_under(cone()), spacing),
            parallel_sweeps_probability(cone(), spacing));
}

TEST(DetectionModel, RefusesWidthsAndSpacingsOfZero) {
  for (const DetectionModel& model : models()) {
    EXPECT_THROW(probability_of_detection(model, Length(), Length::metres(1)), Error);
    EXPECT_THROW(probability_of_detection(model, Length::metres(1), Length()), Error);
    EXPECT_THROW(spacing_for(model, Length::metres(1), Probability()), Error);
  }
}

TEST(DetectionModel, NamesReadBack) {
  for (const std::string_view each : effort_layout_names()) {
    EXPECT_EQ(name(parse_effort_layout(each)), each);
  }
  EXPECT_THROW(parse_effort_layout("scattered"), Error);
}

}  // namespace
}  // namespace sweepwright::sweep
