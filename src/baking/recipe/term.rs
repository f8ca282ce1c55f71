//! Terms: one amount with its unit and what is said of the measure ("1 heaping tbsp", "2 (8-ounce) packages").
//!
//! Goes in: tokens and a place among them. Comes out: the amounts that start there. A weight that
//! is given for each piece is multiplied out here, since only here is it seen that it is for each.

use super::measure::{self, Measure};
use super::number::{self, LARGEST};
use super::token::{Kind, Token};
use super::{Amount, Level, Unit, VolumeUnit};
use crate::baking::ingredient::{Filling, Form, Piece, PieceSize};

/// Where a term is looked for: it decides how much must be there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// At the start of a line or bracket: a bare number will do.
    Start,
    /// After a name: a number needs a unit, or nothing after it.
    AfterName,
    /// After "plus" or "and": a bare number will do.
    Joined,
}

/// A term as it was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Term {
    /// The amounts, the count of pieces before their weight.
    pub amounts: Vec<Amount>,
    /// How full the measure is.
    pub level: Level,
    /// "Packed cup", "loosely packed cup".
    pub form: Option<Form>,
    /// "Sifted cup".
    pub filling: Option<Filling>,
    /// "2 large handfuls".
    pub size: Option<PieceSize>,
    /// Whether it is a bare number.
    pub is_bare: bool,
    /// The token after it.
    pub next: usize,
    /// What is unsure about it.
    pub doubts: Vec<String>,
    /// Why it cannot be used.
    pub fault: Option<String>,
}

/// Words before an amount that do not change it.
const ABOUT: [&str; 17] = [
    "about",
    "approx",
    "approximately",
    "around",
    "roughly",
    "circa",
    "ca",
    "almost",
    "nearly",
    "just",
    "over",
    "under",
    "exactly",
    "up",
    "at",
    "least",
    "another",
];

/// The term that starts at a token.
pub fn term(tokens: &[Token], at: usize, place: Place) -> Option<Term> {
    let mut found = Term::default();
    let mut next = past_about(tokens, at);
    while let Some(after) = modifier(tokens, next, &mut found) {
        next = after;
    }
    next = past_about(tokens, next);
    let is_negative = tokens
        .get(next)
        .is_some_and(|token| token.is_mark('-') && token.spaced)
        && tokens
            .get(next + 1)
            .is_some_and(|token| token.is_number() && !token.spaced)
        || tokens
            .get(next)
            .is_some_and(|token| token.is_any(&["minus", "negative"]))
            && place == Place::Start;
    if is_negative && tokens.get(next + 1).is_some_and(Token::is_number) {
        let mut term = term(tokens, next + 1, place)?;
        term.fault = Some(
            "An amount below zero cannot be weighed. Write how much goes in, without the minus."
                .to_owned(),
        );
        return Some(term);
    }
    let Some(count) = number::count(tokens, next) else {
        return alone(tokens, next, found, place);
    };
    if place == Place::AfterName && !count.is_figure && !names_a_measure(tokens, count.next) {
        return None;
    }
    let first = &tokens[next];
    let is_set_apart = at.checked_sub(1).is_some_and(|before| {
        tokens[before].is_any(&[
            "into", "for", "by", "page", "step", "note", "notes", "no", "number", "type", "grade",
            "recipe", "serves", "makes",
        ])
    });
    if is_set_apart && place != Place::Start {
        return None;
    }
    next = count.next;
    if is_no_amount(tokens, next) {
        return None;
    }
    found.doubts.extend(count.doubt.clone());
    found.fault = count.fault.clone();
    // "2 x 400 g", "3 x eggs", "eggs x 3" is seen by the caller.
    let mut is_times = false;
    if tokens
        .get(next)
        .is_some_and(|token| token.is("x") || token.is_mark('×'))
    {
        next += 1;
        is_times = true;
    }
    if let Some(length) = inch_piece(tokens, next, count.low, count.high) {
        return Some(Term {
            next: length.1,
            amounts: vec![length.0],
            ..found
        });
    }
    if is_length(tokens, next) {
        return None;
    }
    if let Some(each) = each_before_container(tokens, next, &count, is_times, &mut found) {
        return Some(each);
    }
    if is_times && tokens.get(next).is_some_and(Token::is_number) {
        return None;
    }
    let dash = usize::from(
        tokens
            .get(next)
            .is_some_and(|token| token.is_mark('-') && !token.spaced),
    );
    if let Some((measure, words)) = measured(tokens, next + dash, &mut found)
        && !is_temperature(first, tokens, next + dash, count.low)
    {
        // "10-ounce" takes its dash along; "flour 2 - cup" does not happen.
        if dash == 1 && measure.next < next {
            return None;
        }
        found.doubts.extend(measure.doubt.map(str::to_owned));
        found.amounts.push(amount(&count, &measure));
        found.next = words;
        if let Some((upper, after)) = number::or_more(tokens, words)
            && let Some(last) = found.amounts.last_mut()
        {
            last.high = last
                .high
                .max(upper.unwrap_or(last.high / measure.factor) * measure.factor);
            found.next = after;
        }
        if let Some((part, after)) = number::part_after_unit(tokens, words)
            && let Some(last) = found.amounts.last_mut()
        {
            last.low += part * measure.factor;
            last.high += part * measure.factor;
            found.next = after;
        }
        compound(tokens, &mut found);
        if measure.weighs_or_fills() {
            found.next = past_container(tokens, found.next);
        }
        return Some(found);
    }
    found.is_bare = true;
    match place {
        Place::Start | Place::Joined => {}
        Place::AfterName => {
            let ends = tokens.get(next).is_none_or(|token| {
                matches!(
                    token.kind,
                    Kind::Mark(',' | '(' | ')' | '|' | ';' | '.' | ']' | '[')
                )
            });
            let piece = tokens
                .get(next)
                .filter(|token| {
                    token.kind == Kind::Word
                        && tokens
                            .get(next + 1)
                            .is_none_or(|after| matches!(after.kind, Kind::Mark(_)))
                })
                .and_then(|token| measure::piece(token.lower));
            if let Some(piece) = piece {
                found.amounts.push(Amount {
                    low: count.low,
                    high: count.high,
                    unit: Unit::Piece(piece),
                });
                found.is_bare = false;
                found.next = next + 1;
                return Some(found);
            }
            // "Eggs, 2 beaten", "eggs 3 large".
            let follows_break = at
                .checked_sub(1)
                .is_some_and(|before| matches!(tokens[before].kind, Kind::Mark(',' | ':' | '|')))
                && !has_amount_before(tokens, at);
            let is_sized = tokens.get(next).is_some_and(|token| {
                token.is_any(&[
                    "large",
                    "medium",
                    "small",
                    "whole",
                    "beaten",
                    "ripe",
                    "extra",
                    "xl",
                    "jumbo",
                    "lg",
                    "separated",
                ])
            });
            if !(ends || follows_break || is_sized) {
                return None;
            }
        }
    }
    found.amounts.push(Amount {
        low: count.low,
        high: count.high,
        unit: Unit::Piece(Piece::Each),
    });
    found.next = next;
    Some(found)
}

/// Whether a number stands before this place.
fn has_amount_before(tokens: &[Token], at: usize) -> bool {
    tokens[..at].iter().any(Token::is_number)
}

/// Past "about", "up to", "~".
fn past_about(tokens: &[Token], at: usize) -> usize {
    let mut next = at;
    while let Some(token) = tokens.get(next) {
        let is_about =
            token.is_any(&ABOUT) || token.is_mark('~') || token.is_mark('.') && next > at;
        let is_up_to = token.is("to") && next > at && tokens[next - 1].is("up");
        if !(is_about || is_up_to) {
            break;
        }
        next += 1;
    }
    next
}

/// One word that says how a measure is filled; what it says is noted.
fn modifier(tokens: &[Token], at: usize, found: &mut Term) -> Option<usize> {
    let token = tokens.get(at).filter(|token| token.kind == Kind::Word)?;
    match token.lower {
        "scant" | "scanty" | "short" | "scarce" => found.level = Level::Scant,
        "heaping" | "heaped" | "heap" => found.level = Level::Heaped,
        "rounded" | "rounding" => found.level = Level::Rounded,
        "generous" | "good" | "full" | "brimming" | "overflowing" | "big" => {
            found.level = Level::Generous
        }
        "level" | "leveled" | "levelled" | "even" => found.level = Level::Level,
        "packed" => {
            if found.form != Some(Form::Loose) {
                found.form = Some(Form::Packed);
            }
        }
        "loosely" | "lightly" => found.form = Some(Form::Loose),
        "firmly" | "tightly" | "well" | "slightly" | "very" | "extra" | "whole" | "standard"
        | "regular" | "us" | "imperial" | "additional" | "more" | "mini" | "medium" | "small"
        | "large" | "flat" | "dry" | "individual" | "normal" | "ordinary" | "average" | "sized"
        | "size" | "tiny" => {}
        "sifted" => found.filling = Some(Filling::Sifted),
        "spooned" => found.filling = Some(Filling::Spooned),
        "sm" | "lg" | "lge" | "med" => {}
        _ => return None,
    }
    let has_dot = matches!(token.lower, "sm" | "lg" | "lge" | "med")
        && tokens
            .get(at + 1)
            .is_some_and(|dot| dot.is_mark('.') && !dot.spaced);
    Some(at + 1 + usize::from(has_dot))
}

/// A measure, with at most four words before it that say how full it is.
fn measured(tokens: &[Token], at: usize, found: &mut Term) -> Option<(Measure, usize)> {
    let mut trial = found.clone();
    let mut next = at;
    for _ in 0..5 {
        let is_mini = tokens
            .get(next)
            .is_some_and(|token| token.is_any(&["mini", "whole"]));
        if let Some(measure) = measure::measure(tokens, next).filter(|_| !is_mini) {
            *found = trial;
            return Some((measure, measure.next));
        }
        let mut after = modifier(tokens, next, &mut trial)?;
        if tokens.get(after).is_some_and(|token| token.is_mark('-')) {
            after += 1;
        }
        next = after;
    }
    None
}

/// Past the vessel in "170 g jar strawberry jam": it adds nothing to the weight.
fn past_container(tokens: &[Token], at: usize) -> usize {
    let is_vessel = tokens.get(at).is_some_and(|token| {
        token.kind == Kind::Word
            && matches!(
                measure::piece(token.lower),
                Some(Piece::Packet | Piece::Can | Piece::Pot | Piece::Block | Piece::Bar)
            )
            || token.is("cup")
    });
    let dot = usize::from(
        tokens
            .get(at + 1)
            .is_some_and(|token| token.is_mark('.') && !token.spaced),
    );
    if is_vessel
        && tokens
            .get(at + 1 + dot)
            .is_some_and(|next| next.kind == Kind::Word)
    {
        at + 1 + dot
    } else {
        at
    }
}

/// Whether a measure stands here, words about it aside.
fn names_a_measure(tokens: &[Token], at: usize) -> bool {
    measured(tokens, at, &mut Term::default()).is_some()
}

/// An amount of a measure.
fn amount(count: &number::Count, measure: &Measure) -> Amount {
    Amount {
        low: count.low * measure.factor,
        high: count.high * measure.factor,
        unit: measure.unit,
    }
}

/// A measure without a number: "pinch of salt", "scant cup of milk".
fn alone(tokens: &[Token], at: usize, mut found: Term, place: Place) -> Option<Term> {
    let token = tokens.get(at)?;
    let is_said = found.level != Level::Level;
    // "Cup of sugar": one, but its number may be lost.
    let is_numberless = place == Place::Start
        && token.text.len() > 2
        && at == 0
        && !measure::stands_alone(token.lower)
        && measure::measure(tokens, at).is_some_and(|measure| {
            matches!(measure.unit, Unit::Volume(_))
                && tokens
                    .get(measure.next)
                    .is_some_and(|next| next.kind == Kind::Word)
        });
    if !(measure::stands_alone(token.lower) || is_said || is_numberless) || token.kind != Kind::Word
    {
        return None;
    }
    if is_numberless {
        found.doubts.push(format!(
            "No number stands before \"{}\"; it is taken as 1.",
            token.text
        ));
    }
    // "For sprinkling": in the middle of a line such a word starts an amount only after a break.
    let follows_word = at
        .checked_sub(1)
        .is_some_and(|before| tokens[before].kind == Kind::Word);
    if place == Place::AfterName && (is_said || follows_word) {
        return None;
    }
    let measure = measure::measure(tokens, at)?;
    found.doubts.extend(measure.doubt.map(str::to_owned));
    found.amounts.push(Amount {
        low: measure.factor,
        high: measure.factor,
        unit: measure.unit,
    });
    found.next = measure.next;
    Some(found)
}

/// Whether the number counts something that is no amount: minutes, degrees, servings, per cent, ways.
fn is_no_amount(tokens: &[Token], at: usize) -> bool {
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
fn is_length(tokens: &[Token], at: usize) -> bool {
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
fn inch_piece(tokens: &[Token], at: usize, low: f64, high: f64) -> Option<(Amount, usize)> {
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

/// "180 C" is no cup.
fn is_temperature(first: &Token, tokens: &[Token], at: usize, count: f64) -> bool {
    count >= 40.0
        && !first.is_any(&["a", "an"])
        && tokens
            .get(at)
            .is_some_and(|token| matches!(token.text, "C" | "c"))
}

/// A weight or volume for each of several: "2 (8-ounce) packages", "1 15-oz can", "2 x 400 g tins", "2 (60 g) eggs".
fn each_before_container(
    tokens: &[Token],
    at: usize,
    count: &number::Count,
    is_times: bool,
    found: &mut Term,
) -> Option<Term> {
    let mut next = at;
    let mut trial = found.clone();
    while let Some(after) = modifier(tokens, next, &mut trial) {
        next = after;
    }
    let bracketed = tokens
        .get(next)
        .is_some_and(|token| token.is_mark('(') || token.is_mark('['));
    let dashed = tokens
        .get(next)
        .is_some_and(|token| token.is_mark('-') && token.spaced)
        || tokens.get(next).is_some_and(|token| token.is_mark('-'))
            && tokens.get(next + 1).is_some_and(Token::is_number);
    next += usize::from(bracketed || dashed);
    if !tokens
        .get(past_about(tokens, next))
        .is_some_and(Token::is_number)
    {
        return None;
    }
    let (inner, mut after) = series(tokens, next)?;
    if bracketed {
        let closes = tokens
            .get(after)
            .is_some_and(|token| token.is_mark(')') || token.is_mark(']'));
        let says_each = tokens
            .get(after)
            .is_some_and(|token| token.is_any(&["each", "size", "net", "weight", "sized"]));
        if says_each {
            while tokens.get(after).is_some_and(|token| {
                token.is_any(&["each", "size", "net", "weight", "sized", "wt"])
            }) {
                after += 1;
            }
        }
        if !tokens
            .get(after)
            .is_some_and(|token| token.is_mark(')') || token.is_mark(']'))
        {
            return None;
        }
        let _ = closes;
        after += 1;
    }
    while tokens.get(after).is_some_and(|token| token.is_mark('-')) {
        after += 1;
    }
    let mut unit = Unit::Piece(Piece::Each);
    let mut has_container = false;
    // "14-ounce sweetened can" has a word between; "2 (60 g) eggs" has no container at all.
    let mut container_at = after;
    while let Some(past) = modifier(tokens, container_at, &mut trial) {
        container_at = past;
    }
    if let Some(measure) = tokens
        .get(container_at)
        .filter(|token| {
            token.kind == Kind::Word
                && (measure::is_container(token.lower)
                    || token.is_any(&[
                        "stick", "sticks", "square", "squares", "slice", "slices", "bars", "ball",
                        "log",
                    ]))
        })
        .and_then(|token| measure::piece(token.lower).map(|piece| (piece, container_at)))
    {
        unit = Unit::Piece(measure.0);
        has_container = true;
        after = container_at + 1;
        if tokens
            .get(after)
            .is_some_and(|token| token.is_mark('.') && !token.spaced)
        {
            after += 1;
        }
    }
    // "1 (8 oz) cup" would be a dual amount of a cup.
    if bracketed
        && !has_container
        && measure::measure(tokens, after).is_some_and(|measure| measure.weighs_or_fills())
    {
        return None;
    }
    if !(has_container || bracketed || is_times || dashed || count.is_figure) {
        return None;
    }
    let mass_only = inner
        .iter()
        .any(|amount| matches!(amount.unit, Unit::Mass(_)));
    let mut amounts = Vec::new();
    if has_container || mass_only {
        amounts.push(Amount {
            low: count.low,
            high: count.high,
            unit,
        });
    }
    amounts.extend(inner.iter().map(|each| Amount {
        low: each.low * count.low,
        high: each.high * count.high,
        unit: each.unit,
    }));
    Some(Term {
        amounts,
        next: after,
        is_bare: false,
        ..found.clone()
    })
}

/// Weights and volumes in a row: "14 oz / 400 g". At least one, pieces not among them.
fn series(tokens: &[Token], at: usize) -> Option<(Vec<Amount>, usize)> {
    let mut amounts = Vec::new();
    let mut next = past_about(tokens, at);
    loop {
        let Some(count) = number::count(tokens, next) else {
            break;
        };
        let mut unit_at = count.next;
        while tokens.get(unit_at).is_some_and(|token| token.is_mark('-')) {
            unit_at += 1;
        }
        let Some(measure) = measure::measure(tokens, unit_at).filter(Measure::weighs_or_fills)
        else {
            break;
        };
        if count.fault.is_some() {
            break;
        }
        amounts.push(amount(&count, &measure));
        next = measure.next;
        let is_joint = tokens.get(next).is_some_and(|token| {
            matches!(
                token.kind,
                Kind::Mark('/' | '|' | ',' | ';' | '=' | '-' | '(')
            ) || token.is("or")
        });
        if !is_joint
            || !tokens
                .get(past_about(tokens, next + 1))
                .is_some_and(Token::is_number)
        {
            break;
        }
        next = past_about(tokens, next + 1);
    }
    (!amounts.is_empty()).then_some((amounts, next))
}

/// "1 lb 4 oz", "1 cup 2 tablespoons": a smaller unit of the same kind right after belongs to the amount.
fn compound(tokens: &[Token], found: &mut Term) {
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
fn is_pair_of_volumes(large: VolumeUnit, small: VolumeUnit) -> bool {
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
fn is_about(one: f64, two: f64) -> bool {
    (one - two).abs() < 1e-6 * two
}

/// Adds a second term to an amount of the same kind, or takes it off: "1 cup plus 2 tablespoons".
/// False where the two cannot be put together.
pub fn add(
    amount: &mut Amount,
    other: &Amount,
    sign: f64,
    region: crate::baking::ingredient::Region,
) -> bool {
    // A wrapped US stick of fat is 8 tablespoons or 4 ounces.
    let ratio = match (amount.unit, other.unit) {
        (one, two) if one == two => 1.0,
        (Unit::Mass(one), Unit::Mass(two)) => two / one,
        (Unit::Volume(one), Unit::Volume(two)) => two.volume(region) / one.volume(region),
        (Unit::Piece(Piece::Stick), Unit::Volume(two)) => {
            two.volume(region) / (VolumeUnit::Tablespoon.volume(region) * 8.0)
        }
        (Unit::Volume(one), Unit::Piece(Piece::Stick)) => {
            VolumeUnit::Tablespoon.volume(region) * 8.0 / one.volume(region)
        }
        (Unit::Piece(Piece::Stick), Unit::Mass(two)) => {
            two / (crate::baking::quantity::Mass::OUNCE * 4.0)
        }
        _ => return false,
    };
    let (low, high) = (
        amount.low + sign * other.low * ratio,
        amount.high + sign * other.high * ratio,
    );
    if !(low.is_finite() && high.is_finite() && low >= 0.0 && high <= LARGEST) {
        return false;
    }
    (amount.low, amount.high) = (low.min(high), low.max(high));
    true
}
