// Names of ground, as the command writes them (docs/methods/grid-*.md), for the map page.
// A cell is {name, south, west, north, east} in degrees, or has no sides where they are curved.
'use strict';

const kLetters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';  // no I, no O
// A billionth of an arc second: an edge is an edge, however its double was computed.
const kSteps = 3600e9;

const steps = degrees => Math.round(degrees * kSteps);

/** Degrees from the south pole and from 180 W in steps; `east` edges belong to the cell west of them. */
function place(position, eastOwned) {
  const round = 360 * kSteps;
  let east = ((steps(position.lon) + 180 * kSteps) % round + round) % round;
  if (eastOwned && east === 0) east = round;
  return {north: Math.min(steps(position.lat) + 90 * kSteps, 180 * kSteps - 1),
    east: eastOwned ? east - 1 : east};
}

function cellOf(name, south, west, size) {
  return {name, south, west, north: south + size, east: west + size};
}

const pad = (value, width) => String(value).padStart(width, '0');

function gars(position) {
  const at = place(position, false);
  const row = Math.floor(at.north / (kSteps / 12)), column = Math.floor(at.east / (kSteps / 12));
  const half = Math.floor(row / 6), quadrant = (Math.floor(row / 3) % 2 === 1 ? 1 : 3) +
      Math.floor(column / 3) % 2;
  const key = 3 * (2 - row % 3) + column % 3 + 1;
  return cellOf(pad(Math.floor(column / 6) + 1, 3) + kLetters[Math.floor(half / 24)] +
      kLetters[half % 24] + quadrant + key, row / 12 - 90, column / 12 - 180, 1 / 12);
}

function georef(position) {
  const at = place(position, false);
  const lat = Math.floor(at.north / kSteps), lon = Math.floor(at.east / kSteps);
  const hundredth = kSteps / 6000;
  return kLetters[Math.floor(lon / 15)] + kLetters[Math.floor(lat / 15)] + kLetters[lon % 15] +
      kLetters[lat % 15] + pad(Math.floor(at.east % kSteps / hundredth), 4) +
      pad(Math.floor(at.north % kSteps / hundredth), 4);
}

function quarter(position, cuts = 4) {
  const at = place(position, true);
  const lat = Math.floor(at.north / kSteps) - 90, lon = Math.floor(at.east / kSteps) - 180 + 1;
  const lettered = lat < 0 || lon > 0;
  let name = pad(Math.abs(lat), 2) + (lettered ? (lat < 0 ? 'S' : 'N') : '') + '/' +
      pad(Math.abs(lon), 3) + (lettered ? (lon > 0 ? 'E' : 'W') : '');
  let south = lat, west = lon - 1, size = 1;
  for (let i = 0; i < cuts; ++i) {
    size /= 2;
    const northern = Math.floor(at.north / (kSteps * size)) % 2;
    const eastern = Math.floor(at.east / (kSteps * size)) % 2;
    name += 'ABCD'[2 * (1 - northern) + eastern];
    south += northern * size;
    west += eastern * size;
  }
  return cellOf(name, south, west, size);
}

/** `sheets`: {code, north, south, west, east} of the plan's table. Null where there is none. */
function chart(position, sheets) {
  const at = place(position, true);
  const holds = sheet => at.north >= steps(sheet.south + 90) && at.north < steps(sheet.north + 90) &&
      at.east >= steps(sheet.west + 180) && at.east < steps(sheet.east + 180);
  const found = sheets.filter(holds).sort((a, b) => a.west - b.west)[0];
  if (!found) return null;
  const columns = Math.round(4 * (found.east - found.west));
  const row = Math.floor((steps(found.north + 90) - at.north - 1) / (kSteps / 4));
  const column = Math.floor((at.east - steps(found.west + 180)) / (kSteps / 4));
  const south = found.north - (row + 1) / 4, west = found.west + column / 4;
  const northern = Math.floor(at.north / (kSteps / 8)) % 2;
  const eastern = Math.floor(at.east / (kSteps / 8)) % 2;
  return cellOf(`${found.code} ${row * columns + column + 1}` +
      'ABCD'[2 * (1 - northern) + eastern], south + northern / 8, west + eastern / 8, 1 / 8);
}

const kBands = 'CDEFGHJKLMNPQRSTUVWX';
const kUtmRows = 'ABCDEFGHJKLMNPQRSTUV';

function utmZone(lat, lon) {
  const zone = Math.floor((lon + 180) / 6) + 1;
  if (lat >= 56 && lat < 64 && lon >= 3 && lon < 12) return 32;
  if (lat >= 72 && lat < 84 && lon >= 0 && lon < 42) {
    return lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37;
  }
  return zone;
}

const isPolar = lat => lat < -80 || lat >= 84;

function utm(position) {
  const lat = position.lat, lon = wrapped(position.lon), north = lat >= 0;
  if (isPolar(lat)) {
    const at = toPolar(lat, lon);
    return {zone: 0, north, easting: at.x + 2000000, northing: at.y + 2000000};
  }
  const zone = utmZone(lat, lon);
  const at = toTransverseMercator(lat, wrapped(lon - (6 * zone - 183)));
  return {zone, north, easting: at.x + 500000, northing: at.y + (north ? 0 : 10000000)};
}

function utmText(position) {
  const at = utm(position);
  const side = at.north ? 'north' : 'south';
  return `${at.zone || 'UPS'} ${side} ${Math.round(at.easting)}mE ` +
      `${Math.round(at.northing)}mN`;
}

const kPolarColumns = {west: 'JKLPQRSTUXYZ', east: 'ABCFGHJKLPQR'};
const kPolarRows = {north: 'ABCDEFGHJKLMNP', south: kLetters};

/** The square of 10^(5 - digits) metres. */
function mgrs(position, digits = 5) {
  const at = utm(position);
  const column = Math.floor(at.easting / 1e5), row = Math.floor(at.northing / 1e5);
  const cut = value => pad(Math.floor(value % 1e5 / 10 ** (5 - digits)), digits);
  let square;
  if (at.zone === 0) {
    const west = at.easting < 2e6;
    const zone = at.north ? (west ? 'Y' : 'Z') : (west ? 'A' : 'B');
    const firstRow = at.north ? 13 : 8;
    const letters = west ? kPolarColumns.west : kPolarColumns.east;
    const firstColumn = west ? 20 - letters.length : 20;
    square = zone + letters[column - firstColumn] +
        (at.north ? kPolarRows.north : kPolarRows.south)[row - firstRow];
  } else {
    const band = kBands[Math.min(19, Math.floor((position.lat + 80) / 8))];
    const columns = ['ABCDEFGH', 'JKLMNPQR', 'STUVWXYZ'][(at.zone - 1) % 3];
    square = pad(at.zone, 2) + band + columns[column - 1] +
        kUtmRows[(row + (at.zone % 2 ? 0 : 5)) % 20];
  }
  return square + cut(at.easting) + cut(at.northing);
}
