// The map page: draws the plan, tells positions, measures, finds places.
'use strict';

(function () {
  const data = id => JSON.parse(document.getElementById(id).textContent);
  const plan = data('plan'), sheets = data('sheets'), styles = data('styles');
  const byId = id => document.getElementById(id);
  const kNauticalMile = 1852;

  // The area may lie across the 180th meridian: longitudes are kept within half a turn of its middle.
  const middle = (function () {
    const area = plan.features.find(feature => feature.properties.part === 'area');
    let x = 0, y = 0;
    eachPlace(area ? area.geometry : plan.features[0].geometry, ([lon]) => {
      x += Math.cos(lon * Math.PI / 180);
      y += Math.sin(lon * Math.PI / 180);
    });
    return Math.atan2(y, x) * 180 / Math.PI;
  })();
  const near = lon => middle + wrapped(lon - middle);
  const positionOf = latLng => ({lat: Math.max(-90, Math.min(90, latLng.lat)),
    lon: wrapped(latLng.lng)});

  function eachPlace(geometry, visit) {
    const walk = part => typeof part[0] === 'number' ? visit(part) : part.forEach(walk);
    if (geometry.geometries) geometry.geometries.forEach(inner => eachPlace(inner, visit));
    else walk(geometry.coordinates);
  }

  const map = L.map('map', {zoomSnap: 0.25, preferCanvas: true, attributionControl: false,
    worldCopyJump: false});

  // A bar of nautical miles over one of kilometres, each a round number long.
  const scale = L.control({position: 'bottomleft'});
  scale.onAdd = () => L.DomUtil.create('div', 'scale');
  scale.addTo(map);
  function roundNumber(most) {
    const power = 10 ** Math.floor(Math.log10(most));
    return power * [5, 2, 1].find(step => step * power <= most);
  }
  function drawScale() {
    const y = map.getSize().y / 2, kWidth = 160;
    const line = inverse(positionOf(map.containerPointToLatLng([0, y])),
        positionOf(map.containerPointToLatLng([kWidth, y])));
    const box = scale.getContainer();
    box.textContent = '';
    if (!line || !line.distance) return;
    [['NM', kNauticalMile], ['km', 1000]].forEach(([unit, metres]) => {
      const length = roundNumber(line.distance / metres);
      const bar = box.appendChild(document.createElement('div'));
      bar.textContent = `${length} ${unit}`;
      bar.style.width = `${kWidth * length * metres / line.distance}px`;
    });
  }
  map.on('moveend zoomend resize', drawScale);
  const toLatLng = coordinates => L.latLng(coordinates[1], near(coordinates[0]));

  const crews = [...new Set(plan.features.filter(f => f.properties.part === 'sector')
      .map(f => f.properties.name))];
  const styleOf = sector => styles[crews.indexOf(sector)] || styles[0];
  const ink = () => getComputedStyle(document.body).getPropertyValue('--line').trim();

  const groups = {
    'Grid cells': L.layerGroup(), 'Search area': L.layerGroup(), 'Sectors': L.layerGroup(),
    'Search legs': L.layerGroup(), 'Bases and points': L.layerGroup(),
  };
  const cells = [];

  function pathStyle(properties) {
    if (properties.part === 'area') return {color: ink(), weight: 4, fill: false};
    const crew = styleOf(properties.sector || properties.name);
    if (properties.part === 'sector') {
      return {color: crew.colour, weight: 3, dashArray: crew.dash, fillOpacity: 0.06};
    }
    return {color: crew.colour, weight: properties.kind === 'search' ? 2.5 : 1.5,
      dashArray: properties.kind === 'search' ? null : '6 4'};
  }

  /** Texts go in as text: what a planner wrote is never mark-up. */
  function plainText(...lines) {
    const box = document.createElement('div');
    lines.filter(Boolean).forEach(line => {
      box.appendChild(document.createElement('div')).textContent = line;
    });
    return box;
  }

  function told(p) {
    if (p.part === 'leg') {
      const clock = `${Math.floor(p.time_s / 60)} min ${Math.round(p.time_s % 60)} s`;
      return plainText(`${p.sector} ${p.callsign}: ${p.name}, ${p.kind}`,
          `${pad(Math.round(p.true_track_deg) % 360, 3)}T, ` +
          `${(p.distance_m / kNauticalMile).toFixed(2)} NM, ${clock}`);
    }
    if (p.part === 'sector') {
      return plainText(`${p.name} ${p.callsign}`,
          `spacing ${(p.spacing_m / kNauticalMile).toFixed(2)} NM, ` +
          `coverage ${p.coverage.toFixed(2)}, POD ${Math.round(100 * p.probability_of_detection)} %`);
    }
    return plainText([p.sector, p.callsign].filter(Boolean).join(' '), p.name);
  }

  function pointLayer(feature, latLng) {
    const part = feature.properties.part;
    const colour = part === 'commence-search-point' ? styleOf(feature.properties.sector).colour : ink();
    if (part === 'base') {
      return L.marker(latLng, {icon: L.divIcon({className: 'base-icon', iconSize: [14, 14]}),
        alt: `Base ${feature.properties.name}`, keyboard: false});
    }
    return L.circleMarker(latLng, {radius: part === 'datum' ? 9 : 7, color: colour, weight: 3,
      fill: true, fillColor: '#fff', fillOpacity: 1});
  }

  /** Ground cut at the 180th meridian is drawn without the cut. */
  function outline(geometry, style) {
    const rings = geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
    const lines = rings.flatMap(ring => ring.slice(1)
        .map((end, i) => [ring[i], end])
        .filter(edge => !edge.every(place => Math.abs(place[0]) === 180))
        .map(edge => edge.map(toLatLng)));
    return L.polyline(lines, {...style, fill: false, interactive: false});
  }

  function groundLayer(feature, style, interactive) {
    const ground = L.geoJSON(feature, {coordsToLatLng: toLatLng, interactive,
      style: () => ({...style, stroke: false, fill: style.fill !== false})});
    return L.featureGroup([ground, outline(feature.geometry, style)]);
  }

  // A grid can have many thousands of cells: they are kept as places, and one line draws all that
  // are on the screen.
  const cellLines = L.polyline([], {color: '#888', weight: 1, interactive: false, smoothFactor: 0});
  groups['Grid cells'].addLayer(cellLines);
  function addCell(feature) {
    const geometry = feature.geometry;
    const rings = geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
    const bounds = L.latLngBounds(rings.flat().map(toLatLng));
    // Ground cut at the 180th meridian is drawn without the cut.
    const lines = rings.flatMap(ring => {
      const parts = [[toLatLng(ring[0])]];
      ring.slice(1).forEach((end, i) => {
        if (Math.abs(end[0]) === 180 && Math.abs(ring[i][0]) === 180) parts.push([]);
        parts[parts.length - 1].push(toLatLng(end));
      });
      return parts;
    });
    cells.push({name: feature.properties.cell, bounds, lines});
  }
  const kLeastCell = 4;  // pixels: a finer mesh is a grey veil that tells nothing
  function drawCells() {
    if (!cells.length || !map.hasLayer(groups['Grid cells'])) return;
    const view = map.getBounds().pad(0.2);
    const width = cell => map.latLngToContainerPoint(cell.bounds.getNorthEast()).x -
        map.latLngToContainerPoint(cell.bounds.getSouthWest()).x;
    const seen = cells.filter(cell => view.intersects(cell.bounds));
    const fine = seen.length > 1000 && width(seen[seen.length >> 1]) < kLeastCell;
    cellLines.setLatLngs(fine ? [] : seen.flatMap(cell => cell.lines));
  }

  function add(feature) {
    const p = feature.properties;
    if (p.part === 'cell') {
      addCell(feature);
      return;
    }
    const interactive = p.part !== 'area';
    const layer = feature.geometry.type.endsWith('Polygon') ?
        groundLayer(feature, pathStyle(p), interactive) :
        L.geoJSON(feature, {coordsToLatLng: toLatLng, interactive, pointToLayer: pointLayer,
          ...(p.part === 'leg' ? {style: pathStyle(p)} : {})});
    if (p.part !== 'area') layer.bindTooltip(() => told(p), {sticky: true});
    const group = {area: 'Search area', sector: 'Sectors', leg: 'Search legs'}[p.part] ||
        'Bases and points';
    groups[group].addLayer(layer);
    if (p.part === 'sector') {
      groups.Sectors.addLayer(L.tooltip({permanent: true, direction: 'center', className: 'name sector'})
          .setLatLng(layer.getBounds().getCenter()).setContent(plainText(p.name)));
      addCrew(p, layer);
    }
    if (p.part === 'base' || p.part === 'datum') {
      groups[group].addLayer(L.tooltip({permanent: true, direction: 'right', className: 'name',
        offset: [8, 0]}).setLatLng(layer.getBounds().getCenter()).setContent(plainText(p.name)));
    }
  }

  function addCrew(p, layer) {
    const item = byId('crews').appendChild(document.createElement('li'));
    const button = item.appendChild(document.createElement('button'));
    button.type = 'button';
    const style = styleOf(p.name);
    const line = button.appendChild(document.createElementNS('http://www.w3.org/2000/svg', 'svg'));
    line.setAttribute('width', 46);
    line.setAttribute('height', 10);
    line.setAttribute('aria-hidden', 'true');
    const stroke = line.appendChild(document.createElementNS('http://www.w3.org/2000/svg', 'path'));
    stroke.setAttribute('d', 'M1 5H45');
    stroke.setAttribute('stroke', style.colour);
    stroke.setAttribute('stroke-width', 4);
    if (style.dash) stroke.setAttribute('stroke-dasharray', style.dash);
    button.appendChild(document.createElement('span')).textContent = `${p.name} ${p.callsign}`;
    button.addEventListener('click', () => map.fitBounds(layer.getBounds(), {padding: [20, 20]}));
  }

  plan.features.forEach(add);
  Object.values(groups).forEach(group => group.addTo(map));
  L.control.layers(null, groups, {collapsed: true}).addTo(map);
  const whole = L.latLngBounds([]);
  groups['Search area'].eachLayer(layer => whole.extend(layer.getBounds()));
  groups['Bases and points'].eachLayer(layer => layer.getBounds && whole.extend(layer.getBounds()));
  map.fitBounds(whole, {padding: [10, 10]});

  // Names of cells: only those on the screen, and only while there is room for them.
  const names = L.layerGroup().addTo(map);
  const kMostNames = 120;
  function nameCells() {
    names.clearLayers();
    if (!map.hasLayer(groups['Grid cells'])) return;
    const view = map.getBounds();
    const seen = cells.filter(cell => view.contains(cell.bounds.getCenter()));
    if (seen.length > kMostNames) return;
    seen.forEach(cell => {
      const room = map.latLngToContainerPoint(cell.bounds.getNorthEast()).x -
          map.latLngToContainerPoint(cell.bounds.getSouthWest()).x;
      if (room < 7 * cell.name.length) return;
      names.addLayer(L.tooltip({permanent: true, direction: 'center', className: 'name cell'})
          .setLatLng(cell.bounds.getCenter()).setContent(plainText(cell.name)));
    });
  }
  map.on('moveend overlayadd overlayremove', () => {
    drawCells();
    nameCells();
  });
  drawCells();
  nameCells();

  const titles = {decimal: 'Decimal', minutes: 'Minutes', seconds: 'Seconds', utm: 'UTM',
    mgrs: 'MGRS', gars: 'GARS', georef: 'GEOREF', quarter: '1° cell', chart: 'Chart'};
  const rows = {};
  Object.entries(titles).forEach(([key, title]) => {
    byId('at').appendChild(document.createElement('dt')).textContent = title;
    rows[key] = byId('at').appendChild(document.createElement('dd'));
  });
  function show(position) {
    const texts = notations(position, sheets);
    Object.entries(rows).forEach(([key, row]) => { row.textContent = texts[key] || 'none here'; });
  }
  map.on('mousemove', event => show(positionOf(event.latlng)));
  show(positionOf(map.getCenter()));

  function say(text) { byId('said').textContent = text; }

  // Measuring: two places, by pointer, finger, or Enter for the middle of the map.
  const drawn = L.layerGroup().addTo(map);
  let measuring = false, first = null;
  function setMeasuring(on) {
    measuring = on;
    first = null;
    byId('measure').setAttribute('aria-pressed', String(on));
    if (on) {
      drawn.clearLayers();
      say('Pick the first place: click or touch, or press Enter for the middle of the map.');
    }
  }
  byId('measure').addEventListener('click', () => setMeasuring(!measuring));
  function pick(latLng) {
    show(positionOf(latLng));
    if (!measuring) return;
    drawn.addLayer(L.circleMarker(latLng, {radius: 5, color: ink(), weight: 3}));
    if (!first) {
      first = latLng;
      say('Pick the second place.');
      return;
    }
    drawn.addLayer(L.polyline([first, latLng], {color: ink(), weight: 2, dashArray: '4 4'}));
    const line = inverse(positionOf(first), positionOf(latLng));
    const direction = degrees => pad(Math.round(degrees) % 360, 3) + 'T';
    say(line ? `${(line.distance / kNauticalMile).toFixed(2)} NM (${(line.distance / 1000).toFixed(2)} km), ` +
        `${direction(line.start)} out, ${direction(line.end + 180)} back` :
        'These places lie opposite each other on the Earth: no one direction leads there.');
    setMeasuring(false);
  }
  map.on('click', event => pick(event.latlng));
  byId('map').addEventListener('keydown', event => {
    if (event.key === 'Enter' && event.target === byId('map')) pick(map.getCenter());
    if (event.key === 'Escape') setMeasuring(false);
  });

  byId('find').addEventListener('submit', event => {
    event.preventDefault();
    const text = byId('text').value;
    const known = cells.find(cell => cell.name === text.trim().toUpperCase());
    const place = readPlace(text, sheets);
    drawn.clearLayers();
    if (!place && !known) {
      say(`"${text}" cannot be read in one way here. Write 38-15.0N 117-02.5W, 38.25 -117.04, ` +
          'an MGRS, GARS or GEOREF name, 38/117DB or LAS 172D.');
      return;
    }
    if (place && place.cell) {
      const corner = (lat, lon) => L.latLng(lat, near(middleOf(place.cell).lon) +
          lon - middleOf(place.cell).lon);
      const bounds = L.latLngBounds(corner(place.cell.south, place.cell.west),
          corner(place.cell.north, place.cell.east));
      drawn.addLayer(L.rectangle(bounds, {color: ink(), weight: 4, dashArray: '2 6'}));
      map.fitBounds(bounds.pad(1));
    } else if (place) {
      const at = L.latLng(place.position.lat, near(place.position.lon));
      drawn.addLayer(L.circleMarker(at, {radius: 10, color: ink(), weight: 4, dashArray: '4 3'}));
      map.setView(at, Math.max(map.getZoom(), 10));
    } else {
      map.fitBounds(known.bounds.pad(1));
    }
    const position = place ? place.position : positionOf(known.bounds.getCenter());
    show(position);
    say(`Read as ${place ? place.as : 'cell of the plan\'s grid'}: ${minutesText(position)}`);
  });

  byId('here').addEventListener('click', () => {
    if (!navigator.geolocation) return say('This device tells no position to pages.');
    say('Asking the device for its position.');
    navigator.geolocation.getCurrentPosition(fix => {
      const position = {lat: fix.coords.latitude, lon: fix.coords.longitude};
      const at = L.latLng(position.lat, near(position.lon));
      drawn.clearLayers();
      drawn.addLayer(L.circle(at, {radius: fix.coords.accuracy, color: ink(), weight: 1}));
      drawn.addLayer(L.circleMarker(at, {radius: 7, color: ink(), weight: 4}));
      map.setView(at);
      show(position);
      say(`Device position ${minutesText(position)}, within ${Math.round(fix.coords.accuracy)} m. ` +
          'Not for navigation.');
    }, failure => say(`The device gave no position: ${failure.message}`));
  });

  byId('look').addEventListener('change', event => {
    document.body.className = event.target.value;
    groups['Search area'].eachLayer(layer => layer.setStyle({color: ink()}));
    map.invalidateSize();
  });
})();
