"""Draining and filling basins: SciPy's solve_ivp (DOP853) with an event at the
level, the level's differential equation with the surface written out for each
shape. `height` is above the lowest point of the floor, k and z as in
Q = k sqrt(h + z). An empty `seconds` is a level never reached.
"""

import math

from scipy.integrate import solve_ivp

HEADER = ["basin", "k", "z", "inflow_m3_s", "from_m", "to_m", "seconds"]
TOLERANCE = 1e-5


def straight(_):
    return 6.0


def cylinder(_):
    return math.pi * 2.4**2 / 4


def sloped(height):
    """3 m x 2 m, floor falling 0.15 m."""
    return 6.0 * min(height / 0.15, 1.0)


def tabled(height):
    """Surface 1, 3, 3, 8 m2 at 0, 0.1, 0.2, 0.4 m."""
    if height <= 0.1:
        return 1.0 + 20.0 * height
    if height <= 0.2:
        return 3.0
    return 3.0 + 25.0 * (height - 0.2)


SHAPES = {"straight": straight, "round": cylinder, "sloped": sloped, "tabled": tabled}
BREAKS = (0.1, 0.15, 0.2)


def seconds(surface, k, z, inflow, start, end):
    """Time from one height to another, or None when it settles first."""
    sign = 1 if end > start else -1
    settles = (inflow / k) ** 2 - z
    if sign * (settles - end) <= 1e-9 or sign * (settles - start) <= 0:
        return None
    stops = sorted([b for b in BREAKS if min(start, end) < b < max(start, end)], reverse=sign < 0)
    total, here = 0.0, start
    for stop in [*stops, end]:
        inside = 0.5 * (here + stop)

        def rate(_, h, low=min(here, stop), high=max(here, stop)):
            held = min(max(h[0], low + 1e-12), high - 1e-12) if low <= inside <= high else h[0]
            return [(inflow - k * math.sqrt(max(h[0] + z, 0.0))) / surface(held)]

        def there(_, h, at=stop):
            return h[0] - at

        there.terminal = True
        answer = solve_ivp(
            rate, (0, 1e7), [here], "DOP853", events=there, rtol=1e-11, atol=1e-14, first_step=1e-3
        )
        total += float(answer.t_events[0][0])
        here = stop
    return total


def rows():
    fall = math.sqrt(2 * 9.80665)
    hole = 0.62 * math.pi * 0.05**2 / 4 * fall
    pipe = math.pi * 0.05**2 / 4 * fall / math.sqrt(4.2)
    for name, surface in SHAPES.items():
        for k, z in ((hole, 0.0), (pipe, 1.0)):
            for inflow in (0.0, 2e-4, 5e-4, 1.5e-3, 4e-3, 1.2e-2, 0.2):
                for start, end in ((0.30, 0.10), (0.39, 0.02), (0.12, 0.05), (0.02, 0.38), (0.1, 0.3)):
                    yield name, k, z, inflow, start, end, seconds(surface, k, z, inflow, start, end)
