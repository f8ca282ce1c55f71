//! Bowls of exact weights, and the tables they stand in.

use batterwright::baking::chemistry::course::Handling;
use batterwright::baking::chemistry::{Bowl, bowl};
use batterwright::baking::estimate::Estimate;
use batterwright::baking::formula::{Formula, How, Place, Weighed};
use batterwright::baking::ingredient::{Ingredient, by_key};
use batterwright::baking::quantity::Mass;

/// The rows of a table behind its head, cell by cell.
pub fn rows<const CELLS: usize>(table: &'static str) -> Vec<[&'static str; CELLS]> {
    let lines = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            cells
                .try_into()
                .unwrap_or_else(|_| panic!("not {CELLS} cells: {line:?}"))
        })
        .collect()
}

#[track_caller]
pub fn number(cell: &str) -> f64 {
    cell.parse()
        .unwrap_or_else(|_| panic!("{cell:?} is no number"))
}

#[track_caller]
pub fn known(key: &str) -> &'static Ingredient {
    by_key(key).unwrap_or_else(|| panic!("no ingredient {key}"))
}

/// A line of exact weight.
pub fn weighed(line: usize, ingredient: &'static Ingredient, grams: f64) -> Weighed {
    Weighed {
        line,
        part: 0,
        ingredient,
        grams: Estimate::exact(Mass::grams(grams)),
        how: How {
            sentence: "Given".into(),
            cited: None,
            others: String::new(),
        },
        place: Place::Batter,
        in_pieces: false,
        doubts: Vec::new(),
    }
}

pub fn of_lines(lines: Vec<Weighed>) -> Formula {
    Formula {
        lines,
        unweighed: Vec::new(),
    }
}

/// A formula as it stands in a cell: `plain_flour 100; raisins 300 in pieces`.
#[track_caller]
pub fn formula(cell: &str) -> Formula {
    let line = |(index, item): (usize, &str)| {
        let (item, in_pieces) = item
            .strip_suffix(" in pieces")
            .map_or((item, false), |item| (item, true));
        let (key, grams) = item.split_once(' ').expect("an ingredient and its grams");
        Weighed {
            in_pieces,
            ..weighed(index + 1, known(key), number(grams))
        }
    };
    of_lines(cell.split("; ").enumerate().map(line).collect())
}

#[track_caller]
pub fn bowl_of(cell: &str) -> Bowl {
    bowl(&formula(cell), &Handling::default()).expect("a bowl with acid, base or a buffer in it")
}
