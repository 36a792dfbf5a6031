"""Poppe's mass and energy balance along the fill of a cooling tower.

The equations of Poppe and Rogener (1991) as restated by Kloppers and Kroger
(2005, Int. J. Heat Mass Transfer 48:765), unsaturated and supersaturated,
integrated by scipy's solve_ivp (LSODA) with all three unknowns (humidity,
enthalpy, Merkel number), closed on the humidity of the leaving air by brentq.
Properties: CoolProp 8.0.0 real moist air (HAPropsSI) and water (IAPWS-95),
taken through cubic splines every 0.25 K. Temperatures in Celsius.
"""

import math

import numpy as np
import psychrolib
from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAPropsSI
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

psychrolib.SetUnitSystem(psychrolib.SI)

HEADER = [
    "entering_c",
    "leaving_c",
    "dry_bulb_c",
    "wet_bulb_c",
    "water_air_ratio",
    "pressure_pa",
    "merkel_number",
    "evaporated",
    "leaving_air_c",
    "leaving_humidity_ratio",
    "supersaturated",
]
TOLERANCE = 1e-5

ZERO = 273.15
STEPS = np.arange(-20.0, 66.0, 0.25)
LIQUID_ZERO = PropsSI("H", "T", 273.16, "Q", 0, "Water")


class Moist:
    """Saturated air and water at one pressure."""

    def __init__(self, pressure):
        self.pressure = pressure

        def of(what):
            return [HAPropsSI(what, "T", t + ZERO, "R", 1, "P", pressure) for t in STEPS]

        # Split at the ice point, where the line has a kink.
        ice, wet = STEPS < 0, STEPS >= 0
        w, h = np.array(of("W")), np.array(of("H"))
        self.w_parts = [CubicSpline(STEPS[s], w[s]) for s in (ice, wet)]
        self.h_parts = [CubicSpline(STEPS[s], h[s]) for s in (ice, wet)]

    def w(self, t):
        return float(self.w_parts[t >= 0](t))

    def h(self, t):
        return float(self.h_parts[t >= 0](t))


warm = STEPS[STEPS > 0]
LIQUID = CubicSpline(
    warm, [PropsSI("H", "T", t + ZERO, "Q", 0, "Water") - LIQUID_ZERO for t in warm]
)
VAPOUR = CubicSpline(
    warm, [PropsSI("H", "T", t + ZERO, "Q", 1, "Water") - LIQUID_ZERO for t in warm]
)


def fog_temperature(moist, enthalpy, ratio):
    """Temperature of air with droplets; None when it holds its water as vapour."""
    coldest = float(STEPS[0])
    if ratio <= moist.w(coldest):
        return None
    dew = brentq(lambda t: moist.w(t) - ratio, coldest, 65.0, xtol=1e-10)
    if enthalpy >= moist.h(dew):
        return None

    def excess(t):
        ws = moist.w(t)
        return moist.h(t) + (ratio - ws) * float(LIQUID(t)) - enthalpy

    return brentq(excess, coldest, dew, xtol=1e-10)


def poppe(moist, hot, cold, dry, wet, l_over_g):
    """Merkel number, evaporated fraction, leaving temperature, humidity, fog."""
    state = ("T", dry + ZERO, "B", wet + ZERO, "P", moist.pressure)
    w_in, h_in = HAPropsSI("W", *state), HAPropsSI("H", *state)

    def slopes(tw, y, w_out):
        w, h, _ = y
        tw = float(tw)
        cpw, liquid, vapour = float(LIQUID(tw, 1)), float(LIQUID(tw)), float(VAPOUR(tw))
        wsw, hsw = moist.w(tw), moist.h(tw)
        fog = fog_temperature(moist, h, w)
        wa = w if fog is None else moist.w(fog)
        x = (wsw + 0.622) / (wa + 0.622)
        lewis = 0.865 ** (2 / 3) * ((x - 1) / math.log(x) if abs(x - 1) > 1e-9 else 1)
        drive = (
            hsw
            - h
            + (lewis - 1) * (hsw - h - (wsw - wa) * vapour + (w - wa) * liquid)
            + (w - wsw) * liquid
        )
        flow = l_over_g - (w_out - w)
        dw = cpw * flow * (wsw - wa) / drive
        return [dw, cpw * flow + liquid * dw, cpw / drive]

    def climb(w_out):
        got = solve_ivp(
            slopes, (cold, hot), [w_in, h_in, 0.0], args=(w_out,), method="LSODA",
            rtol=1e-8, atol=[1e-12, 1e-4, 1e-10],
        )
        assert got.success, got.message
        return got.y[:, -1]

    # The leaving humidity reacts little to the guess: a few rounds close it.
    w_out = w_in
    for _ in range(30):
        before = w_out
        w_out, h_out, merkel = climb(before)
        if abs(w_out - before) < 1e-11:
            break
    fog = fog_temperature(moist, h_out, w_out)
    leaving = (
        HAPropsSI("T", "H", h_out, "W", w_out, "P", moist.pressure) - ZERO if fog is None else fog
    )
    return merkel, (w_out - w_in) / l_over_g, leaving, w_out, fog is not None


def c(fahrenheit):
    return (fahrenheit - 32) / 1.8


# Entering water, leaving water, dry bulb, wet bulb in F, L/G: usual days, humid,
# desert, mild, cold and freezing ones.
CASES = [
    (95, 85, 95, 78, 1.0),
    (95, 85, 95, 78, 1.2),
    (95, 85, 95, 78, 1.5),
    (95, 85, 85, 78, 1.2),
    (95, 85, 78, 77.9, 1.2),
    (95, 85, 110, 70, 1.2),
    (85, 75, 75, 65, 1.2),
    (75, 65, 55, 50, 1.2),
    (60, 50, 35, 32.5, 1.2),
    (105, 85, 95, 78, 0.97),
    (105, 85, 78.5, 78, 0.97),
    (104, 89, 90, 81, 1.6492),
    (120, 85, 85, 75, 0.93006),
    (90, 80, 115, 72, 0.8),
    (100, 95, 80, 79.5, 2.0),
    (110, 80, 70, 65, 0.7),
    (80, 60, 45, 44, 0.8),
    (70, 50, 20, 18, 0.8),
    (60, 45, 5, 4, 1.0),
    (70, 60, 33, 32.9, 1.4),
    (87, 84, 90, 80, 1.3),
    (130, 90, 95, 75, 1.0),
]


def rows():
    for altitude in (0, 1609.344, 3000):
        pressure = float(psychrolib.GetStandardAtmPressure(altitude))
        moist = Moist(pressure)
        for hot, cold, dry, wet, l_over_g in CASES:
            case = (*map(c, (hot, cold, dry, wet)), l_over_g)
            merkel, evaporated, leaving, humidity, fog = poppe(moist, *case)
            yield (
                *case,
                pressure,
                float(merkel),
                float(evaporated),
                float(leaving),
                float(humidity),
                "yes" if fog else "no",
            )
