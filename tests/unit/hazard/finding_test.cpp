#include "sweepwright/hazard/finding.hpp"

#include <gtest/gtest.h>

namespace sweepwright::hazard {
namespace {

Finding said(Severity severity, std::string text) {
  Finding finding;
  finding.severity = severity;
  finding.text = std::move(text);
  return finding;
}

TEST(Finding, sorts_worst_first_and_keeps_the_order_of_equals) {
  std::vector<Finding> findings{said(Severity::note, "a"), said(Severity::not_checked, "b"),
                                said(Severity::must_not_fly, "c"), said(Severity::caution, "d"),
                                said(Severity::must_not_fly, "e")};
  sort_worst_first(findings);
  std::string order;
  for (const Finding& finding : findings) order += finding.text;
  EXPECT_EQ(order, "cedba");
}

TEST(Finding, only_the_worst_forbids_flight) {
  EXPECT_FALSE(forbids_flight({}));
  EXPECT_FALSE(forbids_flight({said(Severity::caution, ""), said(Severity::not_checked, "")}));
  EXPECT_TRUE(forbids_flight({said(Severity::note, ""), said(Severity::must_not_fly, "")}));
}

}  // namespace
}  // namespace sweepwright::hazard
