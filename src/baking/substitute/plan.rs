//! The plan of a swap: how much of everything else is to move so that the cake stays what it is.
//!
//! Goes in: the facts of a formula, and a [`Wish`]. Comes out: a [`Plan`], amounts that can be weighed. The programme's rows
//! are what [`Keep`] names; its unknowns are what goes in, the lines that may move, and a few things that may be added.
//! The base that is missing at a pH is linear in the grams but for the ionic strength, so the programme is solved again
//! with what the bowl itself says until the two agree, and the rounded amounts are put into the bowl once more.

use super::keep::Keep;
use super::programme::{Programme, Row, Unknown, solve};
use super::swap::Brought;
use crate::baking::chemistry::{Bowl, NEUTRAL, bowl};
use crate::baking::estimate::Estimate;
use crate::baking::finding::{
    Facts, POWDER_KEPT, VerdictKind, acid_verdict, gas_band_with, ph_band,
};
use crate::baking::formula::{Formula, How, Place, Weighed};
use crate::baking::ingredient::{FlourBasis, Group, Ingredient, by_key};
use crate::baking::quantity::Mass;
use crate::baking::text::{holds, lower};

/// How often the programme is solved with what the bowl says of its last answer.
const ROUNDS: usize = 5;
/// How near the bowl and the programme are to agree on the base that is missing, meq: a sixth of a tenth of a gram of soda.
const NEAR: f64 = 0.2;
/// The part of what comes that has to be left of it where it is too sour for all of it.
const THINNED: f64 = 0.3;
/// What a gram moved costs: the dearer, the longer it stays as it is (our own weighing up).
const WATER: f64 = 0.2;
const LIQUID: f64 = 0.5;
const SWAPPED: f64 = 0.4;
const OTHER: f64 = 1.0;
const SALT: f64 = 2.0;
/// The part of the upper limit of gas up to which a batter may be led: as the mends do.
const GAS_ROOM: f64 = 0.9;
/// How much dearer something new is than a line that is there.
const NEW: f64 = 1.5;
/// Below this many grams a scale shows tenths; above, whole grams.
const BY_TENTHS: f64 = 10.0;

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
}

impl Kept {
    /// Whether the plan moves it by more than weighing would.
    pub fn is_moved(&self) -> bool {
        // Programmes are met to a few parts in a million, amounts to tenths.
        (self.after - self.before).abs() > self.free * 1.05 + 0.5
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
    let bench = Bench::new(facts, title, wish, flour)?;
    let found = bench.plan()?;
    if found.missed.is_empty() {
        return Ok(found);
    }
    // Where a limit is missed however much moves, what has little to do with it is not moved for it.
    bench.without_side_ways().plan()
}

/// A line of the batter with its part in the programme.
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
}

impl Entry {
    fn is_free(&self) -> bool {
        self.limits.1 > self.limits.0
    }
}

struct Bench<'a> {
    facts: &'a Facts<'a>,
    entries: Vec<Entry>,
    /// The lines that are no part of the batter and stay.
    beside: Vec<Weighed>,
    /// The pH to keep, and between which it has to stay; `None` where there is nothing to reckon one with.
    ph: Option<(f64, f64, f64)>,
    /// Between which mmol of carbon dioxide the gas has to stay.
    gas: (f64, f64),
    /// What a gram of each entry brings, by the rows.
    per_gram: Vec<[f64; ROWS]>,
}

/// The rows of the sums: what is to be kept, in its order, then the base missing at both ends of the band.
const ROWS: usize = Keep::ALL.len() + 2;
const GAS: usize = Keep::Gas as usize;
const ACIDITY: usize = Keep::Acidity as usize;
const AT_LOW: usize = Keep::ALL.len();
const AT_HIGH: usize = AT_LOW + 1;

impl<'a> Bench<'a> {
    fn new(
        facts: &'a Facts<'a>,
        title: Option<&str>,
        wish: &Wish,
        flour: f64,
    ) -> Result<Self, String> {
        let title = title.map(lower).unwrap_or_default();
        let (mut entries, mut beside) = (Vec::new(), Vec::new());
        for line in &facts.formula.lines {
            let place = (line.line, line.part);
            let change = wish.changes.iter().find(|change| change.place == place);
            match change {
                Some(change) => changed(line, change, &mut entries)?,
                // What goes beside the cake is no part of the sums; it changes only where it is asked to.
                None if line.place != Place::Batter => beside.push(line.clone()),
                None => entries.push(as_it_is(
                    line,
                    wish.held.contains(&place) || names_the_cake(line.ingredient, &title),
                )),
            }
        }
        if !wish.no_more {
            added(facts, flour, &mut entries);
        }
        if !entries.iter().any(Entry::is_free) {
            return Err(
                "Every line is held, so nothing can move to keep the cake: let one go.".into(),
            );
        }
        let wet = |entry: &Entry| {
            entry
                .line
                .ingredient
                .composition
                .water
                .is_some_and(|water| water.to_fraction() > 0.1)
                && entry.before.max(entry.start) > 0.0
        };
        if !entries.iter().any(wet) {
            return Err("No liquid is known in this batter yet, and without water nothing dissolves or sets.".into());
        }
        let band = ph_band(facts.kind);
        let ph = facts.bowl.map(|bowl| {
            let now = bowl.ph.mean.value();
            let aim = match acid_verdict(facts).kind {
                VerdictKind::Short | VerdictKind::Spare => {
                    now.max(band.aim_from_below).min(band.aim_from_above)
                }
                _ => now,
            };
            (aim, band.low.min(now), band.high.max(now))
        });
        let (aim, low, high) = ph.unwrap_or((NEUTRAL, NEUTRAL, NEUTRAL));
        let brings = |entry: &Entry| {
            let of = |keep: Keep, ph: f64| {
                let line = &entry.line;
                let brings = keep.of_a_gram(line.ingredient, line.in_pieces, ph);
                brings.unwrap_or(0.0)
            };
            let mut per_gram = [0.0; ROWS];
            if entry.line.place != Place::Batter {
                return per_gram;
            }
            for (row, keep) in Keep::ALL.into_iter().enumerate() {
                per_gram[row] = of(keep, aim);
            }
            per_gram[AT_LOW] = of(Keep::Acidity, low);
            per_gram[AT_HIGH] = of(Keep::Acidity, high);
            per_gram
        };
        Ok(Self {
            facts,
            gas: gas_limits(facts, flour),
            per_gram: entries.iter().map(brings).collect(),
            entries,
            beside,
            ph,
        })
    }
}

/// What a line becomes by a change: what stays of it, and what comes.
fn changed(line: &Weighed, change: &Change, entries: &mut Vec<Entry>) -> Result<(), String> {
    let grams = line.grams.mean.to_grams();
    let goes = grams * change.share.clamp(0.0, 1.0);
    entries.push(Entry {
        line: line.clone(),
        place: Some((line.line, line.part)),
        fate: Fate::Goes,
        before: grams,
        start: grams - goes,
        limits: (grams - goes, grams - goes),
        price: 0.0,
    });
    for brought in &change.to {
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
        if is_sour(brought.ingredient) {
            low *= THINNED;
        }
        entries.push(Entry {
            line: new_line(brought.ingredient, goes * usual, line),
            place: None,
            fate: Fate::Comes((line.line, line.part)),
            before: 0.0,
            start: goes * usual,
            limits: (goes * low, goes * high),
            price: SWAPPED,
        });
    }
    Ok(())
}

/// Whether it is so sour that water may have to take the place of a part of it.
fn is_sour(ingredient: &Ingredient) -> bool {
    matches!(ingredient.group, Group::Juice | Group::Fruit)
        && ingredient.acidity.is_some_and(|acidity| acidity.ph.1 < 4.5)
}

/// A line that the change leaves alone; it may move unless it is held.
fn as_it_is(line: &Weighed, held: bool) -> Entry {
    let grams = line.grams.mean.to_grams();
    let move_of = if held {
        None
    } else {
        movement(line.ingredient)
    };
    let (limits, price) = match move_of {
        Some((least, most, price)) => ((grams * least, grams * most), price),
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
    }
}

/// The least and the most of itself that an ingredient may become, and what a gram of that costs; `None` for what stays:
/// flour, egg, fruit, whatever gives a cake its taste. By default liquids, sugar, fat, leavening and salt move.
fn movement(ingredient: &Ingredient) -> Option<(f64, f64, f64)> {
    let pours = || {
        ingredient
            .composition
            .water
            .is_some_and(|water| water.to_fraction() > 0.8)
    };
    Some(match ingredient.group {
        Group::Drink if ingredient.key == "water" => (0.0, 3.0, WATER),
        Group::Dairy | Group::PlantDairy if pours() => (0.3, 2.0, LIQUID),
        Group::Sugar | Group::Syrup => (0.5, 1.5, OTHER),
        Group::Fat | Group::Oil => (0.5, 1.5, OTHER),
        Group::Leavener if ingredient.key.contains("yeast") => return None,
        Group::Leavener if ingredient.flour_basis == FlourBasis::Never => {
            // Some powder is kept for the oven, as by the mends.
            let is_powder = ingredient
                .leavening
                .is_some_and(|it| it.bicarbonate.is_some() && it.neutralised.1 > 0.0);
            (if is_powder { POWDER_KEPT } else { 0.0 }, 4.0, OTHER)
        }
        Group::Flavour if ingredient.key.contains("salt") => (0.0, 2.0, SALT),
        _ => return None,
    })
}

/// Whether the cake has its name from it.
fn names_the_cake(ingredient: &Ingredient, title: &str) -> bool {
    ingredient
        .name
        .split([' ', ','])
        .filter(|word| word.len() > 3 && !PLAIN.contains(word))
        .any(|word| holds(title, word))
}

/// Words of ingredients' names that tell no cake from another.
const PLAIN: [&str; 9] = [
    "baking",
    "milk",
    "plain",
    "powder",
    "soda",
    "sugar",
    "white",
    "granulated",
    "cake",
];

/// What may be added where the recipe has none of it, each with the most, per cent of the flour.
const ADDED: [(&str, f64, f64); 6] = [
    ("water", 40.0, WATER),
    ("baking_soda", 2.0, OTHER),
    ("cream_of_tartar", 3.0, OTHER),
    ("corn_starch", 20.0, OTHER),
    ("sunflower_oil", 30.0, OTHER),
    ("salt", 1.0, SALT),
];

fn added(facts: &Facts, flour: f64, entries: &mut Vec<Entry>) {
    let Some(like) = facts.formula.batter().next() else {
        return;
    };
    for (key, most, price) in ADDED {
        let Some(ingredient) = by_key(key) else {
            continue;
        };
        let is_there = |entry: &Entry| {
            entry.line.ingredient.key == key
                || key == "sunflower_oil" && entry.line.ingredient.group == Group::Oil
        };
        if entries
            .iter()
            .any(|entry| is_there(entry) && entry.is_free())
        {
            continue;
        }
        entries.push(Entry {
            line: new_line(ingredient, 0.0, like),
            place: None,
            fate: Fate::Added,
            before: 0.0,
            start: 0.0,
            limits: (0.0, most * flour / 100.0),
            price: price * NEW,
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
        in_pieces: false,
        doubts: Vec::new(),
    }
}

/// Between which mmol of carbon dioxide the gas has to stay: the kind's band, and what the recipe has if it lies outside.
fn gas_limits(facts: &Facts, flour: f64) -> (f64, f64) {
    const GRAMS_PER_MMOL: f64 = 0.044_009;
    // Where acid wants soda, soda is there, and gives much of its gas on the bench.
    let band = gas_band_with(facts, true);
    let millimoles = |percent: f64| percent / 100.0 * flour / GRAMS_PER_MMOL;
    let now = facts
        .bowl
        .map_or(0.0, |bowl| bowl.gas.made.mean.to_grams() / GRAMS_PER_MMOL);
    let low = if facts.kind.leans_on_air() {
        0.0
    } else {
        millimoles(band.low)
    };
    (low.min(now), millimoles(band.high * GAS_ROOM).max(now))
}

impl Bench<'_> {
    fn plan(&self) -> Result<Plan, String> {
        let mut offset = self
            .facts
            .bowl
            .map_or(0.0, |bowl| self.offset(bowl, &self.before()));
        for _ in 0..ROUNDS {
            let (amounts, cost, missed) = self.solved(offset)?;
            let amounts = self.rounded(&amounts);
            let formula = self.formula(&amounts);
            let bowl = self.bowl(&formula);
            let there = bowl
                .as_ref()
                .map_or(offset, |bowl| self.offset(bowl, &amounts));
            let is_met = (there - offset).abs() < NEAR;
            offset = there;
            if is_met {
                return Ok(self.said(&amounts, (cost, missed), formula, bowl));
            }
        }
        let (amounts, cost, missed) = self.solved(offset)?;
        let amounts = self.rounded(&amounts);
        let formula = self.formula(&amounts);
        let bowl = self.bowl(&formula);
        Ok(self.said(&amounts, (cost, missed), formula, bowl))
    }

    /// The best amounts where the bowl misses so much base beyond the sum of its lines.
    fn solved(&self, offset: f64) -> Result<(Vec<f64>, f64, Vec<Missed>), String> {
        let solved = solve(&self.programme(offset))
            .ok_or("These amounts are beyond what can be reckoned: look at the weights first.")?;
        let mut found = solved.amounts.into_iter();
        let amounts = self.entries.iter().map(|entry| match entry.is_free() {
            true => found.next().unwrap_or(entry.start),
            false => entry.start,
        });
        Ok((amounts.collect(), solved.cost, self.missed(&solved.missed)))
    }

    /// The same with no more to move than what comes, leaveners, salt and water.
    fn without_side_ways(mut self) -> Self {
        for entry in &mut self.entries {
            let ingredient = entry.line.ingredient;
            let is_of_use = matches!(entry.fate, Fate::Comes(_) | Fate::Goes)
                || ingredient.group == Group::Leavener
                || matches!(ingredient.key, "water" | "salt");
            if !is_of_use {
                entry.limits = (entry.start, entry.start);
            }
        }
        self
    }

    /// The amounts of the recipe as it is.
    fn before(&self) -> Vec<f64> {
        self.entries.iter().map(|entry| entry.before).collect()
    }

    /// Base that a bowl is found to miss at the pH aimed at, beyond the sum of its lines: the ionic strength, and what
    /// was measured.
    fn offset(&self, bowl: &Bowl, amounts: &[f64]) -> f64 {
        self.ph.map_or(0.0, |(aim, ..)| {
            bowl.missing(aim).to_milliequivalents() - self.sum(ACIDITY, amounts)
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
        let mut rows: Vec<Row> = Vec::with_capacity(ROWS + 1);
        for (at, keep) in Keep::ALL.into_iter().enumerate() {
            let target = match keep {
                Keep::Acidity => -offset,
                _ => self.sum(at, &before),
            };
            let has_ph = self.ph.is_some();
            rows.push(Row {
                free: keep.free() * target.abs(),
                price: if keep == Keep::Acidity && !has_ph {
                    0.0
                } else {
                    keep.price()
                },
                ..row(at, target)
            });
        }
        // At the lower end of the band base is there beyond the need; at the upper end it is missing.
        let (low, high) = (row(AT_LOW, -offset), row(AT_HIGH, -offset));
        let (at_most, at_least) = match self.ph {
            Some(_) => (low.target, high.target),
            None => (f64::INFINITY, f64::NEG_INFINITY),
        };
        rows.push(Row {
            high: at_most,
            ..low
        });
        rows.push(Row {
            low: at_least,
            ..high
        });
        let gas = row(GAS, 0.0);
        let (least, most) = self.gas;
        rows.push(Row {
            low: least + gas.target,
            high: most + gas.target,
            ..gas
        });
        Programme {
            unknowns: free()
                .map(|entry| Unknown {
                    start: entry.start,
                    least: entry.limits.0,
                    most: entry.limits.1,
                    price: entry.price,
                })
                .collect(),
            rows,
        }
    }

    /// As a scale shows them; what hardly moves stays as it is.
    fn rounded(&self, amounts: &[f64]) -> Vec<f64> {
        let round = |(entry, grams): (&Entry, &f64)| {
            let by_tenths = entry.line.ingredient.group == Group::Leavener || *grams < BY_TENTHS;
            let step = if by_tenths { 0.1 } else { 1.0 };
            if (grams - entry.before).abs() < step / 2.0 {
                return entry.before;
            }
            if by_tenths {
                (grams * 10.0).round() / 10.0
            } else {
                grams.round()
            }
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
                free: keep.free() * was.abs(),
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

    /// Which limits are missed.
    fn missed(&self, rows: &[(usize, f64)]) -> Vec<Missed> {
        let said = |(row, by): &(usize, f64)| match *row {
            AT_LOW => Some(Missed::TooAcid),
            AT_HIGH => Some(Missed::TooAlkaline),
            ROWS if *by < 0.0 => Some(Missed::GasShort),
            ROWS => Some(Missed::GasMuch),
            _ => None,
        };
        rows.iter().filter_map(said).collect()
    }
}
