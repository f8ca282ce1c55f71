//! What extension tables tell of baking at a height, from `altitude.csv`.
//!
//! Between two rows the line is drawn straight in height. Below a table's lowest row it asks for nothing; above its highest
//! row it says nothing, but for the one that is for "10,000 ft and above".

use super::altitude::Limits;
use crate::baking::packed::{self, Cells, figures};
use crate::baking::quantity::Height;
use crate::baking::source::{self, Cited, Confidence};
use std::sync::OnceLock;

/// Tablespoons in a cup.
const TABLESPOONS: f64 = 16.0;
/// The row that holds from there on up, m.
const AND_ABOVE: f64 = 3048.0;

/// The keys of the sources behind what is told of a height.
pub const ALTITUDE_SOURCES: [&str; 5] = [
    "colorado_extension",
    "iapws_if97",
    "icao_7488",
    "us_home_economics",
    "wyoming_extension",
];

/// What changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// Leavening taken off, as a part of it.
    Leavening,
    /// Sugar taken off, as a part of it.
    Sugar,
    /// Liquid added, as a part of it.
    Liquid,
    /// The oven set hotter, F.
    Oven,
}

/// What a table tells at a height.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Which table, and how it is known.
    pub cited: Cited,
    /// The least.
    pub low: f64,
    /// The most.
    pub high: f64,
}

/// How far the tables go from one height to another: the most that any of them asks for, from nothing at the sea.
pub fn limits(from: Height, to: Height) -> Limits {
    let [leavening, sugar, liquid] =
        [Change::Leavening, Change::Sugar, Change::Liquid].map(|change| {
            let at = |height: Height| {
                let most = furthest(change, height.to_metres());
                match change {
                    Change::Liquid => (1.0 + most).ln(),
                    _ => -(1.0 - most).ln(),
                }
            };
            (at(to) - at(from)).abs()
        });
    Limits {
        leavening,
        sugar,
        liquid,
    }
}

/// The most that any table asks for; below the lowest row in proportion to the height, above a table's highest what it
/// asks for there.
fn furthest(change: Change, metres: f64) -> f64 {
    let most = |metres: f64| {
        let told = told(change, Height::metres(metres));
        told.iter().map(|told| told.high).fold(0.0, f64::max)
    };
    let heights = || rows().iter().map(|row| row.metres);
    let lowest = heights().fold(f64::INFINITY, f64::min);
    if metres < lowest {
        return most(lowest) * (metres / lowest).max(0.0);
    }
    // What is asked for at a lower height is asked for higher up.
    let below = heights().filter(|height| *height <= metres).map(most);
    below.fold(most(metres), f64::max)
}

impl Told {
    /// The table's name, short enough for a list, and how it is known where it was not read.
    pub fn name(&self) -> String {
        let source = self.cited.source;
        let name = source.citation.split(':').next().unwrap_or(source.key);
        match self.cited.confidence {
            Confidence::Published => name.to_owned(),
            other => format!("{name} ({})", other.words()),
        }
    }
}

struct Row {
    metres: f64,
    /// Low and high of each change, in the order of [`Change`]; `None` where the table has nothing.
    ends: [Option<[f64; 2]>; 4],
    cited: Cited,
}

/// What each table tells of a change at a height, those that were read first.
pub fn told(change: Change, height: Height) -> Vec<Told> {
    let mut sources: Vec<&'static str> = Vec::new();
    for row in rows() {
        if !sources.contains(&row.cited.source.key) {
            sources.push(row.cited.source.key);
        }
    }
    let mut told: Vec<Told> = sources
        .into_iter()
        .filter_map(|key| of_table(key, change, height.to_metres()))
        .collect();
    told.sort_by_key(|told| told.cited.confidence);
    told
}

/// What one table tells.
fn of_table(key: &str, change: Change, metres: f64) -> Option<Told> {
    let mut own: Vec<(&Row, [f64; 2])> = rows()
        .iter()
        .filter(|row| row.cited.source.key == key)
        .filter_map(|row| Some((row, row.ends[change as usize]?)))
        .collect();
    own.sort_by(|one, other| one.0.metres.total_cmp(&other.0.metres));
    let (first, last) = (own.first()?, own.last()?);
    let told = |cited: Cited, [low, high]: [f64; 2]| Told { cited, low, high };
    if metres < first.0.metres {
        return Some(told(first.0.cited, [0.0, 0.0]));
    }
    if metres >= last.0.metres {
        let holds = metres == last.0.metres || last.0.metres == AND_ABOVE;
        return holds.then(|| told(last.0.cited, last.1));
    }
    let pair = own.windows(2).find(|pair| metres < pair[1].0.metres)?;
    let ((below, from), (above, to)) = (pair[0], pair[1]);
    let part = (metres - below.metres) / (above.metres - below.metres);
    let between = [0, 1].map(|end| from[end] + part * (to[end] - from[end]));
    Some(told(below.cited, between))
}

fn rows() -> &'static [Row] {
    static ROWS: OnceLock<Vec<Row>> = OnceLock::new();
    ROWS.get_or_init(|| packed::rows(11).map(unpacked).collect())
}

fn unpacked(mut cells: Cells) -> Row {
    let metres = cells.figure();
    let ends = [1.0, TABLESPOONS, TABLESPOONS, 1.0].map(|in_one| {
        let cell = cells.text();
        let ends: [f64; 2] = figures(cell);
        (!cell.is_empty()).then(|| ends.map(|end| end / in_one))
    });
    Row {
        metres,
        ends,
        cited: source::cited(cells.text()),
    }
}
