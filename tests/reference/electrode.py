"""Resistance of the water round electrode rods, by numerical solution.

Two rods with the water ending at their tips: Laplace's equation in the plane,
each rod's potential as a monopole and multipoles about its own axis, matched to
constant potential at points round both rods by least squares (numpy). Rods
hung into deep water: each rod as rings of charge of equal potential on its
surface, the surface of the water as a mirror, the fields of rings by complete
elliptic integrals (scipy). Given is the shape factor R kappa L.
"""

import numpy as np
from scipy.special import ellipkm1

HEADER = ["case", "diameter_m", "other_m", "immersion_m", "shape_factor"]


def pair_in_plane(diameter, spacing, terms=40, points=400):
    """R kappa L of two rods: 2 V / (current per kappa and length)."""
    radius = diameter / 2
    angle = 2 * np.pi * (np.arange(points) + 0.5) / points
    centres = [-spacing / 2, spacing / 2]
    # Unknowns: charge q (the other rod has -q), then cosine multipoles; by
    # symmetry the left rod mirrors the right with opposite sign.
    rows, wanted = [], []
    x = centres[1] + radius * np.cos(angle)
    y = radius * np.sin(angle)
    columns = [0.0 * x]
    for sign, centre in ((1, centres[1]), (-1, centres[0])):
        dx = x - centre
        r, theta = np.hypot(dx, y), np.arctan2(y, dx)
        columns[0] = columns[0] - sign * np.log(r) / (2 * np.pi)
    for k in range(1, terms + 1):
        column = 0.0 * x
        for sign, centre in ((1, centres[1]), (-1, centres[0])):
            dx = x - centre
            r, theta = np.hypot(dx, y), np.arctan2(y, dx)
            turn = 1 if sign == 1 else (-1) ** k
            column = column + sign * turn * (radius / r) ** k * np.cos(k * theta)
        columns.append(column)
    matrix = np.column_stack(columns)
    solution, *_ = np.linalg.lstsq(matrix, np.ones(points), rcond=None)
    return 2.0 / solution[0]


def ring(rho, z, radius, height):
    """Potential of a unit source on a ring, at rho from its axis (times 4 pi kappa)."""
    wide = (rho + radius) ** 2 + (z - height) ** 2
    narrow = (rho - radius) ** 2 + (z - height) ** 2
    return 2 / np.pi * ellipkm1(narrow / wide) / np.sqrt(wide)


def panels(radius, length, rings, end):
    """Bands of the rod's surface, side then flat end: ends (r, z) of each."""
    side = length * (1 - np.cos(np.pi * np.arange(rings + 1) / rings)) / 2
    flat = radius * np.cos(np.pi / 2 * np.arange(end + 1) / end)
    r = np.concatenate([np.full(rings + 1, radius), flat[1:]])
    z = np.concatenate([side, np.full(end, length)])
    return r[:-1], z[:-1], r[1:], z[1:]


def along(ends, t):
    """Points a part t along each band."""
    r0, z0, r1, z1 = (e[:, None] for e in ends)
    return r0 + (r1 - r0) * t, z0 + (z1 - z0) * t


def rods_in_deep_water(diameter, spacing, length, rings=160, end=12):
    """R kappa L of two rods (spacing) or of one to far away (None).

    The other rod acts on a ring as on its axis: for rods some diameters apart.
    """
    ends = panels(diameter / 2, length, rings, end)
    radius, height = along(ends, np.array([0.5]))
    fine_r, fine_z = along(ends, (np.arange(8) + 0.5) / 8)
    # Round its own middle a band's field is a logarithm: points crowd there.
    u = (np.arange(400) + 0.5) / 400
    crowd = np.concatenate([0.5 - 0.5 * u**3, 0.5 + 0.5 * u**3])
    weight = np.tile(3 * u**2 / 800, 2)
    own_r, own_z = along(ends, crowd)
    matrix = np.zeros((len(radius), len(radius)))
    for n in range(len(radius)):
        column = sum(
            ring(radius, height, fine_r[n], mirror * fine_z[n]).mean(axis=1) for mirror in (1, -1)
        )
        own = (ring(radius[n], height[n], own_r[n], own_z[n]) * weight).sum()
        column[n] = own + ring(radius[n], height[n], fine_r[n], -fine_z[n]).mean()
        if spacing is not None:
            for mirror in (1, -1):
                column -= ring(spacing, height, fine_r[n], mirror * fine_z[n]).mean(axis=1)
        matrix[:, n] = column
    sources = np.linalg.solve(matrix / (4 * np.pi), np.ones(len(radius)))
    return (2.0 if spacing is not None else 1.0) * length / sources.sum()


def rows():
    for diameter, spacing in ((0.006, 0.0065), (0.006, 0.008), (0.006, 0.012), (0.006, 0.02),
                              (0.006, 0.04), (0.006, 0.1), (0.006, 0.5), (0.012, 0.025),
                              (0.003, 0.03)):
        yield ("pair", diameter, spacing, None, float(pair_in_plane(diameter, spacing)))
    for diameter in (0.003, 0.006, 0.012):
        for length in (0.025, 0.05, 0.15, 0.5):
            for spacing in (0.04, 0.1):
                yield ("deep", diameter, spacing, length,
                       float(rods_in_deep_water(diameter, spacing, length)))
            yield ("single", diameter, None, length,
                   float(rods_in_deep_water(diameter, None, length)))
