//! How long a plan of swaps takes: text on standard input, times on standard output as JSON, in microseconds.
//!
//! `make bench` runs it: `cargo run --release --no-default-features --example swap_time < recipe.txt`

use batterwright::baking::ingredient::Larder;
use batterwright::baking::worksheet::{Inputs, Looks, Settings, swap_plan_again, worksheet_again};
use std::hint::black_box;
use std::io::Read;
use std::time::Instant;

/// Enough for a steady median, and a second or so in all.
const ROUNDS: usize = 60;

fn main() -> std::io::Result<()> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let mut one = Inputs::of_text(text);
    let mut several = one.clone();
    let line = one
        .text
        .lines()
        .position(|line| line.contains("buttermilk"))
        .map_or(1, |at| at + 1);
    one.swap((line, 0), "soy_milk+cider_vinegar", None);
    several.choices.swaps.without.animals = true;
    println!(
        "{{\"one\": {}, \"several\": {}}}",
        median(&one),
        median(&several)
    );
    Ok(())
}

fn median(inputs: &Inputs) -> u128 {
    let settings = Settings::default();
    let own = Larder::of(settings.region).own;
    // As on the page, where the text was read before.
    let mut looks = Looks::default();
    let sheet = worksheet_again(&mut looks, inputs, &settings, own);
    let mut times: Vec<u128> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            let plan = swap_plan_again(
                &mut looks,
                Some(&sheet),
                black_box(inputs),
                black_box(&settings),
                own,
            );
            let took = start.elapsed().as_micros();
            assert!(plan.is_ok(), "{:?}", plan.err());
            took
        })
        .collect();
    times.sort_unstable();
    times[ROUNDS / 2]
}
