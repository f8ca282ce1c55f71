//! Counts: mixed numbers, fractions, number words and ranges.
//!
//! Goes in: tokens and a place among them. Comes out: the count that starts there, lower and
//! upper, and where it ends. Units are left to [`measure`](super::measure).

use super::measure;
use super::number_words::{skip_of_a, word_part, words};
use super::token::{Kind, Token};

/// The largest count that is believed.
pub const LARGEST: f64 = 1e6;

/// A count as it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Count {
    /// Lower end.
    pub low: f64,
    /// Upper end; equal to `low` where no range is given.
    pub high: f64,
    /// The token after it.
    pub next: usize,
    /// What is unsure about it.
    pub doubt: Option<String>,
    /// Why it cannot be used, if it cannot; the ends are zero then.
    pub fault: Option<String>,
    /// Whether it is written in figures.
    pub is_figure: bool,
}

/// One number without a range.
pub struct Single {
    pub value: f64,
    pub next: usize,
    pub doubt: Option<String>,
    pub fault: Option<String>,
    pub is_figure: bool,
}

impl Single {
    pub fn sure(value: f64, next: usize, is_figure: bool) -> Option<Self> {
        let fault = (!value.is_finite() || value > LARGEST)
            .then(|| "The amount is larger than a million, which nobody bakes. Write the number as it stands in the recipe.".to_owned());
        Some(Self {
            value: if fault.is_some() { 0.0 } else { value },
            next,
            doubt: None,
            fault,
            is_figure,
        })
    }
}

/// The count that starts at a token.
pub fn count(tokens: &[Token], at: usize) -> Option<Count> {
    if tokens.get(at)?.is("between") {
        return between(tokens, at + 1);
    }
    let first = single(tokens, at)?;
    let mut count = Count {
        low: first.value,
        high: first.value,
        next: first.next,
        doubt: first.doubt,
        fault: first.fault,
        is_figure: first.is_figure,
    };
    if let Some(last) = range_end(tokens, first.next)
        && last.value > first.value
        && !is_piece_weight(tokens, first.next, &first.value, &last)
    {
        count.high = last.value;
        count.next = last.next;
        count.fault = count.fault.or(last.fault);
        count.doubt = count.doubt.or(last.doubt);
    } else if let Some(last) = range_end(tokens, first.next)
        && last.fault.is_some()
    {
        count.fault = count.fault.or(last.fault);
        count.next = last.next;
    }
    Some(count)
}

/// "Between 2 and 3".
fn between(tokens: &[Token], at: usize) -> Option<Count> {
    let joint = (at..tokens.len().min(at + 4)).find(|at| tokens[*at].is("and"))?;
    let (first, last) = (single(&tokens[..joint], at)?, single(tokens, joint + 1)?);
    (first.next == joint && last.value > first.value).then_some(Count {
        low: first.value,
        high: last.value,
        next: last.next,
        doubt: first.doubt.or(last.doubt),
        fault: first.fault.or(last.fault),
        is_figure: first.is_figure,
    })
}

/// The number after "-", "to" or "or".
fn range_end(tokens: &[Token], at: usize) -> Option<Single> {
    let mut after = at;
    let joined = tokens.get(after)?;
    if joined.is_mark('-') {
        after += 1;
        if tokens.get(after).is_some_and(|token| token.is("to"))
            && tokens
                .get(after + 1)
                .is_some_and(|token| token.is_mark('-'))
        {
            after += 2;
        }
    } else if joined.is_any(&["to", "or"]) {
        after += 1;
        if tokens
            .get(after)
            .is_some_and(|token| token.is_any(&["about", "even"]))
        {
            after += 1;
        }
    } else {
        return None;
    }
    let token = tokens.get(after)?;
    if token.is_any(&["a", "an"]) {
        return None;
    }
    single(tokens, after)
}

/// Whether "2 - 8 oz packages" stands here: the second number is the weight of each, not the end of a range.
fn is_piece_weight(tokens: &[Token], dash: usize, first: &f64, last: &Single) -> bool {
    if !tokens[dash].is_mark('-') || first.fract() != 0.0 {
        return false;
    }
    let mut unit_at = last.next;
    if tokens.get(unit_at).is_some_and(|token| token.is_mark('-')) {
        unit_at += 1;
    }
    let Some(unit) = measure::measure(tokens, unit_at) else {
        return false;
    };
    let is_container = tokens[unit.next..]
        .iter()
        .take(2)
        .any(|token| token.kind == Kind::Word && measure::is_container(token.lower));
    let wide = if tokens.get(dash + 1).is_some_and(|token| token.spaced) {
        2.0
    } else {
        3.0
    };
    unit.weighs_or_fills() && is_container && last.value / first >= wide
}

/// One number: figures, figures with a fraction, or words.
fn single(tokens: &[Token], at: usize) -> Option<Single> {
    match tokens.get(at)?.kind {
        Kind::Integer(whole) => {
            if let Some((part, next)) = part_after(tokens, at + 1) {
                return Single::sure(whole + part, next, true);
            }
            if tokens
                .get(at + 1)
                .is_some_and(|token| token.is_any(&["dozen", "doz"]))
            {
                let dot = usize::from(tokens.get(at + 2).is_some_and(|token| token.is_mark('.')));
                return Single::sure(whole * 12.0, at + 2 + dot, true);
            }
            if let Some(Kind::Integer(torn)) = tokens.get(at + 1).map(|token| token.kind)
                && let Some(part) = torn_fraction(torn)
                && measure::measure(tokens, at + 2).is_some_and(|unit| unit.weighs_or_fills())
            {
                let mut single = Single::sure(whole + part, at + 2, true)?;
                single.doubt = Some(format!(
                    "Read \"{} {}\" with a fraction whose bar was lost in copying.",
                    tokens[at].text,
                    tokens[at + 1].text
                ));
                return Some(single);
            }
            Single::sure(whole, at + 1, true)
        }
        Kind::Decimal(value) => {
            let mut single = Single::sure(value, at + 1, true)?;
            let text = tokens[at].text;
            let has_three = text
                .rsplit_once('.')
                .is_some_and(|(_, decimals)| decimals.len() == 3);
            let is_metric = tokens
                .get(at + 1)
                .is_some_and(|unit| unit.is_any(&["g", "gr", "gram", "grams", "ml"]));
            if has_three && is_metric {
                single.doubt = Some(format!(
                    "\"{text}\" is read with a decimal point. Write {} if thousands are meant.",
                    text.replace('.', "")
                ));
            }
            Some(single)
        }
        Kind::Fraction(over, under) => {
            // "1/3 of a cup"; "1/2 of a banana" comes out right without.
            let mut single = fraction(over, under, at + 1)?;
            let after = skip_of_a(tokens, at + 1);
            if after > at + 1 && measure::measure(tokens, after).is_some() {
                single.next = after;
            }
            Some(single)
        }
        Kind::Word => words(tokens, at),
        Kind::Mark(_) => None,
    }
}

/// A kitchen fraction that lost its bar: 12 is 1/2, 34 is 3/4.
fn torn_fraction(torn: f64) -> Option<f64> {
    const TORN: [(f64, f64); 5] = [
        (12.0, 1.0 / 2.0),
        (13.0, 1.0 / 3.0),
        (14.0, 1.0 / 4.0),
        (23.0, 2.0 / 3.0),
        (34.0, 3.0 / 4.0),
    ];
    TORN.iter()
        .find(|(digits, _)| *digits == torn)
        .map(|(_, part)| *part)
}

/// A fraction that stands alone. "11/2" is "1 1/2" with its blank lost, as happens when pages are copied.
fn fraction(over: f64, under: f64, next: usize) -> Option<Single> {
    if under == 0.0 {
        return Some(Single {
            value: 0.0,
            next,
            doubt: None,
            fault: Some(format!(
                "{over}/0 is no number: nothing can be divided by zero. Write a fraction such as 1/2."
            )),
            is_figure: true,
        });
    }
    let (tens, ones) = ((over / 10.0).floor(), over % 10.0);
    if tens >= 1.0 && ones >= 1.0 && ones < under && [2.0, 3.0, 4.0, 8.0].contains(&under) {
        let mut single = Single::sure(tens + ones / under, next, true)?;
        single.doubt = Some(format!(
            "Read {over}/{under} as {tens} {ones}/{under}, a blank lost in copying."
        ));
        return Some(single);
    }
    Single::sure(over / under, next, true)
}

/// The fraction that follows a whole number: "1/2", "-1/2", "and 1/2", "& 1/2", "and a half".
pub fn part_after(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
    let proper = |at: usize| match tokens.get(at)?.kind {
        Kind::Fraction(over, under) if over < under => Some((over / under, at + 1)),
        _ => None,
    };
    let token = tokens.get(at)?;
    if let Some(found) = proper(at) {
        return Some(found);
    }
    let is_joint =
        token.is_mark('-') || token.is_mark('&') || token.is_mark('+') || token.is("and");
    if !is_joint {
        return None;
    }
    if let Some(found) = proper(at + 1) {
        return Some(found);
    }
    if !token.is("and") && !token.is_mark('-') && !token.is_mark('&') {
        return None;
    }
    word_part(tokens, at + 1)
}

#[cfg(test)]
mod tests {
    use super::count;
    use crate::baking::recipe::token::tokens;

    #[track_caller]
    fn reads(text: &str, low: f64, high: f64, rest: &str) {
        let lower = text.to_ascii_lowercase();
        let tokens = tokens(text, &lower);
        let count = count(&tokens, 0).unwrap_or_else(|| panic!("no count in {text:?}"));
        let left = tokens
            .get(count.next)
            .map_or("", |token| &text[token.start..]);
        assert!(
            (count.low - low).abs() < 1e-9 && (count.high - high).abs() < 1e-9,
            "{text}: {} to {}",
            count.low,
            count.high
        );
        assert_eq!(left, rest, "{text}");
    }

    #[test]
    fn counts_of_every_kind() {
        reads("1 1/2 cups", 1.5, 1.5, "cups");
        reads("1-1/2 cups", 1.5, 1.5, "cups");
        reads("1 and 1/2 cups", 1.5, 1.5, "cups");
        reads("1 & 1/2 cups", 1.5, 1.5, "cups");
        reads("one and a half cups", 1.5, 1.5, "cups");
        reads("one and one-half cups", 1.5, 1.5, "cups");
        reads("half a cup", 0.5, 0.5, "cup");
        reads("a half cup", 0.5, 0.5, "cup");
        reads("one half cup", 0.5, 0.5, "cup");
        reads("three quarters of a cup", 0.75, 0.75, "cup");
        reads("three-fourths cup", 0.75, 0.75, "cup");
        reads("two thirds cup", 2.0 / 3.0, 2.0 / 3.0, "cup");
        reads("a quarter of a teaspoon", 0.25, 0.25, "teaspoon");
        reads("a dozen eggs", 12.0, 12.0, "eggs");
        reads("half a dozen eggs", 6.0, 6.0, "eggs");
        reads("2-3 eggs", 2.0, 3.0, "eggs");
        reads("2 to 3 eggs", 2.0, 3.0, "eggs");
        reads("two or three eggs", 2.0, 3.0, "eggs");
        reads("1-1 1/2 cups", 1.0, 1.5, "cups");
        reads("1/2-3/4 cup", 0.5, 0.75, "cup");
        reads("2-1/2 to 3 cups", 2.5, 3.0, "cups");
        reads("11/2 cups", 1.5, 1.5, "cups");
        reads("2 - 8 oz packages", 2.0, 2.0, "- 8 oz packages");
        reads("a cup", 1.0, 1.0, "cup");
    }

    #[test]
    fn names_are_no_counts() {
        for text in [
            "half and half",
            "half-and-half",
            "half-fat cream",
            "one-bowl cake",
            "five-spice powder",
        ] {
            let lower = text.to_ascii_lowercase();
            assert_eq!(count(&tokens(text, &lower), 0), None, "{text}");
        }
    }
}
