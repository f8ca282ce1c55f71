"""Draws 200 programmes shaped like the formulas of cakes, solves them with HiGHS and writes them to programmes.json.

Run by `make reference`. One programme a line: of every unknown its start, least, most and price; of every row what a
unit of each unknown brings, target, free width, price, the two limits, null where there is none, and its size. Answers: the
least cost, and the least sum of what limits are missed by, each against its row's size; every fifth programme has
limits that cannot all hold, and its cost is null. A row's size is the most that one unknown brings to it by what was
there of it, taken as a thousandth of the average at least.
"""

import json
import random
import sys
from pathlib import Path

import numpy as np
from scipy.optimize import linprog

HERE = Path(__file__).parent
SEED = 1947
PROGRAMMES = 200
# Grams in a cake, then shares of a gram: water, fat, sugars, protein, starch, salt; then ml of gas and the charge in
# meq at two pH. Rough bands, drawn from evenly: what counts is their shape, not whose they are.
KINDS = [
    ((150, 450), (.11, .14), (.01, .02), (.01, .02), (.08, .13), (.65, .75), 0, 0, (-.05, -.02), (-.09, -.05)),
    ((80, 400), 0, 0, (.98, 1), 0, 0, 0, 0, 0, 0),
    ((60, 300), (.15, .18), (.8, .83), 0, (.005, .01), 0, (0, .018), 0, 0, 0),
    ((80, 350), (.86, .91), (.01, .04), (.03, .05), (.02, .04), 0, (.001, .002), 0, (.01, .02), (-.02, 0)),
    ((50, 220), (.74, .77), (.09, .11), (0, .01), (.12, .13), 0, (.003, .004), 0, (.05, .08), (-.01, .02)),
    ((20, 120), 0, (.99, 1), 0, 0, 0, 0, 0, 0, 0),
    ((15, 80), (.02, .05), (.1, .24), (.01, .02), (.18, .25), (.1, .2), 0, 0, (.2, .9), (0, .6)),
    ((2, 8), 0, 0, 0, 0, 0, 0, (260, 270), (11.9, 11.9), (11.9, 11.9)),
    ((4, 20), (.02, .05), 0, 0, 0, (.25, .4), (.05, .12), (95, 130), (-.3, .6), (-.9, 0)),
    ((1, 8), 0, 0, 0, 0, 0, (.97, 1), 0, 0, 0),
    ((2, 60), (.9, .95), 0, (.02, .03), 0, 0, 0, 0, (-.9, -.5), (-.95, -.8)),
    ((20, 200), (.7, .88), (.002, .01), (.1, .22), (.005, .01), (.01, .06), 0, 0, (-.1, -.02), (-.12, -.05)),
    ((20, 250), (.83, .86), (.002, .004), (.09, .12), (.002, .005), (.01, .03), 0, 0, (-.06, -.03), (-.07, -.05)),
    ((5, 60), (.05, .12), (0, .1), 0, (.2, .9), (0, .5), (0, .03), 0, (.02, .3), (-.2, .1)),
    ((20, 200), (.02, .05), (.45, .65), (.03, .08), (.15, .26), (.01, .08), 0, 0, (.05, .1), (0, .05)),
]
ROWS = len(KINDS[0])  # all but the grams, and their sum in their place


def shown(number):
    return float(f"{number:.4g}")


def draw(chance, tight):
    """Only chance.random() is used, whose numbers Python keeps from version to version."""
    evenly = lambda band: band[0] + (band[1] - band[0]) * chance.random() if band else 0.0
    kinds = sorted(KINDS, key=lambda _: chance.random())[: 8 + int(chance.random() * 8)]
    start = [shown(evenly(kind[0])) for kind in kinds]
    columns = [[1.0] + [shown(evenly(band)) for band in kind[1:]] for kind in kinds]
    unknowns = []
    for place, amount in enumerate(start):
        least, most = shown(amount * 0.3 * chance.random()), shown(amount * (1.2 + 2 * chance.random()))
        # Dearer by the gram where there is little of it.
        unknowns.append([amount, least, most, shown((0.2 + chance.random()) * 100 / amount)])
    # One leaves, another comes in its place, a third cannot move.
    unknowns[0][1:3] = [0.0, 0.0]
    unknowns[1][:3] = [0.0, 0.0, shown(start[0] * (1 + chance.random()))]
    if chance.random() < 0.5:
        unknowns[2][1:3] = [start[2], start[2]]
    start[1] = 0.0
    rows = []
    for index in range(ROWS):
        brought = [column[index] for column in columns]
        target = sum(one * amount for one, amount in zip(brought, start))
        about = max(abs(one * amount) for one, amount in zip(brought, start)) or 1.0
        free, price = about * 0.1 * chance.random(), (1 + 9 * chance.random()) * 30 / about
        low, high = None, None
        if chance.random() < 0.5:
            low = target - about * (0.1 + chance.random()) * tight
        if chance.random() < 0.5:
            high = target + about * (0.1 + chance.random()) * tight
        limits = [None if limit is None else shown(limit) for limit in (low, high)]
        rows.append([brought, shown(target), shown(free), shown(price), *limits])
    return {"unknowns": unknowns, "rows": rows}


def sizes(programme):
    there = [abs(unknown[0]) for unknown in programme["unknowns"]]
    least = sum(there) / len(there) / 1000
    brought = lambda row: max(abs(one) * max(amount, least) for one, amount in zip(row[0], there))
    # Nothing can miss a limit where nothing is brought.
    return [brought(row) or 1.0 for row in programme["rows"]]


def solve(programme):
    """The least cost, or None, and the least sum of what limits are missed by.

    The amounts, then how far each has moved, how far each row is outside its free width, and what its limits are
    missed by."""
    start, least, most, moved = np.array(programme["unknowns"]).T
    n, m = len(start), len(programme["rows"])
    matrix = np.array([row[0] for row in programme["rows"]])
    target, free, price = np.array([row[1:4] for row in programme["rows"]]).T
    low, high = ([row[which] for row in programme["rows"]] for which in (4, 5))
    none, one, each, every = np.zeros((n, m)), np.eye(n), np.eye(m), np.zeros((m, n))
    side = np.zeros((m, m))
    above = [index for index in range(m) if high[index] is not None]
    below = [index for index in range(m) if low[index] is not None]
    left = np.vstack([
        np.hstack([one, -one, none, none]), np.hstack([-one, -one, none, none]),
        np.hstack([matrix, every, -each, side]), np.hstack([-matrix, every, -each, side]),
        np.hstack([matrix, every, side, -each])[above], np.hstack([-matrix, every, side, -each])[below],
    ])
    right = np.concatenate([
        start, -start, target + free, free - target,
        [high[index] for index in above], [-low[index] for index in below],
    ])
    bounds = [*zip(least, most), *[(0, None)] * (n + m)]
    ask = lambda costs, missed: linprog(costs, left, right, bounds=bounds + [missed] * m, method="highs")
    size = np.array(sizes(programme))
    cost = ask(np.concatenate([np.zeros(n), moved, price, np.zeros(m)]), (0, 0))
    missed = ask(np.concatenate([np.zeros(n + n + m), 1 / size]), (0, None))
    assert cost.status in (0, 2) and missed.status == 0, (cost.message, missed.message)
    return cost.fun if cost.status == 0 else None, missed.fun


def programmes():
    chance = random.Random(SEED)
    for index in range(PROGRAMMES):
        clashes = index % 5 == 4
        while True:
            programme = draw(chance, 0.3 if clashes else 1.0)
            cost, missed = solve(programme)
            # What lies on the edge is no test of a verdict.
            if (cost is None) == clashes and (missed > 1e-3) == clashes:
                break
        for row, size in zip(programme["rows"], sizes(programme)):
            row.append(float(f"{size:.8g}"))
        yield {**programme, "cost": cost and round(cost, 6), "missed": round(missed, 8) if clashes else 0}


def main():
    lines = [json.dumps(programme, separators=(",", ":")).replace(".0,", ",").replace(".0]", "]")
             for programme in programmes()]
    (HERE / "programmes.json").write_text("[\n" + ",\n".join(lines) + "\n]\n")
    print(f"{len(lines)} programmes written to {HERE.name}/programmes.json")


if __name__ == "__main__":
    sys.exit(main())
