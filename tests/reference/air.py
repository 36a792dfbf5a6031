"""Moist air at dry bulb, relative humidity and altitude.

Wet bulb, humidity ratio, enthalpy, dew point and moist-air density by CoolProp
8.0.0 (HAPropsSI, real moist air after Herrmann, Kretzschmar and Gatley 2009),
and wet bulb by PsychroLib 2.5.0 (ASHRAE Fundamentals 2017). Pressure is the
standard atmosphere of ASHRAE Fundamentals 2017 chapter 1.
"""

import psychrolib
from CoolProp.HumidAirProp import HAPropsSI

psychrolib.SetUnitSystem(psychrolib.SI)

HEADER = [
    "dry_bulb_c",
    "humidity",
    "altitude_m",
    "pressure_pa",
    "wet_bulb_coolprop_c",
    "wet_bulb_psychrolib_c",
    "humidity_ratio",
    "enthalpy_j_kg",
    "dew_point_c",
    "dry_air_density_kg_m3",
]


# Coarse over the whole range; fine where the wick is about to freeze.
COARSE = (5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 100)
FINE = range(5, 100, 2)


def rows():
    for altitude in (0, 500, 1500, 3000):
        pressure = psychrolib.GetStandardAtmPressure(altitude)
        coarse = [(dry, percent) for dry in range(0, 46, 5) for percent in COARSE]
        fine = [(dry, percent) for dry in range(1, 15) for percent in FINE]
        for dry, percent in coarse + [at for at in fine if at not in coarse]:
            humidity = percent / 100
            cold = HAPropsSI("B", "T", dry + 273.15, "R", humidity, "P", pressure)
            if (dry, percent) in coarse or abs(cold - 273.15) < 1:
                state = ("T", dry + 273.15, "R", humidity, "P", pressure)
                yield (
                    dry,
                    humidity,
                    altitude,
                    float(pressure),
                    HAPropsSI("B", *state) - 273.15,
                    float(psychrolib.GetTWetBulbFromRelHum(dry, humidity, pressure)),
                    HAPropsSI("W", *state),
                    HAPropsSI("H", *state),
                    HAPropsSI("D", *state) - 273.15,
                    1 / HAPropsSI("V", *state),
                )
