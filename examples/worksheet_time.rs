//! How long one worksheet takes: text on standard input, times on standard output as JSON, in microseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example worksheet_time < recipe.txt`

use batterwright::baking::worksheet::{Inputs, Settings, worksheet};
use std::hint::black_box;
use std::io::Read;
use std::time::Instant;

/// Enough for a steady median, and a fraction of a second in all.
const ROUNDS: usize = 200;

fn main() -> std::io::Result<()> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let inputs = Inputs::of_text(text);
    let settings = Settings::default();
    let mut times: Vec<u128> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            black_box(worksheet(black_box(&inputs), black_box(&settings)));
            start.elapsed().as_micros()
        })
        .collect();
    times.sort_unstable();
    println!(
        "{{\"median\": {}, \"p95\": {}}}",
        times[ROUNDS / 2],
        times[ROUNDS * 95 / 100]
    );
    Ok(())
}
