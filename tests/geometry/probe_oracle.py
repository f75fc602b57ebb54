#!/usr/bin/env python3
"""Writes probe.txt: whether a rectangle of 88.9 x 157.48 mm fits in random outlines, by shapely.

    pip install shapely==2.2.0
    python3 tests/geometry/probe_oracle.py > tests/geometry/probe.txt

At each of 360 angles the outline is eroded: shapely takes from it the union of its sides, each widened
by the rectangle (the convex hull of the rectangle about both its ends). `fits`: something is left at
some angle. `no`: nothing is left at any, for a rectangle 2 % smaller, which lies in the full one at any
angle between two of the 360. `-`: neither. Then the corners as x:y.
"""
import math
import random

import shapely
from shapely.geometry import MultiPoint, Polygon
from shapely.ops import unary_union

ANGLES = 360


def star(rng):
    n, low = rng.randint(5, 24), rng.uniform(40, 110)
    turn = rng.uniform(0, 6)
    radii = [rng.uniform(low, 150) for _ in range(n)]
    return [(r * math.cos(turn + math.tau * k / n), r * math.sin(turn + math.tau * k / n))
            for k, r in enumerate(radii)]


def bent(rng):
    a, b, c, d = (rng.uniform(80, 130) for _ in range(4))
    return [(0, 0), (a, 0), (a, b), (a + c, b), (a + c, b + d), (0, b + d)]


def convex(rng):
    angles = sorted(rng.uniform(0, math.tau) for _ in range(rng.randint(3, 9)))
    r, flat = rng.uniform(80, 160), rng.uniform(0.4, 1)
    return [(r * math.cos(t), r * flat * math.sin(t)) for t in angles]


def fits(outline, scale):
    a, b = scale * 88.9 / 2, scale * 157.48 / 2
    ring = list(outline.exterior.coords)
    for k in range(ANGLES):
        t = math.pi * k / ANGLES
        c, s = math.cos(t), math.sin(t)
        face = [(x * c - y * s, x * s + y * c) for x, y in ((a, b), (-a, b), (-a, -b), (a, -b))]
        wide = [MultiPoint([(p[0] + f[0], p[1] + f[1]) for p in side for f in face]).convex_hull
                for side in zip(ring, ring[1:])]
        if outline.difference(unary_union(wide)).area > 1e-6:
            return True
    return False


def main():
    rng = random.Random(20261125)
    print(f"# shapely {shapely.__version__}, GEOS {shapely.geos_version_string}")
    for _ in range(40):
        for kind in (star, bent, convex):
            corners = [(round(x, 3), round(y, 3)) for x, y in kind(rng)]
            outline = Polygon(corners)
            if not outline.is_valid or outline.area < 100:
                continue
            says = "fits" if fits(outline, 1.0) else "-" if fits(outline, 0.98) else "no"
            print(kind.__name__, says, *(f"{x}:{y}" for x, y in corners))


main()
