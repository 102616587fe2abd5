// sweepwright debrief: from flown tracks to what was covered, what to believe, where to look next.
#include <fmt/format.h>

#include <filesystem>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "common/track_option.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/debrief/crew_match.hpp"
#include "sweepwright/debrief/gather.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/crew_report_reader.hpp"
#include "sweepwright/formats/debrief_folder.hpp"
#include "sweepwright/formats/debrief_overlays.hpp"
#include "sweepwright/formats/debrief_summary.hpp"
#include "sweepwright/formats/mission_reader.hpp"

namespace sweepwright::cli {
namespace {

namespace fs = std::filesystem;

constexpr int kPartlyDone = 1;
constexpr unsigned kMostThreads = 8;

struct DebriefOptions {
  std::string mission;
  std::vector<std::string> tracks;
  std::vector<std::string> reports;
  std::string folder;
  std::string hole_below;
  std::string least_hole;
  std::string law;
  std::string leave_out;
  TrackOptions reading;
  bool count_turns = false;
  bool count_outside = false;
  bool json = false;
};

/// A log, and whose it is when that was typed: `Lark 21=log.gpx`.
struct TrackArgument {
  std::string crew;
  std::string file;
};

TrackArgument track_argument(const std::string& text) {
  const std::size_t equals = text.find('=');
  // A file may have the sign in its name.
  if (equals == std::string::npos || fs::exists(text)) return {"", text};
  return {text.substr(0, equals), text.substr(equals + 1)};
}

/// Everything that goes into the debrief, while it is read.
class Reading {
 public:
  Reading(const DebriefOptions& options, formats::Provenance& provenance,
          formats::DebriefOutcome& outcome)
      : options_(options), provenance_(provenance), outcome_(outcome) {
    crews_.resize(outcome.plan.assignments.size());
  }

  void read_track(const TrackArgument& argument) {
    formats::TrackReadOptions how = options_.reading.reading();
    const track::CleaningOptions cleaning = options_.reading.cleaning();
    const plan::Incident& incident = outcome_.plan.mission.incident;
    if (!how.day) {
      how.day = std::chrono::floor<std::chrono::days>(incident.operational_period.from);
    }
    try {
      formats::TrackFile file = formats::read_track_file(argument.file, how, cleaning);
      if (argument.file != "-") provenance_.inputs.push_back(track_digest(argument.file));
      file.track.source = argument.file;
      const debrief::CrewMatch match = debrief::crew_of(outcome_.plan, file.track, argument.crew);
      const plan::Assignment& assignment = outcome_.plan.assignments[match.assignment];
      outcome_.logs.push_back(fmt::format("{}: track of {} (sector {}), {}", argument.file,
                                          assignment.unit.callsign, assignment.sector_name,
                                          match.reason));
      for (const std::string& line : formats::statements(file.log, file.cleaning)) {
        outcome_.logs.push_back(fmt::format("{}: {}", argument.file, line));
      }
      crews_[match.assignment].logs.push_back(std::move(file.track));
    } catch (const Error& error) {
      if (error.code() == ErrorCode::usage || error.code() == ErrorCode::unreadable) throw;
      leave_out(error);
    }
  }

  void read_reports(const std::string& path) {
    const formats::CrewReportFile file =
        formats::read_crew_reports(path, outcome_.plan.mission.incident);
    provenance_.inputs.push_back(file.digest);
    for (const std::string& problem : file.content.problems) note(problem);
    for (const debrief::CrewReport& report : file.content.reports) {
      try {
        crews_[debrief::assignment_of(report, outcome_.plan)].reports.push_back(report);
      } catch (const Error& error) {
        leave_out(error.at(path));
      }
    }
  }

  std::vector<debrief::Sortie> sorties(const debrief::SortieOptions& how) {
    debrief::Gathered gathered = debrief::gather(outcome_.plan, std::move(crews_));
    outcome_.logs.insert(outcome_.logs.end(), gathered.notes.begin(), gathered.notes.end());
    const auto& elevation = outcome_.plan.mission.elevation;
    const terrain::ElevationModel ground = elevation ? elevation->model : terrain::ElevationModel();
    std::vector<debrief::Sortie> all;
    for (debrief::SortieInput& input : gathered.sorties) {
      all.push_back(debrief::make_sortie(outcome_.plan, std::move(input), ground, how));
    }
    return all;
  }

  bool partly() const { return partly_; }

 private:
  void note(const std::string& problem) {
    outcome_.problems.push_back(problem);
    tell(problem);
    partly_ = true;
  }
  void leave_out(const Error& error) { note(fmt::format("left out: {}", error.what())); }

  const DebriefOptions& options_;
  formats::Provenance& provenance_;
  formats::DebriefOutcome& outcome_;
  std::vector<debrief::CrewLogs> crews_;
  bool partly_ = false;
};

debrief::SortieOptions sortie_options(const DebriefOptions& options,
                                      formats::Provenance& provenance) {
  debrief::SortieOptions how;
  how.count_turns = options.count_turns;
  how.count_outside = options.count_outside;
  if (options.leave_out.empty()) return how;
  const formats::InputText file = formats::read_text_file(options.leave_out);
  provenance.inputs.push_back(file.digest);
  const formats::AreaReading reading =
      option_value(printable(options.leave_out), file.text,
                   [](const std::string& text) { return formats::parse_area(text); });
  for (const std::string& remark : reading.remarks) {
    tell(fmt::format("{}: {}", options.leave_out, remark));
  }
  how.left_out = reading.region;
  return how;
}

/// `planned`: the plan's own probability of detection.
debrief::HoleLimit hole_limit(const DebriefOptions& options, sweep::Probability planned) {
  const auto wanted =
      optional_value("--hole-below", options.hole_below, [](const std::string& text) {
        return sweep::Probability(parse_number(text, "a probability of detection"));
      });
  return {wanted.value_or(sweep::Probability(planned.value() / 2)),
          optional_value("--least-hole", options.least_hole, parse_area_size)};
}

/// The way from the next mission to the folder of this one, with a slash at its end.
std::string way_back(const DebriefOptions& options) {
  const fs::path next = fs::absolute(fs::path(options.folder) / formats::kNextFolder);
  const fs::path mission =
      options.mission == "-" ? fs::current_path() : fs::absolute(options.mission).parent_path();
  const fs::path way = mission.lexically_normal().lexically_relative(next.lexically_normal());
  return way.empty() || way == "." ? "" : way.generic_string() + "/";
}

void plan_next(const DebriefOptions& options, formats::DebriefOutcome& outcome) {
  const fs::path file = fs::path(options.folder) / formats::kNextFolder / formats::kNextMission;
  try {
    outcome.next_plan = plan::make_plan(formats::read_mission(file.string()));
  } catch (const Error& error) {
    outcome.next_refusal = error.what();
  }
}

void run(const DebriefOptions& options, Context& context) {
  const formats::InputText text =
      formats::read_text_file(options.mission, formats::kLargestMissionBytes);
  formats::DebriefOutcome outcome;
  try {
    outcome.plan = plan::make_plan(formats::read_mission(options.mission));
  } catch (const Error& error) {
    throw error.where().starts_with(options.mission) ? error : error.at(options.mission);
  }
  const debrief::HoleLimit limit = hole_limit(options, outcome.plan.probability_of_detection);
  formats::Provenance provenance = context.provenance();
  for (const plan::InputFile& input : outcome.plan.mission.inputs) {
    provenance.inputs.push_back({input.name, input.digest});
  }
  Reading reading(options, provenance, outcome);
  for (const std::string& argument : options.tracks) reading.read_track(track_argument(argument));
  for (const std::string& report : options.reports) reading.read_reports(report);

  debrief::DebriefOptions how;
  how.law = optional_value("--law", options.law, sweep::parse_detection_law);
  how.threads = std::clamp(std::thread::hardware_concurrency(), 1U, kMostThreads);
  outcome.debriefing = debrief::make_debriefing(
      outcome.plan, reading.sorties(sortie_options(options, provenance)), how);
  outcome.hole_below = limit.wanted;
  outcome.holes = debrief::sector_holes(outcome.plan, outcome.debriefing, limit);
  outcome.next = formats::next_mission(text.text, outcome.plan.mission, formats::kNextBelief,
                                       way_back(options));

  auto files =
      formats::write_next_folder(outcome.next, outcome.debriefing, options.folder, provenance);
  plan_next(options, outcome);
  const auto more = formats::write_debrief_folder(outcome, options.folder, provenance);
  files.insert(files.begin(), more.begin(), more.end());
  if (reading.partly()) context.exit_status = kPartlyDone;
  if (options.json) {
    print(formats::debrief_json(outcome, provenance));
    return;
  }
  std::string out = formats::debrief_summary(outcome);
  out += fmt::format("\nWritten to {}:\n", options.folder);
  for (const auto& file : files) out += fmt::format("  {}\n", file.generic_string());
  out += "\n" + caution_lines();
  print(out);
}

}  // namespace

void add_debrief_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "debrief", "What flown tracks covered, what to believe now, where to look next");
  command->footer(
      "A track is told to be a crew's by CALLSIGN=, else by the callsign or sector in its name, "
      "else by\nthe sector that holds most of it. Turns, ground outside the sector, and times off "
      "task or above\ncloud do not count as search. Files in the folder that this command wrote "
      "before are replaced\none by one, each as a whole; other files are not touched. Status 1: "
      "part of the logs or reports\nwas left out, as said.\n\n"
      "Planning aid only, not for navigation: a probability of detection is no promise that ground "
      "is\nempty. Local rules apply and the pilot in command decides.\n\n"
      "Example:\n"
      "  sweepwright debrief mission.json --track lark-21.gpx --track \"Lark 34=log.igc\" \\\n"
      "    --report reports.json -o debrief-folder\n"
      "  sweepwright plan debrief-folder/next/mission.json -o next-plan");
  auto options = std::make_shared<DebriefOptions>();
  command->add_option("mission", options->mission, "The mission file that was flown")
      ->required()
      ->type_name("MISSION.json");
  command
      ->add_option("--track", options->tracks,
                   "A flown track: GPX, KML, IGC, NMEA 0183, CSV or GeoJSON; may be given several "
                   "times")
      ->required()
      ->type_name("[CALLSIGN=]FILE");
  command
      ->add_option("--report", options->reports,
                   "Filled debrief forms, JSON or CSV; may be given several times")
      ->type_name("FILE");
  command->add_option("-o,--output", options->folder, "Folder to write the debrief to")
      ->required()
      ->type_name("DIR");
  command
      ->add_option(
          "--hole-below", options->hole_below,
          "Ground with a lower probability of detection is a hole; half of the plan's if not "
          "given")
      ->type_name("POD");
  command
      ->add_option("--least-hole", options->least_hole,
                   "Smaller holes are left out; a hundredth of the sector if not given")
      ->type_name("AREA");
  command
      ->add_option("--law", options->law,
                   "Detection law along the tracks; the mission's if not given")
      ->type_name("inverse-cube|exponential|definite-range");
  command->add_flag("--count-turns", options->count_turns, "Turns count as search too");
  command->add_flag("--count-outside", options->count_outside,
                    "Ground outside the sector counts as search too");
  command
      ->add_option("--leave-out", options->leave_out,
                   "Area over which tracks do not count, water say: GeoJSON or KML")
      ->type_name("FILE");
  options->reading.add_to(*command, false);
  command->add_flag("--json", options->json, "Print the debrief as JSON in place of the table");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
