"""Where the level changes its pace: ruptures' PELT with its linear cost (C.
Truong, L. Oudre, N. Vayatis 2020, Signal Processing 167) on simulated tests:
hold, fall, hold, rise, hold, read at odd moments to the quarter inch. One row
a reading; `piece` counts the pieces PELT finds. Shortest piece two readings.
"""

import numpy as np
import ruptures

HEADER = ["set", "seconds", "level_m", "piece"]
SD, PRICE = 0.0024, 16.0


def level(at, turns, top, low):
    """The level at a time: falls from turns[0] to [1], rises from [2] to [3]."""
    return np.interp(at, turns, [top, low, low, top])


def rows():
    chance = np.random.default_rng(1125)
    for number in range(24):
        n = 10 + number
        turns = np.cumsum(chance.uniform([30, 200, 20, 300], [120, 500, 300, 900]))
        seconds = np.sort(chance.uniform(0, turns[-1] + 400, n)).round(1)
        true = level(seconds, turns, chance.uniform(0.06, 0.1), chance.uniform(0.16, 0.3))
        read = ((true + chance.normal(0, 0.0015, n)) / 0.00635).round() * 0.00635
        signal = np.column_stack([read, seconds - seconds.mean(), np.ones(n)])
        found = ruptures.Pelt(model="linear", min_size=2, jump=1).fit(signal)
        piece, begin = np.zeros(n, int), 0
        for k, end in enumerate(found.predict(pen=PRICE * SD**2)):
            piece[begin:end] = k
            begin = end
        for s, m, p in zip(seconds, read, piece):
            yield number, float(s), float(m), int(p)
