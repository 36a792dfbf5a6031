"""Saturation of calcite in cooling water, by PHREEQC (phreeqpython 1.6.2).

Each water is given as a mechanic's test kit has it: pH, temperature, dissolved
solids, calcium and alkalinity as calcium carbonate. PHREEQC gets the calcium,
the alkalinity, and sodium enough that the solids come to the figure given,
with chloride to balance the charge; its default database (phreeqc.dat). The
answer is the saturation index of calcite, log10(IAP/K), the exact form of what
the Langelier index stands for.

Beside it the Langelier, Ryznar and Puckorius indices by their formulae, written
out here once more so that a slip in the program's own is found.
"""

from math import log10

from phreeqpython import PhreeqPython

HEADER = [
    "water",
    "ph",
    "celsius",
    "tds_mg_l",
    "calcium_mg_l",
    "alkalinity_mg_l",
    "langelier",
    "ryznar",
    "puckorius",
    "calcite_si",
]

# PHREEQC iterates: its last digits may turn from machine to machine.
TOLERANCE = 1e-5

# Grams per mole, for the solids made up of calcium, bicarbonate and salt.
CALCIUM, BICARBONATE, SODIUM, CHLORIDE, CARBONATE = 40.078, 61.017, 22.990, 35.453, 100.087

WATERS = [
    # UFC 3-240-13FN (2005), examples B-1 and B-2: 120 F.
    ("ufc-b-1", 8.2, 48.889, 1000, 500, 100),
    # A worked example found in many text books, at 25 and 82 C.
    ("textbook-cold", 7.5, 25, 320, 150, 34),
    ("textbook-hot", 7.5, 82, 320, 150, 34),
    # Our own: a cycled tower and its makeup.
    ("cycled-tower", 8.6, 35, 1500, 450, 250),
    ("makeup", 7.8, 20, 300, 120, 90),
]
# How the index climbs with temperature: the first water, not at 120 F.
WATERS += [("trend", 8.2, t, 1000, 500, 100) for t in range(5, 71, 5)]
# A grid of what towers hold.
WATERS += [
    ("grid", ph, t, tds, calcium, alkalinity)
    for ph in (7.0, 7.8, 8.6)
    for t in (15, 30, 45)
    for tds, calcium, alkalinity in (
        (200, 50, 40),
        (600, 100, 200),
        (600, 250, 80),
        (1500, 400, 300),
        (2500, 700, 150),
    )
]


def calcite(phreeqc, ph, celsius, tds, calcium, alkalinity):
    """The saturation index, with salt to make up the solids."""
    ca = calcium / CARBONATE
    bicarbonate = 2 * alkalinity / CARBONATE
    # Chloride balances: Na + 2 Ca - HCO3.
    spare = 2 * ca - bicarbonate
    solids = ca * CALCIUM + bicarbonate * BICARBONATE + max(spare, 0) * CHLORIDE
    sodium = max((tds - solids) / (SODIUM + CHLORIDE), 0) + max(-spare, 0)
    solution = phreeqc.add_solution(
        {
            "units": "mmol/kgw",
            "temp": celsius,
            "pH": ph,
            "Ca": ca,
            "Alkalinity": f"{bicarbonate} as HCO3",
            "Na": sodium,
            "Cl": "1 charge",
        }
    )
    index = solution.si("Calcite")
    solution.forget()
    return index


def indices(ph, celsius, tds, calcium, alkalinity):
    """Langelier, Ryznar, Puckorius."""
    kelvin = celsius + 273
    saturation = 9.3 + (log10(tds) - 1) / 10 - 13.12 * log10(kelvin) + 34.55
    saturation -= log10(calcium) - 0.4
    saturation -= log10(alkalinity)
    equilibrium = 1.465 * log10(alkalinity) + 4.54
    return ph - saturation, 2 * saturation - ph, 2 * saturation - equilibrium


def rows():
    phreeqc = PhreeqPython()
    for name, *water in WATERS:
        yield name, *water, *indices(*water), float(calcite(phreeqc, *water))
