// FlownWidth: the sweep width of one crew at the heights and speeds that it flew; private to the
// debrief room.
//
// Conventions: heights are rounded to 10 m and speeds to 1 m/s, so that a long track asks the
//   tables a few dozen times.
#pragma once

#include <map>
#include <optional>
#include <utility>

#include "sweepwright/debrief/crew_report.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::debrief {

class FlownWidth {
 public:
  FlownWidth(const plan::Mission& mission, const plan::Assignment& assignment,
             const std::optional<CrewReport>& report);

  /// The width at a height above ground and a ground speed; what is not known is taken from the
  /// report, else from the plan. None where the tables have none.
  std::optional<Length> at(std::optional<Length> height, std::optional<Speed> speed);

  /// True once a height below the tables' lowest was taken for the lowest.
  bool raised() const { return raised_; }

 private:
  std::optional<Length> look_up(std::optional<Length> height, Speed speed) const;
  /// The lowest height that the tables know; none when they know none.
  std::optional<Length> lowest_height(Speed speed);

  const plan::Mission& mission_;
  const plan::SearchUnit& unit_;
  Length planned_width_;
  Length visibility_;
  std::optional<Length> height_;
  Speed speed_;
  bool fatigued_ = false;
  bool raised_ = false;
  std::optional<std::optional<Length>> lowest_;
  std::map<std::pair<long, long>, std::optional<Length>> known_;
};

}  // namespace sweepwright::debrief
