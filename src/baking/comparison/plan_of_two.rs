//! Two things moved at once, so that both their effects can be told, and whether one hangs on the other.
//!
//! Both low and high in every combination, and the unchanged recipe twice between them (NIST e-Handbook 5.3.3.3 and
//! 5.3.3.7): its two bakes tell the scatter, and their mean against the corners' whether the best lies inside.

use super::table::Table;
use super::{Factor, Outcome};
use crate::baking::quantity::show;
use crate::baking::statistics::design::{
    Axial, Coded, amount, central_composite, coded, factorial,
};
use crate::baking::statistics::effects::{Effects, effects};
use crate::baking::statistics::surface::{Level, fit};
use crate::baking::trial::{Trial, measured};
use crate::baking::worksheet::Settings;
use serde::Serialize;

/// What one of the two may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levels {
    /// How much the unchanged recipe has.
    pub now: f64,
    /// How far it is moved to either side.
    pub by: f64,
    /// The least difference that a scale shows.
    pub step: f64,
}

/// A bake of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PlannedBake {
    /// How much of each.
    pub amounts: [f64; 2],
    /// Whether it is the recipe unchanged.
    pub control: bool,
}

/// How often the unchanged recipe is baked: once to compare with, once more for the scatter.
const CONTROLS: usize = 2;

/// The bakes of the plan.
///
/// # Errors
///
/// A sentence where an amount is no number, or is moved by less than a scale shows or below nothing.
pub fn plan_of_two(levels: [Levels; 2]) -> Result<Vec<PlannedBake>, String> {
    planned(levels, factorial(CONTROLS))
}

/// The bakes that make a central composite of the plan, where its middle bends: each of the two low and high by itself
/// (face-centred, NIST e-Handbook 5.3.3.6.1, so that nothing goes beyond what was baked).
///
/// # Errors
///
/// As for [`plan_of_two`].
pub fn arms_of_two(levels: [Levels; 2]) -> Result<Vec<PlannedBake>, String> {
    let mut arms = central_composite(Axial::FaceCentred, 0);
    arms.retain(|[first, second]| first.abs() != second.abs());
    planned(levels, arms)
}

fn planned(levels: [Levels; 2], places: Vec<Coded>) -> Result<Vec<PlannedBake>, String> {
    let by = levels.map(|it| (it.by / it.step).round() * it.step);
    for (it, by) in levels.iter().zip(by) {
        if !(it.now.is_finite() && by.is_finite() && it.step > 0.0) {
            return Err(
                "How much there is now, and how far it is to move, has to be known of both."
                    .to_owned(),
            );
        }
        if by < it.step || by > it.now {
            return Err(
                "Each has to move by what the scale shows at least, and by no more than there is of it.".to_owned(),
            );
        }
    }
    let bakes = places.into_iter().map(|coded| PlannedBake {
        amounts: std::array::from_fn(|which| {
            let (now, by) = (levels[which].now, by[which]);
            (amount(coded[which], now - by, now + by) * 1000.0).round() / 1000.0
        }),
        control: coded == [0.0, 0.0],
    });
    Ok(bakes.collect())
}

/// An amount so near to a planned one, in coded units, is that one: a tenth of the way from the middle to an end.
const NEAR: f64 = 0.1;
/// How sure an effect is to be before it is called one.
const SURE: f64 = 0.9;

/// What the bakes of a plan tell so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ToldOfTwo {
    /// In sentences; empty while none of its corners is baked.
    pub says: Vec<String>,
    /// Whether the middle bends, so that the arms are worth baking.
    pub bends: bool,
}

/// What the bakes of a plan, and of its arms where they are baked, tell so far. Bakes that differ in something else too are
/// left aside.
pub fn told_of_two(
    trials: &[&Trial],
    factors: &[Factor; 2],
    planned: &[PlannedBake],
    outcome: Outcome,
    settings: &Settings,
) -> ToldOfTwo {
    let ends = [0, 1].map(|which| {
        let of = planned.iter().map(|bake| bake.amounts[which]);
        of.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], it| {
            [low.min(it), high.max(it)]
        })
    });
    let amounts = factors
        .each_ref()
        .map(|factor| factor.amounts(trials, settings));
    let place = |at: usize| -> Option<Coded> {
        let of = |which: usize| {
            let [low, high] = ends[which];
            let found = coded(amounts[which][at]?, low, high)?;
            ((found - found.round()).abs() <= NEAR && found.abs() < 1.5).then(|| found.round())
        };
        Some([of(0)?, of(1)?])
    };
    let runs: Vec<(usize, Coded, f64)> = (0..trials.len())
        .filter_map(|at| {
            let (figures, _) = measured(trials[at], settings, None);
            let value = outcome.value(trials[at], &figures, settings)?;
            Some((at, place(at)?, value))
        })
        .collect();
    let (used, aside) = alike(trials, factors, runs, settings);
    let corners = factorial(0);
    let times_at = |corner: &Coded| used.iter().filter(|(place, _)| place == corner).count();
    let baked = corners.iter().filter(|corner| times_at(corner) > 0).count();
    let mut told = ToldOfTwo::default();
    if baked == 0 {
        return told;
    }
    let says = &mut told.says;
    if aside > 0 {
        says.push(format!(
            "Left aside, since something else differs too: {}.",
            bakes(aside)
        ));
    }
    if baked < corners.len() {
        says.push(format!(
            "{baked} of the four corners are baked: the two cannot be told apart before all four are."
        ));
        return told;
    }
    // Each corner counts as often as the one that was baked least; of the others the last ones.
    let each = corners.iter().map(times_at).min().unwrap_or(0);
    let mut left: Vec<(Coded, usize)> = corners.iter().map(|corner| (*corner, each)).collect();
    let even: Vec<(Coded, f64)> = used
        .iter()
        .rev()
        .filter(
            |(place, _)| match left.iter_mut().find(|it| it.0 == *place) {
                Some((_, 0)) => false,
                Some((_, left)) => {
                    *left -= 1;
                    true
                }
                None => true,
            },
        )
        .copied()
        .collect();
    let usual = Some(outcome.usual(settings));
    if let Ok(found) = effects(&even, usual) {
        says.extend(words(&found, factors, ends, outcome, settings));
        told.bends = is_bent(&found);
    }
    let arms = central_composite(Axial::FaceCentred, 0);
    if arms.iter().all(|arm| times_at(arm) > 0)
        && let Ok(surface) = fit(&used, usual)
        && let Some((at, level)) = surface.level()
    {
        let half = surface
            .half_width(at, SURE)
            .map(|half| outcome.said(half, settings));
        let value = outcome.said(surface.at(at), settings);
        told.says.push(level_words(
            (at, level),
            (value, half),
            factors,
            ends,
            outcome,
            settings,
        ));
    }
    told
}

fn is_bent(found: &Effects) -> bool {
    found
        .bend_ratio
        .is_some_and(|ratio| ratio.by_chance < 1.0 - SURE)
}

/// Where a surface through corners, arms and the middle is level.
fn level_words(
    (at, level): (Coded, Level),
    (value, half): (String, Option<String>),
    factors: &[Factor; 2],
    ends: [[f64; 2]; 2],
    outcome: Outcome,
    settings: &Settings,
) -> String {
    let what = show::amid(outcome.words());
    let end = match level {
        Level::Top => "highest",
        Level::Bottom => "lowest",
        Level::Saddle => {
            return format!(
                "A surface through all of them has neither a highest nor a lowest {what} inside: go on from the corner that came out best."
            );
        }
    };
    if at.iter().any(|place| place.abs() > 1.0) {
        return format!(
            "A surface through all of them is {end} beyond what was baked: go on from the corner that came out best."
        );
    }
    let amounts: Vec<String> = (0..2)
        .map(|which| {
            let [low, high] = ends[which];
            let amount = factors[which].said(amount(at[which], low, high), settings);
            format!("{amount} of {}", factors[which].words())
        })
        .collect();
    let half = half.map_or(String::new(), |half| format!(", give or take {half}"));
    format!(
        "By a surface through all of them {what} is {end} at about {}: {value}{half}.",
        show::listed(&amounts)
    )
}

/// "one bake", "3 bakes".
fn bakes(many: usize) -> String {
    match many {
        1 => "one bake".to_owned(),
        many => format!("{many} bakes"),
    }
}

/// The bakes that differ from the last of them in nothing but the two, with their places and outcomes; and how many others
/// there are.
fn alike(
    trials: &[&Trial],
    factors: &[Factor; 2],
    runs: Vec<(usize, Coded, f64)>,
    settings: &Settings,
) -> (Vec<(Coded, f64)>, usize) {
    let table = Table::of(trials, &factors[0], settings);
    let moved: Vec<usize> = (0..table.names.len())
        .filter(|at| {
            factors
                .iter()
                .any(|factor| factor.words() == table.names[*at])
        })
        .collect();
    let Some(&(last, ..)) = runs.last() else {
        return (Vec::new(), 0);
    };
    let is_alike = |at: usize| {
        let mut columns = (0..table.names.len()).filter(|column| !moved.contains(column));
        columns.all(|column| table.rows[at][column] == table.rows[last][column])
    };
    let all = runs.len();
    let used: Vec<(Coded, f64)> = runs
        .into_iter()
        .filter(|(at, ..)| is_alike(*at))
        .map(|(_, place, value)| (place, value))
        .collect();
    let aside = all - used.len();
    (used, aside)
}

fn words(
    found: &Effects,
    factors: &[Factor; 2],
    ends: [[f64; 2]; 2],
    outcome: Outcome,
    settings: &Settings,
) -> Vec<String> {
    let half = found.half_width(SURE).unwrap_or(f64::INFINITY);
    let figure = |value: f64| outcome.said(value, settings);
    let what = show::amid(outcome.words());
    let mut says: Vec<String> = factors
        .iter()
        .zip(ends)
        .zip(found.main)
        .map(|((factor, [low, high]), main)| {
            let from_to = format!(
                "From {} to {} of {}",
                factor.said(low, settings),
                factor.said(high, settings),
                factor.words()
            );
            match main.abs() > half {
                true => format!(
                    "{from_to}, {what} goes {} by {}, give or take {}.",
                    if main > 0.0 { "up" } else { "down" },
                    figure(main.abs()),
                    figure(half)
                ),
                false => format!(
                    "{from_to}, {what} moves by {}: too close to call, since the scatter makes {}.",
                    figure(main.abs()),
                    figure(half)
                ),
            }
        })
        .collect();
    let [first, second] = factors.each_ref().map(Factor::words);
    says.push(match found.interaction.abs() > half {
        true => format!(
            "What {first} does hangs on {second}: at much of it, {what} gains {} more by it than in the middle. Neither is to be set by itself.",
            figure(found.interaction)
        ),
        false => format!(
            "Nothing shows that {first} and {second} hang on one another: each may be set by itself."
        ),
    });
    if let Some(bend) = found.bend {
        says.push(match is_bent(found) {
            true => format!(
                "In the middle it is {} {} than half way between the corners: the four bakes below, each moved by itself, tell where the best lies.",
                figure(bend.abs()),
                if bend < 0.0 { "more" } else { "less" }
            ),
            false => "The middle lies as the corners say: no bend is seen between them.".to_owned(),
        });
    }
    says
}
