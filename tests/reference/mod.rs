//! Reads the bowls of this folder: the same columns in `cases.tsv`, `bowls.tsv`.

use batterwright::baking::chemistry::solution::{ACIDS, Carbon, Solution};

/// The name of every acid in the tables of this folder, in the program's order.
pub const NAMES: [&str; ACIDS] = [
    "citric",
    "malic",
    "tartaric",
    "lactic",
    "acetic",
    "ascorbic",
    "phosphoric",
    "pyrophosphoric",
    "oxalic",
    "quinic",
    "gluconic",
    "adipic",
    "fumaric",
    "succinic",
    "aconitic",
    "chlorogenic",
    "benzoic",
];

/// The bowls that PHREEQC solved; `make reference` writes them.
pub const BOWLS: &str = include_str!("bowls.tsv");

/// A row: its name, its bowl, and the cells that follow.
pub struct Row {
    pub id: &'static str,
    pub solution: Solution,
    pub answers: Vec<&'static str>,
}

impl Row {
    /// The number in a cell behind the bowl's; `None` where it is empty.
    pub fn answer(&self, place: usize) -> Option<f64> {
        self.answers[place].parse().ok()
    }
}

fn number(cell: &str) -> f64 {
    cell.parse()
        .unwrap_or_else(|_| panic!("{cell:?} is no number"))
}

/// Every row of a table whose first columns are name, temperature, acids, sodium, potassium, chloride and carbon.
pub fn rows(table: &'static str) -> Vec<Row> {
    table
        .lines()
        .skip(1)
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            let [id, celsius, acids, sodium, potassium, chloride, carbon, ..] = cells[..] else {
                panic!("too few cells: {line:?}");
            };
            let mut amounts = [0.0; ACIDS];
            for pair in acids.split("; ").filter(|pair| !pair.is_empty()) {
                let (name, amount) = pair.split_once(' ').expect("an acid and its amount");
                let place = NAMES.iter().position(|known| *known == name);
                amounts[place.expect("a known acid")] = number(amount);
            }
            let (cations, anions) = (number(sodium) + number(potassium), number(chloride));
            Row {
                id,
                solution: Solution {
                    acids: amounts,
                    strong: cations - anions,
                    salt: cations.min(anions),
                    carbon: match carbon.split_once(' ') {
                        Some(("open", pressure)) => Carbon::Open {
                            pressure_atm: number(pressure),
                        },
                        Some(("closed", total)) => Carbon::Closed {
                            total: number(total),
                        },
                        _ => Carbon::None,
                    },
                    celsius: number(celsius),
                    ..Solution::default()
                },
                answers: cells[7..].to_vec(),
            }
        })
        .collect()
}
