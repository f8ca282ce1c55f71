//! Measured crumbs beside ours.

use super::bowls::{bowl_of, number, rows};
use batterwright::baking::quantity::Ph;

/// Our range and the measured one meet, or the row says why they do not. Half of the rows that meet are closer than
/// 0.35 to the middle of what was measured, and half of all: the powder-only layers, which only the upper end of their
/// range meets, and the sponges of trials that told no formula are further off.
#[test]
fn crumbs_stand_near_what_was_measured() {
    let (mut met, mut all) = (Vec::new(), Vec::new());
    let mut wrong = Vec::new();
    for [cake, bowl, low, high, source, _, differs] in rows::<7>(include_str!("crumbs.tsv")) {
        let ph = bowl_of(bowl).ph;
        let [ours_low, ours, ours_high] = [ph.low, ph.mean, ph.high].map(Ph::value);
        let (low, high) = (number(low), number(high));
        let error = ours - (low + high) / 2.0;
        let meets = ours_low <= high && ours_high >= low;
        all.push(error.abs());
        if meets {
            met.push(error.abs());
        }
        let figures = format!(
            "{cake}: {ours:.2} ({ours_low:.2} to {ours_high:.2}), measured {low} to {high}"
        );
        println!("{figures}: {error:+.2} {differs}");
        if meets != differs.is_empty() {
            wrong.push(format!("{figures} by {source}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let (of_met, of_all) = (median(&mut met), median(&mut all));
    println!(
        "median error {of_met:.2} of {}, {of_all:.2} of all {}",
        met.len(),
        all.len()
    );
    assert!(of_met < 0.35 && of_all < 0.35, "{of_met}, {of_all}");
}

/// By hand: 5 g of the powder hold 4.71 mmol of aluminium and 3.53 of phosphate. As AlPO4 each phosphate sets two protons
/// free instead of the three of aluminium and the 1.0 to 1.1 of its own, so 7.2 meq of soda are spared, which is 0.605
/// g. The upper end is as high as a cake with that much soda beside its powder, and the lower end as it was.
#[test]
fn aluminium_phosphate_lifts_the_upper_end_alone() {
    let cake = "cake_flour 100; sugar 115; shortening 50; egg 60; milk 80; salt 2; baking_powder_aluminium 5";
    let bowl = bowl_of(cake);
    let [low, mean, high] = [bowl.ph.low, bowl.ph.mean, bowl.ph.high].map(Ph::value);
    let with_soda = bowl_of(&format!("{cake}; baking_soda 0.605"));
    let rise = with_soda.ph.mean.value() - mean;
    let found = bowl.settled_otherwise();
    assert!((found - rise).abs() < 0.06, "{found}, {rise}");
    assert!(high - mean > found && mean - low < 0.6, "{low} to {high}");
    let tartrate = bowl_of(&cake.replace("aluminium 5", "tartrate 5"));
    assert!(tartrate.settled_otherwise() < 1e-3);
}

fn median(errors: &mut [f64]) -> f64 {
    errors.sort_unstable_by(f64::total_cmp);
    errors[errors.len() / 2]
}
