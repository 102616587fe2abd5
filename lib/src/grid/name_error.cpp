#include "grid/name_error.hpp"

#include <fmt/format.h>

#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {

Error name_error(std::string_view kind, std::string_view name, std::size_t at,
                 std::string_view expected, std::string_view example) {
  const std::string found =
      at < name.size() ? fmt::format("found '{}'", printable(name.substr(at))) : "the name ends";
  return Error(ErrorCode::value,
               fmt::format("'{}' is not {}: {} where {} is expected", printable(name), kind, found,
                           expected),
               fmt::format("write it like {}", example), fmt::format("character {}", at + 1));
}

}  // namespace sweepwright::grid
