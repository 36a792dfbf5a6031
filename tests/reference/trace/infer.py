"""The trace's evidence sets, answered by pgmpy's exact inference.

    python infer.py [--write] [--against PROGRAM]

cases.json holds flat models and evidence sets; tests/trace/outside.rs writes
it. For each set a Bayesian network is built here from the model's description
(src/trace/flat.rs), not from Coldsump's arithmetic: the hypothesis, the level
on arrival, what each fault does in each epoch, what it does for each check,
and the check's answer. Variable elimination gives the hypothesis, and from it
the probability of each mode. --write keeps the figures, else they are compared
with the kept ones; --against runs Coldsump's timing of the same sets beside.
"""

import csv
import itertools
import json
import logging
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
from pgmpy.factors.discrete import TabularCPD
from pgmpy.inference import VariableElimination
from pgmpy.models import DiscreteBayesianNetwork

logging.getLogger("pgmpy").setLevel(logging.ERROR)
HERE = Path(__file__).parent
TOLERANCE = 1e-10
HEADER = ["case", "mode", "probability"]

# What a fault does in an epoch: not there; acts throughout; comes and goes,
# mostly acting; the same, mostly quiet; put right.
ABSENT, ALWAYS, ACTING, QUIET, GONE = range(5)


def hypotheses(count):
    """Sets of up to three of the modes, each steady (0) or not (1)."""
    for size in range(4):
        for places in itertools.combinations(range(count), size):
            for manners in itertools.product((0, 1), repeat=size):
                yield dict(zip(places, manners))


def prior(model, modes, faults, nothing):
    if not faults:
        return model["nothing"] if nothing else 0.0
    own = min(sum(modes[m]["own"] for m in faults), len(faults) - 1)
    weight = model["company-own"] ** own * model["company"] ** (len(faults) - 1 - own)
    total = sum(sum(m["prior"]) for m in modes)
    for mode, manner in faults.items():
        weight *= modes[mode]["prior"][manner] / total
    return weight


def network(model, case):
    names = case["modes"]
    place = {m["mode"]: i for i, m in enumerate(model["modes"])}
    modes = [model["modes"][place[n]] for n in names]
    checks = {c["check"]: c for c in model["checks"]}
    world = list(hypotheses(len(modes)))
    weights = np.array([prior(model, modes, f, case["nothing"]) for f in world])
    net = DiscreteBayesianNetwork()
    tables = []

    def add(name, table, parents=()):
        net.add_node(name)
        for parent in parents:
            net.add_edge(parent[0], name)
        tables.append(
            TabularCPD(name, len(table), table, [p[0] for p in parents], [p[1] for p in parents])
            if parents
            else TabularCPD(name, len(table), np.asarray(table).reshape(-1, 1))
        )

    h = ("H", len(world))
    add("H", weights / weights.sum())
    full = np.array([
        model["stays-full"] * np.prod([modes[m]["stays"][s] for m, s in f.items()]) for f in world
    ])
    add("L", np.array([full, 1 - full]), [h])

    epochs, evidence, last = {}, {}, {}
    for number, said in enumerate(case["evidence"]):
        done = frozenset(c["mode"] for c in case["corrections"] if c["after"] <= number)
        epoch = (said["stage"], done)
        if epoch not in epochs:
            epochs[epoch] = len(epochs)
            acts = model["acts"][said["stage"]]
            for m, name in enumerate(names):
                table = np.zeros((5, len(world)))
                for column, faults in enumerate(world):
                    if m not in faults:
                        table[ABSENT, column] = 1
                    elif name in done:
                        table[ALWAYS, column] = model["residue"]
                        table[GONE, column] = 1 - model["residue"]
                    elif faults[m] == 0:
                        table[ALWAYS, column] = 1
                    else:
                        table[ACTING, column], table[QUIET, column] = acts, 1 - acts
                add(f"C{epochs[epoch]}_{m}", table, [h])
        check, flicker = checks[said["check"]], model["flicker"]
        # For one check: nothing, acting, quiet.
        for m in range(len(modes)):
            add(f"F{number}_{m}", np.array([
                [1, 0, 0, 0, 1],
                [0, 1, 1 - flicker, flicker, 0],
                [0, 0, flicker, 1 - flicker, 0],
            ]), [(f"C{epochs[epoch]}_{m}", 5)])
        effects = len(check["full"])
        strongest = np.zeros((2 * effects, 3 ** len(modes)))
        for column, does in enumerate(itertools.product(range(3), repeat=len(modes))):
            effect = drains = 0
            for m, d in enumerate(does):
                acting, quiet = check["effects"][place[names[m]]]
                effect = max(effect, (0, acting, quiet)[d])
                drains |= d == 1 and modes[m]["lowers"]
            strongest[2 * effect + drains, column] = 1
        add(f"E{number}", strongest, [(f"F{number}_{m}", 3) for m in range(len(modes))])
        e = (f"E{number}", 2 * effects)
        now = np.zeros((2, 2 * effects * 2))
        for column, (ed, was) in enumerate(itertools.product(range(2 * effects), (0, 1))):
            low = was if check["arrival"] else model["low-now"][said["stage"]][was][ed % 2]
            now[:, column] = 1 - low, low
        add(f"W{number}", now, [e, ("L", 2)])
        rows = [
            check["low" if low else "full"][ed // 2]
            for ed, low in itertools.product(range(2 * effects), (0, 1))
        ]
        fresh = np.array(rows)[:, : check["answers"]].T
        parents = [e, (f"W{number}", 2)]
        before = last.get((said["check"], epoch))
        if before is not None:
            copied, n = model["copied"], check["answers"]
            table = np.zeros((n, fresh.shape[1] * n))
            for column, a in itertools.product(range(fresh.shape[1]), range(n)):
                table[:, column * n + a] = (1 - copied) * fresh[:, column]
                table[a, column * n + a] += copied
            fresh, parents = table, [*parents, (before, n)]
        add(f"A{number}", fresh, parents)
        last[said["check"], epoch] = f"A{number}"
        evidence[f"A{number}"] = said["answer"]
    net.add_cpds(*tables)
    return net, evidence, world


def infer(model, case):
    """Probability of each mode, and the seconds that the inference took."""
    net, evidence, world = network(model, case)
    engine = VariableElimination(net)
    # Each check's own variables first, then each epoch's, then the level: by
    # its own choice pgmpy wants to hold a table of 28 GB.
    hidden = [n for n in net.nodes if n != "H" and n not in evidence]
    order = sorted(hidden, key=lambda n: ("WEFCL".index(n[0]) if n[0] in "CL" else 0,
                                          int(n[1:].split("_")[0] or 0) if n != "L" else 0,
                                          "WEFCL".index(n[0])))
    begun = time.perf_counter()
    posterior = engine.query(
        ["H"], evidence=evidence, elimination_order=order, show_progress=False
    ).values
    took = time.perf_counter() - begun
    return [
        sum(p for p, faults in zip(posterior, world) if m in faults)
        for m in range(len(case["modes"]))
    ], took


def main():
    words = sys.argv[1:]
    told = json.loads((HERE / "cases.json").read_text())
    rows, times = [], []
    for number, case in enumerate(told["cases"]):
        found, took = infer(told["plants"][case["plant"]], case)
        times.append(took)
        rows += [(number, mode, float(p)) for mode, p in zip(case["modes"], found)]
    file = HERE / "posterior.csv"
    if "--write" in words:
        with file.open("w", newline="") as out:
            lines = [(n, m, f"{p:.15g}") for n, m, p in rows]
            csv.writer(out, lineterminator="\n").writerows([HEADER, *lines])
        print(f"trace: {len(told['cases'])} evidence sets written")
    else:
        with file.open(newline="") as kept:
            old = list(csv.reader(kept))[1:]
        bad = len(old) != len(rows) or any(
            (a[0], a[1]) != (str(b[0]), b[1]) or abs(float(a[2]) - b[2]) > TOLERANCE
            for a, b in zip(old, rows)
        )
        print(f"trace: {len(told['cases'])} evidence sets, {'NOT as kept' if bad else 'as kept'}")
        if bad:
            sys.exit(1)
    if "--against" in words:
        program = words[words.index("--against") + 1]
        out = subprocess.run([program, "same", HERE / "cases.json"], check=True,
                             capture_output=True, text=True).stdout
        ours, theirs = float(out), 1e3 * sorted(times)[len(times) // 2]
        print(f"one evidence set, median: pgmpy {theirs:.1f} ms (its query alone), Coldsump "
              f"{1e3 * ours:.1f} us (all of it): {theirs / ours:.0f} times")


main()
