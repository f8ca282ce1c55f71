//! Swaps: what could come in a line's place, what is chosen comes to, and taking that.

use super::{Bench, is_long};
use crate::baking::worksheet::{
    Inputs, LinePart, Looks, SwapEntry, SwapOffer, SwapPlan, swap_offers, swap_plan,
    swap_plan_again,
};
use leptos::prelude::*;

impl Bench {
    /// A piece of what is to be swapped, followed.
    pub fn swaps<R>(self, read: impl FnOnce(&SwapEntry) -> R) -> R {
        self.chosen(|chosen| read(&chosen.swaps))
    }

    /// What could come in the place of an ingredient.
    pub fn swap_offers(self, place: LinePart) -> Vec<SwapOffer> {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| swap_offers(inputs, &self.settings_now(), &own, place))
    }

    /// What is chosen comes to, as things are now.
    ///
    /// # Errors
    /// A sentence where it comes to nothing.
    pub fn swap_plan(self) -> Result<SwapPlan, String> {
        let own = self.larder.get_untracked();
        let settings = self.settings_now();
        self.inputs_now(|inputs| {
            self.sheet(|sheet| {
                // Of a long text the worksheet may still be on its way.
                let before = (!is_long(inputs)).then_some(sheet);
                let again =
                    |looks: &mut Looks| swap_plan_again(looks, before, inputs, &settings, &own);
                let plan = self.looks.try_update_value(again);
                // What was seen before is a help that may be gone; the plan is not.
                plan.unwrap_or_else(|| swap_plan(inputs, &settings, &own))
            })
        })
    }

    /// Makes the open recipe what its plan has it be.
    ///
    /// # Errors
    /// The plan's sentence; then nothing is changed.
    pub fn take_swaps(self) -> Result<(), String> {
        let plan = self.swap_plan()?;
        let what = format!("the recipe is now {}", plan.name);
        self.change(what, false, |inputs| *inputs = plan.after);
        Ok(())
    }

    /// Keeps what the plan makes of the open recipe as a new version, opens it, and gives its name.
    ///
    /// # Errors
    /// A sentence that says why not; then nothing is changed.
    pub fn keep_swaps(self) -> Result<String, String> {
        let plan = self.swap_plan()?;
        let chosen = self.inputs_now(Inputs::clone);
        // What was chosen is in the version; the recipe that it was made from is as it was before.
        self.take(chosen.without_swaps());
        if let Err(reason) = self.keep_version(&plan.name, plan.after) {
            self.take(chosen);
            return Err(format!("It could not be kept: {reason}."));
        }
        Ok(plan.name)
    }
}
