//! The reckoning backwards: from the crumb and the lift that are wanted to the leaveners that bring them about.
//!
//! Goes in: the facts of a formula and a [`Wish`]. Comes out: an [`Answer`], amounts on the grid of a small scale, as
//! edits like those of a remedy. What a small change of each leavener does is taken from [`bowl`] itself; along those
//! straight lines the best amounts on the grid are looked for, judged by [`bowl`] again, and the lines are drawn anew
//! there. It is bounded: about fifty bowls.

mod said;
mod search;
mod shelf;
mod wish;

pub use wish::{Cupboard, POWDERS, Per, Tang, Wish, WishEntry};

use super::balance::{Constituent, total};
use super::chemistry::Bowl;
use super::estimate::Estimate;
use super::finding::{
    Edit, Facts, POWDER_KEPT, Remedy, VerdictKind, acid_verdict, gas_band, last_leavener, ph_band,
};
use super::formula::{Formula, Place, Weighed};
use super::quantity::{Mass, Ph, Share, show};
use search::{descend, nearest};
use shelf::{Amounts, Leavener, Shelf, tenths};

/// The part of the upper limit of gas up to which a batter may be led: as the mends do.
const GAS_ROOM: f64 = 0.8;
/// Weight of the gas's distance from its mark inside its range, beside a distance outside it.
const MARK: f64 = 0.1;
/// Weight of a change, for each per cent of flour in soda's worth: small, so that it decides between equals.
const CHANGE: f64 = 0.01;
/// Weight of a milligram of sodium above the limit: large, since the limit holds.
const OVER: f64 = 1000.0;
/// A leavener counts as without sodium below this, mg in a gram: the low sodium powder has 0.9.
const SODIUM_FREE: f64 = 1.0;
/// What such a powder may add, mg per 100 g of batter: 3 g of it bring 2.7.
const LITTLE_MORE: f64 = 5.0;
/// The crumb is as wished when it is this likely to lie in its band: just above what the verdict calls likely.
const ENOUGH: f64 = 0.67;
/// The smallest difference of pH that is worth a word.
const NOTABLE: f64 = 0.05;
/// How often the lines are drawn anew, and how often the last tenths are tried.
const ROUNDS: usize = 5;
const LAST_TENTHS: usize = 3;
/// The change over which a line is drawn, per cent of flour in soda's worth.
const PROBE: f64 = 0.15;

/// What a batter comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// pH of the crumb.
    pub ph: Estimate<Ph>,
    /// Carbon dioxide set free, share of the flour.
    pub gas: Estimate<Share>,
    /// Sodium, mg per 100 g of batter, of the lines whose sodium is known.
    pub sodium: f64,
    /// The same in each of the recipe's servings, mg; `None` where it says no number of them.
    pub sodium_in_serving: Option<f64>,
}

/// One leavener of an answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// Its name.
    pub name: &'static str,
    /// What the recipe has of it now, g.
    pub before: f64,
    /// What it is to have, g.
    pub grams: f64,
    /// `grams` with spoons, in words.
    pub shown: String,
}

/// What gives way where not everything can be had.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GivesWay {
    /// The crumb's pH is not where it was wished.
    Ph,
    /// The gas is not.
    Gas,
    /// The other ingredients bring more sodium than the limit allows.
    Sodium,
}

/// The leavening that comes nearest to a wish.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// As the recipe stands.
    pub before: Outcome,
    /// With the amounts of this answer, weighed.
    pub after: Outcome,
    /// With the same in eighths of a teaspoon; `None` where nothing changes or a spoon of something is not known.
    pub by_spoons: Option<Outcome>,
    /// The leaveners that it uses or takes away.
    pub doses: Vec<Dose>,
    /// The change, carried out with one touch; `None` where everything stays.
    pub remedy: Option<Remedy>,
    /// What cannot be had.
    pub gives_way: Vec<GivesWay>,
    /// All of it in sentences, the first of them what to use.
    pub sentences: Vec<String>,
}

/// The leavening that comes nearest to a wish, changing least; or why none can be reckoned, in a sentence.
pub fn leaven(facts: &Facts, wish: &Wish) -> Result<Answer, &'static str> {
    let flour = facts
        .flour()
        .map(Mass::to_grams)
        .filter(|flour| *flour > 0.0)
        .ok_or("Leavening is reckoned against flour, and no flour has a weight yet.")?;
    let now = facts
        .bowl
        .filter(|bowl| !bowl.course.is_empty())
        .ok_or("Acid and soda meet in water, and no water is known in this batter yet.")?;
    let shelves = Shelf::all(facts, &wish.cupboard)
        .ok_or("A leavener is missing in the tables, so nothing can be reckoned.")?;
    let bench = Bench::new(facts, wish, shelves, flour);
    let before = bench.outcome(now, facts.formula);
    let own = bench.shelves.each_ref().map(Shelf::own_tenths);
    if bench.stays(now, &before) {
        return Ok(said::answer(&bench, before, (own, before), None));
    }
    let found = bench
        .search(own)
        .ok_or("No pH can be reckoned for this batter.")?;
    let by_spoons = bench.by_spoons(&found.0);
    Ok(said::answer(&bench, before, found, by_spoons))
}

/// A formula with its leaveners open, and what is wished of them.
struct Bench<'a> {
    facts: &'a Facts<'a>,
    wish: &'a Wish,
    shelves: [Shelf<'a>; 4],
    /// g.
    flour: f64,
    /// Weight and sodium of everything else in the batter, g and mg.
    others: (f64, f64),
    /// The least and the most of each that is tried, tenths of a gram.
    least: Amounts,
    most: Amounts,
    /// The sodium that holds, mg in what the wish counts it against; `None` where there is no limit or it cannot be kept.
    limit: Option<f64>,
    /// Widths of the kind's own bands of pH and gas: the units of distance, however narrow a wish is.
    widths: (f64, f64),
    /// Where the gas is drawn to, per cent of flour: what the recipe has, as far as that is in range.
    mark: f64,
}

/// What a gram-tenth more of each leavener does, at some amounts.
struct Lines {
    at: Amounts,
    ph: (f64, [f64; 4]),
    gas: (f64, [f64; 4]),
}

impl<'a> Bench<'a> {
    fn new(facts: &'a Facts<'a>, wish: &'a Wish, shelves: [Shelf<'a>; 4], flour: f64) -> Self {
        let all: f64 = facts
            .formula
            .batter()
            .map(|line| line.grams.mean.to_grams())
            .sum();
        let sodium = total(facts.formula, Constituent::Sodium)
            .grams
            .mean
            .to_grams()
            * 1000.0;
        let open = |of: fn(&Weighed) -> f64| -> f64 {
            let lines = shelves
                .iter()
                .flat_map(|shelf| shelf.lines.iter().chain(&shelf.others));
            lines.map(|line| of(line)).sum()
        };
        let others = (
            all - open(|line| line.grams.mean.to_grams()),
            sodium
                - open(|line| {
                    let share = line.ingredient.composition.sodium;
                    share.map_or(0.0, |share| share.to_fraction() * 1000.0)
                        * line.grams.mean.to_grams()
                }),
        );
        let most = shelves.each_ref().map(|shelf| match shelf.there {
            true => tenths(shelf.leavener.most() * flour / 100.0).max(1),
            false => 0,
        });
        let made = facts.bowl.map_or(0.0, |bowl| bowl.gas.made.mean.to_grams());
        let (ph, gas) = (ph_band(facts.kind), gas_band(facts));
        let mut bench = Self {
            facts,
            wish,
            shelves,
            flour,
            others,
            most,
            least: [0; 4],
            limit: None,
            widths: (ph.high - ph.low, gas.high - gas.low),
            mark: 0.0,
        };
        let (low, high) = bench.gas_range();
        bench.mark = (made / flour * 100.0).clamp(low.max(0.0), high.max(low));
        bench.limit = wish.sodium.and_then(|limit| bench.kept(limit));
        if bench.limit.is_none() {
            bench.least = bench.for_the_oven();
        }
        bench
    }

    /// The powder that stays for the oven, as with the mends, where no limit of sodium is above it.
    fn for_the_oven(&self) -> Amounts {
        self.shelves.each_ref().map(|shelf| match shelf.leavener {
            Leavener::Powder if shelf.there => tenths(shelf.own() * POWDER_KEPT),
            _ => 0,
        })
    }

    /// A limit as far as it can be kept: itself; or just above what the other ingredients bring, where the cupboard holds
    /// a leavener without sodium; or none, since a batter without gas is no answer to salt.
    fn kept(&self, limit: f64) -> Option<f64> {
        let others = self.sodium_of(&[0; 4]);
        let without = |shelf: &Shelf| {
            let gives_gas = shelf
                .ingredient
                .leavening
                .is_some_and(|it| it.bicarbonate.is_some());
            shelf.there && gives_gas && shelf.sodium < SODIUM_FREE
        };
        if others <= limit {
            Some(limit)
        } else {
            let any = self.shelves.iter().any(without);
            any.then_some(others + self.counted(LITTLE_MORE * self.others.0 / 100.0, self.others.0))
        }
    }

    /// Where gas costs nothing, per cent of flour. A batter raised by beaten air wants none.
    fn gas_range(&self) -> (f64, f64) {
        let band = self.wish.gas;
        let low = if self.facts.kind.leans_on_air() {
            0.0
        } else {
            band.aim
        };
        (low, (band.high * GAS_ROOM).max(band.aim))
    }

    /// Whether the recipe is as wished already.
    fn stays(&self, bowl: &Bowl, outcome: &Outcome) -> bool {
        let (ph, gas) = (self.wish.ph, self.wish.gas);
        let at_hand = self
            .shelves
            .iter()
            .all(|shelf| shelf.others.is_empty() && (shelf.there || shelf.lines.is_empty()));
        let likely = bowl.chance_below(ph.high) - bowl.chance_below(ph.low);
        let mean = outcome.ph.mean.value();
        let aimed = outside(mean, ph.aim_from_below, ph.aim_from_above) < NOTABLE;
        let gas_low = if self.facts.kind.leans_on_air() {
            0.0
        } else {
            gas.low
        };
        at_hand
            && (aimed || likely >= ENOUGH || self.is_judged_well())
            && outcome.gas.low.to_percent() >= gas_low
            && outcome.gas.high.to_percent() <= gas.high
            && !self.is_salty(outcome)
    }

    /// Whether the page finds nothing to mend in the acid of the recipe as it stands, and no other crumb is wished.
    fn is_judged_well(&self) -> bool {
        self.wish.ph == ph_band(self.facts.kind)
            && acid_verdict(self.facts).kind == VerdictKind::Agreed
    }

    /// The best amounts and what they come to.
    fn search(&self, own: Amounts) -> Option<(Amounts, Outcome)> {
        let mut at: Amounts =
            std::array::from_fn(|which| own[which].clamp(self.least[which], self.most[which]));
        let mut found = (at, self.tried(&at)?);
        let mut least = self.cost_of(&found);
        for _ in 0..ROUNDS {
            let lines = self.lines(&at)?;
            let stride = self.most.iter().copied().max().unwrap_or(0) / 4;
            let next = descend(at, (&self.least, &self.most), stride, &|amounts| {
                let (ph, gas) = lines.at(amounts);
                self.cost(amounts, ph, gas)
            });
            if next == at {
                break;
            }
            let tried = (next, self.tried(&next)?);
            let cost = self.cost_of(&tried);
            at = next;
            if cost < least {
                (found, least) = (tried, cost);
            } else {
                // The lines led too far: they are drawn again halfway.
                at = std::array::from_fn(|which| (found.0[which] + next[which]) / 2);
            }
        }
        for _ in 0..LAST_TENTHS {
            let better = nearest(&found.0, (&self.least, &self.most))
                .into_iter()
                .filter_map(|amounts| Some((amounts, self.tried(&amounts)?)))
                .map(|tried| (self.cost_of(&tried), tried))
                .min_by(|one, other| one.0.total_cmp(&other.0));
            match better {
                Some((cost, tried)) if cost < least => (found, least) = (tried, cost),
                _ => break,
            }
        }
        Some(found)
    }

    fn cost_of(&self, (amounts, outcome): &(Amounts, Outcome)) -> f64 {
        self.cost(
            amounts,
            outcome.ph.mean.value(),
            outcome.gas.mean.to_percent(),
        )
    }

    /// Squared distances in widths of the bands, and a little for change.
    fn cost(&self, amounts: &Amounts, ph: f64, gas: f64) -> f64 {
        let band = self.wish.ph;
        let (low, high) = self.gas_range();
        let ph_off = outside(ph, band.aim_from_below, band.aim_from_above);
        let ph_off = ph_off / self.widths.0;
        let width = self.widths.1;
        let gas_off = outside(gas, low, high) / width;
        let mark_off = (gas - self.mark) / width;
        let over = self
            .limit
            .map_or(0.0, |limit| (self.sodium_of(amounts) - limit).max(0.0));
        let change: f64 = self
            .shelves
            .iter()
            .zip(amounts)
            .map(|(shelf, tenths)| {
                (shelf.grams(*tenths) - shelf.own()).abs() * shelf.leavener.worth()
            })
            .sum();
        ph_off.powi(2)
            + gas_off.powi(2)
            + MARK * mark_off.powi(2)
            + CHANGE * change / self.flour * 100.0
            + OVER * over
    }

    /// Sodium of the batter, mg in what the wish counts it against.
    fn sodium_of(&self, amounts: &Amounts) -> f64 {
        let (mut weight, mut sodium) = self.others;
        for (shelf, tenths) in self.shelves.iter().zip(amounts) {
            let grams = shelf.grams(*tenths);
            weight += grams;
            sodium += grams * shelf.sodium;
        }
        self.counted(sodium, weight)
    }

    /// So many mg in so many grams of batter, as the wish counts them.
    fn counted(&self, sodium: f64, weight: f64) -> f64 {
        match (self.wish.sodium_per, self.facts.servings) {
            (Per::Serving, Some(servings)) => sodium / servings,
            _ if weight > 0.0 => sodium / weight * 100.0,
            _ => 0.0,
        }
    }

    /// Whether an outcome has more sodium than is wished.
    fn is_salty(&self, outcome: &Outcome) -> bool {
        let found = match self.wish.sodium_per {
            Per::Hundred => outcome.sodium,
            Per::Serving => outcome.sodium_in_serving.unwrap_or(outcome.sodium),
        };
        self.wish.sodium.is_some_and(|limit| found > limit)
    }

    /// What a little more of each does, by the bowl itself.
    fn lines(&self, at: &Amounts) -> Option<Lines> {
        let here = self.tried(at)?;
        let mut lines = Lines {
            at: *at,
            ph: (here.ph.mean.value(), [0.0; 4]),
            gas: (here.gas.mean.to_percent(), [0.0; 4]),
        };
        for (which, shelf) in self.shelves.iter().enumerate() {
            if self.most[which] == 0 {
                continue;
            }
            let step = tenths(PROBE / shelf.leavener.worth() * self.flour / 100.0).max(1);
            let mut more = *at;
            more[which] += step;
            let there = self.tried(&more)?;
            let per = f64::from(step);
            lines.ph.1[which] = (there.ph.mean.value() - lines.ph.0) / per;
            lines.gas.1[which] = (there.gas.mean.to_percent() - lines.gas.0) / per;
        }
        Some(lines)
    }

    /// What these amounts come to.
    fn tried(&self, amounts: &Amounts) -> Option<Outcome> {
        let grams = std::array::from_fn(|which| self.shelves[which].grams(amounts[which]));
        self.weighed(&grams)
    }

    /// The same measured in eighths of a teaspoon.
    fn by_spoons(&self, amounts: &Amounts) -> Option<Outcome> {
        let mut grams = [0.0; 4];
        for (which, shelf) in self.shelves.iter().enumerate() {
            grams[which] = match amounts[which] {
                0 => 0.0,
                tenths => shelf.by_spoons(tenths)?,
            };
        }
        self.weighed(&grams)
    }

    fn weighed(&self, grams: &[f64; 4]) -> Option<Outcome> {
        let formula = self.formula(grams)?;
        let bowl = self.facts.bowl?.changed(&formula, &self.facts.handling)?;
        Some(self.outcome(&bowl, &formula))
    }

    fn outcome(&self, bowl: &Bowl, formula: &Formula) -> Outcome {
        let all: f64 = formula
            .batter()
            .map(|line| line.grams.mean.to_grams())
            .sum();
        let sodium = total(formula, Constituent::Sodium).grams.mean.to_grams() * 1000.0;
        Outcome {
            ph: bowl.ph,
            gas: bowl
                .gas
                .made
                .map(|made| Share::fraction(made.to_grams() / self.flour)),
            sodium: if all > 0.0 { sodium / all * 100.0 } else { 0.0 },
            sodium_in_serving: self.facts.servings.map(|servings| sodium / servings),
        }
    }

    /// The formula with so many grams of each leavener, as the edits of an answer make it.
    fn formula(&self, grams: &[f64; 4]) -> Option<Formula> {
        let mut formula = self.facts.formula.clone();
        let blank = formula.batter().next()?.clone();
        for (shelf, grams) in self.shelves.iter().zip(grams) {
            for (line, weight) in shelf.weights(*grams) {
                let place = (line.line, line.part);
                let lines = formula.lines.iter_mut();
                for line in lines.filter(|line| (line.line, line.part) == place) {
                    line.grams = Estimate::exact(Mass::grams(weight));
                }
            }
            if shelf.lines.is_empty() && *grams > 0.0 {
                formula.lines.push(Weighed {
                    ingredient: shelf.ingredient,
                    grams: Estimate::exact(Mass::grams(*grams)),
                    place: Place::Batter,
                    in_pieces: false,
                    ..blank.clone()
                });
            }
        }
        Some(formula)
    }

    /// The edits that bring these amounts about.
    fn edits(&self, amounts: &Amounts) -> Vec<Edit> {
        let mut edits = Vec::new();
        for (shelf, tenths) in self.shelves.iter().zip(amounts) {
            let grams = shelf.grams(*tenths);
            edits.extend(
                shelf
                    .weights(grams)
                    .into_iter()
                    .map(|(line, grams)| Edit::Weigh {
                        line: line.line,
                        part: line.part,
                        grams,
                    }),
            );
            if shelf.lines.is_empty() && *tenths > 0 {
                edits.push(Edit::AddAfter {
                    line: last_leavener(self.facts),
                    text: format!("{} g {}", show::plain(grams), shelf.name),
                });
            }
        }
        edits
    }
}

impl Lines {
    /// pH and gas, per cent of flour, that the lines lead to.
    fn at(&self, amounts: &Amounts) -> (f64, f64) {
        let along = |(here, per): &(f64, [f64; 4])| {
            let steps = per.iter().zip(amounts.iter().zip(&self.at));
            let moved = steps.map(|(per, (to, from))| per * (f64::from(*to) - f64::from(*from)));
            here + moved.sum::<f64>()
        };
        (along(&self.ph), along(&self.gas))
    }
}

impl<'a> Shelf<'a> {
    /// New weights of the recipe's lines, where they change, so that they hold so many grams together.
    fn weights(&self, grams: f64) -> Vec<(&'a Weighed, f64)> {
        let mut weights: Vec<_> = self.others.iter().map(|line| (*line, 0.0)).collect();
        if grams != self.own() {
            for (at, line) in self.lines.iter().enumerate() {
                weights.push((*line, if at == 0 { grams } else { 0.0 }));
            }
        }
        weights
    }
}

/// How far a figure lies outside a range.
fn outside(value: f64, low: f64, high: f64) -> f64 {
    (low - value).max(value - high).max(0.0)
}
