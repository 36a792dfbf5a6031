"""Saturation pressure of fourteen refrigerants, by CoolProp 8.0.0.

Every kelvin of each line Coldsump fits, save where the flash does not
converge; how each fluid is called is told in `_refrigerants.py`.
"""

from _refrigerants import lines

HEADER = ["refrigerant", "line", "celsius", "pressure_pa"]


def rows():
    for designation, line, points in lines():
        for celsius, pressure in points:
            yield designation, line, celsius, float(pressure)
