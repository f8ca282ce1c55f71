//! Counts: mixed numbers, fractions, number words and ranges.
//!
//! Goes in: tokens and a place among them. Comes out: the count that starts there, lower and
//! upper, and where it ends. Units are left to [`measure`](super::measure).

use super::measure;
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
struct Single {
    value: f64,
    next: usize,
    doubt: Option<String>,
    fault: Option<String>,
    is_figure: bool,
}

impl Single {
    fn sure(value: f64, next: usize, is_figure: bool) -> Option<Self> {
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
            Single::sure(whole, at + 1, true)
        }
        Kind::Decimal(value) => Single::sure(value, at + 1, true),
        Kind::Fraction(over, under) => fraction(over, under, at + 1),
        Kind::Word => words(tokens, at),
        Kind::Mark(_) => None,
    }
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
fn part_after(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
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

/// "a half", "one half", "three quarters", "two-thirds", "a quarter".
fn word_part(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
    let mut next = at;
    let token = tokens.get(next)?;
    let over = if token.is_any(&["a", "an"]) {
        1.0
    } else {
        match small_number(token) {
            Some(value) if value <= 7.0 => value,
            _ => return None,
        }
    };
    next += 1;
    if tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    let under = denominator(tokens.get(next)?)?;
    // "three quarter" is a fraction, "a third egg" is not.
    (over < under
        && (over > 1.0
            || !tokens[at].is_any(&["a", "an"])
            || under != 3.0
            || is_measured(tokens, next + 1)))
    .then_some((over / under, next + 1))
}

/// What "and a half" after a unit adds to it, and the token after: "one cup and a half of flour".
/// A measure after the part would make it an amount of its own ("1 cup and a half teaspoon").
pub fn part_after_unit(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
    if !tokens.get(at)?.is("and") {
        return None;
    }
    let (part, next) = word_part(tokens, at + 1)?;
    measure::measure(tokens, skip_of_a(tokens, next))
        .is_none()
        .then_some((part, next))
}

/// What "or two", "or so" after a unit makes of its upper end, and the token after.
pub fn or_more(tokens: &[Token], at: usize) -> Option<(Option<f64>, usize)> {
    if !tokens.get(at)?.is("or") {
        return None;
    }
    let token = tokens.get(at + 1)?;
    if token.is_any(&["so", "more", "less"]) {
        return Some((None, at + 2));
    }
    let value = small_number(token)?;
    let is_apart = measure::measure(tokens, at + 2).is_none()
        && !tokens.get(at + 2).is_some_and(Token::is_number);
    let ends = tokens
        .get(at + 2)
        .is_none_or(|next| next.is("of") || next.kind != Kind::Word);
    (is_apart && ends).then_some((Some(value), at + 2))
}

/// The number that a word names.
fn small_number(token: &Token) -> Option<f64> {
    const NAMES: [&str; 21] = [
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
        "twenty",
    ];
    if token.kind != Kind::Word {
        return None;
    }
    match token.lower {
        "thirty" => Some(30.0),
        "forty" => Some(40.0),
        "fifty" => Some(50.0),
        lower => NAMES
            .iter()
            .position(|name| *name == lower)
            .map(|value| value as f64),
    }
}

/// What a word of parts divides by.
fn denominator(token: &Token) -> Option<f64> {
    if token.kind != Kind::Word {
        return None;
    }
    Some(match token.lower {
        "half" | "halves" => 2.0,
        "third" | "thirds" => 3.0,
        "quarter" | "quarters" | "fourth" | "fourths" => 4.0,
        "eighth" | "eighths" => 8.0,
        "sixth" | "sixths" => 6.0,
        "fifth" | "fifths" => 5.0,
        _ => return None,
    })
}

/// Whether a measure follows, an "of a" or article between.
fn is_measured(tokens: &[Token], at: usize) -> bool {
    let after = skip_of_a(tokens, at);
    after > at || measure::measure(tokens, after).is_some()
}

/// Past "of", "of a", "a", "an", "of an".
fn skip_of_a(tokens: &[Token], at: usize) -> usize {
    let mut next = at;
    if tokens.get(next).is_some_and(|token| token.is_mark('-')) {
        next += 1;
    }
    if tokens.get(next).is_some_and(|token| token.is("of")) {
        next += 1;
    }
    if tokens
        .get(next)
        .is_some_and(|token| token.is_any(&["a", "an", "one"]))
    {
        next += 1;
    }
    next
}

/// A number in words.
fn words(tokens: &[Token], at: usize) -> Option<Single> {
    let token = &tokens[at];
    if let Some((part, next)) = word_part(tokens, at) {
        return Single::sure(part, skip_of_a(tokens, next), false);
    }
    let follows = |words: &[&str]| tokens.get(at + 1).is_some_and(|next| next.is_any(words));
    if token.is("half") {
        if follows(&["dozen", "doz"]) {
            return Single::sure(6.0, at + 2, false);
        }
        if follows(&["a"]) && tokens.get(at + 2).is_some_and(|next| next.is("dozen")) {
            return Single::sure(6.0, at + 3, false);
        }
    }
    if let Some(under) = denominator(token) {
        let is_name = match tokens.get(at + 1) {
            None => true,
            Some(next) if next.is_mark('-') => !is_measured(tokens, at + 2),
            Some(next) => {
                next.is_mark('&')
                    || next.is_any(&["and", "fat", "moon", "moons", "sheet", "n"])
                    || next.kind != Kind::Word
            }
        };
        if is_name || token.lower.ends_with('s') {
            return None;
        }
        return Single::sure(1.0 / under, skip_of_a(tokens, at + 1), false);
    }
    if token.is_any(&["a", "an"]) {
        if follows(&["dozen"]) {
            return Single::sure(12.0, at + 2, false);
        }
        if follows(&["couple"]) {
            let of = usize::from(tokens.get(at + 2).is_some_and(|next| next.is("of")));
            return Single::sure(2.0, at + 2 + of, false);
        }
        if follows(&["few"]) {
            return vague(tokens, at + 1);
        }
        return Single::sure(1.0, at + 1, false);
    }
    if token.is_any(&["few", "several", "some"]) {
        return vague(tokens, at).filter(|_| !token.is("some"));
    }
    if token.is("couple") {
        let of = usize::from(follows(&["of"]));
        return Single::sure(2.0, at + 1 + of, false);
    }
    if token.is("dozen") {
        return Single::sure(12.0, at + 1, false);
    }
    // A figure 1 that was read off a page as a letter.
    if matches!(token.text, "l" | "I") && at == 0 && is_measured(tokens, at + 1) {
        let mut single = Single::sure(1.0, at + 1, false)?;
        single.doubt = Some(format!("\"{}\" is read as the figure 1.", token.text));
        return Some(single);
    }
    let value = small_number(token)?;
    // "one-bowl" and "five-spice" are names.
    if tokens
        .get(at + 1)
        .is_some_and(|next| next.is_mark('-') && !next.spaced)
        && !is_measured(tokens, at + 2)
        && !is_range(tokens, at + 1)
    {
        return None;
    }
    if let Some((part, next)) =
        part_after(tokens, at + 1).filter(|_| !follows(&["half", "quarter"]))
    {
        return Single::sure(value + part, next, false);
    }
    if follows(&["dozen"]) {
        return Single::sure(value * 12.0, at + 2, false);
    }
    Single::sure(value, at + 1, false)
}

/// Whether a range goes on from this dash.
fn is_range(tokens: &[Token], dash: usize) -> bool {
    tokens
        .get(dash + 1)
        .is_some_and(|next| next.is_number() || small_number(next).is_some() || next.is("to"))
}

/// "A few": three, and said so.
fn vague(tokens: &[Token], at: usize) -> Option<Single> {
    let mut single = Single::sure(3.0, at + 1, false)?;
    single.doubt = Some(format!(
        "\"{}\" is taken as 3. Write the number.",
        tokens[at].text
    ));
    Some(single)
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
