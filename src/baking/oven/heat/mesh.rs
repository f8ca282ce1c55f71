//! The section of a pan's filling cut into cells: a body turned about an axis, a slab of which one half is drawn, or a ball.
//!
//! Cells stand in columns from the axis (or a tube's core) to the wall, and in rows from the base to the top. They keep
//! what is in them: as the filling rises, a cell grows upwards and pushes those above it. Lengths in m, areas in m2,
//! volumes in m3; of a slab for each metre of its length and for one half of its width.

use std::f64::consts::PI;

/// What a section stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symmetry {
    /// A body turned about the axis.
    Axis,
    /// A long slab; the axis is its middle.
    Slab,
    /// A ball, all of it one row from the middle to the shell.
    Ball,
}

/// A wall from the base up, straight from one level to the next, and drawn on upwards above the last.
#[derive(Clone, Debug, PartialEq)]
pub struct Vessel {
    /// What the section stands for.
    pub symmetry: Symmetry,
    /// Height above the base, then the half widths of core and wall there; at least two, rising.
    pub levels: Vec<[f64; 3]>,
    /// Where the wall ends.
    pub brim: f64,
}

impl Vessel {
    /// One with a straight wall.
    pub fn straight(symmetry: Symmetry, half: f64, brim: f64) -> Self {
        Self {
            symmetry,
            levels: vec![[0.0, 0.0, half], [brim, 0.0, half]],
            brim,
        }
    }

    /// Whether its walls stand upright.
    fn is_upright(&self) -> bool {
        self.levels
            .windows(2)
            .all(|pair| pair[0][1..] == pair[1][1..])
    }

    /// Half widths of core and wall at a height.
    fn across(&self, height: f64) -> (f64, f64) {
        let last = self.levels.len() - 1;
        let above = self
            .levels
            .iter()
            .position(|level| level[0] >= height)
            .unwrap_or(last)
            .clamp(1, last);
        let ([low, core, wall], [high, core_above, wall_above]) =
            (self.levels[above - 1], self.levels[above]);
        let part = (height - low) / (high - low);
        (
            (core + (core_above - core) * part).max(0.0),
            (wall + (wall_above - wall) * part).max(1e-6),
        )
    }
}

/// A face between two cells, or between a cell and the outside.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Face {
    /// Its area.
    pub area: f64,
    /// From it to the middle of the cell on this side.
    pub near: f64,
    /// From it to the middle of the cell on the other side; nothing where that is the outside.
    pub far: f64,
}

/// What lies at the outside of a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The open top, or crumb that stands above the brim.
    Open,
    /// The wall of the pan, or its core.
    Wall,
    /// The base of the pan.
    Base,
}

/// The cells and their faces as they are now.
#[derive(Clone, Debug)]
pub struct Mesh {
    /// Cells from the axis to the wall.
    pub columns: usize,
    /// Cells from the base to the top.
    pub rows: usize,
    /// Volume of each cell at the start; cell `row * columns + column`.
    pub volumes: Vec<f64>,
    /// The face of each cell towards the wall; without area in the last column.
    pub outward: Vec<Face>,
    /// The face of each cell upwards; without area in the last row.
    pub upward: Vec<Face>,
    /// Each face to the outside, with its cell.
    pub outside: Vec<(usize, Side, Face)>,
    vessel: Vessel,
    /// Between upright walls, the sides of every column and its area, which are the same at all heights; empty elsewhere.
    upright: Vec<([f64; 2], f64)>,
}

impl Mesh {
    /// A filling of so much depth in a vessel; a ball is filled whole.
    pub fn new(vessel: Vessel, depth: f64, columns: usize, rows: usize) -> Self {
        let rows = if vessel.symmetry == Symmetry::Ball {
            1
        } else {
            rows
        };
        let size = columns * rows;
        let mut mesh = Self {
            columns,
            rows,
            volumes: vec![0.0; size],
            outward: vec![Face::default(); size],
            upward: vec![Face::default(); size],
            outside: Vec::new(),
            vessel,
            upright: Vec::new(),
        };
        if mesh.vessel.is_upright() {
            mesh.upright = (0..columns)
                .map(|column| (mesh.sides(column, 0.0), mesh.area(column, 0.0)))
                .collect();
        }
        for row in 0..rows {
            let (low, high) = (level(depth, row, rows), level(depth, row + 1, rows));
            for column in 0..columns {
                // Simpson's rule is exact for straight walls.
                let areas = [low, (low + high) / 2.0, high].map(|height| mesh.area(column, height));
                mesh.volumes[row * columns + column] = match mesh.vessel.symmetry {
                    Symmetry::Ball => mesh.shell(column),
                    _ => (high - low) / 6.0 * (areas[0] + 4.0 * areas[1] + areas[2]),
                };
            }
        }
        mesh.grow(&vec![1.0; size]);
        mesh
    }

    /// All that is in it at the start.
    pub fn volume(&self) -> f64 {
        self.volumes.iter().sum()
    }

    /// Takes the faces where each cell has so many times its first volume.
    pub fn grow(&mut self, times: &[f64]) {
        self.outside.clear();
        if self.vessel.symmetry == Symmetry::Ball {
            return self.shells();
        }
        let (columns, rows) = (self.columns, self.rows);
        // Heights of the cells, and of their bases.
        let mut base = vec![0.0; columns];
        let mut thick = vec![0.0; columns * rows];
        let mut low = vec![0.0; columns * rows];
        for cell in 0..columns * rows {
            let column = cell % columns;
            let volume = self.volumes[cell] * times[cell];
            let mut height = volume / self.area(column, base[column]).max(1e-12);
            // Where walls lean, by where its own middle comes to lie.
            for _ in 0..if self.upright.is_empty() { 3 } else { 0 } {
                height = volume / self.area(column, base[column] + height / 2.0).max(1e-12);
            }
            low[cell] = base[column];
            thick[cell] = height;
            base[column] += height;
        }
        for cell in 0..columns * rows {
            let (column, row) = (cell % columns, cell / columns);
            let middle = low[cell] + thick[cell] / 2.0;
            let [left, right] = self.sides(column, middle);
            let near = (right - left) / 2.0;
            if column + 1 < columns {
                let beside = cell + 1;
                let [next_left, next_right] =
                    self.sides(column + 1, low[beside] + thick[beside] / 2.0);
                self.outward[cell] = Face {
                    area: (thick[cell] + thick[beside]) / 2.0 * self.round(right),
                    near,
                    far: (next_right - next_left) / 2.0,
                };
            } else {
                self.wall(cell, middle, right, thick[cell], near, true);
            }
            if column == 0 && left > 0.0 {
                self.wall(cell, middle, left, thick[cell], near, false);
            }
            let top = low[cell] + thick[cell];
            let face = Face {
                area: self.area(column, top),
                near: thick[cell] / 2.0,
                far: 0.0,
            };
            if row + 1 < rows {
                self.upward[cell] = Face {
                    far: thick[cell + columns] / 2.0,
                    ..face
                };
            } else {
                self.outside.push((cell, Side::Open, face));
            }
            if row == 0 {
                let area = self.area(column, 0.0);
                self.outside.push((cell, Side::Base, Face { area, ..face }));
            }
        }
    }

    /// The face of a cell to the wall or the core; to the air where it stands above the brim.
    fn wall(&mut self, cell: usize, middle: f64, at: f64, thick: f64, near: f64, outer: bool) {
        let lean = |height: f64| {
            let (core, wall) = self.vessel.across(height);
            if outer { wall } else { core }
        };
        let slope = match self.upright.is_empty() {
            true => (lean(middle + thick / 2.0) - lean(middle - thick / 2.0)) / thick.max(1e-9),
            false => 0.0,
        };
        let side = if middle > self.vessel.brim {
            Side::Open
        } else {
            Side::Wall
        };
        let face = Face {
            area: thick * slope.hypot(1.0) * self.round(at),
            near: near / slope.hypot(1.0),
            far: 0.0,
        };
        self.outside.push((cell, side, face));
    }

    /// Inner and outer half width of a column at a height.
    fn sides(&self, column: usize, height: f64) -> [f64; 2] {
        if let Some((sides, _)) = self.upright.get(column) {
            return *sides;
        }
        let (core, wall) = self.vessel.across(height);
        [column, column + 1]
            .map(|side| core + (wall - core).max(0.0) * side as f64 / self.columns as f64)
    }

    /// How far round a face at a half width goes.
    fn round(&self, half: f64) -> f64 {
        match self.vessel.symmetry {
            Symmetry::Axis => 2.0 * PI * half,
            Symmetry::Slab | Symmetry::Ball => 1.0,
        }
    }

    /// The area of a column, seen from above, at a height.
    fn area(&self, column: usize, height: f64) -> f64 {
        if let Some((_, area)) = self.upright.get(column) {
            return *area;
        }
        let [inner, outer] = self.sides(column, height);
        match self.vessel.symmetry {
            Symmetry::Axis => PI * (outer * outer - inner * inner),
            Symmetry::Slab | Symmetry::Ball => outer - inner,
        }
    }

    /// The volume of a shell of a ball.
    fn shell(&self, column: usize) -> f64 {
        let [inner, outer] = self.sides(column, 0.0);
        4.0 / 3.0 * PI * (outer.powi(3) - inner.powi(3))
    }

    /// The faces of a ball, which has no room to grow in.
    fn shells(&mut self) {
        for column in 0..self.columns {
            let [inner, outer] = self.sides(column, 0.0);
            let near = (outer - inner) / 2.0;
            let face = Face {
                area: 4.0 * PI * outer * outer,
                near,
                far: near,
            };
            if column + 1 < self.columns {
                self.outward[column] = face;
            } else {
                self.outside
                    .push((column, Side::Wall, Face { far: 0.0, ..face }));
            }
        }
    }
}

/// The height of a level of rows of equal depth.
fn level(depth: f64, row: usize, rows: usize) -> f64 {
    depth * row as f64 / rows as f64
}
