//! Why a cake failed, as it is shown.

use super::gather::{Known as Gathered, with_facts};
use super::oven::{named, usual};
use super::oven_ask::heat;
use super::{Inputs, Settings, SourceNote};
use crate::baking::balance::By as Told;
use crate::baking::diagnosis::odds::OTHER;
use crate::baking::diagnosis::{
    By, Diagnosis, Evidence, Figure, Known, Measured, OvenKnown, Ranked, Seen, diagnose, remedies,
};
use crate::baking::finding::{Facts, LIKELY, Remedy, VERY_LIKELY};
use crate::baking::ingredient::Own;
use crate::baking::oven::core_temperature::core;
use crate::baking::oven::scale::{OvenKind, read_setting};
use crate::baking::quantity::{Temperature, show};
use crate::baking::recipe::{Looks, OvenSetting};
use crate::baking::source;
use serde::Serialize;

/// Why a cake failed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DiagnosisSheet {
    /// The answer in a sentence or two.
    pub said: String,
    /// What kind of cake it was judged as, and what to do where it is meant as another.
    pub judged_as: String,
    /// What may be behind it, the likeliest first.
    pub causes: Vec<CauseView>,
    /// What would tell the first two apart; empty where one stands alone.
    pub apart: Vec<String>,
    /// What textbooks name for these signs and the figures rule out: the cause, and the figure.
    pub ruled_out: Vec<(&'static str, String)>,
    /// What is not known and would tell more.
    pub unknown: Vec<&'static str>,
    /// What is wrong with what was told.
    pub troubles: Vec<String>,
    /// How it was got.
    pub how: String,
    /// Every source that was used.
    pub sources: Vec<SourceNote>,
}

/// A cause as it is shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CauseView {
    /// By which it is kept.
    pub key: &'static str,
    /// "Too much sugar".
    pub name: &'static str,
    /// From 0 to 1.
    pub chance: f64,
    /// "Likely, about 7 in 10".
    pub verdict: String,
    /// How it does it.
    pub how: &'static str,
    /// What speaks for and against it, each with what it does to the odds; their product is the odds against something else.
    pub evidence: Vec<(String, String)>,
    /// What would tell it from others.
    pub tells: &'static str,
    /// What mends it, in words.
    pub remedy: &'static str,
    /// What is to be minded; empty where nothing is.
    pub caution: &'static str,
    /// What mends it, as changes of the recipe.
    pub remedies: Vec<Remedy>,
}

/// From this chance on a cause is possible, below that unlikely (our own limit).
const POSSIBLE: f64 = 0.1;
/// What is less likely than this is not shown.
const SHOWN: f64 = 0.02;
/// How many causes are shown at most.
const MOST: usize = 8;
/// Two chances nearer than that ratio are too close to call (our own limit).
const CLOSE: f64 = 1.5;

/// The causes of what was seen. `forecast` is what heat flow answers for the pan that it was baked in, minutes early, usual and
/// late, where it has been asked.
///
/// It is asked for where it is looked at, and is no part of the worksheet.
pub fn diagnosis(
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
    seen: &Seen,
    forecast: Option<[f64; 3]>,
) -> DiagnosisSheet {
    let mut inputs = inputs.clone();
    let mut seen = seen.clone();
    let mut troubles = take_in(&mut inputs, &mut seen.measured);
    with_facts(&mut Looks::default(), &inputs, settings, own, |gathered| {
        let known = Known {
            facts: &gathered.facts,
            measured: &seen.measured,
            oven: oven(&gathered, &inputs, settings, &seen.measured, forecast),
        };
        let found = diagnose(&known, &seen);
        troubles.extend(
            found
                .unknown
                .iter()
                .map(|key| format!("“{key}” is no sign that is known; it is left aside.")),
        );
        sheet(&known, &found, troubles)
    })
}

/// Whether a recipe was baked in another pan, or at another heat, than it says: its own time tells little of such a bake.
pub fn is_baked_otherwise(inputs: &Inputs, measured: &Measured) -> bool {
    let choices = &inputs.choices;
    !choices.shelf.is_empty() || !choices.oven.setting.trim().is_empty() || measured.oven.is_some()
}

/// The recipe with its oven at what a thermometer in it read, where one did.
pub fn at_heat_read(mut inputs: Inputs, measured: &Measured, settings: &Settings) -> Inputs {
    if let Some(read) = measured.oven {
        let kitchen = settings.kitchen_oven();
        let dial = show::fixed((read - kitchen.off).to_celsius(), 0);
        let fan = match kitchen.kind {
            OvenKind::Fan | OvenKind::Brisk => " fan",
            _ => "",
        };
        inputs.choices.oven.setting = format!("{dial} C{fan}");
    }
    inputs
}

/// Hands what was measured of crumb and standing to the flow, which beats what it reckons; takes back what cannot be.
fn take_in(inputs: &mut Inputs, measured: &mut Measured) -> Vec<String> {
    let batter = &mut inputs.choices.batter;
    let mut troubles = Vec::new();
    let before = batter.clone();
    if let Some(ph) = measured.crumb_ph {
        batter.crumb_ph = show::plain(ph.value());
        if let Err(trouble) = batter.crumb_ph() {
            troubles.push(format!("The crumb's pH is left aside. {trouble}"));
            batter.crumb_ph = before.crumb_ph;
            measured.crumb_ph = None;
        }
    }
    if let Some(minutes) = measured.waited_minutes {
        batter.waits = show::plain(minutes);
        if let Err(trouble) = batter.waits() {
            troubles.push(format!("The batter's wait is left aside. {trouble}"));
            batter.waits = before.waits;
            measured.waited_minutes = None;
        }
    }
    for (what, of, bounds) in [
        ("core", &mut measured.core, (0.0, 130.0)),
        ("oven", &mut measured.oven, (30.0, 400.0)),
    ] {
        let is_sound = |found: &Temperature| (bounds.0..=bounds.1).contains(&found.to_celsius());
        if of.is_some() && of.as_ref().filter(|found| is_sound(found)).is_none() {
            troubles.push(format!(
                "The {what}'s temperature cannot be, and is left aside."
            ));
            *of = None;
        }
    }
    troubles
}

/// The oven in terms of a still one that runs true.
fn oven(
    gathered: &Gathered,
    inputs: &Inputs,
    settings: &Settings,
    measured: &Measured,
    forecast: Option<[f64; 3]>,
) -> OvenKnown {
    let kitchen = settings.kitchen_oven();
    let still = |celsius, kind| {
        kitchen.still(OvenSetting {
            temperature: celsius,
            is_fan: matches!(kind, OvenKind::Fan | OvenKind::Brisk),
        })
    };
    let named = named(gathered.recipe, &kitchen).map(|(still, _)| still);
    let typed = read_setting(&inputs.choices.oven.setting, kitchen.scale);
    let dial = typed
        .ok()
        .flatten()
        .or(named.map(|still| kitchen.dial(still)));
    let kind = gathered.facts.kind;
    let sound = |[low, usual, high]: &[f64; 3]| 0.0 < *low && low <= usual && usual <= high;
    OvenKnown {
        usual: usual(kind),
        named,
        dial: dial.map(|dial| {
            let heat = heat(&kitchen, dial);
            still(heat.celsius, heat.kind)
        }),
        measured: measured.oven.map(|found| still(found, kitchen.kind)),
        // The recipe's time is that of its own pan and oven.
        baked: match is_baked_otherwise(inputs, measured) {
            true => None,
            false => gathered.recipe.baked().map(|baked| [baked.low, baked.high]),
        },
        forecast: forecast.filter(|minutes| sound(minutes) && minutes[2].is_finite()),
        core: core(kind, settings.air()),
    }
}

fn sheet(known: &Known, found: &Diagnosis, troubles: Vec<String>) -> DiagnosisSheet {
    let is_told = !found.signs.is_empty();
    let shown: Vec<&Ranked> = found
        .ranked
        .iter()
        .filter(|ranked| is_told && is_shown(ranked))
        .take(MOST)
        .collect();
    let fits = shown
        .first()
        .is_some_and(|first| first.chance > found.other);
    let close = match shown.as_slice() {
        [first, second, ..] if fits && first.chance < CLOSE * second.chance => {
            Some([*first, *second])
        }
        _ => None,
    };
    DiagnosisSheet {
        said: said(found, shown.first().copied(), close, fits),
        apart: close.map_or_else(Vec::new, |both| {
            let tells = |ranked: &Ranked| {
                format!("{}: {}", ranked.cause.name, show::amid(ranked.cause.tells))
            };
            both.map(tells).into()
        }),
        ruled_out: found
            .ranked
            .iter()
            .filter(|ranked| ranked.evidence.is_named() && ranked.is_ruled_out())
            .filter_map(|ranked| {
                Some((
                    ranked.cause.name,
                    ranked.evidence.figure.as_ref()?.words.clone(),
                ))
            })
            .collect(),
        unknown: unknown(&shown),
        judged_as: judged_as(known.facts),
        sources: sources(&shown),
        causes: shown.iter().map(|ranked| view(known, ranked)).collect(),
        how: format!(
            "Odds: how common a cause is, times a factor for each sign and for the figure that bears on it (Good 1950, from memory). \
             A sign's factor is by how many fault tables of textbooks and the trade name the cause for it; a figure's by how surely \
             it lies past its limit. One cause at a time is supposed. Something that is not in the list has {}.",
            in_ten(found.other)
        ),
        troubles,
    }
}

/// A fault may make one kind look like another, so that is said of a kind that ratios alone told.
fn judged_as(facts: &Facts) -> String {
    let doubt = match facts.kind_by {
        Told::Formula => {
            ", by its weights alone. A fault may have made it look so: one without which it would look like another kind is held against both"
        }
        _ => "",
    };
    format!("Judged as {}{doubt}.", facts.kind.words())
}

fn is_shown(ranked: &Ranked) -> bool {
    let figure = ranked.evidence.figure.as_ref();
    let speaks = figure.is_some_and(|reading| reading.factor() > 1.0);
    let least = match ranked.evidence.is_named() {
        true => SHOWN,
        false if speaks => POSSIBLE,
        false => return false,
    };
    ranked.chance >= least && !ranked.is_ruled_out()
}

fn said(
    found: &Diagnosis,
    first: Option<&Ranked>,
    close: Option<[&Ranked; 2]>,
    fits: bool,
) -> String {
    if found.signs.is_empty() {
        return "Tick what you see on the cake, and its causes follow.".into();
    }
    match (first, close) {
        (Some(first), None) if fits => format!(
            "{}: {}.",
            first.cause.name,
            show::amid(&verdict(first.chance))
        ),
        (_, Some([first, second])) => format!(
            "Too close to call: {} or {}.",
            show::amid(first.cause.name),
            show::amid(second.cause.name)
        ),
        _ => "Nothing that is known here fits what you saw and measured. It may be more than one thing at once, or a slip that leaves no \
              trace."
            .into(),
    }
}

/// "Likely, about 7 in 10".
fn verdict(chance: f64) -> String {
    let word = match chance {
        chance if chance >= VERY_LIKELY => "Very likely",
        chance if chance >= LIKELY => "Likely",
        chance if chance >= POSSIBLE => "Possible",
        _ => "Unlikely",
    };
    format!("{word}, {}", in_ten(chance))
}

/// "about 7 in 10"; below that in a hundred.
fn in_ten(chance: f64) -> String {
    if chance >= 0.995 {
        "nearly certain".into()
    } else if (0.095..0.95).contains(&chance) {
        format!("about {} in 10", show::fixed(chance * 10.0, 0))
    } else {
        format!("about {} in 100", show::fixed((chance * 100.0).max(1.0), 0))
    }
}

fn view(known: &Known, ranked: &Ranked) -> CauseView {
    let cause = ranked.cause;
    CauseView {
        key: cause.key,
        name: cause.name,
        chance: ranked.chance,
        verdict: verdict(ranked.chance),
        how: cause.how,
        evidence: evidence(cause.prior, &ranked.evidence),
        tells: cause.tells,
        remedy: cause.remedy,
        caution: cause.caution,
        remedies: remedies(cause, known.facts),
    }
}

fn evidence(prior: f64, evidence: &Evidence) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    if let Some(reading) = &evidence.figure {
        let by = match reading.by {
            By::Measured => "",
            By::Reckoned => " (reckoned)",
            By::Usual => " (a weak sign)",
        };
        rows.push((format!("{}{by}", reading.words), times(reading.factor())));
    }
    for seen in &evidence.signs {
        let (sign, named) = (seen.sign, seen.sources.len());
        let words = match (named, sign.tables) {
            (0, _) => format!("{}: no table names it.", sign.words),
            (1, 1) => format!("{}: the one table of it names it.", sign.words),
            (named, tables) => format!("{}: {named} of {tables} tables name it.", sign.words),
        };
        rows.push((words, times(seen.factor)));
    }
    rows.push((
        "How common it is, against all that is not in the list (common practice, no source)."
            .into(),
        times(prior / OTHER),
    ));
    rows
}

/// "8.2 times likelier".
fn times(factor: f64) -> String {
    if (0.95..1.05).contains(&factor) {
        "no matter".into()
    } else if factor > 1.0 {
        format!("{} times likelier", show::trimmed(factor, 1))
    } else {
        format!(
            "{} times less likely",
            show::trimmed(1.0 / factor.max(1e-9), 1)
        )
    }
}

/// What would tell more of the causes shown, were it measured.
fn unknown(shown: &[&Ranked]) -> Vec<&'static str> {
    let mut wanted: Vec<&'static str> = Vec::new();
    for ranked in shown {
        let figure = ranked.evidence.figure.as_ref();
        let measured = figure.is_some_and(|reading| reading.by == By::Measured);
        let want = match ranked.cause.figure {
            Figure::BakedBelow | Figure::BakedAbove if figure.is_none() => {
                "the core as it leaves the oven, or its minutes"
            }
            Figure::OvenAbove | Figure::OvenBelow if !measured => "the oven by a thermometer in it",
            Figure::PhAbove | Figure::PhBelow if !measured => "the crumb's pH by a strip",
            Figure::Stood if figure.is_none() => "how long the batter waited",
            _ => continue,
        };
        if !wanted.contains(&want) {
            wanted.push(want);
        }
    }
    wanted
}

/// The tables that name what is shown, and the method.
fn sources(shown: &[&Ranked]) -> Vec<SourceNote> {
    let named = shown.iter().flat_map(|ranked| &ranked.evidence.signs);
    let mut keys: Vec<&str> = named
        .flat_map(|seen| seen.sources.iter().map(|source| source.key))
        .collect();
    keys.push("good_1950");
    let all = source::all().iter();
    all.filter(|source| keys.contains(&source.key))
        .map(|source| SourceNote {
            key: source.key,
            citation: source.citation,
        })
        .collect()
}
