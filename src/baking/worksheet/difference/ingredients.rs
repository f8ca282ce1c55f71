//! Ingredients before and after, matched by what they are and where they go.

use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{Group, by_key};
use crate::baking::quantity::{Mass, Share, show};
use crate::baking::worksheet::{SheetLine, Spread, Status, Worksheet};
use serde::Serialize;
use std::collections::HashMap;

/// An ingredient before and after.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct IngredientChange {
    /// Its key in the tables; `None` where the tables do not know it.
    pub ingredient: Option<&'static str>,
    /// Its name, or its words where the tables do not know it.
    pub name: String,
    /// Where it goes if not into the batter: "For the pan: not counted in the batter".
    pub beside: Option<String>,
    /// Before; `None` where it was not there.
    pub before: Option<Amount>,
    /// After; `None` where it was left out.
    pub after: Option<Amount>,
    /// "+5.7 g", "−12 g"; empty where one of the two has no weight.
    pub change_shown: String,
}

impl IngredientChange {
    /// Whether it is not the same in both, as far as a scale shows it.
    pub fn differs(&self) -> bool {
        match (&self.before, &self.after) {
            (Some(before), Some(after)) => {
                before.shown != after.shown || before.range_shown != after.range_shown
            }
            (before, after) => before.is_some() != after.is_some(),
        }
    }
}

/// How much of an ingredient there is, over all of its lines.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Amount {
    /// Grams; `None` where no line of it has a weight.
    pub grams: Option<Spread>,
    /// In words: "122 g", "no weight", "122 g and a line without a weight".
    pub shown: String,
    /// The range in words; `None` where the weight is exact or not known.
    pub range_shown: Option<String>,
    /// Baker's percentage; `None` outside the batter, without flour or without a weight.
    pub percent: Option<f64>,
    /// The same in words: "49 %".
    pub percent_shown: Option<String>,
    /// The spoons that it was measured by, where one line has them: "1 1/2 teaspoons".
    pub spoons: Option<String>,
}

/// A change with what words are made of.
pub(super) struct Matched<'a> {
    /// The change.
    pub change: IngredientChange,
    /// What the baker calls it.
    pub said: &'a str,
    /// What stands around it: two with the same surroundings stood in one another's place.
    pub slot: Slot<'a>,
}

/// The ingredient of both recipes that stands before it, where it goes, and whether it is a leavener.
pub(super) type Slot<'a> = (Option<Key<'a>>, &'a str, bool);

/// What makes two lines the same ingredient: whether the tables know it, its key or else its words, where it goes.
pub(super) type Key<'a> = (bool, &'a str, &'a str);

/// Longer words for an ingredient are no name; the tables' own is taken then.
const LONGEST_NAME: usize = 40;

/// Every ingredient of both, in the order of the recipe after; what was left out stands where it stood.
pub(super) fn matched<'a>(before: &'a Worksheet, after: &'a Worksheet) -> Vec<Matched<'a>> {
    let (old, new) = (Listed::of(before), Listed::of(after));
    let mut left_out: HashMap<Option<Key>, Vec<Matched>> = HashMap::new();
    for (key, neighbour) in old.alone(&new) {
        let matched = joined(key, neighbour, &old, &new);
        left_out.entry(neighbour).or_default().push(matched);
    }
    let mut all = left_out.remove(&None).unwrap_or_default();
    let mut neighbour = None;
    for &key in &new.order {
        let is_common = old.lines.contains_key(&key);
        all.push(joined(key, neighbour, &old, &new));
        if is_common {
            neighbour = Some(key);
            all.extend(left_out.remove(&neighbour).unwrap_or_default());
        }
    }
    all
}

/// The ingredients of a worksheet with their lines, in the order in which they first stand there.
struct Listed<'a> {
    order: Vec<Key<'a>>,
    lines: HashMap<Key<'a>, Vec<&'a SheetLine>>,
    flour: Option<f64>,
}

impl<'a> Listed<'a> {
    fn of(sheet: &'a Worksheet) -> Self {
        let mut listed = Self {
            order: Vec::new(),
            lines: HashMap::new(),
            flour: sheet.balance.flour.map(|flour| flour.mean),
        };
        for line in sheet.lines.iter().filter(|line| is_ingredient(line)) {
            let key = key(line);
            let lines = listed.lines.entry(key).or_default();
            if lines.is_empty() {
                listed.order.push(key);
            }
            lines.push(line);
        }
        listed
    }

    /// What the other does not have, each with the ingredient of both that stands before it.
    fn alone(&self, other: &Self) -> Vec<(Key<'a>, Option<Key<'a>>)> {
        let mut neighbour = None;
        let mut alone = Vec::new();
        for &key in &self.order {
            if other.lines.contains_key(&key) {
                neighbour = Some(key);
            } else {
                alone.push((key, neighbour));
            }
        }
        alone
    }

    fn amount(&self, key: Key) -> Option<Amount> {
        self.lines.get(&key).map(|lines| amount(lines, self.flour))
    }
}

fn is_ingredient(line: &SheetLine) -> bool {
    matches!(
        line.status,
        Status::Weighed | Status::NotWeighed | Status::NotRead
    )
}

fn key(line: &SheetLine) -> Key<'_> {
    let place = line.beside.as_deref().unwrap_or("");
    match line.ingredient {
        Some(key) => (true, key, place),
        None if line.words.is_empty() => (false, line.text.trim(), place),
        None => (false, &line.words, place),
    }
}

fn joined<'a>(
    key: Key<'a>,
    neighbour: Option<Key<'a>>,
    old: &Listed<'a>,
    new: &Listed<'a>,
) -> Matched<'a> {
    let (is_known, words, place) = key;
    let line = [new, old]
        .iter()
        .find_map(|listed| listed.lines.get(&key)?.first().copied());
    let name = line.and_then(|line| line.name).unwrap_or(words);
    let (before, after) = (old.amount(key), new.amount(key));
    let is_leavener = by_key(words).is_some_and(|it| is_known && it.group == Group::Leavener);
    Matched {
        said: line.map_or(name, |line| said(line, name)),
        slot: (neighbour, place, is_leavener),
        change: IngredientChange {
            ingredient: line.and_then(|line| line.ingredient),
            name: name.to_owned(),
            beside: (!place.is_empty()).then(|| place.to_owned()),
            change_shown: change_shown(before.as_ref(), after.as_ref()),
            before,
            after,
        },
    }
}

/// What the baker calls it, where those words mean it by themselves and are short.
fn said<'a>(line: &'a SheetLine, name: &'a str) -> &'a str {
    let words = line.words.trim();
    let is_name = !line.corrected && !line.taught && line.status == Status::Weighed;
    if is_name && !words.is_empty() && words.len() <= LONGEST_NAME {
        words
    } else {
        name
    }
}

fn amount(lines: &[&SheetLine], flour: Option<f64>) -> Amount {
    let weighed: Vec<Estimate<Mass>> = lines.iter().filter_map(|line| weight(line)).collect();
    let without = lines.len() - weighed.len();
    let total = Estimate::sum(&weighed);
    let grams = (!weighed.is_empty()).then_some(total);
    let in_batter = lines.iter().all(|line| line.in_batter);
    let percent = grams
        .zip(flour)
        .filter(|(_, flour)| in_batter && *flour > 0.0)
        .map(|(grams, flour)| Share::fraction(grams.mean.to_grams() / flour));
    Amount {
        grams: grams.map(Spread::from),
        shown: match (grams, without) {
            (None, _) => "no weight".into(),
            (Some(grams), 0) => show::mass(grams.mean),
            (Some(grams), 1) => format!("{} and a line without a weight", show::mass(grams.mean)),
            (Some(grams), without) => format!(
                "{} and {without} lines without a weight",
                show::mass(grams.mean)
            ),
        },
        range_shown: grams.as_ref().and_then(show::mass_range),
        percent: percent.map(Share::to_percent),
        percent_shown: percent.map(show::percent),
        spoons: match lines {
            [line] => line.spoons.clone(),
            _ => None,
        },
    }
}

fn weight(line: &SheetLine) -> Option<Estimate<Mass>> {
    let Spread { mean, low, high } = line.grams?;
    let [mean, low, high] = [mean, low, high].map(Mass::grams);
    Some(Estimate { mean, low, high })
}

/// What came to it or went, with a sign; one that is not there at all is none of it.
fn change_shown(before: Option<&Amount>, after: Option<&Amount>) -> String {
    if before
        .zip(after)
        .is_some_and(|(before, after)| before.shown == after.shown)
    {
        return String::new();
    }
    let grams = |amount: Option<&Amount>| match amount {
        None => Some(0.0),
        Some(amount) => amount.grams.map(|grams| grams.mean),
    };
    match (grams(before), grams(after)) {
        (Some(before), Some(after)) => {
            super::figures::signed(after - before, |grams| show::mass(Mass::grams(grams)))
        }
        _ => String::new(),
    }
}
