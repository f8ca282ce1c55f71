//! Terms: one amount with its unit and what is said of the measure ("1 heaping tbsp", "2 (8-ounce) packages").
//!
//! Goes in: tokens and a place among them. Comes out: the amounts that start there. A weight that
//! is given for each piece is multiplied out here, since only here is it seen that it is for each.

use super::each::each_before_container;
use super::length::{inch_piece, is_length, is_no_amount};
use super::measure::{self, Measure};
use super::number;
use super::number_words;
use super::sum::compound;
use super::token::{Kind, Token};
use super::{Amount, Level, Unit};
use crate::baking::ingredient::{Filling, Form, Piece, PieceSize};
use crate::baking::lexicon::Lexicon;

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
    /// The token it starts at.
    pub at: usize,
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
    /// Whether its measure is only roughly known: a splash, a teacup.
    pub is_loose: bool,
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
const ABOUT: &[&str] = &[
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

/// What is said of an amount below zero.
pub const BELOW_ZERO: &str =
    "An amount below zero cannot be weighed. Write how much goes in, without the minus.";

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
        term.fault = Some(BELOW_ZERO.to_owned());
        return Some(term);
    }
    let Some(count) = number::count(tokens, next) else {
        return alone(tokens, next, found, place);
    };
    if place == Place::AfterName && !count.is_figure && !names_a_measure(tokens, count.next) {
        return None;
    }
    let first = &tokens[next];
    // "No. 1": the full stop is passed over.
    let dots = tokens[..next]
        .iter()
        .rev()
        .take_while(|token| token.is_mark('.'))
        .count();
    let is_set_apart = next.checked_sub(1 + dots).is_some_and(|before| {
        tokens[before].is_any(&[
            "into", "for", "by", "page", "step", "size", "note", "notes", "no", "number", "type",
            "grade", "recipe", "serves", "makes",
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
    // "1 (2-inch) piece fresh ginger".
    if tokens.get(next).is_some_and(|token| token.is_mark('('))
        && let Some(inner) = number::count(tokens, next + 1)
        && let Some(close) =
            (inner.next..tokens.len().min(inner.next + 4)).find(|at| tokens[*at].is_mark(')'))
        && is_length(&tokens[..close], inner.next)
        && tokens
            .get(close + 1)
            .is_some_and(|token| token.is_any(&["piece", "pieces", "knob", "chunk", "thumb"]))
    {
        return Some(Term {
            next: close + 2,
            amounts: vec![Amount {
                low: inner.low * count.low,
                high: inner.high * count.high,
                unit: Unit::Piece(Piece::Inch),
            }],
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
        found.is_loose |= measure.doubt.is_some();
        found.doubts.extend(measure.doubt.map(str::to_owned));
        found.amounts.push(amount(&count, &measure));
        found.next = words;
        if let Some((upper, after)) = number_words::or_more(tokens, words)
            && let Some(last) = found.amounts.last_mut()
        {
            last.high = last
                .high
                .max(upper.unwrap_or(last.high / measure.factor) * measure.factor);
            found.next = after;
        }
        if let Some((part, after)) = number_words::part_after_unit(tokens, words)
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
                    "egg",
                    "eggs",
                    "yolk",
                    "yolks",
                    "bananas",
                    "apples",
                    "carrots",
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
pub fn past_about(tokens: &[Token], at: usize) -> usize {
    let mut next = at;
    while let Some(token) = tokens.get(next) {
        let is_about = token.is_any(ABOUT) || token.is_mark('~') || token.is_mark('.') && next > at;
        let is_up_to = token.is("to") && next > at && tokens[next - 1].is("up");
        if !(is_about || is_up_to) {
            break;
        }
        next += 1;
    }
    next
}

/// What a word before a measure says.
#[derive(Clone, Copy)]
enum Said {
    Level(Level),
    Packed,
    Loose,
    Filling(Filling),
    Nothing,
    /// Nothing, and a full stop may follow.
    Short,
}

static SAID: Lexicon<Said> = Lexicon::new(&[
    ("scant scanty short scarce", Said::Level(Level::Scant)),
    ("heaping heaped heap", Said::Level(Level::Heaped)),
    ("rounded rounding", Said::Level(Level::Rounded)),
    (
        "generous good full brimming overflowing big",
        Said::Level(Level::Generous),
    ),
    ("level leveled levelled even", Said::Level(Level::Level)),
    ("packed", Said::Packed),
    ("loosely lightly", Said::Loose),
    (
        "firmly tightly well slightly very extra whole standard regular us imperial additional more mini medium small \
         large flat dry individual normal ordinary average sized size tiny",
        Said::Nothing,
    ),
    ("sifted", Said::Filling(Filling::Sifted)),
    ("spooned", Said::Filling(Filling::Spooned)),
    ("sm lg lge med", Said::Short),
]);

/// One word that says how a measure is filled; what it says is noted.
pub fn modifier(tokens: &[Token], at: usize, found: &mut Term) -> Option<usize> {
    let token = tokens.get(at).filter(|token| token.kind == Kind::Word)?;
    let mut next = at + 1;
    match *SAID.find(token.lower)? {
        Said::Level(level) => found.level = level,
        Said::Packed if found.form == Some(Form::Loose) => {}
        Said::Packed => found.form = Some(Form::Packed),
        Said::Loose => found.form = Some(Form::Loose),
        Said::Filling(filling) => found.filling = Some(filling),
        Said::Nothing => {}
        Said::Short => {
            let has_dot = tokens
                .get(next)
                .is_some_and(|dot| dot.is_mark('.') && !dot.spaced);
            next += usize::from(has_dot);
        }
    }
    Some(next)
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
pub fn amount(count: &number::Count, measure: &Measure) -> Amount {
    Amount {
        low: count.low * measure.factor,
        high: count.high * measure.factor,
        unit: measure.unit,
    }
}

/// A measure without a number: "pinch of salt", "scant cup of milk".
fn alone(tokens: &[Token], at: usize, mut found: Term, place: Place) -> Option<Term> {
    // "Large spoon" is one measure.
    let is_large = at == 1 && tokens[0].is_any(&["large", "great", "big"]);
    let at = at - usize::from(is_large);
    let token = tokens.get(at)?;
    let is_said = found.level != Level::Level;
    // "Cup of sugar": one, but its number may be lost.
    let is_numberless = place == Place::Start
        && token.text.len() > 2
        && at <= 1
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
    found.is_loose |= measure.doubt.is_some();
    found.doubts.extend(measure.doubt.map(str::to_owned));
    found.amounts.push(Amount {
        low: measure.factor,
        high: measure.factor,
        unit: measure.unit,
    });
    found.next = measure.next;
    Some(found)
}

/// "180 C" is no cup.
fn is_temperature(first: &Token, tokens: &[Token], at: usize, count: f64) -> bool {
    count >= 40.0
        && !first.is_any(&["a", "an"])
        && tokens
            .get(at)
            .is_some_and(|token| matches!(token.text, "C" | "c"))
}
