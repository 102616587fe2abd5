#include "sweepwright/formats/belief_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "formats/cell_rows.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/esri_ascii_reader.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::string_view kProbability = "probability";
constexpr std::string_view kPod = "pod";
/// An Esri ASCII grid begins with the number of its columns.
constexpr std::string_view kRasterStart = "ncols";
/// The system of cells whose ground came with the file.
constexpr std::string_view kDrawn = "drawn";

/// The cell of a row: its ground from the grid, else from the file.
grid::Cell cell_of(const CellRow& row) {
  try {
    if (!row.drawn.polygons.empty()) {
      return {.system = kDrawn, .level = {}, .name = row.name, .box = {}, .region = row.drawn};
    }
    if (row.system.empty()) {
      throw Error(ErrorCode::input,
                  fmt::format("the ground of the cell '{}' is not known", printable(row.name)),
                  "add the grid's name as 'system', such as gars");
    }
    return grid::grid(row.system).cell(row.name);
  } catch (const Error& error) {
    throw error.at(row.place);
  }
}

void require_probability(double value, const std::string& place) {
  if (value >= 0 && value <= 1) return;
  throw Error(ErrorCode::value, fmt::format("the probability {:g} is not from 0 to 1", value),
              "write 25 percent as 0.25", place);
}

/// The form of a height model serves for any number of each cell of ground.
belief::Patches raster(std::string_view text) {
  const terrain::ElevationTile tile = parse_esri_ascii(text, "the raster").tile;
  const auto* lattice = std::get_if<terrain::GeographicLattice>(&tile.lattice);
  if (lattice == nullptr) {
    throw Error(ErrorCode::input, "the raster is not in degrees", "give longitudes and latitudes");
  }
  belief::Patches found;
  for (int row = 0; row < tile.rows; ++row) {
    for (int column = 0; column < tile.columns; ++column) {
      const double value = double{tile.heights_m[tile.index(row, column)]};
      if (std::isnan(value) || value == 0) continue;
      require_probability(value, fmt::format("row {} column {}", row + 1, column + 1));
      const Angle north = lattice->north - lattice->latitude_step * (row - 0.5);
      const Angle west = lattice->west + lattice->longitude_step * (column - 0.5);
      const grid::LatLonBox box{
          .south = std::max(north - lattice->latitude_step, Angle::degrees(-90)),
          .north = std::min(north, Angle::degrees(90)),
          .west = normalized_180(west),
          .east = normalized_180(west + lattice->longitude_step)};
      found.patches.push_back({box, value});
    }
  }
  return found;
}

double cumulative_success(const CellRows& found) {
  const double success = found.cumulative_success.value_or(0);
  if (!(success >= 0 && success <= 1)) {
    throw Error(ErrorCode::value, fmt::format("'cumulative_pos' is {}, not from 0 to 1", success));
  }
  return success;
}

}  // namespace

belief::Belief parse_belief(std::string_view text) {
  const CellRows found = read_cell_rows(text, kProbability);
  std::vector<grid::Cell> cells;
  std::vector<double> probability;
  for (const CellRow& row : found.rows) {
    cells.push_back(cell_of(row));
    probability.push_back(row.value);
  }
  belief::Belief belief =
      found.outside ? belief::make_belief(std::move(cells), std::move(probability), *found.outside)
                    : belief::make_belief(std::move(cells), std::move(probability));
  belief.cumulative_success = cumulative_success(found);
  return belief;
}

BeliefFile read_belief_file_and_digest(const std::string& path) {
  const InputText input = read_text_file(path);
  try {
    return {parse_belief(input.text), input.digest};
  } catch (const Error& error) {
    throw error.at(path == "-" ? "standard input" : shown_path(path));
  }
}

belief::Belief read_belief_file(const std::string& path) {
  return read_belief_file_and_digest(path).belief;
}

std::vector<double> parse_cell_pods(std::string_view text, std::span<const grid::Cell> cells) {
  std::map<std::string, std::size_t, std::less<>> places;
  for (std::size_t i = 0; i < cells.size(); ++i) places.emplace(to_upper_ascii(cells[i].name), i);
  std::vector<double> pods(cells.size(), 0.0);
  for (const CellRow& row : read_cell_rows(text, kPod).rows) {
    const auto place = places.find(to_upper_ascii(row.name));
    if (place == places.end()) {
      throw Error(ErrorCode::input, fmt::format("the belief has no cell '{}'", printable(row.name)),
                  "the names must be those of the belief's own cells", row.place);
    }
    if (!(row.value >= 0 && row.value <= 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("the probability of detection {} is not from 0 to 1", row.value),
                  "write 78 percent as 0.78", row.place);
    }
    pods[place->second] = row.value;
  }
  return pods;
}

StatedProbabilities parse_stated_probabilities(std::string_view text, std::string_view system) {
  if (to_lower_ascii(trimmed(text).substr(0, kRasterStart.size())) == kRasterStart) {
    return {raster(text), 0};
  }
  CellRows rows = read_cell_rows(text, kProbability);
  std::vector<std::pair<grid::Cell, double>> found;
  for (CellRow& row : rows.rows) {
    if (row.system.empty()) row.system = system;
    require_probability(row.value, row.place);
    found.emplace_back(cell_of(row), row.value);
  }
  return {belief::stated(found), cumulative_success(rows)};
}

}  // namespace sweepwright::formats
