"""The fill line: friction, valves, whole lines, and water itself.

`friction`: Darcy friction factor, fluids 1.3.1 (Clamond's solution of Colebrook
and White), outside the stretch from Re 2000 to 4000 where no method is right.
`line`: flow of a fill line, fluids' friction factor and SciPy's brentq.
`valve`: Kv for a duty by fluids' IEC 60534-2-1 sizing, without reducers.
`water`: density, viscosity, vapour pressure by CoolProp 8.0.0 (IAPWS-95 and
IAPWS 2008), in columns a, b, c.
"""

import math

from CoolProp.CoolProp import PropsSI
from fluids.control_valve import size_control_valve_l
from fluids.friction import friction_factor
from scipy.optimize import brentq

HEADER = ["case", "a", "b", "c", "d", "e", "f", "g", "answer", "choked"]

GRAVITY = 9.80665
DENSITY, VISCOSITY, REFERENCE = 999.0, 1.14e-3, 999.10329


def line(mains, lift, bore, length, rough, strainer, solenoid):
    """Flow in m3/s: pressures Pa, lengths m, Kv m3/h; K 8.8, 50 kPa fixed."""
    area = math.pi * bore**2 / 4

    def spare(flow):
        v = flow / area
        head = DENSITY * v * v / 2
        f = friction_factor(DENSITY * v * bore / VISCOSITY, rough / bore)
        valves = sum((flow * 3600 / kv) ** 2 for kv in (strainer, solenoid))
        lost = (f * length / bore + 8.8) * head + valves * 1e5 * DENSITY / REFERENCE
        return mains - DENSITY * GRAVITY * lift - 50e3 - lost

    if spare(1e-12) <= 0:
        return None
    return brentq(spare, 1e-12, 1.0, xtol=1e-16, rtol=1e-13)


def rows():
    for re in (1.0, 64.0, 500.0, 1500.0, 1999.0, 4000.0, 5000.0, 1e4, 3e4, 77800.0, 3e5, 1e6, 1e7, 1e8):
        for rough in (0.0, 1e-6, 1e-4, 1e-3, 0.01, 0.05):
            yield "friction", re, rough, *[None] * 5, friction_factor(re, rough), None
    for mains in (120e3, 200e3, 350e3, 600e3):
        for lift in (-3.0, 0.0, 6.0, 20.0):
            for bore, rough in ((0.0157, 1.5e-6), (0.0262, 1.5e-6), (0.0262, 4.5e-4), (0.0525, 4.5e-5)):
                for length in (2.0, 30.0, 200.0):
                    for strainer in (0.5, 2.0, 14.0):
                        flow = line(mains, lift, bore, length, rough, strainer, 9.5)
                        if flow is not None:
                            yield ("line", mains, lift, bore, length, rough, strainer, 9.5, flow, None)
    for inlet in (300e3, 500e3, 700e3, 1000e3):
        for outlet in (5e3, 101325.0, 250e3, 299e3):
            for recovery in (0.6, 0.75, 0.9):
                for flow in (1e-4, 2e-3, 0.1):
                    sized = size_control_valve_l(
                        rho=998.0, Psat=2.4e3, Pc=22.064e6, mu=1e-3, P1=inlet, P2=outlet,
                        Q=flow, FL=recovery, allow_laminar=False, full_output=True,
                    )
                    kv, choked = sized["Kv"], sized["choked"]
                    yield "valve", inlet, outlet, recovery, flow, *[None] * 3, kv, int(choked)
    for celsius in (0.5, 5, 10, 15, 20, 25, 30, 40, 50, 60):
        state = ("T", celsius + 273.15, "P", 101325, "Water")
        yield (
            "water", celsius, PropsSI("D", *state), PropsSI("V", *state),
            PropsSI("P", "T", celsius + 273.15, "Q", 0, "Water"), *[None] * 5,
        )
