//! Mends for too little and too much gas.

use super::leavener::{POWDER, SMALLEST, TEASPOON, gas_per_gram, in_spoons, powder_for, tenths};
use crate::baking::chemistry::Bowl;
use crate::baking::finding::{Edit, Facts, Remedy, gas_band};
use crate::baking::quantity::{Mass, show};

/// Mends for too little gas: more powder.
pub fn more_gas(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let Some(flour) = facts.flour() else {
        return Vec::new();
    };
    let lacking = gas_band(facts).aim / 100.0 * flour.to_grams() - bowl.gas.made.mean.to_grams();
    if lacking <= 0.0 {
        return Vec::new();
    }
    let (edit, words) = powder_for(facts, lacking);
    vec![Remedy {
        label: format!("Use {words}"),
        sentence: "Powder brings its own acid, so the balance stays as it is.".into(),
        edits: vec![edit],
    }]
}

/// Mends for too much gas: less powder, as far as there is any.
pub fn less_gas(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let (Some(flour), Some(powder)) = (facts.flour(), facts.powders().next()) else {
        return Vec::new();
    };
    let extra =
        bowl.gas.made.mean.to_grams() - gas_band(facts).high * 0.8 / 100.0 * flour.to_grams();
    let before = powder.grams.mean.to_grams();
    let left = tenths(before - extra / gas_per_gram(powder).max(1e-9));
    if left < 0.0 || before - left < SMALLEST {
        return Vec::new();
    }
    vec![Remedy {
        label: format!("Use {}", in_spoons(left, TEASPOON, POWDER)),
        sentence: format!("Instead of {}.", show::mass(Mass::grams(before))),
        edits: vec![Edit::Weigh {
            line: powder.line,
            part: powder.part,
            grams: left,
        }],
    }]
}
