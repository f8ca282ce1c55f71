//! The plan of a swap: how much of everything else is to move so that the cake stays what it is.
//!
//! Goes in: the facts of a formula, and a [`Wish`]. Comes out: a [`Plan`], amounts that can be weighed. The programme's rows
//! are what [`Keep`] names; its unknowns are what goes in, the lines that may move, and a few things that may be added.
//! The base that is missing at a pH is linear in the grams but for the ionic strength, so the programme is solved again
//! with what the bowl itself says until the two agree, and the rounded amounts are put into the bowl once more.

use super::egg;
use super::keep::Keep;
use super::limits::{Crumb, gas_limits};
use super::movement::{ADDED, SWAPPED, does_its_work, movement, names_the_cake, pours};
use super::programme::{Programme, Row, Unknown, solve};
use super::swap::Brought;
use crate::baking::chemistry::{Bowl, NEUTRAL, bowl};
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::formula::{Formula, How, Place, Weighed};
use crate::baking::ingredient::{FlourBasis, Group, Ingredient, by_key};
use crate::baking::quantity::Mass;
use crate::baking::text::lower;

/// How often the programme is solved with what the bowl says of its last answer.
const ROUNDS: usize = 5;
/// How near the bowl and the programme are to agree on the base that is missing, meq for a gram of flour: a fiftieth of a
/// gram of soda for two cups.
const NEAR: f64 = 0.001;
/// The part of what comes that has to be left of it where it is too sour for all of it.
const THINNED: f64 = 0.3;
/// Below this many grams a scale shows tenths; above, whole grams.
const BY_TENTHS: f64 = 10.0;
/// What of a thing is a difference for a cake, as a part of the flour (our own judgement, as the findings').
const OF_NOTE: f64 = 0.05;
/// From this strength on a kind wants what egg does: much, by the table of what it does.
const MUCH: u8 = 2;
/// A line that would move by less of itself stays: nobody weighs better.
const UNMOVED: f64 = 0.01;

/// A line, or a part of it, that is to become something else.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The line of the text and which of its ingredients.
    pub place: (usize, usize),
    /// The share of it that goes, up to 1.
    pub share: f64,
    /// What comes in its place.
    pub to: Vec<Brought>,
}

/// What is wished.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wish {
    /// The lines that change.
    pub changes: Vec<Change>,
    /// Lines that may not move.
    pub held: Vec<(usize, usize)>,
    /// True where nothing may be added that the recipe does not have.
    pub no_more: bool,
    /// Keys of what may not be added.
    pub lacking: Vec<String>,
}

/// What becomes of an ingredient.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It goes, or a share of it.
    Goes,
    /// It comes in the place of a line.
    Comes((usize, usize)),
    /// It is there already and takes another amount.
    Moves,
    /// It is added.
    Added,
}

/// An ingredient of the plan whose amount changes.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// Its place in the text; `None` for what is new.
    pub place: Option<(usize, usize)>,
    /// What it is.
    pub ingredient: &'static Ingredient,
    /// What becomes of it.
    pub fate: Fate,
    /// What the recipe has of it, g.
    pub before: f64,
    /// What it is to have, g.
    pub after: f64,
}

/// Something kept, before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// What.
    pub keep: Keep,
    /// In the recipe as it is, in its unit.
    pub before: f64,
    /// By the plan.
    pub after: f64,
    /// How far apart the two may be at no cost.
    pub free: f64,
    /// How far apart rounded amounts can bring them besides.
    pub rounding: f64,
    /// Whether it is so far off that a baker calls it another cake.
    pub is_far: bool,
}

impl Kept {
    /// Whether the plan moves it by more than weighing would.
    pub fn is_moved(&self) -> bool {
        // Programmes are met to a few parts in a million.
        self.change().abs() > self.free * 1.000_01 + self.rounding
    }

    /// By how much it is more.
    pub fn change(&self) -> f64 {
        self.after - self.before
    }
}

/// A limit that cannot be held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Missed {
    /// The crumb ends more acid than the kind's band.
    TooAcid,
    /// It ends more alkaline.
    TooAlkaline,
    /// Less gas than the kind wants.
    GasShort,
    /// More than it holds.
    GasMuch,
}

/// How the cake is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What changes.
    pub amounts: Vec<Amount>,
    /// Everything that was to be kept.
    pub kept: Vec<Kept>,
    /// What cannot be.
    pub missed: Vec<Missed>,
    /// What it costs; to choose between plans of one formula.
    pub cost: f64,
    /// Names of ingredients of which a constituent is not known, each with what.
    pub unknown: Vec<(&'static str, Keep)>,
    /// The formula as it becomes.
    pub formula: Formula,
    /// Its bowl; `None` where nothing in it brings acid or base.
    pub bowl: Option<Bowl>,
}

/// The plan that changes least.
///
/// # Errors
/// A sentence where nothing can be reckoned: no flour, no liquid, every line held, nothing known of what comes in.
pub fn plan(facts: &Facts, title: Option<&str>, wish: &Wish) -> Result<Plan, String> {
    let flour = facts
        .flour()
        .map(Mass::to_grams)
        .filter(|flour| *flour > 0.0)
        .ok_or("A swap is set against the flour, and no flour has a weight yet.")?;
    Bench::new(facts, title, wish, flour)?.least()
}

/// A line of the batter with its part in the programme.
#[derive(Clone)]
struct Entry {
    line: Weighed,
    place: Option<(usize, usize)>,
    fate: Fate,
    /// g in the recipe.
    before: f64,
    /// g from which moving it costs.
    start: f64,
    /// Between which g it may move; the same twice where it may not.
    limits: (f64, f64),
    price: f64,
    /// Below so many g it is not worth adding.
    trifle: f64,
}

impl Entry {
    fn is_free(&self) -> bool {
        self.limits.1 > self.limits.0
    }

    /// Keeps it where it is.
    fn hold(&mut self) {
        self.limits = (self.start, self.start);
    }

    /// Whether it is there and brings water that is not in flour.
    fn is_wet(&self) -> bool {
        let ingredient = self.line.ingredient;
        let water = ingredient.composition.water;
        ingredient.flour_basis == FlourBasis::Never
            && water.is_some_and(|water| water.to_fraction() > 0.1)
            && self.before.max(self.start) > 0.0
    }

    /// The step of a scale at so many grams of it.
    fn step(&self, grams: f64) -> f64 {
        let by_tenths = self.line.ingredient.group == Group::Leavener || grams < BY_TENTHS;
        if by_tenths { 0.1 } else { 1.0 }
    }
}

#[derive(Clone)]
struct Bench<'a> {
    facts: &'a Facts<'a>,
    flour: f64,
    entries: Vec<Entry>,
    /// The lines that are no part of the batter and stay.
    beside: Vec<Weighed>,
    /// The crumb to keep; `None` where there is nothing to reckon a pH with.
    crumb: Option<Crumb>,
    /// Between which mmol of carbon dioxide the gas has to stay.
    gas: (f64, f64),
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
const PASSED: f64 = 30.0;
/// No limit is passed by more meq or mmol for a gram of flour.
const FURTHEST: f64 = 100.0;

impl<'a> Bench<'a> {
    fn new(
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
            beside: facts.formula.lines.iter().filter(stays).cloned().collect(),
            crumb: facts.bowl.map(|bowl| Crumb::of(facts, bowl)),
            gas: (0.0, f64::INFINITY),
            per_gram: Vec::new(),
            entries,
        };
        let brings = |entry: &Entry| bench.brought(&entry.line);
        bench.per_gram = bench.entries.iter().map(brings).collect();
        bench.gas = gas_limits(facts, flour, bench.sum(GAS_WITHIN, &bench.before()));
        Ok(bench)
    }

    /// What a gram of a line brings to each row; nothing beside the batter.
    fn brought(&self, line: &Weighed) -> [f64; ROWS] {
        let mut per_gram = [0.0; ROWS];
        if line.place != Place::Batter {
            return per_gram;
        }
        let (aim, (low, high)) = match self.crumb {
            Some(crumb) => (crumb.aim, crumb.band),
            None => (NEUTRAL, (NEUTRAL, NEUTRAL)),
        };
        let of = |keep: Keep, ph: f64| {
            keep.of_a_gram(line.ingredient, line.in_pieces, ph)
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

/// The lines of the batter as the wish has them, and what may be added.
fn entries(
    facts: &Facts,
    title: Option<&str>,
    wish: &Wish,
    flour: f64,
) -> Result<Vec<Entry>, String> {
    let title = title.map(lower).unwrap_or_default();
    let mut entries = Vec::new();
    let change_of =
        |line: &Weighed| (wish.changes.iter()).find(|it| it.place == (line.line, line.part));
    let going: Vec<(&Weighed, &Change)> = facts
        .formula
        .lines
        .iter()
        .filter_map(|line| Some((line, change_of(line)?)))
        .collect();
    let goes = |ingredient: &Ingredient| {
        going
            .iter()
            .any(|(line, _)| line.ingredient.key == ingredient.key)
    };
    let more_pours = going.iter().any(|(line, change)| {
        !pours(line.ingredient) && change.to.iter().any(|brought| pours(brought.ingredient))
    });
    for line in &facts.formula.lines {
        if let Some(change) = change_of(line) {
            changed(line, change, &mut entries)?;
        } else if line.place == Place::Batter {
            let is_held = wish.held.contains(&(line.line, line.part))
                || names_the_cake(line.ingredient, &title);
            let mut entry = as_it_is(line, is_held, more_pours, flour);
            if goes(line.ingredient) {
                // What is to go somewhere does not come back elsewhere.
                entry.limits.1 = entry.limits.1.min(entry.start);
            }
            entries.push(entry);
        }
    }
    if !wish.no_more {
        let barred = |ingredient: &Ingredient| {
            goes(ingredient) || wish.lacking.iter().any(|key| key == ingredient.key)
        };
        added(facts, flour, &barred, &mut entries);
    }
    Ok(entries)
}

/// What a line becomes by a change: what stays of it, and what comes.
fn changed(line: &Weighed, change: &Change, entries: &mut Vec<Entry>) -> Result<(), String> {
    let grams = line.grams.mean.to_grams();
    let goes = grams * change.share.clamp(0.0, 1.0);
    if let [same] = &change.to[..]
        && same.ingredient == line.ingredient
    {
        entries.push(as_it_is(line, true, false, 0.0));
        return Ok(());
    }
    entries.push(Entry {
        line: line.clone(),
        place: Some((line.line, line.part)),
        fate: Fate::Goes,
        before: grams,
        start: grams - goes,
        limits: (grams - goes, grams - goes),
        price: 0.0,
        trifle: 0.0,
    });
    for (at, brought) in change.to.iter().enumerate() {
        let composition = &brought.ingredient.composition;
        let known = [
            composition.water,
            composition.fat,
            composition.carbohydrate,
            composition.protein,
        ];
        if known.iter().all(Option::is_none) {
            return Err(format!(
                "Nothing is known of what {} is made of, so nothing can be kept: give its packet's figures in the larder first.",
                brought.ingredient.name
            ));
        }
        let ratio = brought.for_a_gram;
        let [mut low, usual, high] = [ratio.low, ratio.mean, ratio.high].map(Mass::to_grams);
        if is_sour(brought.ingredient) && !is_acid(line.ingredient) {
            low *= THINNED;
        }
        // Soda that comes along answers an acid; where there is none to answer, none is needed.
        let leavens = |ingredient: &Ingredient| {
            (ingredient.leavening).is_some_and(|leavening| leavening.bicarbonate.is_some())
        };
        if at > 0 && leavens(brought.ingredient) {
            low = 0.0;
        }
        entries.push(Entry {
            line: new_line(brought.ingredient, goes * usual, line),
            place: None,
            fate: Fate::Comes((line.line, line.part)),
            before: 0.0,
            start: goes * usual,
            limits: (goes * low, goes * high),
            price: SWAPPED,
            trifle: 0.0,
        });
    }
    Ok(())
}

/// Whether it is so sour that water may have to take the place of a part of it.
fn is_sour(ingredient: &Ingredient) -> bool {
    matches!(ingredient.group, Group::Juice | Group::Fruit)
        && ingredient.acidity.is_some_and(|acidity| acidity.ph.1 < 4.5)
}

/// Whether it is there for its acid, so that what comes for it is to bring as much.
fn is_acid(ingredient: &Ingredient) -> bool {
    matches!(ingredient.group, Group::Acid | Group::Leavener)
}

/// A line that the change leaves alone; it may move unless it is held.
fn as_it_is(line: &Weighed, held: bool, more_pours: bool, flour: f64) -> Entry {
    let grams = line.grams.mean.to_grams();
    let move_of = if held {
        None
    } else {
        movement(line.ingredient, more_pours)
    };
    let (limits, price) = match move_of {
        Some((least, most, price)) => {
            // Of a little that is there no less may come than where there is none.
            let added = ADDED.iter().find(|it| it.key == line.ingredient.key);
            let most = (grams * most).max(added.map_or(0.0, |it| it.most * flour / 100.0));
            ((grams * least, most), price)
        }
        None => ((grams, grams), 0.0),
    };
    Entry {
        line: line.clone(),
        place: Some((line.line, line.part)),
        fate: Fate::Moves,
        before: grams,
        start: grams,
        limits,
        price,
        trifle: 0.0,
    }
}

fn added(
    facts: &Facts,
    flour: f64,
    barred: &dyn Fn(&Ingredient) -> bool,
    entries: &mut Vec<Entry>,
) {
    let Some(like) = facts.formula.batter().next() else {
        return;
    };
    for addition in ADDED {
        let Some(ingredient) = by_key(addition.key).filter(|it| !barred(it)) else {
            continue;
        };
        let is_there = |entry: &Entry| {
            let is_known = entry.fate == Fate::Moves || ingredient.key != "water";
            is_known && entry.is_free() && does_its_work(entry.line.ingredient, ingredient)
        };
        if entries.iter().any(is_there) {
            continue;
        }
        entries.push(Entry {
            line: new_line(ingredient, 0.0, like),
            place: None,
            fate: Fate::Added,
            before: 0.0,
            start: 0.0,
            limits: (0.0, addition.most * flour / 100.0),
            price: addition.price,
            trifle: addition.least * flour / 100.0,
        });
    }
}

/// Parts from here on are of lines that the text does not have.
const NOT_IN_THE_TEXT: usize = 1000;

/// A line of so many grams that the text does not have. The number of its line is that of the line it goes by.
fn new_line(ingredient: &'static Ingredient, grams: f64, by: &Weighed) -> Weighed {
    Weighed {
        line: by.line,
        // Apart from those that the text has.
        part: by.part + NOT_IN_THE_TEXT,
        ingredient,
        grams: Estimate::exact(Mass::grams(grams)),
        how: How {
            sentence: String::new(),
            cited: None,
            others: String::new(),
        },
        place: by.place,
        // Berries stand for berries as whole as they were.
        in_pieces: by.in_pieces && ingredient.group == by.ingredient.group,
        doubts: Vec::new(),
    }
}

impl Bench<'_> {
    /// The plan that changes least: without new leavening where the cake has none and the limits hold, and without what
    /// is not worth the weighing.
    fn least(&self) -> Result<Plan, String> {
        let mut bench = self.clone();
        if !self.is_leavened() {
            bench.hold_where(|entry| {
                entry.fate == Fate::Added && entry.line.ingredient.group == Group::Leavener
            });
        }
        let (mut found, mut exact) = bench.plan()?;
        if !found.missed.is_empty() && !self.is_leavened() {
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
            // What a trifle would hold is held as near as can be weighed.
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

    /// The best plan, and its amounts before rounding.
    fn plan(&self) -> Result<(Plan, Vec<f64>), String> {
        let mut offset = self
            .facts
            .bowl
            .map_or(0.0, |bowl| self.offset(bowl, &self.before()));
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
        Ok((amounts, solved.cost, self.missed(&beyond)))
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
            price: PASSED,
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
            let mut line = entry.line.clone();
            if *grams != entry.before {
                line.grams = Estimate::exact(Mass::grams(*grams));
            }
            if *grams > 0.0 {
                formula.lines.push(line);
            }
        }
        formula.lines.extend_from_slice(&self.beside);
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
                        keep.of_a_gram(entry.line.ingredient, false, NEUTRAL)
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
            Keep::Setting => change < 0.0 && self.misses_egg(),
            Keep::Starch => change < 0.0 && of_note,
            _ => of_note,
        };
        counts && change.abs() > part * was
    }

    /// Whether the kind wants an egg's setting, and nothing that comes in the place of egg binds as much.
    fn misses_egg(&self) -> bool {
        let wanted = egg::wanted(self.facts.kind).map_or(0, |wanted| wanted.work.binding);
        let binds = self.entries.iter().any(|entry| {
            let given = egg::given(entry.line.ingredient);
            matches!(entry.fate, Fate::Comes(_))
                && given.is_some_and(|given| given.work.binding >= wanted)
        });
        wanted >= MUCH && !binds
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
