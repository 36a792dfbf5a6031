"""Meter readings in a makeup control circuit, by ngspice.

Each row is one meter on one pair of terminals of one of four circuits, in one
state, under one fault. The netlist is written here from the wiring, not from
Coldsump's tables of nodes; ngspice solves it (AC analysis at the supply
frequency, direct current for the ohmmeter). All voltages RMS. A reading below
1e-9 is written as 0; an ohmmeter above 40 Mohm shows nothing.
"""

import math
import random
import re
import subprocess

HEADER = [
    "circuit", "calling", "armature", "lifted", "fault", "size", "first", "second", "meter",
    "reading",
]
TOLERANCE = 1e-5

CLOSED, BROKEN, LIMIT = 0.05, 1e10, 40e6

# name: supply V, Hz, source ohm, transformer, series contacts, throw, ohm/m,
# m to relay, m to coil, pF/m to live, pF/m to return, neighbour V,
# coil V, VA, pf, inrush ratio, inrush pf
CIRCUITS = {
    "bakery": (24, 60, 1.2, True, 0, "no", 6.385 / 304.8, 12, 30, 80, 80, 24, 24, 10, 0.4, 5, 0.8),
    "beside": (24, 60, 0.6, True, 2, "nc", 4.016 / 304.8, 40, 60, 90, 40, 120, 24, 20, 0.5, 4, 0.7),
    "mains": (120, 60, 0.3, False, 1, "no", 2.525 / 304.8, 20, 45, 80, 60, 120, 120, 20, 0.35, 6, 0.75),
    "metric": (230, 50, 0.5, False, 3, "nc", 12.1e-3, 15, 50, 100, 50, 230, 230, 10, 0.45, 3, 0.9),
}

FAULTS = [
    ("none", None), ("supply-lost", None), ("fuse-blown", None), ("disconnect-open", None),
    ("series-open", 1), ("contact-stuck-open", None), ("contact-welded", None),
    ("contact-resistance", 3.0), ("contact-resistance", 20.0), ("contact-resistance", 900.0),
    ("coil-open", None), ("coil-shorted", 0.1), ("coil-shorted", 0.3), ("feed-broken", None),
    ("feed-floating", 0.5), ("feed-floating", 0.85), ("feed-loose", 40.0),
    ("return-broken", None), ("return-loose", 8.0), ("output-leakage", 0.002),
    ("output-leakage", 0.01),
]

POINTS = ["supply-hot", "fuse-out", "disconnect-out", "series1", "series2", "series3",
          "relay-common", "relay-out", "relay-other", "coil-feed", "coil-return", "supply-return"]
PAIRS = [
    ("relay-common", "relay-out"), ("coil-feed", "coil-return"), ("coil-feed", "supply-return"),
    ("coil-return", "supply-return"), ("relay-out", "supply-return"),
    ("relay-other", "supply-return"), ("supply-hot", "fuse-out"), ("relay-out", "coil-feed"),
    ("supply-hot", "supply-return"), ("disconnect-out", "relay-common"),
]
CLAMPS = ["supply-hot", "relay-out", "coil-feed", "coil-return"]
METERS = {"high": (10e6, 100e-12), "middle": (1e6, 0.0), "low": (3e3, 0.0)}


def names(circuit):
    """Node of each terminal: series contacts that are not there are the disconnect's far side."""
    count = CIRCUITS[circuit][4]
    node = {p: p.replace("-", "_") for p in POINTS}
    node["supply-return"] = "0"
    last = "disconnect-out"
    for n, point in enumerate(("series1", "series2", "series3")):
        if n < count:
            last = point
        node[point] = node[last]
    return node


def elements(circuit, calling, armature, lifted, fault, size, ohms):
    """The netlist's lines: (kind, node, node, value); nodes by name."""
    (volts, hertz, source, transformer, count, throw, per_m, to_relay, to_coil, live, back,
     neighbour, rated, va, pf, ratio, inrush_pf) = CIRCUITS[circuit]
    at = names(circuit)
    parts = []

    def r(a, b, value):
        parts.append(("R", a, b, value))

    def c(a, b, value):
        if value > 0:
            parts.append(("C", a, b, value))

    making = (throw == "nc") if ohms else calling
    used, other = (CLOSED, BROKEN) if making else (BROKEN, CLOSED)
    if fault == "contact-stuck-open":
        used = BROKEN
    if fault == "contact-welded":
        used, other = CLOSED, BROKEN
    if fault == "contact-resistance":
        used = max(used, size)
    dead = ohms or fault == "supply-lost"
    upstream = source
    if fault == "supply-lost" and not transformer:
        upstream = BROKEN
    parts.append(("V", "emf", "0", 0 if dead else volts))
    parts.append(("V", "neighbour", "0", 0 if ohms else neighbour))
    r("emf", at["supply-hot"], upstream)
    r(at["supply-hot"], at["fuse-out"], BROKEN if fault == "fuse-blown" else CLOSED)
    opened = ohms or fault == "disconnect-open"
    r(at["fuse-out"], at["disconnect-out"], BROKEN if opened else CLOSED)
    before = at["disconnect-out"]
    for n in range(1, count + 1):
        here = at[f"series{n}"]
        r(before, here, BROKEN if fault == "series-open" and size == n else CLOSED)
        before = here
    r(before, at["relay-common"], per_m * to_relay)
    r(at["relay-common"], at["relay-out"], used)
    r(at["relay-common"], at["relay-other"], other)
    if fault == "output-leakage" and not ohms:
        c(at["relay-common"], at["relay-out"], size / (2 * math.pi * hertz * volts))
    feed = per_m * to_coil
    if fault in ("feed-broken", "feed-floating"):
        feed += BROKEN
    if fault == "feed-loose":
        feed += size
    r(at["relay-out"], at["coil-feed"], feed)
    if fault in ("coil-open", "feed-floating") or (lifted and not ohms):
        r(at["coil-feed"], at["coil-return"], BROKEN)
    else:
        seated = armature == "seated" and not ohms
        z = rated**2 / va / (1 if seated else ratio)
        factor = pf if seated else inrush_pf
        if fault == "coil-shorted":
            z *= size
        r(at["coil-feed"], "inside", z * factor)
        parts.append(("L", "inside", at["coil-return"],
                      z * math.sqrt(1 - factor**2) / (2 * math.pi * hertz)))
    extra = {"return-broken": BROKEN, "return-loose": size}.get(fault, 0)
    r(at["coil-return"], "0", per_m * (to_relay + to_coil) + extra)
    live, back = live * 1e-12, back * 1e-12
    for node, metres in ((before, to_relay / 2), (at["relay-common"], to_relay / 2),
                         (at["coil-return"], (to_relay + to_coil) / 2)):
        c(node, "neighbour", live * metres)
        c(node, "0", back * metres)
    if fault == "feed-floating":
        c(at["coil-feed"], "neighbour", size * (live + back) * to_coil)
        c(at["coil-feed"], "0", (1 - size) * (live + back) * to_coil)
    else:
        for node in (at["relay-out"], at["coil-feed"]):
            c(node, "neighbour", live * to_coil / 2)
            c(node, "0", back * to_coil / 2)
    return parts


def netlist(case, probes):
    """One deck: a copy of the circuit for every meter, so that each loads only its own."""
    circuit = case[0]
    hertz = CIRCUITS[circuit][1]
    at = names(circuit)
    lines, asks = ["* makeup control circuit"], []
    ohms = any(meter == "ohms" for *_, meter in probes)
    for copy, (first, second, meter) in enumerate(probes):
        def n(name):
            return "0" if name == "0" else f"{name}_{copy}"

        a, b = n(at[first]), n(at[second])
        clamp = None
        for count, (kind, x, y, value) in enumerate(elements(*case, ohms=meter == "ohms")):
            x, y = n(x), n(y)
            if kind == "V":
                value = f"dc 0 ac {value}"
            lines.append(f"{kind}{copy}_{count} {x} {y} {value}")
        if meter == "clamp":
            # The clamp is a source of no volts in the conductor leaving the terminal.
            clamp = f"Vclamp{copy}"
            for at_line in range(len(lines) - 1, 0, -1):
                words = lines[at_line].split()
                if words[0].startswith(("R", "C")) and leaves(words, copy, first, a, at):
                    words[1] = n("clamped")
                    lines[at_line] = " ".join(words)
            lines.append(f"{clamp} {a} {n('clamped')} dc 0 ac 0")
            asks.append(f"mag(i({clamp}))")
        elif meter == "ohms":
            lines += [f"Vohm{copy} {n('ohm')} {b} dc 1", f"Rohm{copy} {n('ohm')} {a} 1"]
            asks.append(f"abs(i(vohm{copy}))")
        else:
            resistance, farads = METERS[meter]
            lines.append(f"Rmeter{copy} {a} {b} {resistance}")
            if farads:
                lines.append(f"Cmeter{copy} {a} {b} {farads}")
            asks.append(f"mag(v({a})-v({b}))" if b != "0" else f"mag(v({a}))")
    lines += [".control", "set numdgt=12", "op" if ohms else f"ac lin 1 {hertz} {hertz}"]
    lines += [f"let m{k} = {ask}\nprint m{k}" for k, ask in enumerate(asks)]
    return "\n".join([*lines, "quit 0", ".endc", ".end", ""])


AFTER = {"supply-hot": ["fuse-out"], "relay-out": ["coil-feed"], "coil-feed": ["inside", "coil-return"],
         "coil-return": ["supply-return"]}


def leaves(words, copy, first, a, at):
    """Whether this line is the conductor from the clamped terminal toward the load."""
    ends = {"0" if p == "supply-return" else f"{at.get(p, p)}_{copy}" for p in AFTER[first]}
    # To the return there are the wire and the stray capacitance: the clamp is on the wire.
    return words[0][0] == "R" and words[1] == a and words[2] in ends


def solve(case, probes):
    deck = netlist(case, probes)
    out = subprocess.run(["ngspice", "-b"], input=deck, capture_output=True, text=True, check=True)
    found = dict(re.findall(r"^m(\d+) = ([-+.\deE]+)", out.stdout, re.M))
    assert len(found) == len(probes), deck + out.stdout + out.stderr
    return [float(found[str(k)]) for k in range(len(probes))]


def rows():
    dice = random.Random(1906)
    for circuit in CIRCUITS:
        for calling in (True, False):
            for fault, size in FAULTS:
                if fault == "series-open" and CIRCUITS[circuit][4] == 0:
                    continue
                case = (circuit, calling, dice.choice(("seated", "free")),
                        dice.random() < 0.2, fault, size)
                probes = [(*pair, dice.choice(list(METERS))) for pair in dice.sample(PAIRS, 3)]
                clamp = dice.choice(CLAMPS)
                probes.append((clamp, "supply-return", "clamp"))
                found = solve(case, probes)
                ohm = [(*pair, "ohms") for pair in dice.sample(PAIRS, 1)]
                found += [1 / i - 1 if i > 1 / LIMIT else None for i in solve(case, ohm)]
                for probe, value in zip(probes + ohm, found):
                    if value is not None and abs(value) < 1e-9:
                        value = 0.0
                    yield (circuit, int(calling), case[2], int(case[3]), fault, size, *probe, value)
