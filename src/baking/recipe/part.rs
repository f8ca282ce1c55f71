//! Parts of fruit and eggs: juice, zest, white, yolk, wherever in the line they are asked for.

use super::token::{Kind, Token};
use crate::baking::ingredient::Larder;
use crate::baking::ingredient::lookup::{self, Found};
use crate::baking::text::{begins, holds};

/// A part of a fruit or an egg that a line asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The juice.
    Juice,
    /// The zest.
    Zest,
    /// Both; the juice is taken, since it weighs and sours.
    JuiceAndZest,
    /// The white.
    White,
    /// The yolk.
    Yolk,
}

impl Part {
    pub fn of(word: &str) -> Option<Self> {
        Some(match word {
            "juice" | "juiced" | "juices" => Self::Juice,
            "zest" | "zested" | "rind" | "peel" | "zests" => Self::Zest,
            "white" | "whites" => Self::White,
            "yolk" | "yolks" => Self::Yolk,
            _ => return None,
        })
    }

    pub fn with(self, other: Self) -> Self {
        match (self, other) {
            (Self::Juice, Self::Zest) | (Self::Zest, Self::Juice) => Self::JuiceAndZest,
            _ => self,
        }
    }

    /// The word that makes the ingredient's name with the fruit or egg before it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Juice | Self::JuiceAndZest => "juice",
            Self::Zest => "zest",
            Self::White => "white",
            Self::Yolk => "yolk",
        }
    }
}

/// Whether a line in lower case names the zest before the juice.
pub fn zest_first(lower: &str) -> bool {
    if !holds(lower, "juice") {
        return false;
    }
    let zest = ["zest", "rind", "peel"]
        .iter()
        .filter_map(|word| lower.find(word))
        .min();
    matches!((zest, lower.find("juice")), (Some(zest), Some(juice)) if zest < juice)
}

/// "Juice of", "finely grated zest and juice of", "whites of", "whites" before a number: the part, and
/// the token after it.
pub fn leading_part(tokens: &[Token]) -> (Option<Part>, usize) {
    const BEFORE: &[&str] = &[
        "finely", "coarsely", "freshly", "fresh", "grated", "squeezed", "strained", "the", "pared",
        "thinly", "yellow", "outer", "shredded", "a", "beaten",
    ];
    let mut at = 0;
    while tokens.get(at).is_some_and(|token| token.is_any(BEFORE)) {
        at += 1;
    }
    let Some(mut part) = tokens
        .get(at)
        .filter(|token| token.kind == Kind::Word)
        .and_then(|token| Part::of(token.lower))
    else {
        return (None, 0);
    };
    at += 1;
    let is_joint = |token: &Token| {
        token.is_mark('&') || token.is_mark('+') || token.is_mark('/') || token.is("and")
    };
    if tokens.get(at).is_some_and(is_joint) {
        let mut next = at + 1;
        while tokens.get(next).is_some_and(|token| token.is_any(BEFORE)) {
            next += 1;
        }
        if let Some(other) = tokens
            .get(next)
            .filter(|token| token.kind == Kind::Word)
            .and_then(|token| Part::of(token.lower))
        {
            part = part.with(other);
            at = next + 1;
        }
    }
    let joins = tokens
        .get(at)
        .is_some_and(|token| token.is_any(&["of", "from"]));
    if joins
        || tokens.get(at).is_some_and(|token| {
            token.is_number()
                || token.is_any(&["one", "two", "three", "four", "five", "six", "half"])
        })
    {
        (Some(part), at + usize::from(joins))
    } else {
        (None, 0)
    }
}

/// "juice of" and "of" left before an amount: the part, and what else stands there.
pub fn part_in_name(words: &str) -> (Option<Part>, &str) {
    for (start, part) in [
        ("juice and zest of ", Part::JuiceAndZest),
        ("zest and juice of ", Part::JuiceAndZest),
        ("grated zest of ", Part::Zest),
        ("grated rind of ", Part::Zest),
        ("finely grated zest of ", Part::Zest),
        ("juice of ", Part::Juice),
        ("juice from ", Part::Juice),
        ("zest of ", Part::Zest),
        ("zest from ", Part::Zest),
        ("rind of ", Part::Zest),
        ("peel of ", Part::Zest),
        ("grated zest ", Part::Zest),
        ("whites of ", Part::White),
        ("yolks of ", Part::Yolk),
    ] {
        if begins(words, start) {
            let rest = words[start.len()..].trim_start();
            let rest = rest
                .strip_prefix("a ")
                .or_else(|| rest.strip_prefix("an "))
                .unwrap_or(rest);
            return (Some(part), rest);
        }
    }
    // "Egg whites" and "lemon juice" are names of their own.
    (None, words)
}

/// "1 lemon, juiced", "2 oranges (zest and juice)", "3 eggs, whites only".
pub fn part_in_notes(tails: &[String], brackets: &[String]) -> Option<Part> {
    let mut part: Option<Part> = None;
    for note in tails.iter().chain(brackets) {
        let lower = note.to_ascii_lowercase();
        let is_only = lower.contains("only");
        for word in lower.split(|letter: char| !letter.is_alphanumeric()) {
            let Some(found) = Part::of(word) else {
                continue;
            };
            let is_egg_part = matches!(found, Part::White | Part::Yolk);
            if is_egg_part && !is_only || lower.contains("without") || lower.contains("peeled") {
                continue;
            }
            part = Some(part.map_or(found, |known| known.with(found)));
        }
    }
    part
}

/// Whether the tables hold this part of this thing.
pub fn fits(words: &str, part: Part, larder: Larder<'_>) -> bool {
    part_of(words, part, larder).is_some()
}

/// The ingredient that is this part: "lemon" and juice make lemon juice.
pub fn part_of(words: &str, part: Part, larder: Larder<'_>) -> Option<Found> {
    let whole = match words.split_once(" or ") {
        Some((first, _)) => format!("{first} {}", part.word()),
        None => format!("{words} {}", part.word()),
    };
    let found = lookup::search(&whole, larder);
    let is_part = found
        .named_by
        .last()
        .is_some_and(|word| word == part.word())
        || found.named_by.iter().any(|word| word == part.word());
    if found.is_known() && is_part {
        return Some(found);
    }
    let plural = lookup::search(words, larder);
    let key = plural.named_by.join(" ");
    (!key.is_empty())
        .then(|| lookup::search(&format!("{key} {}", part.word()), larder))
        .filter(|found| found.is_known() && found.named_by.iter().any(|word| word == part.word()))
}
