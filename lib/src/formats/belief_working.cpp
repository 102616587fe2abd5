#include "sweepwright/formats/belief_working.hpp"

#include <array>
#include <nlohmann/json.hpp>

namespace sweepwright::formats {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array kShares{0.5, 0.9, 0.95};

Json degrees_of(Position position) {
  return Json::array({position.longitude().degrees(), position.latitude().degrees()});
}

struct SourceWorking {
  Json& out;
  void operator()(const belief::Datum& datum) const {
    out["kind"] = "datum";
    out["position"] = degrees_of(datum.position);
    out["error_m"] = datum.error.metres();
    out["deviation_m"] = belief::deviation(datum.error).metres();
  }
  void operator()(const belief::ErrorEllipse& ellipse) const {
    out["kind"] = "ellipse";
    out["position"] = degrees_of(ellipse.centre);
    out["semi_major_m"] = ellipse.semi_major.metres();
    out["semi_minor_m"] = ellipse.semi_minor.metres();
    out["major_axis_true_deg"] = ellipse.major_axis.degrees();
    out["major_deviation_m"] = belief::deviation(ellipse.semi_major).metres();
    out["minor_deviation_m"] = belief::deviation(ellipse.semi_minor).metres();
  }
  void operator()(const belief::DatumLine& line) const {
    out["kind"] = "route";
    out["places"] = line.route.size();
    out["length_m"] = length(line.route).metres();
    out["spread_m"] = line.spread.metres();
    out["deviation_m"] = belief::cross_track_deviation(line.spread).metres();
  }
  void operator()(const belief::RouteBands& route) const {
    out["kind"] = "bands";
    out["places"] = route.route.size();
    out["length_m"] = length(route.route).metres();
    out["bands"] = Json::array();
    for (const belief::Band& band : route.bands) {
      out["bands"].push_back(
          {{"within_m", band.within.metres()}, {"probability", band.probability}});
    }
  }
  void operator()(const belief::Patches& ground) const {
    out["kind"] = "ground";
    double inside = 0;
    for (const belief::Patch& patch : ground.patches) inside += patch.share;
    out["parts"] = ground.patches.size();
    out["inside"] = inside;
  }
};

}  // namespace

RawJson scenarios_json(const std::vector<belief::Scenario>& scenarios) {
  const std::vector<double> share = belief::shares(scenarios);
  Json list = Json::array();
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    Json one;
    if (!scenarios[i].name.empty()) one["name"] = scenarios[i].name;
    one["weight"] = scenarios[i].weight;
    one["share"] = share[i];
    std::visit(SourceWorking{one}, scenarios[i].source);
    list.push_back(std::move(one));
  }
  return {list.dump(-1, ' ', false, Json::error_handler_t::replace)};
}

RawJson searches_json(const std::vector<FailedSearch>& searches) {
  Json list = Json::array();
  for (const FailedSearch& search : searches) {
    list.push_back({{"file", search.file}, {"pos", search.success}});
  }
  return {list.dump(-1, ' ', false, Json::error_handler_t::replace)};
}

std::vector<ContainmentLine> containment_lines(const std::vector<belief::Scenario>& scenarios) {
  std::vector<ContainmentLine> lines;
  for (const belief::Scenario& scenario : scenarios) {
    for (const double share : kShares) {
      if (auto ring = belief::containment_ring(scenario.source, share)) {
        lines.push_back({share, scenario.name, std::move(*ring)});
      }
    }
  }
  return lines;
}

}  // namespace sweepwright::formats
