"""Opens the map page of a plan in headless Chromium with no network, uses it, and checks what it says.

Usage: page_test.py SWEEPWRIGHT MISSION

The page is driven by a script that is added to a copy of it; what the script saw is read from the
page's text afterwards. Names of ground and positions are compared with the command's own, which
has its checks elsewhere.
"""
import html
import json
import pathlib
import random
import re
import subprocess
import sys
import tempfile

DRIVER = r"""
<script>
'use strict';
(function () {
  const seen = {};
  const say = () => document.getElementById('said').textContent;
  const find = text => {
    document.getElementById('text').value = text;
    document.getElementById('find').dispatchEvent(new Event('submit', {cancelable: true}));
    return say();
  };
  const click = id => document.getElementById(id).click();
  const box = document.getElementById('map').getBoundingClientRect();
  const press = (x, y) => {
    const at = {bubbles: true, clientX: box.left + x, clientY: box.top + y, view: window};
    const target = document.elementFromPoint(at.clientX, at.clientY);
    ['mousedown', 'mouseup', 'click'].forEach(name => target.dispatchEvent(new MouseEvent(name, at)));
  };
  seen.layers = [...document.querySelectorAll('.leaflet-control-layers-overlays span span')]
      .map(item => item.textContent.trim());
  const boxes = [...document.querySelectorAll('.leaflet-control-layers-selector')];
  boxes.forEach(item => item.click());
  // A name that goes fades out first.
  const names = () => [...document.querySelectorAll('.name.sector')]
      .filter(item => item.style.opacity !== '0').length;
  seen.hidden = names();
  boxes.forEach(item => item.click());
  seen.shown = names();
  seen.crews = [...document.querySelectorAll('#crews button')].map(item => item.textContent);
  document.querySelector('#crews button').click();
  click('measure');
  press(200, 200);
  seen.half = say();
  press(400, 300);
  seen.measured = say();
  seen.found = TEXTS.map(text => [text, find(text)]);
  ['night', 'print', 'day'].forEach(look => {
    document.getElementById('look').value = look;
    document.getElementById('look').dispatchEvent(new Event('change'));
    if (document.body.className !== look) throw new Error('look ' + look);
  });
  const sheets = JSON.parse(document.getElementById('sheets').textContent);
  seen.notations = PLACES.map(place => notations({lat: place[0], lon: place[1]}, sheets));
  seen.distances = PAIRS.map(pair => inverse({lat: pair[0], lon: pair[1]}, {lat: pair[2], lon: pair[3]}));
  const out = document.createElement('pre');
  out.id = 'seen';
  out.textContent = JSON.stringify(seen);
  document.body.appendChild(out);
})();
</script>
"""

TEXTS = ["38-15.0N 117-02.5W", "126LS29", "38/117DB", "LAS 172D", "EJCJ57501500", "11SMC9635433554",
         "38 15 00 N, 117 02 30 W", "-33.5 151.25", "not a place", "91N 10E", "00S/010E"]
READ_AS = ["latitude, longitude: 38-15.00N 117-02.50W", "GARS area: 38-17.50N 117-02.50W",
           "cell of the one-degree grid", "cell of a chart sheet", "GEOREF: 38-15.0", "MGRS square of 1 m",
           "latitude, longitude: 38-15.00N 117-02.50W", "latitude, longitude: 33-30.00S 151-15.00E",
           "cannot be read", "cannot be read", "cannot be read"]


def places():
    """Everywhere, and more of them where the rules have exceptions."""
    chance = random.Random(1)
    some = [(chance.uniform(-90, 90), chance.uniform(-180, 180)) for _ in range(1500)]
    some += [(chance.uniform(24, 50), chance.uniform(-125, -67)) for _ in range(300)]
    some += [(chance.uniform(56, 84), chance.uniform(0, 42)) for _ in range(300)]
    # Seven decimals that end on no half of what is printed.
    return [(round(lat, 6) + 3e-7, round(lon, 6) + 3e-7) for lat, lon in some]


def located(command, texts):
    """The command's notations of each place."""
    result = subprocess.run([command, "locate", "--json", "--file", "-"], input="\n".join(texts) + "\n",
                            capture_output=True, text=True, check=True)
    return [json.loads(line) for line in result.stdout.splitlines()]


def run(page, folder):
    """The page's text after its scripts, and what it wrote to the console."""
    result = subprocess.run(
        ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         "--host-resolver-rules=MAP * ~NOTFOUND", "--enable-logging=stderr", "--window-size=1280,900",
         f"--user-data-dir={folder}/profile", "--virtual-time-budget=5000", "--dump-dom", page.as_uri()],
        capture_output=True, text=True, timeout=120, check=True)
    return result.stdout, [line for line in result.stderr.splitlines() if "CONSOLE" in line]


def check(what, condition, found):
    if not condition:
        sys.exit(f"{what}; found: {found}")
    print(f"ok: {what}")


def main(command, mission):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        subprocess.run([command, "plan", mission, "-o", folder / "plan"], check=True, capture_output=True)
        source = (folder / "plan/incident/map.html").read_text("utf-8")
        some = places()
        pairs = [(*a, *b) for a, b in zip(some[::7], some[3::7])]
        driver = (DRIVER.replace("TEXTS", json.dumps(TEXTS)).replace("PLACES", json.dumps(some))
                  .replace("PAIRS", json.dumps(pairs)))
        page = folder / "page.html"
        page.write_text(source.replace("</body>", driver + "</body>"), "utf-8")
        dom, console = run(page, folder)
        check("nothing on the console", not console, console)
        match = re.search(r'<pre id="seen">(.*?)</pre>', dom, re.S)
        check("the page ran to its end", match, dom[-400:])
        seen = json.loads(html.unescape(match.group(1)))
        check("layers can be switched", seen["hidden"] == 0 and seen["shown"] > 0, seen["layers"])
        check("crews are listed", len(seen["crews"]) == seen["shown"], seen["crews"])
        check("measuring asks for the second place", "second" in seen["half"], seen["half"])
        check("measuring tells distance and both directions",
              re.fullmatch(r"[\d.]+ NM \([\d.]+ km\), \d{3}T out, \d{3}T back", seen["measured"]),
              seen["measured"])
        for (text, answer), wanted in zip(seen["found"], READ_AS):
            check(f"'{text}' is read", wanted in answer, answer)
        ours = located(command, [f"{lat:.9f}, {lon:.9f}" for lat, lon in some])
        wrong = [(place, key, theirs[key], mine["notations"][key])
                 for place, theirs, mine in zip(some, seen["notations"], ours)
                 for key in mine["notations"] if theirs[key] != mine["notations"][key]]
        check(f"{len(some)} places have the names that the command gives", not wrong, wrong[:5])
        compare_distances(pairs, seen["distances"])


def compare_distances(pairs, found):
    """Against GeographicLib through PROJ's geod, where it is installed."""
    lines = "\n".join(f"{a:.9f} {b:.9f} {c:.9f} {d:.9f}" for a, b, c, d in pairs) + "\n"
    result = subprocess.run(["geod", "+ellps=WGS84", "-I", "-f", "%.6f", "-F", "%.4f"], input=lines,
                            capture_output=True, text=True, check=True)
    wrong = []
    for pair, line, answer in zip(pairs, result.stdout.splitlines(), found):
        start, _, length = (float(word) for word in line.split())
        if answer is None:
            continue  # near antipodes the page says that it cannot tell
        turn = (answer["start"] - start + 180) % 360 - 180
        if abs(answer["distance"] - length) > 0.01 or abs(turn) > 1e-4:
            wrong.append((pair, line, answer))
    check(f"{len(pairs)} distances and directions are geod's", not wrong, wrong[:5])


if __name__ == "__main__":
    main(*sys.argv[1:])
