// Any bytes are a mission or an Error. A mission that names a file gets the same bytes for it.
#include <cstddef>
#include <cstdint>
#include <string>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/mission_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace sweepwright;
  const std::string text(data, data + size);
  const formats::InputText file{text, {"mission.json", "0"}};
  const auto load = [&](const std::string& name) { return formats::InputText{text, {name, "0"}}; };
  const auto load_bytes = [&](const std::string& name) {
    return formats::InputBytes{text, {name, "0"}};
  };
  try {
    const plan::Mission mission = formats::parse_mission(file, {load, load_bytes});
    // What was promised of a mission that came back.
    if (mission.units.empty() || mission.area.polygons.empty()) __builtin_trap();
    if (!(mission.wanted_coverage > sweep::Coverage())) __builtin_trap();
  } catch (const Error& error) {
    if (error.message().empty() || !error.where().starts_with("mission.json")) __builtin_trap();
  }
  return 0;
}
