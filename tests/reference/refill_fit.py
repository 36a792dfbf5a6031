"""Lines through level readings: SciPy's linregress and Student's t for the fit
and its interval, its siegelslopes (repeated medians, Siegel 1982) for which
readings are left out. One row a reading; the figures of its set repeat.

The interval pools the residuals with what a tape can do: 2.4 mm weighted as 5
readings, as src/refill/fit.rs says.
"""

import numpy as np
from scipy import stats

HEADER = ["set", "seconds", "level_m", "left_out", "slope_m_s", "half_m_s", "mid_m"]
SD, WEIGHT = 0.0024, 5.0


def sets():
    chance = np.random.default_rng(20261125)
    for number in range(24):
        n = 3 + number % 10
        seconds = np.sort(chance.uniform(0, 900, n)).round(1)
        level = 0.30 - chance.uniform(5e-5, 2.2e-4) * seconds + chance.normal(0, 0.002, n)
        if number % 3 == 0 and n >= 6:
            level[chance.integers(n)] += 0.05 * (1 if number % 2 else -1)
        # To the quarter inch or to 5 mm.
        step = 0.00635 if number % 2 else 0.005
        yield number, seconds, (level / step).round() * step


def rows():
    for number, seconds, level in sets():
        n = len(seconds)
        out = np.zeros(n, bool)
        if n >= 5:
            robust = stats.siegelslopes(level, seconds)
            off = np.abs(level - robust.slope * seconds - robust.intercept)
            out = off > 4 * max(1.4826 * np.median(off), SD)
            if out.sum() * 4 > n:
                out[:] = False
        x, y = seconds[~out], level[~out]
        line = stats.linregress(x, y)
        rss = float(((y - line.slope * x - line.intercept) ** 2).sum())
        dof = WEIGHT + len(x) - 2
        spread = np.sqrt((WEIGHT * SD**2 + rss) / dof)
        half = stats.t.ppf(0.975, dof) * spread / np.sqrt(((x - x.mean()) ** 2).sum())
        mid = line.slope * 0.5 * (x[0] + x[-1]) + line.intercept
        for s, m, o in zip(seconds, level, out):
            yield number, float(s), float(m), int(o), float(line.slope), float(half), float(mid)
