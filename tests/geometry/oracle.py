#!/usr/bin/env python3
"""Writes geos.txt: random outlines with their largest inscribed circle by general-purpose libraries.

    pip install shapely==2.2.0 scipy
    python3 tests/geometry/oracle.py > tests/geometry/geos.txt

One outline a line: kind, GEOS's diameter at the finest tolerance, that tolerance (a share of the
diameter), the diameter of the Chebyshev linear program for convex outlines (else -), then the corners
as x:y. GEOS gives a circle that fits, so its value is a lower bound; it stops after a bounded number
of steps, sometimes short of its tolerance. Every outline is turned and moved, and rounded before it is
measured, so that the text holds exactly what was measured.
"""
import math
import random

import numpy
import scipy
import shapely
from scipy.optimize import linprog

SEED = 20261125


def convex(rng):
    angles = sorted(rng.uniform(0, math.tau) for _ in range(rng.randint(3, 14)))
    r, flat = rng.uniform(20, 300), rng.uniform(0.2, 1)
    return [(r * math.cos(a), r * flat * math.sin(a)) for a in angles]


def star(rng):
    n = rng.randint(5, 40)
    return [(r * math.cos(math.tau * k / n), r * math.sin(math.tau * k / n))
            for k in range(n) for r in [rng.uniform(30, 120)]]


def spiral(rng):
    half, turns, pitch = rng.randint(12, 40), rng.uniform(1, 2.5), rng.uniform(40, 90)
    outer, inner = [], []
    for k in range(half):
        t = k / (half - 1)
        a, r, h = math.tau * turns * t, pitch * (1 + turns * t), pitch * rng.uniform(0.15, 0.3)
        outer.append(((r + h) * math.cos(a), (r + h) * math.sin(a)))
        inner.append(((r - h) * math.cos(a), (r - h) * math.sin(a)))
    return outer + inner[::-1]


def comb(rng):
    out, x, high = [], 0.0, rng.uniform(60, 900)
    for _ in range(rng.randint(2, 8)):
        gap, thick = rng.uniform(20, 120), rng.uniform(5, 45)
        out += [(x, 0.0), (x + gap, 0.0), (x + gap, high), (x + gap + thick, high)]
        x += gap + thick
    out.pop()
    top = high + rng.uniform(10, 80)
    return out[:-1] + [(out[-1][0], top), (0.0, top)]


def sliver(rng):
    """Long, thin, nearly parallel or with corners nearly on a line."""
    long, thin = rng.uniform(100, 1000), 10 ** rng.uniform(-3, 1)
    pick = rng.randrange(4)
    if pick == 0:
        return [(0, 0), (long, 0), (long, thin), (0, thin * rng.uniform(0.999999, 1.000001))]
    if pick == 1:
        return [(0, 0), (long, thin * 1e-3), (rng.uniform(0, long), thin)]
    if pick == 2:
        return [(0, 0), (long / 2, thin * rng.uniform(-1e-6, 1e-6)), (long, 0), (long, long), (0, long)]
    return [(0, 0), (long, 0), (long, thin), (long / 2, thin * rng.uniform(0.9, 1.1)), (0, thin)]


def turned(points, rng):
    angle, dx, dy = rng.choice([0, rng.uniform(0, math.tau)]), rng.uniform(-500, 500), rng.uniform(-500, 500)
    c, s = math.cos(angle), math.sin(angle)
    return [(round(x * c - y * s + dx, 6), round(x * s + y * c + dy, 6)) for x, y in points]


def chebyshev(polygon):
    ring = numpy.array(shapely.normalize(polygon).exterior.coords)
    step = numpy.diff(ring, axis=0)
    length = numpy.hypot(step[:, 0], step[:, 1])
    normal = numpy.column_stack([step[:, 1], -step[:, 0]]) / length[:, None]
    if (normal * (numpy.array(polygon.centroid.coords)[0] - ring[:-1])).sum() > 0:
        normal = -normal
    limit = (normal * ring[:-1]).sum(axis=1)
    rows = numpy.column_stack([normal, numpy.ones(len(normal))])
    found = linprog([0, 0, -1], A_ub=rows, b_ub=limit, bounds=[(None, None)] * 2 + [(0, None)], method="highs")
    return 2 * found.x[2]


def main():
    print(f"# shapely {shapely.__version__} on GEOS {shapely.geos_version_string}, scipy {scipy.__version__}, seed {SEED}")
    print("# 2 * shapely.maximum_inscribed_circle(Polygon(corners), tolerance).length, tolerance 1e-9 of a first answer")
    print('# scipy.optimize.linprog([0, 0, -1], ..., method="highs")')
    for kind, make in [("convex", convex), ("star", star), ("spiral", spiral), ("comb", comb), ("sliver", sliver)]:
        rng = random.Random(f"{SEED} {kind}")
        kept = 0
        while kept < 200:
            points = turned(make(rng), rng)
            polygon = shapely.Polygon(points)
            if not polygon.is_valid or polygon.area < 1e-3 or len(set(points)) < len(points):
                continue
            rough = 2 * shapely.maximum_inscribed_circle(polygon).length
            if rough <= 1e-4:
                continue
            best = max(2 * shapely.maximum_inscribed_circle(polygon, tolerance=rough * t).length for t in (1e-9, 1e-7))
            flat = polygon.convex_hull.area - polygon.area <= 1e-12 * polygon.area
            program = repr(float(chebyshev(polygon))) if flat else "-"
            corners = " ".join(f"{x!r}:{y!r}" for x, y in points)
            print(kind, repr(best), "1e-9", program, corners)
            kept += 1


if __name__ == "__main__":
    main()
