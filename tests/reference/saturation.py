"""Saturation pressure of water, over ice and over liquid, and the atmosphere.

By CoolProp 8.0.0: over liquid IAPWS-95 from the triple point up, over ice the
sublimation curve of its humid-air module (IAPWS 2006 ice and 1995 vapour). The
standard atmosphere by its definition (ISO 2533:1975: 288.15 K, 6.5 K/km,
101325 Pa, 9.80665 m/s2, 287.05287 J/(kg K)), geopotential altitude.
"""

from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAProps_Aux

HEADER = ["what", "at", "pressure_pa"]


def rows():
    for celsius in range(-40, 0):
        yield "ice", celsius, HAProps_Aux("p_ws", celsius + 273.15, 101.325, 0.0)[0]
    for celsius in (0.01, *range(1, 91)):
        yield "liquid", celsius, PropsSI("P", "T", celsius + 273.15, "Q", 0, "Water")
    for altitude in range(-500, 5001, 250):
        ratio = 1 - 0.0065 * altitude / 288.15
        yield "atmosphere", altitude, 101325 * ratio ** (9.80665 / (287.05287 * 0.0065))
