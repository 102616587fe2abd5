// FlownPattern: a pattern as it will be flown: headings, times, turns and distances, leg by leg.
//
// Problem: a pattern on paper has no wind, instant turns and an object that stays put.
// Method:
//   - Each leg has its wind triangle (wind_triangle.hpp), with the wind of the flight's height at
//     the leg's middle time.
//   - Where two legs meet in a corner the turn is led, if it fits into half of each leg
//     (corner.hpp); without room for it, bends of up to kBend are followed along the legs, and
//     at sharper corners the crew flies over the corner and comes back onto the next leg
//     (join.hpp).
//   - Search legs of a ladder are flown to their ends; the cross leg between two of them becomes
//     the quickest way onto the next one: turn, straight flight, turn, or a teardrop.
//   - Where the rows of a ladder are too close for plain turns, orders of rows that skip some and
//     fill them later are tried (leg_order.hpp), and the quickest of all is flown, unless the
//     order drawn is asked for.
//   - Relative to a drifting object the air moves with the wind less the drift: the pattern is
//     flown in that wind, and the ground drifts by underneath.
// Conventions: times count from departure. A leg's `time` and `distance` are those of its
//   straight part; the turn at its end has its own; the leg ends when the turn does. Distances
//   are over the ground.
// Domain: any pattern; a wind and drift in which each leg can be flown: Error(impossible) names
//   the leg that cannot.
// Accuracy: leg times within 1e-4 of a fine integration along the leg, for legs of 300 NM at 70
//   degrees north in half the airspeed's wind (flown_pattern_test.cpp). No climb, gusts or
//   reaction time.
// Promises: P1 the total time and distance are the sums of the parts; P2 with wind and direction
//   reversed the times are mirrored; P3 relative to a drifting object each leg ends where the
//   pattern says (flown_path_test.cpp); P4 with no wind and no turns to make, times are those of
//   distance over airspeed.
// Source: the headers named.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/flight/aircraft.hpp"
#include "sweepwright/flight/join.hpp"
#include "sweepwright/flight/wind_field.hpp"
#include "sweepwright/flight/wind_triangle.hpp"
#include "sweepwright/magnetic/variation.hpp"
#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::flight {

/// In which order the rows of a ladder are flown.
enum class RowOrder {
  quickest,  ///< that takes least time
  drawn,     ///< that of the pattern
};

struct FlyOptions {
  TimePoint depart{};                 ///< when the flight begins: at the base, or where search does
  std::optional<Position> base = {};  ///< flown from and returned to
  Length height = {};                 ///< that of the wind; above sea level
  std::optional<Drift> drift = {};    ///< of the object that the pattern is flown relative to
  RowOrder order = RowOrder::quickest;
  /// Magnetic headings cost more than all the rest: an optimiser leaves them out.
  bool magnetic_headings = true;
};

struct FlownTurn {
  TurnForm form = TurnForm::led;
  std::array<Arc, 3> arcs{};  ///< one after the other; unused ones turn through nothing
  TurningFlight flight;       ///< its wind is that relative to the object
  Length radius;              ///< of the circle in the air
  Length distance;
  Duration time{};
};

struct FlownLeg {
  pattern::Leg leg;  ///< as meant; relative to the object when that drifts
  std::optional<int>
      drawn;              ///< number of the pattern's leg, from 1; none for transits and new legs
  bool searching = true;  ///< of the pattern: not a transit from or to the base
  bool joined = false;    ///< the straight part of a join: `leg` is only what it stands for
  WindTriangle triangle;  ///< over the ground, at the leg's start
  Length lead_in;         ///< of `leg`, left out at its start
  Length lead_out;        ///< of `leg`, left out at its end
  Length distance;        ///< of the straight part
  Duration time{};        ///< of the straight part
  std::optional<FlownTurn> turn;  ///< at its end
  Duration start{};
  Duration end{};  ///< the turn included
  Length running_distance;
  std::optional<Angle> variation;  ///< at its start, east positive
  std::optional<MagneticDirection> magnetic_heading() const;
};

struct FlownPattern {
  std::vector<FlownLeg> legs;  ///< in the order flown
  TimePoint depart;
  std::optional<Drift> drift;
  Duration arrival{};     ///< at the commence search point, since departure
  Duration search_end{};  ///< the last leg of the pattern is done
  Duration total_time{};
  Length total_distance;
  int skipped_rows = 0;  ///< k when rows are flown in the order 1, 1 + k, 2, 2 + k, ...; else 0
  std::optional<magnetic::Variation> variation;  ///< at the commence search point
  std::vector<std::string> remarks;
};

FlownPattern fly(const pattern::Pattern& pattern, const Aircraft& aircraft, const WindField& wind,
                 const FlyOptions& options,
                 const magnetic::Model& model = magnetic::world_magnetic_model());

/// Where a place of the pattern is by then: it drifts with the object from the arrival on.
Position over_ground(const FlownPattern& flown, Position meant, Duration since_departure);

}  // namespace sweepwright::flight
