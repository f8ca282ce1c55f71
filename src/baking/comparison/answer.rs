//! What one factor does to one outcome, over several bakes.

use super::factor::Factor;
use super::outcome::Outcome;
use super::table::Table;
use crate::baking::quantity::show;
use crate::baking::statistics::Cannot;
use crate::baking::statistics::best::{Best, Wish, best};
use crate::baking::statistics::curve::{Asked, Curve, Observation, Shape, fit_what_is_borne_out};
use crate::baking::trial::{Trial, measured};
use crate::baking::worksheet::Settings;

/// One bake that counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Its place among those given.
    pub trial: usize,
    /// How much of the factor it had.
    pub amount: f64,
    /// What came out.
    pub outcome: f64,
}

/// What can be concluded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// The bakes of which both are known.
    pub points: Vec<Point>,
    /// Places of those of which one is not.
    pub left_out: Vec<usize>,
    /// Places of those that are small where the others are whole, or whole where they are small.
    pub other_size: Vec<usize>,
    /// The curve that they bear out; `None` where nothing can be concluded.
    pub curve: Option<Curve>,
    /// The best amount; `None` where none is better than another.
    pub best: Option<Best>,
    /// All of it in sentences.
    pub says: Vec<String>,
}

/// Bounds hold in this share of cases.
pub(super) const SURE: f64 = 0.9;
/// A term counts where chance alone would make it as large in less than this share of cases.
const BY_CHANCE: f64 = 0.1;

/// What the bakes say of a factor and an outcome; no best amount is looked for without a wish.
pub fn answer(
    trials: &[&Trial],
    factor: &Factor,
    outcome: Outcome,
    wish: Option<Wish>,
    settings: &Settings,
) -> Answer {
    let mut answer = Answer::of(trials, factor, outcome, settings);
    if outcome.hangs_on_size() {
        answer.part_by_size(trials);
    }
    let words = Words {
        factor,
        outcome,
        settings,
    };
    let largest = answer.points.iter().map(|it| it.amount).fold(0.0, f64::max);
    let asked = Asked {
        usual: Some(outcome.usual(settings)),
        alike: factor.alike(largest),
    };
    match fit_what_is_borne_out(&answer.observations(), asked, BY_CHANCE) {
        Ok(curve) if curve.kinds > 1 => {
            answer.best = wish.and_then(|wish| best(&curve, wish, SURE));
            answer.says = words.curve(&curve);
            let best = answer.best.zip(wish);
            answer
                .says
                .extend(best.map(|(best, wish)| words.best(&best, wish)));
            let used: Vec<&Trial> = answer.points.iter().map(|it| trials[it.trial]).collect();
            answer
                .says
                .extend(words.beside(&Table::of(&used, factor, settings)));
            answer.curve = Some(curve);
        }
        Ok(curve) if curve.count > 1 => answer.says.push(words.cannot(Cannot::SameAmount)),
        Ok(_) => answer.says.push(words.cannot(Cannot::Single)),
        Err(cannot) => answer.says.push(words.cannot(cannot)),
    }
    answer.says.extend(left_out(&answer, trials.len()));
    answer.says.extend(other_size(&answer, trials));
    answer
}

/// What is known of a factor and an outcome from bakes of the size of one that is to come, small or whole.
pub fn observed(
    trials: &[&Trial],
    factor: &Factor,
    outcome: Outcome,
    is_small: bool,
    settings: &Settings,
) -> Vec<Observation> {
    let mut known = Answer::of(trials, factor, outcome, settings);
    if outcome.hangs_on_size() {
        known
            .points
            .retain(|it| trials[it.trial].is_small() == is_small);
    }
    known.observations()
}

impl Answer {
    /// The bakes of which both are known, and nothing concluded from them.
    fn of(trials: &[&Trial], factor: &Factor, outcome: Outcome, settings: &Settings) -> Self {
        let mut answer = Self::default();
        for (place, amount) in factor.amounts(trials, settings).into_iter().enumerate() {
            let outcome = || {
                let (found, _) = measured(trials[place], settings, None);
                outcome.value(trials[place], &found, settings)
            };
            match amount.and_then(|amount| Some((amount, outcome()?))) {
                Some((amount, outcome)) => answer.points.push(Point {
                    trial: place,
                    amount,
                    outcome,
                }),
                None => answer.left_out.push(place),
            }
        }
        answer
    }

    /// Keeps the whole bakes or the small ones, whichever are more: a small cake rises and bakes otherwise, so that both
    /// together would tell of their size instead.
    fn part_by_size(&mut self, trials: &[&Trial]) {
        let (small, whole): (Vec<Point>, Vec<Point>) = self
            .points
            .iter()
            .partition(|it| trials[it.trial].is_small());
        let (kept, others) = match small.len() > whole.len() {
            true => (small, whole),
            false => (whole, small),
        };
        self.points = kept;
        self.other_size = others.iter().map(|it| it.trial).collect();
    }

    /// The bakes that count, as plain numbers.
    pub fn observations(&self) -> Vec<Observation> {
        let of = |it: &Point| Observation {
            amount: it.amount,
            outcome: it.outcome,
        };
        self.points.iter().map(of).collect()
    }
}

struct Words<'a> {
    factor: &'a Factor,
    outcome: Outcome,
    settings: &'a Settings,
}

impl Words<'_> {
    fn amount(&self, amount: f64) -> String {
        self.factor.said(amount, self.settings)
    }

    fn outcome(&self, value: f64) -> String {
        self.outcome.said(value, self.settings)
    }

    fn outcome_name(&self) -> String {
        show::amid(self.outcome.words())
    }

    fn curve(&self, curve: &Curve) -> Vec<String> {
        let (low, high) = (self.amount(curve.low), self.amount(curve.high));
        let name = self.factor.words();
        let outcome = self.outcome_name();
        let mut says = vec![match curve.shape {
            Shape::Flat => format!(
                "From {low} to {high} nothing says that {name} makes a difference to {outcome}: what differs is no more than scatter."
            ),
            Shape::Straight => {
                let change = curve.at(curve.high) - curve.at(curve.low);
                let way = if change < 0.0 { "falls" } else { "rises" };
                format!(
                    "From {low} to {high} of {name}, {outcome} {way} by about {}, evenly as far as can be told.",
                    self.outcome(change.abs())
                )
            }
            Shape::Curved => format!(
                "From {low} to {high} of {name}, {outcome} goes along a curve{}.",
                curve
                    .turn()
                    .filter(|turn| (curve.low..=curve.high).contains(turn))
                    .map(|turn| format!(" that turns at {}", self.amount(turn)))
                    .unwrap_or_default()
            ),
        }];
        if let Some(scatter) = curve.scatter {
            let deviation = self.outcome(scatter.deviation);
            says.push(match curve.pure {
                Some(pure) => format!(
                    "Scatter: {deviation} (one standard deviation), with {} repeated {} of your own in it.",
                    show::count(pure.degrees),
                    if pure.degrees == 1 { "bake" } else { "bakes" }
                ),
                None => format!(
                    "Scatter: {deviation} (one standard deviation). Nothing was baked twice, so it leans on what is usual (our own judgement): repeat one bake, and it is yours."
                ),
            });
        }
        if curve
            .lack_of_fit()
            .is_some_and(|it| it.by_chance < BY_CHANCE)
        {
            says.push("Your repeats are nearer to one another than to this curve: it is not quite of this shape.".to_owned());
        }
        says
    }

    fn best(&self, best: &Best, wish: Wish) -> String {
        let wanted = match wish {
            Wish::Largest => "highest".to_owned(),
            Wish::Smallest => "lowest".to_owned(),
            Wish::Nearest(value) => format!("nearest to {}", self.outcome(value)),
        };
        let range = match (best.low, best.high) {
            (Some(low), Some(high)) => {
                format!(
                    "in nine cases of ten it lies between {} and {}",
                    self.amount(low),
                    self.amount(high)
                )
            }
            (Some(low), None) => format!(
                "in nine cases of ten it lies above {}; how much above, these bakes do not tell",
                self.amount(low)
            ),
            (None, Some(high)) => format!(
                "in nine cases of ten it lies below {}; how much below, these bakes do not tell",
                self.amount(high)
            ),
            (None, None) => "it may as well be any of these amounts".to_owned(),
        };
        let other = best.other.map(|it| format!(" (or {})", self.amount(it)));
        let said = format!(
            "{} is {wanted} at about {}{}, {}",
            self.outcome.words(),
            self.amount(best.amount),
            other.unwrap_or_default(),
            self.outcome(best.outcome),
        );
        match best.met {
            true => format!("{said}; if it goes by this curve, {range}."),
            false => {
                format!("{said}. That is the end of what was baked: the best may lie beyond it.")
            }
        }
    }

    fn beside(&self, table: &Table) -> Vec<String> {
        let (mixed, others) = table.beside_the_first();
        let listed = |names: Vec<&str>| {
            show::listed(&names.into_iter().map(str::to_owned).collect::<Vec<_>>())
        };
        let mut says = Vec::new();
        if !mixed.is_empty() {
            says.push(format!(
                "In these bakes {} did not change apart from {}: nothing tells which of them did it. A bake in which it alone changes would.",
                self.factor.words(),
                listed(mixed)
            ));
        }
        if !others.is_empty() {
            says.push(format!(
                "Other things changed as well, and what they do is taken for scatter here: {}.",
                listed(others)
            ));
        }
        says
    }

    fn cannot(&self, cannot: Cannot) -> String {
        let name = self.factor.words();
        let outcome = self.outcome_name();
        match cannot {
            Cannot::Nothing => format!("No bake has both {name} and {outcome} written down."),
            Cannot::Single => format!(
                "One bake does not tell what {name} does: bake it again with another amount and all else alike."
            ),
            Cannot::SameAmount => format!(
                "All these bakes have the same amount of {name}: they tell how far repeats differ, and nothing of what another amount does."
            ),
            Cannot::NotFinite => {
                "A figure is too large to reckon with: look at what was written down.".to_owned()
            }
            Cannot::NotApart => format!("These amounts of {name} are too few to tell a curve by."),
        }
    }
}

fn left_out(answer: &Answer, all: usize) -> Option<String> {
    let out = answer.left_out.len();
    (out > 0 && out < all).then(|| {
        format!(
            "{} of {all} bakes {} left out: one of the two is not written down.",
            show::count(out),
            if out == 1 { "is" } else { "are" }
        )
    })
}

fn other_size(answer: &Answer, trials: &[&Trial]) -> Option<String> {
    let first = *answer.other_size.first()?;
    let (others, kept) = match trials[first].is_small() {
        true => ("small", "whole"),
        false => ("whole", "small"),
    };
    let out = answer.other_size.len();
    Some(format!(
        "{} {others} {} left out: a small cake rises and bakes otherwise, so {kept} ones are held against {kept} ones.",
        show::count(out),
        if out == 1 { "bake is" } else { "bakes are" },
    ))
}
