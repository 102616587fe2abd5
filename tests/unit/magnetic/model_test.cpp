// Coefficient files: the built-in one, a user's own, and every way to break one.
#include "sweepwright/magnetic/model.hpp"

#include <gtest/gtest.h>

#include <string>

#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/magnetic/field.hpp"

namespace sweepwright::magnetic {
namespace {

std::string built_in_text() {
  return test::read_file(test::repository() / "lib/data/wmm2025.cof");
}

/// The built-in file with the first `from` made `to`.
std::string changed(const std::string& from, const std::string& to) {
  std::string text = built_in_text();
  const std::size_t place = text.find(from);
  if (place == std::string::npos) throw std::runtime_error("no " + from);
  return text.replace(place, from.size(), to);
}

TEST(Model, is_the_world_magnetic_model_2025) {
  const Model& model = world_magnetic_model();
  EXPECT_EQ(model.name, "WMM-2025");
  EXPECT_EQ(model.released, "11/13/2024");
  EXPECT_EQ(model.valid_from(), DecimalYear(2025));
  EXPECT_EQ(model.valid_until(), DecimalYear(2030));
  // First and last lines of the published file.
  EXPECT_EQ(model.coefficients[index(1, 0)].g, -29351.8);
  EXPECT_EQ(model.coefficients[index(1, 1)].h_rate, -21.5);
  EXPECT_EQ(model.coefficients[index(12, 12)].g, -0.7);
  EXPECT_EQ(model.coefficients[index(12, 12)].h_rate, -0.1);
}

TEST(Model, a_file_of_the_same_form_takes_its_place) {
  std::string text =
      changed("    2025.0            WMM-2025     11/13/2024", "\t2030.0 OWN-2030 01/02/2030 \r");
  text.erase(0, text.find("\t2030.0"));                  // without the remarks
  text.erase(text.rfind("\n999", text.size() - 3) + 1);  // with one line of nines, not two
  const Model model = parse_model(text, "own.cof");
  EXPECT_EQ(model.name, "OWN-2030");
  EXPECT_EQ(model.valid_until(), DecimalYear(2035));
  const MagneticField then = field({}, {}, DecimalYear(2030), model);
  const MagneticField now = field({}, {}, DecimalYear(2025));
  EXPECT_EQ(then.north, now.north);
  EXPECT_EQ(then.east, now.east);
}

void expect_refused(const std::string& text, const std::string& where, const std::string& words) {
  try {
    parse_model(text, "own.cof");
    ADD_FAILURE() << "no error: " << words;
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::input);
    EXPECT_EQ(error.where(), where);
    EXPECT_NE(error.message().find(words), std::string::npos) << error.what();
    EXPECT_FALSE(error.hint().empty());
  }
}

TEST(Model, a_broken_file_is_refused_with_its_line) {
  // Line 6 is the first line of the published file, line 7 is degree 1 order 0.
  expect_refused("", "own.cof:0", "the model is empty");
  expect_refused("# only\n# remarks\n", "own.cof:2", "the model is empty");
  expect_refused("latitude,longitude\n", "own.cof:1", "found 'latitude,longitude'");
  expect_refused(changed("    2025.0", "    soon"), "own.cof:6", "'soon' is not a number");
  expect_refused(changed("    2025.0", "    25.0"), "own.cof:6", "25.0, not a year");
  expect_refused(changed("-29351.8", "-29351.8x"), "own.cof:7", "'-29351.8x' is not a number");
  expect_refused(changed("-29351.8", "nan"), "own.cof:7", "'nan' is not a number");
  expect_refused(changed("-29351.8", "-2935180000"), "own.cof:7", "which no magnetic model has");
  expect_refused(changed("-29351.8       0.0", "-29351.8       1.0"), "own.cof:7",
                 "order 0 has no h");
  expect_refused(changed("  1  1 ", "  1  2 "), "own.cof:8",
                 "expected degree 1 order 1, found degree 1 order 2");
  expect_refused(changed("  1  0 ", ""), "own.cof:7", "expected degree, order and four numbers");
  std::string text = built_in_text();
  expect_refused(text.substr(0, text.find(" 12 12 ")), "own.cof:95",
                 "the model ends before degree 12 order 12");
  text.insert(text.find("999"), " 13  0  0.1 0.0 0.0 0.0\n");
  expect_refused(text, "own.cof:97", "expected the line of nines after degree 12");
}

}  // namespace
}  // namespace sweepwright::magnetic
