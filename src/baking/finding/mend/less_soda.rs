//! Mends for soda to spare.

use super::leavener::{
    CREAM_OF_TARTAR, GAS_OF_SODA, SMALLEST, TEASPOON, TEASPOON_OF_TARTAR, in_spoons, last_leavener,
    powder_for, soda_name, tenths,
};
use crate::baking::chemistry::{Bowl, NEUTRAL, SODA_MMOL_PER_GRAM};
use crate::baking::finding::{Edit, Facts, Remedy, gas_band, ph_band, soda_left};
use crate::baking::quantity::{Mass, show};

/// Mends for soda to spare: less of it, with powder for the lost gas; or cream of tartar to answer it.
pub fn less_soda(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let aim = ph_band(facts.kind).aim_from_above;
    // Both limits are to be met: the crumb's pH, and what is left over to pH 7, here down to four fifths of its limit.
    let flour = facts.flour().map_or(0.0, Mass::to_grams);
    let bearable = soda_left(facts.kind).spare * 0.8 / 100.0 * flour * SODA_MMOL_PER_GRAM;
    let beyond = -bowl.missing(NEUTRAL).to_milliequivalents() - bearable;
    let extra = if flour > 0.0 {
        beyond.max(-bowl.missing(aim).to_milliequivalents())
    } else {
        -bowl.missing(aim).to_milliequivalents()
    };
    let mut remedies = Vec::new();
    let too_much = extra / SODA_MMOL_PER_GRAM;
    if let Some(soda) = facts.sodas().next() {
        let before = soda.grams.mean.to_grams();
        let left = tenths(before - too_much);
        if left >= 0.0 && before - left >= SMALLEST {
            let name = soda_name(facts.region);
            let mut edits = vec![Edit::Weigh {
                line: soda.line,
                part: soda.part,
                grams: left,
            }];
            let mut label = format!("Use {}", in_spoons(left, TEASPOON, name));
            let mut sentence = format!(
                "{} instead of {}",
                show::mass(Mass::grams(left)),
                show::mass(Mass::grams(before))
            );
            let gas = bowl.gas.made.mean.to_grams();
            // Soda that met no acid made little gas; only what lies below the gas band is made good.
            let after = (gas - too_much * GAS_OF_SODA).max(0.0);
            let lacking = if facts.kind.leans_on_air() {
                0.0
            } else {
                gas_band(facts).aim / 100.0 * flour - after
            };
            if lacking > 0.0 {
                let (edit, words) = powder_for(facts, lacking);
                edits.push(edit);
                label.push_str(&format!(" and {words}"));
                sentence.push_str(&format!(", and {words} for the gas that goes"));
            }
            remedies.push(Remedy {
                label,
                sentence: format!("{sentence}."),
                edits,
            });
        }
    }
    // Answered soda gives up its gas; where that is more than the flour holds, tartar is no mend.
    let gas_then = bowl.gas.made.mean.to_grams() + too_much * GAS_OF_SODA;
    let holds = facts
        .flour()
        .is_none_or(|flour| gas_then <= gas_band(facts).high * 0.9 / 100.0 * flour.to_grams());
    let tartar = tenths(extra / CREAM_OF_TARTAR);
    if tartar >= SMALLEST && holds {
        let words = in_spoons(tartar, TEASPOON_OF_TARTAR, "cream of tartar");
        remedies.push(Remedy {
            label: format!("Add {words}"),
            sentence: format!(
                "{} answer the spare soda and set its gas free.",
                show::sentence(&words)
            ),
            edits: vec![Edit::AddAfter {
                line: last_leavener(facts),
                text: format!("{} g cream of tartar", show::plain(tartar)),
            }],
        });
    }
    remedies
}
