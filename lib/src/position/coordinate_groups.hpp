// Shares the items of a text out between its first and its second coordinate.
#pragma once

#include <array>
#include <optional>
#include <variant>
#include <vector>

#include "position/coordinate.hpp"

namespace sweepwright::detail {

/// Two coordinates in the order written.
struct GroupPair {
  std::array<Group, 2> groups;
  /// Which is which, where letters or labels tell.
  std::optional<std::array<Axis, 2>> axes;
};

std::variant<GroupPair, TextFailure> share_out(const PlainText& source,
                                               const std::vector<Item>& items);

}  // namespace sweepwright::detail
