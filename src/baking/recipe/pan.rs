//! Pans named in a line, with the sizes that stand beside them.

use super::token::{Kind, Token};
use super::{PanKind, PanMention, number};
use crate::baking::quantity::Length;

/// How many words before and after the pan's noun may tell of its size.
const REACH: usize = 14;

/// The pans in a line, in the order written.
pub fn pans(tokens: &[Token]) -> Vec<PanMention> {
    let mut found = Vec::new();
    let mut from = 0;
    let mut at = 0;
    while at < tokens.len() {
        if !is_pan(tokens, at) {
            at += 1;
            continue;
        }
        // "Cake tins", "muffin cups": the last noun in a row ends the pan's name.
        let mut end = at + 1;
        while end < tokens.len() && is_pan(tokens, end) {
            end += 1;
        }
        let start = sentence_start(tokens, from.max(at.saturating_sub(REACH)), at);
        let until = sentence_end(tokens, end);
        if let Some(mention) = mention(tokens, start, at, end, until) {
            found.push(mention);
        }
        from = end;
        at = end;
    }
    found
}

/// Whether the token is a noun for a pan.
fn is_pan(tokens: &[Token], at: usize) -> bool {
    let token = &tokens[at];
    let before = at.checked_sub(1).map(|before| &tokens[before]);
    let is_cup_of_muffins = token.is_any(&[
        "cups", "cases", "liners", "wells", "cup", "papers", "holes", "hole",
    ]) && before
        .is_some_and(|before| before.is_any(&["muffin", "cupcake", "paper", "bun", "baking"]));
    token.is_any(&[
        "pan",
        "pans",
        "tin",
        "tins",
        "springform",
        "mould",
        "moulds",
        "mold",
        "molds",
        "tray",
        "traybake",
        "dish",
        "bundt",
        "ramekins",
        "skillet",
        "sheet",
        "ring",
    ]) && !(token.is("ring")
        && !before.is_some_and(|before| before.is_any(&["cake", "springform"])))
        && !(token.is("sheet")
            && !before
                .is_some_and(|before| before.is_any(&["baking", "half", "quarter", "cookie"])))
        || is_cup_of_muffins
}

/// The start of the words that belong to this pan: after the last full stop.
fn sentence_start(tokens: &[Token], from: usize, at: usize) -> usize {
    (from..at)
        .rev()
        .find(|place| {
            tokens[*place].is_mark(';')
                || tokens[*place].is_mark('.')
                    && tokens.get(place + 1).is_some_and(|next| next.spaced)
        })
        .map_or(from, |place| place + 1)
}

/// The end of the words that belong to this pan: a full stop, or the reach.
fn sentence_end(tokens: &[Token], end: usize) -> usize {
    let limit = tokens.len().min(end + 12);
    (end..limit)
        .find(|place| {
            matches!(tokens[*place].kind, Kind::Mark('.' | ';'))
                || tokens[*place].is_any(&["with", "and", "or", "for"])
        })
        .unwrap_or(limit)
}

/// The pan whose noun stands from `at` to `end`, its words from `start` to `until`.
fn mention(
    tokens: &[Token],
    start: usize,
    at: usize,
    end: usize,
    until: usize,
) -> Option<PanMention> {
    let words = &tokens[start..until];
    // A pot for melting is no cake pan.
    if tokens[start..at].last().is_some_and(|token| {
        token.is_any(&[
            "sauce", "frying", "saute", "roasting", "drip", "wire", "cooling", "large", "small",
            "medium",
        ])
    }) && !words
        .iter()
        .any(|token| token.is_any(&["cake", "baking", "loaf"]))
    {
        return None;
    }
    let has = |names: &[&str]| {
        tokens[start..end]
            .iter()
            .chain(&tokens[end..until])
            .any(|token| token.is_any(names))
    };
    let (before, before_at) = lengths(&tokens[start..at]);
    let (after, _) = if before.is_empty() {
        lengths(&tokens[end..until])
    } else {
        (Vec::new(), 0)
    };
    let lengths_found = if before.is_empty() { after } else { before };
    let is_cups = has(&[
        "muffin", "cupcake", "cupcakes", "muffins", "ramekins", "bun", "fairy",
    ]);
    let kind = if has(&["loaf"]) {
        PanKind::Loaf
    } else if has(&[
        "tube",
        "bundt",
        "angel",
        "fluted",
        "kugelhopf",
        "gugelhupf",
        "savarin",
    ]) {
        PanKind::Tube
    } else if is_cups && !has(&["round", "springform", "square"]) {
        PanKind::Cups
    } else if has(&["square"]) {
        PanKind::Square
    } else if has(&["springform", "round", "sandwich", "circular", "layer"]) {
        PanKind::Round
    } else if has(&[
        "rectangular",
        "rectangle",
        "traybake",
        "sheet",
        "swiss",
        "jelly",
    ]) || is_oblong(&lengths_found)
    {
        PanKind::Rectangle
    } else if lengths_found.len() >= 2 {
        PanKind::Square
    } else if !lengths_found.is_empty() {
        PanKind::Round
    } else {
        return None;
    };
    if matches!(kind, PanKind::Rectangle) && lengths_found.is_empty() {
        return None;
    }
    let count = if kind == PanKind::Cups {
        cups(&tokens[start..end])
    } else {
        how_many(&tokens[start..at], before_at)
    };
    Some(PanMention {
        count,
        kind,
        lengths: if kind == PanKind::Cups {
            Vec::new()
        } else {
            lengths_found
        },
    })
}

/// Two sides that differ.
fn is_oblong(lengths: &[Length]) -> bool {
    lengths.len() >= 2 && (lengths[0].to_millimetres() - lengths[1].to_millimetres()).abs() > 5.0
}

/// The first row of lengths in some words ("9 x 13 x 2-inch", "20 cm"), and the token it starts at.
fn lengths(tokens: &[Token]) -> (Vec<Length>, usize) {
    let mut at = 0;
    while at < tokens.len() {
        if let Some((lengths, _)) = row(tokens, at) {
            return (lengths, at);
        }
        at += 1;
    }
    (Vec::new(), tokens.len())
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
fn how_many(before: &[Token], length_at: usize) -> u32 {
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

/// How many cups: "12-cup muffin tin", "two 12-hole tins", "12 muffin cases"; a tin alone has 12 (common practice, no source).
fn cups(words: &[Token]) -> u32 {
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
    cups.unwrap_or(12) * tins
}

#[cfg(test)]
mod tests {
    use super::{PanKind, pans};
    use crate::baking::recipe::token::tokens;

    #[track_caller]
    fn reads(text: &str, expected: &[(u32, PanKind, &[f64])]) {
        let lower = text.to_ascii_lowercase();
        let found = pans(&tokens(text, &lower));
        let found: Vec<(u32, PanKind, Vec<f64>)> = found
            .iter()
            .map(|pan| {
                (
                    pan.count,
                    pan.kind,
                    pan.lengths
                        .iter()
                        .map(|length| length.to_millimetres())
                        .collect(),
                )
            })
            .collect();
        let expected: Vec<(u32, PanKind, Vec<f64>)> = expected
            .iter()
            .map(|(count, kind, lengths)| (*count, *kind, lengths.to_vec()))
            .collect();
        assert_eq!(found, expected, "{text}");
    }

    #[test]
    fn pans_with_their_sizes() {
        reads(
            "Grease a 9x13-inch pan.",
            &[(1, PanKind::Rectangle, &[228.6, 330.2])],
        );
        reads(
            "Line two 8-inch (20cm) round cake tins",
            &[(2, PanKind::Round, &[203.2])],
        );
        reads("a 20 cm springform", &[(1, PanKind::Round, &[200.0])]);
        reads(
            "Butter a 9 x 5 inch loaf pan",
            &[(1, PanKind::Loaf, &[228.6, 127.0])],
        );
        reads("a 12-cup muffin tin", &[(1 * 12, PanKind::Cups, &[])]);
        reads("12 muffin cases", &[(12, PanKind::Cups, &[])]);
        reads("a 900g/2lb loaf tin", &[(1, PanKind::Loaf, &[])]);
        reads("Grease a 10-inch tube pan", &[(1, PanKind::Tube, &[254.0])]);
        reads("Pour into the pan and bake for 30 minutes.", &[]);
        reads(
            "an 8-inch square baking pan",
            &[(1, PanKind::Square, &[203.2])],
        );
        reads(
            "Grease a loaf tin (21 x 11 cm) with butter",
            &[(1, PanKind::Loaf, &[210.0, 110.0])],
        );
        reads("Melt the butter in a pan.", &[]);
    }
}
