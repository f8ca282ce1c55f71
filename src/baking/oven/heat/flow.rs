//! Heat and vapour between cells and to the outside, over one step: everything is taken as straight about where the
//! step begins, so that a stage costs a few sums for each face.

use super::mesh::Mesh;
use super::stages::Stages;

/// A cell over one step.
#[derive(Clone, Copy, Debug, Default)]
pub struct Cell {
    /// Its temperature at the start, C.
    pub celsius: f64,
    /// Heat that warms it, J/K.
    pub capacity: f64,
    /// Pressure of vapour in it at the start, Pa.
    pub pressure: f64,
    /// By how much that rises with temperature, Pa/K.
    pub by_kelvin: f64,
    /// By how much it rises with water, Pa/kg.
    pub by_water: f64,
    /// Heat that a kilogram of vapour carries off, J/kg, from water at 0 C.
    pub carried: f64,
    /// Heat that water itself holds, J/kg: water that comes or goes brings it.
    pub held: f64,
    /// To the next cell outwards: heat, W/K.
    pub outward_heat: f64,
    /// To the next cell outwards: vapour, kg/(s Pa).
    pub outward_vapour: f64,
    /// To the next cell upwards: heat, W/K.
    pub upward_heat: f64,
    /// To the next cell upwards: vapour, kg/(s Pa).
    pub upward_vapour: f64,
    /// To the outside: heat, W/K, and that times the temperature out there, W.
    pub outside_heat: [f64; 2],
    /// To the outside: vapour, kg/(s Pa), and that times the pressure of vapour there, kg/s.
    pub outside_vapour: [f64; 2],
    /// Vapour that leaves from within once its pressure is above that of the air, kg/(s Pa).
    pub boils: f64,
}

/// What has gone through the outside, in all.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Through {
    /// Heat that came in, J.
    pub heat: f64,
    /// Vapour that left, kg.
    pub vapour: f64,
    /// Heat that it carried off, J.
    pub carried: f64,
}

/// The change of every cell, and what went through the outside.
#[derive(Clone, Debug, Default)]
pub struct Flow {
    /// The cells as they are over the next step.
    pub cells: Vec<Cell>,
    /// Pressure of the air, Pa.
    pub air: f64,
    /// Columns of the mesh.
    pub columns: usize,
    stages: Stages,
    state: Vec<f64>,
    /// Of each cell, for the moment: its temperature and the pressure in it, or sums of what it passes.
    now: Vec<[f64; 2]>,
}

impl Flow {
    /// A flow through a mesh.
    pub fn new(mesh: &Mesh, air: f64) -> Self {
        Self {
            cells: vec![Cell::default(); mesh.columns * mesh.rows],
            air,
            columns: mesh.columns,
            ..Self::default()
        }
    }

    /// A bound of the fastest rate at which anything changes, 1/s (Gershgorin's circles).
    pub fn fastest(&mut self) -> f64 {
        let columns = self.columns;
        let sums = &mut self.now;
        sums.clear();
        sums.resize(self.cells.len(), [0.0; 2]);
        for (at, cell) in self.cells.iter().enumerate() {
            for (next, heat, vapour) in [
                (at + 1, cell.outward_heat, cell.outward_vapour),
                (at + columns, cell.upward_heat, cell.upward_vapour),
            ] {
                if next < sums.len() {
                    for side in [at, next] {
                        sums[side][0] += heat;
                        sums[side][1] += vapour;
                    }
                }
            }
            sums[at][0] += cell.outside_heat[0] / 2.0;
            sums[at][1] += (cell.outside_vapour[0] + cell.boils) / 2.0;
        }
        let rate = |cell: &Cell, [heat, vapour]: &[f64; 2]| {
            let pressure = cell.carried * cell.by_kelvin / cell.capacity + cell.by_water;
            2.0 * (heat / cell.capacity + vapour * pressure)
        };
        self.cells
            .iter()
            .zip(sums.iter())
            .map(|(cell, sums)| rate(cell, sums))
            .fold(1e-9, f64::max)
    }

    /// Takes one step, s, at a bound of its rates from [`Self::fastest`]. Comes out: the heat, J, and the water, kg, that each cell gained, and what went through the
    /// outside.
    pub fn step(
        &mut self,
        seconds: f64,
        fastest: f64,
    ) -> (impl Iterator<Item = (f64, f64)>, Through) {
        let size = self.cells.len();
        let Self {
            cells,
            air,
            columns,
            stages,
            state,
            now,
        } = self;
        state.clear();
        state.resize(2 * size + 3, 0.0);
        now.resize(size, [0.0; 2]);
        stages.step(state, seconds, fastest, |state, slope| {
            slopes(cells, *air, *columns, now, state, slope);
        });
        let through = Through {
            heat: state[2 * size],
            vapour: state[2 * size + 1],
            carried: state[2 * size + 2],
        };
        let gains = self.state[..2 * size]
            .chunks_exact(2)
            .map(|pair| (pair[0], pair[1]));
        (gains, through)
    }
}

/// The change in a second of heat and water of every cell, pair by pair, and of what goes through the outside.
fn slopes(
    cells: &[Cell],
    air: f64,
    columns: usize,
    now: &mut [[f64; 2]],
    state: &[f64],
    slope: &mut [f64],
) {
    for ((cell, now), gained) in cells.iter().zip(now.iter_mut()).zip(state.chunks_exact(2)) {
        let warmer = (gained[0] - cell.held * gained[1]) / cell.capacity;
        *now = [
            cell.celsius + warmer,
            cell.pressure + cell.by_kelvin * warmer + cell.by_water * gained[1],
        ];
    }
    slope.fill(0.0);
    let size = cells.len();
    let (gains, through) = slope.split_at_mut(2 * size);
    let mut pass = |from: usize, to: usize, heat: f64, vapour: f64| {
        let [warm, wet] = now[from];
        let [warm_there, wet_there] = now[to];
        let steam = vapour * (wet - wet_there);
        let carried = if steam > 0.0 {
            cells[from].carried
        } else {
            cells[to].carried
        };
        let heat = heat * (warm - warm_there) + steam * carried;
        gains[2 * from] -= heat;
        gains[2 * from + 1] -= steam;
        gains[2 * to] += heat;
        gains[2 * to + 1] += steam;
    };
    for (at, cell) in cells.iter().enumerate() {
        if cell.outward_heat > 0.0 {
            pass(at, at + 1, cell.outward_heat, cell.outward_vapour);
        }
        if cell.upward_heat > 0.0 {
            pass(at, at + columns, cell.upward_heat, cell.upward_vapour);
        }
    }
    for (at, cell) in cells.iter().enumerate() {
        let [warm, wet] = now[at];
        let heat = cell.outside_heat[1] - cell.outside_heat[0] * warm;
        // The oven's damp is not taken up: a cool batter wets only for its first minute.
        let steam = (cell.outside_vapour[0] * wet - cell.outside_vapour[1]).max(0.0)
            + cell.boils * (wet - air).max(0.0);
        let carried = steam * cell.carried;
        gains[2 * at] += heat - carried;
        gains[2 * at + 1] -= steam;
        through[0] += heat;
        through[1] += steam;
        through[2] += carried;
    }
}
