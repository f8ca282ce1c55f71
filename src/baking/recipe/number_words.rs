//! Numbers in words: "half a", "three quarters of a", "a dozen", and what follows a unit: "one cup and a half".

use super::measure;
use super::number::{Single, part_after};
use super::token::{Kind, Token};
use crate::baking::lexicon::Lexicon;

/// A number in words.
pub fn words(tokens: &[Token], at: usize) -> Option<Single> {
    let token = &tokens[at];
    if let Some((part, next)) = word_part(tokens, at) {
        return Single::sure(part, skip_of_a(tokens, next), false);
    }
    let follows = |words: &[&str]| tokens.get(at + 1).is_some_and(|next| next.is_any(words));
    if token.is("half") {
        // "Half 1/4 oz": half of what follows.
        if let Some(Kind::Fraction(over, under)) = tokens.get(at + 1).map(|next| next.kind)
            && under != 0.0
        {
            let mut single = Single::sure(over / under / 2.0, at + 2, true)?;
            single.doubt = Some(format!("Read as half of {over}/{under}."));
            return Some(single);
        }
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
        if follows(&["hundred"]) {
            return Single::sure(100.0, at + 2, false);
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
    let (value, at) = counted_out(tokens, at)?;
    let follows = |words: &[&str]| tokens.get(at + 1).is_some_and(|next| next.is_any(words));
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

/// A number of one or more words, and the place of its last: "twenty-four", "two hundred and fifty".
fn counted_out(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
    let below_hundred = |at: usize| -> Option<(f64, usize)> {
        let value = small_number(tokens.get(at)?)?;
        if value < 20.0 || value % 10.0 != 0.0 {
            return Some((value, at));
        }
        let dash = usize::from(tokens.get(at + 1).is_some_and(|next| next.is_mark('-')));
        let ones = tokens.get(at + 1 + dash).and_then(small_number);
        match ones.filter(|ones| (1.0..10.0).contains(ones)) {
            Some(ones) => Some((value + ones, at + 1 + dash)),
            None => Some((value, at)),
        }
    };
    let (value, last) = below_hundred(at)?;
    if !tokens.get(last + 1).is_some_and(|next| next.is("hundred")) {
        return Some((value, last));
    }
    let last = last + 1;
    let and = usize::from(tokens.get(last + 1).is_some_and(|next| next.is("and")));
    match below_hundred(last + 1 + and) {
        Some((rest, end)) => Some((value * 100.0 + rest, end)),
        None => Some((value * 100.0, last)),
    }
}

/// Whether a range goes on from this dash.
pub fn is_range(tokens: &[Token], dash: usize) -> bool {
    tokens
        .get(dash + 1)
        .is_some_and(|next| next.is_number() || small_number(next).is_some() || next.is("to"))
}

/// "A few": three, and said so.
pub fn vague(tokens: &[Token], at: usize) -> Option<Single> {
    // "A few grains": less than can be counted, so a pinch of them.
    if tokens
        .get(at + 1)
        .is_some_and(|next| measure::is_specks(next.lower))
    {
        return Single::sure(1.0, at + 1, false);
    }
    let mut single = Single::sure(3.0, at + 1, false)?;
    single.doubt = Some(format!(
        "\"{}\" is taken as 3. Write the number.",
        tokens[at].text
    ));
    Some(single)
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

/// "a half", "one half", "three quarters", "two-thirds", "a quarter".
pub fn word_part(tokens: &[Token], at: usize) -> Option<(f64, usize)> {
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

static NUMBERS: Lexicon<f64> = Lexicon::new(&[
    ("zero", 0.0),
    ("one", 1.0),
    ("two", 2.0),
    ("three", 3.0),
    ("four", 4.0),
    ("five", 5.0),
    ("six", 6.0),
    ("seven", 7.0),
    ("eight", 8.0),
    ("nine", 9.0),
    ("ten", 10.0),
    ("eleven", 11.0),
    ("twelve", 12.0),
    ("thirteen", 13.0),
    ("fourteen", 14.0),
    ("fifteen", 15.0),
    ("sixteen", 16.0),
    ("seventeen", 17.0),
    ("eighteen", 18.0),
    ("nineteen", 19.0),
    ("twenty", 20.0),
    ("thirty", 30.0),
    ("forty", 40.0),
    ("fifty", 50.0),
    ("sixty", 60.0),
    ("seventy", 70.0),
    ("eighty", 80.0),
    ("ninety", 90.0),
]);

/// The number that a word names.
pub fn small_number(token: &Token) -> Option<f64> {
    let is_word = token.kind == Kind::Word;
    NUMBERS.find(token.lower).copied().filter(|_| is_word)
}

static PARTS: Lexicon<f64> = Lexicon::new(&[
    ("half halves", 2.0),
    ("third thirds", 3.0),
    ("quarter quarters fourth fourths", 4.0),
    ("eighth eighths", 8.0),
    ("sixth sixths", 6.0),
    ("fifth fifths", 5.0),
]);

/// What a word of parts divides by.
pub fn denominator(token: &Token) -> Option<f64> {
    let is_word = token.kind == Kind::Word;
    PARTS.find(token.lower).copied().filter(|_| is_word)
}

/// Whether a measure follows, an "of a" or article between.
pub fn is_measured(tokens: &[Token], at: usize) -> bool {
    let after = skip_of_a(tokens, at);
    after > at || measure::measure(tokens, after).is_some()
}

/// Past "of", "of a", "a", "an", "of an".
pub fn skip_of_a(tokens: &[Token], at: usize) -> usize {
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
