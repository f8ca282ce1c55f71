//! The next bake worth doing, to find the best amount of one thing.
//!
//! First a bracket about where the best amount is thought to lie, with the unchanged recipe among it; then one bake at a
//! time, each where it tells most of where the best amount lies; until that is known well enough, or another bake would
//! gain less than bakes of the same recipe differ by.

use crate::baking::quantity::show;
use crate::baking::statistics::best::Wish;
use crate::baking::statistics::curve::Observation;
use crate::baking::statistics::scatter::Usual;
use crate::baking::statistics::turning::{Before, Turning, turning};
use serde::Serialize;

/// What is to be found out. Amounts are in `unit`, outcomes in a unit of their own.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// What is moved: "caster sugar".
    pub factor: String,
    /// The unit of its amounts, as it stands behind a figure: " g".
    pub unit: &'static str,
    /// How much of it the unchanged recipe has.
    pub now: f64,
    /// The smallest amount that comes into question.
    pub low: f64,
    /// The largest.
    pub high: f64,
    /// The least difference that the scale, or the dial, shows.
    pub step: f64,
    /// What is reckoned to be best, with its standard deviation; `None` where nothing is.
    pub predicted: Option<(f64, f64)>,
    /// What is wanted of the outcome.
    pub wish: Wish,
    /// How far outcomes of the same recipe differ.
    pub usual: Usual,
}

/// What to do next.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct NextBake {
    /// The bakes, from the smallest amount up; none where it is time to stop or nothing can be proposed.
    pub bakes: Vec<ProposedBake>,
    /// The best amount as far as is known, as a scale shows it; `None` before three amounts were baked.
    pub best: Option<f64>,
    /// It lies between these in nine cases of ten.
    pub between: Option<(f64, f64)>,
    /// Whether it is time to stop.
    pub stop: bool,
    /// Why, in sentences.
    pub says: Vec<String>,
}

/// A bake that is proposed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ProposedBake {
    /// How much.
    pub amount: f64,
    /// Whether it is the recipe unchanged.
    pub control: bool,
}

/// A curve that turns takes three amounts.
const AMOUNTS: usize = 3;
/// From the middle of a bracket to its ends, in deviations of what is thought: far enough that the best amount most
/// likely lies between them, and that what comes out differs by more than its scatter.
const BRACKET: f64 = 1.5;
/// A best amount known to this share of itself is known: what a baker takes for the same (our own judgement).
const CLOSE: f64 = 0.05;
/// How sure that is to be.
const SURE: f64 = 0.9;
/// Another bake that gains less than this share of the scatter of a single one cannot be told from chance.
const NO_GAIN: f64 = 0.05;
/// Into how many steps the range is cut when looking for the next amount.
const CANDIDATES: usize = 40;

/// What to bake next, after the bakes so far.
pub fn next_bake(asked: &Question, baked: &[Observation]) -> NextBake {
    match Search::of(asked) {
        Ok(search) => search.next(baked),
        Err(sentence) => NextBake {
            says: vec![sentence],
            ..NextBake::default()
        },
    }
}

/// A question that can be answered.
struct Search<'a> {
    asked: &'a Question,
    low: f64,
    high: f64,
}

impl<'a> Search<'a> {
    fn of(asked: &'a Question) -> Result<Self, String> {
        let (low, high) = (asked.low.min(asked.now), asked.high.max(asked.now));
        let is_finite = [low, high, asked.now, asked.step]
            .iter()
            .all(|it| it.is_finite());
        if !is_finite || low < 0.0 {
            return Err(format!(
                "How much {} there is now, and from how much to how much it may go, has to be known first.",
                asked.factor
            ));
        }
        if !(asked.step > 0.0 && high - low >= 2.0 * asked.step) {
            return Err(format!(
                "Between {} and {} there are no three amounts of {} that your scale can tell apart: bake a larger batch, or let it go further.",
                said(asked, low),
                said(asked, high),
                asked.factor
            ));
        }
        Ok(Self { asked, low, high })
    }

    fn next(&self, baked: &[Observation]) -> NextBake {
        let before = Before {
            low: self.low,
            high: self.high,
            thought: self.asked.predicted,
            usual: self.asked.usual,
            wish: self.asked.wish,
        };
        let Some(known) = turning(baked, before) else {
            return NextBake {
                says: vec![
                    "A figure of a bake is no figure to reckon with: look at what was written down."
                        .to_owned(),
                ],
                ..NextBake::default()
            };
        };
        if different(baked, self.asked.step) < AMOUNTS {
            let bracket = self.bracket();
            let is_baked = |amount: f64| {
                baked
                    .iter()
                    .any(|it| (it.amount - amount).abs() < self.asked.step / 2.0)
            };
            let open: Vec<f64> = bracket
                .iter()
                .copied()
                .filter(|it| !is_baked(*it))
                .collect();
            return self.bracket_said(&bracket, open);
        }
        self.after_the_bracket(&known)
    }

    /// Amounts about the one that is thought best, the present one among them.
    fn bracket(&self) -> Vec<f64> {
        let range = self.high - self.low;
        let (middle, half) = match self.asked.predicted {
            Some((mean, deviation)) => (mean, (BRACKET * deviation).max(range / 8.0)),
            None => (self.asked.now, range / 4.0),
        };
        let half = half.clamp(self.asked.step, range / 2.0);
        // Not by `clamp`: rounding may leave nothing between the two.
        let middle = middle.min(self.high - half).max(self.low + half);
        let mut amounts = vec![middle - half, middle, middle + half];
        let away = |amount: f64| (amount - self.asked.now).abs();
        let nearest = (0..3).min_by(|a, b| away(amounts[*a]).total_cmp(&away(amounts[*b])));
        match nearest.filter(|it| away(amounts[*it]) <= half / 2.0) {
            Some(nearest) => amounts[nearest] = self.asked.now,
            None => amounts.push(self.asked.now),
        }
        amounts.sort_by(f64::total_cmp);
        let mut amounts: Vec<f64> = amounts.into_iter().map(|it| self.shown(it)).collect();
        amounts.dedup();
        amounts
    }

    /// As a scale shows it; the present amount stays what it is.
    fn shown(&self, amount: f64) -> f64 {
        let Question { now, step, .. } = *self.asked;
        let shown = now + ((amount - now) / step).round() * step;
        // To a thousandth, as weights are kept.
        (shown.clamp(self.low, self.high) * 1000.0).round() / 1000.0
    }

    fn proposed(&self, amounts: Vec<f64>) -> Vec<ProposedBake> {
        let now = self.asked.now;
        let half = self.asked.step / 2.0;
        let of = |amount: f64| ProposedBake {
            amount,
            control: (amount - now).abs() < half,
        };
        amounts.into_iter().map(of).collect()
    }

    fn bracket_said(&self, bracket: &[f64], open: Vec<f64>) -> NextBake {
        let asked = self.asked;
        let words: Vec<String> = self
            .proposed(open.clone())
            .into_iter()
            .map(|it| match it.control {
                true => format!("{} (as it is)", said(asked, it.amount)),
                false => said(asked, it.amount),
            })
            .collect();
        let why = match asked.predicted {
            Some((mean, _)) => format!(
                "About {} is reckoned to be best; the others show on which side of it the best lies.",
                said(asked, self.shown(mean))
            ),
            None => "Nothing tells beforehand which amount is best, so they stand on both sides of what it is now."
                .to_owned(),
        };
        let mut says = vec![
            format!(
                "Bake it with {} of {}, all else alike.",
                show::listed(&words),
                asked.factor
            ),
            why,
        ];
        if open.len() == bracket.len() {
            says.push(
                "The recipe as it is belongs among them: what another day, flour or oven does, it shows too."
                    .to_owned(),
            );
        }
        NextBake {
            bakes: self.proposed(open),
            says,
            ..NextBake::default()
        }
    }

    fn after_the_bracket(&self, known: &Turning) -> NextBake {
        let asked = self.asked;
        let best = self.shown(known.best());
        let (low, high) = known.bounds(SURE);
        let scatter = asked.usual.deviation;
        let close = (CLOSE * best).max(asked.step);
        let is_known = known.within(best, close) >= SURE;
        let candidates = (0..=CANDIDATES).map(|place| {
            let share = place as f64 / CANDIDATES as f64;
            self.shown(self.low + share * (self.high - self.low))
        });
        let by_gain = candidates.map(|amount| (amount, known.gain(amount)));
        let most = by_gain.max_by(|a, b| a.1.total_cmp(&b.1));
        let (amount, gain) = most.unwrap_or((best, 0.0));
        let is_no_gain = gain < NO_GAIN * scatter;
        let reckoned = match asked.predicted {
            Some(_) => " and what was reckoned weighed in,",
            None => " weighed in,",
        };
        let mut says = vec![format!(
            "By every curve that may go through these bakes, with the usual scatter{reckoned} the best is about {} of {}, in nine cases of ten between {} and {}.",
            said(asked, best),
            asked.factor,
            said(asked, low),
            said(asked, high)
        )];
        if high >= self.high || low <= self.low {
            says.push("It may lie beyond the amounts that come into question here.".to_owned());
        }
        if known.reach() < 2.0 * scatter {
            says.push(format!(
                "How much {} goes in makes hardly more of a difference than bakes of the same recipe do.",
                asked.factor
            ));
        }
        let stop = is_known || is_no_gain;
        says.push(match (is_known, stop) {
            (true, _) => "That is known to 5 % in nine cases of ten, which is near enough. Stop here.".to_owned(),
            (false, true) => {
                "Another bake would gain far less than bakes of the same recipe differ by. Stop here.".to_owned()
            }
            _ => format!("Bake it with {} next: that tells most of where the best lies.", said(asked, amount)),
        });
        NextBake {
            bakes: if stop {
                Vec::new()
            } else {
                self.proposed(vec![amount])
            },
            best: Some(best),
            between: Some((low, high)),
            stop,
            says,
        }
    }
}

/// How many different amounts were baked.
fn different(baked: &[Observation], step: f64) -> usize {
    let mut amounts: Vec<f64> = baked.iter().map(|it| it.amount).collect();
    amounts.sort_by(f64::total_cmp);
    amounts.dedup_by(|later, first| *later - *first < step / 2.0);
    amounts.len()
}

/// An amount with its unit.
fn said(asked: &Question, amount: f64) -> String {
    let decimals = if asked.step >= 1.0 {
        0
    } else if asked.step >= 0.1 {
        1
    } else {
        2
    };
    format!("{}{}", show::trimmed(amount, decimals), asked.unit)
}
