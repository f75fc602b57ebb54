#!/usr/bin/env python3
"""Writes frames.txt: rails as frame elements, by a general-purpose library.

    pip install PyNiteFEA==3.2.0
    python3 tests/statics/oracle.py > tests/statics/frames.txt

Inches and pounds; a 2x4 on edge (I 5.359375 in4, E 1.4e6 psi) over spans of 72 in, 200 lb.
A line of beams: name, load (lb or lb/in), span, length covered, largest sagging moment, largest
hogging moment, deflection under the load or at midspan (- where it was not asked for).
"""
from Pynite import FEModel3D

E, I, SPAN, LOAD = 1.4e6, 5.359375, 72.0, 200.0


def model(places, supports):
    m = FEModel3D()
    m.add_material('wood', E, E / 2.6, 0.3, 0.0)
    m.add_section('rail', 5.25, I, I, 1.0)
    for n, x in enumerate(places):
        m.add_node(f'N{n}', x, 0, 0)
    for n in range(len(places) - 1):
        m.add_member(f'M{n}', f'N{n}', f'N{n + 1}', 'wood', 'rail')
    for n, (dy, rz) in supports.items():
        m.def_support(f'N{n}', n == 0, dy, True, True, True, rz)
    for n in range(len(places)):
        if n not in supports:
            m.def_support(f'N{n}', n == 0, False, True, True, True, False)
    return m


def moments(m):
    names = list(m.members)
    high = max(m.members[n].max_moment('Mz', 'Combo 1') for n in names)
    low = min(m.members[n].min_moment('Mz', 'Combo 1') for n in names)
    return high, low


def signed(m):
    """Sagging positive, whatever the library's sign is: a pinned span under a load sags."""
    high, low = moments(m)
    return max(SIGN * high, SIGN * low, 0.0), max(-SIGN * high, -SIGN * low, 0.0)


def spans(count, loaded, at, fixed=False):
    """Equal spans with a point load at a share `at` of the loaded span; a node is under it."""
    places = sorted({i * SPAN for i in range(count + 1)} | {(loaded + at) * SPAN})
    under = places.index((loaded + at) * SPAN)
    supports = {n: (True, fixed) for n, x in enumerate(places) if any(abs(x - i * SPAN) < 1e-9 for i in range(count + 1))}
    m = model(places, supports)
    m.add_node_load(f'N{under}', 'FY', -LOAD)
    m.analyze(check_statics=False)
    return m, -m.nodes[f'N{under}'].DY['Combo 1']


def worst(count, side):
    """The load at the worst place of the outer span, by ever finer steps."""
    best, centre, width = (0.0, 0.5), 0.5, 0.4
    for _ in range(7):
        for step in range(-10, 11):
            at = centre + width * step / 10
            best = max(best, (signed(spans(count, 0, at)[0])[side], at))
        centre, width = best[1], width / 6
    return best[0]


def line(*cells):
    print(' '.join(c if isinstance(c, str) else repr(float(c)) for c in cells))


SIGN = 1.0
first, _ = spans(1, 0, 0.5)
high, low = moments(first)
SIGN = 1.0 if high > -low else -1.0

for name, count, loaded, fixed in [('one-span', 1, 0, False), ('one-span-built-in', 1, 0, True),
                                   ('two-spans', 2, 0, False), ('three-spans-end', 3, 0, False),
                                   ('three-spans-middle', 3, 1, False)]:
    m, moved = spans(count, loaded, 0.5, fixed)
    line(name, LOAD, SPAN, 0, *signed(m), moved)

m = model([0.0, SPAN / 2, SPAN], {0: (True, False), 2: (True, False)})
for name in m.members:
    m.add_member_dist_load(name, 'Fy', -5.0, -5.0)
m.analyze(check_statics=False)
line('one-span-uniform', 5.0, SPAN, 0, *signed(m), -m.nodes['N1'].DY['Combo 1'])

for over in (12.0, 30.0):
    places = [0.0, (SPAN - over) / 2, SPAN / 2, (SPAN + over) / 2, SPAN]
    m = model(places, {0: (True, False), 4: (True, False)})
    for name in ('M1', 'M2'):
        m.add_member_dist_load(name, 'Fy', -LOAD / over, -LOAD / over)
    m.analyze(check_statics=False)
    line('partly-uniform', LOAD, SPAN, over, *signed(m), '-')

m = model([0.0, SPAN], {0: (True, True)})
m.add_node_load('N1', 'FY', -LOAD)
m.analyze(check_statics=False)
line('cantilever', LOAD, SPAN, 0, *signed(m), -m.nodes['N1'].DY['Combo 1'])

for name, count in [('two-spans-worst', 2), ('three-spans-worst', 3)]:
    line(name, LOAD, SPAN, 0, worst(count, 0), worst(count, 1), '-')
