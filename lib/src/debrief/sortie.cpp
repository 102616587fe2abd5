#include "sweepwright/debrief/sortie.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "debrief/chords.hpp"
#include "debrief/flown_width.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::debrief {
namespace {

bool lies_in(Instant time, const plan::Period& period) {
  return time >= period.from && time < period.to;
}

Position middle_of(const track::Fix& from, const track::Fix& to) {
  const GeodesicLine line = geodesic(from.position, to.position);
  return travel(from.position, line.start_track, line.length / 2).position;
}

/// Ground that may be empty, asked for places that may be anywhere on Earth.
class Ground {
 public:
  explicit Ground(const Region& region) : region_(region) {
    if (!region.polygons.empty()) middle_ = middle(region);
  }
  bool holds(Position position) const {
    return middle_ && geodesic(*middle_, position).length < kLocalPlaneReach / 2 &&
           contains(region_, position);
  }

 private:
  const Region& region_;
  std::optional<Position> middle_;
};

class SortieMaker {
 public:
  SortieMaker(const plan::Plan& plan, SortieInput input, const terrain::ElevationModel& ground,
              const SortieOptions& options)
      : mission_(plan.mission),
        assignment_(plan.assignments.at(input.assignment)),
        ground_(ground),
        options_(options),
        sector_(assignment_.sector),
        left_out_(options.left_out),
        width_(plan.mission, assignment_, input.report) {
    sortie_.input = std::move(input);
    sortie_.totals.resize(kUses);
  }

  Sortie make() {
    for (const track::Segment& segment : sortie_.input.track.segments) {
      for (std::size_t i = 0; i + 1 < segment.size(); ++i) add(segment, i);
    }
    finish();
    return std::move(sortie_);
  }

 private:
  std::optional<Use> use_by_time(const FlownPiece& piece) const {
    if (!piece.from || !piece.to || !sortie_.input.report) return std::nullopt;
    const CrewReport& report = *sortie_.input.report;
    const Instant middle = *piece.from + (*piece.to - *piece.from) / 2;
    if (report.on_task && middle < *report.on_task) return Use::off_task;
    if (report.off_task && middle >= *report.off_task) return Use::off_task;
    for (const plan::Period& cloud : report.above_cloud) {
      if (lies_in(middle, cloud)) return Use::above_cloud;
    }
    return std::nullopt;
  }

  Use use_of(const FlownPiece& piece, Position middle, const StretchMotion& motion) const {
    if (const auto use = use_by_time(piece)) return *use;
    if (left_out_.holds(middle)) return Use::left_out;
    if (!sector_.holds(middle)) return Use::outside;
    const bool turns = assignment_.unit.platform != sweep::Platform::ground_team;
    if (turns && motion.turn_rate_dps.value_or(0) > kTurnRate) return Use::turn;
    return Use::search;
  }

  bool counts(Use use) const {
    return use == Use::search || (use == Use::turn && options_.count_turns) ||
           (use == Use::outside && options_.count_outside);
  }

  std::optional<Length> height_of(const track::Fix& from, const track::Fix& to, Position middle) {
    if (!assignment_.unit.search_height || !from.altitude || !to.altitude) return std::nullopt;
    const Length altitude = (*from.altitude + *to.altitude) / 2;
    const bool over_water = !mission_.conditions.terrain;
    if (over_water) return altitude;
    const std::optional<Length> below = terrain::height(ground_, middle);
    if (!below) return std::nullopt;
    if (altitude < *below) {
      buried_ = true;
      return std::nullopt;
    }
    return altitude - *below;
  }

  void add(const track::Segment& segment, std::size_t index) {
    const track::Fix& from = segment[index];
    const track::Fix& to = segment[index + 1];
    const Position middle = middle_of(from, to);
    const StretchMotion how = motion(segment, index);
    FlownPiece piece{{from.position, to.position, {}}, Use::search, from.time, to.time, {}, {}};
    piece.height = height_of(from, to, middle);
    piece.speed = how.speed;
    piece.use = use_of(piece, middle, how);
    if (counts(piece.use)) {
      const std::optional<Length> width = width_.at(piece.height, piece.speed);
      if (width) {
        piece.swept.sweep_width = *width;
      } else {
        piece.use = Use::no_width;
      }
      if (!piece.height) height_guessed_ = true;
    }
    const Length distance = geodesic(from.position, to.position).length;
    UseTotal& total = sortie_.totals[static_cast<std::size_t>(piece.use)];
    total.distance += distance;
    if (piece.from && piece.to) {
      total.time += Duration(*piece.to - *piece.from);
    } else {
      without_times_ = true;
    }
    sortie_.effort = sortie_.effort + distance * piece.swept.sweep_width;
    if (piece.swept.sweep_width > Length()) {
      counted_ += distance;
      if (!sortie_.on_scene) sortie_.on_scene = piece.from;
      if (piece.to) sortie_.off_scene = piece.to;
    }
    sortie_.pieces.push_back(piece);
  }

  void finish() {
    if (counted_ > Length()) sortie_.mean_width = sortie_.effort / counted_;
    std::vector<std::string>& remarks = sortie_.remarks;
    if (counted_ == Length()) remarks.emplace_back("nothing of the track counts as search");
    if (without_times_) {
      remarks.emplace_back(
          "the log has fixes without times: their speed is taken as planned, and turns and times "
          "off task among them are not known");
    }
    if (height_guessed_ && assignment_.unit.search_height && !assignment_.unit.sweep_width) {
      remarks.emplace_back(
          "heights above ground are not known all along: there the reported height counts, else "
          "the planned one");
    }
    if (buried_) {
      remarks.emplace_back(
          "altitudes of the log that lie below the ground are not used: they are not set, or not "
          "above sea level");
    }
    if (width_.raised()) {
      remarks.emplace_back(
          "part of the track lies below the lowest height of the sweep width tables: it counts as "
          "flown at the lowest");
    }
    const UseTotal& none = sortie_.totals[static_cast<std::size_t>(Use::no_width)];
    if (none.distance > Length()) {
      remarks.push_back(fmt::format(
          "{} were flown at heights or speeds for which the tables have no sweep width: they count "
          "as not searched",
          format_length(none.distance, LengthUnit::nautical_mile, 1)));
    }
  }

  const plan::Mission& mission_;
  const plan::Assignment& assignment_;
  const terrain::ElevationModel& ground_;
  const SortieOptions& options_;
  Ground sector_;
  Ground left_out_;
  FlownWidth width_;
  Sortie sortie_;
  Length counted_;
  bool without_times_ = false;
  bool buried_ = false;
  bool height_guessed_ = false;
};

}  // namespace

std::string_view name(Use use) {
  constexpr std::array<std::string_view, kUses> kNames{
      "search",      "turn",     "outside the sector", "over ground left out",
      "above cloud", "off task", "no sweep width"};
  return kNames.at(static_cast<std::size_t>(use));
}

Sortie make_sortie(const plan::Plan& plan, SortieInput input, const terrain::ElevationModel& ground,
                   const SortieOptions& options) {
  if (input.assignment >= plan.assignments.size()) {
    throw Error(ErrorCode::value, fmt::format("there is no assignment {} in a plan of {}",
                                              input.assignment + 1, plan.assignments.size()));
  }
  return SortieMaker(plan, std::move(input), ground, options).make();
}

}  // namespace sweepwright::debrief
