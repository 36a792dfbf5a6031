"""Make every reference grid again and compare it with the committed one.

    python tests/reference/reproduce.py            fails where a figure differs
    python tests/reference/reproduce.py --write    writes the grids anew
    ... [NAME ...]                                 only these grids
    ... --again                                    those too that reproduced
                                                   here before, unchanged since

A grid is a module beside this one with a docstring that names the library and
the method, `HEADER` (column names, units in them) and `rows()`, which yields
one sequence of numbers or plain words per row. Its figures are committed as
NAME.csv, nine digits each. `TOLERANCE`, optional, is the part by which a
figure may differ when it is made again on another machine (1e-6 unless said).
"""

import csv
import hashlib
import importlib
import json
import math
import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))


def names():
    """Every grid: each module here, but not this one nor helpers (_NAME)."""
    return sorted(
        p.stem for p in HERE.glob("*.py") if p.stem != "reproduce" and not p.stem.startswith("_")
    )


def said(value):
    """A figure as it is committed; the empty field for no value."""
    if value is None:
        return ""
    return f"{value:.9g}" if isinstance(value, float) else str(value)


def differs(old, new, tolerance):
    """Whether a committed field and a new one say different things."""
    if old == new:
        return False
    try:
        a, b = float(old), float(new)
    except ValueError:
        return True
    return not math.isclose(a, b, rel_tol=tolerance, abs_tol=1e-12)


def mark(name):
    """What a grid depends on: its script, its figures, the libraries' versions."""
    digest = hashlib.sha256()
    files = [HERE / f"{name}.py", HERE / f"{name}.csv", HERE / "requirements.txt"]
    for file in [*files, *sorted(HERE.glob("_*.py")), Path(__file__)]:
        digest.update(file.read_bytes() if file.exists() else b"")
    return digest.hexdigest()


# Beside the libraries: a machine that has neither makes every grid again.
SEEN = Path(sys.prefix) / "reproduced.json"


def main():
    words = sys.argv[1:]
    write = "--write" in words
    seen = json.loads(SEEN.read_text()) if SEEN.exists() else {}
    chosen = [w for w in words if not w.startswith("-")] or names()
    bad = 0
    for name in chosen:
        if not write and "--again" not in words and seen.get(name) == mark(name):
            print(f"{name}: reproduced here before, unchanged since")
            continue
        grid = importlib.import_module(name)
        rows = [[said(v) for v in row] for row in grid.rows()]
        file = HERE / f"{name}.csv"
        if write:
            with file.open("w", newline="") as out:
                csv.writer(out, lineterminator="\n").writerows([grid.HEADER, *rows])
            print(f"{name}: {len(rows)} rows written")
            continue
        with file.open(newline="") as old:
            committed = list(csv.reader(old))
        tolerance = getattr(grid, "TOLERANCE", 1e-6)
        faults = []
        if committed[:1] != [list(grid.HEADER)]:
            faults.append(f"the header is {committed[:1]}, now {grid.HEADER}")
        if len(committed) - 1 != len(rows):
            faults.append(f"{len(committed) - 1} rows are committed, now {len(rows)}")
        for number, (old_row, new_row) in enumerate(zip(committed[1:], rows), 2):
            for column, a, b in zip(grid.HEADER, old_row, new_row):
                if differs(a, b, tolerance):
                    faults.append(f"line {number}, {column}: committed {a}, now {b}")
        print(f"{name}: {len(rows)} rows, {len(faults)} that no longer reproduce")
        for fault in faults[:20]:
            print(f"  {fault}")
        bad += len(faults)
        if not faults:
            seen[name] = mark(name)
            SEEN.write_text(json.dumps(seen))
    if bad:
        sys.exit(f"{bad} committed figures no longer reproduce")


main()
