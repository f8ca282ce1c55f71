//! The kind of a pan by the words beside it, and sizes that have names: "half sheet", "GN 1/1", "2 lb loaf tin".

use super::PanKind;
use super::pan_size::is_oblong;
use super::token::{Kind, Token};
use crate::baking::quantity::Length;

/// Words right before the noun that tell a tart tin, a fluted one too; further off they are about what is baked.
const TARTS: &[&str] = &["tart", "flan", "quiche", "pie"];

/// Words that tell a kind, the telling ones first.
const WORDS: &[(PanKind, &[&str])] = &[
    (PanKind::Loaf, &["loaf"]),
    (PanKind::Ring, &["savarin"]),
    (
        PanKind::Fluted,
        &["bundt", "fluted", "kugelhopf", "gugelhupf"],
    ),
    (PanKind::Tube, &["tube", "angel"]),
];

/// Words of cups; beside a word of a round or square pan they are not about the pan.
const CUPS: &[&str] = &[
    "muffin", "cupcake", "cupcakes", "muffins", "ramekins", "bun", "fairy",
];

/// Words that tell a kind close before the noun.
const CLOSE: &[(PanKind, &[&str])] = &[
    (PanKind::Heart, &["heart"]),
    (PanKind::Hexagon, &["hexagon", "hexagonal"]),
    (PanKind::Oval, &["oval"]),
    (PanKind::Bowl, &["hemisphere", "hemispherical", "dome"]),
    (PanKind::Jar, &["jar", "jars"]),
];
/// So close, in tokens: "heart - shaped 9 - inch cake tin".
const NEAR: usize = 8;

const OTHERS: &[(PanKind, &[&str])] = &[
    (PanKind::Square, &["square"]),
    (
        PanKind::Round,
        &["springform", "round", "sandwich", "circular", "layer"],
    ),
    (
        PanKind::Rectangle,
        &["rectangular", "rectangle", "traybake"],
    ),
    (
        PanKind::Sheet,
        &["sheet", "swiss", "jelly", "gastronorm", "gn"],
    ),
];

/// The kind of the pan whose words these are, its noun from `at` to `end` of them; `None` where neither words nor lengths
/// tell one.
pub fn kind(words: &[Token], at: usize, end: usize, lengths: &[Length]) -> Option<PanKind> {
    let of = |words: &[Token], list: &[(PanKind, &[&str])]| {
        let has = |names: &[&str]| words.iter().any(|token| token.is_any(names));
        let mut rows = list.iter();
        rows.find(|(_, names)| has(names)).map(|(kind, _)| *kind)
    };
    let is_tart = at
        .checked_sub(1)
        .is_some_and(|before| words[before].is_any(TARTS));
    let has = |names: &[&str]| words.iter().any(|token| token.is_any(names));
    let is_cups = has(CUPS) && !has(&["round", "springform", "square"]);
    is_tart
        .then_some(PanKind::Tart)
        .or_else(|| of(words, WORDS))
        .or_else(|| is_ring(words).then_some(PanKind::Ring))
        .or_else(|| is_cups.then_some(PanKind::Cups))
        .or_else(|| of(&words[at.saturating_sub(NEAR)..end], CLOSE))
        .or_else(|| of(words, OTHERS))
        .or_else(|| by_lengths(lengths))
}

/// "Ring mould", "ring tin"; a cake ring or a springform's ring is a round pan.
fn is_ring(words: &[Token]) -> bool {
    words.windows(2).any(|pair| {
        pair[0].is("ring") && pair[1].is_any(&["mould", "moulds", "mold", "molds", "tin", "pan"])
    })
}

fn by_lengths(lengths: &[Length]) -> Option<PanKind> {
    match lengths {
        [] => None,
        _ if is_oblong(lengths) => Some(PanKind::Rectangle),
        [_] => Some(PanKind::Round),
        _ => Some(PanKind::Square),
    }
}

/// The row of the table of sizes that the words name; `None` where they name none.
pub fn size(kind: PanKind, words: &[Token]) -> Option<&'static str> {
    let has = |names: &[&str]| words.iter().any(|token| token.is_any(names));
    match kind {
        PanKind::Sheet => sheet(words).or_else(|| gastronorm(words)),
        PanKind::Loaf if has(&["mini", "miniature"]) => Some("loaf_mini_5_75x3x2"),
        PanKind::Loaf => loaf(words),
        PanKind::Cups if has(&["mini", "miniature"]) => Some("muffin_mini"),
        PanKind::Cups if has(&["jumbo", "giant", "texas"]) => Some("muffin_jumbo"),
        PanKind::Cups if has(&["bun", "fairy"]) => Some("bun_uk"),
        _ => None,
    }
}

/// "Half sheet", "quarter-sheet", "full-size sheet".
fn sheet(words: &[Token]) -> Option<&'static str> {
    let at = words.iter().position(|token| token.is("sheet"))?;
    let mut before = words[..at]
        .iter()
        .rev()
        .filter(|token| !token.is_mark('-') && !token.is_any(&["size", "sized"]));
    let part = before.next()?;
    let is_fraction =
        |below: f64| matches!(part.kind, Kind::Fraction(above, of) if (above, of) == (1.0, below));
    if part.is("half") || is_fraction(2.0) {
        Some("sheet_half")
    } else if part.is("quarter") || is_fraction(4.0) {
        Some("sheet_quarter")
    } else {
        part.is("full").then_some("sheet_full")
    }
}

/// "GN 1/1", "gastronorm 1/2"; the usual depth is 65 mm (common practice, no source).
fn gastronorm(words: &[Token]) -> Option<&'static str> {
    let at = words
        .iter()
        .position(|token| token.is_any(&["gn", "gastronorm"]))?;
    let Kind::Fraction(above, below) = words.get(at + 1)?.kind else {
        return None;
    };
    const PARTS: [(f64, f64, &str); 8] = [
        (2.0, 1.0, "gn_2_1_65"),
        (1.0, 1.0, "gn_1_1_65"),
        (2.0, 3.0, "gn_2_3_65"),
        (1.0, 2.0, "gn_1_2_65"),
        (1.0, 3.0, "gn_1_3_65"),
        (1.0, 4.0, "gn_1_4_65"),
        (1.0, 6.0, "gn_1_6_65"),
        (1.0, 9.0, "gn_1_9_65"),
    ];
    let mut parts = PARTS.iter();
    parts
        .find(|part| (part.0, part.1) == (above, below))
        .map(|part| part.2)
}

/// "1 lb loaf tin", "900g/2lb loaf tin": the flour that a loaf of bread for it is made of.
fn loaf(words: &[Token]) -> Option<&'static str> {
    words.iter().enumerate().find_map(|(at, token)| {
        let Kind::Integer(value) = token.kind else {
            return None;
        };
        let unit = words[at + 1..].iter().find(|token| !token.is_mark('-'))?;
        let is_pounds = unit.is_any(&["lb", "lbs", "pound", "pounds"]);
        let is_grams = unit.is_any(&["g", "gram", "grams"]);
        if is_pounds && value == 1.0 || is_grams && (450.0..=500.0).contains(&value) {
            Some("loaf_uk_1lb")
        } else if is_pounds && value == 2.0 || is_grams && (900.0..=1000.0).contains(&value) {
            Some("loaf_uk_2lb")
        } else {
            None
        }
    })
}
