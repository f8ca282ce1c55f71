//! How long reading takes: text on standard input, times on standard output as JSON, in microseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example reading_time < lines.txt`

use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::recipe::read;
use std::hint::black_box;
use std::io::Read;
use std::time::Instant;

/// Enough for a steady median, and some seconds at most.
const ROUNDS: usize = 40;

fn main() -> std::io::Result<()> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let lines = text.lines().count();
    let mut times: Vec<u128> = (0..=ROUNDS)
        .map(|_| {
            let start = Instant::now();
            black_box(read(black_box(&text), Larder::of(Region::Us), &[]));
            start.elapsed().as_micros()
        })
        .collect();
    // The first round unpacks the tables.
    let first = times.remove(0);
    times.sort_unstable();
    println!(
        "{{\"lines\": {lines}, \"median\": {}, \"p95\": {}, \"first\": {first}}}",
        times[ROUNDS / 2],
        times[ROUNDS * 95 / 100]
    );
    Ok(())
}
