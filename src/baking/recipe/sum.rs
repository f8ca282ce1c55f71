//! Amounts of one kind put together: "1 lb 4 oz", "1 cup plus 2 tablespoons", "1 cup less 1 tablespoon".

use super::number::{self, LARGEST};
use super::term::Term;
use super::token::Token;
use super::{Amount, Unit, VolumeUnit, measure};
use crate::baking::ingredient::{Larder, Piece};
use crate::baking::quantity::Mass;

/// "1 lb 4 oz", "1 cup 2 tablespoons": a smaller unit of the same kind right after belongs to the amount.
pub fn compound(tokens: &[Token], found: &mut Term) {
    let Some(first) = found.amounts.last().copied() else {
        return;
    };
    let mut at = found.next;
    if tokens.get(at).is_some_and(|token| token.is_mark(',')) && matches!(first.unit, Unit::Mass(_))
    {
        at += 1;
    }
    let Some(count) =
        number::count(tokens, at).filter(|count| count.fault.is_none() && count.is_figure)
    else {
        return;
    };
    let Some(measure) = measure::measure(tokens, count.next) else {
        return;
    };
    let smaller = match (first.unit, measure.unit) {
        (Unit::Mass(large), Unit::Mass(small)) => {
            // Pounds and ounces; kilograms and grams. "8 oz 225 g" is the same weight twice.
            let is_pair = is_about(large / small, 16.0) || is_about(large / small, 1000.0);
            is_pair.then(|| small / large)
        }
        (Unit::Volume(large), Unit::Volume(small))
            if large != small && is_pair_of_volumes(large, small) =>
        {
            Some(small.volume(Default::default()) / large.volume(Default::default()))
        }
        _ => None,
    };
    let Some(ratio) = smaller else { return };
    if count.high * ratio >= 1.0 || first.low < 1.0 {
        return;
    }
    if let Some(last) = found.amounts.last_mut() {
        last.low += count.low * ratio;
        last.high += count.high * ratio;
    }
    found.next = measure.next;
}

/// Kitchen measures of one family, the larger first.
pub fn is_pair_of_volumes(large: VolumeUnit, small: VolumeUnit) -> bool {
    use VolumeUnit::*;
    match large {
        Cup => matches!(small, Tablespoon | Teaspoon),
        Tablespoon => small == Teaspoon,
        Pint | Quart => matches!(small, Cup | FluidOunce | Tablespoon),
        Litre => matches!(small, Millilitre),
        _ => false,
    }
}

/// Equal but for rounding.
pub fn is_about(one: f64, two: f64) -> bool {
    (one - two).abs() < 1e-6 * two
}

/// Adds a second term to an amount of the same kind, or takes it off: "1 cup plus 2 tablespoons".
/// False where the two cannot be put together.
pub fn add(amount: &mut Amount, other: &Amount, sign: f64, larder: Larder<'_>) -> bool {
    // A wrapped US stick of fat is 8 tablespoons or 4 ounces.
    let ratio = match (amount.unit, other.unit) {
        (one, two) if one == two => 1.0,
        (Unit::Mass(one), Unit::Mass(two)) => two / one,
        (Unit::Volume(one), Unit::Volume(two)) => {
            two.volume(larder.region) / one.volume(larder.region)
        }
        (Unit::Piece(Piece::Stick), Unit::Volume(two)) => {
            two.volume(larder.region) / (VolumeUnit::Tablespoon.volume(larder.region) * 8.0)
        }
        (Unit::Volume(one), Unit::Piece(Piece::Stick)) => {
            VolumeUnit::Tablespoon.volume(larder.region) * 8.0 / one.volume(larder.region)
        }
        (Unit::Piece(Piece::Stick), Unit::Mass(two)) => two / (Mass::OUNCE * 4.0),
        _ => return false,
    };
    let (low, high) = (
        amount.low + sign * other.low * ratio,
        amount.high + sign * other.high * ratio,
    );
    // What a range takes off may be more at its upper end than there was.
    let (low, high) = (low.min(high), low.max(high));
    if !(low.is_finite() && high.is_finite() && low >= 0.0 && high <= LARGEST) {
        return false;
    }
    (amount.low, amount.high) = (low, high);
    true
}
