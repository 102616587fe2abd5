// The search action message. Paragraphs: IAMSAR Manual Volume II (1 to 4 seen in a third-party
// copy, 5 and 6 from memory).
#include "sweepwright/formats/search_action_message.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "plan_cases.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

Provenance provenance() {
  return {"0.1.0",
          "sweepwright plan mission.json -o out",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14),
          {}};
}

TEST(SearchActionMessage, HasTheParagraphsOfTheManualInOrder) {
  const std::string text =
      write_search_action_message(make_plan(test::mountain_mission()), provenance());
  std::size_t at = 0;
  for (const char* heading : {"1. SITUATION", "2. SEARCH AREAS", "3. EXECUTION", "4. CO-ORDINATION",
                              "5. COMMUNICATIONS", "6. REPORTS"}) {
    const std::size_t found = text.find(heading, at);
    ASSERT_NE(found, std::string::npos) << heading;
    at = found;
  }
}

TEST(SearchActionMessage, FiguresAreThePlans) {  // P2
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const std::string text = write_search_action_message(plan, provenance());
    for (const plan::Assignment& assignment : plan.assignments) {
      EXPECT_THAT(text, HasSubstr("commence search point " +
                                  format_position(commence_search_point(assignment.pattern))))
          << name;
      EXPECT_THAT(text, HasSubstr(format_length(assignment.spacing, LengthUnit::nautical_mile, 2)));
      EXPECT_THAT(text, HasSubstr(assignment.sector_name + ": " + assignment.unit.callsign));
    }
    for (const plan::Channel& channel : mission.channels) {
      EXPECT_THAT(text, HasSubstr(channel.name + ": " + channel.frequency));
    }
  }
}

TEST(SearchActionMessage, LinesFitAndAreNeverCutInAWord) {
  plan::Mission mission = test::mountain_mission();
  mission.hazards.assign(30, "Power line across Antler Gap, 200 ft above ground, with no lights");
  const std::string text = write_search_action_message(make_plan(mission), provenance());
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), kMessageWidth) << line;
  EXPECT_THAT(text, HasSubstr("Antler"));
}

TEST(SearchActionMessage, SaysWhatIsNotKnown) {
  plan::Mission mission = test::mountain_mission();
  mission.datum.reset();
  mission.object.persons_on_board.reset();
  mission.channels.clear();
  const std::string text = write_search_action_message(make_plan(mission), provenance());
  EXPECT_THAT(text, HasSubstr("Position: not known"));
  EXPECT_THAT(text, HasSubstr("Persons on board: not known"));
  EXPECT_THAT(text, HasSubstr("no channel is named"));
}

TEST(SearchActionMessage, CautionsCloseIt) {  // P3
  const std::string text =
      write_search_action_message(make_plan(test::mountain_mission()), provenance());
  std::string flat;
  std::istringstream words(text);
  for (std::string word; words >> word;) flat += word + " ";
  for (const std::string_view caution : kCautions)
    EXPECT_THAT(flat, HasSubstr(std::string(caution)));
}

}  // namespace
}  // namespace sweepwright::formats
