#!/usr/bin/env python3
"""Writes bars.txt: random steps, raked bays and turned balusters with their largest ball by other means.

    pip install shapely==2.2.0 scipy
    python3 tests/geometry/bars.py > tests/geometry/bars.txt

All lengths in mm. Steps and bays: GEOS's largest inscribed circle. A step's opening is made by cutting
solid treads, noses and bodies of nine steps from the room below the rail, not by listing corners. Turned
balusters: the clearance of a ball centre (the least distance to either solid of revolution) maximised from
many starts by Nelder-Mead, once between rails at the ends of the profile, once with the balusters going on;
a centre moved out of the plane of the axes must never come nearer.

step D rise going lift overhang thickness
raked D gap across balusters rise going high
turned D-closed D-open centres height:diameter ...
"""
import math
import random

import numpy
import scipy
import shapely
from scipy.optimize import minimize

SEED = 20261125
FAR = 1e5


def circle(shape):
    rough = 2 * shapely.maximum_inscribed_circle(shape).length
    return max(2 * shapely.maximum_inscribed_circle(shape, tolerance=rough * t).length for t in (1e-9, 1e-7))


def step(rng):
    rise, going = round(rng.uniform(120, 240), 3), round(rng.uniform(150, 360), 3)
    lift = rng.choice([0.0, round(rng.uniform(0.01, 100), 3), round(rng.uniform(100, 700), 3)])
    overhang = rng.choice([0.0, round(rng.uniform(1, 60), 3)])
    thick = round(rng.uniform(5, 100), 3)
    solid = []
    for j in range(-5, 6):
        tip, top = (1 - j) * going, j * rise
        solid.append(shapely.box(-FAR, -FAR, tip - overhang, top))
        solid.append(shapely.box(-FAR, top - (thick if overhang else FAR), tip, top))
    left, right = -4 * going, 5 * going
    rail = [(x, rise + lift - rise / going * x) for x in (left, right)]
    room = shapely.Polygon([(left, -FAR), (right, -FAR), rail[1], rail[0]])
    hole = shapely.difference(room, shapely.union_all(solid))
    parts = [p for p in getattr(hole, "geoms", [hole]) if p.area > 1]
    if lift == 0:
        parts = [p for p in parts if p.buffer(1e-6).contains(shapely.Point(going / 3, rise / 3))]
    best = max(circle(p) for p in parts)
    print("step", repr(best), rise, going, lift, overhang, thick if overhang else "-")


def raked(rng):
    rise, going = round(rng.uniform(120, 240), 3), round(rng.uniform(150, 360), 3)
    gap, high = round(rng.uniform(60, 200), 3), round(rng.uniform(60, 900), 3)
    across, balusters = rng.choice(["along", "level"]), rng.choice(["plumb", "square"])
    angle = math.atan2(rise, going)
    along = numpy.array([math.cos(angle), math.sin(angle)])
    # the vector between the feet of two balusters that the tape met
    if balusters == "plumb":
        foot, up = along * (gap if across == "along" else gap / math.cos(angle)), numpy.array([0, high])
    else:
        up = numpy.array([-along[1], along[0]])
        # a level stretch of the gap ends on the next baluster: its part along the rail
        foot = along * (gap if across == "along" else gap * along[0])
        up = up * (high * math.cos(angle))
    hole = shapely.Polygon([(0, 0), tuple(foot), tuple(foot + up), tuple(up)])
    print("raked", repr(circle(hole)), gap, across, balusters, rise, going, high)


def to_segments(p, a, b):
    edge, from_a = b - a, p - a
    share = numpy.clip((from_a * edge).sum(1) / (edge * edge).sum(1), 0, 1)
    return numpy.hypot(*(from_a - share[:, None] * edge).T).min()


class Pair:
    def __init__(self, centres, profile, closed):
        (z0, d0), (z1, d1) = profile[0], profile[-1]
        self.low, self.high, self.closed, self.centres = z0, z1, closed, centres
        points = profile if closed else [(z0 - FAR, d0), *profile, (z1 + FAR, d1)]
        half = numpy.array([(d / 2, z) for z, d in points])
        self.a, self.b = half[:-1], half[1:]

    def one(self, rho, z):
        """Distance to the solid of revolution from a point off its axis; below zero inside."""
        at = numpy.interp(z, *zip(*sorted({(p[1], p[0]) for p in (*self.a, *self.b)})))
        inside = rho < at
        return (-1 if inside else 1) * to_segments(numpy.array([[rho, z]]), self.a, self.b)

    def clearance(self, x, y, z):
        both = min(self.one(math.hypot(x, y), z), self.one(math.hypot(self.centres - x, y), z))
        return min(both, z - self.low, self.high - z) if self.closed else both

    def best(self, rng):
        found = -1.0
        for start in range(60):
            at = [self.centres / 2, self.low + (self.high - self.low) * (start + 0.5) / 60]
            wide = [at, [at[0] + 3, at[1]], [at[0], at[1] + 6]]
            option = {"xatol": 1e-11, "fatol": 1e-12, "maxiter": 4000, "initial_simplex": wide}
            run = minimize(lambda c: -self.clearance(c[0], 0, c[1]), at, method="Nelder-Mead", options=option)
            if -run.fun > found:
                found, where = -run.fun, run.x
        for _ in range(200):
            y = rng.uniform(0, 100)
            near = min(self.one(math.hypot(where[0], y), where[1]),
                       self.one(math.hypot(self.centres - where[0], y), where[1]))
            assert near >= found - 1e-9, (near, found)
        return float(2 * found)


def turned(rng):
    centres, z, profile = round(rng.uniform(90, 160), 3), 0.0, []
    for _ in range(rng.randint(3, 12)):
        profile.append((round(z, 3), round(rng.uniform(14, 0.55 * centres), 3)))
        z += rng.choice([rng.uniform(5, 40), rng.uniform(40, 250)])
    values = [Pair(centres, profile, closed).best(rng) for closed in (True, False)]
    print("turned", *map(repr, values), centres, " ".join(f"{z}:{d}" for z, d in profile))


def main():
    print(f"# shapely {shapely.__version__} on GEOS {shapely.geos_version_string}, scipy {scipy.__version__}, seed {SEED}")
    print("# step, raked: 2 * shapely.maximum_inscribed_circle(hole, tolerance).length, tolerance 1e-9 of a first answer")
    print('# turned: scipy.optimize.minimize(-clearance, method="Nelder-Mead"), 60 starts')
    for make, count in [(step, 150), (raked, 60), (turned, 60)]:
        rng = random.Random(f"{SEED} {make.__name__}")
        for _ in range(count):
            make(rng)


if __name__ == "__main__":
    main()
