//! What a method calls ingredients besides their names: "the dry things", "the spices", "berries".

use super::super::method::{self, Listed, Step};
use super::Item;
use crate::baking::ingredient::{Group, lookup};

/// Words that a method uses where only a part of something goes in.
pub const PARTLY: &[&str] = &[
    "half",
    "quarter",
    "remaining",
    "reserved",
    "rest",
    "some",
    "third",
];

/// A lot of ingredients that a method names by what they are like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kin {
    /// "The dry ingredients".
    Dry,
    /// "The wet ones", "the liquids".
    Wet,
    /// "Dry and wet".
    Both,
    /// "All the ingredients", "everything else", "the remaining ingredients".
    Rest,
}

/// What follows "dry" and "wet" where they stand for ingredients.
const OF_KIN: &[&str] = &[
    "and",
    "apart",
    "in",
    "ingredient",
    "into",
    "item",
    "mix",
    "mixture",
    "one",
    "part",
    "separately",
    "team",
    "thing",
    "to",
    "with",
];

/// What follows "all" where it stands for the ingredients.
const OF_ALL: &[&str] = &["in", "ingredient", "of", "other", "the", "together"];

impl Kin {
    /// The lot that a clause names, and where.
    pub fn in_step(step: &Step) -> Option<(usize, Self)> {
        let dry = standing(step, &["dry"], OF_KIN);
        let wet = standing(step, &["wet", "liquid"], OF_KIN);
        match (dry, wet) {
            (Some(dry), Some(wet)) => Some((dry.min(wet), Self::Both)),
            (Some(dry), None) => Some((dry, Self::Dry)),
            (None, Some(wet)) => Some((wet, Self::Wet)),
            (None, None) => rest(step).map(|place| (place, Self::Rest)),
        }
    }
}

/// Where one of these words stands with one of the others, or nothing, behind it.
fn standing(step: &Step, list: &[&str], behind: &[&str]) -> Option<usize> {
    (0..step.words.len()).find(|at| {
        let next = step.words.get(at + 1);
        list.contains(&step.words[*at].as_str())
            && next.is_none_or(|next| behind.contains(&next.as_str()))
    })
}

/// Where a clause names all that is left.
fn rest(step: &Step) -> Option<usize> {
    let place = |list: &[&str]| {
        step.words
            .iter()
            .position(|word| list.contains(&word.as_str()))
    };
    let remaining = place(&["remaining", "other", "rest"]).filter(|_| step.has(&["ingredient"]));
    let all = || match (place(&["everything"]), standing(step, &["all"], OF_ALL)) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    };
    remaining.or_else(all)
}

/// The lot that a part of the list is headed by: "Dry", "Wet ingredients".
pub fn kin_of_heading(heading: &str) -> Option<Kin> {
    let words = method::words(heading);
    let has = |word: &str| words.iter().any(|it| it == word);
    if has("dry") {
        Some(Kin::Dry)
    } else if has("wet") || has("liquid") {
        Some(Kin::Wet)
    } else {
        None
    }
}

/// Whether a step names a part of the list by the last word of its heading: "glaze" of "For the glaze".
pub fn names_part(step: &Step, heading: &str) -> bool {
    let words = method::words(heading);
    let part = words.iter().rev().find(|word| word.len() > 3);
    part.is_some_and(|part| {
        !matches!(part.as_str(), "ingredient" | "cake" | "thing") && step.words.contains(part)
    })
}

/// Whether an ingredient is sifted or stirred dry.
pub fn is_dry(item: &Item) -> bool {
    let Some(group) = item.group() else {
        return false;
    };
    match group {
        Group::Flour
        | Group::Starch
        | Group::Grain
        | Group::Sugar
        | Group::Leavener
        | Group::Cocoa
        | Group::Spice
        | Group::Thickener
        | Group::Nut
        | Group::Seed => true,
        Group::Flavour => {
            let known = item.reading.ingredient.taken();
            known.is_some_and(|known| known.key.contains("salt") || known.key.contains("powder"))
        }
        _ => false,
    }
}

/// What a whole family of ingredients is called.
const FAMILIES: &[(&str, &[Group])] = &[
    ("flour", &[Group::Flour]),
    ("sugar", &[Group::Sugar]),
    ("spice", &[Group::Spice]),
    ("nut", &[Group::Nut]),
    ("fruit", &[Group::Fruit, Group::DriedFruit]),
    ("oil", &[Group::Oil]),
    ("fat", &[Group::Fat]),
    ("milk", &[Group::Dairy, Group::PlantDairy]),
    ("egg", &[Group::Egg]),
    ("yolk", &[Group::Egg]),
    ("white", &[Group::Egg]),
    ("chocolate", &[Group::Chocolate]),
    ("seed", &[Group::Seed]),
    ("juice", &[Group::Juice]),
    ("vinegar", &[Group::Acid]),
    ("cocoa", &[Group::Cocoa]),
    ("soda", &[Group::Leavener]),
    ("bicarb", &[Group::Leavener]),
    ("bicarbonate", &[Group::Leavener]),
    ("powder", &[Group::Leavener]),
];

/// Words that are part of many names and name none.
const COMMON: &[&str] = &[
    "baking", "brown", "dark", "fine", "fresh", "ground", "icing", "light", "plain", "purpose",
    "raising", "self", "soft", "sweet", "whole", "cream",
];

/// The end of names that a method leaves out: "pumpkin" for pumpkin purée.
const LEFT_OUT: &[&str] = &["concentrate", "essence", "extract", "powder", "puree"];

/// The words besides its name that each ingredient may be called by.
pub struct Called {
    words: Vec<Vec<String>>,
}

impl Called {
    pub fn of(items: &[Item], listed: &[Listed]) -> Self {
        let words = (0..items.len()).map(|at| words(at, items, listed));
        Self {
            words: words.collect(),
        }
    }

    /// Where a step calls it so.
    pub fn place_in(&self, at: usize, step: &Step) -> Option<usize> {
        let words = &self.words[at];
        step.words.iter().position(|said| {
            words
                .iter()
                .any(|word| word == said || is_its_end(word, said))
        })
    }
}

/// "Berries" for blueberries: the end of a word that is long enough to tell.
fn is_its_end(word: &str, said: &str) -> bool {
    said.len() > 4 && word.len() > said.len() && word.ends_with(said)
}

fn words(at: usize, items: &[Item], listed: &[Listed]) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    // A word of its name that no other ingredient has.
    for word in listed[at].words() {
        let is_elsewhere = listed
            .iter()
            .enumerate()
            .any(|(other, it)| other != at && it.words().any(|theirs| theirs == word));
        let tells = word.len() > 3
            && !COMMON.contains(&word.as_str())
            && !lookup::only_describes(word)
            && !words.contains(word);
        if tells && !is_elsewhere {
            words.push(word.clone());
        }
    }
    if let Some([name, end]) = items[at].reading.ingredient.taken().and_then(|known| {
        let words: Vec<&str> = known.key.split('_').collect();
        <[&str; 2]>::try_from(words).ok()
    }) && LEFT_OUT.contains(&end)
        && !matches!(name, "baking" | "cocoa" | "milk")
    {
        words.push(lookup::plain_word(name));
    }
    if words.iter().any(|word| word == "zest") {
        words.extend(["rind", "peel"].map(str::to_owned));
    }
    if let Some(group) = items[at].group() {
        for (word, groups) in FAMILIES {
            if groups.contains(&group) && stands_for(word, at, items, listed) {
                words.push((*word).to_owned());
            }
        }
    }
    words
}

/// Whether the word of a family means this one: soda is no powder, and whites are not meant where they have a line of
/// their own.
fn stands_for(word: &str, at: usize, items: &[Item], listed: &[Listed]) -> bool {
    let has = |at: usize| listed[at].words().any(|own| own.starts_with(word));
    match word {
        "soda" | "bicarb" | "bicarbonate" => listed[at]
            .words()
            .any(|own| own == "soda" || own == "bicarbonate"),
        "powder" => listed[at].words().any(|own| own == "powder"),
        "yolk" | "white" => {
            has(at)
                || !(0..items.len())
                    .any(|other| items[other].group() == Some(Group::Egg) && has(other))
        }
        _ => true,
    }
}
