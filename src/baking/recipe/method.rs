//! The words of a method, and which ingredients of the list they name.

use super::{Line, Reading, Role};
use crate::baking::ingredient::lookup;

/// A piece of the method: the number of its line, and its words in plain form.
#[derive(Clone, Debug)]
pub struct Step {
    pub line: usize,
    pub words: Vec<String>,
}

impl Step {
    pub fn has(&self, list: &[&str]) -> bool {
        self.words.iter().any(|word| list.contains(&word.as_str()))
    }

    /// Where these words stand in it one after the other.
    pub fn places_of(&self, name: &[String]) -> impl Iterator<Item = usize> {
        // No window is no word long.
        let windows = self.words.windows(name.len().max(1)).enumerate();
        windows.filter_map(move |(at, words)| (words == name).then_some(at))
    }

    /// Whether it uses all there is: "mix all the ingredients".
    pub fn uses_all(&self) -> bool {
        self.has(&["everything"]) || self.has(&["all"]) && self.has(&["ingredient"])
    }
}

/// The lines of the method.
pub fn lines(lines: &[Line]) -> impl Iterator<Item = &Line> {
    lines.iter().filter(|line| line.role == Role::Method)
}

/// Words in plain form.
pub fn words(text: &str) -> Vec<String> {
    text.split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(lookup::plain_word)
        .collect()
}

/// An ingredient of the list, by what a step may call it.
#[derive(Clone, Debug)]
pub struct Listed {
    /// Its own words and those of the tables.
    names: [Vec<String>; 2],
    /// True where no other ingredient's name ends like it: "juice" is enough.
    is_only: bool,
}

impl Listed {
    /// All of a list, each knowing of the others.
    pub fn of<'a>(readings: impl Iterator<Item = &'a Reading>) -> Vec<Self> {
        let mut listed: Vec<Self> = readings.map(Self::one).collect();
        let heads: Vec<Option<String>> = listed.iter().map(|it| it.head().cloned()).collect();
        for (at, it) in listed.iter_mut().enumerate() {
            let is_other = |(other, head): (usize, _)| other != at && head == &heads[at];
            it.is_only = !heads.iter().enumerate().any(is_other);
        }
        listed
    }

    fn one(reading: &Reading) -> Self {
        let known = reading.ingredient.taken();
        let key = known.map_or("", |known| known.key);
        Self {
            names: [
                lookup::words_of(&reading.name),
                key.split('_').map(lookup::plain_word).collect(),
            ],
            is_only: true,
        }
    }

    fn head(&self) -> Option<&String> {
        self.names[1].last()
    }

    /// All words of its names.
    pub fn words(&self) -> impl Iterator<Item = &String> {
        self.names.iter().flatten()
    }

    /// Whether a step names it. Words that are part of a longer name of another ("sugar" of "icing sugar") are not
    /// its own.
    pub fn is_in(&self, step: &Step, all: &[Self]) -> bool {
        self.span_in(step, all).is_some()
    }

    /// The words of a step that name it first, from and to.
    pub fn span_in(&self, step: &Step, all: &[Self]) -> Option<(usize, usize)> {
        let stands = |name: &[String]| {
            let from = step.places_of(name).find(|at| {
                let longer = all.iter().flat_map(|other| &other.names);
                !longer
                    .filter(|longer| longer.len() > name.len())
                    .any(|longer| {
                        step.places_of(longer)
                            .any(|from| from <= *at && at + name.len() <= from + longer.len())
                    })
            })?;
            Some((from, from + name.len()))
        };
        let head = self.head().filter(|_| self.is_only);
        let names = self.names.iter().map(Vec::as_slice);
        let names = names.chain(head.map(std::slice::from_ref));
        names.filter_map(stands).min()
    }
}
