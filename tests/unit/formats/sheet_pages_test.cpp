// The crew's sheet as pages, read back with poppler's pdftotext.
#include "sweepwright/formats/sheet_pages.hpp"

#include <gtest/gtest.h>

#include <pugixml.hpp>
#include <sstream>

#include "outside_tools.hpp"
#include "plan_cases.hpp"
#include "sweepwright/formats/pdf_writer.hpp"

namespace sweepwright::formats {
namespace {

Provenance provenance() {
  return {"0.1.0",
          "sweepwright plan mission.json -o out",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(11),
          {{"mission.json", std::string(64, 'a')}}};
}

std::string pdf_of(const std::vector<Drawing>& pages) {
  return write_pdf(pages, {"Sheet", "Sweepwright 0.1.0", provenance().stamp});
}

/// The text without blanks: readers of PDF see or miss narrow ones as they like.
std::string words(const std::string& text) {
  std::istringstream in(text);
  std::string joined;
  for (std::string word; in >> word;) joined += word;
  return joined;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(words(part)) != std::string::npos;
}

std::vector<std::string> pages_of(const std::string& text) {
  std::vector<std::string> pages;
  std::istringstream in(text);
  for (std::string page; std::getline(in, page, '\f');) pages.push_back(words(page));
  return pages;
}

TEST(SheetPages, EveryFieldLegAndCautionIsOnThem) {  // P3
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Sheet sheet = make_sheet(plan, 0, provenance());
    for (const Paper& paper : papers()) {
      const std::string text =
          words(test::pdftotext(pdf_of(set_sheet(plan, 0, provenance(), paper)), "-layout"));
      for (const SheetField& figure : sheet.key_figures) {
        EXPECT_TRUE(holds(text, figure.value)) << name << " " << paper.name;
      }
      for (const SheetLeg& leg : sheet.legs) {
        // A row of the table, as it was on the plan, digit for digit.
        EXPECT_TRUE(holds(text, leg.number + leg.track + leg.magnetic_heading +
                                    leg.ground_speed_kt + leg.distance_nm + leg.time + leg.clock +
                                    leg.total_time + leg.end))
            << name << " " << paper.name;
      }
      for (const SheetStep& step : sheet.working) {
        EXPECT_TRUE(holds(text, step.value)) << name << " " << paper.name;
      }
    }
  }
}

TEST(SheetPages, EveryPageNamesSectorCallsignAndCautions) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  for (const Paper& paper : papers()) {
    const std::vector<Drawing> pages = set_sheet(plan, 1, provenance(), paper);
    EXPECT_GE(pages.size(), 3U);
    const std::vector<std::string> texts = pages_of(test::pdftotext(pdf_of(pages), "-raw"));
    ASSERT_EQ(texts.size(), pages.size());
    for (const std::string& text : texts) {
      for (const char* wanted :
           {"A2", "HERON 1", "Not for navigation.", "pilot or person in command decides."}) {
        EXPECT_TRUE(holds(text, wanted)) << wanted;
      }
    }
    EXPECT_TRUE(holds(texts.front(), "Work Assignment"));
    EXPECT_TRUE(holds(texts.back(), "Debrief"));
  }
}

TEST(SheetPages, NothingLiesOutsideTheMargins) {  // P2
  constexpr double kLeastMargin = 5 * 72 / 25.4;  // points: what printers can do
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (const Paper& paper : papers()) {
      const std::string words =
          test::pdftotext(pdf_of(set_sheet(plan, 0, provenance(), paper)), "-bbox");
      pugi::xml_document document;
      ASSERT_TRUE(document.load_string(words.c_str()));
      std::size_t count = 0;
      for (const pugi::xpath_node& found : document.select_nodes("//word")) {
        const pugi::xml_node word = found.node();
        const pugi::xml_node page = word.parent();
        EXPECT_GE(word.attribute("xMin").as_double(), kLeastMargin) << word.text().get();
        EXPECT_GE(word.attribute("yMin").as_double(), kLeastMargin) << word.text().get();
        EXPECT_LE(word.attribute("xMax").as_double(),
                  page.attribute("width").as_double() - kLeastMargin)
            << name << " " << paper.name << " " << word.text().get();
        EXPECT_LE(word.attribute("yMax").as_double(),
                  page.attribute("height").as_double() - kLeastMargin)
            << name << " " << paper.name << " " << word.text().get();
        ++count;
      }
      EXPECT_GT(count, 100U);
    }
  }
}

TEST(SheetPages, LongTablesAndTextsGoOnOnFurtherPages) {
  plan::Mission mission = test::mountain_mission();
  for (plan::SearchUnit& unit : mission.units) {
    unit.sweep_width = Length::nautical_miles(0.2);
    unit.search_speed = Speed::knots(160);
    unit.searches_at_night = true;
    unit.on_scene_endurance = std::chrono::hours(9);
    unit.remarks.assign(40,
                        "Stay clear of the ridge and report every half hour on the air channel");
  }
  const plan::Plan plan = make_plan(mission);
  ASSERT_GT(plan.assignments[0].flown.legs.size(), 60U);
  const Paper& kneeboard = papers().back();
  const std::vector<Drawing> pages = set_sheet(plan, 0, provenance(), kneeboard);
  EXPECT_GE(pages.size(), 5U);
  const std::vector<std::string> texts = pages_of(test::pdftotext(pdf_of(pages), "-raw"));
  std::size_t remarks = 0;
  std::size_t heads = 0;
  for (const std::string& text : texts) {
    remarks += test::occurrences(text, words("Stay clear of the ridge"));
    heads += test::occurrences(text, words("End of leg"));
  }
  EXPECT_EQ(remarks, 40U);
  EXPECT_GE(heads, 2U);  // the column heads come again on each page of the table
}

TEST(SheetPages, SamePlanSamePages) {  // P1
  const plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_EQ(pdf_of(set_sheet(plan, 0, provenance(), papers()[0])),
            pdf_of(set_sheet(plan, 0, provenance(), papers()[0])));
}

}  // namespace
}  // namespace sweepwright::formats
