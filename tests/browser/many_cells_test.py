"""Opens a map page with 20,000 cells in headless Chromium with no network, drags and zooms it.

Usage: many_cells_test.py SWEEPWRIGHT MISSION

Checks that the page finds a cell by its name and writes nothing to the console. How long frames
take is printed, not checked: it depends on the machine.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import threading

ROWS, COLUMNS = 100, 200

DRIVER = r"""
<script>
'use strict';
(async function () {
  const ready = performance.now() - window.begun;
  const frame = () => new Promise(done => requestAnimationFrame(done));
  const map = document.getElementById('map'), box = map.getBoundingClientRect();
  const fire = (type, x, y) => map.dispatchEvent(new MouseEvent(type,
      {bubbles: true, clientX: x, clientY: y, button: 0, view: window}));
  const frames = [];
  let last;
  for (let drag = 0; drag < 10; ++drag) {
    let x = box.left + 400;
    const y = box.top + 300;
    fire('mousedown', x, y);
    for (let i = 0; i < 12; ++i) {
      x += drag % 2 ? -15 : 15;
      fire('mousemove', x, y);
      await frame();
      const now = performance.now();
      if (last) frames.push(now - last);
      last = now;
    }
    fire('mouseup', x, y);
    await frame();
    await frame();
    last = performance.now();
  }
  const zooms = [];
  for (const way of ['in', 'in', 'out', 'out']) {
    const begun = performance.now();
    document.querySelector(`.leaflet-control-zoom-${way}`).click();
    await frame();
    await frame();
    zooms.push(performance.now() - begun);
    await new Promise(done => setTimeout(done, 400));
  }
  document.getElementById('text').value = 'C050100';
  document.getElementById('find').dispatchEvent(new Event('submit', {cancelable: true}));
  frames.sort((a, b) => a - b);
  console.log('SEEN ' + JSON.stringify({said: document.getElementById('said').textContent,
    ready_ms: ready, frame_median_ms: frames[frames.length >> 1],
    frame_95_percent_ms: frames[Math.floor(frames.length * 0.95)],
    frame_worst_ms: frames[frames.length - 1], zoom_worst_ms: Math.max(...zooms)}));
})();
</script>
"""


def many_cells(source):
    """The page with a grid of its own in place of the plan's, over the plan's area."""
    part = re.search(r'(<script type="application/json" id="plan">)(.*?)(</script>)', source, re.S)
    plan = json.loads(part.group(2))
    area = next(f for f in plan["features"] if f["properties"]["part"] == "area")
    ring = area["geometry"]["coordinates"][0]
    west, east = min(p[0] for p in ring), max(p[0] for p in ring)
    south, north = min(p[1] for p in ring), max(p[1] for p in ring)
    wide, high = (east - west) / COLUMNS, (north - south) / ROWS
    plan["features"] = [f for f in plan["features"] if f["properties"]["part"] != "cell"]
    for row in range(ROWS):
        for column in range(COLUMNS):
            w, s = west + column * wide, south + row * high
            corners = [[w, s], [w + wide, s], [w + wide, s + high], [w, s + high], [w, s]]
            plan["features"].append({"type": "Feature",
                                     "properties": {"part": "cell", "cell": f"C{row:03}{column:03}"},
                                     "geometry": {"type": "Polygon", "coordinates": [corners]}})
    made = json.dumps(plan).replace("<", "\\u003c")
    source = source[:part.start(2)] + made + source[part.end(2):]
    return (source.replace("<head>", "<head><script>window.begun = performance.now();</script>", 1)
            .replace("</body>", DRIVER + "</body>"))


def run(page, folder):
    """What the page wrote to the console, as far as its last line."""
    # An open debugging port keeps the browser running after the page is loaded.
    browser = subprocess.Popen(
        ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         "--host-resolver-rules=MAP * ~NOTFOUND", "--enable-logging=stderr", "--window-size=1280,900",
         f"--user-data-dir={folder}/profile", "--remote-debugging-port=0", page.as_uri()],
        stderr=subprocess.PIPE, text=True)
    stop = threading.Timer(90, browser.terminate)
    stop.start()
    lines = []
    for line in browser.stderr:
        if "CONSOLE" in line:
            lines.append(line)
        if "SEEN" in line:
            break
    stop.cancel()
    browser.terminate()
    browser.wait()
    return lines


def main(command, mission):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([command, "plan", mission, "-o", folder / "plan"], check=True, capture_output=True)
        page = folder / "page.html"
        page.write_text(many_cells((folder / "plan/incident/map.html").read_text("utf-8")), "utf-8")
        lines = run(page, folder)
        if len(lines) != 1 or "SEEN" not in lines[0]:
            sys.exit(f"the page wrote to the console, or did not run to its end: {lines[:5]}")
        seen = json.loads(re.search(r"SEEN (\{.*\})", lines[0]).group(1))
        if "cell of the plan" not in seen["said"]:
            sys.exit(f"the cell was not found: {seen['said']}")
        print(f"ok: {ROWS * COLUMNS} cells; {seen}")


if __name__ == "__main__":
    main(*sys.argv[1:])
