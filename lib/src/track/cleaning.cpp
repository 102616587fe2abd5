#include "sweepwright/track/cleaning.hpp"

#include <utility>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {
namespace {

constexpr Instant kClocksWork = std::chrono::sys_days(std::chrono::year(1990) / 1 / 1);

/// Positions are written to a metre or so, and times to a second: slow crews seem to leap.
constexpr Length kLeap = Length::metres(50);

Duration between(const Fix& from, const Fix& to) {
  return *to.time - *from.time;
}

}  // namespace

std::string_view name(Drop drop) {
  switch (drop) {
    case Drop::null_position:
      return "at latitude 0 longitude 0";
    case Drop::clock_not_set:
      return "before 1990: the clock was not set";
    case Drop::no_time:
      return "without a time in a log that has times";
    case Drop::duplicate:
      return "the same as the one before";
    case Drop::out_of_order:
      return "out of order in time";
    case Drop::jump:
      break;
  }
  return "a jump that nothing flies";
}

Cleaner::Cleaner(const CleaningOptions& options, Sink sink)
    : options_(options), sink_(std::move(sink)) {
  if (options.fastest <= Speed() || options.longest_gap.count() <= 0 ||
      options.longest_step <= Length()) {
    throw Error(ErrorCode::value, "A limit of the cleaning of tracks is not above 0",
                "state a fastest speed, a longest gap and a longest step above 0");
  }
}

void Cleaner::drop(Drop reason, long row) {
  DropCount& drops = report_.drops[static_cast<std::size_t>(reason)];
  if (drops.count++ == 0) drops.first_row = row;
}

bool Cleaner::reachable(const Fix& from, const Fix& to) const {
  if (!report_.timed) return true;
  return geodesic(from.position, to.position).length <=
         options_.fastest * between(from, to) + kLeap;
}

bool Cleaner::too_far(const Fix& from, const Fix& to) const {
  if (report_.timed) return between(from, to) > options_.longest_gap;
  return geodesic(from.position, to.position).length > options_.longest_step;
}

void Cleaner::keep(const RawFix& raw, bool gap) {
  const bool begins = !last_ || gap || raw.log_part != last_->log_part;
  if (last_ && gap) {
    ++report_.gaps;
    if (report_.timed) {
      const Gap here{*last_->fix.time, *raw.fix.time};
      if (!report_.longest_gap ||
          here.to - here.from > report_.longest_gap->to - report_.longest_gap->from) {
        report_.longest_gap = here;
      }
    }
  }
  if (begins) ++report_.segments;
  ++report_.kept;
  last_ = raw;
  sink_(raw.fix, begins);
}

void Cleaner::await(const RawFix& raw) {
  const bool agrees = jumped_.empty() || (between(jumped_.back().fix, raw.fix).count() > 0 &&
                                          reachable(jumped_.back().fix, raw.fix));
  if (!agrees) {
    for (const RawFix& jumped : jumped_) drop(Drop::jump, jumped.row);
    jumped_.clear();
  }
  jumped_.push_back(raw);
  if (jumped_.size() < kJumpsThatAgree) return;
  bool gap = true;
  for (const RawFix& jumped : std::exchange(jumped_, {})) {
    keep(jumped, gap || too_far(last_->fix, jumped.fix));
    gap = false;
  }
}

void Cleaner::push(const RawFix& raw) {
  const Fix& fix = raw.fix;
  ++report_.pushed;
  if (fix.position == Position()) return drop(Drop::null_position, raw.row);
  if (fix.time && *fix.time < kClocksWork) return drop(Drop::clock_not_set, raw.row);
  if (!last_) {
    report_.timed = fix.time.has_value();
    return keep(raw, false);
  }
  if (report_.timed && !fix.time) return drop(Drop::no_time, raw.row);
  const bool same_place = fix.position == last_->fix.position;
  if (report_.timed) {
    const Duration since = between(last_->fix, fix);
    if (since.count() == 0 && same_place) return drop(Drop::duplicate, raw.row);
    if (since.count() <= 0) return drop(Drop::out_of_order, raw.row);
  } else if (same_place) {
    return drop(Drop::duplicate, raw.row);
  }
  if (!reachable(last_->fix, fix)) return await(raw);
  for (const RawFix& jumped : jumped_) drop(Drop::jump, jumped.row);
  jumped_.clear();
  keep(raw, too_far(last_->fix, fix));
}

CleaningReport Cleaner::finish() {
  for (const RawFix& jumped : std::exchange(jumped_, {})) drop(Drop::jump, jumped.row);
  return report_;
}

CleanTrack clean(const std::vector<RawFix>& log, const CleaningOptions& options) {
  CleanTrack result;
  Cleaner cleaner(options, [&](const Fix& fix, bool begins) {
    if (begins) result.track.segments.emplace_back();
    result.track.segments.back().push_back(fix);
  });
  for (const RawFix& raw : log) cleaner.push(raw);
  result.report = cleaner.finish();
  return result;
}

}  // namespace sweepwright::track
