#include "sweepwright/sweep/working.hpp"

#include <gtest/gtest.h>

namespace sweepwright::sweep {
namespace {

TEST(Working, LinesUpAndNumbersItsSources) {
  const Working working{{"Table width", "read at visibility 5 NM", "1.4 NM", "First table"},
                        {"Factor", "a row", "0.7", "Second table", 0.7},
                        {"Speed", "not used: a remark may be longer than all else", "", ""},
                        {"Other", "again", "1", "First table", 1.0},
                        {"Sweep width", "1.4 NM x 0.7 x 1", "0.98 NM", ""}};
  EXPECT_EQ(format_working(working),
            "Table width  read at visibility 5 NM  = 1.4 NM   [1]\n"
            "Factor       a row                    = 0.7      [2]\n"
            "Speed        not used: a remark may be longer than all else\n"
            "Other        again                    = 1        [1]\n"
            "Sweep width  1.4 NM x 0.7 x 1         = 0.98 NM\n"
            "[1] First table\n"
            "[2] Second table\n");
}

TEST(Working, IsEmptyForNoLines) {
  EXPECT_EQ(format_working({}), "");
}

}  // namespace
}  // namespace sweepwright::sweep
