"""Solves some hundred bowls with PHREEQC and writes them to bowls.tsv, or times PHREEQC with --time.

Run by `make reference`; nothing else in the project needs Python. The constants are those of acids.csv and water.csv
beside this file, which a test holds to those of the program, written into a database of their own: Davies activity
coefficients, 0.1 I for what has no charge, no pairs of sodium. Beside that answer stands the one of phreeqc.dat, the
database that comes with PHREEQC, with its own carbonate, phosphate, water and pairs and only the acids it lacks added.

Columns of bowls.tsv: temperature in C; acids, totals of Na, K and Cl in mol/kg water; carbon (none, open with the
pressure of CO2 in atm, closed with mol/kg). Answers per kg of the water that is there at the end: pH, molality of
CO2(aq), total inorganic carbon, ionic strength, and how far the water of one kilogram has grown or shrunk; then pH and
CO2(aq) by phreeqc.dat.
"""

import argparse
import csv
import json
import math
import random
import statistics
import sys
import time
from pathlib import Path

import numpy as np
from phreeqpython import PhreeqPython

HERE = Path(__file__).parent
SEED = 1879
RANDOM_BOWLS = 400
TEMPERATURES = [5, 15, 25, 40, 60, 80, 95]
GAS_CONSTANT = 8.314462618e-3  # kJ/(mol K)
INPUTS = ["id", "celsius", "acids", "na", "k", "cl", "carbon"]
ANSWERS = ["ph", "co2", "inorganic_carbon", "ionic_strength", "water_kg", "ph_phreeqc_dat", "co2_phreeqc_dat"]


class Acid:
    def __init__(self):
        self.steps = []  # pKa, enthalpy, heat capacity; the last two None where unknown

    def moves_with_temperature(self):
        return all(enthalpy is not None for _, enthalpy, _ in self.steps)

    def pk(self, celsius):
        """pKa of every step: Goldberg and others 2002; as at 25 C where nothing is known."""
        kelvin, tabled = celsius + 273.15, 298.15
        found = []
        for pk, enthalpy, heat_capacity in self.steps:
            log_k = -pk * math.log(10)
            log_k += (enthalpy or 0.0) / GAS_CONSTANT * (1 / tabled - 1 / kelvin)
            log_k += (heat_capacity or 0.0) / 1000 / GAS_CONSTANT * (tabled / kelvin - 1 + math.log(kelvin / tabled))
            found.append(-log_k / math.log(10))
        return found


def rows(name, delimiter=","):
    with open(HERE / name, newline="") as file:
        return list(csv.DictReader(file, delimiter=delimiter))


def tables():
    """All acids by name, carbonic too, and the constants of water by name."""
    acids = {}
    number = lambda text: float(text) if text else None
    for row in rows("acids.csv"):
        step = (float(row["pka"]), number(row["enthalpy_kj_mol"]), number(row["heat_capacity_j_mol_k"]))
        acids.setdefault(row["acid"], Acid()).steps.append(step)
    return acids, {row["name"]: float(row["value"]) for row in rows("water.csv")}


ACIDS, WATER = tables()
CARBONIC = ACIDS.pop("carbonic")


def log10_water(celsius):
    t = celsius + 273.15
    return (WATER["water_one"] + WATER["water_t"] * t + WATER["water_per_t"] / t
            + WATER["water_log10_t"] * math.log10(t) + WATER["water_t2"] * t * t)


def log10_henry(celsius):
    """Carbon dioxide under one atmosphere of it, mol/kg of water."""
    t = celsius + 273.15
    log = WATER["henry_one"] + WATER["henry_per_t"] / t + WATER["henry_per_t2"] / t**2 + WATER["henry_per_t3"] / t**3
    return math.log10(0.101325 * 1000 / 18.015) - log / math.log(10)


# The databases.


def blocks(names, celsius):
    """Master species and reactions of acids, each an element of its own, written from the ion without protons."""
    master, species = [], []
    for name in names:
        acid, element = ACIDS[name].pk(celsius), name.capitalize()
        charge = lambda protons: ["", "-", "-2", "-3", "-4"][len(acid) - protons]
        ion = f"{element}{charge(0)}"
        master.append(f"{element} {ion} 0 {element} 100")
        species.append(f"{ion} = {ion}\n log_k 0")
        total = 0.0
        for protons, pk in enumerate(reversed(acid), start=1):
            total += pk
            species.append(f"{ion} + {protons}H+ = H{protons}{element}{charge(protons)}\n log_k {total:.8f}")
    return master, species


def own_database(celsius):
    master, species = blocks(ACIDS, celsius)
    first, second = CARBONIC.pk(celsius)
    return "\n".join([
        "SOLUTION_MASTER_SPECIES",
        "H H+ -1. H 1.008", "H(0) H2 0 H", "H(1) H+ -1. H", "E e- 0 0 0",
        "O H2O 0 O 15.999", "O(0) O2 0 O", "O(-2) H2O 0 O",
        "C CO3-2 2 HCO3 12.011", "C(4) CO3-2 2 HCO3", "Alkalinity CO3-2 1 HCO3 61.017",
        "Na Na+ 0 Na 22.990", "K K+ 0 K 39.098", "Cl Cl- 0 Cl 35.45", *master,
        "SOLUTION_SPECIES",
        *(f"{ion} = {ion}\n log_k 0" for ion in ["H+", "e-", "H2O", "Na+", "K+", "Cl-", "CO3-2"]),
        f"H2O = OH- + H+\n log_k {log10_water(celsius):.8f}",
        "2 H2O = O2 + 4 H+ + 4 e-\n log_k -86.08", "2 H+ + 2 e- = H2\n log_k -3.15",
        f"CO3-2 + H+ = HCO3-\n log_k {second:.8f}", f"CO3-2 + 2 H+ = CO2 + H2O\n log_k {first + second:.8f}",
        *species,
        "PHASES", f"CO2(g)\n CO2 = CO2\n log_k {log10_henry(celsius):.8f}", "END", "",
    ])


def added_to_phreeqc_dat(celsius):
    master, species = blocks([name for name in ACIDS if name != "phosphoric"], celsius)
    return "\n".join(["SOLUTION_MASTER_SPECIES", *master, "SOLUTION_SPECIES", *species, "END", ""])


PUNCH = """SELECTED_OUTPUT 1
 -reset false
 -high_precision true
USER_PUNCH 1
 -headings ph co2 carbon mu water
 10 PUNCH -LA("H+"), MOL("CO2"), TOT("C(4)"), MU, TOT("water")
END
"""


class Phreeqc:
    """PHREEQC with one database per temperature."""

    def __init__(self, own):
        self.own, self.ready = own, {}

    def at(self, celsius):
        if celsius not in self.ready:
            phreeqc = PhreeqPython(database="phreeqc.dat").ip
            if self.own:
                phreeqc.load_database_string(own_database(celsius))
            else:
                phreeqc.run_string(added_to_phreeqc_dat(celsius))
            phreeqc.run_string(PUNCH)
            self.ready[celsius] = phreeqc
        return self.ready[celsius]

    def text(self, bowl):
        lines = ["SOLUTION 1", f" temp {bowl['celsius']}", " units mol/kgw", " pH 6 charge"]
        for name, amount in acids_of(bowl).items():
            lines.append(f" {'P' if name == 'phosphoric' and not self.own else name.capitalize()} {amount}")
        for element in ["na", "k", "cl"]:
            if float(bowl[element]) > 0:
                lines.append(f" {element.capitalize()} {bowl[element]}")
        how, amount = carbon_of(bowl)
        if how == "closed":
            lines.append(f" C(4) {amount}")
        if how == "open":
            lines += ["EQUILIBRIUM_PHASES 1", f" CO2(g) {math.log10(amount):.8f} 100"]
        return "\n".join([*lines, "END", ""])

    def solve(self, bowl):
        phreeqc = self.at(float(bowl["celsius"]))
        phreeqc.run_string(self.text(bowl))
        table = phreeqc.get_selected_output_array()
        return dict(zip(table[0], table[-1]))


# The bowls.


def acids_of(bowl):
    pairs = (part.split() for part in bowl["acids"].split(";") if part.strip())
    return {name: float(amount) for name, amount in pairs}


def carbon_of(bowl):
    how, _, amount = bowl["carbon"].partition(" ")
    return how, float(amount) if amount else 0.0


def between(chance, low, high):
    """Evenly on a logarithmic scale."""
    return low * (high / low) ** chance.random()


def random_bowls():
    """Every acid alone, then mixtures; only chance.random() is used, whose numbers Python keeps from version to
    version."""
    chance = random.Random(SEED)
    names = list(ACIDS)
    pick = lambda several: several[int(chance.random() * len(several))]
    shown = lambda amount: f"{amount:.4g}"
    for index in range(RANDOM_BOWLS):
        # Every fifth is as strong as soda dissolves.
        soda = between(chance, 0.3 if index % 5 == 4 else 0.001, 1.0)
        # In turn, so that every acid is there often.
        chosen = {names[index % len(names)]: 0.0}
        if index >= 3 * len(names):
            for _ in range(int(chance.random() * 4)):
                chosen[pick(names)] = 0.0
        # From a tenth to three times the acid that answers the soda.
        equivalents = soda * between(chance, 0.1, 3.0)
        shares = {name: 0.05 + chance.random() for name in chosen}
        for name in chosen:
            chosen[name] = equivalents * shares[name] / sum(shares.values()) / len(ACIDS[name].steps)
        salt = between(chance, 0.01, 0.5) if chance.random() < 0.6 else 0.0
        potassium = between(chance, 0.005, 0.1) if chance.random() < 0.5 else 0.0
        known = all(ACIDS[name].moves_with_temperature() for name in chosen)
        carbon = f"open {shown(between(chance, 0.00042, 1.0))}" if chance.random() < 0.6 else f"closed {shown(soda)}"
        yield {
            "id": f"B{index + 1:03}",
            "celsius": str(pick(TEMPERATURES) if known else 25),
            "acids": "; ".join(f"{name} {shown(amount)}" for name, amount in chosen.items()),
            "na": shown(soda + salt),
            "k": shown(potassium),
            "cl": shown(salt),
            "carbon": carbon,
        }


# As strong as anything a kitchen can dissolve: citrate, tartrate, phosphate and pyrophosphate, with salt and without.
BRINES = [
    ("25", "citric 0.3333", "1", "0", "0", "open 1"),
    ("25", "citric 0.3333", "2", "0", "1", "open 0.03"),
    ("95", "citric 0.3333", "1.5", "0", "0.5", "open 0.2"),
    ("25", "tartaric 0.5", "1", "0", "0", "open 0.1"),
    ("25", "phosphoric 0.5", "1", "0", "0", "closed 0.5"),
    ("25", "pyrophosphoric 0.25", "0.75", "0", "0", "open 0.03"),
    ("25", "pyrophosphoric 0.25", "1", "0", "0", "open 0.03"),
    ("60", "pyrophosphoric 0.25", "1.5", "0", "0.5", "closed 0.5"),
    ("25", "pyrophosphoric 0.35", "1.3", "0", "0", "open 0.00042"),
]


def brines():
    for index, bowl in enumerate(BRINES):
        yield dict(zip(INPUTS, (f"S{index + 1:02}", *bowl)))


def write():
    own, bundled = Phreeqc(own=True), Phreeqc(own=False)
    bowls = [{name: row[name] for name in INPUTS} for row in rows("cases.tsv", "\t")] + [*brines(), *random_bowls()]
    with open(HERE / "bowls.tsv", "w", newline="") as file:
        out = csv.writer(file, delimiter="\t", lineterminator="\n")
        out.writerow(INPUTS + ANSWERS)
        for bowl in bowls:
            mine, theirs = own.solve(bowl), bundled.solve(bowl)
            answers = [f"{mine['ph']:.5f}", f"{mine['co2']:.5g}", f"{mine['carbon']:.5g}", f"{mine['mu']:.5g}",
                       f"{mine['water']:.5f}", f"{theirs['ph']:.4f}", f"{theirs['co2']:.4g}"]
            out.writerow([bowl[name] for name in INPUTS] + answers)
    print(f"{len(bowls)} bowls written to {HERE.name}/bowls.tsv")


# Times.


def davies(celsius):
    known = sorted((int(name[7:]), value) for name, value in WATER.items() if name.startswith("davies_"))
    return float(np.interp(celsius, *zip(*known)))


class Plain:
    """The solver that the sheet of constants was worked out with: numpy, halving, ionic strength by repeating."""

    def __init__(self, bowl):
        celsius = float(bowl["celsius"])
        self.a, self.pkw = davies(celsius), -log10_water(celsius)
        self.acids = [(amount, np.array(ACIDS[name].pk(celsius))) for name, amount in acids_of(bowl).items()]
        self.carbonic = np.array(CARBONIC.pk(celsius))
        how, amount = carbon_of(bowl)
        if how == "closed":
            self.acids.append((amount, self.carbonic))
        self.open = math.log10(amount) + log10_henry(celsius) if how == "open" else None
        chloride = float(bowl["cl"])
        self.cation = float(bowl["na"]) + float(bowl["k"]) - chloride
        self.salt = chloride

    def log_g(self, z, ionic):
        s = np.sqrt(ionic)
        return np.where(z == 0, 0.1 * ionic, -self.a * z * z * (s / (1 + s) - 0.3 * ionic))

    def solve(self):
        ionic = 0.05
        for _ in range(200):
            g = self.log_g(np.arange(5), ionic)
            low, high = -1.0, 14.0
            for _ in range(50):
                ph = (low + high) / 2
                h, oh = 10 ** (-ph - g[1]), 10 ** (ph - self.pkw - g[1])
                charge = square = 0.0
                for amount, pk in self.acids:
                    n = np.arange(len(pk) + 1)
                    w = np.concatenate([[0.0], np.cumsum(ph - pk)]) - g[n]
                    w = 10 ** (w - w.max())
                    w *= amount / w.sum()
                    charge, square = charge + n @ w, square + n * n @ w
                if self.open is not None:
                    bicarbonate = 10 ** (self.open - self.carbonic[0] + ph - g[1])
                    carbonate = 10 ** (self.open - self.carbonic.sum() + 2 * ph - g[2])
                    charge, square = charge + bicarbonate + 2 * carbonate, square + bicarbonate + 4 * carbonate
                low, high = (ph, high) if h + self.cation - oh - charge > 0 else (low, ph)
            new = (h + oh + abs(self.cation) + 2 * self.salt + square) / 2
            if abs(new - ionic) < 1e-9:
                break
            ionic = (ionic + new) / 2
        return ph


def timed(work, bowls):
    times = []
    for bowl in bowls:
        start = time.perf_counter()
        work(bowl)
        times.append((time.perf_counter() - start) * 1e6)
    return round(statistics.median(times), 1)


def times():
    """Median microseconds for a bowl, as JSON. PHREEQC's holds the reading of its input, as everybody's does who asks
    it through the binding."""
    bowls = rows("bowls.tsv", "\t")
    phreeqc = Phreeqc(own=True)
    for bowl in bowls:
        phreeqc.at(float(bowl["celsius"]))
    print(json.dumps({
        "bowls": len(bowls),
        "phreeqc": timed(phreeqc.solve, bowls),
        "numpy": timed(lambda bowl: Plain(bowl).solve(), bowls[:: max(1, len(bowls) // 60)]),
    }))


def main():
    arguments = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    arguments.add_argument("--time", action="store_true", help="print times as JSON and write nothing")
    if arguments.parse_args().time:
        times()
    else:
        write()


if __name__ == "__main__":
    sys.exit(main())
