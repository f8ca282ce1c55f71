"""Fits drawn observations with numpy, takes t and F from scipy, and writes both to ../statistics/.

Run by `make reference`. Least squares here are by singular values of powers of the amount as it is, ours by reflections
of powers of the centred amount; bounds of the best amount here are roots of a polynomial (Fieller 1954), ours are looked
for. Columns of `curves.tsv`: amounts; outcomes; terms; the usual scatter and its worth in degrees of freedom (empty where
there is none); coefficients; their standard errors; residual sum of squares; half width of the mean curve at the
smallest, the middle and the largest amount, 90 %; F of the lack of fit and its chance (empty without repeats); the turn
and its 90 % bounds, - for a bound that lies outside the range; the outcome wanted; the amount that comes to it nearest
the middle of the range, with its bounds. A list's numbers are apart by a blank.
"""

from pathlib import Path

import numpy as np
from scipy import stats

HERE = Path(__file__).parent.parent / "statistics"
SURE = 0.9


def cell(values):
    return " ".join("-" if value is None else f"{value:.12e}" for value in np.atleast_1d(values))


def write(name, rows):
    (HERE / name).write_text("".join("\t".join(row) + "\n" for row in rows))


def quantiles():
    rows = []
    for degrees in (0.5, 1, 1.7, 2, 3, 4, 5.5, 7, 10, 12.25, 20, 38, 60, 120, 500):
        for sure in (0.5, 0.8, 0.9, 0.95, 0.99):
            rows.append((f"{sure}", f"{degrees}", cell(stats.t.ppf((1 + sure) / 2, degrees))))
    write("quantiles.tsv", rows)


def tails():
    rows = []
    for above in (1, 2, 5, 18):
        for below in (1, 2.5, 4, 20, 60):
            for ratio in (0, 0.3, 1, 2.15, 5, 60, 214.7464):
                rows.append((f"{ratio}", f"{above}", f"{below}", cell(stats.f.sf(ratio, above, below))))
    write("tails.tsv", rows)


def bounds(polynomial, best, low, high):
    """The nearest roots on either side of the best amount that lie within the range."""
    roots = np.roots(polynomial)
    real = roots.real[np.abs(roots.imag) < 1e-9 * np.abs(roots)]
    below, above = real[(real < best) & (real > low)], real[(real > best) & (real < high)]
    return [below.max() if len(below) else None, above.min() if len(above) else None]


def repeats(amounts, outcomes):
    kinds = np.unique(amounts)
    about = [outcomes[amounts == kind] - outcomes[amounts == kind].mean() for kind in kinds]
    return float(sum((it**2).sum() for it in about)), len(amounts) - len(kinds)


def fitted(amounts, outcomes, terms, usual):
    """Coefficients, their covariance, the residual sum of squares, t."""
    powers = np.vander(amounts, terms, increasing=True)
    found, *_ = np.linalg.lstsq(powers, outcomes, rcond=None)
    residual = float(((outcomes - powers @ found) ** 2).sum())
    degrees = len(amounts) - terms
    deviation, worth = usual or (0.0, 0.0)
    variance = (residual + worth * deviation**2) / (degrees + worth)
    back = np.linalg.inv(np.linalg.qr(powers, mode="r"))
    return found, variance * back @ back.T, residual, stats.t.ppf((1 + SURE) / 2, degrees + worth)


def lacking(amounts, outcomes, terms, residual):
    pure, degrees = repeats(amounts, outcomes)
    lack = len(amounts) - terms - degrees
    if not (degrees and lack):
        return ""
    ratio = (residual - pure) / lack / (pure / degrees)
    return cell([ratio, stats.f.sf(ratio, lack, degrees)])


def turning(found, v, low, high):
    _, b, c = found
    best = -b / (2 * c)
    if not low < best < high:
        return None
    # (b + 2 c x)^2 = t^2 var(b + 2 c x).
    return [best, *bounds([4 * (c * c - v[2, 2]), 4 * (b * c - v[1, 2]), b * b - v[1, 1]], best, low, high)]


def meeting(found, v, low, high):
    """An outcome a fifth of the way from the curve's lowest to its highest, and where the curve comes to it."""
    line = np.polynomial.Polynomial(found)
    looked = line(np.linspace(low, high, 1001))
    want = looked.min() + 0.2 * (looked.max() - looked.min())
    roots = [root.real for root in (line - want).roots() if abs(root.imag) < 1e-12 and low <= root.real <= high]
    best = min(roots, key=lambda root: abs(root - (low + high) / 2))
    spread = sum(
        np.polynomial.Polynomial([0.0] * (one + other) + [v[one, other]])
        for one in range(len(found))
        for other in range(len(found))
    )
    return want, [best, *bounds(((line - want) ** 2 - spread).coef[::-1], best, low, high)]


def curve(amounts, outcomes, terms, usual):
    found, covariance, residual, t = fitted(amounts, outcomes, terms, usual)
    low, high = amounts.min(), amounts.max()
    places = np.array([low, (low + high) / 2, high])[:, None] ** np.arange(terms)
    widths = t * np.sqrt(np.einsum("ij,jk,ik->i", places, covariance, places))
    # Roots keep their digits only where amounts lie about 0, so bounds are looked for there.
    zero, unit = round((low + high) / 2), round((high - low) / 2) + 1
    moved, spread, _, _ = fitted((amounts - zero) / unit, outcomes, terms, usual)
    ends = ((low - zero) / unit, (high - zero) / unit)
    back = lambda values: cell([None if it is None else zero + unit * it for it in values])
    turn = turning(moved, spread * t**2, *ends) if terms == 3 else None
    want, meets = meeting(moved, spread * t**2, *ends) if terms > 1 else (None, None)
    return (
        cell(amounts),
        cell(outcomes),
        str(terms),
        cell(usual) if usual else "",
        cell(found),
        cell(np.sqrt(np.diag(covariance))),
        cell(residual),
        cell(widths),
        lacking(amounts, outcomes, terms, residual),
        back(turn) if turn else "",
        cell(want) if meets else "",
        back(meets) if meets else "",
    )


def curves():
    chance = np.random.default_rng(20261128)
    rows = []
    while len(rows) < 150:
        terms = int(chance.integers(1, 4))
        kinds = int(chance.integers(max(terms, 2), 7))
        centre = chance.uniform(2, 300)
        amounts = centre * (1 + 0.4 * np.linspace(-1, 1, kinds) * chance.uniform(0.3, 1))
        repeated = chance.integers(1, 4, kinds) if chance.random() < 0.6 else np.ones(kinds, int)
        amounts = np.round(np.repeat(amounts, repeated), 2)
        at = amounts / centre - 1
        true = 40 + chance.normal(0, 20) * at - 60 * chance.choice([-1, 1]) * (at - chance.normal(0, 0.15)) ** 2
        outcomes = np.round(true + chance.normal(0, chance.choice([0.3, 1, 3]), len(amounts)), 2)
        usual = (float(chance.choice([0.5, 1, 2])), float(chance.choice([2, 4]))) if chance.random() < 0.5 else None
        if len(amounts) == terms and usual is None:
            continue
        rows.append(curve(amounts, outcomes, terms, usual))
    write("curves.tsv", rows)


def surfaces():
    """Columns: coded first amounts; second ones; outcomes; the six coefficients; their errors; the level point."""
    chance = np.random.default_rng(28112026)
    rows = []
    for _ in range(30):
        far = chance.choice([1.0, np.sqrt(2.0)])
        corners = [(-1, -1), (1, -1), (-1, 1), (1, 1), (-far, 0), (far, 0), (0, -far), (0, far)]
        runs = np.array(corners + [(0, 0)] * int(chance.integers(1, 6)))
        runs = runs[chance.permutation(len(runs))]
        first, second = runs.T
        terms = np.column_stack([np.ones(len(runs)), first, second, first**2, second**2, first * second])
        outcomes = np.round(terms @ chance.normal(0, 3, 6) + chance.normal(0, 0.5, len(runs)), 3)
        found, *_ = np.linalg.lstsq(terms, outcomes, rcond=None)
        variance = ((outcomes - terms @ found) ** 2).sum() / (len(runs) - 6)
        errors = np.sqrt(variance * np.diag(np.linalg.inv(terms.T @ terms)))
        _, b1, b2, b11, b22, b12 = found
        level = np.linalg.solve([[2 * b11, b12], [b12, 2 * b22]], [-b1, -b2])
        rows.append(tuple(cell(it) for it in (first, second, outcomes, found, errors, level)))
    write("surfaces.tsv", rows)


quantiles()
tails()
curves()
surfaces()
