//! The lengths beside a pan, how many pans, and how many cups a muffin tin has.

use super::number;
use super::token::{Kind, Token};
use crate::baking::quantity::Length;

/// Two sides that differ.
pub fn is_oblong(lengths: &[Length]) -> bool {
    lengths.len() >= 2 && (lengths[0].to_millimetres() - lengths[1].to_millimetres()).abs() > 5.0
}

/// The first row of lengths in some words ("9 x 13 x 2-inch", "20 cm"), and the token it starts at.
pub fn lengths(tokens: &[Token]) -> (Vec<Length>, usize) {
    let mut at = 0;
    while at < tokens.len() {
        if let Some((lengths, _)) = row(tokens, at) {
            return (lengths, at);
        }
        at += 1;
    }
    (Vec::new(), tokens.len())
}

/// A depth that is called one: "7cm deep".
pub fn depth(tokens: &[Token]) -> Option<Length> {
    // "A deep 20 cm tin, 8 cm deep": the word may stand without a length too.
    let mut deeps = tokens
        .iter()
        .enumerate()
        .filter(|(_, token)| token.is("deep"));
    deeps.find_map(|(deep, _)| {
        let from = deep.saturating_sub(4);
        (from..deep).find_map(|at| match row(&tokens[..deep], at) {
            Some((lengths, next)) if next == deep && lengths.len() == 1 => lengths.first().copied(),
            _ => None,
        })
    })
}

/// A row of numbers with "x" or "by" between and a unit at the end or at each.
fn row(tokens: &[Token], at: usize) -> Option<(Vec<Length>, usize)> {
    let mut values: Vec<(f64, Option<f64>)> = Vec::new();
    let mut next = at;
    while values.len() < 3 {
        let Some(count) = tokens
            .get(next)
            .filter(|token| token.is_number())
            .and_then(|_| number::count(tokens, next))
        else {
            break;
        };
        next = count.next;
        let mut after = next;
        while tokens.get(after).is_some_and(|token| token.is_mark('-')) {
            after += 1;
        }
        let unit = tokens.get(after).and_then(unit);
        if unit.is_some() {
            next = after + 1;
            if tokens.get(next).is_some_and(|token| token.is_mark('.')) {
                next += 1;
            }
        }
        values.push((count.high, unit));
        let mut joint = next;
        while tokens.get(joint).is_some_and(|token| token.is_mark('-')) {
            joint += 1;
        }
        if !tokens
            .get(joint)
            .is_some_and(|token| token.is_any(&["x", "by"]) || token.is_mark('×'))
        {
            break;
        }
        next = joint + 1;
        while tokens.get(next).is_some_and(|token| token.is_mark('-')) {
            next += 1;
        }
    }
    let last = values
        .iter()
        .rev()
        .find_map(|(_, unit)| *unit)
        .or_else(|| {
            (values.len() >= 2).then(|| {
                if values.iter().all(|(value, _)| *value <= 18.0) {
                    25.4
                } else {
                    10.0
                }
            })
        })?;
    let lengths: Vec<Length> = values
        .iter()
        .map(|(value, unit)| Length::millimetres(value * unit.unwrap_or(last)))
        .collect();
    let is_plausible = lengths.iter().enumerate().all(|(place, length)| {
        let least = if place == 2 { 10.0 } else { 40.0 };
        (least..900.0).contains(&length.to_millimetres())
    });
    (!lengths.is_empty() && is_plausible).then_some((lengths, next))
}

/// Millimetres in the unit that a token names.
fn unit(token: &Token) -> Option<f64> {
    if token.is_any(&["inch", "inches", "in", "ins"]) || token.is_mark('"') {
        Some(25.4)
    } else if token.is_any(&[
        "cm",
        "cms",
        "centimetre",
        "centimetres",
        "centimeter",
        "centimeters",
    ]) {
        Some(10.0)
    } else if token.is("mm") {
        Some(1.0)
    } else {
        None
    }
}

/// How many pans the words before the length name; "a" and "the" are one.
pub fn how_many(before: &[Token], length_at: usize) -> u32 {
    let end = length_at.min(before.len());
    let mut at = end;
    while at > 0 {
        at -= 1;
        if before[at].is_mark('.') || before[at].is_mark(',') && end == before.len() {
            break;
        }
        if before[at].is_any(&["two", "three", "four", "five", "six", "2", "3", "4"])
            || matches!(before[at].kind, Kind::Integer(_))
        {
            let weighs = before.get(at + 1).is_some_and(|token| {
                token.is_any(&["lb", "lbs", "g", "kg", "pound", "oz", "cup", "cups"])
                    || token.is_mark('-')
                    || token.is_mark('°')
            });
            if let Some(count) = number::count(before, at).filter(|count| {
                (1.0..=12.0).contains(&count.low) && count.low.fract() == 0.0 && !weighs
            }) {
                return count.low as u32;
            }
        }
        if before[at].is_any(&["a", "an", "the", "your", "one"]) {
            return 1;
        }
    }
    1
}

/// How many cups: "12-cup muffin tin", "two 12-hole tins", "12 muffin cases"; a tin alone has the usual number.
pub fn cups(words: &[Token], usual: u32) -> u32 {
    let mut cups = None;
    let mut tins = 1;
    for (at, token) in words.iter().enumerate() {
        let Some(value) = (match token.kind {
            Kind::Integer(value) => Some(value),
            Kind::Word if !token.is_any(&["a", "an", "half", "the"]) => number::count(words, at)
                .filter(|count| count.high == count.low)
                .map(|count| count.low),
            _ => None,
        }) else {
            continue;
        };
        let mut next = at + 1;
        while words.get(next).is_some_and(|token| token.is_mark('-')) {
            next += 1;
        }
        let is_size = words.get(next).is_some_and(|token| {
            token.is_any(&["inch", "cm", "in", "mm", "g", "ml", "oz", "minutes"])
                || token.is_mark('°')
                || token.is("f")
                || token.is("c")
        });
        if is_size || value.fract() != 0.0 || !(1.0..=96.0).contains(&value) {
            continue;
        }
        let counts_cups = words.get(next).is_some_and(|token| {
            token.is_any(&[
                "cup",
                "cups",
                "hole",
                "holes",
                "count",
                "well",
                "wells",
                "muffin",
                "cupcake",
                "paper",
                "regular",
                "standard",
                "mini",
                "large",
                "fairy",
                "bun",
                "greased",
                "jumbo",
                "silicone",
                "individual",
                "ramekins",
            ])
        });
        if value <= 4.0
            && words.get(next).is_some_and(|token| {
                token.is_number() || token.is_any(&["muffin", "standard", "six", "twelve"])
            })
            && value > 1.0
        {
            tins = value as u32;
        } else if counts_cups {
            cups = Some(value as u32);
        }
    }
    cups.unwrap_or(usual) * tins
}
