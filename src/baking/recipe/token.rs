//! Tokens: a tidy line cut into numbers, words and marks.

use crate::baking::text::decimal;

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A whole number.
    Integer(f64),
    /// A number with a decimal point or comma, or an exponent.
    Decimal(f64),
    /// A fraction with its slash.
    Fraction(f64, f64),
    /// A word, also "2%" and "00" (a grade of flour).
    Word,
    /// Any other sign.
    Mark(char),
}

/// A token and where it stands.
#[derive(Clone, Copy, Debug)]
pub struct Token<'a> {
    /// What it is.
    pub kind: Kind,
    /// Its text as written.
    pub text: &'a str,
    /// Its text in lower case (ASCII letters).
    pub lower: &'a str,
    /// Whether a blank stands before it.
    pub spaced: bool,
    /// Its first byte in the line.
    pub start: usize,
    /// The byte after its last.
    pub end: usize,
}

impl Token<'_> {
    /// Whether it is this word, in any case.
    pub fn is(&self, word: &str) -> bool {
        self.is_any(&[word])
    }

    /// Whether it is one of these words, in any case.
    pub fn is_any(&self, words: &[&str]) -> bool {
        let own = self.lower.as_bytes();
        // The first letter is asked before the others: a line asks some hundred words of each of its own.
        matches!(self.kind, Kind::Word)
            && words
                .iter()
                .any(|word| word.as_bytes().first() == own.first() && word.as_bytes() == own)
    }

    /// Whether it is this mark.
    pub fn is_mark(&self, mark: char) -> bool {
        matches!(self.kind, Kind::Mark(own) if own == mark)
    }

    /// Whether it is a number of any kind.
    pub fn is_number(&self) -> bool {
        matches!(
            self.kind,
            Kind::Integer(_) | Kind::Decimal(_) | Kind::Fraction(..)
        )
    }
}

/// Cuts a line into tokens; `lower` is the same line in ASCII lower case.
pub fn tokens<'a>(text: &'a str, lower: &'a str) -> Vec<Token<'a>> {
    let bytes = text.as_bytes();
    let mut out = Vec::new();
    let mut at = 0;
    let mut spaced = true;
    while at < bytes.len() {
        if bytes[at] == b' ' {
            spaced = true;
            at += 1;
            continue;
        }
        let (kind, end) = one(text, at);
        out.push(Token {
            kind,
            text: &text[at..end],
            lower: &lower[at..end],
            spaced,
            start: at,
            end,
        });
        spaced = false;
        at = end;
    }
    out
}

/// The token that starts at a byte.
fn one(text: &str, at: usize) -> (Kind, usize) {
    let bytes = text.as_bytes();
    let after_dot = at > 0 && bytes[at - 1] == b'.';
    let is_point =
        bytes[at] == b'.' && !after_dot && bytes.get(at + 1).is_some_and(u8::is_ascii_digit);
    if bytes[at].is_ascii_digit() || is_point {
        return number(text, at);
    }
    let rest = &text[at..];
    let first = rest.chars().next().unwrap_or(' ');
    if first.is_alphabetic() {
        let length = rest
            .char_indices()
            .find(|(_, character)| !(character.is_alphabetic() || *character == '\''))
            .map_or(rest.len(), |(offset, _)| offset);
        return (Kind::Word, at + length);
    }
    (Kind::Mark(first), at + first.len_utf8())
}

/// Where a run of digits ends.
fn digits(bytes: &[u8], at: usize) -> usize {
    at + bytes[at..]
        .iter()
        .take_while(|byte| byte.is_ascii_digit())
        .count()
}

/// The number that starts at a byte.
fn number(text: &str, at: usize) -> (Kind, usize) {
    let bytes = text.as_bytes();
    let mut end = digits(bytes, at);
    if &text[at..end] == "00" || &text[at..end] == "000" || &text[at..end] == "0000" {
        return (Kind::Word, end);
    }
    let value = |from: usize, to: usize| decimal(&text[from..to]).unwrap_or(f64::INFINITY);
    let mut kind = Kind::Integer(if end == at { 0.0 } else { value(at, end) });
    match bytes.get(end) {
        Some(b'.') if bytes.get(end + 1).is_some_and(u8::is_ascii_digit) => {
            end = digits(bytes, end + 1);
            kind = Kind::Decimal(value(at, end));
        }
        Some(b',') if bytes.get(end + 1).is_some_and(u8::is_ascii_digit) => {
            (kind, end) = comma(text, at, end);
        }
        Some(b'/' | b' ') => {
            if let Some((fraction, after)) = fraction(text, at, end) {
                return (fraction, after);
            }
        }
        Some(b'e' | b'E') if bytes.get(end + 1).is_some_and(u8::is_ascii_digit) => {
            let power = digits(bytes, end + 1);
            let exponent = text[end + 1..power].parse().unwrap_or(i32::MAX);
            let figures = value(at, end);
            // Nothing times any power is nothing, even where the power is beyond all numbers.
            let scaled = if figures == 0.0 {
                0.0
            } else {
                figures * 10_f64.powi(exponent)
            };
            kind = Kind::Decimal(scaled);
            end = power;
        }
        _ => {}
    }
    if bytes.get(end) == Some(&b'%') {
        return (Kind::Word, end + 1);
    }
    if bytes.get(end) == Some(&b' ') && bytes.get(end + 1) == Some(&b'%') {
        return (Kind::Word, end + 2);
    }
    (kind, end)
}

/// A comma in a number: thousands where three figures follow ("1,000"), a decimal comma elsewhere ("1,5").
fn comma(text: &str, at: usize, comma: usize) -> (Kind, usize) {
    let bytes = text.as_bytes();
    let end = digits(bytes, comma + 1);
    let is_thousands = end - comma == 4 && (1..=3).contains(&(comma - at)) && bytes[at] != b'0';
    if is_thousands {
        let mut whole = text[at..comma].to_owned() + &text[comma + 1..end];
        let mut end = end;
        while bytes.get(end) == Some(&b',') && digits(bytes, end + 1) == end + 4 {
            whole.push_str(&text[end + 1..end + 4]);
            end += 4;
        }
        return (Kind::Integer(decimal(&whole).unwrap_or(f64::INFINITY)), end);
    }
    let point = text[at..comma].to_owned() + "." + &text[comma + 1..end];
    (Kind::Decimal(decimal(&point).unwrap_or(f64::INFINITY)), end)
}

/// A fraction: "1/2", and "1 / 2" where it can only be a part of one.
fn fraction(text: &str, at: usize, end: usize) -> Option<(Kind, usize)> {
    let bytes = text.as_bytes();
    let skip = |from: usize| {
        from + bytes[from..]
            .iter()
            .take_while(|byte| **byte == b' ')
            .count()
    };
    let slash = skip(end);
    if bytes.get(slash) != Some(&b'/') {
        return None;
    }
    let from = skip(slash + 1);
    let to = digits(bytes, from);
    if to == from {
        return None;
    }
    let over = decimal(&text[at..end])?;
    let under = decimal(&text[from..to])?;
    let is_tight = slash == end && from == slash + 1;
    let is_part = over < under && under <= 16.0;
    // "225/8 oz" is a pair of weights, and "1/2.5" is nothing.
    if over > 99.0
        || under > 64.0
        || !(is_tight || is_part)
        || bytes.get(to) == Some(&b'.') && bytes.get(to + 1).is_some_and(u8::is_ascii_digit)
    {
        return None;
    }
    Some((Kind::Fraction(over, under), to))
}

#[cfg(test)]
mod tests {
    use super::{Kind, tokens};

    #[test]
    fn numbers_of_every_kind() {
        for (text, kinds) in [
            ("1,5", vec![Kind::Decimal(1.5)]),
            ("1,000", vec![Kind::Integer(1000.0)]),
            ("1,250,000", vec![Kind::Integer(1_250_000.0)]),
            (".5", vec![Kind::Decimal(0.5)]),
            ("0,125", vec![Kind::Decimal(0.125)]),
            ("3/4", vec![Kind::Fraction(3.0, 4.0)]),
            ("1 / 2", vec![Kind::Fraction(1.0, 2.0)]),
            ("2%", vec![Kind::Word]),
            ("00", vec![Kind::Word]),
            ("1e3", vec![Kind::Decimal(1000.0)]),
        ] {
            let found: Vec<Kind> = tokens(text, text).iter().map(|token| token.kind).collect();
            assert_eq!(found, kinds, "{text}");
        }
    }
}
