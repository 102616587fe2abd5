#include "commands/sweep_request.hpp"

#include <fmt/format.h>

#include "commands/sweep_width_source.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::cli {
namespace {

Error usage(std::string message, std::string hint) {
  return Error(ErrorCode::usage, std::move(message), std::move(hint));
}

double number(std::string_view option, const std::string& text, std::string_view what) {
  return option_value(option, text,
                      [&](const std::string& typed) { return parse_number(typed, what); });
}

sweep::Probability probability(std::string_view option, const std::string& text) {
  return sweep::Probability(number(option, text, "the probability of detection"));
}

sweep::DetectionModel detection_model(const SweepRequest& request,
                                      std::optional<sweep::LateralRangeCurve> curve) {
  const auto layout = optional_value("--effort", request.effort, sweep::parse_effort_layout);
  const auto law = optional_value("--law", request.law, sweep::parse_detection_law);
  if (law && curve) {
    throw usage("--law and --lateral-range both say what one pass finds", "give one of them");
  }
  if (law && layout == sweep::EffortLayout::random) {
    throw usage("--effort random gives 1 - exp(-C) under any law", "leave --law out");
  }
  return {layout.value_or(sweep::EffortLayout::parallel),
          law.value_or(sweep::DetectionLaw::exponential), std::move(curve)};
}

/// `400NM2`, or the area drawn in a file: one whose name begins with a number ends in json or kml,
/// or has a folder in front.
Area area_option(const std::string& text, formats::Provenance& provenance) {
  if (!text.empty() && (is_ascii_digit(text.front()) || text.front() == '.')) {
    if (text.find('/') == std::string::npos && !text.ends_with("json") && !text.ends_with("kml")) {
      return option_value("--area", text, parse_area_size);
    }
  }
  const formats::AreaFile file = formats::read_area_file(text);
  for (const std::string& remark : file.reading.remarks) tell(fmt::format("{}: {}", text, remark));
  provenance.inputs.push_back(file.digest);
  return area(file.reading.region);
}

std::optional<formats::SpacingAnswer> spacing_answer(const SweepRequest& request,
                                                     const sweep::DetectionModel& model,
                                                     Length width) {
  if (!request.spacing.empty()) {
    const Length spacing = option_value("--spacing", request.spacing, parse_length);
    return formats::SpacingAnswer{sweep::plan_for_spacing(model, width, spacing),
                                  formats::SpacingAnswer::Given::spacing};
  }
  if (!request.coverage.empty()) {
    const sweep::Coverage wanted(number("--coverage", request.coverage, "the coverage"));
    return formats::SpacingAnswer{sweep::plan_for_coverage(model, width, wanted),
                                  formats::SpacingAnswer::Given::coverage};
  }
  if (!request.pod.empty()) {
    return formats::SpacingAnswer{
        sweep::plan_for_probability(model, width, probability("--pod", request.pod)),
        formats::SpacingAnswer::Given::probability};
  }
  return std::nullopt;
}

/// Of area, hours and spacing two are needed for the third.
void add_ground(const SweepRequest& request, formats::SweepReport& report,
                formats::Provenance& provenance) {
  const bool has_area = !request.area.empty();
  const bool has_hours = !request.hours.empty();
  if (!has_area && !has_hours) {
    // With the tables it corrects the width.
    if (!request.speed.empty() && request.platform.empty()) {
      throw usage("--speed alone says nothing", "add --area, --hours or both");
    }
    return;
  }
  if (request.speed.empty()) {
    throw usage("--speed is missing", "area and hours go together by the search speed");
  }
  if (has_area && has_hours && report.spacing) {
    throw usage("area and hours give the spacing themselves",
                "leave out --spacing, --coverage and --pod, or --area, or --hours");
  }
  if (!report.spacing && !(has_area && has_hours)) {
    throw usage(has_area ? "the area alone says nothing" : "the hours alone say nothing",
                has_area ? "add --hours, or --spacing, --coverage or --pod"
                         : "add --area, or --spacing, --coverage or --pod");
  }
  const sweep::SweepRate rate{report.width.width,
                              option_value("--speed", request.speed, parse_speed)};
  if (!has_hours) {
    report.ground = {sweep::hours_needed(rate, area_option(request.area, provenance),
                                         report.spacing->plan.coverage),
                     formats::GroundAnswer::Found::hours};
    return;
  }
  const Duration hours = option_value("--hours", request.hours, parse_duration);
  if (!has_area) {
    report.ground = {sweep::area_reached(rate, hours, report.spacing->plan.coverage),
                     formats::GroundAnswer::Found::area};
    return;
  }
  report.ground = {sweep::effort_brought(rate, hours, area_option(request.area, provenance)),
                   formats::GroundAnswer::Found::coverage};
  report.spacing = {sweep::plan_for_coverage(report.model, report.width.width,
                                             sweep::coverage(report.ground->plan)),
                    formats::SpacingAnswer::Given::effort};
}

void add_sector_search(const SweepRequest& request, formats::SweepReport& report) {
  if (request.sector_radius.empty()) {
    if (!request.sectors.empty()) throw usage("--sector-radius is missing", "add it");
    return;
  }
  if (report.spacing) {
    throw usage("a sector search has no even track spacing",
                "leave out --spacing, --coverage, --pod and --hours, or --sector-radius");
  }
  if (report.model.curve || report.model.layout == sweep::EffortLayout::random) {
    throw usage("a sector search is worked out under the detection laws only",
                "leave out --lateral-range and --effort random, or --sector-radius");
  }
  sweep::SectorSearch search{option_value("--sector-radius", request.sector_radius, parse_length)};
  if (!request.sectors.empty()) {
    search.lines = option_value("--sectors", request.sectors, sweep::parse_sectors);
  }
  report.sector_search = search;
}

void add_earlier(const SweepRequest& request, formats::SweepReport& report) {
  if (request.earlier_pods.empty()) return;
  if (!report.spacing && !report.sector_search) {
    throw usage("--earlier-pod needs a search to add to",
                "add --spacing, --coverage, --pod, --area with --hours, or --sector-radius");
  }
  for (const std::string& text : request.earlier_pods) {
    report.earlier_searches.push_back(probability("--earlier-pod", text));
  }
}

}  // namespace

void SweepRequest::add_to(CLI::App& command) {
  const auto option = [&](const char* name, auto& value, const char* help, const char* type) {
    command.add_option(name, value, help)->type_name(type);
  };
  option("--platform", platform, "What carries the lookouts",
         "fixed-wing|helicopter|vessel|small-boat|ground-team");
  option("--object", object, "What is sought, as --list-objects names it", "NAME");
  option("--height", height, "Height above ground or water", "LENGTH");
  option("--visibility", visibility, "Meteorological visibility", "LENGTH");
  option("--wind", wind, "Wind speed, over water", "SPEED");
  option("--sea", sea, "Height of the waves", "LENGTH");
  option("--terrain", terrain, "Vegetation or terrain, over land",
         "open|hilly|mountainous|dense-vegetation");
  option("--weather-table", weather_table,
         "Whose weather factors to use, over water; default iamsar",
         "iamsar|iamsar-vessel|us-1991");
  option("--manual-width", manual_width,
         "Uncorrected sweep width from your own manual, in place of the built-in table", "LENGTH");
  option("--manual", manual, "Which manual and table your own width is from", "TEXT");
  command.add_flag("--fatigued", fatigued, "Crews report excessive fatigue");
  option("--table", tables, "Your own table of widths, factors or objects; may be repeated",
         "FILE");
  option("--sweep-width", sweep_width, "Corrected sweep width from elsewhere", "LENGTH");
  option("--lateral-range", lateral_range,
         "Your own lateral range curve (CSV): gives sweep width and probability", "FILE");
  option("--detection-range", detection_range,
         "Detection range of an electronic sensor or beacon; horizon: from the heights",
         "LENGTH|horizon");
  option("--range-kind", range_kind, "What that range is", "minimum|average|maximum|horizon");
  option("--beacon-height", beacon_height, "Height of the beacon above the ground; default 0",
         "LENGTH");
  option("--range-of-detection", range_of_detection,
         "Range of detection of a ground team: mean of where the object is lost and found again",
         "LENGTH");
  option("--contrast", contrast, "How the object stands out from the ground; default any",
         "any|high|medium|low");
  option("--spacing", spacing, "Track spacing: gives coverage and probability", "LENGTH");
  option("--coverage", coverage, "Coverage wanted: gives track spacing", "C");
  option("--pod", pod, "Probability of detection wanted, 0 to 1: gives track spacing", "P");
  option("--law", law, "Detection law; exponential, the cautious one, is the default",
         "inverse-cube|exponential|definite-range");
  option("--effort", effort, "How the effort is laid out; default parallel sweeps",
         "parallel|random");
  option("--area", area, "Area to search: its size, or a GeoJSON or KML file", "AREA|FILE");
  option("--hours", hours, "On-scene endurance of all units together; 85 % of it is for searching",
         "TIME");
  option("--speed,--ground-speed", speed, "Search speed over the ground", "SPEED");
  option("--sector-radius", sector_radius, "Radius of a sector search: gives its probability",
         "LENGTH");
  option("--sectors", sectors, "Sectors of that search, both passes together; default 6", "N");
  option("--earlier-pod", earlier_pods,
         "Probability of detection of an earlier search of the area; may be repeated", "P");
}

sweep::Tables requested_tables(const SweepRequest& request, formats::Provenance& provenance) {
  sweep::Tables tables = sweep::built_in_tables();
  for (const std::string& path : request.tables) {
    const formats::InputText file = formats::read_text_file(path);
    provenance.inputs.push_back(file.digest);
    tables = sweep::with_table(std::move(tables), file.text, path);
  }
  return tables;
}

formats::SweepReport make_sweep_report(const SweepRequest& request,
                                       formats::Provenance& provenance) {
  const int wanted = static_cast<int>(!request.spacing.empty()) +
                     static_cast<int>(!request.coverage.empty()) +
                     static_cast<int>(!request.pod.empty());
  if (wanted > 1) {
    throw usage("--spacing, --coverage and --pod say the same thing three ways",
                "give one of them");
  }
  SourcedWidth sourced = make_sourced_width(request, provenance);
  formats::SweepReport report{.width = std::move(sourced.width),
                              .model = detection_model(request, std::move(sourced.curve))};
  report.spacing = spacing_answer(request, report.model, report.width.width);
  add_ground(request, report, provenance);
  add_sector_search(request, report);
  add_earlier(request, report);
  return report;
}

}  // namespace sweepwright::cli
