// How long the papers of a search take: the packs of 20 crews, beside a browser printing one sheet.
//
// One pack is what a crew gets: the sheet as HTML, and set on A4, US letter and A5 as PDF; the
// whole folder adds overlays, message, board and map page. The plan itself is made outside the
// timing. The alternative is Debian's chromium in headless mode, a common way to get PDF from HTML,
// printing the HTML of one sheet; it is left out where chromium is not installed.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "../unit/formats/plan_cases.hpp"
#include "sweepwright/formats/board.hpp"
#include "sweepwright/formats/pdf_writer.hpp"
#include "sweepwright/formats/plan_folder.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/sheet_pages.hpp"

namespace {

using namespace sweepwright;

formats::Provenance provenance() {
  return {"0.1.0", "sweepwright plan mission.json -o out", TimePoint(), {}};
}

const plan::Plan& plan_of_twenty() {
  static const plan::Plan plan = [] {
    plan::Mission mission = test::mountain_mission();
    const plan::SearchUnit unit = mission.units.front();
    mission.units.clear();
    for (int i = 1; i <= 20; ++i) {
      mission.units.push_back(unit);
      mission.units.back().callsign = "FALCON " + std::to_string(i);
    }
    return plan::make_plan(mission);
  }();
  return plan;
}

/// Made empty, removed at the end.
class Folder {
 public:
  Folder() : path_(std::filesystem::temp_directory_path() / "sweepwright_bench_pack") {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directories(path_);
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

void whole_folder_of_20_crews(benchmark::State& state) {
  const plan::Plan& plan = plan_of_twenty();
  const Folder folder;
  for (auto step : state) {
    benchmark::DoNotOptimize(formats::write_plan_folder(plan, folder.path(), provenance()));
  }
}
BENCHMARK(whole_folder_of_20_crews)->Unit(benchmark::kMillisecond);

void one_sheet_html(benchmark::State& state) {
  for (auto step : state) {
    benchmark::DoNotOptimize(formats::write_sheet(plan_of_twenty(), 0, provenance()));
  }
}
BENCHMARK(one_sheet_html)->Unit(benchmark::kMillisecond);

void one_sheet_pdf_a4(benchmark::State& state) {
  for (auto step : state) {
    const auto pages =
        formats::set_sheet(plan_of_twenty(), 0, provenance(), formats::papers().front());
    benchmark::DoNotOptimize(formats::write_pdf(pages, {"Sheet", "bench", TimePoint()}));
  }
}
BENCHMARK(one_sheet_pdf_a4)->Unit(benchmark::kMillisecond);

void board_pdf_a4(benchmark::State& state) {
  for (auto step : state) {
    const auto pages =
        formats::set_board(plan_of_twenty(), provenance(), formats::papers().front());
    benchmark::DoNotOptimize(formats::write_pdf(pages, {"Board", "bench", TimePoint()}));
  }
}
BENCHMARK(board_pdf_a4)->Unit(benchmark::kMillisecond);

void one_sheet_pdf_by_chromium(benchmark::State& state) {
  const Folder folder;
  std::ofstream(folder.path() / "sheet.html")
      << formats::write_sheet(plan_of_twenty(), 0, provenance());
  const std::string path = folder.path().string();
  const std::string command =
      "chromium --headless --no-sandbox --disable-gpu --user-data-dir=" + path +
      "/profile --print-to-pdf=" + path + "/sheet.pdf file://" + path +
      "/sheet.html >/dev/null 2>&1";
  for (auto step : state) {
    if (std::system(command.c_str()) != 0) {
      state.SkipWithError("chromium is not installed");
      break;
    }
  }
}
BENCHMARK(one_sheet_pdf_by_chromium)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(5);

}  // namespace
