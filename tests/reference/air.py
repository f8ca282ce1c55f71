"""Pressure of the air and boiling points by height, reckoned by other programs.

Run by `make reference`. Writes tests/oven_air/air.tsv, which tests/oven_air/air.rs reads. The pressure is that of
`ambiance` (ICAO standard atmosphere of 1993, geometric heights), the boiling points are those of `iapws`, found by its
whole equation of state for saturated water (IAPWS-95, Wagner and Pruss), which shares no coefficient with the equations
of IAPWS-IF97 that the program uses.
"""

from pathlib import Path

from ambiance import Atmosphere
from iapws import IAPWS95
from scipy.optimize import brentq

FILE = Path(__file__).parent.parent / "oven_air" / "air.tsv"
# The activity of water in a crumb.
ACTIVITY = 0.93


def boils(pascals: float) -> float:
    """The temperature in C at which water under so many pascals boils."""
    return brentq(lambda kelvin: IAPWS95(T=kelvin, x=0).P * 1e6 - pascals, 340, 400, xtol=1e-6) - 273.15


def main() -> None:
    rows = ["# metres\tpascals\twater boils, C\tsyrup of activity 0.93 boils, C"]
    for metres in range(0, 3501, 100):
        pascals = float(Atmosphere(metres).pressure[0])
        rows.append(f"{metres}\t{pascals:.2f}\t{boils(pascals):.4f}\t{boils(pascals / ACTIVITY):.4f}")
    FILE.write_text("\n".join(rows) + "\n", encoding="utf-8")
    print(f"{len(rows) - 1} heights written to {FILE.name}.")


if __name__ == "__main__":
    main()
