//! How long one bowl of water takes: the bowls of `tests/reference/bowls.tsv`, a median on standard output as JSON,
//! in microseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example solution_time`

// Only the bowls are of use here, not what comes out of them.
#[allow(dead_code)]
#[path = "../tests/reference/mod.rs"]
mod reference;

use reference::{BOWLS, rows};
use std::hint::black_box;
use std::time::Instant;

/// Enough for a steady median, and a fraction of a second in all.
const ROUNDS: usize = 50;

fn main() {
    let rows = rows(BOWLS);
    let mut times: Vec<f64> = rows
        .iter()
        .map(|row| {
            let start = Instant::now();
            for _ in 0..ROUNDS {
                black_box(black_box(&row.solution).solve());
            }
            start.elapsed().as_secs_f64() * 1e6 / ROUNDS as f64
        })
        .collect();
    times.sort_unstable_by(f64::total_cmp);
    println!(
        "{{\"bowls\": {}, \"median\": {:.2}, \"most\": {:.2}}}",
        times.len(),
        times[times.len() / 2],
        times[times.len() - 1]
    );
}
