// Whole plans of the three demos, and of ground where maps are hard, as files: valid against the
// schemas of KML and GPX, read back with GDAL, whole or not at all.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "outside_tools.hpp"
#include "plan_cases.hpp"
#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/formats/plan_folder.hpp"
#include "sweepwright/formats/plan_json.hpp"
#include "sweepwright/formats/plan_overlays.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::Not;

Provenance provenance() {
  return {
      "0.1.0", "sweepwright plan mission.json", TimePoint(std::chrono::seconds(1781000000)), {}};
}

std::vector<test::NamedMission> all_missions() {
  std::vector<test::NamedMission> missions = test::missions_everywhere();
  for (const auto& entry : fs::directory_iterator(test::repository() / "demo-scenarios")) {
    const fs::path file = entry.path() / "mission.json";
    if (fs::exists(file)) {
      missions.push_back({entry.path().filename().string(), read_mission(file.string())});
    }
  }
  return missions;
}

template <typename Write>
std::string text_of(Write write) {
  StringSink sink;
  write(sink);
  return sink.text();
}

std::string kml_of(const plan::Plan& plan) {
  return text_of([&](Sink& sink) { write_plan_kml(sink, plan, provenance()); });
}
std::string geojson_of(const plan::Plan& plan) {
  return text_of([&](Sink& sink) { write_plan_geojson(sink, plan, provenance()); });
}
std::string gpx_of(const plan::Plan& plan, const plan::Assignment& assignment) {
  return text_of([&](Sink& sink) { write_crew_gpx(sink, plan, assignment, provenance()); });
}

std::string read(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// An empty folder that goes with the test.
class Folder {
 public:
  Folder() : path_(fs::path(testing::TempDir()) / ("plan-files-" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    fs::create_directories(path_);
  }
  ~Folder() { fs::remove_all(path_); }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

TEST(PlanOverlays, AreValidAndReadByOthersEverywhere) {
  for (const test::NamedMission& named : all_missions()) {
    SCOPED_TRACE(named.name);
    const plan::Plan plan = plan::make_plan(named.mission);
    const std::string kml = kml_of(plan);
    test::expect_valid_xml(kml, test::kKmlSchema);
    EXPECT_THAT(test::ogrinfo(kml, "kml"), HasSubstr("Sectors"));
    const std::string geojson = geojson_of(plan);
    test::expect_rfc_7946(geojson);
    test::ogrinfo(geojson, "geojson");
    for (const plan::Assignment& assignment : plan.assignments) {
      const std::string gpx = gpx_of(plan, assignment);
      test::expect_valid_xml(gpx, test::kGpxSchema);
      // The base, the commence search point, and the end of each leg.
      EXPECT_EQ(test::occurrences(gpx, "<rtept "), assignment.pattern.legs.size() + 2);
      test::ogrinfo(gpx, "gpx");
    }
  }
}

TEST(PlanOverlays, HoldEverythingOnce) {
  const plan::Plan plan = plan::make_plan(test::mountain_mission());
  const auto json = nlohmann::json::parse(geojson_of(plan));
  std::map<std::string, std::size_t> parts;
  for (const auto& feature : json.at("features")) {
    ++parts[feature.at("properties").at("part").get<std::string>()];
  }
  std::size_t legs = 0;
  for (const plan::Assignment& assignment : plan.assignments)
    legs += assignment.pattern.legs.size();
  const std::map<std::string, std::size_t> wanted{
      {"area", 1},   {"datum", 1}, {"cell", plan.cells.size()},
      {"sector", 2}, {"base", 2},  {"commence-search-point", 2},
      {"leg", legs}};
  EXPECT_EQ(parts, wanted);
}

TEST(PlanJson, SaysTheFiguresOfThePlan) {
  const plan::Plan plan = plan::make_plan(test::mountain_mission());
  const auto json = nlohmann::json::parse(plan_json(plan, provenance()));
  EXPECT_EQ(json.at("area_m2").get<double>(), plan.searched.square_metres());
  EXPECT_EQ(json.at("probability_of_detection").get<double>(),
            plan.probability_of_detection.value());
  ASSERT_EQ(json.at("assignments").size(), plan.assignments.size());
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const auto& crew = json.at("assignments").at(i);
    const plan::Assignment& assignment = plan.assignments[i];
    EXPECT_EQ(crew.at("spacing_m").get<double>(), assignment.spacing.metres());
    EXPECT_EQ(crew.at("search_time_s").get<double>(), assignment.search_time.count());
    EXPECT_EQ(crew.at("pattern").at("total_distance_m").get<double>(),
              total_distance(assignment.pattern).metres());
    EXPECT_EQ(crew.at("pattern").at("legs").size(), assignment.pattern.legs.size());
  }
}

TEST(PlanFiles, KeepACallsignAsText) {
  plan::Mission mission = test::mountain_mission();
  mission.units[0].callsign = "<b>&\"' ../../x";
  const plan::Plan plan = plan::make_plan(mission);
  EXPECT_EQ(crew_folder_name(plan.assignments[0]), "A1-b-x");
  EXPECT_THAT(kml_of(plan), Not(HasSubstr("<b>")));
  test::expect_valid_xml(kml_of(plan), test::kKmlSchema);
  test::expect_valid_xml(gpx_of(plan, plan.assignments[0]), test::kGpxSchema);
  test::expect_rfc_7946(geojson_of(plan));
  const auto json = nlohmann::json::parse(plan_json(plan, provenance()));
  EXPECT_EQ(json.at("assignments").at(0).at("callsign"), "<b>&\"' ../../x");
}

TEST(PlanFiles, FoldersOfCrewsStayInside) {
  plan::Assignment assignment;
  assignment.sector_name = "A1";
  const auto folder = [&](const std::string& callsign) {
    assignment.unit.callsign = callsign;
    return crew_folder_name(assignment);
  };
  EXPECT_EQ(folder("Lark 21"), "A1-Lark-21");
  EXPECT_EQ(folder(".."), "A1");
  EXPECT_EQ(folder("/etc/passwd"), "A1-etc-passwd");
  EXPECT_EQ(folder("\xC3\x85se 1"), "A1-se-1");
  EXPECT_EQ(folder("a\nb"), "A1-a-b");
}

TEST(PlanFolder, IsTheSameEveryTimeAndLeavesOtherFilesAlone) {
  const Folder folder;
  const plan::Plan plan = plan::make_plan(test::mountain_mission());
  const auto files = write_plan_folder(plan, folder.path(), provenance());
  EXPECT_EQ(files.size(), 9 + 5 * plan.assignments.size());
  std::map<std::string, std::string> first;
  for (const fs::path& file : files) first[file.string()] = read(folder.path() / file);
  std::ofstream(folder.path() / "incident" / "notes.txt") << "mine";

  write_plan_folder(plan::make_plan(test::mountain_mission()), folder.path(), provenance());
  for (const auto& [file, text] : first) {
    EXPECT_FALSE(text.empty()) << file;
    EXPECT_EQ(read(folder.path() / file), text) << file;
  }
  EXPECT_EQ(read(folder.path() / "incident" / "notes.txt"), "mine");
  std::size_t there = 0;
  for (const auto& entry : fs::recursive_directory_iterator(folder.path())) {
    there += entry.is_regular_file() ? 1U : 0U;
  }
  EXPECT_EQ(there, files.size() + 1) << "temporary files are left behind";
}

TEST(PlanFolder, SaysWhyItCannotBeWritten) {
  const Folder folder;
  std::ofstream(folder.path() / "incident") << "a file in the way";
  const plan::Plan plan = plan::make_plan(test::mountain_mission());
  try {
    write_plan_folder(plan, folder.path(), provenance());
    FAIL() << "a file was taken for a folder";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::unwritable);
    EXPECT_THAT(error.where(), HasSubstr("incident"));
  }
  EXPECT_FALSE(fs::exists(folder.path() / "crews"));
}

}  // namespace
}  // namespace sweepwright::formats
