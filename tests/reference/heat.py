"""Solves bodies that warm in an oven by the series of heat conduction, with scipy, and writes them to ../heat/series.tsv.

Run by `make reference`; with --time it solves the cup once more on a grid, as ours is, and prints how long that takes.
Carslaw and Jaeger 1959: slab, cylinder and sphere with heat by h at their faces; short cylinders
and bars as products of them. Cake batter of Sweat 1973 as given by Rask 1989: k 0.223 W/(m K), density 694 kg/m3, heat
capacity 2950 J/(kg K), from 22 C in 175 C. Columns: name; shape; half width and depth, mm; h of base, wall and top,
W/(m2 K); where it is looked at: part of the half width from the middle, height, mm; seconds; C there then. Rows with
`until` in the place of seconds hold the seconds until the coldest point is as warm as that.
"""

import json
import sys
import time
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar
from scipy.special import j0, j1

K, DENSITY, HEAT = 0.223, 694.0, 2950.0
DIFFUSIVITY = K / (DENSITY * HEAT)
START, OVEN = 22.0, 175.0
TERMS = 60


def roots(function, period, terms=TERMS):
    """Roots of a function with one in each period, poles avoided by looking for changes of sign on a fine grid."""
    found, grid = [], np.linspace(1e-9, period * terms, 4000 * terms // 10)
    values = function(grid)
    for left, right, low, high in zip(grid, grid[1:], values, values[1:]):
        if low * high < 0 and abs(low) + abs(high) < 1e3 * period:
            found.append(brentq(function, left, right, xtol=1e-14))
    return np.array(found)


def slab(depth, low, high, height, seconds):
    """The part of the first difference that is left in a slab with h at both faces."""
    b1, b2 = low * depth / K, high * depth / K
    z = roots(lambda z: (z * z - b1 * b2) * np.sin(z) - z * (b1 + b2) * np.cos(z), np.pi)
    shape = lambda x: np.cos(z * x) + b1 / z * np.sin(z * x)
    # Weight and norm of each shape, integrated exactly.
    mean = np.sin(z) / z + b1 / z * (1 - np.cos(z)) / z
    norm = (
        (1 / 2 + np.sin(2 * z) / (4 * z))
        + 2 * b1 / z * np.sin(z) ** 2 / (2 * z)
        + (b1 / z) ** 2 * (1 / 2 - np.sin(2 * z) / (4 * z))
    )
    fourier = DIFFUSIVITY * seconds / depth**2
    return float(np.sum(mean / norm * shape(height / depth) * np.exp(-z * z * fourier)))


def rod(radius, h, part, seconds):
    biot = h * radius / K
    z = roots(lambda z: z * j1(z) - biot * j0(z), np.pi)
    weight = 2 * j1(z) / (z * (j0(z) ** 2 + j1(z) ** 2))
    return float(np.sum(weight * j0(z * part) * np.exp(-z * z * DIFFUSIVITY * seconds / radius**2)))


def sphere(radius, h, part, seconds):
    biot = h * radius / K
    z = roots(lambda z: z * np.cos(z) - (1 - biot) * np.sin(z), np.pi)
    weight = 4 * (np.sin(z) - z * np.cos(z)) / (2 * z - np.sin(2 * z))
    return float(np.sum(weight * np.sinc(z * part / np.pi) * np.exp(-z * z * DIFFUSIVITY * seconds / radius**2)))


def left(case, part, height, seconds):
    """What is left of the first difference at a point."""
    name, shape, half, depth, base, wall, top = case
    half, depth, height = half / 1000, depth / 1000, height / 1000
    if shape == "ball":
        return sphere(half, wall, part, seconds)
    upright = slab(depth, base, top, height, seconds)
    if shape == "layer":
        return upright
    if shape == "bar":
        across = slab(2 * half, wall, wall, half * (1 + part), seconds)
        return upright * across
    return upright * rod(half, wall, part, seconds)


def celsius(*where):
    return OVEN - (OVEN - START) * left(*where)


# Name, shape, half width, depth, h of base, wall and top.
CASES = [
    ("layer", "layer", 100, 40, 25, 0, 25),
    ("layer on a hot base", "layer", 100, 40, 40, 0, 20),
    ("8 in round", "cylinder", 101.6, 40, 25, 25, 25),
    ("6 in round, deep", "cylinder", 76.2, 75, 25, 25, 25),
    ("cup", "cylinder", 31, 36, 25, 25, 25),
    ("8 in round, faces apart", "cylinder", 101.6, 40, 40, 30, 20),
    ("loaf", "bar", 55, 70, 30, 20, 25),
    ("9 in bar, brisk", "bar", 114.3, 50.8, 500, 500, 500),
    ("ball", "ball", 50.8, 0, 25, 25, 25),
]


def main():
    lines = []
    for case in CASES:
        name, shape, half, depth, *_ = case
        minutes = {"ball": (30, 45, 60), "6 in round, deep": (40, 60, 90)}.get(name, (5, 10, 15, 20, 25, 30))
        points = [(0.0, depth / 2)]
        if shape != "ball":
            points += [(0.0, 0.0), (0.0, depth)]
        for part, height in points:
            for minute in minutes:
                value = celsius(case, part, height, minute * 60)
                lines.append((*case, part, height, minute * 60, f"{value:.4f}"))

        def coldest(seconds):
            if shape == "ball":
                return celsius(case, 0.0, 0.0, seconds)
            found = minimize_scalar(
                lambda height: celsius(case, 0.0, height, seconds), bounds=(0, depth), method="bounded"
            )
            return found.fun

        reached = brentq(lambda seconds: coldest(seconds) - 95, 300, 20000, xtol=1e-3)
        lines.append((*case, 0.0, "", "until", f"95\t{reached:.1f}"))
    table = "".join("\t".join(str(cell) for cell in line) + "\n" for line in lines)
    (Path(__file__).parent.parent / "heat" / "series.tsv").write_text(table)




def grid(rows=24):
    """The cup by the method of lines, cells as ours: seconds until the coldest of them is at 95 C, and ms that it took."""
    from scipy.sparse import lil_matrix

    radius, depth, h, columns = 0.031, 0.036, 25.0, rows * 2 // 3
    dr, dz = radius / columns, depth / rows
    size = columns * rows
    flows, capacity, given = lil_matrix((size, size)), np.zeros(size), np.zeros(size)
    at = lambda column, row: row * columns + column

    def between(one, other, passes):
        for a, b in ((one, other), (other, one)):
            flows[a, b] += passes
            flows[a, a] -= passes

    def outside(cell, area, near):
        passes = area / (1 / h + near / K)
        flows[cell, cell] -= passes
        given[cell] += passes * OVEN

    for row in range(rows):
        for column in range(columns):
            cell, inner, outer = at(column, row), column * dr, (column + 1) * dr
            area = np.pi * (outer**2 - inner**2)
            capacity[cell] = area * dz * DENSITY * HEAT
            if column + 1 < columns:
                between(cell, at(column + 1, row), 2 * np.pi * outer * dz * K / dr)
            else:
                outside(cell, 2 * np.pi * outer * dz, dr / 2)
            if row + 1 < rows:
                between(cell, at(column, row + 1), area * K / dz)
            else:
                outside(cell, area, dz / 2)
            if row == 0:
                outside(cell, area, dz / 2)
    matrix = (flows.T.multiply(1 / capacity)).T.tocsc()
    constant = given / capacity
    done = lambda _, celsius: celsius.min() - 95
    done.terminal = True
    best = np.inf
    for _ in range(5):
        start = time.perf_counter()
        found = solve_ivp(
            lambda _, celsius: matrix @ celsius + constant,
            (0, 20000),
            np.full(size, START),
            method="BDF",
            jac=matrix,
            events=done,
            rtol=1e-4,
            atol=1e-2,
        )
        best = min(best, time.perf_counter() - start)
    return found.t_events[0][0], best * 1000


if "--time" in sys.argv:
    seconds, milliseconds = grid()
    print(json.dumps({"seconds": round(seconds, 1), "scipy": round(milliseconds, 1)}))
else:
    main()
