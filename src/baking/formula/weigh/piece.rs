//! The weight of so many pieces, by their size class and country.

use super::{Found, How, NoWeight, note};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Habits;
use crate::baking::ingredient::{Group, Ingredient, Piece, PieceSize, PieceWeight};
use crate::baking::quantity::show;
use crate::baking::recipe::{Amount, Reading};

/// The weight of so many pieces.
pub(super) fn weight(
    ingredient: &'static Ingredient,
    reading: &Reading,
    amount: &Amount,
    kind: Piece,
    habits: &Habits,
) -> Result<Found, NoWeight> {
    let is_egg = ingredient.group == Group::Egg;
    let size = reading.size.or_else(|| is_egg.then_some(habits.eggs));
    let row = ingredient
        .pieces
        .iter()
        .filter(|row| row.piece == kind)
        .filter(|row| row.region.is_none_or(|region| region == habits.region))
        .max_by_key(|row: &&PieceWeight| {
            let size_rank = match (row.size, size) {
                (have, want) if have == want => 3,
                (Some(PieceSize::Medium), None) => 2,
                (None, _) => 1,
                _ => 0,
            };
            (size_rank, row.region.is_some())
        });
    let Some(row) = row else {
        return Err(NoWeight {
            why: format!(
                "No source tells what one {} of {} weighs. Weigh it and write the grams.",
                kind.words(),
                ingredient.name
            ),
            missed: reading.aside.is_none(),
        });
    };
    let middle = (amount.low + amount.high) / 2.0;
    // Pieces differ from one another more than from dozen to dozen; half of the error is shared.
    let calm = f64::sqrt(0.5 + 0.5 / middle.max(1.0));
    let mut errors = vec![(
        calm * (1.0 - row.weight.low / row.weight.mean),
        calm * (row.weight.high / row.weight.mean - 1.0),
    )];
    if amount.high > amount.low && middle > 0.0 {
        errors.push((1.0 - amount.low / middle, amount.high / middle - 1.0));
    }
    let class = row
        .size
        .map_or(String::new(), |size| format!("{} ", size.words()));
    Ok(Found {
        ingredient,
        grams: Estimate::apart(row.weight.mean * middle, &errors),
        how: How {
            sentence: format!(
                "One {class}{} of {} weighs {}{} ready for the bowl.{}",
                kind.words(),
                ingredient.name,
                show::mass(row.weight.mean),
                show::mass_range(&row.weight).map_or(String::new(), |range| format!(" ({range})")),
                note(row.note),
            ),
            cited: Some(row.cited),
            others: String::new(),
        },
        doubts: Vec::new(),
    })
}
