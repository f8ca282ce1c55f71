//! Juice and syrup that the method pours over the baked cake, though the list has them among the batter's.
//!
//! Told by the method's words: a step that pours over a cake that is baked, and names the ingredient or follows the
//! step that mixes it. What another step uses too stays in the batter. Neither goes without a word at the line.

use super::look::Look;
use super::method::{self, Listed, Step};
use super::{Line, Reading, Role, Section};
use crate::baking::ingredient::Group;
use std::sync::Arc;

/// What is done with it.
const POURS: &[&str] = &["pour", "drizzle", "spoon", "brush", "trickle", "soak"];
/// What it goes over.
const CAKES: &[&str] = &[
    "bar",
    "bun",
    "cake",
    "cupcake",
    "gingerbread",
    "loaf",
    "muffin",
    "sponge",
    "square",
];
/// What follows where "cake" is no cake yet.
const NO_CAKE: &[&str] = &[
    "base", "batter", "crumb", "dough", "form", "mix", "mixture", "mould", "pan", "tin",
];
/// What tells that the cake is baked.
const BAKED: &[&str] = &[
    "bake", "baked", "cold", "cool", "cooled", "cooling", "hot", "oven", "warm",
];
/// What begins a step that mixes something for it.
const MIXES: &[&str] = &[
    "blend", "boil", "combine", "dissolve", "heat", "melt", "mix", "simmer", "stir", "warm",
    "whisk",
];
/// How many words may stand between "over" and the cake.
const APART: usize = 5;

/// A sentence of the method, as it looks here.
trait Sentence {
    /// Whether it pours something over a cake; `after` is true where an earlier step bakes it.
    fn pours(&self, after: bool) -> bool;
    /// Whether it mixes what a later step may pour: its verb is among its first words, and nothing of a batter is in it.
    fn mixes(&self) -> bool;
}

impl Sentence for Step {
    fn pours(&self, after: bool) -> bool {
        let over = self
            .words
            .iter()
            .enumerate()
            .filter(|(_, word)| matches!(word.as_str(), "over" | "onto"))
            .any(|(at, _)| meets_cake(self, at + 1));
        over && self.has(POURS) && (after || self.has(BAKED)) && !self.has(&["batter", "dough"])
    }

    fn mixes(&self) -> bool {
        let mut first = self.words.iter().take(APART);
        first.any(|word| MIXES.contains(&word.as_str()))
            && !self.has(&["bake", "batter", "dough", "egg", "flour"])
    }
}

/// Whether a cake stands a few words behind this one.
fn meets_cake(step: &Step, from: usize) -> bool {
    let is = |at: usize, list: &[&str]| {
        let word = step.words.get(at);
        word.is_some_and(|word| list.contains(&word.as_str()))
    };
    (from..from + APART).any(|at| is(at, CAKES) && !is(at + 1, NO_CAKE))
}

/// Puts what is poured over the baked cake beside the batter, or says why it stays.
pub fn settle(lines: &mut [Line], looks: &[Arc<Look>]) {
    let steps = steps(lines);
    let poured = poured(&steps);
    if poured.is_empty() {
        return;
    }
    let readings = || lines.iter().filter_map(reading).flat_map(Reading::all);
    let listed = Listed::of(readings());
    let is_last_sugar = readings().filter(|it| is_a(it, &[Group::Sugar])).count() < 2;
    let mut next = listed.iter();
    let mut is_of_the_cake = false;
    for (line, look) in lines.iter_mut().zip(looks) {
        if matches!(line.role, Role::Heading(_)) {
            is_of_the_cake = look.heads().is_some_and(|heading| !heading.is_main);
        }
        let Role::Ingredient(first) = &mut line.role else {
            continue;
        };
        for part in 0..=first.also.len() {
            let (Some(reading), Some(named)) = (first.part_mut(part), next.next()) else {
                continue;
            };
            let Some(step) = poured.iter().find(|at| named.is_in(&steps[**at], &listed)) else {
                continue;
            };
            if reading.section != Section::Batter || reading.aside.is_some() || !is_a(reading, MAY)
            {
                continue;
            }
            let other = steps.iter().enumerate().find(|(at, step)| {
                !poured.contains(at) && (step.uses_all() || named.is_in(step, &listed))
            });
            let stays = match other {
                Some((_, other)) => Some(format!("line {} uses it too", other.line)),
                None if is_of_the_cake => Some("it stands under the cake's own heading".to_owned()),
                None if is_last_sugar && is_a(reading, &[Group::Sugar]) => {
                    Some("there is no other sugar".to_owned())
                }
                None => None,
            };
            take(reading, steps[*step].line, stays);
        }
    }
}

/// What may be poured over a cake.
const MAY: &[Group] = &[
    Group::Acid,
    Group::Drink,
    Group::Juice,
    Group::Sugar,
    Group::Syrup,
];

fn is_a(reading: &Reading, groups: &[Group]) -> bool {
    let known = reading.ingredient.taken();
    known.is_some_and(|known| groups.contains(&known.group))
}

fn reading(line: &Line) -> Option<&Reading> {
    match &line.role {
        Role::Ingredient(reading) => Some(reading),
        _ => None,
    }
}

/// Says at an ingredient what a step does with it, and puts it beside the batter where nothing keeps it in.
fn take(reading: &mut Reading, step: usize, stays: Option<String>) {
    reading.doubts.push(match stays {
        Some(why) => format!(
            "Line {step} pours it over the baked cake, but {why}: all of it counts as batter. Put what goes on top on a line of its own under \"For the glaze\"."
        ),
        None => {
            reading.section = Section::Beside;
            format!(
                "Not in the batter: line {step} pours it over the baked cake. What goes into the batter wants a line of its own under \"For the cake\"."
            )
        }
    });
}

/// The sentences of the method.
fn steps(lines: &[Line]) -> Vec<Step> {
    let sentences = method::lines(lines).flat_map(|line| {
        let sentences = line.text.split(['.', ';', '!']);
        sentences.map(|sentence| Step {
            line: line.number,
            words: method::words(sentence),
        })
    });
    sentences.filter(|step| !step.words.is_empty()).collect()
}

/// The places of the steps that pour something over a baked cake, and of those right before them that mix it.
fn poured(steps: &[Step]) -> Vec<usize> {
    let baked = steps.iter().position(|step| step.has(&["bake"]));
    let is_after = |at: usize| baked.is_some_and(|baked| baked < at);
    let mut places = Vec::new();
    for (at, step) in steps.iter().enumerate() {
        if step.pours(is_after(at)) {
            let mixed = (0..at)
                .rev()
                .take_while(|before| is_after(*before) && steps[*before].mixes());
            places.extend(mixed);
            places.push(at);
        }
    }
    places
}
