// Every grid system, pattern and detection law has all its pieces: header, source, published checks
// and a page in docs/methods. The lists are the library's own, so a new line in one of them asks
// for the rest. Every reader of files has a fuzz target.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "support/files.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::test {
namespace {

using testing::HasSubstr;

void expect_files(const std::vector<std::string>& files) {
  for (const std::string& file : files) {
    EXPECT_TRUE(std::filesystem::is_regular_file(repository() / file)) << "missing: " << file;
  }
}

/// `Parallel track` with `_` or `-` between its words, in small letters; `Multi-unit` is two words.
std::string file_stem(std::string_view title, char between) {
  std::string stem = to_lower_ascii(title);
  std::replace(stem.begin(), stem.end(), ' ', between);
  std::replace(stem.begin(), stem.end(), '-', between);
  return stem;
}

TEST(Pieces, of_every_grid_system) {
  for (const std::string_view system : grid::systems()) {
    const std::string name(system);
    expect_files({"lib/include/sweepwright/grid/" + name + ".hpp", "lib/src/grid/" + name + ".cpp",
                  "tests/checks/grid/" + name + ".csv", "docs/methods/grid-" + name + ".md"});
  }
}

TEST(Pieces, of_every_pattern) {
  for (const pattern::KindInfo& kind : pattern::kinds()) {
    const std::string stem = file_stem(kind.title, '_');
    expect_files({"lib/include/sweepwright/pattern/" + stem + ".hpp",
                  "lib/src/pattern/" + stem + ".cpp", "tests/checks/pattern/" + stem + ".csv",
                  "docs/methods/" + file_stem(kind.title, '-') + ".md"});
  }
}

// The laws share one header, one table of checks and one page.
TEST(Pieces, of_every_detection_law) {
  const std::string header =
      read_file(repository() / "lib/include/sweepwright/sweep/detection.hpp");
  const std::string checks = read_file(repository() / "tests/checks/sweep/pod_vs_coverage.csv");
  const std::string page = read_file(repository() / "docs/methods/detection.md");
  for (const std::string_view law : sweep::detection_law_names()) {
    std::string column(law);
    std::replace(column.begin(), column.end(), '-', '_');
    EXPECT_THAT(header, HasSubstr("`" + std::string(law) + "`"));
    EXPECT_THAT(checks, HasSubstr(column));
    EXPECT_THAT(page, HasSubstr(std::string(law)));
  }
}

TEST(Pieces, of_every_reader) {
  const std::string_view ending = "_reader.hpp";
  int readers = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(repository() / "lib/include/sweepwright/formats")) {
    const std::string file = entry.path().filename().string();
    if (!file.ends_with(ending)) continue;
    const std::string name = file.substr(0, file.size() - ending.size());
    expect_files({"tests/fuzz/fuzz_" + name + ".cpp"});
    ++readers;
  }
  EXPECT_GT(readers, 0);
}

}  // namespace
}  // namespace sweepwright::test
