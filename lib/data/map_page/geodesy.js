// Distances, directions and map projections on the WGS 84 ellipsoid, for the map page.
// Positions are {lat, lon} in degrees; lengths in metres; directions clockwise from true north.
'use strict';

const kA = 6378137;
const kF = 1 / 298.257223563;
const kB = kA * (1 - kF);
const kRadian = Math.PI / 180;

/** Longitude in [-180, 180). */
function wrapped(lon) {
  const turned = ((lon + 180) % 360 + 360) % 360 - 180;
  return turned === 180 ? -180 : turned;
}

/**
 * Distance and directions at both ends. T. Vincenty, Survey Review 23 (1975): right to half a
 * millimetre; null near antipodes, where the method does not settle.
 */
function inverse(from, to) {
  const l = wrapped(to.lon - from.lon) * kRadian;
  const u1 = Math.atan((1 - kF) * Math.tan(from.lat * kRadian));
  const u2 = Math.atan((1 - kF) * Math.tan(to.lat * kRadian));
  const s1 = Math.sin(u1), c1 = Math.cos(u1), s2 = Math.sin(u2), c2 = Math.cos(u2);
  let lambda = l;
  for (let i = 0; i < 100; ++i) {
    const sl = Math.sin(lambda), cl = Math.cos(lambda);
    const sinSigma = Math.hypot(c2 * sl, c1 * s2 - s1 * c2 * cl);
    if (sinSigma === 0) return {distance: 0, start: 0, end: 0};
    const cosSigma = s1 * s2 + c1 * c2 * cl;
    const sigma = Math.atan2(sinSigma, cosSigma);
    const sinAlpha = c1 * c2 * sl / sinSigma;
    const cos2Alpha = 1 - sinAlpha * sinAlpha;
    const cos2m = cos2Alpha === 0 ? 0 : cosSigma - 2 * s1 * s2 / cos2Alpha;
    const c = kF / 16 * cos2Alpha * (4 + kF * (4 - 3 * cos2Alpha));
    const before = lambda;
    lambda = l + (1 - c) * kF * sinAlpha *
        (sigma + c * sinSigma * (cos2m + c * cosSigma * (2 * cos2m * cos2m - 1)));
    if (Math.abs(lambda) > Math.PI) return null;
    if (Math.abs(lambda - before) > 1e-12) continue;
    const v = cos2Alpha * (kA * kA - kB * kB) / (kB * kB);
    const a = 1 + v / 16384 * (4096 + v * (-768 + v * (320 - 175 * v)));
    const b = v / 1024 * (256 + v * (-128 + v * (74 - 47 * v)));
    const delta = b * sinSigma * (cos2m + b / 4 * (cosSigma * (2 * cos2m * cos2m - 1) -
        b / 6 * cos2m * (4 * sinSigma * sinSigma - 3) * (4 * cos2m * cos2m - 3)));
    const degrees = angle => (angle / kRadian + 360) % 360;
    return {
      distance: kB * a * (sigma - delta),
      start: degrees(Math.atan2(c2 * Math.sin(lambda), c1 * s2 - s1 * c2 * Math.cos(lambda))),
      end: degrees(Math.atan2(c1 * Math.sin(lambda), -s1 * c2 + c1 * s2 * Math.cos(lambda))),
    };
  }
  return null;
}

// Transverse Mercator after L. Krueger (1912), series to the sixth order in n: nanometres in a zone.
const kN = kF / (2 - kF);
const kRectifying = kA / (1 + kN) * (1 + kN ** 2 / 4 + kN ** 4 / 64 + kN ** 6 / 256);
const kAlpha = [
  kN / 2 - 2 * kN ** 2 / 3 + 5 * kN ** 3 / 16 + 41 * kN ** 4 / 180 - 127 * kN ** 5 / 288 +
      7891 * kN ** 6 / 37800,
  13 * kN ** 2 / 48 - 3 * kN ** 3 / 5 + 557 * kN ** 4 / 1440 + 281 * kN ** 5 / 630 -
      1983433 * kN ** 6 / 1935360,
  61 * kN ** 3 / 240 - 103 * kN ** 4 / 140 + 15061 * kN ** 5 / 26880 + 167603 * kN ** 6 / 181440,
  49561 * kN ** 4 / 161280 - 179 * kN ** 5 / 168 + 6601661 * kN ** 6 / 7257600,
  34729 * kN ** 5 / 80640 - 3418889 * kN ** 6 / 1995840,
  212378941 * kN ** 6 / 319334400,
];
const kBeta = [
  kN / 2 - 2 * kN ** 2 / 3 + 37 * kN ** 3 / 96 - kN ** 4 / 360 - 81 * kN ** 5 / 512 +
      96199 * kN ** 6 / 604800,
  kN ** 2 / 48 + kN ** 3 / 15 - 437 * kN ** 4 / 1440 + 46 * kN ** 5 / 105 -
      1118711 * kN ** 6 / 3870720,
  17 * kN ** 3 / 480 - 37 * kN ** 4 / 840 - 209 * kN ** 5 / 4480 + 5569 * kN ** 6 / 90720,
  4397 * kN ** 4 / 161280 - 11 * kN ** 5 / 504 - 830251 * kN ** 6 / 7257600,
  4583 * kN ** 5 / 161280 - 108847 * kN ** 6 / 3991680,
  20648693 * kN ** 6 / 638668800,
];
const kE = Math.sqrt(kF * (2 - kF));

/** Tangent of the conformal latitude. */
function conformalTangent(tau) {
  const sigma = Math.sinh(kE * Math.atanh(kE * tau / Math.hypot(1, tau)));
  return tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau);
}

/** The geographic latitude's tangent, by Newton's method. */
function geographicTangent(conformal) {
  let tau = conformal / (1 - kE * kE);
  for (let i = 0; i < 10; ++i) {
    const found = conformalTangent(tau);
    const step = (conformal - found) / Math.hypot(1, found) * (1 + (1 - kE * kE) * tau * tau) /
        ((1 - kE * kE) * Math.hypot(1, tau));
    tau += step;
    if (Math.abs(step) < 1e-14 * Math.max(1, Math.abs(tau))) break;
  }
  return tau;
}

function toTransverseMercator(lat, lonFromMeridian) {
  const lambda = lonFromMeridian * kRadian;
  const tau = conformalTangent(Math.tan(lat * kRadian));
  const xi = Math.atan2(tau, Math.cos(lambda));
  const eta = Math.asinh(Math.sin(lambda) / Math.hypot(tau, Math.cos(lambda)));
  let x = eta, y = xi;
  kAlpha.forEach((alpha, i) => {
    const k = 2 * (i + 1);
    y += alpha * Math.sin(k * xi) * Math.cosh(k * eta);
    x += alpha * Math.cos(k * xi) * Math.sinh(k * eta);
  });
  return {x: 0.9996 * kRectifying * x, y: 0.9996 * kRectifying * y};
}

function fromTransverseMercator(x, y) {
  const xi = y / (0.9996 * kRectifying), eta = x / (0.9996 * kRectifying);
  let xiP = xi, etaP = eta;
  kBeta.forEach((beta, i) => {
    const k = 2 * (i + 1);
    xiP -= beta * Math.sin(k * xi) * Math.cosh(k * eta);
    etaP -= beta * Math.cos(k * xi) * Math.sinh(k * eta);
  });
  const conformal = Math.sin(xiP) / Math.hypot(Math.sinh(etaP), Math.cos(xiP));
  return {
    lat: Math.atan(geographicTangent(conformal)) / kRadian,
    lonFromMeridian: Math.atan2(Math.sinh(etaP), Math.cos(xiP)) / kRadian,
  };
}

// Polar stereographic of UPS, scale 0.994 at the pole.
const kPolarScale = 2 * kA * 0.994 /
    Math.sqrt((1 + kE) ** (1 + kE) * (1 - kE) ** (1 - kE));

function toPolar(lat, lon) {
  const north = lat >= 0;
  const tau = conformalTangent(Math.tan(Math.abs(lat) * kRadian));
  const r = kPolarScale * (Math.abs(lat) === 90 ? 0 : 1 / (Math.hypot(1, tau) + tau));
  return {x: r * Math.sin(lon * kRadian), y: (north ? -1 : 1) * r * Math.cos(lon * kRadian)};
}

function fromPolar(x, y, north) {
  const r = Math.hypot(x, y);
  if (r === 0) return {lat: north ? 90 : -90, lon: 0};
  const t = r / kPolarScale;
  const lat = Math.atan(geographicTangent((1 / t - t) / 2)) / kRadian;
  return {
    lat: north ? lat : -lat,
    lon: wrapped(Math.atan2(x, north ? -y : y) / kRadian),
  };
}
