//! What all bakes that were timed tell of the oven, worked out in slices when the baker asks.

use super::Bench;
use crate::baking::oven::forecast::{Answer, forecast};
use crate::baking::oven::slices::Slices;
use crate::baking::trial::{OvenOff, OvenSaid, oven_ask, oven_off, oven_said};
use crate::ui::{device, storage};
use leptos::prelude::*;
use std::collections::HashMap;
use std::time::Duration;

/// How long a slice may take, ms: half a frame.
const SLICE: f64 = 6.0;
/// What lies between two slices: whatever was touched or typed comes first.
const BETWEEN: Duration = Duration::from_millis(1);
/// So many bakes of a recipe are asked, the last ones: what a recipe has wrong all its bakes have.
const OF_A_RECIPE: usize = 3;
/// So many recipes.
const RECIPES: usize = 16;

/// A bake that is asked about.
struct Asked {
    recipe: String,
    minutes: f64,
    slices: Slices<Answer>,
}

/// Work on its way.
struct Work {
    asked: Vec<Asked>,
    told: Vec<(String, OvenOff)>,
    answer: RwSignal<Option<OvenSaid>>,
}

impl Bench {
    /// Asks every recipe's last timed bakes, and sets the answer once all have told.
    pub fn ask_oven(self, answer: RwSignal<Option<OvenSaid>>) {
        let (settings, own) = (self.settings_now(), self.larder.get_untracked());
        let mut counts: HashMap<String, usize> = HashMap::new();
        let mut asked = Vec::new();
        for kept in storage::peek_trials().into_iter().rev() {
            let is_new = !counts.contains_key(&kept.recipe);
            if is_new && counts.len() == RECIPES {
                continue;
            }
            let count = counts.entry(kept.recipe.clone()).or_default();
            if *count == OF_A_RECIPE {
                continue;
            }
            if let Some((ask, minutes)) = oven_ask(&kept.trial, &settings, &own) {
                *count += 1;
                asked.push(Asked {
                    recipe: kept.recipe,
                    minutes,
                    slices: Slices::of(forecast(ask)),
                });
            }
        }
        let told = Vec::new();
        self.go_on_asking(Work {
            asked,
            told,
            answer,
        });
    }

    /// One slice, and the next after it.
    fn go_on_asking(self, mut work: Work) {
        let began = device::now();
        while device::now() - began < SLICE {
            let Some(asked) = work.asked.last_mut() else {
                // The page that asked may be gone.
                let _ = work
                    .answer
                    .try_set(Some(oven_said(&work.told, &self.settings_now())));
                return;
            };
            if let Some(found) = asked.slices.go_on() {
                let off = oven_off(&found, asked.minutes);
                if let Some(asked) = work.asked.pop() {
                    work.told.extend(off.map(|off| (asked.recipe, off)));
                }
            }
        }
        set_timeout(move || self.go_on_asking(work), BETWEEN);
    }
}
