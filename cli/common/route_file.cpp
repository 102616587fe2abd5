#include "common/route_file.hpp"

#include <fmt/format.h>

#include "common/output.hpp"
#include "sweepwright/formats/route_reader.hpp"

namespace sweepwright::cli {

Path read_route(const std::string& path, std::vector<formats::InputDigest>& inputs) {
  formats::RouteFile file = formats::read_route_file(path);
  for (const std::string& remark : file.reading.remarks) tell(fmt::format("{}: {}", path, remark));
  inputs.push_back(file.digest);
  return std::move(file.reading.route);
}

}  // namespace sweepwright::cli
