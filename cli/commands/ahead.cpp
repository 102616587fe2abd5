// sweepwright ahead: the track ahead, marked, and when it meets a boundary.
#include <fmt/format.h>

#include <memory>
#include <optional>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "common/overlay_output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/flight/track_ahead.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/formats/time_text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::cli {
namespace {

struct AheadOptions {
  std::string position;
  std::string track;
  std::string speed;
  std::string every = "1min";
  std::string until = "30min";
  std::string boundary;
  std::string at;
  OutputOptions output;
};

/// A length, or the length that a time takes at the speed.
Length parse_length_or_time(const std::string& text, Speed speed) {
  try {
    return parse_length(text);
  } catch (const Error&) {
    try {
      return speed * parse_duration(text);
    } catch (const Error&) {
      throw Error(ErrorCode::value,
                  fmt::format("'{}' is neither a time nor a length", printable(text)),
                  "write a time such as 1min, or a length such as 1NM");
    }
  }
}

/// `+0:12:00`, or the time of day when now is known.
std::string clock(const std::optional<formats::LocalTime>& now, Duration ahead) {
  if (!now) return "+" + format_duration(ahead);
  return formats::format_utc(now->time + std::chrono::round<std::chrono::seconds>(ahead));
}

std::vector<formats::Property> properties(const flight::PlaceAhead& place,
                                          const std::optional<formats::LocalTime>& now) {
  std::vector<formats::Property> all{{"distance_m", place.distance.metres()},
                                     {"time_s", place.time.count()}};
  if (now) all.push_back({"at_time", clock(now, place.time)});
  return all;
}

void add_boundary(formats::Overlay& overlay, const std::string& path,
                  const flight::PresentMotion& motion, Length until,
                  const std::optional<formats::LocalTime>& now, formats::Provenance& provenance) {
  formats::AreaFile area = formats::read_area_file(path);
  for (const std::string& remark : area.reading.remarks) tell(fmt::format("{}: {}", path, remark));
  provenance.inputs.push_back(area.digest);
  const std::vector<flight::BoundaryMeeting> meetings =
      flight::boundary_meetings(motion, until, area.reading.region);
  for (const flight::BoundaryMeeting& meeting : meetings) {
    const std::string name = fmt::format("{} {}", meeting.entering ? "enters" : "leaves",
                                         clock(now, meeting.place.time));
    tell(fmt::format(
        "{} the boundary {} after {}", meeting.entering ? "enters" : "leaves",
        now ? "at " + clock(now, meeting.place.time) : "in " + format_duration(meeting.place.time),
        format_length(meeting.place.distance, LengthUnit::nautical_mile, 2)));
    std::vector<formats::Property> more = properties(meeting.place, now);
    more.push_back({"meeting", std::string(meeting.entering ? "enters" : "leaves")});
    overlay.items.push_back(
        {name, format_position(meeting.place.position), std::move(more), meeting.place.position});
  }
  if (meetings.empty()) tell("the track does not meet the boundary so far ahead");
  overlay.items.push_back({"Boundary", "", {}, std::move(area.reading.region)});
}

void run(const AheadOptions& options, const Context& context) {
  formats::Provenance provenance = context.provenance();
  const Position here = position_option("POSITION", options.position);
  const flight::PresentMotion motion{here,
                                     option_value("--track", options.track, parse_true_direction),
                                     option_value("--speed", options.speed, parse_speed)};
  const auto now = optional_value("--at", options.at, formats::parse_local_time);
  const auto ahead = [&](std::string_view option, const std::string& text) {
    return option_value(option, text, [&](const std::string& typed) {
      return parse_length_or_time(typed, motion.ground_speed);
    });
  };
  const Length until = ahead("--until", options.until);
  const std::vector<flight::PlaceAhead> marks =
      flight::marks_ahead(motion, ahead("--every", options.every), until);
  formats::Overlay overlay{"Track ahead", {{"Now", format_position(here), {}, here}}};
  overlay.items.push_back({"Track",
                           fmt::format("track {}", format_direction(motion.track)),
                           {},
                           Path{here, travel(here, motion.track, until).position}});
  if (!options.boundary.empty()) {
    add_boundary(overlay, options.boundary, motion, until, now, provenance);
  }
  for (const flight::PlaceAhead& mark : marks) {
    overlay.items.push_back({clock(now, mark.time), format_position(mark.position),
                             properties(mark, now), mark.position});
  }
  write_overlay_to(options.output, overlay, provenance);
}

}  // namespace

void add_ahead_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "ahead", "Mark the track ahead each minute or mile, and when it meets a boundary");
  command->footer(
      "The crew keeps to the shortest line ahead at one speed over the ground. Planning aid only, "
      "not for\n"
      "navigation: check charts, notices, terrain and weather; local rules apply and the pilot in "
      "command\n"
      "decides.\n\n"
      "Example:\n"
      "  sweepwright ahead \"38-15.0N 117-02.5W\" --track 060T --speed 95kt --every 1min --until "
      "20min \\\n"
      "    --boundary area.geojson -o ahead.kml");
  auto options = std::make_shared<AheadOptions>();
  command->add_option("POSITION", options->position, "Present position")
      ->required()
      ->type_name("POSITION");
  command->add_option("--track", options->track, "Present true track")
      ->required()
      ->type_name("DEGREES");
  command->add_option("--speed", options->speed, "Present speed over the ground")
      ->required()
      ->type_name("SPEED");
  command->add_option("--every", options->every, "From mark to mark")
      ->type_name("TIME|LENGTH")
      ->capture_default_str();
  command->add_option("--until", options->until, "How far ahead")
      ->type_name("TIME|LENGTH")
      ->capture_default_str();
  command->add_option("--boundary", options->boundary, "Area whose edges are looked for")
      ->type_name("FILE");
  command->add_option("--at", options->at, "What time it is now, to mark times of day")
      ->type_name("TIME");
  options->output.add_to(*command, overlay_formats());
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
