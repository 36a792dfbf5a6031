"""Saturation of the refrigerants Coldsump knows, by CoolProp 8.0.0.

R-404A, R-407C, R-410A and R-507A by the pseudo-pure equations, whose bubble and
dew lines converge everywhere; R-448A, R-449A, R-454B and R-513A exist only as
predefined mixtures, whose flash fails at scattered points. Such a point is
left out.
"""

from functools import cache

from CoolProp.CoolProp import PropsSI

# Designation, CoolProp's name, whether it has two lines, last
# temperature of its bubble and of its dew line, C: 2 to 3 K below critical for
# R-404A, R-410A and R-507A, the last that converges for R-448A.
FLUIDS = (
    ("R-22", "R22", False, 70, 70),
    ("R-32", "R32", False, 70, 70),
    ("R-123", "R123", False, 70, 70),
    ("R-134a", "R134a", False, 70, 70),
    ("R-404A", "R404A", True, 69, 69),
    ("R-407C", "R407C", True, 70, 70),
    ("R-410A", "R410A", True, 69, 69),
    ("R-448A", "R448A.mix", True, 69, 70),
    ("R-449A", "R449A.mix", True, 70, 70),
    ("R-454B", "R454B.mix", True, 70, 70),
    ("R-507A", "R507A", True, 68, 68),
    ("R-513A", "R513A.mix", True, 70, 70),
    ("R-1233zd(E)", "R1233zd(E)", False, 70, 70),
    ("R-1234ze(E)", "R1234ze(E)", False, 70, 70),
)

# First temperature of every line, C.
LOW = 0


def pressure(name, celsius, quality):
    """Pa absolute, or None where the flash does not converge."""
    try:
        p = PropsSI("P", "T", celsius + 273.15, "Q", quality, name)
    except ValueError:
        return None
    return p if p > 0 else None


@cache
def saturation(name, quality, high):
    """(C, Pa) at 1 K steps, without the points that did not converge."""
    points = ((c, pressure(name, c, quality)) for c in range(LOW, high + 1))
    return [(c, p) for c, p in points if p is not None]


def lines():
    """Designation, line, its saturation: one for a single fluid, two for a blend."""
    for designation, name, blend, bubble, dew in FLUIDS:
        if blend:
            yield designation, "bubble", saturation(name, 0, bubble)
            yield designation, "dew", saturation(name, 1, dew)
        else:
            yield designation, "both", saturation(name, 0, bubble)
