// Positions as text, as the command writes them (docs/methods/reading-positions.md), and back.
'use strict';

/** The nearest whole number; the last bits of a product do not decide. */
const nearest = value => Math.round(Number(value.toFixed(6)));
const hemisphere = (value, letters) => letters[value < 0 ? 1 : 0];

function minutesText(position) {
  const part = (value, width, letters) => {
    const hundredths = nearest(Math.abs(value) * 6000);
    return pad(Math.floor(hundredths / 6000), width) + '-' +
        (hundredths % 6000 / 100).toFixed(2).padStart(5, '0') + hemisphere(value, letters);
  };
  return part(position.lat, 2, 'NS') + ' ' + part(position.lon, 3, 'EW');
}

function secondsText(position) {
  const part = (value, width, letters) => {
    const tenths = nearest(Math.abs(value) * 36000);
    return pad(Math.floor(tenths / 36000), width) + '-' +
        pad(Math.floor(tenths % 36000 / 600), 2) + '-' +
        (tenths % 600 / 10).toFixed(1).padStart(4, '0') + hemisphere(value, letters);
  };
  return part(position.lat, 2, 'NS') + ' ' + part(position.lon, 3, 'EW');
}

function decimalText(position) {
  const part = value => (Math.sign(value) * nearest(Math.abs(value) * 1e5) / 1e5).toFixed(5);
  return part(position.lat) + ', ' + part(position.lon);
}

/** Every notation, {name: text}, in the order of the command. */
function notations(position, sheets) {
  const at = {lat: position.lat, lon: wrapped(position.lon)};
  const chartCell = chart(at, sheets);
  return {
    decimal: decimalText(at),
    minutes: minutesText(at),
    seconds: secondsText(at),
    utm: utmText(at),
    mgrs: mgrs(at),
    gars: gars(at).name,
    georef: georef(at),
    quarter: quarter(at).name,
    chart: chartCell ? chartCell.name : '',
  };
}

/** A found place: {position, cell, as}, where `as` says how the text was read. Null when it is none. */
function found(position, as, cell = null) {
  return {position, as, cell};
}

const middleOf = cell => ({lat: (cell.south + cell.north) / 2, lon: (cell.west + cell.east) / 2});

function readGars(text) {
  const match = /^(\d{3})([A-HJ-NP-Z])([A-HJ-NP-Z])([1-4]?)([1-9]?)$/.exec(text);
  if (!match || (match[5] && !match[4])) return null;
  const column = Number(match[1]) - 1;
  const row = 24 * kLetters.indexOf(match[2]) + kLetters.indexOf(match[3]);
  if (column < 0 || column > 719 || row > 359) return null;
  let south = row / 2 - 90, west = column / 2 - 180, size = 0.5;
  if (match[4]) {
    size = 0.25;
    south += match[4] < 3 ? size : 0;
    west += match[4] % 2 === 0 ? size : 0;
  }
  if (match[5]) {
    size = 1 / 12;
    south += (2 - Math.floor((match[5] - 1) / 3)) * size;
    west += (match[5] - 1) % 3 * size;
  }
  const cell = cellOf(text, south, west, size);
  return found(middleOf(cell), 'GARS area', cell);
}

function readQuarter(text) {
  const match = /^(\d{1,2})([NS]?)\/(\d{1,3})([EW]?)([A-D]{0,4})$/.exec(text);
  if (!match || (match[2] === '') !== (match[4] === '')) return null;
  const south = match[2] === 'S' ? -match[1] : Number(match[1]);
  const east = match[4] === 'E' ? Number(match[3]) : -match[3];
  if (south < -90 || south > 89 || east < -179 || east > 180) return null;
  // The same lines written the other way: the command refuses them too.
  if ((match[2] === 'S' && south === 0) || (match[4] === 'E' && east === 0)) return null;
  const cell = cellOf(text, south, east - 1, 1);
  for (const letter of match[5]) {
    const size = (cell.north - cell.south) / 2;
    if (letter < 'C') cell.south += size; else cell.north -= size;
    if (letter === 'A' || letter === 'C') cell.east -= size; else cell.west += size;
  }
  return found(middleOf(cell), 'cell of the one-degree grid', cell);
}

function readChart(text, sheets) {
  const match = /^([A-Z]{3})[ -]?(\d{1,4})[ -]?([A-D]?)$/.exec(text);
  const sheet = match && sheets.find(candidate => candidate.code === match[1]);
  if (!sheet) return null;
  const columns = Math.round(4 * (sheet.east - sheet.west));
  const rows = Math.round(4 * (sheet.north - sheet.south));
  const index = Number(match[2]) - 1;
  if (index < 0 || index >= rows * columns) return null;
  const cell = cellOf(text, sheet.north - (Math.floor(index / columns) + 1) / 4,
      sheet.west + index % columns / 4, 0.25);
  if (match[3]) {
    if (match[3] < 'C') cell.south += 0.125; else cell.north -= 0.125;
    if (match[3] === 'A' || match[3] === 'C') cell.east -= 0.125; else cell.west += 0.125;
  }
  return found(middleOf(cell), 'cell of a chart sheet', cell);
}

function readGeoref(text) {
  const match = /^([A-HJ-NP-Z])([A-HJ-M])([A-HJ-NP-Q])([A-HJ-NP-Q])(\d*)$/.exec(text);
  if (!match || match[5].length % 2 || match[5].length > 8 || match[5].length === 2) return null;
  const half = match[5].length / 2;
  const unit = half ? 1 / (60 * 10 ** (half - 2)) : 1;
  const east = half ? Number(match[5].slice(0, half)) : 0;
  const north = half ? Number(match[5].slice(half)) : 0;
  if (east * unit >= 1 || north * unit >= 1) return null;
  const cell = cellOf(text,
      15 * kLetters.indexOf(match[2]) + kLetters.indexOf(match[4]) - 90 + north * unit,
      15 * kLetters.indexOf(match[1]) + kLetters.indexOf(match[3]) - 180 + east * unit, unit);
  return found(middleOf(cell), 'GEOREF', cell);
}

function readMgrs(text) {
  const match = /^(\d{1,2})([C-HJ-NP-X])([A-HJ-NP-Z])([A-HJ-NP-V])(\d*)$/.exec(text);
  if (!match || match[5].length % 2 || match[5].length > 10) return null;
  const zone = Number(match[1]);
  if (zone < 1 || zone > 60) return null;
  const digits = match[5].length / 2, size = 10 ** (5 - digits);
  const column = ['ABCDEFGH', 'JKLMNPQR', 'STUVWXYZ'][(zone - 1) % 3].indexOf(match[3]);
  if (column < 0) return null;
  const easting = (column + 1) * 1e5 + (Number(match[5].slice(0, digits)) + 0.5) * size;
  const band = kBands.indexOf(match[2]);
  const row = (kUtmRows.indexOf(match[4]) + (zone % 2 ? 0 : 15)) % 20;
  // Rows come again every 2000 km: the one in the band is meant.
  for (let turn = -5; turn < 5; ++turn) {
    const northing = (row + 20 * turn) * 1e5 + (Number(match[5].slice(digits)) + 0.5) * size;
    const at = fromTransverseMercator(easting - 500000, northing);
    const position = {lat: at.lat, lon: wrapped(6 * zone - 183 + at.lonFromMeridian)};
    const inBand = Math.min(19, Math.floor((at.lat + 80) / 8)) === band && Math.abs(at.lat) < 84;
    if (inBand) return found(position, `MGRS square of ${size} m, its middle`);
  }
  return null;
}

/** One angle: up to three numbers and a letter or sign. */
function readAngle(text) {
  const match = /^([NSEW+-]?)\s*(\d+(?:\.\d+)?)(?:[\s:°-]+(\d+(?:\.\d+)?)(?:[\s:'-]+(\d+(?:\.\d+)?))?)?[\s'"°]*([NSEW]?)$/
      .exec(text.trim());
  if (!match || (match[1] && match[5] && !/[+-]/.test(match[1]))) return null;
  const [degrees, minutes, seconds] = [match[2], match[3] || '0', match[4] || '0'].map(Number);
  if (minutes >= 60 || seconds >= 60) return null;
  if ((match[3] && match[2].includes('.')) || (match[4] && match[3].includes('.'))) return null;
  const letter = /[NSEW]/.test(match[1]) ? match[1] : match[5];
  const negative = match[1] === '-' || letter === 'S' || letter === 'W';
  const value = degrees + minutes / 60 + seconds / 3600;
  return {value: negative ? -value : value, letter};
}

function readLatLon(text) {
  const normal = text.replace(/[′’]/g, "'").replace(/[″”]/g, '"').replace(/º/g, '°');
  // Every blank, comma or letter may be where the first angle ends.
  const readings = [];
  for (let i = 1; i < normal.length; ++i) {
    const cut = /[\s,;/]/.test(normal[i]) ? 1 : /[NSEW]/.test(normal[i - 1]) ? 0 : -1;
    if (cut < 0) continue;
    const first = readAngle(normal.slice(0, i)), second = readAngle(normal.slice(i + cut));
    if (!first || !second) continue;
    const swapped = /[EW]/.test(first.letter) || /[NS]/.test(second.letter);
    if (swapped && (/[NS]/.test(first.letter) || /[EW]/.test(second.letter))) continue;
    const [lat, lon] = swapped ? [second.value, first.value] : [first.value, second.value];
    if (Math.abs(lat) > 90 || Math.abs(lon) > 360) continue;
    readings.push({lat, lon: wrapped(lon)});
  }
  if (!readings.length) return null;
  const same = readings.every(reading => reading.lat === readings[0].lat &&
      reading.lon === readings[0].lon);
  return same ? found(readings[0], 'latitude, longitude') : null;
}

/** What a text means: a place, or null. Ambiguous texts are null: the command tells more. */
function readPlace(text, sheets) {
  const upper = text.trim().toUpperCase();
  const tight = upper.replace(/\s+/g, '');
  // Whole degrees with a slash name a cell, not a place.
  if (/^\d+[NS]?\/\d+[EW]?[A-D]*$/.test(tight)) return readQuarter(tight);
  return readGars(tight) || readChart(upper, sheets) || readGeoref(tight) ||
      readMgrs(tight) || readLatLon(upper);
}
