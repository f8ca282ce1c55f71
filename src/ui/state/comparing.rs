//! What several bakes are asked, and what is proposed to be baked next.

use super::Bench;
use crate::baking::comparison::{Factor, Outcome, as_planned, make_small, moved, reckoned_best};
use crate::baking::statistics::best::Wish;
use crate::baking::trial::Trial;
use leptos::prelude::*;

impl Bench {
    /// The open recipe as a bake of it would be written down, followed.
    pub fn planned(self) -> Trial {
        let (settings, own) = (self.settings(), self.larder.get());
        self.inputs(|inputs| as_planned(inputs, &settings, &own))
    }

    /// Where the best amount is reckoned to lie, with its standard deviation.
    pub fn reckoned_best(
        self,
        within: (&Factor, f64, f64),
        asked: (Outcome, Wish),
    ) -> Option<(f64, f64)> {
        let (settings, own) = (self.settings(), self.larder.get());
        self.inputs(|inputs| reckoned_best(inputs, within, asked, &settings, &own))
    }

    /// Makes a version of the open recipe with so much of each thing, whole or as a small batch, and leaves the open one
    /// open.
    ///
    /// # Errors
    /// A sentence that says why it could not be kept.
    pub fn keep_moved(
        self,
        name: &str,
        amounts: &[(Factor, f64)],
        is_small: bool,
    ) -> Result<(), String> {
        let (settings, own) = (self.settings_now(), self.larder.get_untracked());
        let mut inputs = self.inputs_now(Clone::clone);
        for (factor, amount) in amounts {
            inputs = moved(&inputs, factor, *amount, &settings, &own).ok_or_else(|| {
                format!(
                    "The open recipe has no {} of a known weight that could be moved.",
                    factor.words()
                )
            })?;
        }
        if is_small {
            let weights = as_planned(&inputs, &settings, &own).weights;
            let batter = weights.iter().filter(|it| it.beside.is_empty());
            make_small(&mut inputs, batter.filter_map(|it| it.grams).sum());
        }
        self.keep_version_aside(name, &inputs)
            .map_err(|why| format!("It could not be kept: {why}."))
    }
}
