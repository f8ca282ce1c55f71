//! Plain conduction against the series of tests/reference/heat.py.

use batterwright::baking::oven::heat::flow::Flow;
use batterwright::baking::oven::heat::mesh::{Mesh, Side, Symmetry, Vessel};

/// Conductivity, density and heat capacity of the script; the first temperature and the oven's.
const STUFF: [f64; 3] = [0.223, 694.0, 2950.0];
const START: f64 = 22.0;
const OVEN: f64 = 175.0;

/// A body of one row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Body<'a> {
    /// The word of its shape.
    pub shape: &'a str,
    /// Half its width, m.
    pub half: f64,
    /// Its depth, m.
    pub depth: f64,
    /// What comes in at base, wall and top, W/(m2 K).
    pub films: [f64; 3],
}

/// What is asked of it.
#[derive(Clone, Copy, Debug)]
pub enum Asked {
    /// The temperature at a part of the half width and a part of the depth, after so many seconds.
    At(f64, f64),
    /// The seconds until the coldest point is as warm as that.
    Until(f64),
}

struct Row<'a> {
    name: &'a str,
    body: Body<'a>,
    asked: Asked,
    answer: f64,
}

fn rows() -> Vec<Row<'static>> {
    let figure = |cell: &str| cell.parse().expect("a figure");
    include_str!("series.tsv")
        .lines()
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            let body = Body {
                shape: cells[1],
                half: figure(cells[2]) / 1000.0,
                depth: figure(cells[3]) / 1000.0,
                films: [figure(cells[4]), figure(cells[5]), figure(cells[6])],
            };
            let asked = match cells[9] {
                "until" => Asked::Until(figure(cells[10])),
                seconds => Asked::At(
                    figure(cells[8]) / 1000.0 / body.depth.max(1e-9),
                    figure(seconds),
                ),
            };
            Row {
                name: cells[0],
                body,
                asked,
                answer: figure(cells[cells.len() - 1]),
            }
        })
        .collect()
}

/// A grid of so many rows; the columns go with them.
fn mesh(body: Body, rows: usize) -> Mesh {
    let symmetry = match body.shape {
        "ball" => Symmetry::Ball,
        "bar" => Symmetry::Slab,
        _ => Symmetry::Axis,
    };
    let columns = match body.shape {
        "layer" => 1,
        "ball" => rows,
        _ => rows * 2 / 3,
    };
    let vessel = Vessel::straight(symmetry, body.half, body.depth.max(body.half) * 2.0);
    Mesh::new(vessel, body.depth, columns, rows)
}

/// How a body warms: the temperature at a part of its depth, on the axis, after so many seconds, or the seconds until
/// its coldest cell is so warm.
pub fn ours(body: Body, asked: Asked, rows: usize) -> f64 {
    let [conducts, density, heat] = STUFF;
    let mesh = mesh(body, rows);
    let mut flow = Flow::new(&mesh, 101_325.0);
    for (at, cell) in flow.cells.iter_mut().enumerate() {
        cell.celsius = START;
        cell.capacity = mesh.volumes[at] * density * heat;
        let between = |face: &batterwright::baking::oven::heat::mesh::Face| match face.area {
            0.0 => 0.0,
            area => area * conducts / (face.near + face.far),
        };
        cell.outward_heat = between(&mesh.outward[at]);
        cell.upward_heat = between(&mesh.upward[at]);
    }
    for (at, side, face) in &mesh.outside {
        let film = match side {
            Side::Base => body.films[0],
            Side::Wall => body.films[1],
            Side::Open => body.films[2],
        };
        if film > 0.0 {
            let passes = face.area / (1.0 / film + face.near / conducts);
            flow.cells[*at].outside_heat[0] += passes;
            flow.cells[*at].outside_heat[1] += passes * OVEN;
        }
    }
    let step = 480.0 / (rows * rows) as f64 * 10.0;
    // Nothing changes from step to step but temperatures.
    let fastest = flow.fastest();
    let mut now = 0.0;
    let mut came = 0.0;
    let coldest = |flow: &Flow| {
        flow.cells
            .iter()
            .map(|cell| cell.celsius)
            .fold(f64::MAX, f64::min)
    };
    loop {
        let before = coldest(&flow);
        let left = match asked {
            Asked::At(_, seconds) => seconds - now,
            Asked::Until(_) => step,
        };
        if left <= 1e-9 {
            break;
        }
        let seconds = step.min(left);
        let (gains, through) = flow.step(seconds, fastest);
        let gains: Vec<f64> = gains.map(|(heat, _)| heat).collect();
        came += through.heat;
        for (cell, heat) in flow.cells.iter_mut().zip(gains) {
            cell.celsius += heat / cell.capacity;
        }
        now += seconds;
        let after = coldest(&flow);
        if let Asked::Until(wanted) = asked
            && after >= wanted
        {
            return now - seconds * (after - wanted) / (after - before);
        }
    }
    let held: f64 = flow
        .cells
        .iter()
        .map(|cell| (cell.celsius - START) * cell.capacity)
        .sum();
    assert!(
        (held / came - 1.0).abs() < 1e-9,
        "heat that came {came}, held {held}"
    );
    let Asked::At(part, _) = asked else {
        unreachable!()
    };
    point(&flow, &mesh, body, part)
}

/// The temperature on the axis at a part of the depth: on from the cells about it, and at a face with its film.
fn point(flow: &Flow, mesh: &Mesh, body: Body, part: f64) -> f64 {
    let celsius = |cell: usize| flow.cells[cell].celsius;
    // Even about the axis: through the middles of the first two cells.
    let axis = |row: usize| {
        let at = row * mesh.columns;
        match body.shape {
            "layer" => celsius(at),
            // A ball's first cell is weighed nearer to its shell.
            _ => (9.0 * celsius(at) - celsius(at + 1)) / 8.0,
        }
    };
    if body.shape == "ball" {
        return axis(0);
    }
    let rows = mesh.rows;
    let at_face = |row: usize, film: f64| {
        let near = body.depth / rows as f64 / 2.0;
        let inside = STUFF[0] / near;
        (film * OVEN + inside * axis(row)) / (film + inside)
    };
    if part < 0.01 {
        at_face(0, body.films[0])
    } else if part > 0.99 {
        at_face(rows - 1, body.films[2])
    } else {
        let [a, b, c, d] = [rows / 2 - 2, rows / 2 - 1, rows / 2, rows / 2 + 1].map(axis);
        (9.0 * (b + c) - a - d) / 16.0
    }
}

/// Twenty-four rows: within 0.5 % of the temperature, and of the time.
#[test]
fn bodies_warm_as_their_series_say() {
    let mut worst: f64 = 0.0;
    for row in rows() {
        let found = ours(row.body, row.asked, 24);
        let off = found / row.answer - 1.0;
        worst = worst.max(off.abs());
        assert!(
            off.abs() < 0.005,
            "{} {:?}: {found}, should be {}",
            row.name,
            row.asked,
            row.answer
        );
    }
    println!("worst of {} figures: {:.2} %", rows().len(), worst * 100.0);
}

/// Half the cells, four times the error: the time until the coldest point is at 95 C.
#[test]
fn second_order() {
    for row in rows() {
        let Asked::Until(_) = row.asked else { continue };
        let errors = [12, 24, 48].map(|rows| ours(row.body, row.asked, rows) - row.answer);
        println!(
            "{:26} {:9.1} s: off by {:8.3} {:8.3} {:8.3} s at 12, 24, 48 rows",
            row.name, row.answer, errors[0], errors[1], errors[2]
        );
        let order = (errors[0] / errors[1]).abs().log2();
        assert!(
            order > 1.7 || errors[1].abs() < 0.5,
            "{}: order {order}",
            row.name
        );
    }
}
