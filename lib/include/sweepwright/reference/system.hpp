// System: a reference system of the EPSG registry, and the way from it to WGS 84.
//
// Problem: a position from an old chart or a national grid is hundreds of metres off when it is
// read
//   as WGS 84. It must be shifted, with the accuracy of the shift told, or refused.
// Conventions: coordinates stand in the order and the units that the registry defines for the
//   system; axes_in_words() says them. Heights are taken as zero.
// Domain: geographic and projected systems in two dimensions. Of the shifts that serve the place
// the
//   most accurate one that this computer can do is used, never a guess that takes two datums for
//   one (a "ballpark" transformation). Places more than kAreaMargin outside the area where the
//   system is used are refused, nearer ones warned about.
// Accuracy: as the registry states it for the shift (Conversion::accuracy). The arithmetic is
//   PROJ's: 5 cm or better against published projection tests, 1 cm against an independent
//   calculation of datum shifts (system_test.cpp).
// Source: EPSG registry and methods [IOGP Geomatics Guidance Note 7-2], through PROJ, which is
//   loaded when the first System is made, and needs no network (docs/decisions/0004).
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/position/position.hpp"

namespace sweepwright::reference {

/// How far outside a system's area of use a place may lie, in latitude and in longitude.
inline constexpr Angle kAreaMargin = Angle::degrees(1);

struct Axis {
  std::string name;       ///< "Easting", "Geodetic latitude"
  std::string direction;  ///< "north", "south", "east", "west"
  std::string unit;       ///< "metre", "US survey foot", "degree", "grad"
};

/// A box in latitude and longitude. It crosses the antimeridian when west is greater than east.
struct Area {
  std::string name;
  Angle south = Angle::degrees(-90);
  Angle west = Angle::degrees(-180);
  Angle north = Angle::degrees(90);
  Angle east = Angle::degrees(180);
};

bool contains(const Area& area, Position position, Angle margin = {});

struct SystemInfo {
  std::string code;  ///< "EPSG:4267"
  std::string name;  ///< "NAD27"
  bool geographic = false;
  bool deprecated = false;
  std::array<Axis, 2> axes;  ///< in the order of the coordinates
  Area area;                 ///< where the system is used
  std::string software;      ///< "PROJ 9.1.1, EPSG registry v10.076"
};

/// `first geodetic latitude (degree, north), then geodetic longitude (degree, east)`.
std::string axes_in_words(const SystemInfo& info);

/// In the order and units of the system's axes.
struct Coordinates {
  double first = 0;
  double second = 0;
};

struct Conversion {
  Position position;
  std::optional<Length> accuracy;  ///< of the shift; none when the registry states none
  std::string operation;           ///< "NAD27 to WGS 84 (6)"
  std::vector<std::string> warnings;
};

/// Not to be used by two threads at a time, copies included.
class System {
 public:
  /// `code`: `EPSG:` and a number. Throws Error(value) for any other text, an unknown number and a
  /// system of another kind, Error(impossible) when PROJ is not on this computer.
  explicit System(std::string_view code);

  const SystemInfo& info() const;

  /// Throws Error(value) for coordinates that the system does not have or that lie outside its
  /// area, Error(impossible) when no accurate shift serves the place: the hint names the missing
  /// grid.
  Conversion to_wgs84(Coordinates coordinates) const;

 private:
  class Implementation;
  std::shared_ptr<const Implementation> implementation_;
};

}  // namespace sweepwright::reference
