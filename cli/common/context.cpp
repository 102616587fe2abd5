#include <chrono>
#include <cstdlib>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "sweepwright/base/version.hpp"
#include "sweepwright/formats/local_time.hpp"

namespace sweepwright::cli {
namespace {

TimePoint stamp(const std::string& option) {
  if (!option.empty()) return option_value("--stamp", option, formats::parse_local_time).time;
  if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH")) {
    const int latest = 2000000000;  // 2033, far past any build
    return TimePoint(std::chrono::seconds(option_value("SOURCE_DATE_EPOCH", epoch, [&](auto text) {
      return parse_whole_number(text, 0, latest, "a number of seconds since 1970");
    })));
  }
  return std::chrono::time_point_cast<std::chrono::seconds>(std::chrono::system_clock::now());
}

}  // namespace

formats::Provenance Context::provenance() const {
  return {std::string(version()), command_line, stamp(stamp_option), {}};
}

}  // namespace sweepwright::cli
