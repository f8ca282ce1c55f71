//! The programmes of a plan: the rows are what [`Keep`] names and the limits, the unknowns the lines that may move.
//!
//! The base that is missing at a pH is linear in the grams but for the ionic strength, so the programme is solved again
//! with what the bowl itself says until the two agree, and the rounded amounts are put into the bowl once more.

use super::egg;
use super::entry::{Entry, entries};
use super::keep::Keep;
use super::limits::{Crumb, gas_limits};
use super::plan::{Amount, Fate, Kept, Missed, Plan, Wish};
use super::programme::{Programme, Row, Unknown, solve};
use crate::baking::chemistry::{Bowl, NEUTRAL, Protons, bowl};
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::formula::{Formula, Place, Weighed};
use crate::baking::ingredient::Group;
use crate::baking::quantity::Mass;

/// How often the programme is solved with what the bowl says of its last answer.
const ROUNDS: usize = 5;
/// How near the bowl and the programme are to agree on the base that is missing, meq for a gram of flour: a fiftieth of a
/// gram of soda for two cups.
const NEAR: f64 = 0.001;
/// What of a thing is a difference for a cake, as a part of the flour (our own judgement, as the findings').
const OF_NOTE: f64 = 0.05;
/// From this strength on a kind wants what egg does: much, by the table of what it does.
const MUCH: u8 = 2;
/// A line that would move by less of itself stays: nobody weighs better.
const UNMOVED: f64 = 0.01;

/// A formula with a wish, as programmes for its plan.
#[derive(Clone)]
pub struct Bench<'a> {
    facts: &'a Facts<'a>,
    flour: f64,
    entries: Vec<Entry<'a>>,
    /// The lines that are no part of the batter and stay.
    beside: Vec<&'a Weighed>,
    /// The crumb to keep; `None` where there is nothing to reckon a pH with.
    crumb: Option<Crumb>,
    /// Between which mmol of carbon dioxide the gas has to stay.
    gas: (f64, f64),
    /// Whether crumb and gas are held to their limits.
    is_limited: bool,
    /// What a gram of each entry brings, by the rows.
    per_gram: Vec<[f64; ROWS]>,
}

/// The rows of the sums: what is to be kept, in its order, then the base missing at both ends of the band, and the gas
/// within its limits.
const ACIDITY: usize = Keep::Acidity as usize;
const AT_LOW: usize = Keep::ALL.len();
const AT_HIGH: usize = AT_LOW + 1;
const GAS_WITHIN: usize = AT_HIGH + 1;
const ROWS: usize = GAS_WITHIN + 1;
/// How a limit is passed: which it is, its row, and the sign that brings the row back to it.
const PASSES: [(Missed, usize, f64); 4] = [
    (Missed::TooAcid, AT_LOW, -1.0),
    (Missed::TooAlkaline, AT_HIGH, 1.0),
    (Missed::GasShort, GAS_WITHIN, 1.0),
    (Missed::GasMuch, GAS_WITHIN, -1.0),
];
/// What a meq or mmol beyond a limit costs: far above what soda, an acid or a thinner juice costs that mends it, and below
/// what it would cost to mend it with things that hardly count there, as milk and flour (our own weighing up).
const PASSED: f64 = 10.0;
/// No limit is passed by more meq or mmol for a gram of flour.
const FURTHEST: f64 = 100.0;

impl<'a> Bench<'a> {
    /// The bench of a wish, its flour in g.
    ///
    /// # Errors
    /// A sentence: no liquid, every line held, nothing known of what comes in.
    pub fn new(
        facts: &'a Facts<'a>,
        title: Option<&str>,
        wish: &Wish,
        flour: f64,
    ) -> Result<Self, String> {
        let entries = entries(facts, title, wish, flour)?;
        if !entries.iter().any(Entry::is_free) {
            return Err(
                "Every line is held, so nothing can move to keep the cake: let one go.".into(),
            );
        }
        if !entries.iter().any(Entry::is_wet) {
            return Err("No liquid is known in this batter yet, and without water nothing dissolves or sets.".into());
        }
        let stays = |line: &&Weighed| {
            let place = (line.line, line.part);
            line.place != Place::Batter && !wish.changes.iter().any(|change| change.place == place)
        };
        let mut bench = Self {
            facts,
            flour,
            // What goes beside the cake is no part of the sums; it changes only where it is asked to.
            beside: facts.formula.lines.iter().filter(stays).collect(),
            crumb: facts.bowl.map(|bowl| Crumb::of(facts, bowl)),
            gas: (0.0, f64::INFINITY),
            is_limited: true,
            per_gram: Vec::new(),
            entries,
        };
        let at = bench.protons();
        let brings = |entry: &Entry| bench.brought(&entry.line, &at);
        bench.per_gram = bench.entries.iter().map(brings).collect();
        bench.gas = gas_limits(facts, flour, bench.sum(GAS_WITHIN, &bench.before()));
        Ok(bench)
    }

    /// At the pH that is aimed at, and at both ends of the band.
    fn protons(&self) -> [Protons; 3] {
        let (aim, (low, high)) = match self.crumb {
            Some(crumb) => (crumb.aim, crumb.band),
            None => (NEUTRAL, (NEUTRAL, NEUTRAL)),
        };
        [aim, low, high].map(Protons::at)
    }

    /// What a gram of a line brings to each row; nothing beside the batter.
    fn brought(&self, line: &Weighed, [aim, low, high]: &[Protons; 3]) -> [f64; ROWS] {
        let mut per_gram = [0.0; ROWS];
        if line.place != Place::Batter {
            return per_gram;
        }
        let of = |keep: Keep, at: &Protons| {
            keep.of_a_gram(line.ingredient, line.in_pieces, at)
                .unwrap_or(0.0)
        };
        for (row, keep) in Keep::ALL.into_iter().enumerate() {
            per_gram[row] = of(keep, aim);
        }
        per_gram[AT_LOW] = of(Keep::Acidity, low);
        per_gram[AT_HIGH] = of(Keep::Acidity, high);
        per_gram[GAS_WITHIN] = of(Keep::Gas, aim);
        per_gram
    }
}

impl Bench<'_> {
    /// The plan that changes least: without new leavening where the cake has none and the limits hold or it stands on
    /// air, and without what
    /// is not worth the weighing.
    ///
    /// # Errors
    /// A sentence where the weights are beyond what can be reckoned.
    pub fn least(&self) -> Result<Plan, String> {
        let mut bench = self.clone();
        if !self.is_leavened() {
            bench.hold_where(|entry| {
                entry.fate == Fate::Added && entry.line.ingredient.group == Group::Leavener
            });
        }
        let (mut found, mut exact) = bench.plan()?;
        let is_by_air = self.facts.kind.leans_on_air();
        if !found.missed.is_empty() && !self.is_leavened() && !is_by_air {
            let open = self.plan()?;
            if open.0.missed.len() < found.missed.len() {
                bench = self.clone();
                (found, exact) = open;
            }
        }
        let is_trifle = |entry: &Entry, grams: f64| {
            entry.fate == Fate::Added && grams > 0.0 && grams < entry.trifle
        };
        let mut has_trifles = false;
        for (entry, grams) in bench.entries.iter_mut().zip(&exact) {
            if is_trifle(entry, *grams) {
                entry.hold();
                has_trifles = true;
            }
        }
        if has_trifles {
            // What a trifle would hold is held as near as can be weighed, and by nothing else in its place.
            bench.is_limited = false;
            let missed = found.missed;
            (found, _) = bench.plan()?;
            found.missed = missed;
        }
        Ok(found)
    }

    fn hold_where(&mut self, holds: impl Fn(&Entry) -> bool) {
        for entry in &mut self.entries {
            if holds(entry) {
                entry.hold();
            }
        }
    }

    /// Whether soda, powder or an acid of theirs is in it.
    fn is_leavened(&self) -> bool {
        self.facts
            .formula
            .batter()
            .any(|line| line.ingredient.leavening.is_some())
    }

    /// What the programme's first answer costs, and how many limits it misses.
    pub fn first_cost(&self) -> Option<(f64, usize)> {
        let (_, cost, missed) = self.solved(self.first_offset()).ok()?;
        Some((cost, missed.len()))
    }

    /// The offset of the recipe as it is.
    fn first_offset(&self) -> f64 {
        self.facts
            .bowl
            .map_or(0.0, |bowl| self.offset(bowl, &self.before()))
    }

    /// The best plan, and its amounts before rounding.
    fn plan(&self) -> Result<(Plan, Vec<f64>), String> {
        let mut offset = self.first_offset();
        let mut round = 0;
        loop {
            let (exact, cost, missed) = self.solved(offset)?;
            let amounts = self.rounded(&exact);
            let formula = self.formula(&amounts);
            let bowl = self.bowl(&formula);
            let there = bowl
                .as_ref()
                .map_or(offset, |bowl| self.offset(bowl, &amounts));
            let is_met = (there - offset).abs() < NEAR * self.flour;
            if is_met || round == ROUNDS {
                return Ok((self.said(&amounts, (cost, missed), formula, bowl), exact));
            }
            offset = there;
            round += 1;
        }
    }

    /// The best amounts where the bowl misses so much base beyond the sum of its lines.
    fn solved(&self, offset: f64) -> Result<(Vec<f64>, f64, Vec<Missed>), String> {
        let solved = solve(&self.programme(offset))
            .ok_or("These amounts are beyond what can be reckoned: look at the weights first.")?;
        let mut found = solved.amounts.into_iter();
        let amounts: Vec<f64> = self
            .entries
            .iter()
            .map(|entry| match entry.is_free() {
                true => found.next().unwrap_or(entry.start),
                false => entry.start,
            })
            .collect();
        let beyond: Vec<f64> = found.collect();
        // What is missed is said besides.
        let passed: f64 = beyond.iter().sum();
        let cost = solved.cost - passed * self.passing();
        Ok((amounts, cost, self.missed(&beyond)))
    }

    /// What a meq or mmol beyond a limit costs.
    fn passing(&self) -> f64 {
        if self.is_limited { PASSED } else { 0.0 }
    }

    /// The amounts of the recipe as it is.
    fn before(&self) -> Vec<f64> {
        self.entries.iter().map(|entry| entry.before).collect()
    }

    /// Base that a bowl is found to miss at the pH aimed at, beyond the sum of its lines: the ionic strength, and what
    /// was measured.
    fn offset(&self, bowl: &Bowl, amounts: &[f64]) -> f64 {
        self.crumb.map_or(0.0, |crumb| {
            bowl.missing(crumb.aim).to_milliequivalents() - self.sum(ACIDITY, amounts)
        })
    }

    fn sum(&self, row: usize, amounts: &[f64]) -> f64 {
        let brings = self.per_gram.iter().zip(amounts);
        brings.map(|(per_gram, grams)| grams * per_gram[row]).sum()
    }

    /// The rows, those of what is kept in their order, then those of the limits.
    fn programme(&self, offset: f64) -> Programme {
        let free = || self.entries.iter().filter(|entry| entry.is_free());
        let fixed: Vec<f64> = self
            .entries
            .iter()
            .map(|entry| if entry.is_free() { 0.0 } else { entry.start })
            .collect();
        let before = self.before();
        let row = |row: usize, target: f64| Row {
            per_unit: self
                .entries
                .iter()
                .zip(&self.per_gram)
                .filter(|(entry, _)| entry.is_free())
                .map(|(_, per_gram)| per_gram[row])
                .collect(),
            target: target - self.sum(row, &fixed),
            free: 0.0,
            price: 0.0,
            low: f64::NEG_INFINITY,
            high: f64::INFINITY,
        };
        let mut rows: Vec<Row> = Vec::with_capacity(ROWS);
        for (at, keep) in Keep::ALL.into_iter().enumerate() {
            let target = self.sum(at, &before);
            rows.push(Row {
                free: keep.free(target, self.flour),
                price: keep.price(),
                ..row(at, target)
            });
        }
        rows[ACIDITY] = match self.crumb {
            Some(Crumb { free, .. }) => Row {
                free: (free.1 - free.0) / 2.0,
                price: Keep::Acidity.price(),
                ..row(ACIDITY, (free.0 + free.1) / 2.0 - offset)
            },
            None => row(ACIDITY, 0.0),
        };
        // At the lower end of the band base is there beyond the need; at the upper end it is missing.
        let (low, high) = (row(AT_LOW, -offset), row(AT_HIGH, -offset));
        let gas = row(GAS_WITHIN, 0.0);
        let (at_least, at_most) = self.gas;
        rows.push(Row {
            high: self.crumb.map_or(f64::INFINITY, |_| low.target),
            ..low
        });
        rows.push(Row {
            low: self.crumb.map_or(f64::NEG_INFINITY, |_| high.target),
            ..high
        });
        rows.push(Row {
            low: at_least + gas.target,
            high: at_most + gas.target,
            ..gas
        });
        // Each limit can be passed, at its price.
        for (at, row) in rows.iter_mut().enumerate() {
            let passes = PASSES.map(|(_, limit, sign)| if limit == at { sign } else { 0.0 });
            row.per_unit.extend(passes);
        }
        let beyond = PASSES.map(|_| Unknown {
            start: 0.0,
            least: 0.0,
            most: FURTHEST * self.flour,
            price: self.passing(),
        });
        Programme {
            unknowns: free()
                .map(|entry| Unknown {
                    start: entry.start,
                    least: entry.limits.0,
                    most: entry.limits.1,
                    price: entry.price,
                })
                .chain(beyond)
                .collect(),
            rows,
        }
    }

    /// As a scale shows them; what hardly moves stays as it is.
    fn rounded(&self, amounts: &[f64]) -> Vec<f64> {
        let round = |(entry, grams): (&Entry, &f64)| {
            let step = entry.step(*grams);
            let unmoved = (step / 2.0).max(UNMOVED * entry.before);
            if (grams - entry.before).abs() < unmoved {
                return entry.before;
            }
            let steps = (1.0 / step).round();
            (grams * steps).round() / steps
        };
        self.entries.iter().zip(amounts).map(round).collect()
    }

    /// The formula with these amounts; what does not change keeps its spread.
    fn formula(&self, amounts: &[f64]) -> Formula {
        let mut formula = Formula {
            lines: Vec::new(),
            unweighed: self.facts.formula.unweighed.clone(),
        };
        for (entry, grams) in self.entries.iter().zip(amounts) {
            let mut line = entry.line.clone().into_owned();
            if *grams != entry.before {
                line.grams = Estimate::exact(Mass::grams(*grams));
            }
            if *grams > 0.0 {
                formula.lines.push(line);
            }
        }
        formula.lines.extend(self.beside.iter().copied().cloned());
        formula
    }

    fn bowl(&self, formula: &Formula) -> Option<Bowl> {
        match self.facts.bowl {
            Some(bowl) => bowl.tried(formula),
            None => bowl(formula, &self.facts.handling),
        }
    }

    fn said(
        &self,
        amounts: &[f64],
        (cost, missed): (f64, Vec<Missed>),
        formula: Formula,
        bowl: Option<Bowl>,
    ) -> Plan {
        let before = self.before();
        let kept = |(row, keep): (usize, Keep)| {
            let [was, is] = [&before[..], amounts].map(|grams| self.sum(row, grams));
            Kept {
                keep,
                before: was,
                after: is,
                free: keep.free(was, self.flour),
                rounding: self.rounding(row, amounts),
                is_far: self.is_far(keep, was, is - was),
            }
        };
        let all = self.entries.iter().zip(amounts);
        let neutral = Protons::at(NEUTRAL);
        Plan {
            amounts: all
                .clone()
                .filter(|(entry, grams)| **grams != entry.before)
                .map(|(entry, grams)| Amount {
                    place: entry.place,
                    ingredient: entry.line.ingredient,
                    fate: entry.fate,
                    before: entry.before,
                    after: *grams,
                })
                .collect(),
            kept: Keep::ALL
                .into_iter()
                .enumerate()
                .filter(|(_, keep)| *keep != Keep::Acidity)
                .map(kept)
                .collect(),
            missed,
            cost,
            unknown: all
                .filter(|(_, grams)| **grams > 0.0)
                .flat_map(|(entry, _)| {
                    let unknown = Keep::ALL.into_iter().filter(|keep| {
                        keep.of_a_gram(entry.line.ingredient, false, &neutral)
                            .is_none()
                    });
                    unknown.map(|keep| (entry.line.ingredient.name, keep))
                })
                .collect(),
            formula,
            bowl,
        }
    }

    /// Whether a change of something makes another cake.
    fn is_far(&self, keep: Keep, was: f64, change: f64) -> bool {
        let Some(part) = keep.far() else {
            return false;
        };
        let of_note = change.abs() > OF_NOTE * self.flour;
        let counts = match keep {
            Keep::Setting => change < 0.0 && self.wants_egg(),
            Keep::Starch => change < 0.0 && of_note,
            _ => of_note,
        };
        counts && change.abs() > part * was
    }

    /// Whether the kind wants that egg sets it, and something of its egg goes for what does not bind as much: a gel or a
    /// pulse binds without setting protein.
    fn wants_egg(&self) -> bool {
        let Some(wanted) = egg::wanted(self.facts.kind).map(|row| row.work.binding) else {
            return false;
        };
        let is_bound = |place: Option<(usize, usize)>| {
            self.entries.iter().any(|entry| match entry.fate {
                Fate::Comes(of) if Some(of) == place => egg::given(entry.line.ingredient)
                    .is_some_and(|given| given.work.binding >= wanted),
                _ => false,
            })
        };
        let goes =
            |entry: &&Entry| entry.fate == Fate::Goes && entry.line.ingredient.group == Group::Egg;
        let mut going = self.entries.iter().filter(goes).peekable();
        wanted >= MUCH && (going.peek().is_none() || !going.all(|entry| is_bound(entry.place)))
    }

    /// How far rounding may bring a row: half a step of all that moves, as independent errors add.
    fn rounding(&self, row: usize, amounts: &[f64]) -> f64 {
        let squares = self.entries.iter().zip(amounts).zip(&self.per_gram);
        let squares = squares.map(|((entry, grams), per_gram)| {
            let step = if entry.is_free() {
                entry.step(*grams).max(2.0 * UNMOVED * entry.before)
            } else {
                0.0
            };
            (per_gram[row] * step / 2.0).powi(2)
        });
        squares.sum::<f64>().sqrt()
    }

    /// Which limits are passed by more than weighing could hold them, of how far each is.
    fn missed(&self, beyond: &[f64]) -> Vec<Missed> {
        let passed = PASSES.iter().zip(beyond);
        passed
            .filter(|(_, beyond)| **beyond > NEAR * self.flour)
            .map(|((missed, ..), _)| *missed)
            .collect()
    }
}
