//! Reads the programmes that HiGHS solved; `make reference` writes them.

use batterwright::baking::substitute::programme::{Programme, Row, Unknown};
use serde_json::Value;

/// A programme and what the other solver says of it.
pub struct Given {
    pub programme: Programme,
    /// The least cost; `None` where the limits cannot all hold.
    pub cost: Option<f64>,
    /// What the limits are missed by at least, each against its row's size, in all.
    pub missed: f64,
    /// The size of each row.
    pub sizes: Vec<f64>,
}

/// All of them.
pub fn programmes() -> Vec<Given> {
    let all: Vec<Value> =
        serde_json::from_str(include_str!("programmes.json")).expect("a list of programmes");
    all.iter().map(given).collect()
}

fn given(it: &Value) -> Given {
    let list = |name: &str| it[name].as_array().expect("a list").iter();
    Given {
        programme: Programme {
            unknowns: list("unknowns").map(unknown).collect(),
            rows: list("rows").map(row).collect(),
        },
        cost: it["cost"].as_f64(),
        missed: number(&it["missed"]),
        sizes: list("rows").map(|row| number(&row[6])).collect(),
    }
}

fn number(it: &Value) -> f64 {
    it.as_f64().expect("a number")
}

fn unknown(it: &Value) -> Unknown {
    Unknown {
        start: number(&it[0]),
        least: number(&it[1]),
        most: number(&it[2]),
        price: number(&it[3]),
    }
}

fn row(it: &Value) -> Row {
    Row {
        per_unit: (it[0].as_array().expect("a list").iter())
            .map(number)
            .collect(),
        target: number(&it[1]),
        free: number(&it[2]),
        price: number(&it[3]),
        low: it[4].as_f64().unwrap_or(f64::NEG_INFINITY),
        high: it[5].as_f64().unwrap_or(f64::INFINITY),
    }
}
