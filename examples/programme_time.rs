//! How long one programme takes: those of `tests/reference/programmes.json`, a median on standard output as JSON, in
//! microseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example programme_time`

// Only the programmes are of use here, not what comes out of them.
#[allow(dead_code)]
#[path = "../tests/reference/programmes.rs"]
mod programmes;

use batterwright::baking::substitute::programme::solve;
use std::hint::black_box;
use std::time::Instant;

/// Enough for a steady median, and a fraction of a second in all.
const ROUNDS: usize = 10;

fn main() {
    let given = programmes::programmes();
    let mut times: Vec<f64> = given
        .iter()
        .map(|given| {
            let start = Instant::now();
            for _ in 0..ROUNDS {
                black_box(solve(black_box(&given.programme)));
            }
            start.elapsed().as_secs_f64() * 1e6 / ROUNDS as f64
        })
        .collect();
    times.sort_unstable_by(f64::total_cmp);
    println!(
        "{{\"programmes\": {}, \"median\": {:.1}, \"most\": {:.1}}}",
        times.len(),
        times[times.len() / 2],
        times[times.len() - 1]
    );
}
