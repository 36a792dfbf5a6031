"""The loop in trouble, by SciPy 1.17.1.

`condenser`: water warmed along a tube at one condensing temperature, solve_ivp
along the tube, brentq for the temperature that carries the heat; 29.444 C
entering, range 5.5556 K, approach 5.5556 K, water side as in column a, flow
fraction b; the answer is the condensing temperature in C.
`effectiveness`, `fill`: entering water c seconds after it was b C (answer), and
time until within d kelvin of where it settles (second). Column a is the wet
bulb. The fill integrates Merkel's equation by Gauss's rule of 24 points over saturated enthalpies
from CoolProp 8.0.0 at 101,325 Pa; its constant from 35/29.444/25.556 C at L/G
1.2, n 0.6.
`restart`: five equal machines of a kW on a loop at b C, trips falling by c K
from 47 C; the answer is the least spacing in s, found by brentq over solve_ivp
runs, the second the wait. Loop 3 m3, 11.36 L/s, wet bulb 24 C, effectiveness
0.55, margin 2 K.
"""

import math

import numpy as np
from CoolProp.HumidAirProp import HAPropsSI
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

HEADER = ["case", "a", "b", "c", "d", "answer", "second"]
TOLERANCE = 1e-5

CP = 4186.8
PER_VOLUME = 999.0 * CP
WATER, FLOW, HEAT = 3.0, 0.01136, 263.76e3
RANGE = HEAT / (FLOW * PER_VOLUME)
TURNOVER = WATER / FLOW

NODES, WEIGHTS = np.polynomial.legendre.leggauss(24)
GRID = np.linspace(0.0, 70.0, 141)
SATURATED = CubicSpline(
    GRID, [HAPropsSI("H", "T", t + 273.15, "R", 1.0, "P", 101325) / 1000 for t in GRID]
)


def merkel(hot, cold, wet, ratio):
    """Merkel number by integration; infinite when pinched."""
    inlet = SATURATED(wet)
    ts = np.linspace(cold, hot, 50)
    drive = SATURATED(ts) - inlet - ratio * CP / 1000 * (ts - cold)
    if drive.min() <= 0.01:
        return math.inf
    at = 0.5 * (hot + cold) + 0.5 * (hot - cold) * NODES
    drive = SATURATED(at) - inlet - ratio * CP / 1000 * (at - cold)
    return float(0.5 * (hot - cold) * CP / 1000 * np.sum(WEIGHTS / drive))


OFFERED = merkel(35.0, 29.444, 25.556, 1.2)


def fill(hot, wet):
    """Water leaving the fill, C."""
    def spare(cold):
        return min(1e6, merkel(hot, cold, wet, 1.2)) - OFFERED

    return brentq(spare, wet + 0.01, hot - 1e-6, xtol=1e-11)


def condensing(share, part):
    """Condensing temperature, C."""
    entering, span = 29.444, 5.5556
    ua = math.log(2.0)
    now = ua / (share * part**-0.8 + 1 - share)

    def leaving(at):
        along = solve_ivp(lambda _, t: now / part * (at - t), (0, 1), [entering], rtol=1e-11, atol=1e-11)
        return float(along.y[0][-1])

    return brentq(lambda at: leaving(at) - entering - span / part, entering + span / part, 1000.0)


def relax(leaving, wet, start, elapsed, band):
    """Water after a time, and the time to within a band of settling."""
    def rate(_, t):
        return [(leaving(t[0] + RANGE) - t[0]) / TURNOVER]

    settles = brentq(lambda t: rate(0, [t])[0], wet + 0.01, 60.0, xtol=1e-11)

    def near(_, t):
        return abs(t[0] - settles) - band

    near.terminal = False
    end = elapsed + 12 * TURNOVER
    run = solve_ivp(
        rate, (0, end), [start], "DOP853", rtol=1e-10, atol=1e-10, events=near, t_eval=[0, elapsed]
    )
    crossings = run.t_events[0]
    return float(run.y[0][1]), float(crossings[0]) if len(crossings) else 0.0


def restart(kilowatts, start, step):
    """Least spacing and wait, s."""
    wet, part = 24.0, 0.55
    limits = [47.0 - 2.0 - step * i for i in range(5)]
    limits = [min(limits[: i + 1]) for i in range(5)]

    def advance(t, machines, for_s):
        warms = machines * kilowatts * 1e3 / (FLOW * PER_VOLUME)
        if for_s <= 0:
            return t
        run = solve_ivp(
            lambda _, x: [((x[0] + warms) - part * (x[0] + warms - wet) - x[0]) / TURNOVER],
            (0, for_s), [t], "DOP853", rtol=1e-11, atol=1e-11,
        )
        return float(run.y[0][-1])

    wait = 0.0
    if start > limits[0]:
        wait = brentq(lambda s: advance(start, 0, s) - limits[0], 0, 20 * TURNOVER, xtol=1e-8)

    def excess(spacing):
        t, worst = min(start, limits[0]), -math.inf
        for i in range(1, 5):
            t = advance(t, i, spacing)
            worst = max(worst, t - limits[i])
        return worst

    settles = wet + 5 * kilowatts * 1e3 / (FLOW * PER_VOLUME) * (1 - part) / part
    if settles >= limits[-1]:
        return None, None
    if excess(0) <= 0:
        return 0.0, wait
    return brentq(excess, 0, 20 * TURNOVER, xtol=1e-8), wait


def rows():
    for share in (0.0, 0.3, 0.5, 0.8, 1.0):
        for part in (1.5, 1.0, 0.75, 0.5, 0.3, 0.2, 0.12):
            yield "condenser", share, part, None, None, condensing(share, part), None
    for wet in (10.0, 18.0, 25.556):
        for start in (wet + 1.0, 35.0, 45.0):
            for elapsed, band in ((60.0, 5.0), (300.0, 1.0), (900.0, 0.5), (3600.0, 0.1)):
                straight = relax(lambda hot, w=wet: hot - 0.55 * (hot - w), wet, start, elapsed, band)
                yield "effectiveness", wet, start, elapsed, band, *straight
                yield "fill", wet, start, elapsed, band, *relax(
                    lambda hot, w=wet: fill(hot, w), wet, start, elapsed, band
                )
    for kilowatts in (40.0, 52.0, 80.0):
        for start in (38.0, 44.0, 47.0, 55.0):
            for step in (0.0, 1.0, 2.5):
                yield "restart", kilowatts, start, step, None, *restart(kilowatts, start, step)
