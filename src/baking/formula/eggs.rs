//! Eggs that can be counted: how many a line means, and what one of them weighs.

use super::{Formula, Place, Weighed};
use crate::baking::ingredient::{Group, Ingredient, Piece};
use crate::baking::quantity::Mass;
use crate::baking::recipe::{Reading, Recipe, Role, Unit};

/// Eggs of one kind: whole, whites or yolks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eggs {
    /// What they are.
    pub ingredient: &'static Ingredient,
    /// How many.
    pub count: f64,
    /// What one weighs, out of its shell.
    pub each: Mass,
}

/// The eggs of a line; `None` where it has none that come out of a shell.
///
/// A count that the line writes holds, and each egg weighs its part of the line; a weight is counted in eggs of the usual size.
pub fn eggs(weighed: &Weighed, reading: &Reading) -> Option<Eggs> {
    let ingredient = weighed.ingredient;
    if ingredient.group != Group::Egg || ingredient.plant_based != Some(false) {
        return None;
    }
    let written = reading.amounts.first().and_then(|amount| {
        let is_count = amount.unit == Unit::Piece(Piece::Each);
        is_count.then_some((amount.low + amount.high) / 2.0)
    });
    let grams = weighed.grams.mean;
    let (count, each) = match written.filter(|count| *count > 0.0) {
        Some(count) => (count, grams / count),
        None => {
            let mut pieces = ingredient.pieces.iter();
            let usual = pieces.find(|row| row.piece == Piece::Each && row.size.is_none())?;
            let each = usual.weight.mean;
            (grams / each, each)
        }
    };
    let is_figure = count.is_finite() && count > 0.0 && each > Mass::ZERO;
    is_figure.then_some(Eggs {
        ingredient,
        count,
        each,
    })
}

/// The eggs of a batter that it is counted by: of whole eggs, whites and yolks the kind that weighs most, all its lines together.
pub fn counted_eggs(recipe: &Recipe, formula: &Formula) -> Option<Eggs> {
    let mut kinds: Vec<Eggs> = Vec::new();
    for weighed in &formula.lines {
        let Some(found) = reading_of(recipe, weighed)
            .filter(|_| weighed.place == Place::Batter)
            .and_then(|reading| eggs(weighed, reading))
        else {
            continue;
        };
        match kinds
            .iter_mut()
            .find(|kind| kind.ingredient.key == found.ingredient.key)
        {
            Some(kind) => {
                let grams = kind.each * kind.count + found.each * found.count;
                kind.count += found.count;
                kind.each = grams / kind.count;
            }
            None => kinds.push(found),
        }
    }
    let grams = |eggs: &Eggs| (eggs.each * eggs.count).to_grams();
    kinds
        .into_iter()
        .max_by(|one, other| grams(one).total_cmp(&grams(other)))
}

fn reading_of<'a>(recipe: &'a Recipe, weighed: &Weighed) -> Option<&'a Reading> {
    let line = recipe
        .lines
        .iter()
        .find(|line| line.number == weighed.line)?;
    match &line.role {
        Role::Ingredient(reading) => reading.all().nth(weighed.part),
        _ => None,
    }
}
