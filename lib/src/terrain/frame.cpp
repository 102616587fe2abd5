#include "terrain/frame.hpp"

#include <GeographicLib/TransverseMercator.hpp>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "sweepwright/base/constants.hpp"
#include "sweepwright/base/direction.hpp"

namespace sweepwright::terrain {
namespace {

constexpr double kUtmFalseEasting = 500'000;
constexpr double kUtmFalseNorthing = 10'000'000;  // southern hemisphere
// Neighbouring zones are 6 degrees wide; the projection's series hold far beyond this.
constexpr double kUtmReachDegrees = 12;
constexpr double kUtmScale = 0.9996;       // on the central meridian
constexpr double kOffsetTolerance = 0.01;  // of a step

double radians(double degrees) {
  return degrees / kDegreesPerRadian;
}

// WGS 84 radii of curvature [geodesy handbooks; from memory]: meridian M = a(1-e2)/w^3 and prime
// vertical N = a/w, with w^2 = 1 - e2 sin^2(latitude). terrain_frame_test.cpp checks them against
// geodesics.
constexpr double kFlattening = 1 / 298.257223563;  // WGS 84 [NIMA TR8350.2, table 3.1]
constexpr double kEccentricitySquared = kFlattening * (2 - kFlattening);

double metres_per_degree_of_latitude(double latitude) {
  const double s = std::sin(radians(latitude));
  const double w2 = 1 - kEccentricitySquared * s * s;
  return kWgs84EquatorialRadiusMetres * (1 - kEccentricitySquared) / (w2 * std::sqrt(w2)) /
         kDegreesPerRadian;
}

double metres_per_degree_of_longitude(double latitude) {
  const double s = std::sin(radians(latitude));
  const double cosine = std::max(0.0, std::cos(radians(latitude)));
  return kWgs84EquatorialRadiusMetres / std::sqrt(1 - kEccentricitySquared * s * s) * cosine /
         kDegreesPerRadian;
}

double false_northing(const UtmLattice& lattice) {
  return lattice.hemisphere == Hemisphere::south ? kUtmFalseNorthing : 0;
}

double central_meridian(const UtmLattice& lattice) {
  return 6.0 * lattice.zone - 183;
}

/// Latitudes of a geographic box, without their sign.
struct Latitudes {
  double nearest_pole;
  double nearest_equator;
};

Latitudes latitudes_of(const GeographicLattice& lattice, const LatticeBox& box) {
  const double north =
      std::min(90.0, lattice.north.degrees() - box.v_least * lattice.latitude_step.degrees());
  const double south =
      std::max(-90.0, lattice.north.degrees() - box.v_most * lattice.latitude_step.degrees());
  const double most = std::max(std::abs(north), std::abs(south));
  const bool crosses = north >= 0 && south <= 0;
  return {most, crosses ? 0 : std::min(std::abs(north), std::abs(south))};
}

/// The largest scale of the projection within `x` of the central meridian: that of a sphere of the
/// ellipsoid's smallest radius, which is a little larger still.
double most_utm_scale(double x) {
  constexpr double kSmallestRadius = kWgs84EquatorialRadiusMetres * (1 - kEccentricitySquared);
  return kUtmScale * std::cosh(x / (kUtmScale * kSmallestRadius));
}

/// Distances from the central meridian of a box's sides: the larger.
double most_easting(const UtmLattice& utm, const LatticeBox& box) {
  const double origin = utm.easting.metres() - kUtmFalseEasting;
  const double step = utm.easting_step.metres();
  return std::max(std::abs(origin + box.u_least * step), std::abs(origin + box.u_most * step));
}

bool same(double a, double b, int posts) {
  return std::abs(a - b) * posts < kOffsetTolerance * a;
}

}  // namespace

std::optional<LatticePoint> Frame::to_lattice(Position position) const {
  if (const auto* geographic = std::get_if<GeographicLattice>(&lattice_)) {
    const double step = geographic->longitude_step.degrees();
    const LatticePoint raw{(position.longitude() - geographic->west).degrees() / step,
                           (geographic->north - position.latitude()) / geographic->latitude_step};
    return unrolled(raw, {middle_u_, 0});
  }
  const UtmLattice& utm = std::get<UtmLattice>(lattice_);
  const double meridian = central_meridian(utm);
  const Angle away = normalized_180(position.longitude() - Angle::degrees(meridian));
  if (std::abs(away.degrees()) > kUtmReachDegrees) return std::nullopt;
  double x = 0;
  double y = 0;
  GeographicLib::TransverseMercator::UTM().Forward(meridian, position.latitude().degrees(),
                                                   position.longitude().degrees(), x, y);
  return LatticePoint{
      (x + kUtmFalseEasting - utm.easting.metres()) / utm.easting_step.metres(),
      (utm.northing.metres() - y - false_northing(utm)) / utm.northing_step.metres()};
}

Position Frame::to_position(LatticePoint point) const {
  if (const auto* geographic = std::get_if<GeographicLattice>(&lattice_)) {
    const double latitude =
        geographic->north.degrees() - point.v * geographic->latitude_step.degrees();
    return Position::at(Angle::degrees(std::clamp(latitude, -90.0, 90.0)),
                        geographic->west + point.u * geographic->longitude_step);
  }
  const UtmLattice& utm = std::get<UtmLattice>(lattice_);
  double latitude = 0;
  double longitude = 0;
  GeographicLib::TransverseMercator::UTM().Reverse(
      central_meridian(utm),
      utm.easting.metres() + point.u * utm.easting_step.metres() - kUtmFalseEasting,
      utm.northing.metres() - point.v * utm.northing_step.metres() - false_northing(utm), latitude,
      longitude);
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

std::optional<double> Frame::columns_round_the_earth() const {
  const auto* geographic = std::get_if<GeographicLattice>(&lattice_);
  if (geographic == nullptr) return std::nullopt;
  return 360 / geographic->longitude_step.degrees();
}

LatticePoint Frame::unrolled(LatticePoint point, LatticePoint to) const {
  const std::optional<double> round = columns_round_the_earth();
  if (!round) return point;
  return {point.u - *round * std::floor((point.u - to.u) / *round + 0.5), point.v};
}

Metric Frame::least_metric(const LatticeBox& box) const {
  if (const auto* geographic = std::get_if<GeographicLattice>(&lattice_)) {
    const Latitudes latitudes = latitudes_of(*geographic, box);
    return {metres_per_degree_of_longitude(latitudes.nearest_pole) *
                geographic->longitude_step.degrees(),
            metres_per_degree_of_latitude(latitudes.nearest_equator) *
                geographic->latitude_step.degrees()};
  }
  const UtmLattice& utm = std::get<UtmLattice>(lattice_);
  const double scale = most_utm_scale(most_easting(utm, box));
  return {utm.easting_step.metres() / scale, utm.northing_step.metres() / scale};
}

std::optional<LatticeBox> Frame::box_round(Position centre, Length radius) const {
  const std::optional<LatticePoint> at = to_lattice(centre);
  if (!at) return std::nullopt;
  const auto* geographic = std::get_if<GeographicLattice>(&lattice_);
  if (geographic == nullptr) {
    const UtmLattice& utm = std::get<UtmLattice>(lattice_);
    const double x = most_easting(utm, {at->u, at->u, at->v, at->v}) + 2 * radius.metres();
    const double reach = radius.metres() * most_utm_scale(x);
    const double u = reach / utm.easting_step.metres();
    const double v = reach / utm.northing_step.metres();
    return LatticeBox{at->u - u, at->u + u, at->v - v, at->v + v};
  }
  // On a sphere of the smallest radius of curvature the circle is larger than on the ellipsoid.
  const double angle =
      radius.metres() / (kWgs84EquatorialRadiusMetres * (1 - kEccentricitySquared));
  const double v = angle * kDegreesPerRadian / geographic->latitude_step.degrees();
  const double cosine = std::cos(radians(centre.latitude().degrees()));
  const double half_turn = *columns_round_the_earth() / 2;
  const bool pole_inside = angle >= std::numbers::pi / 2 || std::sin(angle) >= cosine;
  const double u = pole_inside ? half_turn
                               : std::asin(std::sin(angle) / cosine) * kDegreesPerRadian /
                                     geographic->longitude_step.degrees();
  return LatticeBox{at->u - u, at->u + u, at->v - v, at->v + v};
}

std::optional<LatticePoint> Frame::offset_of(const Lattice& other, int posts) const {
  if (const auto* mine = std::get_if<GeographicLattice>(&lattice_)) {
    const auto* theirs = std::get_if<GeographicLattice>(&other);
    if (theirs == nullptr ||
        !same(mine->latitude_step.degrees(), theirs->latitude_step.degrees(), posts) ||
        !same(mine->longitude_step.degrees(), theirs->longitude_step.degrees(), posts)) {
      return std::nullopt;
    }
    return unrolled({(theirs->west - mine->west) / mine->longitude_step,
                     (mine->north - theirs->north) / mine->latitude_step},
                    {0, 0});
  }
  const UtmLattice& mine = std::get<UtmLattice>(lattice_);
  const auto* theirs = std::get_if<UtmLattice>(&other);
  if (theirs == nullptr || mine.zone != theirs->zone || mine.hemisphere != theirs->hemisphere ||
      !same(mine.northing_step.metres(), theirs->northing_step.metres(), posts) ||
      !same(mine.easting_step.metres(), theirs->easting_step.metres(), posts)) {
    return std::nullopt;
  }
  return LatticePoint{(theirs->easting - mine.easting) / mine.easting_step,
                      (mine.northing - theirs->northing) / mine.northing_step};
}

}  // namespace sweepwright::terrain
