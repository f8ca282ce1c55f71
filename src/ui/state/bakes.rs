//! Bake times, worked out in slices after the worksheet stands: typing never waits for them.

use super::Bench;
use crate::baking::oven::forecast::{Answer, forecast};
use crate::baking::oven::slices::Slices;
use crate::baking::worksheet::{BakeSheet, OvenSheet, bake_sheet};
use crate::ui::device;
use crate::ui::shown::Part;
use leptos::prelude::*;
use std::time::Duration;

/// How long nothing has to change before it begins.
pub(super) const QUIET: Duration = Duration::from_millis(300);
/// How long a slice may take, ms: half a frame.
const SLICE: f64 = 6.0;
/// What lies between two slices: whatever was touched or typed comes first.
const BETWEEN: Duration = Duration::from_millis(1);

/// The bake times that stand on the page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bakes {
    /// The bakes, the recipe's own pan first.
    pub sheets: Vec<BakeSheet>,
    /// By how much hotter the oven has to be in the baker's air, K.
    pub hotter: Option<f64>,
}

impl Bakes {
    /// How long what is baked takes, each with its pan where there are several. The recipe's own pan comes first, and is not
    /// baked where others stand on the shelf.
    pub fn times(&self) -> Vec<String> {
        let others = usize::from(self.sheets.len() > 1);
        let baked = self.sheets.iter().skip(others);
        baked
            .map(|sheet| match self.sheets.len() {
                0..=2 => sheet.time.clone(),
                _ => format!("{}: {}", sheet.pan, sheet.time),
            })
            .collect()
    }
}

impl Bench {
    /// Follows the worksheet's oven, and works its bakes out whenever it has changed.
    pub(super) fn follow_oven(self) {
        let round = StoredValue::new(0_u32);
        Effect::new(move |_| {
            let oven = bench_oven(self);
            round.update_value(|round| *round += 1);
            let Some(ask) = oven.ask.clone() else {
                self.show_bakes(Bakes::default());
                return;
            };
            if !self.baking.get_untracked() {
                self.baking.set(true);
            }
            let now = round.get_value();
            let show = move |found: Answer| {
                self.show_bakes(Bakes {
                    sheets: bake_sheet(&oven, &found),
                    hotter: found.hotter,
                });
            };
            let is_current = move || round.try_get_value() == Some(now);
            set_timeout(
                move || work_out(Slices::of(forecast(ask)), is_current, show),
                QUIET,
            );
        });
    }
}

impl Bench {
    /// Shows bakes that were worked out; drawn anew only where they differ.
    fn show_bakes(self, bakes: Bakes) {
        if self.bakes.with_untracked(|before| *before != bakes) {
            self.bakes.set(bakes);
        }
        if self.baking.get_untracked() {
            self.baking.set(false);
        }
    }
}

fn bench_oven(bench: Bench) -> OvenSheet {
    bench.part(Part::Oven, |sheet| sheet.oven.clone())
}

/// Works something out, slice by slice, and hands it over; what was overtaken by a change is dropped at its next slice.
pub(super) fn work_out<T: 'static>(
    mut slices: Slices<T>,
    is_current: impl Fn() -> bool + 'static,
    done: impl FnOnce(T) + 'static,
) {
    if !is_current() {
        return;
    }
    let began = device::now();
    while device::now() - began < SLICE {
        if let Some(found) = slices.go_on() {
            return done(found);
        }
    }
    set_timeout(move || work_out(slices, is_current, done), BETWEEN);
}
