//! A weight or volume given for each of several: "2 (8-ounce) packages", "2 x 400 g tins".

use super::measure::{self, Measure};
use super::number;
use super::term::{Term, amount, modifier, past_about};
use super::token::{Kind, Token};
use super::{Amount, Unit};
use crate::baking::ingredient::Piece;

/// A weight or volume for each of several: "2 (8-ounce) packages", "1 15-oz can", "2 x 400 g tins", "2 (60 g) eggs".
pub fn each_before_container(
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
pub fn series(tokens: &[Token], at: usize) -> Option<(Vec<Amount>, usize)> {
    let mut amounts = Vec::new();
    let mut next = past_about(tokens, at);
    while let Some(count) = number::count(tokens, next) {
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
