//! How far a planned swap keeps the cake, and what is said of that.

use super::Worksheet;
use crate::baking::balance::{By, Class, percentages, range, recognise};
use crate::baking::chemistry::Bowl;
use crate::baking::finding::{Facts, Finding, Severity, VerdictKind, may_judge, ph_band};
use crate::baking::formula::Formula;
use crate::baking::quantity::{Mass, Share, show};
use crate::baking::substitute::Keep;
use crate::baking::substitute::plan::{Change, Kept, Missed, Plan};
use crate::baking::substitute::swap::Swap;
use serde::Serialize;

/// A crumb is kept where it is this likely to end inside its band: just above what the verdict calls likely.
const ENOUGH: f64 = 0.67;

/// How far a plan keeps the cake.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Judgement {
    /// All that is reckoned of it stays, within what weighing differs by.
    Kept,
    /// Every limit of its kind holds, but something of it is more or less than it was.
    KeptButFor,
    /// A limit of its kind does not hold, or so much is gone that it is another cake.
    GivesUp,
}

/// What is found of a plan before the recipe that it makes is judged.
pub(super) struct Said {
    kind: &'static str,
    /// What the formula is taken for then, where that is another kind.
    becomes: Option<&'static str>,
    missed: Vec<String>,
    far: Vec<String>,
    moved: Vec<String>,
    outside: Vec<String>,
    more: Vec<String>,
}

impl Said {
    /// Of a plan, with its changes and the swap that each goes by.
    pub fn of<'a>(
        facts: &Facts,
        plan: &Plan,
        title: Option<&str>,
        changes: impl Iterator<Item = (&'a Change, Option<&'static Swap>)>,
    ) -> Self {
        let (far, moved): (Vec<&Kept>, Vec<&Kept>) = plan
            .kept
            .iter()
            .filter(|kept| kept.is_moved())
            .partition(|kept| kept.is_far);
        let mut more: Vec<String> = changes.filter_map(beyond_practice).collect();
        more.extend(unknown(plan));
        more.extend(weigh_first(facts, plan));
        Self {
            kind: facts.kind.words(),
            becomes: becomes(facts, plan, title),
            missed: (plan.missed.iter())
                .map(|missed| gives_way(missed, facts))
                .collect(),
            far: far.into_iter().map(more_or_less).collect(),
            moved: moved
                .into_iter()
                .map(|kept| format!("{}{}", more_or_less(kept), within(kept, &plan.missed)))
                .collect(),
            outside: outside(facts, plan),
            more,
        }
    }

    /// The judgement and its sentences, the sum of it first, once recipe and version are judged.
    pub fn judged(self, before: &Worksheet, after: &Worksheet) -> (Judgement, Vec<String>) {
        let comes = after
            .findings
            .iter()
            .filter(|finding| comes(finding.name, before));
        let (grave, light): (Vec<_>, Vec<_>) = comes.partition(|finding| {
            finding.severity != Severity::Note && !was_close(finding.name, before)
        });
        let titles = |findings: &[&Finding]| -> Vec<String> {
            findings.iter().map(|it| show::amid(&it.title)).collect()
        };
        let (grave, light) = (titles(&grave), titles(&light));
        let is_as_it_was = self.moved.is_empty() && self.outside.is_empty() && light.is_empty();
        let judgement = if !(self.missed.is_empty() && self.far.is_empty() && grave.is_empty()) {
            Judgement::GivesUp
        } else if is_as_it_was {
            Judgement::Kept
        } else {
            Judgement::KeptButFor
        };
        let mut said = Vec::new();
        let mut changes: Vec<String> = self.far.iter().chain(&self.moved).cloned().collect();
        if !self.missed.is_empty() {
            said.push(format!(
                "This cannot be done within the limits of {}. The nearest plan gives up: {}.",
                self.kind,
                show::listed(&self.missed)
            ));
        } else if !self.far.is_empty() {
            said.push(format!(
                "This makes another cake: {}.",
                show::listed(&self.far)
            ));
            changes = self.moved;
        } else if !grave.is_empty() {
            said.push(format!(
                "Limits of {} do not hold: {}.",
                self.becomes.unwrap_or(self.kind),
                show::listed(&grave)
            ));
        } else if !changes.is_empty() {
            let but_for = show::listed(&changes);
            said.push(format!("The cake is kept, but for {but_for}."));
            changes.clear();
        } else if judgement == Judgement::Kept {
            said.push("Everything that is reckoned of this cake is kept.".to_owned());
        } else {
            said.push("The cake is kept, with a word to add.".to_owned());
        }
        if !changes.is_empty() {
            said.push(format!("It also has {}.", show::listed(&changes)));
        }
        let rest = match self.missed.is_empty() && self.far.is_empty() {
            true => light,
            false => [grave, light].concat(),
        };
        if !rest.is_empty() {
            said.push(format!("The findings then say: {}.", show::listed(&rest)));
        }
        if let Some(kind) = self.becomes {
            said.push(format!("By its formula it is then taken for {kind}."));
        }
        said.extend(self.outside);
        said.extend(self.more);
        said.push("Amounts are reckoned for a trial bake: change one thing at a time, and write down what came of it.".into());
        (judgement, said)
    }
}

/// Findings of acid, gas and balance: where one comes that the recipe has not, a limit is broken.
const LIMITS: [&str; 17] = [
    "acid_outside",
    "balance_rule",
    "crumb_gummy",
    "crumb_soapy",
    "egg_beyond",
    "fat_beyond",
    "gas_excess",
    "gas_short",
    "liquid_beyond",
    "no_leavening",
    "salt_beyond",
    "sets_early",
    "sets_late",
    "soda_excess",
    "soda_short",
    "soda_to_spare",
    "sugar_beyond",
];

/// Whether a finding of a limit is one that the recipe has not, nor a graver one of the same.
fn comes(name: &str, before: &Worksheet) -> bool {
    let was_there = |name: &str| before.findings.iter().any(|it| it.name == name);
    let graver = match name {
        "gas_short" => "no_leavening",
        "soda_to_spare" => "soda_excess",
        _ => name,
    };
    LIMITS.contains(&name) && !was_there(name) && !was_there(graver)
}

/// Whether it was too close to call before: weights that are surer now are no fault of the swap.
fn was_close(name: &str, before: &Worksheet) -> bool {
    let verdict = match name {
        "gas_short" | "gas_excess" => &before.leavening.gas_verdict,
        "soda_short" | "soda_to_spare" => &before.leavening.verdict,
        _ => return false,
    };
    verdict.kind == VerdictKind::TooClose
}

/// The kind that the formula is then recognised as, where it was another by its formula.
fn becomes(facts: &Facts, plan: &Plan, title: Option<&str>) -> Option<&'static str> {
    let percentages = percentages(&plan.formula);
    let said = (facts.kind_by == By::Said).then_some(facts.kind);
    let kind = recognise(&plan.formula, &percentages, title, said).kind;
    (kind != facts.kind).then(|| kind.words())
}

/// "74 % less protein that sets".
fn more_or_less(kept: &Kept) -> String {
    let more = if kept.change() > 0.0 { "more" } else { "less" };
    let percent = kept.change().abs() / kept.before.max(1e-9) * 100.0;
    match kept.before > 0.0 && percent < 300.0 {
        true => format!("{} % {more} {}", show::fixed(percent, 0), kept.keep.words()),
        false => format!("{more} {}", kept.keep.words()),
    }
}

/// That the gas is still what such a batter wants, where none of its limits is missed.
fn within(kept: &Kept, missed: &[Missed]) -> &'static str {
    let is_missed = |it: &Missed| matches!(it, Missed::GasShort | Missed::GasMuch);
    match kept.keep {
        Keep::Gas if missed.iter().any(is_missed) => "",
        Keep::Gas if kept.change() > 0.0 => " (which such a batter still holds)",
        Keep::Gas => " (which is still enough)",
        _ => "",
    }
}

fn beyond_practice((change, by): (&Change, Option<&'static Swap>)) -> Option<String> {
    let swap = by?;
    (change.share > swap.most.to_fraction() + 1e-9).then(|| {
        format!(
            "Practice replaces {} of {} at most with this; here it is {} %. Bake a trial first.",
            show::percent(swap.most),
            swap.from.name,
            show::fixed(change.share * 100.0, 0),
        )
    })
}

fn gives_way(missed: &Missed, facts: &Facts) -> String {
    let band = ph_band(facts.kind);
    match missed {
        Missed::TooAcid => format!(
            "a crumb of pH {} or above: it stays more acid",
            show::ph(band.low)
        ),
        Missed::TooAlkaline => format!(
            "a crumb of pH {} or below: it ends more alkaline",
            show::ph(band.high)
        ),
        Missed::GasShort => "the gas that this flour needs: it makes less".to_owned(),
        Missed::GasMuch => "the gas that this flour holds: it makes more".to_owned(),
    }
}

/// The classes that end outside what formulas of the kind have, and were not so far outside before. The trade counts by
/// weight, so it is told only where what they bring has truly moved that way.
fn outside(facts: &Facts, plan: &Plan) -> Vec<String> {
    if !may_judge(facts) {
        return Vec::new();
    }
    let percent = |formula: &Formula, class: Class| {
        let grams = formula
            .batter()
            .filter_map(|line| Some(line.grams.mean * class.share(line.ingredient)?));
        let flour = percentages(formula).flour?.mean;
        Some(grams.sum::<Mass>() / flour * 100.0)
    };
    let said = |class: Class| {
        let range = range(facts.kind, class)?;
        let [low, high] = [range.low, range.high].map(Share::to_percent);
        let (was, is) = (
            percent(facts.formula, class)?,
            percent(&plan.formula, class)?,
        );
        let beyond = |percent: f64| (low - percent).max(percent - high).max(0.0);
        let further = beyond(is) - beyond(was);
        let is_truly = sum_of(class).is_none_or(|keep| {
            let moved = plan
                .kept
                .iter()
                .filter(|kept| kept.keep == keep && kept.is_moved());
            moved
                .into_iter()
                .any(|kept| (kept.change() > 0.0) == (is > was))
        });
        (is_truly && further > TOLD * high.max(1.0)).then(|| {
            format!(
                "{} comes to {} of the flour, where {} have {} to {}.",
                class.name(),
                show::percent(Share::percent(is)),
                facts.kind.words(),
                show::plain(low),
                show::percent(range.high),
            )
        })
    };
    Class::ALL.into_iter().filter_map(said).collect()
}

/// What a class brings; `None` where nothing else tells.
fn sum_of(class: Class) -> Option<Keep> {
    Some(match class {
        Class::Sugar => Keep::Sugars,
        Class::Fat => Keep::Fat,
        Class::Egg => Keep::Setting,
        Class::Liquid | Class::Water => Keep::Water,
        Class::Leavening => Keep::Gas,
        Class::Salt => Keep::Salt,
        Class::Cocoa => return None,
    })
}

/// From which part of an end on being beyond it is told: under what rounding brings.
const TOLD: f64 = 0.02;

/// What no source tells of an ingredient, so that it cannot be kept.
fn unknown(plan: &Plan) -> Option<String> {
    let mut said: Vec<String> = plan
        .unknown
        .iter()
        .map(|(name, keep)| format!("the {} of {name}", keep.words()))
        .collect();
    said.truncate(4);
    (!said.is_empty()).then(|| {
        format!(
            "No source gives {}: it is counted as none and not kept.",
            show::listed(&said)
        )
    })
}

/// The line that has to be weighed before the plan is good, if there is one.
fn weigh_first(facts: &Facts, plan: &Plan) -> Option<String> {
    let bowl = plan.bowl.as_ref()?;
    let band = ph_band(facts.kind);
    let inside = |bowl: &Bowl| bowl.chance_below(band.high) - bowl.chance_below(band.low);
    let before = facts.bowl.map_or(1.0, inside);
    // What was too close to call before is no matter of the swap.
    if inside(bowl) >= ENOUGH.min(before) || bowl.is_measured() || !plan.missed.is_empty() {
        return None;
    }
    let parts = bowl.parts_by(&|part| part.acid.deviation());
    let widest = parts.into_iter().find_map(|part| {
        let line = facts
            .formula
            .batter()
            .find(|line| (line.line, line.part) == (part.line, part.part))?;
        (line.grams.relative_deviation() > 0.02).then_some(line)
    });
    Some(match widest {
        Some(line) => format!(
            "Where the crumb's pH ends is too close to call. Weigh {} (line {}) first: a cup of it is not one weight.",
            line.ingredient.name, line.line
        ),
        None => "Where the crumb's pH ends is too close to call: the acid of what is in it is not known better. Measure a crumb.".into(),
    })
}
