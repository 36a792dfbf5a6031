"""The fits of saturation that `src/physics/refrigerant/fits.rs` ships.

ln p [kPa absolute] = a + b u + c u^2 + d u^3 + e u^4, u = 1000 K/T - 3.3: least
squares on ln p over the points of `refrigerant.py`, five coefficients rounded
to eight places. `worst_percent` is the worst error of p over the points, of the
rounded fit. Centred on 30 C the columns are nearly independent, so that the
same points give the same coefficients on any machine.
"""

import numpy as np

from _refrigerants import LOW, lines

HEADER = ["refrigerant", "line", "low_c", "high_c", "a", "b", "c", "d", "e", "worst_percent"]

# The last of eight places may turn with the library's arithmetic.
TOLERANCE = 1e-4


def rows():
    for designation, line, points in lines():
        celsius, pressure = np.array(points).T
        u = 1000 / (celsius + 273.15) - 3.3
        basis = np.vander(u, 5, increasing=True)
        ln = np.log(pressure / 1000)
        fit = [round(float(v), 8) for v in np.linalg.lstsq(basis, ln, rcond=None)[0]]
        worst = np.abs(np.exp(basis @ fit - ln) - 1).max()
        yield designation, line, LOW, int(celsius[-1]), *fit, round(100 * float(worst), 4)
