//! Pans named in a line, with the sizes that stand beside them.

use super::pan_kind;
use super::pan_size::{cups, depth, how_many, lengths};
use super::token::{Kind, Token, tokens};
use super::{PanKind, PanMention};
use crate::baking::text::lower;

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

/// The pan that a field names: "20 cm round tin, 7 cm deep"; `None` where it names none.
pub fn pan_typed(typed: &str) -> Option<PanMention> {
    let said = lower(typed.trim());
    // A shape alone is a pan of that shape.
    [said.clone(), format!("{said} pan")]
        .iter()
        .find_map(|said| pans(&tokens(said, said)).into_iter().next())
}

/// Whether the token is a noun for a pan.
fn is_pan(tokens: &[Token], at: usize) -> bool {
    let token = &tokens[at];
    let before = at.checked_sub(1).map(|before| &tokens[before]);
    let is_cup_of_muffins = token.is_any(&[
        "cups", "cases", "liners", "wells", "cup", "papers", "holes", "hole",
    ]) && before
        .is_some_and(|before| before.is_any(&["muffin", "cupcake", "paper", "bun", "baking"]));
    let needs = match token.lower {
        "ring" => Some(["cake", "springform"].as_slice()),
        "sheet" => Some(
            [
                "baking", "half", "quarter", "full", "cookie", "size", "sized",
            ]
            .as_slice(),
        ),
        "jar" | "jars" => Some(["mason", "canning", "preserving"].as_slice()),
        _ => None,
    };
    let is_told = needs.is_none_or(|words| before.is_some_and(|before| before.is_any(words)))
        && (!token.is_any(&["jar", "jars"]) || is_filled(&tokens[at.saturating_sub(REACH)..at]));
    is_cup_of_muffins
        || is_told
            && token.is_any(&[
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
                "jar",
                "jars",
                "gastronorm",
                "gn",
            ])
}

/// Whether words fill what comes after them with batter: jam comes in jars, and cake is kept in them.
fn is_filled(words: &[Token]) -> bool {
    words.iter().any(|token| {
        token.is_any(&[
            "batter", "grease", "divide", "fill", "bake", "pour", "spoon",
        ])
    })
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
    let (before, before_at) = lengths(&tokens[start..at]);
    let (after, _) = if before.is_empty() {
        lengths(&tokens[end..until])
    } else {
        (Vec::new(), 0)
    };
    let mut lengths_found = if before.is_empty() { after } else { before };
    if let (1..=2, Some(depth)) = (lengths_found.len(), depth(words)) {
        lengths_found.push(depth);
    }
    let kind = pan_kind::kind(words, at - start, end - start, &lengths_found)?;
    let size = pan_kind::size(kind, words);
    // A baking sheet, and a rectangle of no size, is anything.
    if matches!(kind, PanKind::Rectangle | PanKind::Sheet)
        && lengths_found.is_empty()
        && size.is_none()
    {
        return None;
    }
    let count = if kind == PanKind::Cups {
        cups(&tokens[start..end], usual_cups(size))
    } else {
        how_many(&tokens[start..at], before_at)
    };
    Some(PanMention {
        count,
        kind,
        size,
        lengths: if kind == PanKind::Cups {
            Vec::new()
        } else {
            lengths_found
        },
    })
}

/// How many cups a tin of that size has (common practice, no source).
fn usual_cups(size: Option<&str>) -> u32 {
    match size {
        Some("muffin_mini") => 24,
        Some("muffin_jumbo") => 6,
        _ => 12,
    }
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
        reads(
            "Line a deep 20cm round cake tin, 8cm deep",
            &[(1, PanKind::Round, &[200.0, 80.0])],
        );
        reads(
            "Line an 18cm round, 7cm deep cake tin",
            &[(1, PanKind::Round, &[180.0, 70.0])],
        );
        reads("a 12-cup muffin tin", &[(12, PanKind::Cups, &[])]);
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
