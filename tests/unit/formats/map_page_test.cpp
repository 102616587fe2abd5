// The map page as a file. What it does in a browser is tested in tests/browser.
#include "sweepwright/formats/map_page.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "plan_cases.hpp"
#include "sweepwright/formats/cautions.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

Provenance provenance() {
  return {"0.1.0",
          "sweepwright plan mission.json -o out",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14),
          {}};
}

/// The text of a script element of data.
std::string data_of(const std::string& page, const std::string& id) {
  const std::string start = "<script type=\"application/json\" id=\"" + id + "\">";
  const std::size_t from = page.find(start);
  if (from == std::string::npos) return {};
  const std::size_t to = page.find("</script>", from);
  return page.substr(from + start.size(), to - from - start.size());
}

TEST(MapPage, HoldsThePlan) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  const std::string page = write_map_page(plan, provenance());
  const auto geojson = nlohmann::json::parse(data_of(page, "plan"));
  std::size_t legs = 0;
  for (const auto& feature : geojson.at("features")) {
    if (feature.at("properties").at("part") == "leg") ++legs;
  }
  std::size_t planned = 0;
  for (const plan::Assignment& assignment : plan.assignments) {
    planned += assignment.pattern.legs.size();
  }
  EXPECT_EQ(legs, planned);
  EXPECT_EQ(nlohmann::json::parse(data_of(page, "styles")).size(), plan.assignments.size());
  EXPECT_GT(nlohmann::json::parse(data_of(page, "sheets")).size(), 30U);
}

TEST(MapPage, TextsStayTexts) {  // P2
  const std::string nasty = "</script><img src=x onerror=alert(1)>\"'&@PLAN@";
  plan::Mission mission = test::mountain_mission();
  mission.incident.name = mission.units[0].callsign = mission.datum->name = nasty;
  const std::string page = write_map_page(make_plan(mission), provenance());
  EXPECT_THAT(page, Not(HasSubstr("<img")));
  EXPECT_THAT(page, HasSubstr("<title>&lt;/script&gt;&lt;img src=x onerror=alert(1)&gt;"));
  const auto geojson = nlohmann::json::parse(data_of(page, "plan"));
  EXPECT_EQ(geojson.at("name"), nasty);
}

TEST(MapPage, LoadsNothing) {  // P3
  const std::string page = write_map_page(make_plan(test::mountain_mission()), provenance());
  for (const char* loader :
       {"<link", "<img", "<iframe", "<script src", "XMLHttpRequest", "sourceMappingURL"}) {
    EXPECT_EQ(page.find(loader), std::string::npos) << loader;
  }
  const std::string style = page.substr(0, page.find("</style>"));
  EXPECT_THAT(style, Not(HasSubstr("url(")));
  EXPECT_THAT(style, Not(HasSubstr("@import")));
}

TEST(MapPage, SamePlanSameBytesWithCautionsAndLicence) {  // P1, P4
  const plan::Plan plan = make_plan(test::mountain_mission());
  const std::string page = write_map_page(plan, provenance());
  EXPECT_EQ(page, write_map_page(plan, provenance()));
  for (const std::string_view caution : kCautions) EXPECT_THAT(page, HasSubstr(caution));
  EXPECT_THAT(page, HasSubstr("BSD 2-Clause License"));
  EXPECT_LT(page.size(), 2'000'000U);
}

}  // namespace
}  // namespace sweepwright::formats
