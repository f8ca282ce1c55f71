//! What all bakes that were timed tell of the oven, worked out in slices when the baker asks.

use super::Bench;
use super::bakes::work_out;
use crate::baking::oven::forecast::forecast;
use crate::baking::oven::slices::Slices;
use crate::baking::trial::{OvenSaid, oven_ask, oven_off, oven_said};
use crate::ui::storage;
use leptos::prelude::*;
use std::collections::HashMap;

/// So many bakes of a recipe are asked, the last ones: what a recipe has wrong all its bakes have.
const OF_A_RECIPE: usize = 3;
/// So many recipes.
const RECIPES: usize = 16;

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
                asked.push((kept.recipe, ask, minutes));
            }
        }
        let told = async move {
            let mut told = Vec::new();
            for (recipe, ask, minutes) in asked {
                let off = oven_off(&forecast(ask).await, minutes);
                told.extend(off.map(|off| (recipe, off)));
            }
            oven_said(&told, &settings)
        };
        // The page that asked may be gone.
        let show = move |said| {
            let _ = answer.try_set(Some(said));
        };
        work_out(Slices::of(told), || true, show);
    }
}
