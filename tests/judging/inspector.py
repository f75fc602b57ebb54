#!/usr/bin/env python3
"""A careful inspector who has never seen the program: random guards against published limits.

Written from the limits alone (IRC 2018 R101.2, R311.7 and R312.1; IBC 2018 1011.11, 1014, 1015; Approved
Document K 2013 1.9, 1.34-1.42, 3.1-3.3; National Building Code of Canada 9.8.7 and 9.8.8; NCC 2022 Housing
Provisions 11.2, 11.3; IRC 2024 R318.7, R320, R321) and from how a careful person reads a notebook: every
reading counts for itself, the worst decides, what was not looked at is not known, a hole is a hole whatever
it is called. It only says when `meets` (or `does not apply`) must NOT be said, and when a shortfall is certain
or impossible.

Half of the guards are thrown together at random; the other half meet but for one to three things that were
left out, added or changed (`whole`), since a wrong `meets` is found near a right one.

One height behind an opening says where the tape was held: the hole goes on above and below it by half
its size at least. A ball tried at every hole was tried at every hole, under whichever name it was written.
Where a gauge and a tape speak of one place and differ by no more than the tape's doubt, the gauge is right.
A tape nearer to its limit than half of the step to which it was read proves nothing, unless its reading alone
is asked for.

usage: inspector.py BINARY [GUARDS [SEED [LAW=FILE.toml …]]]

The guards are shared out among the six rulesets, and each is judged twice, guarded and simple. LAW=FILE
hands the program another file in place of a ruleset: one with a limit made laxer by hand must be denied.
Ends with status 1 where a `meets` is denied.
"""
import json, random, subprocess, sys, tempfile, os, collections
from fractions import Fraction as F

BIN = sys.argv[1]
INSTEAD = dict(a.split("=", 1) for a in sys.argv[4:])
N = int(sys.argv[2]) if len(sys.argv) > 2 else 3000
SEED = int(sys.argv[3]) if len(sys.argv) > 3 else 1
IN = F(254, 10)
INF = 10**9

def inch(x): return F(x) * IN

# ---- the limits ------------------------------------------------------------------------
def outside_and_high(g):
    outside = ("location", "outside") in g["obs"]
    return outside and any(d and d[0] > F(1800) + 30 for d in g.get("drops", []))
LEVEL = ["landing", "floor edge", "ramp", "deck", "terrace", "balcony", "porch"]
LAWS = {
 "us-dwelling-2018": dict(trig=inch(30), ge=False, h=lambda g: inch(34) if g["place"]=="stair" else inch(36),
     hmax=lambda g: inch(38) if g["place"]=="stair" and g.get("handrail")=="top of the guard" else None,
     ball=lambda g: inch(4)+inch(F(3,8)) if g["place"]=="stair" else inch(4), tri=inch(6), riser=inch(4),
     zone=None),
 "us-dwelling-2024": dict(trig=inch(30), ge=False, h=lambda g: inch(34) if g["place"]=="stair" else inch(36),
     hmax=lambda g: inch(38) if g["place"]=="stair" and g.get("handrail")=="top of the guard" else None,
     ball=lambda g: inch(4)+inch(F(3,8)) if g["place"]=="stair" else inch(4), tri=inch(6), riser=inch(4),
     zone=None),
 # the kindest the text can be: 34 in on stairs in dwellings, 36 in inside small houses, else 42
 "us-buildings-2018": dict(trig=inch(30), ge=False,
     h=lambda g: (inch(42) if g["use"] != "dwelling" else inch(34) if g["place"]=="stair" else inch(36)),
     hmax=lambda g: None,
     ball=lambda g: inch(4)+inch(F(3,8)) if g["place"]=="stair" and g["use"]=="dwelling" else inch(4),
     hs=lambda g: inch(42),
     zone=(inch(36), inch(4)+inch(F(3,8))), tri=inch(6), riser=None),
 "uk-approved-document-k": dict(trig=F(600), ge=False,
     h=lambda g: F(1100) if g["place"] in ("deck","balcony") else F(900),
     hs=lambda g: F(900) if g["place"] in ("stair","landing","floor edge","ramp") else F(1100),
     hmax=lambda g: None, ball=lambda g: F(100), tri=F(100), riser=F(100), covers_use=["dwelling"]),
 # 9.8.8.3: 900 mm within a dwelling, and outside up to a drop of 1800 mm; else 1070 mm
 "canada-dwelling": dict(trig=F(600), ge=False,
     h=lambda g: F(1070) if outside_and_high(g) else F(900), hs=lambda g: F(1070), hmax=lambda g: None, ball=lambda g: F(100),
     tri=None, riser=None, climb=(F(4200), F(140), F(900)), covers_use=["dwelling"]),
 "australia-ncc-2022": dict(trig=F(1000), ge=True, h=lambda g: F(865) if g["place"] in ("stair","landing") else F(1000),
     hmax=lambda g: None, ball=lambda g: F(125), tri=None, riser=F(125), climb=(F(4000), F(150), F(760)), covers_use=["dwelling"]),
}

# What each text is for; a stated fact outside it is none of its business. Place and use always count.
OUTDOORS = ["deck", "terrace", "balcony", "porch"]
ROUND_THE_HOUSE = LEVEL + ["stair"]
SCOPE = {
 "us-dwelling-2018": dict(place=ROUND_THE_HOUSE, use=["dwelling"], storeys=3, dwellings=2),
 "us-dwelling-2024": dict(place=ROUND_THE_HOUSE, use=["dwelling"], storeys=3, dwellings=2),
 "us-buildings-2018": dict(place=ROUND_THE_HOUSE, use=["dwelling", "public", "workplace"]),
 "uk-approved-document-k": dict(place=ROUND_THE_HOUSE + ["roof", "window"], use=["dwelling"], shared="no"),
 "canada-dwelling": dict(place=ROUND_THE_HOUSE + ["window"], use=["dwelling"], storeys=3),
 "australia-ncc-2022": dict(place=ROUND_THE_HOUSE + ["roof", "window"], use=["dwelling"]),
}
# A handrail's height; of a guard's top that is the handrail too
HANDRAIL = {"us-dwelling-2018": (inch(34), inch(38)), "us-dwelling-2024": (inch(34), inch(38)),
            "us-buildings-2018": (inch(34), inch(38)), "uk-approved-document-k": (F(900), F(1000)),
            "canada-dwelling": (F(865), F(1070)), "australia-ncc-2022": (F(865), INF)}
LEVEL_BARS = ("horizontal bars", "cables", "mesh", "net")

# ---- readings: text and what it proves: (lo, hi) of the value, hi exclusive flags ignored (strictness below) --------
def frac_text(x):
    whole, part = int(x), x - int(x)
    return f"{whole} {part}" if whole and part else f"{part}" if part else f"{whole}"

def length(rng, lo_mm, hi_mm, near=None):
    """A tape reading near a limit or anywhere; returns (text, exact mm)."""
    base = near if near is not None and rng.random() < 0.7 else F(rng.randint(int(lo_mm), int(hi_mm)))
    spread = rng.choice([0, 1, 2, 5, 12, 40])
    v = max(F(1), base + F(rng.randint(-spread*4, spread*4), 4))
    if rng.random() < 0.5:
        k = max(1, round(v / IN * 16))
        x = F(k, 16)
        return frac_text(x) + " in", x * IN
    k = max(1, round(v))
    return f"{k} mm", F(k)

def doubt(text):
    """Twice the doubt of a tape, generously: by how it was written, and 2 mm for the tape and the place."""
    if "mm" in text: step = F(1)
    elif "/" not in text: step = inch(F(1,4))
    elif "1/2" in text: step = inch(F(1,8))
    else: step = inch(F(1,16))
    return 2 * step + 2

def some_length(rng, lo, hi, near):
    """One observation: (text, low, high, kind) of what is proven; low/high in mm; None = says nothing."""
    text, v = length(rng, lo, hi, near)
    r = rng.random()
    if r < 0.62: return text, v, v, "tape"
    if r < 0.70: return f"under {text}", F(0), v, "under"
    if r < 0.78: return f"over {text}", v, INF, "over"
    if r < 0.84:
        return "not reached", None, None, "no"
    if r < 0.90:  # from here to there; the worse end counts
        low, high = sorted((v, v - F(rng.choice([5, 10, 30]))))
        if "mm" in text and low > 0: return f"{round(low)} to {text}", F(round(low)), high, "range"
    return text, v, v, "tape"

def height_obs(rng, near):
    r = rng.random()
    text, v = length(rng, 200, 1400, near)
    if r < 0.15: return f"reaches {text}", v, INF, "stick"
    if r < 0.25: return f"below {text}", F(0), v, "stick"   # shorter than the stick
    return some_length(rng, 200, 1400, near)

def hole_obs(rng, near, places=True, place=None):
    r = rng.random()
    text, v = length(rng, 20, 300, near)
    at = None
    tail = ""
    if r < 0.16: o = [f"{text} ball stops", F(0), v, "ball"]
    elif r < 0.22: o = [f"{text} ball stops everywhere", F(0), v, "everywhere"]
    elif r < 0.32: o = [f"{text} ball passes", v, INF, "ball"]
    elif r < 0.36: return ["none", F(0), F(0), "none", None]
    elif r < 0.42:
        o = [f"slot {text}", v, v, "tape"]
    elif r < 0.52: o = shape(rng, v, text, place)
    else: o = list(some_length(rng, 20, 300, near))
    if places and o[1] is not None and o[3] != "everywhere" and rng.random() < 0.25:
        h = rng.choice([2, 10, 20, 30, 38, 41])
        if rng.random() < 0.5: tail, at = f" at {h} in", (inch(h), inch(h))
        else: tail, at = f" at {h} in to {h+4} in", (inch(h), inch(h+4))
    return [o[0] + tail, o[1], o[2], o[3], at]

def shape(rng, v, text, place):
    """A hole of another form whose largest ball is near that."""
    number, unit = text.rsplit(" ", 1)
    r = rng.random()
    if r < 0.25: return [f"circle {text}", v, v, "tape"]
    if r < 0.5: return [f"rectangle {number} x {frac_text(F(rng.choice([12, 500]) if unit == 'in' else 500))} {unit}", min(v, 500 if unit == "mm" else inch(12)), v, "tape"]
    if r < 0.7: return [f"raked {text} level at {rng.choice([20, 35, 42])} deg", v, v, "raked"]
    # along a slope a tape reads more than the hole is wide (by the cosine, rise and going of the steps)
    rise, going = (F(7), F(10)) if unit == "in" else (F(180), F(250))
    level = F(float(v) * float(going) / (float(rise) ** 2 + float(going) ** 2) ** .5)
    most = level if place == "stair" else v  # what does not slope has nothing to take off
    return [f"raked {number} {unit} along rise {rise} going {going}", level, most, "raked"]

IN_ERROR = ["abouut", "1,250 mm", "-3 in", "12"]
DANGERS = [("moves when pushed", "a lot"), ("infill loose", "missing"), ("condition", "rot"), ("condition", "cracks"),
           ("condition", "deep rust"), ("post fastening", "missing"), ("condition", "broken glass")]
HARMLESS = [("moves when pushed", "no"), ("infill loose", "no"), ("condition", "sound"), ("post fastening", "through bolts"),
            ("notched post", "no"), ("fastened to", "joist"), ("paint", "sound"), ("moves when pushed", "a little"),
            ("post fastening", "hidden"), ("infill", "balusters"), ("infill", "panel"), ("thing to climb", "none"),
            ("foothold", "none"), ("infill", "cables"), ("infill", "mesh"), ("infill", "horizontal bars")]

def make(rng, law):
    L = LAWS[law]
    g = dict(obs=[], place=None, use=None, rail_height=[])
    g["place"] = rng.choice(LEVEL + ["stair"]*4)
    g["use"] = rng.choice(["dwelling"]*4 + ["public"]) if law.startswith(("us-b",)) else "dwelling"
    add = lambda item, text: g["obs"].append((item, text))
    g["has_place"] = rng.random() < 0.93
    if g["has_place"]: add("place", g["place"])
    g["has_use"] = rng.random() < 0.95
    if g["has_use"]: add("use", g["use"])
    add("location", rng.choice(["inside", "outside"]))
    if rng.random() < 0.8: add("shared", "no")
    drops = []
    for _ in range(rng.choice([0, 1, 1, 1, 1, 1, 1, 2])):
        r = rng.random()
        if r < 0.05: add("drop", "not reached"); drops.append(None)
        else:
            t, v = length(rng, int(L["trig"]) - 200, 5200, L["trig"] if rng.random() < 0.2 else None)
            if rng.random() < 0.1: t = "over " + t; drops.append((v, INF))
            else: drops.append((v, v))
            add("drop", t)
    g["drops"] = drops
    if rng.random() < 0.02:
        add("guard", "none"); g["none"] = True
    if rng.random() < 0.02:
        add("guard", "not reached"); g["guard_nr"] = True
    if g["place"] == "stair":
        if rng.random() < 0.7:
            g["handrail"] = rng.choice(["top of the guard", "separate", "none"]); add("handrail", g["handrail"])
        if rng.random() < 0.6:
            g["risers"] = rng.choice([2, 3, 4, 12]); add("risers", str(g["risers"]))
        if rng.random() < 0.5:
            t, v = rng.choice([("35 in", inch(35)), ("36 in", inch(36)), ("900 mm", F(900)), ("950 mm", F(950))])
            add("handrail height", t); g["rail_height"] = [[t, v, v, "tape"]]
        if rng.random() < 0.8: add("riser opening", "none"); g["riser"] = [("none", F(0), F(0), "none", None)]
        elif rng.random() < 0.5:
            o = hole_obs(rng, L["riser"] or inch(4), False); g["riser"] = [o]; add("riser opening", o[0])
    g["height"], g["opening"], g["bottom"], g["tri"] = [], [], [], []
    good = rng.random() < 0.65 and not g.get("none")
    if good:  # an ordinary good guard, to which one thing too many is added
        top = L["h"](g) + 20 + (0 if L["hmax"](g) else rng.choice([0, 40, 150]))
        for key, item, o in (("height", "height", [f"{round(top)} mm", F(round(top)), F(round(top)), "tape"]),
                        ("opening", "opening", ["80 mm", F(80), F(80), "tape", None]),
                        ("bottom", "bottom gap", ["50 mm", F(50), F(50), "tape", None])):
            if rng.random() < 0.97: g[key].append(o); add(item, o[0])
        if g["place"] == "stair": add("stair triangle", "none"); g["tri"].append(("none", F(0), F(0)))
        if not drops and rng.random() < 0.9: add("drop", "2600 mm"); drops.append((F(2600), F(2600)))
        extra = [0, 0, 0, 0, 0, 0, 1, 1, 2]
        hs, os_, bs = rng.choice(extra), rng.choice(extra), rng.choice(extra)
    else:
        hs, os_, bs = rng.choice([0, 1, 1, 1, 1, 1, 2, 2, 3]), rng.choice([0, 1, 1, 1, 1, 2, 2, 3]), rng.choice([0, 1, 1, 1, 1, 2])
    if not g.get("none"):
        for _ in range(hs):
            o = height_obs(rng, rng.choice([L["h"](g), L["h"](g) + 60, L["h"](g) + 60])); g["height"].append(o); add("height", o[0])
        for _ in range(os_):
            o = hole_obs(rng, rng.choice([L["ball"](g), L["ball"](g) - 15, L["ball"](g) - 15])); g["opening"].append(o); add("opening", o[0])
        for _ in range(bs):
            o = hole_obs(rng, rng.choice([L["ball"](g), L["ball"](g) - 20]), False) if rng.random() < 0.75 else ["none", F(0), F(0), "none", None]
            g["bottom"].append(o); add("bottom gap", o[0])
        if g["place"] == "stair" and rng.random() < (0.15 if good else 0.8):
            if rng.random() < 0.5:
                add("stair triangle", "none"); g["tri"].append(("none", F(0), F(0)))
            else:
                lift = rng.choice([0, 1, 2, 3])
                r, t = F(rng.choice([7, 7.5, 7.75])), F(rng.choice([10, 11]))
                add("stair triangle", f"rise {frac_text(r)} going {t} lift {lift} in")
                d = (float(r)**2 + float(t)**2) ** .5
                d0, h0 = float(r) + float(t) - d, float(r*t)/d
                gg = lift * float(t)/d
                big = d0 * (h0 + gg) / h0 * 25.4
                g["tri"].append(("tri", F(big), F(big)))
        if rng.random() < 0.12:
            w = rng.choice(["some", "one", "every one"]); add("openings checked", w); g["checked"] = w
    g["danger"] = None
    for _ in range(rng.choice([0, 1, 2, 3])): 
        i, w = rng.choice(HARMLESS)
        if i == "infill" and any(o[0] == "infill" for o in g["obs"]): continue
        if i == "infill": g["infill"] = w
        if not g.get("none") or i in ("paint", "thing to climb"): add(i, w)
    if rng.random() < 0.08 and not g.get("none"):
        g["danger"] = rng.choice(DANGERS); add(*g["danger"])
    if rng.random() < 0.04:
        g["bad"] = True; add(rng.choice(["height", "opening", "drop", "bottom gap"]), rng.choice(IN_ERROR))
    if rng.random() < 0.1 and not g.get("none"):
        h = rng.choice([100, 140, 150, 300, 760, 800, 900, 950])
        add("foothold", f"{h} mm high 40 mm deep"); g["foot"] = F(h)
        g["obs"] = [o for o in g["obs"] if o != ("foothold", "none")]
    rng.shuffle(g["obs"])
    return g

def whole(rng, law):
    """A guard that meets, as far as the limits here go, but for what is changed at the end."""
    L = LAWS[law]
    g = dict(obs=[], place=rng.choice(LEVEL + ["stair"] * 5), use="dwelling", has_place=True, has_use=True, danger=None,
             drops=[], height=[], opening=[], bottom=[], tri=[], ends=[], vees=[], edge=[], riser=[], rail_height=[])
    stair, sloping = g["place"] == "stair", g["place"] in ("stair", "ramp")
    if law == "us-buildings-2018" and rng.random() < 0.4: g["use"] = rng.choice(["public", "workplace"])
    def add(item, text): g["obs"].append((item, text))
    def often(part=0.5): return rng.random() < part
    add("place", g["place"]); add("use", g["use"])
    add("location", "outside" if g["place"] in OUTDOORS else rng.choice(["inside", "inside", "outside"]))
    if law in ("us-buildings-2018", "canada-dwelling") or often(): add("shared", "no")
    if law == "us-buildings-2018" or often(0.3): add("storeys", rng.choice(["1", "2", "3"]))
    if law == "us-buildings-2018" or often(0.3): add("dwellings in building", rng.choice(["1", "2"]))
    drop = F(rng.choice([1500, 1700, 2600, 3900] if law != "us-buildings-2018" else [2600, 5000]))
    g["drops"].append((drop, drop)); add("drop", f"{drop} mm")
    if stair:
        g["risers"] = int(drop / 180); add("risers", str(g["risers"]))
        add("stair triangle", "none"); g["tri"].append(("none", F(0), F(0)))
        add("riser opening", "none"); g["riser"].append(["none", F(0), F(0), "none", None])
    low, high = HANDRAIL[law]
    lim = max(L.get("hs", L["h"])(g), L["h"](g))
    if sloping:
        g["handrail"] = "top of the guard" if often(0.3) and high >= lim + 10 else "separate"
        add("handrail", g["handrail"])
        if g["handrail"] == "separate": add("handrail height", "920 mm"); g["rail_height"].append(["920 mm", F(920), F(920), "tape"])
        add("handrail sides", "both sides"); add("handrail clearance", "60 mm")
        add("flight width", "900 mm"); add("ramp slope", "20 mm") if not stair else None
    if g.get("handrail") == "top of the guard": top = round(min(lim + 20, high - 5))
    else: top = round(lim) + rng.choice([5, 20, 60, 150])
    g["height"].append([f"{top} mm", F(top), F(top), "tape"]); add("height", f"{top} mm")
    if often(0.3):
        o = [f"{round(min(100, L['ball'](g)))} mm ball stops everywhere", F(0), F(round(min(100, L["ball"](g)))), "everywhere", None]
    else: o = ["80 mm", F(80), F(80), "tape", None]
    g["opening"].append(o); add("opening", o[0])
    g["bottom"].append(["50 mm", F(50), F(50), "tape", None]); add("bottom gap", "50 mm")
    if law == "australia-ncc-2022" or often(0.2): add("edge gap", "none"); g["edge"].append(["none", F(0), F(0), "none", None])
    if law not in ("us-dwelling-2018", "us-dwelling-2024", "us-buildings-2018") or often(): add("infill", "balusters"); g["infill"] = "balusters"
    if law not in ("us-dwelling-2018", "us-dwelling-2024", "us-buildings-2018") or often(0.3): add("foothold", "none")
    for _ in range(rng.choice([0, 1, 1, 1, 2, 2, 3])): rng.choice(CHANGES)(rng, g, L, add)
    if rng.random() < 0.3:  # what holds for the whole unit, once at a guard's own that differs
        shared = [o for o in g["obs"] if o[0] in ("use", "location", "shared", "storeys", "dwellings in building")]
        g["unit_obs"] = [o for o in shared if rng.random() < 0.7]
        g["obs"] = [o for o in g["obs"] if o not in g["unit_obs"]]
        if rng.random() < 0.3:
            for item, other in (("use", "dwelling"), ("location", "inside"), ("shared", "no"), ("storeys", "2")):
                if any(o[0] == item for o in g["obs"]): g["unit_obs"].append((item, other))
    rng.shuffle(g["obs"])
    return g

# Each changes one thing, and says in the guard what it did where the readings alone do not.
def left_out(rng, g, L, add):
    item = rng.choice(sorted({o[0] for o in g["obs"]}))
    g["obs"] = [o for o in g["obs"] if o[0] != item]
    key = {"height": "height", "opening": "opening", "bottom gap": "bottom", "drop": "drops", "stair triangle": "tri",
           "riser opening": "riser", "edge gap": "edge", "end gap": "ends", "v opening": "vees", "handrail height": "rail_height"}.get(item)
    if key: g[key] = []
    for key in {"place": ["has_place"], "use": ["has_use"]}.get(item, []): g[key] = False
    if item in ("handrail", "risers", "infill"): g.pop(item, None)
    if item == "foothold": g.pop("foot", None)
    if item == "openings checked": g.pop("checked", None)
    if g["danger"] and g["danger"][0] == item: g["danger"] = None
def another_hole(rng, g, L, add):
    o = hole_obs(rng, rng.choice([L["ball"](g), L["ball"](g) - 15]), True, g["place"]); g["opening"].append(o); add("opening", o[0])
def holes_up_and_down(rng, g, L, add):
    for h in rng.sample([2, 10, 20, 30, 34, 36, 38, 41, 44], rng.choice([2, 3, 4])):
        text, v = length(rng, 20, 200, rng.choice([F(80), L["ball"](g)]))
        o = [text + f" at {h} in", v, v, "tape", (inch(h), inch(h))]
        g["opening"].append(o); add("opening", o[0])
def gauge_beside_tape(rng, g, L, add):
    h = rng.choice([4, 12, 24, 33])
    ball = L["ball"](g) + rng.choice([0, 0, 0, -10, 10])
    k = round(ball)
    word = rng.choice(["stops", "stops", "stops", "passes"])
    text, v = length(rng, 20, 200, rng.choice([ball, ball, F(k) + 2, F(k) - 2]))
    at = rng.choice([h, h, h, h + 1])
    o = [f"{k} mm ball {word} at {h} in", *((F(0), F(k)) if word == "stops" else (F(k), INF)), "ball", (inch(h), inch(h))]
    p = [f"{text} at {at} in", v, v, "tape", (inch(at), inch(at))]
    for one in (o, p): g["opening"].append(one); add("opening", one[0])
def another_height(rng, g, L, add):
    o = height_obs(rng, rng.choice([L["h"](g), L["h"](g) + 5, L["h"](g) - 1])); g["height"].append(o); add("height", o[0])
def stick_beside_tape(rng, g, L, add):
    lim, k = L["h"](g), round(L["h"](g) + F(1, 2))
    text, v = length(rng, 500, 1300, rng.choice([lim, lim - 1, lim + 1]))
    for o in ([f"reaches {k} mm", F(k), INF, "stick"], [text, v, v, "tape"]): g["height"].append(o); add("height", o[0])
def hole_elsewhere(rng, g, L, add):
    item, key = rng.choice([("end gap", "ends"), ("end gap", "ends"), ("bottom gap", "bottom"), ("edge gap", "edge"), ("riser opening", "riser")])
    if item == "riser opening" and g["place"] != "stair": return
    if item == "edge gap": text, v = length(rng, 10, 200, F(40)); o = [text, v, v, "tape", None]
    else: o = hole_obs(rng, L["ball"](g) - rng.choice([0, 15]), False, g["place"])
    if item == "riser opening" and rng.random() < 0.5 or o[3] == "none":
        g["obs"] = [x for x in g["obs"] if x[0] != item]; g[key] = []
    elif o[3] != "none" and any(x[3] == "none" for x in g[key]):
        g["obs"] = [x for x in g["obs"] if x != (item, "none")]; g[key] = [x for x in g[key] if x[3] != "none"]
    g[key].append(o); add(item, o[0])
def vee(rng, g, L, add):
    w = rng.choice([1, 2, 3, 4, 5, 6]); g["vees"].append((f"{w} in", inch(w), inch(w), "tape", None)); add("v opening", f"{w} in wide {rng.choice([3, 6])} in deep")
def outside_its_scope(rng, g, L, add):
    item, word = rng.choice([("place", "pool"), ("place", "roof"), ("place", "window"), ("use", "public"), ("use", "workplace"), ("shared", "yes"),
                             ("storeys", "4"), ("storeys", "9"), ("dwellings in building", "3"), ("dwellings in building", "12")])
    g["obs"] = [o for o in g["obs"] if o[0] != item]; add(item, word)
    if item in ("place", "use"): g[item] = word; g["has_" + item] = True
    if word == "window": g["obs"] = [o for o in g["obs"] if o[0] != "drop"]; g["drops"] = []  # it has triggers of its own
def danger(rng, g, L, add):
    g["danger"] = rng.choice(DANGERS); add(*g["danger"])
def filled_otherwise(rng, g, L, add):
    g["obs"] = [o for o in g["obs"] if o[0] != "infill"]
    g["infill"] = rng.choice(["horizontal bars", "cables", "mesh", "net", "panel", "solid", "upright cables", "balusters"]); add("infill", g["infill"])
def to_stand_on(rng, g, L, add):
    g["obs"] = [o for o in g["obs"] if o[0] != "foothold"]
    h = rng.choice([90, 100, 120, 140, 150, 300, 760, 800, 900, 950]); g["foot"] = F(h); add("foothold", f"{h} mm high 40 mm deep")
def farther_down(rng, g, L, add):
    t, v = length(rng, int(L["trig"]) - 200, 5200, rng.choice([L["trig"], F(1800), F(4200), F(4000)]))
    r = rng.random()
    if r < 0.15: t, d = "over " + t, (v, INF)
    elif r < 0.25: t, d = "not reached", None
    else: d = (v, v)
    if rng.random() < 0.6: g["obs"] = [o for o in g["obs"] if o[0] != "drop"]; g["drops"] = []
    g["drops"].append(d); add("drop", t)
def handrail_changed(rng, g, L, add):
    r = rng.random()
    if r < 0.4:
        g["obs"] = [o for o in g["obs"] if o[0] != "handrail"]; g["handrail"] = rng.choice(["none", "top of the guard", "separate"]); add("handrail", g["handrail"])
    elif r < 0.6 and g["place"] == "stair":
        g["obs"] = [o for o in g["obs"] if o[0] != "risers"]; g["risers"] = rng.choice([2, 3, 4, 12]); add("risers", str(g["risers"]))
    elif r < 0.8:
        t, v = length(rng, 800, 1100, rng.choice([F(864), F(900), F(965), F(1000), F(1070)])); g["rail_height"].append([t, v, v, "tape"]); add("handrail height", t)
    else:
        g["obs"] = [o for o in g["obs"] if o[0] not in ("handrail sides", "flight width")]; add("handrail sides", "one side"); add("flight width", rng.choice(["900 mm", "1000 mm", "1200 mm"]))
def not_all_looked_at(rng, g, L, add):
    g["checked"] = rng.choice(["some", "one"]); g["obs"] = [o for o in g["obs"] if o[0] != "openings checked"]; add("openings checked", g["checked"])
def in_error(rng, g, L, add):
    g["bad"] = True; add(rng.choice(["height", "opening", "drop", "bottom gap", "end gap"]), rng.choice(IN_ERROR))
CHANGES = [left_out, left_out, left_out, another_hole, another_hole, holes_up_and_down, holes_up_and_down, gauge_beside_tape, gauge_beside_tape,
           another_height, another_height, stick_beside_tape, hole_elsewhere, hole_elsewhere, hole_elsewhere, vee, outside_its_scope, outside_its_scope,
           danger, filled_otherwise, to_stand_on, farther_down, farther_down, handrail_changed, handrail_changed, not_all_looked_at, in_error]

# ---- what a careful inspector will not sign ---------------------------------------------
def said(g, item):
    """What is written of a guard: its own word, else that of its unit."""
    for obs in (g["obs"], g.get("unit_obs", [])):
        for name, word in obs:
            if name == item: return word
    return None

def fewest(g, item):
    word = said(g, item)
    return int(word) if word else None

def out_of_scope(g, law):
    S, why = SCOPE[law], []
    if not g["has_place"]: why.append("nobody wrote the place")
    elif g["place"] not in S["place"]: why.append("a place that the text does not speak of")
    if g["has_use"] and g["use"] not in S["use"]: why.append("a use that the text does not speak of")
    for item, most in (("storeys", S.get("storeys")), ("dwellings in building", S.get("dwellings"))):
        if most and (fewest(g, item) or 0) > most: why.append(f"too many {item}")
    if "shared" in S and said(g, "shared") not in (None, S["shared"]): why.append("shared")
    return why

def small_house(g):
    """What 42 in is let off for: R-3, or a dwelling with a way out of its own, of up to three storeys."""
    return (g["use"] == "dwelling" and g["has_use"] and said(g, "shared") == "no" and (fewest(g, "storeys") or 99) <= 3
            and ((fewest(g, "dwellings in building") or 99) <= 2 or said(g, "own way out") == "yes"))

def in_a_dwelling(g):
    """Whether a stair is surely that of one home."""
    return (g["use"] == "dwelling" and g["has_use"] and said(g, "shared") == "no"
            and ((fewest(g, "dwellings in building") or 99) <= 2 or said(g, "location") == "inside"))

def height_to_prove(g, law):
    """The least height by which the guard may be signed with what is written of it."""
    if law == "us-buildings-2018":
        if g["place"] == "stair": return inch(34) if in_a_dwelling(g) else inch(42)
        return inch(36) if small_house(g) else inch(42)
    if law == "canada-dwelling":
        outside = g["place"] in OUTDOORS or said(g, "location") != "inside"
        low = bool(g["drops"]) and all(d and d[1] <= 1800 for d in g["drops"])
        return F(900) if said(g, "shared") == "no" and (low or not outside) else F(1070)
    if law == "uk-approved-document-k":
        return F(1100) if g["place"] in OUTDOORS + ["roof"] else F(800) if g["place"] == "window" else F(900)
    if law == "australia-ncc-2022": return F(865) if g["place"] == "stair" else F(1000)
    return LAWS[law]["h"](g)

def ball_to_stop(g, law):
    if law == "us-buildings-2018" and not in_a_dwelling(g): return inch(4)
    return LAWS[law]["ball"](g)

def at_handrail(g, law, decision):
    """What the text asks of a handrail, whatever the drop."""
    place, rail, risers, why = g["place"], g.get("handrail"), g.get("risers"), []
    if place not in ("stair", "ramp"): return why
    over = any(d is None or d[1] > 600 for d in g["drops"]) or not g["drops"]
    needed = {"us-dwelling-2018": place == "stair" and (risers or 99) >= 4, "us-dwelling-2024": place == "stair" and (risers or 99) >= 4,
              "us-buildings-2018": place == "stair" and not (g["use"] == "dwelling" and said(g, "shared") == "no" and (risers or 99) <= 3),
              "uk-approved-document-k": (risers or 99) > 2 if place == "stair" else over,
              "canada-dwelling": place == "stair" and (risers or 99) >= (3 if said(g, "location") != "outside" else 4),
              "australia-ncc-2022": True}[law]
    if needed and rail in (None, "none"): why.append("a handrail is asked for, and none was seen")
    low, high = HANDRAIL[law]
    if rail == "separate":
        if not g["rail_height"]: why.append("no height of the handrail")
        for o in g["rail_height"]:
            if not low <= o[1] <= high or decision == "guarded" and (o[1] < low + half_step(o) or o[1] > high - half_step(o)):
                why.append(f"handrail at {o[0]}")
    if rail == "top of the guard":
        for o in g["height"]:
            if o[1] is not None and o[2] > high or o[1] is not None and decision == "guarded" and o[3] == "tape" and o[2] > high - half_step(o) \
                    and not any(p[3] == "stick" and p[2] <= high for p in g["height"]): why.append(f"the top as handrail at {o[0]}")
    both = law == "uk-approved-document-k" and not any(w in ("900 mm",) for w in words(g, "flight width"))
    both = both or law == "us-buildings-2018" and place == "stair" and not (g["use"] == "dwelling" and g["has_use"] and said(g, "shared") == "no")
    if both and rail in ("separate", "top of the guard") and (place == "stair" or over) and words(g, "handrail sides") != ["both sides"]: why.append("a handrail on both sides is asked for")
    return why

def words(g, item): return [w for i, w in g["obs"] if i == item]

def half_step(o):
    """Half of the step to which a tape was read, by how it is written: no doubt is less."""
    text = o[0].split(" at ")[0]
    if o[3] != "tape": return F(0)
    return (F(1) if "mm" in text else inch(F(1, 4)) if "/" not in text else inch(F(1, 8)) if "1/2" in text else inch(F(1, 16))) / 2

def deny(g, law, decision="guarded", strict=False):
    """Reasons why `meets` must not be said; empty where it may. Strict: as the text is at its hardest."""
    L = LAWS[law]
    why = []
    # a change that came later may have taken the bad row away
    lengths = ("height", "opening", "drop", "bottom gap", "end gap")
    if any(text in IN_ERROR and item in lengths for item, text in g["obs"]): why.append("a row is in error")
    why += out_of_scope(g, law)
    why += at_handrail(g, law, decision)
    off = may_not_apply(g, law)
    if g["danger"] and not (off and g["danger"][1] in ("missing",)): why.append("danger: %s %s" % g["danger"])
    if law in ("uk-approved-document-k", "australia-ncc-2022") and g["place"] == "stair":
        risers_proven(g, L["riser"], decision, why)  # whatever the drop
    if off: return why  # the drop asks for no guard: only what asks without a drop can speak
    if g.get("guard_nr"): why.append("guard not reached")
    # where the guard's top is the handrail, its height is asked for whatever the drop
    if not (g["place"] == "stair" and g.get("handrail") == "top of the guard" and law.startswith("us-dwelling")):
        if not g["drops"]: why.append("drop not written")
        if any(d is None for d in g["drops"]): why.append("a drop not reached")
    if g.get("none"): why.append("no guard")
    lim = max(L.get("hs", L["h"])(g) if strict else F(0), height_to_prove(g, law))
    guarded = decision == "guarded"
    if not g["height"]: why.append("no height")
    stuck = any(o[3] == "stick" and o[1] >= lim for o in g["height"])
    for o in g["height"]:
        if o[1] is None: why.append("a height not reached")
        elif guarded and not strict and stuck and o[3] == "tape" and abs(o[1] - lim) <= doubt(o[0]): continue
        elif o[2] < lim: why.append(f"height {o[0]} is below {float(lim)}")
        elif o[3] in ("under",) and o[2] <= lim: why.append(f"height {o[0]} is below")
        elif o[0].startswith("below") and o[2] <= lim: why.append(f"height {o[0]} is below")
        elif o[1] < lim: why.append(f"height {o[0]} does not prove {float(lim)}")
        elif guarded and o[1] < lim + half_step(o): why.append(f"height {o[0]} is too near to {float(lim)}")
    ball = ball_to_stop(g, law)
    # tried at every hole, under whichever of the two names it was written
    every = [o for o in g["opening"] + g["bottom"] if o[3] == "everywhere"]
    cap = min((o[2] for o in every), default=INF)
    def hole(o, limit, what, cap, beside=()):
        if o[1] is None: why.append(f"{what} not reached"); return
        if o[3] == "none": return
        lo, hi = o[1], o[2]
        if o[3] == "raked" and "along" in o[0] and g["place"] == "stair": hi = lo  # wherever it was thought to be at first
        if cap <= limit and lo < cap: return
        if cap <= limit and guarded and not strict and o[3] in ("tape", "raked") and lo <= cap + doubt(o[0]): return
        there = [p for p in beside if p is not o and o[4] and p[4] == o[4] and p[1] is not None]
        taped = [p for p in there if p[3] == "tape" and p[1] == p[2]]
        if o[3] == "tape" and guarded and not strict:
            if any(p[3] == "ball" and p[2] <= limit and lo <= p[2] + doubt(o[0]) for p in there): return
            if any(half_step(p) < half_step(o) and abs(p[1] - lo) <= doubt(o[0]) for p in taped): return
        if o[3] == "ball" and lo < limit and not strict:  # a ball that settles nothing, and a tape in the same hole that does
            slack = doubt(taped[0][0]) if taped and guarded else 0
            if taped and all(lo - slack <= p[1] < hi + slack for p in taped): return
        if hi >= limit and not (o[3] in ("ball", "everywhere", "under") and hi <= limit and lo == 0): why.append(f"{what} {o[0]} does not prove a ball of {float(limit)} stopped")
        elif guarded and hi > limit - half_step(o): why.append(f"{what} {o[0]} is too near to {float(limit)}")
    def foot_of(o):
        """How far down the hole may reach."""
        low, high = o[4]
        if low != high: return low
        if g.get("infill") in (None, "balusters"): return F(0)  # it may run from bottom to top
        return low - o[2] / 2
    if not g["opening"] and cap > ball: why.append("no opening")
    for o in g["opening"]:
        limit = ball
        if "zone" in L and o[4]:  # the text speaks of the height up to that which is asked for
            low = foot_of(o)
            if low > lim: continue
            if L["zone"] and low > L["zone"][0]: limit = max(limit, L["zone"][1])
        hole(o, limit, "opening", cap, g["opening"])
    if g.get("checked") in ("some", "one"): why.append("not every opening checked")
    stair = g["place"] == "stair"
    closed = any(t[0] == "none" for t in g["tri"])
    if not stair or closed and not any(t[0] == "tri" for t in g["tri"]):
        if not g["bottom"] and cap > ball: why.append("no bottom gap")
        for o in g["bottom"]: hole(o, ball, "bottom gap", cap)
    for o in g.get("ends", []): hole(o, ball, "end gap", cap)
    # a hole is a hole, whether a sentence of the text names it or not
    for o in g.get("vees", []):
        if o[2] >= ball: why.append(f"v opening {o[0]} wide")
    for o in g.get("edge", []):
        if law != "australia-ncc-2022":
            if o[1] >= ball: why.append(f"edge gap {o[0]}")
        elif o[1] > 40 or guarded and o[1] > 40 - half_step(o): why.append(f"edge gap {o[0]}")
    if law == "australia-ncc-2022" and not g.get("edge"): why.append("nobody wrote whether it stands outside the edge")
    if stair:
        if L["tri"]:
            if not g["tri"]: why.append("no stair triangle")
            for t in g["tri"]:
                if t[0] == "tri" and t[2] >= L["tri"]: why.append("triangle too large")
        risers_proven(g, L["riser"], decision, why, ball)
    if g.get("infill") in ("cables", "net", "upright cables") and g["opening"] and not all(o[3] == "none" or ("zone" in L and o[4] and foot_of(o) > lim) for o in g["opening"]): why.append("not pushed")
    climb(g, law, why)
    return why

def risers_proven(g, limit, decision, why, ball=None):
    """The opening between two treads: asked for or not, a hole."""
    risers = g.get("riser") or []
    if limit and not risers: why.append("no riser opening")
    for o in risers:
        if o[1] is None: why.append("riser opening not reached") if limit else None
        elif o[3] != "none" and o[2] >= (limit or ball) and not (o[3] in ("ball", "everywhere", "under") and o[2] <= (limit or ball) and o[1] == 0):
            why.append(f"riser opening {o[0]}")
        elif o[3] != "none" and decision == "guarded" and o[2] > (limit or ball) - half_step(o): why.append(f"riser opening {o[0]} is too near")

def climb(g, law, why):
    deepest = max((d[1] for d in g["drops"] if d), default=INF)
    if law == "uk-approved-document-k": a, b, bars = F(100), F(900), LEVEL_BARS
    elif "climb" in LAWS[law]:
        d, a, b = LAWS[law]["climb"]
        if deepest <= d: return
        bars = LEVEL_BARS[:2]
    else: return
    if g.get("infill") is None: why.append("nobody wrote what fills it")
    if g.get("infill") in bars: why.append("it can be climbed")
    if g["place"] == "stair" and law == "uk-approved-document-k": return
    if g.get("foot") is None and "none" not in words(g, "foothold"): why.append("nobody looked for a foothold")
    if g.get("foot") is not None and a <= g["foot"] <= b: why.append("foothold in the zone")

def may_not_apply(g, law):
    """Whether `does not apply` may be said: every drop is known to be at or below the trigger."""
    L = LAWS[law]
    if not g["drops"] or any(d is None for d in g["drops"]): return False
    if g["place"] == "stair" and (g.get("risers") or 0) * inch(4) > max(d[1] for d in g["drops"]): return False  # steps are no lower (IBC 1011.5.2)
    return all((d[1] < L["trig"]) or (d[1] == L["trig"] and not L["ge"]) for d in g["drops"])

def surely_short(g, law):
    L = LAWS[law]
    if not g["drops"] or any(d is None or d[0] <= L["trig"] + 30 for d in g["drops"]): return None
    if out_of_scope(g, law) or not g["has_use"] or g.get("none") or g.get("guard_nr"): return None
    for o in g["height"]:
        if o[1] is not None and o[2] < L["h"](g) - 30: return f"height {o[0]}"
    for o in g["opening"]:
        if o[1] is not None and o[1] > inch(4) + 45 and not o[4]: return f"opening {o[0]}"
    return None

def write(guards, path, table=False):
    """As a notebook, or as a table with a guard a row; the facts of a unit in a row of its own."""
    import csv
    rows = [(name if "unit_obs" in g else "", guard, obs) for name, g in guards for guard, obs in (("", g.get("unit_obs", [])), (name, g["obs"])) if obs]
    with open(path, "w", newline="") as f:
        w = csv.writer(f)
        if not table:
            w.writerow(["unit", "guard", "item", "reading"])
            for unit, guard, obs in rows: w.writerows([unit, guard, item, text] for item, text in obs)
            return
        items = sorted({item for _, _, obs in rows for item, _ in obs})
        w.writerow(["unit", "guard"] + ["railing" if item == "guard" else item for item in items])
        for unit, guard, obs in rows: w.writerow([unit, guard] + ["; ".join(t for i, t in obs if i == item) for item in items])

def run(path, law, decision, extra=()):
    p = subprocess.run([BIN, "check", path, "--rules", INSTEAD.get(law, law), "--format", "json", "--decision", decision, *extra], capture_output=True, text=True)
    if not p.stdout: sys.exit(p.stderr[:3000])
    return json.loads(p.stdout), p.returncode

def main():
    rng = random.Random(SEED)
    tally = collections.Counter()
    shown = collections.Counter()
    folder = tempfile.mkdtemp()
    for law in LAWS:
        done = 0
        while done < N // len(LAWS):
            batch = [(f"g{done+i}x", (make, whole)[i % 2](rng, law)) for i in range(min(1000, N // len(LAWS) - done))]
            done += len(batch)
            path = os.path.join(folder, f"{law}.csv")
            write(batch, path, table=done % 2 == 0)
            for decision in ("guarded", "simple"):
                out, code = run(path, law, decision, ("--no-guidance",))
                verdicts = {x["guard"]: x for x in out["guards"]}
                for name, g in batch:
                    x = verdicts[name]
                    v = x["verdict"]
                    tally[(law, decision, v)] += 1
                    why = deny(g, law, decision)
                    bad = None
                    if v == "meets" and why: bad = ("MEETS DENIED", "; ".join(why))
                    if v == "does not apply" and (not may_not_apply(g, law) or (g["danger"] and g["danger"][1] != "missing")):
                        bad = ("DOES-NOT-APPLY DENIED", f"drops {[ (float(d[0]), float(d[1])) if d else None for d in g['drops']]} danger {g['danger']} bad {g.get('bad')}")
                    s = surely_short(g, law)
                    if s and v != "falls short" and not g.get("bad"): bad = ("SHORT NOT SAID", f"{s} -> {v}")
                    if v == "falls short" and not deny(g, law, decision, strict=True) and not may_not_apply(g, law) and g["place"] != "stair": bad = ("SHORT DENIED", "")
                    if bad:
                        tally[bad[0]] += 1
                        key = (bad[0], law, decision)
                        shown[key] += 1
                        if shown[key] <= (40 if bad[0] == "MEETS DENIED" else 4):
                            print(bad[0], law, decision, "|", bad[1], "|", "; ".join(f"{i},{t}" for i, t in g["obs"]))
                            if bad[0] == "SHORT DENIED":
                                print("    ", [(f["rule"], f["measured"] and f["measured"]["written"]) for f in x["findings"] if f["verdict"] == "falls short"])
    print()
    for k, n in sorted(tally.items(), key=str): print(n, k)
    laws = sum(n for k, n in tally.items() if isinstance(k, tuple))
    print(f"{laws} judgements, {tally['MEETS DENIED']} of them a `meets` that is denied")
    sys.exit(1 if tally["MEETS DENIED"] else 0)
main()
