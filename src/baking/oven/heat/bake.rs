//! One bake: a batter in a pan in an oven, from the door closing on it until its middle is done and on.
//!
//! Heat comes in by air and by radiation, through the pan or at the open top; water leaves at the top and wherever its
//! vapour reaches the pressure of the air; vapour carries heat between bubbles from warm to cool; the batter rises as its
//! gas does, until it sets. All in SI units; temperatures in C.

use super::flow::Flow;
use super::mesh::{Face, Mesh, Side, Symmetry, Vessel};
use super::stages::longest;
use super::stuff::{Batter, ICE, STEAM_GAS, Vapour, WATER_HEAT, carried};
use serde::Serialize;

/// How the batter grows: temperatures, rising, each with how many times its first volume the batter has there. The last
/// is where it sets, and it grows no more.
pub type Rise = Vec<[f64; 2]>;

/// The oven as the batter meets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oven {
    /// Its temperature, C.
    pub celsius: f64,
    /// By how much it is cooler once the door has been open, K, and how fast it is back, s.
    pub dip: [f64; 2],
    /// Heat that air brings to the open top, to the walls and to the base, W/(m2 K).
    pub convection: [f64; 3],
    /// What part of all radiation the top takes.
    pub radiation: f64,
    /// Pressure of the air, Pa.
    pub air: f64,
    /// Pressure of vapour in it, Pa.
    pub damp: f64,
}

/// What the pan is to heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Skin {
    /// What part of all radiation its outside takes.
    pub radiation: f64,
    /// What its wall is in the way of heat, m2 K/W, at its sides and at its base.
    pub resistance: [f64; 2],
    /// Heat that it takes itself, J/(m2 K).
    pub capacity: f64,
}

/// What goes into the oven.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// The batter.
    pub batter: Batter,
    /// Its temperature, C.
    pub celsius: f64,
    /// How it rises.
    pub rise: Rise,
    /// What it is in.
    pub vessel: Vessel,
    /// The pan's skin.
    pub skin: Skin,
    /// How deep it stands, m.
    pub depth: f64,
    /// Times what vapour carries through its bubbles: 1 as it is known.
    pub vapour: f64,
}

/// How fine a bake is solved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fineness {
    /// Cells from the axis to the wall.
    pub columns: usize,
    /// Cells from the base to the top.
    pub rows: usize,
    /// The longest step, s.
    pub step: f64,
    /// The most that a cell may warm in a step, K.
    pub warming: f64,
}

impl Fineness {
    /// The one that a page uses.
    pub const USUAL: Self = Self {
        columns: 9,
        rows: 22,
        step: 15.0,
        warming: 5.0,
    };

    /// The one for a section of a symmetry.
    pub fn usual(symmetry: Symmetry) -> Self {
        match symmetry {
            Symmetry::Ball => Self {
                columns: 20,
                rows: 1,
                ..Self::USUAL
            },
            Symmetry::Axis | Symmetry::Slab => Self::USUAL,
        }
    }

    /// Twice as fine all ways.
    pub fn halved(self) -> Self {
        Self {
            columns: self.columns * 2,
            rows: self.rows * 2,
            step: self.step / 2.0,
            warming: self.warming / 2.0,
        }
    }
}

/// The bake at one moment.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Moment {
    /// Seconds since the door closed.
    pub seconds: f64,
    /// The coldest of it, C.
    pub centre: f64,
    /// Beside the wall, half-way up, C.
    pub edge: f64,
    /// The skin of the top, in the middle, C.
    pub top: f64,
    /// The part of its first mass that it has lost.
    pub lost: f64,
    /// How many times its first volume it has.
    pub times: f64,
}

/// A bake on its way.
#[derive(Clone, Debug)]
pub struct Bake {
    load: Load,
    oven: Oven,
    fineness: Fineness,
    mesh: Mesh,
    flow: Flow,
    cells: Vec<Inside>,
    /// How many times its first volume each cell has.
    times: Vec<f64>,
    /// Temperature of the skin at each face to the outside, C.
    skins: Vec<f64>,
    step: f64,
    mass: f64,
    /// Heat that came in and that left with vapour, J; vapour, kg.
    through: [f64; 3],
    now: Moment,
}

/// What is in a cell.
#[derive(Clone, Copy, Debug, Default)]
struct Inside {
    /// Its first water, kg.
    first_water: f64,
    /// What of that is left, as a part.
    water: f64,
    celsius: f64,
    /// The hottest that it was, C.
    hottest: f64,
    /// Heat that all but its water takes, the pan's beside it too, J/K.
    dry: f64,
}

impl Bake {
    /// A load as the door closes on it.
    pub fn new(load: Load, oven: Oven, fineness: Fineness) -> Self {
        let mesh = Mesh::new(
            load.vessel.clone(),
            load.depth,
            fineness.columns,
            fineness.rows,
        );
        let flow = Flow::new(&mesh, oven.air);
        let batter = load.batter;
        let mut cells: Vec<Inside> = mesh
            .volumes
            .iter()
            .map(|volume| {
                let mass = volume * batter.density;
                Inside {
                    first_water: mass * batter.parts[0],
                    water: 1.0,
                    celsius: load.celsius,
                    hottest: load.celsius,
                    dry: mass * batter.dry_heat(),
                }
            })
            .collect();
        for (cell, side, face) in &mesh.outside {
            if *side != Side::Open {
                cells[*cell].dry += face.area * load.skin.capacity;
            }
        }
        let mut bake = Self {
            mass: mesh.volume() * batter.density,
            times: vec![1.0; cells.len()],
            skins: vec![load.celsius; mesh.outside.len()],
            step: 1.0,
            through: [0.0; 3],
            now: Moment::default(),
            load,
            oven,
            fineness,
            mesh,
            flow,
            cells,
        };
        bake.now = bake.moment(0.0);
        bake
    }

    /// How it stands.
    pub fn now(&self) -> Moment {
        self.now
    }

    /// Heat that came in less heat that left and heat that is in it beyond what was there at the start, as a part of
    /// what came in: nothing, but for rounding.
    pub fn imbalance(&self) -> f64 {
        let first = self.load.celsius;
        let gained: f64 = self
            .cells
            .iter()
            .map(|cell| {
                cell.dry * (cell.celsius - first)
                    + WATER_HEAT * cell.first_water * (cell.water * cell.celsius - first)
            })
            .sum();
        (self.through[0] - self.through[1] - gained) / self.through[0].abs().max(1e-9)
    }

    /// Water that left less water that is missing from it, as a part of its first mass.
    pub fn water_imbalance(&self) -> f64 {
        let missing: f64 = self
            .cells
            .iter()
            .map(|cell| cell.first_water * (1.0 - cell.water))
            .sum();
        (self.through[2] - missing) / self.mass
    }

    /// Takes one step, and tells how it stands.
    pub fn step(&mut self) -> Moment {
        self.set_flow();
        let fastest = self.flow.fastest();
        let seconds = self.step.min(longest(fastest)).min(self.fineness.step);
        let (gains, through) = self.flow.step(seconds, fastest);
        let mut most: f64 = 0.0;
        for (cell, (heat, water)) in self.cells.iter_mut().zip(gains) {
            let full = cell.dry + WATER_HEAT * cell.first_water * cell.water;
            let heat = full * cell.celsius + heat;
            cell.water += water / cell.first_water;
            let after = heat / (cell.dry + WATER_HEAT * cell.first_water * cell.water);
            most = most.max((after - cell.celsius).abs());
            cell.celsius = after;
            cell.hottest = cell.hottest.max(after);
        }
        for (sum, part) in
            self.through
                .iter_mut()
                .zip([through.heat, through.carried, through.vapour])
        {
            *sum += part;
        }
        let mut has_grown = false;
        for (times, cell) in self.times.iter_mut().zip(&self.cells) {
            let now = grown(&self.load.rise, cell.hottest);
            has_grown |= now != *times;
            *times = now;
        }
        if has_grown {
            self.mesh.grow(&self.times);
        }
        let wanted = seconds * self.fineness.warming / most.max(1e-6);
        self.step = wanted.clamp(seconds / 2.0, seconds * 1.5).max(0.05);
        self.now = self.moment(self.now.seconds + seconds);
        self.now
    }

    /// The oven's temperature now.
    fn oven_now(&self) -> f64 {
        let [dip, back] = self.oven.dip;
        self.oven.celsius - dip * (-self.now.seconds / back).exp()
    }

    /// What the next step goes by.
    fn set_flow(&mut self) {
        let batter = self.load.batter;
        let solid = batter.density / batter.solid_density();
        let air = self.oven.air;
        // Of each cell: conductivity, and what vapour passes it by, kg/(m s Pa).
        let mut passes = vec![[0.0; 2]; self.cells.len()];
        for (at, inside) in self.cells.iter().enumerate() {
            let vapour: Vapour = batter.vapour(inside.water, inside.celsius);
            let gas = (1.0 - solid / self.times[at]).clamp(0.0, 0.97);
            passes[at] = batter.conductivity(inside.water, gas, &vapour, air, self.load.vapour);
            let carried = carried(inside.celsius);
            let capacity = inside.dry + WATER_HEAT * inside.first_water * inside.water.max(0.0);
            let cell = &mut self.flow.cells[at];
            cell.celsius = inside.celsius;
            cell.capacity = capacity;
            cell.pressure = vapour.pressure;
            cell.by_kelvin = vapour.by_kelvin;
            cell.by_water = vapour.by_water / inside.first_water.max(1e-12);
            cell.carried = carried;
            cell.held = WATER_HEAT * inside.celsius;
            // So that a cell that is too hot is back within seconds.
            cell.boils = capacity / (carried * vapour.by_kelvin.max(1e-3) * BOILS_WITHIN)
                * (inside.water / FILM).clamp(0.0, 1.0);
            cell.outside_heat = [0.0; 2];
            cell.outside_vapour = [0.0; 2];
        }
        let columns = self.mesh.columns;
        let through = |face: &Face, one: [f64; 2], other: [f64; 2]| {
            [0, 1].map(|which| face.area / (face.near / one[which] + face.far / other[which]))
        };
        for at in 0..self.cells.len() {
            let (outward, upward) = (&self.mesh.outward[at], &self.mesh.upward[at]);
            let cell = &mut self.flow.cells[at];
            if outward.area > 0.0 {
                [cell.outward_heat, cell.outward_vapour] =
                    through(outward, passes[at], passes[at + 1]);
            }
            if upward.area > 0.0 {
                [cell.upward_heat, cell.upward_vapour] =
                    through(upward, passes[at], passes[at + columns]);
            }
        }
        let oven = self.oven_now();
        for (number, (at, side, face)) in self.mesh.outside.iter().enumerate() {
            let (heat, vapour) = self.film(*side, self.skins[number], oven);
            let [conducts, passes] = passes[*at];
            let by_heat = face.area / (1.0 / heat + face.near / conducts);
            let cell = &mut self.flow.cells[*at];
            cell.outside_heat[0] += by_heat;
            cell.outside_heat[1] += by_heat * oven;
            if vapour > 0.0 {
                let by_vapour = face.area / (1.0 / vapour + face.near / passes);
                cell.outside_vapour[0] += by_vapour;
                cell.outside_vapour[1] += by_vapour * self.oven.damp;
            }
            let flux = by_heat / face.area.max(1e-12) * (oven - cell.celsius);
            self.skins[number] = cell.celsius + flux * face.near / conducts;
        }
    }

    /// What a face to the outside passes: heat, W/(m2 K), and vapour, kg/(m2 s Pa).
    fn film(&self, side: Side, skin: f64, oven: f64) -> (f64, f64) {
        let [top, wall, base] = self.oven.convection;
        let (hot, cool) = (oven + ICE, skin + ICE);
        let radiation = STEFAN_BOLTZMANN * (hot * hot + cool * cool) * (hot + cool);
        let pan = &self.load.skin;
        let by_pan = |convection: f64, resistance: f64| {
            1.0 / (1.0 / (convection + pan.radiation * radiation) + resistance)
        };
        match side {
            Side::Open => {
                // Lewis: vapour goes as heat does.
                let vapour = top / (AIR_HEAT * LEWIS) / (STEAM_GAS * cool);
                (top + self.oven.radiation * radiation, vapour)
            }
            Side::Wall => (by_pan(wall, pan.resistance[0]), 0.0),
            Side::Base => (by_pan(base, pan.resistance[1]), 0.0),
        }
    }

    fn moment(&self, seconds: f64) -> Moment {
        let (columns, rows) = (self.mesh.columns, self.mesh.rows);
        let celsius = |cell: usize| self.cells[cell].celsius;
        let missing: f64 = self
            .cells
            .iter()
            .map(|cell| cell.first_water * (1.0 - cell.water))
            .sum();
        let grown: f64 = self
            .mesh
            .volumes
            .iter()
            .zip(&self.times)
            .map(|(volume, times)| volume * times)
            .sum();
        let is_top = |(cell, side, _): &(usize, Side, Face)| {
            *cell == (rows - 1) * columns && *side == Side::Open
        };
        let top = self.mesh.outside.iter().position(is_top);
        Moment {
            seconds,
            centre: self
                .cells
                .iter()
                .map(|cell| cell.celsius)
                .fold(f64::MAX, f64::min),
            edge: celsius(rows / 2 * columns + columns - 1),
            top: top.map_or_else(|| celsius(columns - 1), |top| self.skins[top]),
            lost: missing / self.mass,
            times: grown / self.mesh.volume(),
        }
    }
}

/// Stefan and Boltzmann's constant, W/(m2 K4).
const STEFAN_BOLTZMANN: f64 = 5.670_374e-8;
/// Heat that a cubic metre of warm air takes, J/K, at 100 C.
const AIR_HEAT: f64 = 950.0;
/// How much faster vapour spreads in air than heat, to the power of 2/3.
const LEWIS: f64 = 0.9;
/// A cell that boils is back at its boiling point within this, s.
const BOILS_WITHIN: f64 = 4.0;
/// Below this part of its first water a cell boils the slower the drier it is.
const FILM: f64 = 0.05;

/// How many times its first volume a batter has once it was so hot.
fn grown(rise: &[[f64; 2]], celsius: f64) -> f64 {
    let Some(after) = rise.iter().position(|point| point[0] >= celsius) else {
        return rise.last().map_or(1.0, |last| last[1]);
    };
    let [high, times] = rise[after];
    let Some(before) = after.checked_sub(1) else {
        return times;
    };
    let [low, less] = rise[before];
    less + (times - less) * (celsius - low) / (high - low)
}

/// What a run came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// The bake, moment after moment.
    pub moments: Vec<Moment>,
    /// When the coldest of it was as warm as wanted, s; `None` where it never was in the time given.
    pub done: Option<f64>,
}

/// Bakes until the coldest of it is as warm as that, C, or so many seconds are over.
pub fn until(mut bake: Bake, celsius: f64, most: f64) -> (Course, Bake) {
    let mut moments = vec![bake.now()];
    let mut done = None;
    while done.is_none() && bake.now().seconds < most {
        let before = bake.now();
        let after = bake.step();
        moments.push(after);
        if after.centre >= celsius {
            let part = (celsius - before.centre) / (after.centre - before.centre);
            done = Some(before.seconds + part * (after.seconds - before.seconds));
        }
    }
    (Course { moments, done }, bake)
}
