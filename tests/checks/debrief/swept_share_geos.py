# Share of a square that a track sweeps: shapely (GEOS) buffers of half the sweep width and union.
import math, random
from shapely.geometry import LineString, box
import shapely, sys
random.seed(4)
def wander(n, step, half, bend):
    x, y, h = random.uniform(-half, half), random.uniform(-half, half), random.uniform(0, 6.28)
    pts = []
    for _ in range(n):
        pts.append((round(x, 1), round(y, 1)))
        h += random.gauss(0, bend)
        if abs(x) > half or abs(y) > half: h = math.atan2(-x, -y)
        x += step * math.sin(h); y += step * math.cos(h)
    return pts
def ladder(direction, spacing, legs, half):
    pts = []
    for i in range(legs):
        off = (i - (legs - 1) / 2) * spacing
        ends = [-half, half] if i % 2 == 0 else [half, -half]
        for e in ends:
            d = math.radians(direction)
            pts.append((round(off * math.cos(d) + e * math.sin(d), 1), round(-off * math.sin(d) + e * math.cos(d), 1)))
    return pts
rows = []
def add(pts, width, side):
    share = LineString(pts).buffer(width / 2, 64).intersection(box(-side/2, -side/2, side/2, side/2)).area / side**2
    rows.append((' '.join(f'{x:g} {y:g}' for x, y in pts), width, side, share))
add([(-9000, 0), (9000, 0)], 1852, 10000)
add([(0, -9000), (0, 9000)], 1852, 10000)
add([(-313, -3000), (-313, 2000)], 1852, 10000)
add([(-9000, -2500), (9000, 3100)], 926, 10000)
add(ladder(0, 1500, 6, 4000), 926, 11000)
add(ladder(37, 1500, 6, 4000), 926, 11000)
add(ladder(90, 700, 9, 4000), 926, 11000)
add(wander(200, 150, 5000, 0.1), 600, 10000)
add(wander(200, 150, 5000, 0.6), 600, 10000)
add(wander(300, 40, 2500, 0.3), 1852, 9000)
add(wander(60, 900, 9000, 0.5), 400, 18000)
print('# source: shapely %s with GEOS %s: buffer of half the sweep width (64 points to a quarter circle), cut to the square (seen)' % (shapely.__version__, '.'.join(map(str, shapely.geos.geos_version))))
print('# Made by tests/checks/debrief/swept_share_geos.py. Places right and up of the middle of the square, in metres.')
print('track_m,sweep_width_m,side_m,swept_share')
for r in rows: print('%s,%g,%g,%.8f' % r)
