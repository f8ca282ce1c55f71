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
const QUIET: Duration = Duration::from_millis(300);
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

/// Work on its way; one that was overtaken by a change is dropped at its next slice.
struct Work {
    round: u32,
    oven: OvenSheet,
    slices: Slices<Answer>,
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
            let begin = move || {
                if round.get_value() == now {
                    go_on(
                        self,
                        round,
                        Work {
                            round: now,
                            oven,
                            slices: Slices::of(forecast(ask)),
                        },
                    );
                }
            };
            set_timeout(begin, QUIET);
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

/// One slice, and the next after it.
fn go_on(bench: Bench, round: StoredValue<u32>, mut work: Work) {
    if round.try_get_value() != Some(work.round) {
        return;
    }
    let began = device::now();
    while device::now() - began < SLICE {
        if let Some(found) = work.slices.go_on() {
            bench.show_bakes(Bakes {
                sheets: bake_sheet(&work.oven, &found),
                hotter: found.hotter,
            });
            return;
        }
    }
    set_timeout(move || go_on(bench, round, work), BETWEEN);
}
