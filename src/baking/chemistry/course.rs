//! The course of a batter: from the bowl over the bench and through the oven to the cooled crumb.
//!
//! Goes in: what dissolves in the batter's water, its leavening acids with when they work, its bicarbonate, and how
//! it is handled. Comes out: one [`State`] after another, with its pH and where its carbon is. At every state the
//! water is in balance with the gas in the bubbles; acids that work late are let in as they wake up; what has left
//! as gas does not come back. In the oven the states follow the temperature of the core, since how fast that rises is
//! a matter of the pan.

use super::dissolving;
use super::release::{Release, Work};
use super::solution::{Answer, CONSTANTS, Carbon, Dissolved, MOST, Solution};
use crate::baking::oven::air::{boils_cooler, saturation_pressure};
use crate::baking::quantity::{Pressure, Temperature};

/// The gas constant, L atm/(mol K).
const GAS_CONSTANT: f64 = 0.082_057;
/// Kelvin at 0 C.
const ICE: f64 = 273.15;
/// The activity of water in a batter: sugar and starch hold some of it (cake 0.90 to 0.95; from memory).
pub const WATER_ACTIVITY: f64 = 0.93;
/// How long a batter is mixed once everything is in it, minutes (common practice, no source).
const MIXING: f64 = 3.0;
/// The part of the gas made while mixing that the paddle drives out (common practice, no source; 0.1 to 0.5).
const DRIVEN_OUT: f64 = 0.3;
/// The part of the gas in a standing batter that leaves it in a minute (common practice, no source; 0.003 to 0.02).
const LEAKS: f64 = 0.008;
/// The core temperature up to which bubbles can still push a batter up, C, where nothing tells its own; starch and egg
/// set from 65 to 95 by their sugar.
pub const SETS_AT: f64 = 85.0;
/// The hottest that a core gets at the sea, C (common practice, no source).
pub const HOTTEST: f64 = 98.0;
/// How much warmer the core is from one state to the next, C.
const WARMER: f64 = 8.0;
/// How near the pressure in the bubbles is met, as a part of all pressure that is left for gas.
const MET: f64 = 3e-3;
/// The highest pH that a crumb may have.
pub const HIGHEST: f64 = 12.0;
/// The pressure of carbon dioxide over a cooled crumb, atm: 0.01 to 0.05 (worked out, weakly known). Crumbs with soda to
/// spare, for which it decides most, were measured at pH 8.3 and at 7.8 to 8.8; they are reckoned at 8.2 here, 0.4
/// higher at 0.01 and 0.8 at 0.003.
pub const CRUMB_PRESSURE: f64 = 0.03;

/// How a batter is handled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handling {
    /// Temperature of the mixed batter, C.
    pub bench: f64,
    /// How long it waits between mixing and the oven, minutes.
    pub waits: f64,
    /// Pressure of the air, atm.
    pub air: f64,
}

impl Handling {
    /// The hottest that a core gets under this air, C: as far below where water boils as at the sea.
    pub fn hottest(&self) -> f64 {
        HOTTEST - boils_cooler(Pressure::atmospheres(self.air)).to_celsius()
    }
}

impl Default for Handling {
    fn default() -> Self {
        Self {
            bench: 22.0,
            waits: 5.0,
            air: 1.0,
        }
    }
}

/// What goes through the course: amounts of the whole batter, moles and equivalents.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Batter {
    /// Water, kg.
    pub water: f64,
    /// What is dissolved in it but leavening acids: amounts of all the water, carbon left out.
    pub solution: Solution,
    /// Leavening acids.
    pub acids: Vec<Work>,
    /// Bicarbonate, mol; its charge is in `solution`.
    pub bicarbonate: f64,
    /// The part of it that is soda, of which water dissolves so much and no more, mol.
    pub soda: f64,
    /// The part of it that is ammonium's, mol: its ammonia leaves with the heat.
    pub ammonium: f64,
    /// Air beaten in, mol.
    pub air: f64,
}

/// Where the course is taken down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Being mixed, or waiting.
    Bench,
    /// In the oven.
    Oven,
    /// Cooled.
    Crumb,
}

/// A batter at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Where it is.
    pub stage: Stage,
    /// Minutes since mixing began; in the oven it stands still.
    pub minutes: f64,
    /// Temperature of the core, C.
    pub celsius: f64,
    /// pH.
    pub ph: f64,
    /// Carbon dioxide that became gas so far, mol.
    pub made: f64,
    /// The part of it that has left the batter, mol.
    pub lost: f64,
    /// Carbon dioxide dissolved, mol.
    pub dissolved: f64,
    /// Bicarbonate and carbonate that are left, mol, solid soda with them.
    pub kept: f64,
    /// The part of it that is carbonate, mol: two bicarbonates leave one behind as they lose their gas.
    pub carbonate: f64,
    /// Volume of all gas in the batter, L: carbon dioxide, air, and the steam that goes with them.
    pub litres: f64,
}

/// The pressure of water over pure water, atm; none below 0 C, where it is next to nothing.
fn steam(celsius: f64) -> f64 {
    saturation_pressure(Temperature::celsius(celsius)).map_or(0.0, Pressure::to_atmospheres)
}

/// The course, from the end of mixing to the crumb, which is the last state. `None` without water.
pub fn course(batter: &Batter, handling: &Handling) -> Option<Vec<State>> {
    let mut walk = Walk {
        batter,
        handling,
        made: 0.0,
        lost: 0.0,
        last: None,
    };
    batter.solution.in_water(batter.water)?;
    let mut states = Vec::new();
    let mut last = walk.state(Stage::Bench, MIXING, handling.bench, DRIVEN_OUT);
    states.push(last);
    let waits = handling.waits.clamp(0.0, 24.0 * 60.0);
    const STEPS: u8 = 3;
    for step in 1..=STEPS {
        let minutes = MIXING + waits * f64::from(step) / f64::from(STEPS);
        let leak = 1.0 - (-LEAKS * (minutes - last.minutes)).exp();
        walk.leak(leak);
        last = walk.state(Stage::Bench, minutes, handling.bench, 0.0);
        states.push(last);
    }
    let (mut celsius, hottest) = (handling.bench, handling.hottest());
    while celsius < hottest {
        celsius = (celsius + WARMER).min(hottest);
        states.push(walk.state(Stage::Oven, last.minutes, celsius, 0.0));
    }
    states.push(walk.crumb(last.minutes));
    Some(states)
}

/// The batter at a temperature of its core, between the two states beside it; the hottest beyond them. `None` where it
/// has no course.
pub fn at(course: &[State], celsius: f64) -> Option<State> {
    let mut oven = course.iter().filter(|state| state.stage == Stage::Oven);
    let after = oven.clone().find(|state| state.celsius >= celsius);
    let Some(after) = after else {
        return oven.next_back().copied();
    };
    let before = course
        .iter()
        .rfind(|state| state.stage != Stage::Crumb && state.celsius < celsius);
    let Some(before) = before else {
        return Some(*after);
    };
    let part = (celsius - before.celsius) / (after.celsius - before.celsius);
    let between = |of: fn(&State) -> f64| of(before) + part * (of(after) - of(before));
    Some(State {
        celsius,
        ph: between(|state| state.ph),
        made: between(|state| state.made),
        lost: between(|state| state.lost),
        dissolved: between(|state| state.dissolved),
        kept: between(|state| state.kept),
        carbonate: between(|state| state.carbonate),
        litres: between(|state| state.litres),
        ..*after
    })
}

/// The crumb's water, cold, every acid at work and in balance with the carbon dioxide in its pores; and the soda that
/// stays solid beside it, mol. `None` without water.
pub fn crumb(batter: &Batter) -> Option<(Answer, f64)> {
    let mut solution = batter.at_work(f64::INFINITY, HOTTEST);
    solution.celsius = 25.0;
    solution.carbon = Carbon::Open {
        pressure_atm: CRUMB_PRESSURE,
    };
    batter.dissolve(solution, None)
}

impl Batter {
    /// Where there is too little water to dissolve what is in it, takes as much as does: no kilogram holds more than
    /// [`MOST`] equivalents, as with all acids there in salts. Soda may stay solid and asks for none. Without any
    /// water it stays without.
    pub fn take_enough_water(&mut self) {
        let at_work = self.at_work(f64::INFINITY, HOTTEST);
        let acids: f64 = at_work
            .acids
            .iter()
            .zip(&CONSTANTS)
            .map(|(amount, constants)| amount * constants.steps.len() as f64)
            .sum();
        let buffer = at_work.buffer.taken_up(HIGHEST).0.abs() / 1000.0;
        let strong = (at_work.strong - self.soda).abs();
        if self.water > 0.0 {
            self.water = self
                .water
                .max((acids + buffer + strong + at_work.salt) / MOST);
        }
    }

    /// All the water with this in it, and the soda that stays solid, mol; sooner from the answer of one much like it.
    fn dissolve(&self, solution: Solution, like: Option<&Answer>) -> Option<(Answer, f64)> {
        let solution = solution.in_water(self.water)?;
        let (answer, solid) = dissolving::solve(&solution, self.soda / self.water, like);
        Some((answer, solid * self.water))
    }

    /// The water as it is then, leavening acids let in as far as they work.
    fn at_work(&self, minutes: f64, celsius: f64) -> Solution {
        let mut solution = self.solution;
        for acid in &self.acids {
            acid.let_in(&mut solution, acid.release.part(minutes, celsius));
        }
        // Ammonia goes with the heat, and its charge with it.
        solution.strong -= self.ammonium * Release::AMMONIA.part(minutes, celsius);
        solution.celsius = celsius;
        solution
    }
}

struct Walk<'a> {
    batter: &'a Batter,
    handling: &'a Handling,
    made: f64,
    lost: f64,
    /// The water as it was met last, from where the next is soon met, and the solid soda beside it, mol.
    last: Option<(Answer, f64)>,
}

impl Walk<'_> {
    /// The next state; `driven_out` is the part of what is made in it that does not stay.
    fn state(&mut self, stage: Stage, minutes: f64, celsius: f64, driven_out: f64) -> State {
        let solution = self.batter.at_work(minutes, celsius);
        let left = (self.batter.bicarbonate - self.made).max(0.0);
        let dry = (self.handling.air - WATER_ACTIVITY * steam(celsius)).max(0.02);
        // The more carbon dioxide there is beside the air in the bubbles, the higher its pressure, and the more the
        // water holds back; the two are met by false position between none and all.
        let answer = self.in_balance(solution, left, dry);
        let (mut ph, mut carbon, mut gas, mut solid) = (7.0, Dissolved::default(), 0.0, 0.0);
        if let Some((found, beside)) = answer {
            ph = found.ph;
            solid = beside;
            carbon = found.carbon;
            gas = found.gas * self.batter.water;
        }
        self.made += gas;
        self.lost += gas * driven_out;
        let there = self.made - self.lost + self.batter.air;
        State {
            stage,
            minutes,
            celsius,
            ph,
            made: self.made,
            lost: self.lost,
            dissolved: carbon.dioxide * self.batter.water,
            kept: (carbon.bicarbonate + carbon.carbonate) * self.batter.water + solid,
            carbonate: carbon.carbonate * self.batter.water,
            litres: there * GAS_CONSTANT * (celsius + ICE) / dry,
        }
    }

    /// By how much the pressure of so much gas, mol, beside the beaten air is more than that one.
    fn more_than(&self, pressure_atm: f64, gas: f64, dry: f64) -> f64 {
        let gas = self.made - self.lost + gas;
        let there = gas + self.batter.air;
        let balance = if there > 0.0 { dry * gas / there } else { 0.0 };
        balance - pressure_atm
    }

    /// The water under a pressure of carbon dioxide, and the soda that stays solid, mol.
    fn under(&self, pressure_atm: f64, mut solution: Solution, left: f64) -> Option<(Answer, f64)> {
        solution.carbon = Carbon::Venting {
            total: left,
            pressure_atm,
        };
        let like = self.last.as_ref().map(|(answer, _)| answer);
        self.batter.dissolve(solution, like)
    }

    /// The water once it is in balance with the bubbles, of which so much pressure is left for gas beside steam; and the
    /// soda beside it, mol.
    fn in_balance(&mut self, solution: Solution, left: f64, dry: f64) -> Option<(Answer, f64)> {
        // Without pressure all of it is gas; under all of it the most that can be is that none is.
        let mut low = (0.0, self.more_than(0.0, left, dry));
        let mut high = (dry, self.more_than(dry, 0.0, dry));
        let between = |one: (f64, f64), other: (f64, f64)| {
            (one.0 * other.1 - other.0 * one.1) / (other.1 - one.1)
        };
        // It is not far from where it was met last.
        let mut pressure = self.last.map_or(dry, |(last, _)| last.pressure_atm);
        let mut before = None;
        for _ in 0..12 {
            if !(pressure > low.0 && pressure < high.0) {
                pressure = between(low, high);
            }
            if !(pressure > low.0 && pressure < high.0) {
                pressure = dry;
            }
            let found = self.under(pressure, solution, left)?;
            self.last = Some(found);
            let tried = (
                pressure,
                self.more_than(pressure, found.0.gas * self.batter.water, dry),
            );
            if low.1 <= 0.0 || tried.1.abs() < MET * dry {
                break;
            }
            if tried.1 > 0.0 {
                low = tried;
            } else {
                high = tried;
            }
            pressure = between(
                tried,
                before.unwrap_or(if tried.1 > 0.0 { high } else { low }),
            );
            before = Some(tried);
        }
        self.last
    }

    /// A standing batter loses some of what it holds.
    fn leak(&mut self, part: f64) {
        self.lost += (self.made - self.lost) * part;
    }

    /// The crumb once it is cold.
    fn crumb(&mut self, minutes: f64) -> State {
        let found = crumb(self.batter);
        let (carbon, solid) = found.map_or((Dissolved::default(), 0.0), |(found, solid)| {
            (found.carbon, solid)
        });
        State {
            stage: Stage::Crumb,
            minutes,
            celsius: 25.0,
            ph: found.map_or(7.0, |(found, _)| found.ph),
            made: self.made,
            lost: self.lost,
            dissolved: carbon.dioxide * self.batter.water,
            kept: (carbon.bicarbonate + carbon.carbonate) * self.batter.water + solid,
            carbonate: carbon.carbonate * self.batter.water,
            litres: 0.0,
        }
    }
}
