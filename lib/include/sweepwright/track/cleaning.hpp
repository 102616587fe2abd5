// Cleaning of a log: what a device wrote becomes a track, and everything that is dropped is
// counted.
//
// Problem: logs repeat lines, go back in time, jump across the map, begin at latitude 0 longitude 0
//   or in 1970, and stop for an hour. None of that is ground that a crew saw.
// Method: fixes are pushed in the order of the log; each is kept or dropped for one reason, the
//   first that holds:
//   1. null position: latitude and longitude are both 0;
//   2. clock not set: a time before 1990;
//   3. no time, in a log whose first fix has one;
//   4. duplicate: the time and the position of the last kept fix, or (without times) its position;
//   5. out of order: earlier than the last kept fix, or at its time elsewhere;
//   6. jump: farther from the last kept fix than the fastest speed allows. When kJumpsThatAgree
//      such fixes in a row agree with each other, it was a new place: they are kept after a gap.
//   A step longer than `longest_gap` in time (or `longest_step` where there are no times) begins a
//   new segment: no track is invented across it.
// Domain: logs of any length, in constant memory.
// Promises: P1 pushed = kept + dropped; P2 within a segment times go up and no step is faster than
//   the fastest speed; P3 cleaning what was cleaned drops nothing (cleaning_test.cpp).
// Source: common practice, no source; the limits are own choices and can be set.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "sweepwright/track/track.hpp"

namespace sweepwright::track {

/// A fix as the log has it.
struct RawFix {
  Fix fix;
  long row = 0;      ///< line of the file, or the number of the fix where lines mean nothing
  int log_part = 0;  ///< a new number begins a new segment: GPX trkseg, KML Track
};

struct CleaningOptions {
  Speed fastest = Speed::knots(400);
  Duration longest_gap = std::chrono::seconds(60);
  Length longest_step = Length::nautical_miles(1);
};

enum class Drop { null_position, clock_not_set, no_time, duplicate, out_of_order, jump };
inline constexpr std::size_t kDrops = 6;
/// `at latitude 0 longitude 0`, `before 1990: the clock was not set`, ...
std::string_view name(Drop drop);

inline constexpr std::size_t kJumpsThatAgree = 5;

struct DropCount {
  std::size_t count = 0;
  long first_row = 0;
};

struct Gap {
  Instant from;
  Instant to;
};

struct CleaningReport {
  std::size_t pushed = 0;
  std::size_t kept = 0;
  std::array<DropCount, kDrops> drops{};
  std::size_t segments = 0;
  std::size_t gaps = 0;            ///< steps that were too long
  std::optional<Gap> longest_gap;  ///< in time, of those
  bool timed = false;              ///< the first fix has a time
  std::size_t dropped() const { return pushed - kept; }
};

class Cleaner {
 public:
  /// Takes each kept fix; `begins` is true for the first of a segment.
  using Sink = std::function<void(const Fix& fix, bool begins)>;

  /// Throws Error(value) for limits that are not above 0.
  Cleaner(const CleaningOptions& options, Sink sink);
  void push(const RawFix& raw);
  /// No more fixes: those that waited as jumps are counted.
  CleaningReport finish();

 private:
  void drop(Drop reason, long row);
  void keep(const RawFix& raw, bool gap);
  bool reachable(const Fix& from, const Fix& to) const;
  bool too_far(const Fix& from, const Fix& to) const;
  void await(const RawFix& raw);

  CleaningOptions options_;
  Sink sink_;
  CleaningReport report_;
  std::optional<RawFix> last_;
  std::vector<RawFix> jumped_;  ///< that agree with each other, fewer than kJumpsThatAgree
};

struct CleanTrack {
  Track track;
  CleaningReport report;
};

CleanTrack clean(const std::vector<RawFix>& log, const CleaningOptions& options = {});

}  // namespace sweepwright::track
