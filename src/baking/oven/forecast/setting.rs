//! Another setting of the oven: one that browns a cake like a known bake, and one that sets it as soon in other air.

use super::Setup;
use super::anchor::MET;
use super::run::{Change, run};

/// How far from its own setting another is proposed, K cooler and hotter: beyond that other things go wrong first.
const OTHER_SETTING: [f64; 2] = [40.0, 25.0];

/// The oven in which a setup browns as much as that by the time that it is done, C, and the minutes there.
pub(super) async fn oven_like(
    setup: &Setup,
    base: Change,
    like: f64,
    browned: f64,
) -> Option<(f64, f64)> {
    let mut celsius = setup.oven.celsius;
    let mut off = browned.ln();
    // Browning grows by some 3 % with each kelvin of the oven; from then on by what was seen.
    let mut slope = 0.03;
    let mut minutes = None;
    for _ in 0..4 {
        let own = setup.oven.celsius;
        let next = (celsius - off / slope).clamp(own - OTHER_SETTING[0], own + OTHER_SETTING[1]);
        if (next - celsius).abs() < 1.0 {
            break;
        }
        let change = Change {
            celsius: next - setup.oven.celsius,
            ..base
        };
        let run = run(setup, change).await?;
        let after = (run.at(run.done(), |at| run.browned[at]) / like).ln();
        slope = ((after - off) / (next - celsius)).clamp(0.005, 0.1);
        (celsius, off) = (next, after);
        minutes = Some(run.done());
    }
    Some((celsius, minutes?))
}

/// By how much hotter the oven has to be for a batter to set in one air as soon as in the other, K: its core is where it
/// sets after the same time.
pub(super) async fn hotter(there: &Setup, here: &Setup, base: Change) -> Option<f64> {
    let sets = |setup: &Setup| setup.load.rise.last().map(|last| last[0]);
    let at = |setup: &Setup, celsius: f64| Setup {
        core: [celsius, celsius + 0.1, celsius + 0.2],
        ..setup.clone()
    };
    let wanted = run(&at(there, sets(there)?), base).await?.core[0];
    let here = at(here, sets(there)?.min(here.core[2]));
    let mut hotter: f64 = 0.0;
    let mut off = (run(&here, base).await?.core[0] / wanted).ln();
    // A degree more saves about a hundredth of the time; from then on by what was seen.
    let mut slope: f64 = -0.009;
    for _ in 0..3 {
        if off.abs() < MET {
            break;
        }
        let next = (hotter - off / slope).clamp(-60.0, 60.0);
        let change = Change {
            celsius: next,
            ..base
        };
        let after = (run(&here, change).await?.core[0] / wanted).ln();
        slope = ((after - off) / (next - hotter)).clamp(-0.05, -0.002);
        (hotter, off) = (next, after);
    }
    Some(hotter)
}
