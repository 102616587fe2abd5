// sweepwright rings: the places at a distance or at a time of flight from a position.
#include "sweepwright/flight/rings.hpp"

#include <fmt/format.h>

#include <memory>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "common/overlay_output.hpp"
#include "common/wind_option.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::cli {
namespace {

struct RingsOptions {
  std::string position;
  std::vector<std::string> distances;
  std::vector<std::string> times;
  std::string speed;
  WindOption wind;
  std::string depart;
  OutputOptions output;
};

formats::OverlayItem item(const flight::RangeRing& ring, std::string name, std::string description,
                          std::vector<formats::Property> properties) {
  properties.push_back({"radius_m", ring.radius.metres()});
  return {std::move(name), std::move(description), std::move(properties), ring.line};
}

void add_distance_rings(formats::Overlay& overlay, const RingsOptions& options, Position centre) {
  for (const std::string& text : options.distances) {
    const flight::RangeRing ring = option_value("--distance", text, [&](const std::string& typed) {
      return flight::distance_ring(centre, parse_length(typed));
    });
    const std::string name = format_length(ring.radius, LengthUnit::nautical_mile, 1);
    overlay.items.push_back(item(ring, name, name + " from " + format_position(centre), {}));
  }
}

void add_time_rings(formats::Overlay& overlay, const RingsOptions& options, Position centre,
                    TimePoint depart) {
  if (options.times.empty()) return;
  if (options.speed.empty()) {
    throw Error(ErrorCode::usage, "how far a time reaches depends on the speed", "add --speed");
  }
  const Speed speed = option_value("--speed", options.speed, parse_speed);
  const flight::WindField wind = options.wind.field(centre, depart);
  for (const std::string& text : options.times) {
    const Duration time = option_value("--time", text, parse_duration);
    const flight::Wind now =
        flight::to_wind(wind.at(options.wind.flight_height(), depart, time / 2));
    const flight::RangeRing ring = option_value("--time", text, [&](const std::string&) {
      return flight::time_ring(centre, time, speed, now);
    });
    overlay.items.push_back(
        item(ring, format_duration(time),
             fmt::format("reached in {} at {} from {}", format_duration(time),
                         format_speed(speed, SpeedUnit::knot, 0), format_position(centre)),
             {{"time_s", time.count()}, {"speed_mps", speed.metres_per_second()}}));
  }
}

void run(const RingsOptions& options, const Context& context) {
  const formats::Provenance provenance = context.provenance();
  if (options.distances.empty() && options.times.empty()) {
    throw Error(ErrorCode::usage, "no ring is asked for", "add --distance or --time");
  }
  if (options.times.empty() && (options.wind.is_given() || !options.speed.empty())) {
    throw Error(ErrorCode::usage, "speed and wind do not change rings of a distance",
                "add --time, or leave out --speed and --wind");
  }
  const Position centre = position_option("POSITION", options.position);
  const auto depart = optional_value("--depart", options.depart, formats::parse_local_time);
  formats::Overlay overlay{"Rings", {{"Centre", format_position(centre), {}, centre}}};
  add_distance_rings(overlay, options, centre);
  add_time_rings(overlay, options, centre, depart ? depart->time : provenance.stamp);
  write_overlay_to(options.output, overlay, provenance);
}

}  // namespace

void add_rings_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("rings", "Rings of distance, or of time in the wind, round a position");
  command->footer(
      "A crew that holds one heading for the time is somewhere on the ring; wind carries the ring "
      "along.\n"
      "Planning aid only, not for navigation: check charts, notices, terrain and weather; local "
      "rules\n"
      "apply and the pilot in command decides.\n\n"
      "Examples:\n"
      "  sweepwright rings \"38-15.0N 117-02.5W\" --distance 5NM --distance 10NM -o rings.kml\n"
      "  sweepwright rings \"38-15.0N 117-02.5W\" --time 10min --time 20min --speed 90kt "
      "--wind 250/20kt");
  auto options = std::make_shared<RingsOptions>();
  command->add_option("POSITION", options->position, "The middle")
      ->required()
      ->type_name("POSITION");
  command->add_option("--distance", options->distances, "Radius of a ring; may be repeated")
      ->type_name("LENGTH");
  command->add_option("--time", options->times, "Time to a ring; may be repeated")
      ->type_name("TIME");
  command->add_option("--speed", options->speed, "True airspeed, or speed of a crew on the ground")
      ->type_name("SPEED");
  options->wind.add_to(*command);
  command
      ->add_option("--depart", options->depart, "When the time begins, for winds of several times")
      ->type_name("TIME");
  options->output.add_to(*command, overlay_formats());
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
