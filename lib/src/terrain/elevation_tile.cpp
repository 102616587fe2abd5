#include "sweepwright/terrain/elevation_tile.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::terrain {
namespace {

// A file's corner may be off by rounding, and areas reach half a step past their post.
constexpr double kSlackDegrees = 1e-6;

class Checker {
 public:
  explicit Checker(const ElevationTile& tile) : tile_(tile) {}

  void run() const {
    check_size();
    std::visit([this](const auto& lattice) { check_lattice(lattice); }, tile_.lattice);
    for (const float height : tile_.heights_m) {
      if (std::isinf(height)) fail("a height is infinite", "is the file damaged?");
    }
  }

 private:
  [[noreturn]] void fail(std::string message, std::string hint) const {
    throw Error(ErrorCode::value, std::move(message), std::move(hint), tile_.source);
  }

  void check_size() const {
    if (tile_.rows < 2 || tile_.columns < 2) {
      fail(fmt::format(
               "the elevation model has {} rows and {} columns, and needs 2 of each at least",
               tile_.rows, tile_.columns),
           "is it the right file?");
    }
    const std::size_t posts =
        static_cast<std::size_t>(tile_.rows) * static_cast<std::size_t>(tile_.columns);
    if (tile_.rows > kMostRows || tile_.columns > kMostRows || posts > kMostPosts) {
      fail(fmt::format("the elevation model has {} rows of {} heights: too many", tile_.rows,
                       tile_.columns),
           fmt::format("cut it to the search: at most {} million heights are read",
                       kMostPosts / 1'000'000));
    }
    if (tile_.heights_m.size() != posts) {
      fail(fmt::format("the elevation model has {} heights where {} rows of {} are wanted",
                       tile_.heights_m.size(), tile_.rows, tile_.columns),
           "is the file cut off?");
    }
  }

  void check_step(double step) const {
    if (!(step > 0) || !std::isfinite(step)) {
      fail("the elevation model has no step from post to post", "is the file damaged?");
    }
  }

  void check_lattice(const GeographicLattice& lattice) const {
    const double latitude_step = lattice.latitude_step.degrees();
    const double longitude_step = lattice.longitude_step.degrees();
    check_step(latitude_step);
    check_step(longitude_step);
    const double north = lattice.north.degrees();
    const double south = north - (tile_.rows - 1) * latitude_step;
    if (!(north <= 90 + kSlackDegrees && south >= -90 - kSlackDegrees)) {
      fail(fmt::format("the elevation model reaches from latitude {:.4f} to {:.4f}", south, north),
           "latitudes lie between -90 and 90 degrees");
    }
    if (!(std::abs(lattice.west.degrees()) <= 360)) {
      fail(fmt::format("the elevation model begins at longitude {}", lattice.west.degrees()),
           "longitudes lie between -360 and 360 degrees");
    }
    if (!((tile_.columns - 1) * longitude_step <= 360 + kSlackDegrees)) {
      fail("the elevation model goes more than once round the Earth", "is the file damaged?");
    }
  }

  void check_lattice(const UtmLattice& lattice) const {
    check_step(lattice.northing_step.metres());
    check_step(lattice.easting_step.metres());
    if (lattice.zone < 1 || lattice.zone > 60) {
      fail(fmt::format("there is no UTM zone {}", lattice.zone), "zones are 1 to 60");
    }
    // Ten thousand kilometres from the equator to a pole, and a zone's neighbours to the sides.
    const double north = lattice.northing.metres();
    const double south = north - (tile_.rows - 1) * lattice.northing_step.metres();
    const double west = lattice.easting.metres();
    const double east = west + (tile_.columns - 1) * lattice.easting_step.metres();
    if (!(south >= -10e6 && north <= 20e6 && west >= -1e6 && east <= 2e6)) {
      fail(
          fmt::format("the elevation model reaches from easting {:.0f} to {:.0f} and from northing "
                      "{:.0f} to {:.0f}, which is outside any UTM zone",
                      west, east, south, north),
          "is it another projection, or are its units feet?");
    }
  }

  const ElevationTile& tile_;
};

}  // namespace

void check(const ElevationTile& tile) {
  Checker(tile).run();
}

}  // namespace sweepwright::terrain
