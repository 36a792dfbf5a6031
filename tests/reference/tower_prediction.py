"""A tower off its design point.

Design 95/85/78 F at L/G 1.2 and a warm-climate 40/32/27 C at L/G 1.4, exponent
0.6. The leaving water at which the Merkel integral equals C (L/G)^-0.6, by
scipy's brentq over quad, with the saturated enthalpy of CoolProp 8.0.0 through
a cubic spline every 0.25 K. Heat, water and air are parts of design, each moved
alone and together; the range follows heat over water.
"""

import numpy as np
import psychrolib
from CoolProp.HumidAirProp import HAPropsSI
from scipy.integrate import quad
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

psychrolib.SetUnitSystem(psychrolib.SI)

HEADER = [
    "design_entering_c",
    "design_leaving_c",
    "design_wet_bulb_c",
    "design_water_air_ratio",
    "pressure_pa",
    "wet_bulb_c",
    "heat",
    "water",
    "air",
    "leaving_c",
    "entering_c",
]
TOLERANCE = 1e-5

SPECIFIC_HEAT = 4186.8
EXPONENT = 0.6
DESIGNS = [
    (35.0, (85 - 32) / 1.8, (78 - 32) / 1.8, 1.2),
    (40.0, 32.0, 27.0, 1.4),
]


def rows():
    steps = np.arange(0.0, 70.0, 0.25)
    for altitude in (0, 1609.344):
        pressure = float(psychrolib.GetStandardAtmPressure(altitude))
        line = [HAPropsSI("H", "T", t + 273.15, "R", 1, "P", pressure) for t in steps]
        saturated = CubicSpline(steps, line)

        def merkel(leaving, span, wet, l_over_g):
            air = float(saturated(wet))

            def drive(t):
                return float(saturated(t)) - air - l_over_g * SPECIFIC_HEAT * (t - leaving)

            if min(drive(leaving + span * n / 20) for n in range(21)) <= 100:
                return None
            return quad(lambda t: SPECIFIC_HEAT / drive(t), leaving, leaving + span, epsrel=1e-9)[0]

        for design in DESIGNS:
            hot, cold, wet_design, ratio = design
            constant = merkel(cold, hot - cold, wet_design, ratio) * ratio**EXPONENT

            def leaving(wet, span, l_over_g):
                offered = constant * l_over_g**-EXPONENT

                def lack(t):
                    asked = merkel(t, span, wet, l_over_g)
                    return 1e3 if asked is None else asked - offered

                return brentq(lack, wet + 0.01, 68.0 - span, xtol=1e-9)

            for wet in (8, 14, 20, 24, 27):
                for heat in (0.4, 0.7, 1.0, 1.3):
                    for water, air in (
                        (1.0, 1.0),
                        (0.8, 1.0),
                        (0.6, 1.0),
                        (1.2, 1.0),
                        (1.0, 0.8),
                        (1.0, 0.6),
                        (0.8, 0.8),
                    ):
                        span = (hot - cold) * heat / water
                        out = leaving(wet, span, ratio * water / air)
                        if out + span <= 58:
                            yield (
                                *design, pressure, wet, heat, water, air,
                                float(out), float(out + span),
                            )
