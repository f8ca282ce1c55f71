//! Tidying: a pasted line made plain for reading. The line itself is kept elsewhere, untouched.
//!
//! Goes in: the line as pasted. Comes out: the same words with markup, emoji, prices, links and
//! direction marks taken out, every dash, quote and blank in its plainest form, and fractions
//! written with a slash ("1½" becomes "1 1/2").

use crate::baking::text::holds;
use std::borrow::Cow;

/// The longest run that is taken for a tag, an entity or a link; it keeps the work linear.
const LONGEST_MARKUP: usize = 400;

/// The line made plain.
pub fn tidy(line: &str) -> String {
    let decoded = entities(past_stamp(line.trim_start()));
    let unmarked = markup(&decoded);
    let text = old_price(&unmarked);
    // Most lines are plain already.
    if text.bytes().all(|byte| is_plain(byte.into())) {
        return blanks(&text);
    }
    let mut out = String::with_capacity(text.len() + 8);
    let mut characters = text.chars().peekable();
    while let Some(character) = characters.next() {
        match character {
            _ if is_plain(character) => out.push(character),
            _ if vulgar(character).is_some() => {
                if out.ends_with(|last: char| last.is_ascii_digit()) {
                    out.push(' ');
                }
                out.push_str(vulgar(character).unwrap_or_default());
            }
            _ if superscript(character).is_some() => {
                raised(character, &mut characters, &mut out);
            }
            '₀'..='₉' => {
                if out.trim_end().ends_with('/') {
                    out.extend(char::from_digit(character as u32 - '₀' as u32, 10));
                }
            }
            '\u{2044}' | '\u{2215}' | '\u{ff0f}' => out.push('/'),
            '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{fe58}' | '\u{fe63}' | '\u{ff0d}' => {
                out.push('-')
            }
            '\u{2018}' | '\u{2019}' | '\u{201b}' | '\u{2032}' | '`' | '\u{b4}' => out.push('\''),
            '\u{201c}' | '\u{201d}' | '\u{201e}' | '\u{2033}' | '"' => {
                // After a figure it means inches; elsewhere it only quotes.
                if out.ends_with(|last: char| last.is_ascii_digit()) {
                    out.push('"');
                }
            }
            // Letters and figures of East Asian keyboards, each as wide as a sign.
            '\u{ff10}'..='\u{ff19}' | '\u{ff21}'..='\u{ff3a}' | '\u{ff41}'..='\u{ff5a}' => {
                out.extend(char::from_u32(character as u32 - 0xfee0));
            }
            '\u{d7}' | '\u{2715}' | '\u{2716}' => out.push('×'),
            '°' | 'º' | '˚' => out.push('°'),
            '\u{2026}' => out.push_str("..."),
            '*' | '†' | '‡' | '^' | '\\' => {}
            '$' | '£' | '€' => {
                while characters
                    .next_if(|next| next.is_ascii_digit() || matches!(next, '.' | ','))
                    .is_some()
                {}
            }
            '\t' => out.push_str(" | "),
            _ if character.is_whitespace() => out.push(' '),
            _ if is_invisible(character) => {}
            _ if character.is_ascii_graphic() || character.is_alphabetic() => out.push(character),
            _ if is_combining(character) => {}
            '•' | '·' => out.push('•'),
            _ => out.push(' '),
        }
    }
    blanks(&out)
}

/// Whether a sign is kept as it is, whatever stands beside it.
fn is_plain(character: char) -> bool {
    character.is_ascii_alphanumeric()
        || matches!(character, ' ' | ',' | '.' | '(' | ')' | '/' | '-')
}

/// Four blanks and more part columns where an ingredient ends and an amount begins: "1 tsp cinnamon      pinch salt".
fn columns(text: &str) -> Cow<'_, str> {
    if !text.contains("    ") {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    for column in text
        .split("    ")
        .map(str::trim)
        .filter(|column| !column.is_empty())
    {
        let begins = column.starts_with(|first: char| first.is_ascii_digit())
            || ["pinch", "dash", "a ", "one "]
                .iter()
                .any(|start| column.starts_with(start));
        if begins && out.contains(|letter: char| letter.is_alphabetic()) {
            out.push_str(" |");
        }
        if !out.is_empty() {
            out.push(' ');
        }
        out.push_str(column);
    }
    Cow::Owned(out)
}

/// The time and the name that a chat puts before what was said: "[19:44] Jo: 2 eggs".
fn past_stamp(text: &str) -> &str {
    let Some((stamp, said)) = text.strip_prefix('[').and_then(|rest| rest.split_once(']')) else {
        return text;
    };
    let is_time = stamp.contains(':')
        && stamp.len() <= 24
        && stamp.chars().all(|letter| {
            letter.is_ascii_digit()
                || matches!(
                    letter,
                    ':' | '/' | '.' | ',' | ' ' | '-' | 'a' | 'p' | 'm' | 'A' | 'P' | 'M'
                )
        });
    if !is_time {
        return text;
    }
    match said.split_once(": ") {
        Some((name, said)) if name.trim().split(' ').count() <= 3 => said,
        _ => said,
    }
}

/// Two dashes part a name from a note; a price behind them in shillings and pence ("--2d.") falls out.
fn old_price(text: &str) -> Cow<'_, str> {
    let Some((before, after)) = holds(text, "--")
        .then(|| text.rsplit_once("--"))
        .flatten()
        .filter(|(before, _)| !before.trim_matches('-').is_empty())
    else {
        return text.into();
    };
    let price = after.trim().trim_end_matches('.');
    let is_price = price.strip_suffix(['d', 's']).is_some_and(|figure| {
        !figure.is_empty()
            && figure.chars().all(|letter| {
                letter.is_ascii_digit() || matches!(letter, '/' | ' ' | '½' | '¼' | '¾')
            })
    });
    if is_price {
        before.into()
    } else {
        text.replace("--", " - ").into()
    }
}

/// Blanks in a row become one, and none stand at the ends.
fn blanks(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    // "1:1 flour blend": one for one says how it replaces, and its figure is no amount.
    let says = |word: &&str| !word.is_empty() && !matches!(*word, "1:1" | "1-to-1" | "1-for-1");
    for word in columns(text).split(' ').filter(says) {
        if !out.is_empty() {
            out.push(' ');
        }
        out.push_str(word);
    }
    out
}

/// A raised figure is the top of a fraction where a slash follows, and a footnote mark elsewhere.
fn raised(first: char, rest: &mut std::iter::Peekable<std::str::Chars>, out: &mut String) {
    let mut digits = String::new();
    digits.extend(superscript(first));
    while let Some(digit) = rest.peek().copied().and_then(superscript) {
        digits.push(digit);
        rest.next();
    }
    if matches!(rest.peek(), Some('/' | '\u{2044}' | '\u{2215}')) {
        if out.ends_with(|last: char| last.is_ascii_digit()) {
            out.push(' ');
        }
        out.push_str(&digits);
    }
}

/// The fraction that one sign stands for.
fn vulgar(character: char) -> Option<&'static str> {
    Some(match character {
        '¼' => "1/4",
        '½' => "1/2",
        '¾' => "3/4",
        '⅐' => "1/7",
        '⅑' => "1/9",
        '⅒' => "1/10",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅟' => "1/",
        _ => return None,
    })
}

/// The figure that a raised figure stands for.
fn superscript(character: char) -> Option<char> {
    "⁰¹²³⁴⁵⁶⁷⁸⁹"
        .chars()
        .position(|raised| raised == character)
        .and_then(|value| char::from_digit(value as u32, 10))
}

/// Marks without width: direction, joining, byte order, variation.
fn is_invisible(character: char) -> bool {
    matches!(
        character,
        '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}' | '\u{ad}' | '\u{61c}' | '\u{fe00}'..='\u{fe0f}'
    ) || character.is_control()
}

/// Accents written as signs of their own.
fn is_combining(character: char) -> bool {
    matches!(character, '\u{300}'..='\u{36f}')
}

/// HTML entities replaced by what they mean.
pub fn entities(line: &str) -> Cow<'_, str> {
    if !line.contains('&') {
        return line.into();
    }
    let mut out = String::with_capacity(line.len());
    let mut rest = line;
    while let Some(at) = rest.find('&') {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let name_end = rest[1..]
            .char_indices()
            .take(10)
            .find(|(_, character)| !(character.is_ascii_alphanumeric() || *character == '#'))
            .filter(|(_, character)| *character == ';')
            .map(|(offset, _)| offset + 1);
        match name_end.and_then(|end| entity(&rest[1..end]).map(|meaning| (end, meaning))) {
            Some((end, meaning)) => {
                out.push(meaning);
                rest = &rest[end + 1..];
            }
            None => {
                out.push('&');
                rest = &rest[1..];
            }
        }
    }
    out.push_str(rest);
    out.into()
}

/// What one entity means, its ampersand and semicolon taken off.
fn entity(name: &str) -> Option<char> {
    if let Some(number) = name.strip_prefix('#') {
        let code = match number.strip_prefix(['x', 'X']) {
            Some(hexadecimal) => u32::from_str_radix(hexadecimal, 16).ok()?,
            None => number.parse().ok()?,
        };
        return char::from_u32(code);
    }
    Some(match name {
        "amp" => '&',
        "nbsp" | "ensp" | "emsp" | "thinsp" => ' ',
        "lt" => '<',
        "gt" => '>',
        "quot" | "ldquo" | "rdquo" => '"',
        "apos" | "lsquo" | "rsquo" => '\'',
        "ndash" | "mdash" | "minus" | "shy" => '-',
        "times" => '×',
        "frasl" => '/',
        "frac12" | "half" => '½',
        "frac14" => '¼',
        "frac34" => '¾',
        "frac13" => '⅓',
        "frac23" => '⅔',
        "frac18" => '⅛',
        "frac38" => '⅜',
        "frac58" => '⅝',
        "frac78" => '⅞',
        "deg" => '°',
        "bull" | "middot" => '•',
        "hellip" => '…',
        "eacute" | "egrave" | "ecirc" => 'é',
        "agrave" | "acirc" => 'â',
        "ccedil" => 'ç',
        "ntilde" => 'ñ',
        "ucirc" | "ugrave" => 'û',
        "icirc" => 'î',
        "reg" | "trade" | "copy" | "zwnj" | "zwj" => ' ',
        _ => return None,
    })
}

/// Tags and links taken out: "<b>1</b> cup [flour](address)" becomes "1 cup flour".
fn markup(text: &str) -> Cow<'_, str> {
    if !text.contains(['<', ']']) && !holds(text, "://") {
        return text.into();
    }
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(['<', ']', 'h', 'H']) {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let skipped = match rest.as_bytes()[0] {
            b'<' => tag(rest, &mut out),
            b']' => address(rest).inspect(|_| {
                // The bracket before the linked word goes with the address.
                let from = out.len().saturating_sub(LONGEST_MARKUP);
                if let Some(open) = out.bytes().skip(from).rposition(|byte| byte == b'[') {
                    out.remove(from + open);
                }
            }),
            _ if out.ends_with(|last: char| last.is_alphanumeric()) => None,
            _ => link(rest),
        };
        match skipped {
            Some(length) => rest = &rest[length..],
            None => {
                out.push_str(&rest[..1]);
                rest = &rest[1..];
            }
        }
    }
    out.push_str(rest);
    out.into()
}

/// The length of the tag that stands here. A blank is left for one that parts words.
fn tag(rest: &str, out: &mut String) -> Option<usize> {
    let second = rest.as_bytes().get(1)?;
    if !(second.is_ascii_alphabetic() || matches!(second, b'/' | b'!')) {
        return None;
    }
    let end = rest
        .bytes()
        .take(LONGEST_MARKUP)
        .position(|byte| byte == b'>')?
        + 1;
    let name = rest[1..end].to_ascii_lowercase();
    let is_inline_end = ["/sup", "/sub", "sub", "/b>", "/strong", "/em", "/i>"]
        .iter()
        .any(|inline| name.starts_with(inline));
    if !is_inline_end {
        out.push(' ');
    }
    Some(end)
}

/// The length of "](address)" after a linked word; the bracket before the word falls out as a mark.
fn address(rest: &str) -> Option<usize> {
    if !(rest.starts_with("](http")
        || rest.starts_with("](/")
        || rest.starts_with("](www")
        || rest.starts_with("](#"))
    {
        return None;
    }
    rest.bytes()
        .take(LONGEST_MARKUP)
        .position(|byte| byte == b')')
        .map(|at| at + 1)
}

/// The length of a bare link.
fn link(rest: &str) -> Option<usize> {
    let start = rest.get(..8)?.to_ascii_lowercase();
    if !(start.starts_with("http://") || start.starts_with("https://")) {
        return None;
    }
    Some(
        rest.find(|character: char| {
            character.is_whitespace() || matches!(character, '<' | '>' | '"')
        })
        .unwrap_or(rest.len()),
    )
}

/// What stood before the words of a line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bullet {
    /// A dash, dot or box.
    pub marked: bool,
    /// A dash tight against a figure: a bullet, or a minus.
    pub minus: bool,
    /// "1." or "2)".
    pub numbered: bool,
    /// Markdown's "#".
    pub heading: bool,
}

/// Takes bullets, boxes and step numbers off the front of a tidy line.
pub fn unbullet(text: &str) -> (Bullet, &str) {
    let mut bullet = Bullet::default();
    let mut rest = text;
    loop {
        let before = rest.len();
        rest = rest.trim_start();
        for boxed in ["[ ]", "[x]", "[X]", "[]", "( )"] {
            if let Some(after) = rest.strip_prefix(boxed) {
                bullet.marked = true;
                rest = after;
            }
        }
        if let Some(after) = rest.strip_prefix('#')
            && !after.starts_with(|next: char| next.is_ascii_digit())
        {
            bullet.heading = true;
            rest = after;
        }
        if let Some(after) =
            rest.strip_prefix(['-', '•', '>', '+', '|', '~', '_', '=', ':', ',', ';', ')'])
        {
            bullet.minus |= rest.starts_with('-')
                && !bullet.marked
                && after.starts_with(|next: char| next.is_ascii_digit());
            bullet.marked = true;
            rest = after;
        }
        for letter in ["o ", "» "] {
            if let Some(after) = rest
                .strip_prefix(letter)
                .filter(|after| after.starts_with(|next: char| next.is_ascii_digit()))
            {
                bullet.marked = true;
                rest = after;
            }
        }
        if rest.len() == before {
            break;
        }
    }
    let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
    if (1..=2).contains(&digits)
        && let Some(after) = rest[digits..].strip_prefix(['.', ')'])
        && after.starts_with(' ')
        && after
            .trim_start()
            .starts_with(|next: char| next.is_alphanumeric() || next == '(')
    {
        bullet.numbered = true;
        rest = after.trim_start();
    }
    (bullet, rest)
}

#[cfg(test)]
mod tests {
    use super::{tidy, unbullet};

    #[test]
    fn fractions_and_marks_become_plain() {
        for (line, plain) in [
            ("1½ cups", "1 1/2 cups"),
            ("½cup", "1/2cup"),
            ("1 ¹⁄₂ cups", "1 1/2 cups"),
            ("1⁄2\u{a0}cup", "1/2 cup"),
            ("1&frac12; cups &amp; more", "1 1/2 cups & more"),
            ("<li class=\"x\"><b>2</b> cups</li>", "2 cups"),
            ("flour¹", "flour"),
            ("2 – 3 eggs", "2 - 3 eggs"),
            ("\u{202b}2 eggs\u{202c}", "2 eggs"),
            ("🥚 2 eggs", "2 eggs"),
            ("2 cups [flour](https://a.example/x)", "2 cups flour"),
            ("2 cups flour ($0.30)", "2 cups flour ()"),
            ("a 9\" pan", "a 9\" pan"),
        ] {
            assert_eq!(tidy(line), plain, "{line}");
        }
    }

    #[test]
    fn bullets_come_off_and_figures_stay() {
        for (line, rest) in [
            ("- 2 cups", "2 cups"),
            ("-2 cups", "2 cups"),
            ("[ ] 2 cups", "2 cups"),
            ("1. Mix", "Mix"),
            ("2) 3 eggs", "3 eggs"),
            ("1.5 cups", "1.5 cups"),
            ("12 eggs", "12 eggs"),
        ] {
            assert_eq!(unbullet(line).1, rest, "{line}");
        }
    }
}
