#include "sweepwright/formats/search_action_message.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/map_corners.hpp"
#include "formats/sheet_figures.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::string_view kNotKnown = "not known";

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  while (!text.empty()) {
    text.remove_prefix(std::max<std::size_t>(character_length(text), 1));
    ++count;
  }
  return count;
}

/// Text in lines that fit, those after the first indented.
class Message {
 public:
  void heading(int number, std::string_view title) {
    text_ += fmt::format("\n{}. {}\n", number, title);
  }

  void item(char letter, std::string_view what, std::string_view value) {
    paragraph(fmt::format("{}. ", letter), fmt::format("{}: {}", what, value));
  }

  /// `lead` stands before the first line, blanks of its width before the others.
  void paragraph(std::string_view lead, std::string_view text) {
    const std::string indent(lead.size(), ' ');
    std::string line(lead);
    bool fresh = true;
    while (!text.empty()) {
      const std::size_t blank = text.find(' ');
      const std::string_view word = text.substr(0, blank);
      if (!fresh && characters(line) + 1 + characters(word) > kMessageWidth) {
        text_ += line + "\n";
        line = indent;
        fresh = true;
      }
      if (!fresh) line += ' ';
      line += word;
      fresh = false;
      text.remove_prefix(blank == std::string_view::npos ? text.size() : blank + 1);
    }
    text_ += line + "\n";
  }

  void line(std::string_view text) { text_ += fmt::format("{}\n", text); }
  std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

std::string known(const std::string& text) {
  return text.empty() ? std::string(kNotKnown) : text;
}

std::string weather(const plan::Conditions& conditions) {
  std::string text =
      "visibility " + format_length(conditions.visibility, LengthUnit::nautical_mile, 0);
  if (conditions.wind_speed) {
    text += ", wind " + knots_text(*conditions.wind_speed);
    if (conditions.wind_from) text += " from " + format_direction(*conditions.wind_from);
  }
  if (conditions.sea_height) {
    text += ", sea " + format_length(*conditions.sea_height, LengthUnit::metre, 1);
  }
  if (!conditions.weather.empty()) text += "; " + conditions.weather;
  return text;
}

void add_situation(Message& message, const plan::Mission& mission) {
  const plan::Incident& incident = mission.incident;
  message.heading(1, "SITUATION");
  message.item('A', "Incident",
               incident.name + (incident.number.empty() ? "" : ", number " + incident.number));
  message.item('B', "Position",
               mission.datum ? mission.datum->name + ", " + position_text(mission.datum->position)
                             : std::string(kNotKnown));
  message.item('C', "Period",
               local_period_text(incident.operational_period, incident.offset_from_utc));
  message.line("   = " + utc_period_text(incident.operational_period));
  message.item('D', "Persons on board",
               mission.object.persons_on_board ? fmt::format("{}", *mission.object.persons_on_board)
                                               : std::string(kNotKnown));
  message.item('E', "Search object", mission.object.table_name + "; " + mission.object.description);
  message.item('F', "Weather", weather(mission.conditions));
  std::string units;
  for (const plan::SearchUnit& unit : mission.units) {
    units += fmt::format("{}{} ({})", units.empty() ? "" : ", ", unit.callsign,
                         sweep::name(unit.platform));
  }
  message.item('G', "Search facilities", units);
}

void add_areas(Message& message, const plan::Plan& plan) {
  message.heading(2, "SEARCH AREAS (WGS 84)");
  for (const plan::Assignment& assignment : plan.assignments) {
    message.paragraph("   ", fmt::format("{}: {:.1f} NM2, corner points", assignment.sector_name,
                                         area(assignment.sector).square_nautical_miles()));
    for (const CornerRing& ring : sector_corners(assignment.sector).rings) {
      if (ring.hole) message.line("      not to be searched, inside:");
      for (const Position& corner : ring.corners) message.line("      " + position_text(corner));
    }
  }
}

void add_execution(Message& message, const plan::Plan& plan) {
  message.heading(3, "EXECUTION");
  for (const plan::Assignment& assignment : plan.assignments) {
    const plan::SearchUnit& unit = assignment.unit;
    const pattern::Pattern& pattern = assignment.pattern;
    message.paragraph("   ", fmt::format("{}: {}, from {}", assignment.sector_name, unit.callsign,
                                         unit.base.name));
    message.paragraph("      ", fmt::format("pattern {} {}, first leg {}, first turn {}",
                                            pattern::info(pattern.kind).designator,
                                            pattern::info(pattern.kind).title,
                                            format_direction(pattern.legs.front().line.start_track),
                                            pattern::name(pattern.first_turn)));
    message.paragraph("      ",
                      "commence search point " + position_text(commence_search_point(pattern)));
    message.paragraph(
        "      ", fmt::format("height {}, speed {}, track spacing {}, coverage {:.2f}",
                              unit.search_height ? feet_text(*unit.search_height) + " above surface"
                                                 : std::string("on surface"),
                              knots_text(unit.search_speed), spacing_text(assignment.spacing),
                              assignment.coverage.value()));
  }
}

void add_coordination(Message& message, const plan::Plan& plan) {
  message.heading(4, "CO-ORDINATION");
  message.item('A', "Search mission co-ordinator", known(plan.mission.incident.prepared_by));
  message.item('B', "On-scene co-ordinator", "not named in the plan");
  std::string times;
  for (const plan::Assignment& assignment : plan.assignments) {
    times += fmt::format("{}{} on scene for {}, of it {} searching", times.empty() ? "" : "; ",
                         assignment.unit.callsign,
                         format_duration_minutes(assignment.on_scene_endurance),
                         format_duration_minutes(assignment.search_time));
  }
  message.item('C', "Times", times);
  message.item('D', "Coverage",
               fmt::format("wanted {:.2f}, planned {:.2f}, probability of detection {} ({} law)",
                           plan.coverage_wanted.value(), plan.coverage_planned.value(),
                           percent_text(plan.probability_of_detection.value()),
                           sweep::name(plan.mission.detection_law)));
  char letter = 'E';
  for (const std::string& hazard : plan.mission.hazards) {
    message.item(letter, "Hazard", hazard);
    if (letter < 'Z') ++letter;
  }
  for (const plan::Assignment& assignment : plan.assignments) {
    for (const std::string& remark : assignment.unit.remarks) {
      message.paragraph("   ", assignment.unit.callsign + ": " + remark);
    }
  }
}

void add_communications(Message& message, const std::vector<plan::Channel>& channels) {
  message.heading(5, "COMMUNICATIONS");
  if (channels.empty()) message.paragraph("   ", "no channel is named in the plan");
  for (const plan::Channel& channel : channels) {
    message.paragraph("   ", channel.name + ": " + channel.frequency);
  }
}

void add_reports(Message& message) {
  message.heading(6, "REPORTS");
  message.paragraph("   ",
                    "Report on arriving on scene and on leaving it, any sighting at once with its "
                    "position, any change of weather, and when the assignment is done: legs "
                    "completed, visibility met, ground not seen well and why, crew fatigue. Bring "
                    "back the debrief form and the recorded track.");
}

}  // namespace

std::string write_search_action_message(const plan::Plan& plan, const Provenance& provenance) {
  Message message;
  message.line("SEARCH ACTION MESSAGE");
  message.line("Made " + format_utc(provenance.stamp) + " by " + creator(provenance));
  add_situation(message, plan.mission);
  add_areas(message, plan);
  add_execution(message, plan);
  add_coordination(message, plan);
  add_communications(message, plan.mission.channels);
  add_reports(message);
  message.line("");
  for (const std::string_view caution : kCautions) message.paragraph("", caution);
  return message.take();
}

}  // namespace sweepwright::formats
