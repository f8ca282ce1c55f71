//! The lines of a plan: what goes, what comes, what may move and what may be added.

use super::movement::{ADDED, SWAPPED, does_its_work, movement, names_the_cake, pours};
use super::plan::{Change, Fate, Wish};
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::formula::{How, Place, Weighed};
use crate::baking::ingredient::{FlourBasis, Group, Ingredient, by_key};
use crate::baking::quantity::Mass;
use crate::baking::text::lower;
use std::borrow::Cow;

/// The part of what comes that has to be left of it where it is too sour for all of it.
const THINNED: f64 = 0.3;
/// Below this many grams a scale shows tenths; above, whole grams.
const BY_TENTHS: f64 = 10.0;

/// A line of the batter with its part in the programme.
#[derive(Clone)]
pub struct Entry<'a> {
    /// The line.
    pub line: Cow<'a, Weighed>,
    /// Its place in the text; `None` for what is new.
    pub place: Option<(usize, usize)>,
    /// What becomes of it.
    pub fate: Fate,
    /// g in the recipe.
    pub before: f64,
    /// g from which moving it costs.
    pub start: f64,
    /// Between which g it may move; the same twice where it may not.
    pub limits: (f64, f64),
    /// What a gram moved costs.
    pub price: f64,
    /// Below so many g it is not worth adding.
    pub trifle: f64,
}

impl Entry<'_> {
    /// Whether it may move at all.
    pub fn is_free(&self) -> bool {
        self.limits.1 > self.limits.0
    }

    /// Keeps it where it is.
    pub fn hold(&mut self) {
        self.limits = (self.start, self.start);
    }

    /// Whether it is there and brings water that is not in flour.
    pub fn is_wet(&self) -> bool {
        let ingredient = self.line.ingredient;
        let water = ingredient.composition.water;
        ingredient.flour_basis == FlourBasis::Never
            && water.is_some_and(|water| water.to_fraction() > 0.1)
            && self.before.max(self.start) > 0.0
    }

    /// The step of a scale at so many grams of it.
    pub fn step(&self, grams: f64) -> f64 {
        let by_tenths = self.line.ingredient.group == Group::Leavener || grams < BY_TENTHS;
        if by_tenths { 0.1 } else { 1.0 }
    }
}

/// The lines of the batter as the wish has them, and what may be added.
pub fn entries<'a>(
    facts: &'a Facts,
    title: Option<&str>,
    wish: &Wish,
    flour: f64,
) -> Result<Vec<Entry<'a>>, String> {
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
fn changed<'a>(
    line: &'a Weighed,
    change: &Change,
    entries: &mut Vec<Entry<'a>>,
) -> Result<(), String> {
    let grams = line.grams.mean.to_grams();
    let goes = grams * change.share.clamp(0.0, 1.0);
    if let [same] = &change.to[..]
        && same.ingredient == line.ingredient
    {
        entries.push(as_it_is(line, true, false, 0.0));
        return Ok(());
    }
    entries.push(Entry {
        line: Cow::Borrowed(line),
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
            line: Cow::Owned(new_line(brought.ingredient, goes * usual, line)),
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
fn as_it_is(line: &Weighed, held: bool, more_pours: bool, flour: f64) -> Entry<'_> {
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
        line: Cow::Borrowed(line),
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
    entries: &mut Vec<Entry<'_>>,
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
            line: Cow::Owned(new_line(ingredient, 0.0, like)),
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
