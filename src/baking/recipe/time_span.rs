//! Lengths of time as they are written: "30 minutes", "1 hour 10 minutes", "45 minutes to 1 hour".

use super::number::{self, count};
use super::token::{Kind, Token};

/// A length of time as written.
pub struct TimeSpan {
    /// The shortest, minutes.
    pub low: f64,
    /// The longest.
    pub high: f64,
    /// "10 more minutes".
    pub is_further: bool,
    /// The token after it.
    pub next: usize,
}

/// The length of time that starts at a token: "30 minutes", "1 hour 10 minutes", "45 minutes to 1 hour".
pub fn time_span(tokens: &[Token], at: usize) -> Option<TimeSpan> {
    let first = one_span(tokens, at)?;
    let is_joint = tokens
        .get(first.next)
        .is_some_and(|token| token.is_mark('-') || token.is_any(&["to", "or"]));
    match is_joint.then(|| one_span(tokens, first.next + 1)).flatten() {
        Some(last) if last.high > first.low => Some(TimeSpan {
            high: last.high,
            next: last.next,
            ..first
        }),
        _ => Some(first),
    }
}

/// One length of time, hours and minutes together.
fn one_span(tokens: &[Token], at: usize) -> Option<TimeSpan> {
    let (mut low, mut high, mut next) = counts(tokens, at)?;
    while tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    let is_further = tokens
        .get(next)
        .is_some_and(|token| token.is_any(&["more", "further", "additional", "extra"]));
    next += usize::from(is_further);
    let minutes = unit(tokens.get(next)?)?;
    next += 1;
    (low, high) = (low * minutes, high * minutes);
    if minutes > 1.0
        && let Some((more_low, more_high, after)) = minutes_after(tokens, next)
    {
        (low, high, next) = (high + more_low, high + more_high, after);
    }
    Some(TimeSpan {
        low,
        high,
        is_further,
        next,
    })
}

/// A count or a range of counts: "30", "25 to 30", and "25/30", which is no fraction.
fn counts(tokens: &[Token], at: usize) -> Option<(f64, f64, usize)> {
    match tokens.get(at)?.kind {
        Kind::Fraction(low, high) if low >= 5.0 && low < high => Some((low, high, at + 1)),
        Kind::Mark(_) => None,
        // "A few minutes more" is no figure.
        _ if tokens[at..]
            .iter()
            .take(2)
            .any(|token| token.is_any(&["few", "several", "couple"])) =>
        {
            None
        }
        _ => {
            let count = count(tokens, at)?;
            count
                .fault
                .is_none()
                .then_some((count.low, count.high, count.next))
        }
    }
}

/// Minutes in a unit of time.
fn unit(token: &Token) -> Option<f64> {
    if token.is_any(&["min", "mins", "minute", "minutes"]) {
        Some(1.0)
    } else {
        token
            .is_any(&["h", "hr", "hrs", "hour", "hours"])
            .then_some(60.0)
    }
}

/// The minutes that follow hours: "and 10 minutes", "10 min", "and a half", "10" close behind.
fn minutes_after(tokens: &[Token], at: usize) -> Option<(f64, f64, usize)> {
    if let Some((part, next)) = number::part_after(tokens, at)
        && tokens.get(at).is_some_and(|token| token.is("and"))
        && tokens.get(next).is_none_or(|token| unit(token).is_none())
    {
        return Some((part * 60.0, part * 60.0, next));
    }
    let joint = tokens
        .get(at)
        .is_some_and(|token| token.is_any(&["and"]) || token.is_mark(',') || token.is_mark('&'));
    let from = at + usize::from(joint);
    let first = tokens.get(from)?;
    let (low, high, next) = counts(tokens, from)?;
    match tokens.get(next).and_then(unit) {
        Some(1.0) => Some((low, high, next + 1)),
        None if !joint && !first.spaced && high < 60.0 => Some((low, high, next)),
        _ => None,
    }
}
