//! Where the best amount lies when little was observed: every amount that it may be is weighed by how well a curve that
//! has its best there goes through the observations.
//!
//! Bayes' rule over a grid (Gelman and others, Bayesian Data Analysis, 3.7, from memory). A curve falls off from its best
//! amount by a square, or passes through the outcome wanted by a straight line; how steep it is, is weighed with it. No
//! curve is quite of that shape: with the way from the best amount grows the share by which it may be off, so that what
//! was observed far away counts for less. Its height goes out by integrating over all, the scatter by Student's
//! distribution with what is usual before it.

use super::all_plain;
use super::best::Wish;
use super::curve::Observation;
use super::scatter::Usual;

/// What is known before, and what is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Before {
    /// The smallest amount that comes into question.
    pub low: f64,
    /// The largest; above that.
    pub high: f64,
    /// Where the best amount is thought to lie, with its standard deviation; `None` where it may lie anywhere.
    pub thought: Option<(f64, f64)>,
    /// The scatter of an outcome.
    pub usual: Usual,
    /// What is wanted of the outcome.
    pub wish: Wish,
}

/// What is known of the best amount.
#[derive(Clone, Debug, PartialEq)]
pub struct Turning {
    before: Before,
    count: usize,
    states: Vec<State>,
}

/// One curve, with how much speaks for it; all of them sum to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
struct State {
    best: f64,
    steep: f64,
    /// The outcome at the best amount, and its variance against that of an observation.
    height: (f64, f64),
    weight: f64,
}

/// Into how many amounts the range is cut.
const AMOUNTS: usize = 81;
/// How far a curve is off its shape, as a share of what it falls off (our own judgement).
const OFF_SHAPE: f64 = 0.25;
/// What a curve may fall off, or rise, over half the range, against the scatter: each as likely as the others (our own
/// judgement, from what can hardly be seen to what no baker needs help with).
const STEEP: [f64; 13] = [
    0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 24.0, 48.0,
];

/// Weighs every amount. `None` where a number cannot be reckoned with, the range is empty or the scatter not above 0.
pub fn turning(observed: &[Observation], before: Before) -> Option<Turning> {
    let Before {
        low, high, usual, ..
    } = before;
    let (mean, deviation) = before.thought.unwrap_or((low, high - low));
    let numbers = [low, high, usual.deviation, usual.worth, mean, deviation];
    let observations = observed.iter().flat_map(|it| [it.amount, it.outcome]);
    let sound = all_plain(
        numbers
            .into_iter()
            .chain(observations)
            .chain(wanted(before)),
    );
    if !(sound && high > low && usual.deviation > 0.0 && usual.worth > 0.0 && deviation > 0.0) {
        return None;
    }
    let mut all = Turning {
        before,
        count: observed.len(),
        states: Vec::new(),
    };
    for place in 0..AMOUNTS {
        let best = low + (high - low) * place as f64 / (AMOUNTS - 1) as f64;
        for steep in STEEP {
            all.weigh(observed, best, steep);
            // Whether the outcome rises or falls with the amount is not known beforehand.
            if matches!(before.wish, Wish::Nearest(_)) {
                all.weigh(observed, best, -steep);
            }
        }
    }
    let most = all.states.iter().map(|it| it.weight);
    let most = most.fold(f64::NEG_INFINITY, f64::max);
    let scaled = all.states.iter_mut().map(|it| {
        it.weight = (it.weight - most).exp();
        it.weight
    });
    let sum: f64 = scaled.sum();
    all.states.iter_mut().for_each(|it| it.weight /= sum);
    Some(all)
}

fn wanted(before: Before) -> Option<f64> {
    match before.wish {
        Wish::Nearest(outcome) => Some(outcome),
        Wish::Largest | Wish::Smallest => None,
    }
}

impl Turning {
    /// Takes in a curve, its weight as a logarithm.
    fn weigh(&mut self, observed: &[Observation], best: f64, steep: f64) {
        let usual = self.before.usual;
        let mut logs = self.before.thought.map_or(0.0, |(mean, deviation)| {
            -0.5 * ((best - mean) / deviation).powi(2)
        });
        let of = |it: &Observation| {
            let fall = self.fall(best, steep, it.amount);
            (it.outcome / usual.deviation - fall, precision(fall))
        };
        let sum: f64 = observed.iter().map(|it| of(it).1).sum();
        let total: f64 = observed.iter().map(|it| of(it).0 * of(it).1).sum();
        let wanted = wanted(self.before).map(|it| it / usual.deviation);
        let (height, variance) = match wanted {
            Some(wanted) => (wanted, 0.0),
            None if sum > 0.0 => (total / sum, 1.0 / sum),
            None => (0.0, 0.0),
        };
        let squares: f64 = observed
            .iter()
            .map(|it| of(it).1 * (of(it).0 - height).powi(2))
            .sum();
        let free = observed.len() as f64 - f64::from(u8::from(variance > 0.0));
        logs += observed.iter().map(|it| 0.5 * of(it).1.ln()).sum::<f64>();
        if variance > 0.0 {
            logs += 0.5 * variance.ln();
        }
        logs -= 0.5 * (usual.worth + free) * (1.0 + squares / usual.worth).ln();
        self.states.push(State {
            best,
            steep,
            height: (height, variance),
            weight: logs,
        });
    }

    /// By how much a curve is above its outcome at the best amount, in scatters.
    fn fall(&self, best: f64, steep: f64, amount: f64) -> f64 {
        let half = (self.before.high - self.before.low) / 2.0;
        let way = (amount - best) / half;
        match self.before.wish {
            Wish::Largest => -steep * way * way,
            Wish::Smallest => steep * way * way,
            Wish::Nearest(_) => steep * way,
        }
    }

    fn mean(&self, of: impl Fn(&State) -> f64) -> f64 {
        self.states.iter().map(|it| it.weight * of(it)).sum()
    }

    /// The best amount: that with the least square of what it is off.
    pub fn best(&self) -> f64 {
        self.mean(|it| it.best)
    }

    /// The bounds that the best amount lies within in a share `sure` of cases, half of the others on each side.
    pub fn bounds(&self, sure: f64) -> (f64, f64) {
        let tail = (1.0 - sure) / 2.0;
        let at = |share: f64| {
            let mut sum = 0.0;
            let found = self.states.iter().find(|it| {
                sum += it.weight;
                sum >= share
            });
            found.map_or(self.before.high, |it| it.best)
        };
        (at(tail), at(1.0 - tail))
    }

    /// In what share of cases the best amount is no further from `amount` than this.
    pub fn within(&self, amount: f64, apart: f64) -> f64 {
        self.mean(|it| f64::from(u8::from((it.best - amount).abs() <= apart)))
    }

    /// How far the outcome at an amount is expected to be from the best that there is, in its own unit.
    pub fn loss(&self, amount: f64) -> f64 {
        let scatter = self.before.usual.deviation;
        scatter * self.mean(|it| self.fall(it.best, it.steep, amount).abs())
    }

    /// What the outcome is expected to change by over half the range, in its own unit.
    pub fn reach(&self) -> f64 {
        self.before.usual.deviation * self.mean(|it| it.steep.abs())
    }

    /// What another observation at an amount is expected to take off the loss at the best amount: the share of its
    /// variance that the place of the best amount makes (the correlation ratio), which is what a linear estimate of
    /// that place would gain by it. In the outcome's unit.
    pub fn gain(&self, amount: f64) -> f64 {
        if self.count == 0 && wanted(self.before).is_none() {
            // The first tells the height alone.
            return 0.0;
        }
        self.loss(self.best()) * self.told(amount)
    }

    fn told(&self, amount: f64) -> f64 {
        let outcome = |it: &State| it.height.0 + self.fall(it.best, it.steep, amount);
        let mean = self.mean(outcome);
        let (mut between, mut all) = (0.0, 0.0);
        for group in self.states.chunk_by(|one, other| one.best == other.best) {
            let weight: f64 = group.iter().map(|it| it.weight).sum();
            let sum: f64 = group.iter().map(|it| it.weight * outcome(it)).sum();
            if weight > 0.0 {
                between += (sum - weight * mean).powi(2) / weight;
            }
            all += group
                .iter()
                .map(|it| {
                    let own = it.height.1 + 1.0 / precision(self.fall(it.best, it.steep, amount));
                    it.weight * ((outcome(it) - mean).powi(2) + own)
                })
                .sum::<f64>();
        }
        if all > 0.0 { between / all } else { 0.0 }
    }
}

/// What an observation counts for whose curve has fallen off by so many scatters.
fn precision(fall: f64) -> f64 {
    1.0 / (1.0 + (OFF_SHAPE * fall).powi(2))
}
