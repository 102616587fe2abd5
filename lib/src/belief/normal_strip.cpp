#include "belief/normal_strip.hpp"

#include <GeographicLib/Constants.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/GeodesicLine.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace sweepwright::belief {
namespace {

constexpr double kTail = 9;          // deviations: beyond it lies 1e-19 of all
constexpr double kLongPiece = 2.5;   // deviations, for the eight-point rule: 1e-10
constexpr double kShortPiece = 0.6;  // deviations, for the four-point rule: 2e-10
constexpr double kStretching = 1.3;  // of far ground that is laid flat, at the most
constexpr double kNoise = 1e-14;
constexpr double kNoLength = 1e-6;  // of a deviation

/// Half of Gauss's points, each with its mirror image [Abramowitz and Stegun, table 25.4].
struct GaussPoint {
  double place;
  double weight;
};
constexpr std::array<GaussPoint, 2> kFourPoints{
    {{0.3399810435848563, 0.6521451548625461}, {0.8611363115940526, 0.3478548451374538}}};
constexpr std::array<GaussPoint, 4> kEightPoints{{{0.1834346424956498, 0.3626837833783620},
                                                  {0.5255324099163290, 0.3137066458778873},
                                                  {0.7966664774136267, 0.2223810344533745},
                                                  {0.9602898564975363, 0.1012285362903763}}};

double normal_density(double t) {
  return std::exp(-t * t / 2) / std::sqrt(2 * std::numbers::pi);
}

double normal_below(double t) {
  return std::erfc(-t / std::numbers::sqrt2) / 2;
}

/// The integral of normal_below().
double normal_ramp(double t) {
  return t * normal_below(t) + normal_density(t);
}

/// A place on an edge: where, the bearing of the edge there, and metres of ground.
struct EdgePoint {
  double latitude = 0;
  double longitude = 0;
  double bearing_deg = 0;
};

/// An edge of a cell; `place` runs over its length in metres for shortest lines, in degrees for
/// parallels and meridians.
class Edge {
 public:
  virtual ~Edge() = default;
  virtual EdgePoint at(double place) const = 0;
  virtual double metres_per_unit(double place) const = 0;
  double length() const { return length_; }

 protected:
  explicit Edge(double length) : length_(length) {}
  Edge(const Edge&) = default;
  Edge& operator=(const Edge&) = default;

 private:
  double length_;  ///< in units of `place`
};

double eccentricity_squared() {
  const double f = GeographicLib::Constants::WGS84_f();
  return f * (2 - f);
}

double radians(double degrees) {
  return degrees * std::numbers::pi / 180;
}

class Meridian : public Edge {
 public:
  Meridian(double longitude, double from, double to)
      : Edge(std::abs(to - from)), longitude_(longitude), from_(from), north_(to > from) {}
  EdgePoint at(double place) const override {
    return {north_ ? from_ + place : from_ - place, longitude_, north_ ? 0.0 : 180.0};
  }
  double metres_per_unit(double place) const override {
    const double sine = std::sin(radians(at(place).latitude));
    const double w = 1 - eccentricity_squared() * sine * sine;
    return radians(GeographicLib::Constants::WGS84_a() * (1 - eccentricity_squared()) /
                   (w * std::sqrt(w)));
  }

 private:
  double longitude_;
  double from_;
  bool north_;
};

class Parallel : public Edge {
 public:
  Parallel(double latitude, double from, double to)
      : Edge(std::abs(to - from)), latitude_(latitude), from_(from), east_(to > from) {
    const double sine = std::sin(radians(latitude));
    metres_ = radians(GeographicLib::Constants::WGS84_a() * std::cos(radians(latitude)) /
                      std::sqrt(1 - eccentricity_squared() * sine * sine));
  }
  EdgePoint at(double place) const override {
    return {latitude_, east_ ? from_ + place : from_ - place, east_ ? 90.0 : 270.0};
  }
  double metres_per_unit(double) const override { return metres_; }

 private:
  double latitude_;
  double from_;
  bool east_;
  double metres_;
};

class ShortestLine : public Edge {
 public:
  explicit ShortestLine(const GeographicLib::GeodesicLine& line)
      : Edge(line.Distance()), line_(line) {}
  EdgePoint at(double place) const override {
    EdgePoint point;
    line_.Position(place, point.latitude, point.longitude, point.bearing_deg);
    return point;
  }
  double metres_per_unit(double) const override { return 1; }

 private:
  GeographicLib::GeodesicLine line_;
};

/// The integral along edges, for one strip.
class EdgeIntegral {
 public:
  explicit EdgeIntegral(const NormalStrip& strip)
      : latitude_(strip.centre.latitude().degrees()),
        longitude_(strip.centre.longitude().degrees()),
        axis_deg_(strip.axis.degrees()),
        half_length_(strip.half_length.metres()),
        along_(strip.along_deviation.metres()),
        across_(strip.across_deviation.metres()),
        least_(std::min(along_, across_)) {
    if (half_length_ < kNoLength * along_) half_length_ = 0;
  }

  void add(const Edge& edge) {
    if (edge.length() > 0) add(edge, 0, edge.length());
  }

  double value() const { return sum_; }

 private:
  /// A point of an edge, laid flat: metres, and the part of each metre that leads to the right.
  struct Flat {
    double along;
    double right;
    double rightward;
  };

  Flat flat(const EdgePoint& point) const {
    double distance = 0;
    double start = 0;
    double end = 0;
    double reduced = 0;
    GeographicLib::Geodesic::WGS84().Inverse(latitude_, longitude_, point.latitude, point.longitude,
                                             distance, start, end, reduced);
    const double bearing = radians(start - axis_deg_);
    const double off = radians(point.bearing_deg - end);
    // Ground across the line of sight is stretched when it is laid flat: distance over reduced
    // length [Karney (2013), section 3].
    const double stretch = reduced > 1e-3 ? distance / reduced : 1;
    return {distance * std::cos(bearing), distance * std::sin(bearing),
            std::sin(bearing) * std::cos(off) + stretch * std::cos(bearing) * std::sin(off)};
  }

  /// The part of the distribution further back than `along`.
  double part_behind(double along) const {
    if (half_length_ == 0) return normal_below(along / along_);
    return along_ / (2 * half_length_) *
           (normal_ramp((along + half_length_) / along_) -
            normal_ramp((along - half_length_) / along_));
  }

  void add(const Edge& edge, double from, double to) {
    const double middle = (from + to) / 2;
    const double length = (to - from) * edge.metres_per_unit(middle);
    const Flat at = flat(edge.at(middle));
    const double reach = length / 2 * kStretching;
    if (std::abs(at.right) - reach > kTail * across_) return;
    if (at.along + reach < -(half_length_ + kTail * along_)) return;
    if (at.along - reach > half_length_ + kTail * along_) {
      sum_ -= normal_below(flat(edge.at(to)).right / across_) -
              normal_below(flat(edge.at(from)).right / across_);
    } else if (length <= kShortPiece * least_) {
      gauss(edge, from, to, kFourPoints);
    } else if (length <= kLongPiece * least_) {
      gauss(edge, from, to, kEightPoints);
    } else {
      add(edge, from, middle);
      add(edge, middle, to);
    }
  }

  template <std::size_t N>
  void gauss(const Edge& edge, double from, double to, const std::array<GaussPoint, N>& points) {
    const double middle = (from + to) / 2;
    const double half = (to - from) / 2;
    const auto value = [&](double place) {
      const Flat at = flat(edge.at(place));
      return part_behind(at.along) * normal_density(at.right / across_) / across_ * at.rightward *
             edge.metres_per_unit(place);
    };
    double sum = 0;
    for (const GaussPoint& point : points) {
      sum +=
          point.weight * (value(middle - half * point.place) + value(middle + half * point.place));
    }
    sum_ -= sum * half;
  }

  double latitude_;
  double longitude_;
  double axis_deg_;
  double half_length_;
  double along_;
  double across_;
  double least_;
  double sum_ = 0;
};

void add_box(EdgeIntegral& integral, const grid::LatLonBox& box) {
  const double west = box.west.degrees();
  const double east = west + grid::width(box).degrees();
  const double south = box.south.degrees();
  const double north = box.north.degrees();
  if (south > -90) integral.add(Parallel(south, west, east));
  if (north < 90) integral.add(Parallel(north, east, west));
  integral.add(Meridian(east, south, north));
  integral.add(Meridian(west, north, south));
}

void add_ring(EdgeIntegral& integral, const Ring& ring) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Position& from = ring[i];
    const Position& to = ring[(i + 1) % ring.size()];
    integral.add(ShortestLine(GeographicLib::Geodesic::WGS84().InverseLine(
        from.latitude().degrees(), from.longitude().degrees(), to.latitude().degrees(),
        to.longitude().degrees())));
  }
}

}  // namespace

double mass(const NormalStrip& strip, const grid::Cell& cell) {
  EdgeIntegral integral(strip);
  if (cell.box) {
    add_box(integral, *cell.box);
  } else {
    for (const Polygon& polygon : cell.region.polygons) {
      add_ring(integral, polygon.outer);
      for (const Ring& hole : polygon.holes) add_ring(integral, hole);
    }
  }
  return integral.value() < kNoise ? 0 : std::min(integral.value(), 1.0);
}

Region ring(const NormalStrip& strip, double factor, RingCorners corners) {
  constexpr int kCorners = 72;
  const double half_step = std::numbers::pi / kCorners;
  const double outward = corners == RingCorners::outside_it ? 1 / std::cos(half_step) : 1;
  const Length along = strip.along_deviation * (factor * outward);
  const Length across = strip.across_deviation * (factor * outward);
  Polygon polygon;
  // Counterclockwise from dead ahead; the half ahead is moved forward, the half behind backward.
  for (int i = 0; i < kCorners; ++i) {
    const double turn = (2 * i + 1) * half_step;
    const double ahead = std::cos(turn);
    const Length x = along * ahead + strip.half_length * (ahead > 0 ? 1 : -1);
    const Length y = across * -std::sin(turn);
    const Angle bearing = Angle::radians(std::atan2(y.metres(), x.metres()));
    polygon.outer.push_back(travel(strip.centre, strip.axis + bearing,
                                   Length::metres(std::hypot(x.metres(), y.metres())))
                                .position);
  }
  return make_region({polygon});
}

}  // namespace sweepwright::belief
