//! How long heat flow takes: a cup that only conducts, to 95 C on the grid of `tests/reference/heat.py`; one bake of a
//! layer; and all that a page asks for a recipe whose time is known and another pan. Medians on standard output as JSON,
//! in milliseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example heat_time`

// Only some of what the tests have is of use here.
#[allow(dead_code)]
#[path = "../tests/heat/kitchen.rs"]
mod kitchen;
#[allow(dead_code)]
#[path = "../tests/heat/series.rs"]
mod series;

use batterwright::baking::oven::forecast::{Ask, Known, Setup, forecast};
use batterwright::baking::oven::heat::bake::{Bake, Fineness, until};
use batterwright::baking::oven::heat::mesh::{Symmetry, Vessel};
use batterwright::baking::oven::kitchen::oven;
use batterwright::baking::oven::scale::OvenKind;
use batterwright::baking::oven::slices::Slices;
use batterwright::baking::pan::Finish;
use batterwright::baking::quantity::{Pressure, Temperature};
use series::{Asked, Body, ours};
use std::hint::black_box;
use std::time::Instant;

/// Enough for a steady median, and a second in all.
const ROUNDS: usize = 25;

fn layer(half: f64) -> Setup {
    let vessel = Vessel::straight(Symmetry::Axis, half, 0.0508);
    Setup {
        load: kitchen::load(
            kitchen::batter("layer"),
            "layer",
            vessel,
            0.029,
            Finish::Bright,
        ),
        oven: oven(
            OvenKind::Still,
            Temperature::celsius(177.0),
            Pressure::ATMOSPHERE,
        ),
        core: kitchen::core("layer"),
    }
}

fn median(mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_unstable_by(f64::total_cmp);
    times[ROUNDS / 2]
}

fn main() {
    let cup = Body {
        shape: "cylinder",
        half: 0.031,
        depth: 0.036,
        films: [25.0; 3],
    };
    let conducts = median(|| {
        black_box(ours(black_box(cup), Asked::Until(95.0), 24));
    });
    let bake = median(|| {
        let Setup { load, oven, core } = layer(0.1016);
        let bake = Bake::new(load, oven, Fineness::USUAL);
        black_box(until(black_box(bake), core[1], 18_000.0));
    });
    let asked = median(|| {
        let ask = Ask {
            known: vec![Known {
                setup: layer(0.1016),
                minutes: [30.0, 35.0],
                same_oven: false,
            }],
            asked: vec![layer(0.1016), layer(0.1270)],
            airs: None,
        };
        black_box(Slices::of(forecast(black_box(ask))).at_once());
    });
    println!("{{\"conducts\": {conducts:.2}, \"bake\": {bake:.2}, \"asked\": {asked:.1}}}");
}
