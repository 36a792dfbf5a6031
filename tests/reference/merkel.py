"""Merkel numbers of tower duties.

KaV/L = integral of cp dT / (hs(T) - ha(T)) by scipy's quad, and by the
four-point rule at 0.1, 0.4, 0.6 and 0.9 of the range, over the enthalpy of
saturated real moist air by CoolProp 8.0.0 (HAPropsSI, Herrmann, Kretzschmar
and Gatley 2009), at sea level, 1,609 m and 3,000 m. Duties that ask for a
KaV/L above 5 are left out: no tower has so much fill.
"""

import psychrolib
from CoolProp.HumidAirProp import HAPropsSI
from scipy.integrate import quad

psychrolib.SetUnitSystem(psychrolib.SI)

HEADER = [
    "entering_c",
    "leaving_c",
    "wet_bulb_c",
    "water_air_ratio",
    "pressure_pa",
    "least_drive_kj_kg",
    "integral",
    "four_point",
]

# 1 Btu/(lb F), as in the rating of towers.
SPECIFIC_HEAT = 4186.8


def saturated(celsius, pressure):
    return HAPropsSI("H", "T", celsius + 273.15, "R", 1, "P", pressure)


def rows():
    for altitude in (0, 1609.344, 3000):
        pressure = float(psychrolib.GetStandardAtmPressure(altitude))
        for wet in (2, 10, 18, 22, 26, 30):
            air = saturated(wet, pressure)
            for approach in (2, 4, 7):
                leaving = wet + approach
                for span in (3, 5.5, 8, 14):
                    for l_over_g in (0.6, 1.0, 1.4, 2.0):

                        def drive(t):
                            heat = air + l_over_g * SPECIFIC_HEAT * (t - leaving)
                            return saturated(t, pressure) - heat

                        least = min(drive(leaving + span * n / 40) for n in range(41))
                        if least < 500:
                            continue
                        exact, _ = quad(
                            lambda t: SPECIFIC_HEAT / drive(t),
                            leaving,
                            leaving + span,
                            epsabs=1e-9,
                            epsrel=1e-9,
                        )
                        if exact > 5:
                            continue
                        nodes = (leaving + span * part for part in (0.1, 0.4, 0.6, 0.9))
                        four = span / 4 * sum(SPECIFIC_HEAT / drive(t) for t in nodes)
                        yield (
                            float(leaving + span),
                            float(leaving),
                            wet,
                            l_over_g,
                            pressure,
                            least / 1000,
                            exact,
                            four,
                        )
