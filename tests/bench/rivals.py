"""The libraries in Python that the bench compares with, as one runner.

    python rivals.py FOLDER

FOLDER holds TASK.txt with one number a line. For each line `NAME PASSES` on
stdin it answers one line: nanoseconds for all the passes, then the answers.
"""

import sys
import time
from math import exp, log
from pathlib import Path

import CoolProp
import numpy as np
import psychrolib
from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAPropsSI
from scipy.optimize import brentq

psychrolib.SetUnitSystem(psychrolib.SI)
FOLDER = Path(sys.argv[1])


def read(task, columns):
    return np.loadtxt(FOLDER / f"{task}.txt").reshape(-1, columns)


# ---- wet bulb ------------------------------------------------------------------

AIR = read("wet-bulb", 3)
AIR_LIST = AIR.tolist()
DRY_K, HUMIDITY, PRESSURE = (AIR + [273.15, 0, 0]).T.copy()


def wet_bulb_psychrolib():
    return [psychrolib.GetTWetBulbFromRelHum(t, r, p) for t, r, p in AIR_LIST]


def wet_bulb_coolprop():
    """One call for the whole list: the loop over it runs in CoolProp."""
    return HAPropsSI("B", "T", DRY_K, "R", HUMIDITY, "P", PRESSURE) - 273.15


# ---- tower: the same Merkel model, its root by SciPy ----------------------------

TOWER = read("tower", 4).tolist()
WATER_HEAT = 4.1868  # kJ/(kg K), as in src/physics/heat.rs


def saturated_enthalpy(c, p):
    """Hyland & Wexler 1983 over water, Buck 1981, ASHRAE eq. 30; kJ/kg."""
    t = c + 273.15
    vapour = exp(
        -5.8002206e3 / t
        + 1.3914993
        + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8))
        + 6.5459673 * log(t)
    )
    hpa = p / 100
    vapour *= 1.0016 + 3.15e-6 * hpa - 0.074 / hpa
    w = 0.621945 * vapour / (p - vapour)
    return 1.006 * c + w * (2501 + 1.86 * c)


def merkel(leaving, wet, span, l_over_g, p):
    """KaV/L by the four-point Chebyshev rule; None at a pinch."""
    air = saturated_enthalpy(wet, p)
    total = 0.0
    for part in (0.1, 0.4, 0.6, 0.9):
        rise = part * span
        drive = saturated_enthalpy(leaving + rise, p) - air - l_over_g * WATER_HEAT * rise
        if drive <= 0.01:
            return None
        total += 1 / drive
    return WATER_HEAT * span / 4 * total


CONSTANT = merkel(265 / 9, 230 / 9, 50 / 9, 1.2, 101325) * 1.2**0.6


def leaving_water_scipy():
    answers = []
    for wet, span, l_over_g, p in TOWER:
        offered = CONSTANT * l_over_g**-0.6

        def spare(leaving):
            asked = merkel(leaving, wet, span, l_over_g, p)
            return -1e3 if asked is None else offered - asked

        answers.append(brentq(spare, wet, 60 - span))
    return answers


# ---- saturation ----------------------------------------------------------------

# The blends by their own equations of state, CoolProp's quicker way.
FLUIDS = ["R22", "R134a", "R404A", "R407C", "R410A"]
PRESSURES = np.loadtxt(FOLDER / "saturation.txt").reshape(len(FLUIDS), -1)
STATES = [CoolProp.AbstractState("HEOS", fluid) for fluid in FLUIDS]


def saturation_coolprop():
    """PropsSI, one call for all the pressures of a line."""
    answers = []
    for fluid, pressures in zip(FLUIDS, PRESSURES):
        lines = [PropsSI("T", "P", pressures, "Q", q, fluid) for q in (0.0, 1.0)]
        answers.extend(np.transpose(lines).ravel())
    return answers


def saturation_coolprop_low():
    """The low-level interface: a state made once for each refrigerant."""
    answers = []
    for state, pressures in zip(STATES, PRESSURES):
        for p in pressures:
            for q in (0.0, 1.0):
                state.update(CoolProp.PQ_INPUTS, p, q)
                answers.append(state.T())
    return answers


RUNNERS = {
    "wet-bulb/psychrolib": wet_bulb_psychrolib,
    "wet-bulb/coolprop": wet_bulb_coolprop,
    "tower/scipy": leaving_water_scipy,
    "saturation/coolprop": saturation_coolprop,
    "saturation/coolprop-low": saturation_coolprop_low,
}

for line in sys.stdin:
    name, passes = line.split()
    run = RUNNERS[name]
    begun = time.perf_counter_ns()
    for _ in range(int(passes)):
        answers = run()
    taken = time.perf_counter_ns() - begun
    print(taken, *map(float, answers), flush=True)
