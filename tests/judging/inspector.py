#!/usr/bin/env python3
"""A careful inspector who has never seen the program: random guards against published limits.

Written from the limits alone (IRC 2018 R312.1 and R311.7.8; IBC 2018 1015; Approved Document K 2013
3.1-3.3, 1.39-1.42; National Building Code of Canada 9.8.8; NCC 2022 Housing Provisions 11.3;
IRC 2024 R321) and from how a careful person reads a notebook: every reading
counts for itself, the worst decides, what was not looked at is not known. It only says when `meets` (or
`does not apply`) must NOT be said, and when a shortfall is certain or impossible.

One height behind an opening says where the tape was held: the hole goes on above and below it by half
its size at least. A ball tried at every hole was tried at every hole, under whichever name it was written.
Where a gauge and a tape speak of one place and differ by no more than the tape's doubt, the gauge is right.

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
        text2, w = length(rng, lo, hi, near)
        return "not reached", None, None, "no"
    return text, v, v, "tape"

def height_obs(rng, near):
    r = rng.random()
    text, v = length(rng, 200, 1400, near)
    if r < 0.15: return f"reaches {text}", v, INF, "stick"
    if r < 0.25: return f"below {text}", F(0), v, "stick"   # shorter than the stick
    return some_length(rng, 200, 1400, near)

def hole_obs(rng, near, places=True):
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
    else: o = list(some_length(rng, 20, 300, near))
    if places and o[1] is not None and o[3] != "everywhere" and rng.random() < 0.25:
        h = rng.choice([2, 10, 20, 30, 38, 41])
        if rng.random() < 0.5: tail, at = f" at {h} in", (inch(h), inch(h))
        else: tail, at = f" at {h} in to {h+4} in", (inch(h), inch(h+4))
    return [o[0] + tail, o[1], o[2], o[3], at]

DANGERS = [("moves when pushed", "a lot"), ("infill loose", "missing"), ("condition", "rot"), ("condition", "cracks"),
           ("condition", "deep rust"), ("post fastening", "missing"), ("condition", "broken glass")]
HARMLESS = [("moves when pushed", "no"), ("infill loose", "no"), ("condition", "sound"), ("post fastening", "through bolts"),
            ("notched post", "no"), ("fastened to", "joist"), ("paint", "sound"), ("moves when pushed", "a little"),
            ("post fastening", "hidden"), ("infill", "balusters"), ("infill", "panel"), ("thing to climb", "none"),
            ("foothold", "none"), ("infill", "cables"), ("infill", "mesh"), ("infill", "horizontal bars")]

def make(rng, law):
    L = LAWS[law]
    g = dict(obs=[], place=None, use=None)
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
        if rng.random() < 0.5: add("handrail height", rng.choice(["35 in", "36 in", "900 mm", "950 mm"]))
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
        g["bad"] = True; add(rng.choice(["height", "opening", "drop", "bottom gap"]), rng.choice(["abouut", "1,250 mm", "-3 in", "12"]))
    if rng.random() < 0.1 and not g.get("none"):
        h = rng.choice([100, 140, 150, 300, 760, 800, 900, 950])
        add("foothold", f"{h} mm high 40 mm deep"); g["foot"] = F(h)
        g["obs"] = [o for o in g["obs"] if o != ("foothold", "none")]
    rng.shuffle(g["obs"])
    return g

# ---- what a careful inspector will not sign ---------------------------------------------
def deny(g, law, decision="guarded", strict=False):
    """Reasons why `meets` must not be said; empty where it may. Strict: as the text is at its hardest."""
    L = LAWS[law]
    why = []
    if g.get("bad"): why.append("a row is in error")
    off = bool(g["drops"]) and all(d is not None and (d[1] < L["trig"] or (d[1] == L["trig"] and not L["ge"])) for d in g["drops"])
    if g["danger"] and not (off and g["danger"][1] in ("missing",)): why.append("danger: %s %s" % g["danger"])
    if off: return why  # the drop asks for no guard: only what asks without a drop (a handrail) can speak
    if g.get("guard_nr"): why.append("guard not reached")
    hm = L["hmax"](g)
    # where the guard's top is the handrail, its height is asked for whatever the drop
    if not hm:
        if not g["drops"]: why.append("drop not written")
        if any(d is None for d in g["drops"]): why.append("a drop not reached")
    if g.get("none"): why.append("no guard")
    lim = L.get("hs", L["h"])(g) if strict else L["h"](g)
    if not g["height"]: why.append("no height")
    for o in g["height"]:
        if o[1] is None: why.append("a height not reached")
        elif o[2] < lim: why.append(f"height {o[0]} is below {float(lim)}")
        elif o[3] in ("under",) and o[2] <= lim: why.append(f"height {o[0]} is below")
        elif o[0].startswith("below") and o[2] <= lim: why.append(f"height {o[0]} is below")
        elif o[1] < lim: why.append(f"height {o[0]} does not prove {float(lim)}")
    if hm:
        for o in g["height"]:
            if o[1] is not None and o[1] > hm: why.append(f"top as handrail above {float(hm)}")
    ball = L["ball"](g)
    # tried at every hole, under whichever of the two names it was written
    every = [o for o in g["opening"] + g["bottom"] if o[3] == "everywhere"]
    cap = min((o[2] for o in every), default=INF)
    def hole(o, limit, what):
        if o[1] is None: why.append(f"{what} not reached"); return
        if o[3] == "none": return
        lo, hi = o[1], o[2]
        if cap <= limit and lo < cap: return
        if cap <= limit and decision == "guarded" and o[3] == "tape" and lo <= cap + doubt(o[0]): return
        if hi >= limit and not (o[3] in ("ball", "everywhere", "under") and hi <= limit and lo == 0): why.append(f"{what} {o[0]} does not prove a ball of {float(limit)} stopped")
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
        hole(o, limit, "opening")
    if g.get("checked") in ("some", "one"): why.append("not every opening checked")
    stair = g["place"] == "stair"
    closed = any(t[0] == "none" for t in g["tri"])
    if not stair or closed and not any(t[0] == "tri" for t in g["tri"]):
        if not g["bottom"] and cap > ball: why.append("no bottom gap")
        for o in g["bottom"]: hole(o, ball, "bottom gap")
    if stair:
        if L["tri"]:
            if not g["tri"]: why.append("no stair triangle")
            for t in g["tri"]:
                if t[0] == "tri" and t[2] >= L["tri"]: why.append("triangle too large")
        if L["riser"] and g.get("riser"):
            for o in g["riser"]:
                if o[1] is not None and o[1] >= L["riser"]: why.append("riser opening too large")
    if g.get("infill") in ("cables",) and g["opening"] and not all(o[3] == "none" or ("zone" in L and o[4] and foot_of(o) > lim) for o in g["opening"]): why.append("cables not pushed")
    if "climb" in L and g.get("foot"):
        d, a, b = L["climb"]
        if any(x and x[0] > d for x in g["drops"]) and a <= g["foot"] <= b: why.append("foothold in the zone")
    if "covers_use" in L and g["has_use"] and g["use"] not in L["covers_use"]: why.append("use not covered")
    return why

def may_not_apply(g, law):
    """Whether `does not apply` may be said: every drop is known to be at or below the trigger."""
    L = LAWS[law]
    if not g["drops"] or any(d is None for d in g["drops"]): return False
    return all((d[1] < L["trig"]) or (d[1] == L["trig"] and not L["ge"]) for d in g["drops"])

def surely_short(g, law):
    L = LAWS[law]
    if not g["drops"] or any(d is None or d[0] <= L["trig"] + 30 for d in g["drops"]): return None
    if not g["has_place"] or not g["has_use"] or g.get("none") or g.get("guard_nr"): return None
    for o in g["height"]:
        if o[1] is not None and o[2] < L["h"](g) - 30: return f"height {o[0]}"
    for o in g["opening"]:
        if o[1] is not None and o[1] > inch(4) + 45 and not o[4]: return f"opening {o[0]}"
    return None

def write(guards, path, table=False):
    import csv
    with open(path, "w", newline="") as f:
        w = csv.writer(f)
        w.writerow(["unit", "guard", "item", "reading"])
        for name, g in guards:
            for item, text in g["obs"]: w.writerow(["", name, item, text])

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
            batch = [(f"g{done+i}x", make(rng, law)) for i in range(min(1000, N // len(LAWS) - done))]
            done += len(batch)
            path = os.path.join(folder, f"{law}.csv")
            write(batch, path)
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
