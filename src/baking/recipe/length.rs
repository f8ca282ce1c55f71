//! Numbers that are no amounts (minutes, degrees, lengths), and the lengths that are: "1-inch piece of ginger".

use super::token::{Kind, Token};
use super::{Amount, Unit};
use crate::baking::ingredient::Piece;

/// Whether the number counts something that is no amount: minutes, degrees, servings, per cent, ways.
pub fn is_no_amount(tokens: &[Token], at: usize) -> bool {
    let mut next = at;
    while tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    let Some(token) = tokens.get(next) else {
        return false;
    };
    token.is_mark('°')
        || token.is_mark('%')
        || token.is_any(&[
            "minute",
            "minutes",
            "min",
            "mins",
            "hour",
            "hours",
            "hr",
            "hrs",
            "second",
            "seconds",
            "sec",
            "secs",
            "day",
            "days",
            "degrees",
            "degree",
            "deg",
            "servings",
            "serving",
            "portions",
            "percent",
            "times",
            "calories",
            "kcal",
            "cal",
            "people",
            "ingredient",
            "ingredients",
            "weeks",
            "month",
            "months",
            "mm",
            "stars",
        ])
}

/// Whether a length stands here: "9-inch", "20 cm", "9 x 13".
pub fn is_length(tokens: &[Token], at: usize) -> bool {
    let mut next = at;
    while tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    tokens.get(next).is_some_and(|token| {
        token.is_any(&[
            "inch",
            "inches",
            "cm",
            "cms",
            "mm",
            "centimetre",
            "centimeter",
            "centimetres",
            "centimeters",
        ]) || token.is_mark('"')
            || token.is("in") && (next > at || !token.spaced)
    })
}

/// "1-inch piece of ginger", "5 cm piece".
pub fn inch_piece(tokens: &[Token], at: usize, low: f64, high: f64) -> Option<(Amount, usize)> {
    if !is_length(tokens, at) {
        return None;
    }
    let mut next = at;
    while tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    let inches = if tokens[next].is_any(&[
        "cm",
        "cms",
        "centimetre",
        "centimeter",
        "centimetres",
        "centimeters",
    ]) {
        1.0 / 2.54
    } else if tokens[next].is("mm") {
        1.0 / 25.4
    } else {
        1.0
    };
    next += 1;
    while tokens
        .get(next)
        .is_some_and(|token| token.is_mark('-') || token.is_any(&["long", "thick"]))
    {
        next += 1;
    }
    let token = tokens.get(next)?;
    let is_piece = token.is_any(&[
        "piece", "pieces", "knob", "chunk", "length", "thumb", "nub", "stick",
    ]);
    let is_root = token.is_any(&[
        "ginger", "fresh", "root", "turmeric", "peeled", "of", "cinnamon",
    ]);
    // "Rhubarb, in 1/2-inch pieces" tells how it is cut, and not how much there is.
    let is_cut = is_piece
        && token.lower.ends_with('s')
        && !tokens
            .get(next + 1)
            .is_some_and(|after| after.kind == Kind::Word);
    if !(is_piece || is_root) || is_cut {
        return None;
    }
    let unit = Unit::Piece(Piece::Inch);
    Some((
        Amount {
            low: low * inches,
            high: high * inches,
            unit,
        },
        next + usize::from(is_piece),
    ))
}
