//! Mends for a bowl that is short of soda.

use super::leavener::{
    GAS_OF_SODA, POWDER, POWDER_KEPT, SMALLEST, TEASPOON, gas_per_gram, in_spoons, last_leavener,
    soda_name, tenths,
};
use crate::baking::chemistry::{Bowl, Curve, NEUTRAL, SODA_MMOL_PER_GRAM};
use crate::baking::estimate::Estimate;
use crate::baking::finding::{Edit, Facts, Remedy, gas_band, ph_band};
use crate::baking::formula::{Formula, Place, Weighed};
use crate::baking::ingredient::by_key;
use crate::baking::quantity::{Mass, show};

/// A plan is taken where the crumb, reckoned with the plan carried out, is this likely to end inside its band:
/// just above what the verdict calls likely.
const ENOUGH: f64 = 0.67;
/// Gas that flour holds where soda is in play, per cent of it (Book and Brill 2015).
const HELD: f64 = 2.0;
/// Steps in which the aim is moved through the band.
const STEPS: i32 = 5;

/// Part of the powder becomes soda. Where that would make more gas than the flour holds, or leave the crumb too
/// close to call, part of the sour ingredient becomes water as well.
pub fn more_soda(facts: &Facts, bowl: &Bowl) -> Vec<Remedy> {
    let Some(gas) = Gas::of(facts, bowl) else {
        return Vec::new();
    };
    if let Some(whole) = Plan::of(facts, bowl, facts.formula, &gas) {
        return soda_for_powder(facts, &whole, &gas).into_iter().collect();
    }
    // Water takes the place of juice or purée, never of fruit in pieces.
    let Some(sour) = sourest(facts).filter(|sour| !sour.in_pieces) else {
        return Vec::new();
    };
    (1..10)
        .rev()
        .find_map(|tenths| diluted(facts, bowl, sour, f64::from(tenths) / 10.0, &gas))
        .into_iter()
        .collect()
}

/// What the gas leaves room for.
struct Gas<'a> {
    /// The powder, if there is any.
    powder: Option<&'a Weighed>,
    /// Its grams.
    powder_grams: f64,
    /// Gas of a gram of it.
    per_gram: f64,
    /// Gas from elsewhere.
    other: f64,
    /// Gas that the batter should have.
    wanted: f64,
    /// Grams of soda that may be added while the powder kept for the oven stays.
    room: f64,
}

impl<'a> Gas<'a> {
    fn of(facts: &'a Facts, bowl: &Bowl) -> Option<Self> {
        let flour = facts.flour()?.to_grams();
        let now = bowl.gas.made.mean.to_grams();
        let powder = facts.powders().next();
        let powder_grams = powder.map_or(0.0, |line| line.grams.mean.to_grams());
        let per_gram = powder.map_or(0.0, gas_per_gram);
        let other = (now - powder_grams * per_gram).max(0.0);
        let held = HELD * 0.9 / 100.0 * flour;
        Some(Self {
            powder,
            powder_grams,
            per_gram,
            other,
            wanted: now.max(gas_band(facts).aim / 100.0 * flour),
            room: (held - other - powder_grams * POWDER_KEPT * per_gram).max(0.0) / GAS_OF_SODA,
        })
    }

    /// Powder that stays beside so much more soda.
    fn powder_beside(&self, soda: f64) -> f64 {
        let lacking = self.wanted - self.other - soda * GAS_OF_SODA;
        let grams = if self.per_gram > 0.0 {
            lacking / self.per_gram
        } else {
            0.0
        };
        tenths(grams.clamp(self.powder_grams * POWDER_KEPT, self.powder_grams))
    }
}

/// So much more soda, and the powder that stays beside it.
struct Plan {
    soda: f64,
    powder: f64,
}

impl Plan {
    /// The least soda that is likely to do and leaves the gas its room; `None` where there is none.
    fn of(facts: &Facts, bowl: &Bowl, formula: &Formula, gas: &Gas) -> Option<Self> {
        let band = ph_band(facts.kind);
        let step = (band.aim_from_above - band.aim_from_below) / f64::from(STEPS);
        let before = bowl.tried(formula)?;
        (0..=STEPS)
            .map(|count| before.missing(band.aim_from_below + step * f64::from(count)))
            .map(|missing| tenths(missing.to_milliequivalents() / SODA_MMOL_PER_GRAM))
            .take_while(|soda| *soda <= gas.room)
            .map(|soda| Self {
                soda,
                powder: gas.powder_beside(soda),
            })
            .find(|plan| {
                plan.carried_out(bowl, formula, gas).is_some_and(|after| {
                    after.chance_below(band.high) - after.chance_below(band.low) >= ENOUGH
                })
            })
    }

    /// The bowl once the plan is carried out, rounding and all.
    fn carried_out(&self, bowl: &Bowl, formula: &Formula, gas: &Gas) -> Option<Bowl> {
        let mut formula = formula.clone();
        let powder = gas.powder.map(|line| (line.line, line.part));
        for line in formula
            .lines
            .iter_mut()
            .filter(|line| Some((line.line, line.part)) == powder)
        {
            line.grams = Estimate::exact(Mass::grams(self.powder));
        }
        let soda = Weighed {
            ingredient: by_key("baking_soda")?,
            grams: Estimate::exact(Mass::grams(self.soda)),
            in_pieces: false,
            ..formula.lines.first()?.clone()
        };
        formula.lines.push(Weighed {
            place: Place::Batter,
            ..soda
        });
        bowl.tried(&formula)
    }
}

/// The plan with a part of the sour ingredient kept and the rest of it water; `None` where that does not fit either.
fn diluted(facts: &Facts, bowl: &Bowl, sour: &Weighed, part: f64, gas: &Gas) -> Option<Remedy> {
    let grams = sour.grams.mean.to_grams();
    let kept = (grams * part).round();
    let poured = (grams - kept).round();
    if kept < 1.0 || poured < 1.0 {
        return None;
    }
    let water = show::plain(poured);
    let mut formula: Formula = facts.formula.clone();
    let line = formula
        .lines
        .iter_mut()
        .find(|line| (line.line, line.part) == (sour.line, sour.part))?;
    line.grams = Estimate::exact(Mass::grams(kept));
    let water_line = Weighed {
        ingredient: by_key("water")?,
        grams: Estimate::exact(Mass::grams(poured)),
        ..line.clone()
    };
    formula.lines.push(water_line);
    let plan = Plan::of(facts, bowl, &formula, gas)?;
    let name = sour.ingredient.name;
    let remedy = soda_for_powder(facts, &plan, gas)?;
    let leavening = remedy
        .label
        .strip_prefix("Use ")
        .unwrap_or(&remedy.label)
        .to_owned();
    Some(Remedy {
        label: format!(
            "Use {} {name} with {water} g water, and {leavening}",
            show::mass(Mass::grams(kept))
        ),
        sentence: format!(
            "All of the {name} would want more soda than this flour holds as gas, or leave the crumb to chance, so {water} g of it become water. {}",
            remedy.sentence
        ),
        edits: remedy
            .edits
            .into_iter()
            .chain([
                Edit::Weigh {
                    line: sour.line,
                    part: sour.part,
                    grams: kept,
                },
                Edit::AddAfter {
                    line: sour.line,
                    text: format!("{water} g water"),
                },
            ])
            .collect(),
    })
}

/// Adds a plan's soda and takes the powder away that it stands in for.
fn soda_for_powder(facts: &Facts, plan: &Plan, gas: &Gas) -> Option<Remedy> {
    if plan.soda < SMALLEST {
        return None;
    }
    let name = soda_name(facts.region);
    let soda = facts.sodas().next();
    let total = tenths(soda.map_or(0.0, |line| line.grams.mean.to_grams()) + plan.soda);
    let spoons = in_spoons(total, TEASPOON, name);
    let mut edits = vec![match soda {
        Some(line) => Edit::Weigh {
            line: line.line,
            part: line.part,
            grams: total,
        },
        None => Edit::AddAfter {
            line: last_leavener(facts),
            text: format!("{} g {name}", show::plain(total)),
        },
    }];
    let mut label = format!("Use {spoons}");
    let mut sentence = format!("{spoons} in all");
    let left = plan.powder;
    if let Some(line) = gas.powder
        && gas.powder_grams - left >= SMALLEST
    {
        edits.push(Edit::Weigh {
            line: line.line,
            part: line.part,
            grams: left,
        });
        label.push_str(&format!(" and {}", in_spoons(left, TEASPOON, POWDER)));
        sentence.push_str(&format!(
            "; the {POWDER} goes from {} to {}, kept for the oven",
            show::mass(Mass::grams(gas.powder_grams)),
            show::mass(Mass::grams(left)),
        ));
    }
    Some(Remedy {
        label,
        sentence: format!(
            "{sentence}. Mix it in last and bake at once: soda and acid give their gas on the bench."
        ),
        edits,
    })
}

/// The line that brings the most acid.
fn sourest<'a>(facts: &'a Facts) -> Option<&'a Weighed> {
    let acid = |line: &Weighed| {
        line.ingredient.acidity.map_or(0.0, |acidity| {
            Curve::of_acidity(acidity, line.grams.mean)
                .at(NEUTRAL)
                .to_milliequivalents()
        })
    };
    facts
        .formula
        .batter()
        .max_by(|a, b| acid(a).total_cmp(&acid(b)))
}
