//! The amounts that mend a leavening fault, as edits to the baker's own lines.
//!
//! The need for base at a pH is linear in the grams, so each amount is a division, not a search. Amounts
//! are rounded to what a small scale shows; the mended formula is judged again like any other.

use super::{Edit, Facts, Remedy, gas_band, ph_band};
use crate::baking::chemistry::{Bowl, NEUTRAL, SODA_MMOL_PER_GRAM, base_demand, bicarbonate};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::Region;
use crate::baking::quantity::{Mass, show};

/// Carbon dioxide from a gram of sodium bicarbonate, g: 44.009 / 84.007.
const GAS_OF_SODA: f64 = 44.009 / 84.007;
/// Soda in a gram of baking powder where the recipe has none to go by: about 30 % (supplier's note).
const SODA_IN_POWDER: f64 = 0.308;
/// Part of the powder that stays for the oven when soda takes its place: soda gives its gas on the
/// bench, powder keeps some for the heat (common practice, no source).
const POWDER_KEPT: f64 = 1.0 / 3.0;
/// Base that a gram of cream of tartar takes, meq: one proton of 188.177 g/mol.
const CREAM_OF_TARTAR: f64 = 1000.0 / 188.177;
/// A US teaspoon of soda or powder and of cream of tartar, g (USDA SR28).
const TEASPOON: f64 = 4.6;
const TEASPOON_OF_TARTAR: f64 = 3.0;
/// The smallest change worth making on a scale that shows tenths.
const SMALLEST: f64 = 0.1;

/// Mends for a bowl that is short of soda: part of the powder becomes soda; where that would make more
/// gas than the flour holds, part of the sour ingredient becomes water.
pub fn more_soda(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let aim = ph_band(facts.kind).aim_from_below;
    let missing = bowl.missing(aim).to_milliequivalents() / SODA_MMOL_PER_GRAM;
    let Some(flour) = facts.flour() else { return Vec::new() };
    let held = gas_band().high * 0.9 / 100.0 * flour.to_grams();
    let now = bowl.gas.made.mean.to_grams();
    let powder = facts.powders().next();
    let powder_grams = powder.map_or(0.0, |line| line.grams.mean.to_grams());
    let gas_of_powder = powder.map_or(0.0, gas_per_gram);
    let other_gas = (now - powder_grams * gas_of_powder).max(0.0);
    // Gas that soda may add while a third of the powder stays for the oven.
    let room = (held - other_gas - powder_grams * POWDER_KEPT * gas_of_powder).max(0.0) / GAS_OF_SODA;
    let wanted_gas = now.max(gas_band().aim / 100.0 * flour.to_grams());
    let with_soda = |added: f64| {
        let from_soda = other_gas + added * GAS_OF_SODA;
        let left = if gas_of_powder > 0.0 { (wanted_gas - from_soda) / gas_of_powder } else { 0.0 };
        tenths(left.clamp(powder_grams * POWDER_KEPT, powder_grams))
    };
    if missing <= room {
        return soda_for_powder(facts, tenths(missing), powder, with_soda(missing)).into_iter().collect();
    }
    let Some(sour) = sourest(facts) else { return Vec::new() };
    let Some(acidity) = sour.ingredient.acidity else { return Vec::new() };
    let grams = sour.grams.mean.to_grams();
    let demand = base_demand(acidity, sour.grams.mean, aim).to_milliequivalents() / SODA_MMOL_PER_GRAM;
    let fraction = 1.0 - (missing - room) / demand;
    if demand <= 0.0 || fraction <= 0.05 {
        return Vec::new();
    }
    let kept = (grams * fraction).floor().max(1.0);
    let water = (grams - kept).round();
    soda_for_powder(facts, tenths(room), powder, with_soda(room))
        .map(|remedy| Remedy {
            label: format!("Use {} {} with {} g water, and {}", show::mass(Mass::grams(kept)), sour.ingredient.name, water, lower(&remedy.label)),
            sentence: format!(
                "All of the {} would need more soda than this flour can hold as gas, so {} g of it become water. {}",
                sour.ingredient.name, water, remedy.sentence
            ),
            edits: remedy
                .edits
                .into_iter()
                .chain([
                    Edit::Weigh { line: sour.line, grams: kept },
                    Edit::AddAfter { line: sour.line, text: format!("{water} g water") },
                ])
                .collect(),
        })
        .into_iter()
        .collect()
}

/// Adds soda and takes powder away; both in grams.
fn soda_for_powder(facts: &Facts, added: f64, powder: Option<&Weighed>, powder_left: f64) -> Option<Remedy> {
    if added < SMALLEST {
        return None;
    }
    let soda = facts.sodas().next();
    let total = tenths(soda.map_or(0.0, |line| line.grams.mean.to_grams()) + added);
    let after = last_leavener(facts);
    let mut edits = vec![match soda {
        Some(line) => Edit::Weigh { line: line.line, grams: total },
        None => Edit::AddAfter { line: after, text: format!("{total} g {}", soda_name(facts.region)) },
    }];
    let mut label = format!("Use {}", in_spoons(total, TEASPOON, soda_name(facts.region)));
    let mut sentence = format!("{} in all", in_spoons(total, TEASPOON, soda_name(facts.region)));
    if let Some(line) = powder {
        let before = line.grams.mean.to_grams();
        if before - powder_left >= SMALLEST {
            edits.push(Edit::Weigh { line: line.line, grams: powder_left });
            label.push_str(&format!(" and {}", in_spoons(powder_left, TEASPOON, line.ingredient.name)));
            sentence.push_str(&format!(
                "; the {} goes from {} to {}, kept for the oven",
                line.ingredient.name,
                show::mass(Mass::grams(before)),
                in_spoons(powder_left, TEASPOON, "").trim_end(),
            ));
        }
    }
    Some(Remedy {
        label,
        sentence: format!("{sentence}. Mix last and bake at once: soda and acid give their gas on the bench."),
        edits,
    })
}

/// Mends for soda to spare: less of it, with powder for the lost gas; or cream of tartar to answer it.
pub fn less_soda(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let aim = ph_band(facts.kind).aim_from_above;
    let extra = -bowl.missing(aim).to_milliequivalents();
    let mut remedies = Vec::new();
    let too_much = extra / SODA_MMOL_PER_GRAM;
    if let Some(soda) = facts.sodas().next() {
        let before = soda.grams.mean.to_grams();
        let left = tenths(before - too_much);
        if left >= 0.0 && before - left >= SMALLEST {
            let name = soda.ingredient.name;
            let mut edits = vec![Edit::Weigh { line: soda.line, grams: left }];
            let mut label = format!("Use {}", in_spoons(left, TEASPOON, name));
            let mut sentence = format!("{} instead of {}", show::mass(Mass::grams(left)), show::mass(Mass::grams(before)));
            let gas = bowl.gas.made.mean.to_grams();
            // Soda that met no acid made little gas; only what lies below the gas band is made good.
            let flour = facts.flour().map_or(0.0, Mass::to_grams);
            let after = (gas - too_much * GAS_OF_SODA).max(0.0);
            let lacking = if facts.kind.leans_on_air() { 0.0 } else { gas_band().aim / 100.0 * flour - after };
            if lacking > 0.0 {
                let (edit, words) = powder_for(facts, lacking);
                edits.push(edit);
                label.push_str(&format!(" and {words}"));
                sentence.push_str(&format!(", and {words} for the gas that goes"));
            }
            remedies.push(Remedy { label, sentence: format!("{sentence}."), edits });
        }
    }
    let tartar = tenths(extra / CREAM_OF_TARTAR);
    if tartar >= SMALLEST {
        let words = in_spoons(tartar, TEASPOON_OF_TARTAR, "cream of tartar");
        remedies.push(Remedy {
            label: format!("Add {words}"),
            sentence: format!("{} answer the spare soda and set its gas free.", show::sentence(&words)),
            edits: vec![Edit::AddAfter { line: last_leavener(facts), text: format!("{tartar} g cream of tartar") }],
        });
    }
    remedies
}

/// Mends for too little gas: more powder.
pub fn more_gas(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let Some(flour) = facts.flour() else { return Vec::new() };
    let lacking = gas_band().aim / 100.0 * flour.to_grams() - bowl.gas.made.mean.to_grams();
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
    let (Some(flour), Some(powder)) = (facts.flour(), facts.powders().next()) else { return Vec::new() };
    let extra = bowl.gas.made.mean.to_grams() - gas_band().high * 0.8 / 100.0 * flour.to_grams();
    let before = powder.grams.mean.to_grams();
    let left = tenths(before - extra / gas_per_gram(powder).max(1e-9));
    if left < 0.0 || before - left < SMALLEST {
        return Vec::new();
    }
    vec![Remedy {
        label: format!("Use {}", in_spoons(left, TEASPOON, powder.ingredient.name)),
        sentence: format!("Instead of {}.", show::mass(Mass::grams(before))),
        edits: vec![Edit::Weigh { line: powder.line, grams: left }],
    }]
}

/// The edit that brings so many more grams of gas by powder, and its words.
fn powder_for(facts: &Facts, gas: f64) -> (Edit, String) {
    match facts.powders().next() {
        Some(line) => {
            let grams = tenths(line.grams.mean.to_grams() + gas / gas_per_gram(line).max(1e-9));
            (Edit::Weigh { line: line.line, grams }, in_spoons(grams, TEASPOON, line.ingredient.name))
        }
        None => {
            let grams = tenths(gas / (SODA_IN_POWDER * GAS_OF_SODA));
            let text = format!("{grams} g baking powder");
            (Edit::AddAfter { line: last_leavener(facts), text }, in_spoons(grams, TEASPOON, "baking powder"))
        }
    }
}

/// Carbon dioxide that a gram of this leavener gives, g.
fn gas_per_gram(line: &Weighed) -> f64 {
    let grams = line.grams.mean.to_grams();
    if grams > 0.0 { line.ingredient.leavening.map_or(0.0, |leavening| bicarbonate(leavening, line.grams.mean)) * 44.009 / 1000.0 / grams } else { 0.0 }
}

/// The line that brings the most acid.
fn sourest<'a>(facts: &'a Facts) -> Option<&'a Weighed> {
    let acid = |line: &Weighed| {
        line.ingredient.acidity.map_or(0.0, |acidity| {
            base_demand(acidity, line.grams.mean, NEUTRAL).to_milliequivalents()
        })
    };
    facts.formula.batter().max_by(|a, b| acid(a).total_cmp(&acid(b)))
}

/// The line below which a new leavener is written: the last leavener, or the last line of the batter.
fn last_leavener(facts: &Facts) -> usize {
    facts
        .sodas()
        .chain(facts.powders())
        .map(|line| line.line)
        .max()
        .or_else(|| facts.formula.batter().map(|line| line.line).max())
        .unwrap_or(0)
}

fn soda_name(region: Region) -> &'static str {
    match region {
        Region::Us | Region::Ca => "baking soda",
        Region::Uk | Region::Au | Region::Nz => "bicarbonate of soda",
    }
}

/// "5.2 g (1 1/8 tsp) baking soda".
fn in_spoons(grams: f64, teaspoon: f64, name: &str) -> String {
    if grams <= 0.0 {
        return format!("no {name}");
    }
    format!("{} ({}) {name}", show::mass(Mass::grams(grams)), show::teaspoons(grams / teaspoon))
}

fn tenths(grams: f64) -> f64 {
    (grams * 10.0).round() / 10.0
}

/// A label that goes on in a sentence.
fn lower(label: &str) -> String {
    label.strip_prefix("Use ").map_or_else(|| label.to_owned(), str::to_owned)
}
