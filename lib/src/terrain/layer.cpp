#include "terrain/layer.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace sweepwright::terrain {
namespace {

constexpr double kOffsetTolerance = 0.01;  // of a step

std::optional<long> whole(double value) {
  const double rounded = std::round(value);
  if (std::abs(value - rounded) > kOffsetTolerance) return std::nullopt;
  return static_cast<long>(rounded);
}

bool take_in(Layer& layer, const ElevationTile& tile) {
  if (layer.posts != tile.posts) return false;
  const auto offset = layer.frame.offset_of(tile.lattice, std::max(tile.rows, tile.columns));
  if (!offset) return false;
  const std::optional<long> column = whole(offset->u);
  const std::optional<long> row = whole(offset->v);
  if (!column || !row) return false;
  layer.tiles.push_back({*row, *column, &tile});
  return true;
}

Layer new_layer(const ElevationTile& tile) {
  Layer layer{Frame(tile.lattice, tile.columns), tile.posts, {{0, 0, &tile}}, 0};
  if (const auto round = layer.frame.columns_round_the_earth()) {
    if (std::abs(*round - std::round(*round)) < 1e-6 * *round) {
      layer.columns_round = std::lround(*round);
    }
  }
  return layer;
}

double ground_step_metres(const Layer& layer) {
  const ElevationTile& tile = *layer.tiles.front().tile;
  const double v = tile.rows / 2.0;
  return layer.frame.least_metric({0, 0, v, v}).metres_per_v;
}

/// `into` becomes the larger of both; a gap gives way.
void keep_higher(std::span<float> into, const float* from) {
  for (float& height : into) {
    const float other = *from++;
    if (!(height >= other) && !std::isnan(other)) height = other;
  }
}

}  // namespace

std::vector<Layer> make_layers(const std::vector<ElevationTile>& tiles) {
  std::vector<Layer> layers;
  for (const ElevationTile& tile : tiles) {
    const auto taken = [&](Layer& layer) { return take_in(layer, tile); };
    if (std::none_of(layers.begin(), layers.end(), taken)) layers.push_back(new_layer(tile));
  }
  std::stable_sort(layers.begin(), layers.end(), [](const Layer& a, const Layer& b) {
    return ground_step_metres(a) < ground_step_metres(b);
  });
  return layers;
}

void read_row(const Layer& layer, long row, long first, std::span<float> out) {
  std::fill(out.begin(), out.end(), std::numeric_limits<float>::quiet_NaN());
  const long count = static_cast<long>(out.size());
  const std::array<long, 3> turns{0, layer.columns_round, -layer.columns_round};
  const std::size_t turn_count = layer.columns_round == 0 ? 1 : turns.size();
  for (const PlacedTile& placed : layer.tiles) {
    const long tile_row = row - placed.row;
    if (tile_row < 0 || tile_row >= placed.tile->rows) continue;
    for (std::size_t t = 0; t < turn_count; ++t) {
      const long west = placed.column + turns[t];
      const long from = std::max(first, west);
      const long to = std::min(first + count, west + placed.tile->columns);
      if (from >= to) continue;
      const std::size_t index =
          placed.tile->index(static_cast<int>(tile_row), static_cast<int>(from - west));
      keep_higher(
          out.subspan(static_cast<std::size_t>(from - first), static_cast<std::size_t>(to - from)),
          placed.tile->heights_m.data() + index);
    }
  }
}

float post_height(const Layer& layer, long row, long column) {
  float height = 0;
  read_row(layer, row, column, {&height, 1});
  return height;
}

Extent extent(const Layer& layer) {
  Extent all{layer.tiles.front().row, layer.tiles.front().row, layer.tiles.front().column,
             layer.tiles.front().column};
  for (const PlacedTile& placed : layer.tiles) {
    all.first_row = std::min(all.first_row, placed.row);
    all.last_row = std::max(all.last_row, placed.row + placed.tile->rows - 1);
    all.first_column = std::min(all.first_column, placed.column);
    all.last_column = std::max(all.last_column, placed.column + placed.tile->columns - 1);
  }
  return all;
}

}  // namespace sweepwright::terrain
