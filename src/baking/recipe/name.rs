//! The name in an ingredient line: parts of fruit and eggs, kinds named after the thing, states.

use super::phrase;
use super::token::{Kind, Token};
use super::{Amount, Match, Unit, VolumeUnit};
use crate::baking::ingredient::lookup::{self, Found};
use crate::baking::ingredient::{Form, Group, Ingredient, Piece, Region};

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
    fn of(word: &str) -> Option<Self> {
        Some(match word {
            "juice" | "juiced" | "juices" => Self::Juice,
            "zest" | "zested" | "rind" | "peel" | "zests" => Self::Zest,
            "white" | "whites" => Self::White,
            "yolk" | "yolks" => Self::Yolk,
            _ => return None,
        })
    }

    fn with(self, other: Self) -> Self {
        match (self, other) {
            (Self::Juice, Self::Zest) | (Self::Zest, Self::Juice) => Self::JuiceAndZest,
            _ => self,
        }
    }

    /// The word that makes the ingredient's name with the fruit or egg before it.
    fn word(self) -> &'static str {
        match self {
            Self::Juice | Self::JuiceAndZest => "juice",
            Self::Zest => "zest",
            Self::White => "white",
            Self::Yolk => "yolk",
        }
    }
}

/// "Juice of", "finely grated zest and juice of", "whites of", "whites" before a number: the part, and
/// the token after it.
pub fn leading_part(tokens: &[Token]) -> (Option<Part>, usize) {
    const BEFORE: [&str; 15] = [
        "finely", "coarsely", "freshly", "fresh", "grated", "squeezed", "strained", "the", "pared",
        "thinly", "yellow", "outer", "shredded", "a", "beaten",
    ];
    let mut at = 0;
    while tokens.get(at).is_some_and(|token| token.is_any(&BEFORE)) {
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
        while tokens.get(next).is_some_and(|token| token.is_any(&BEFORE)) {
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

/// "Butter the size of an egg": the amount that old books mean by it, the name, and the words themselves.
pub fn size_of(lower: &str) -> Option<(Amount, (&str, &str))> {
    let at = lower.find("size of ")?;
    let thing = lower[at + 8..]
        .trim_start_matches("a ")
        .trim_start_matches("an ");
    // Household equivalents of the nineteenth century (common practice, no source).
    let tablespoons = if thing.starts_with("egg") {
        4.0
    } else if thing.starts_with("walnut") {
        2.0
    } else if thing.starts_with("hickory") || thing.starts_with("hazel") {
        1.0
    } else {
        return None;
    };
    let name = lower[..at]
        .trim_end()
        .trim_end_matches("the")
        .trim_end_matches([' ', ',']);
    let amount = Amount {
        low: tablespoons,
        high: tablespoons,
        unit: Unit::Volume(VolumeUnit::Tablespoon),
    };
    (!name.is_empty()).then_some((amount, (name, lower[at..].trim())))
}

/// Which ingredient the words mean, notes taken into account, and the part that was asked for.
pub fn resolve(
    name: &str,
    tails: &[String],
    brackets: &[String],
    part: Option<Part>,
    is_counted: bool,
    region: Region,
    doubts: &mut Vec<String>,
) -> (Found, Option<Part>) {
    let words = crumb(name);
    let (own_part, bare) = part_in_name(words);
    let part = part.or(own_part);
    let noted = part.or_else(|| {
        is_counted
            .then(|| part_in_notes(tails, brackets))
            .flatten()
            .filter(|part| fits(bare, *part, region))
    });
    if let Some(part) = noted {
        let thing = bare.split(" and ").next().unwrap_or(bare);
        if let Some(found) = part_of(thing, part, region) {
            let other = bare
                .split(|letter: char| !letter.is_alphanumeric())
                .filter_map(|word| Part::of(&word.to_ascii_lowercase()))
                .find(|other| {
                    *other != part
                        && part != Part::JuiceAndZest
                        && !matches!(other, Part::White | Part::Yolk)
                });
            if let Some(other) = other {
                doubts.push(format!(
                    "The line also names {}. Give it a line of its own.",
                    other.word()
                ));
            }
            if part == Part::JuiceAndZest {
                doubts.push("The line names both juice and zest; the juice is taken. Give the zest a line of its own.".to_owned());
            }
            return (found, Some(part));
        }
    }
    let plain_found = lookup::search(words, region);
    if let Some(found) = refined(words, tails, brackets, &plain_found, region) {
        return (found, None);
    }
    if let Some(found) = by_cocoa(words, tails, brackets, &plain_found, region) {
        return (found, None);
    }
    if !plain_found.is_known() {
        // "Vegetable, canola, or sunflower oil".
        if let Some(last) = tails
            .iter()
            .position(|tail| tail.to_ascii_lowercase().starts_with("or "))
        {
            let mut whole = words.to_owned();
            for tail in &tails[..=last] {
                whole.push_str(" or ");
                whole.push_str(tail.trim_start_matches("or ").trim_start_matches("OR "));
            }
            let found = lookup::search(&whole, region);
            if found.is_known() {
                return (found, None);
            }
        }
        // "Large, free-range" aside, the name may stand in a note: "ripe, mashed, bananas".
        if lookup::only_describes(words)
            && let Some(found) = tails
                .iter()
                .map(|tail| lookup::search(tail, region))
                .find(Found::is_sure)
        {
            return (found, None);
        }
    }
    (plain_found, None)
}

/// Leading "of" and "the" taken off.
fn crumb(name: &str) -> &str {
    let mut words = name.trim();
    for start in ["of ", "the ", "Of ", "each of ", "each "] {
        words = words.strip_prefix(start).unwrap_or(words);
    }
    words
}

/// "juice of" and "of" left before an amount: the part, and what else stands there.
fn part_in_name(words: &str) -> (Option<Part>, &str) {
    let lower = words.to_ascii_lowercase();
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
        if lower.starts_with(start) {
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
fn part_in_notes(tails: &[String], brackets: &[String]) -> Option<Part> {
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
fn fits(words: &str, part: Part, region: Region) -> bool {
    part_of(words, part, region).is_some()
}

/// The ingredient that is this part: "lemon" and juice make lemon juice.
fn part_of(words: &str, part: Part, region: Region) -> Option<Found> {
    let whole = match words.split_once(" or ") {
        Some((first, _)) => format!("{first} {}", part.word()),
        None => format!("{words} {}", part.word()),
    };
    let found = lookup::search(&whole, region);
    let is_part = found
        .named_by
        .last()
        .is_some_and(|word| word == part.word())
        || found.named_by.iter().any(|word| word == part.word());
    if found.is_known() && is_part {
        return Some(found);
    }
    let plural = lookup::search(words, region);
    let key = plural.named_by.join(" ");
    (!key.is_empty())
        .then(|| lookup::search(&format!("{key} {}", part.word()), region))
        .filter(|found| found.is_known() && found.named_by.iter().any(|word| word == part.word()))
}

/// A kind that is named after the thing: "sugar, brown", "almonds, ground", "vanilla (extract)".
fn refined(
    words: &str,
    tails: &[String],
    brackets: &[String],
    plain_found: &Found,
    region: Region,
) -> Option<Found> {
    for note in tails.iter().take(2).chain(brackets.iter().take(2)) {
        let first = note.split([',', ';']).next().unwrap_or_default();
        let kind: Vec<&str> = first
            .split([' ', '-'])
            .filter(|word| {
                !word.is_empty() && !(word.ends_with("ly") && word.len() > 4) && *word != "and"
            })
            .collect();
        if kind.is_empty() || kind.len() > 4 {
            continue;
        }
        let kind = kind.join(" ");
        for whole in [format!("{kind} {words}"), format!("{words} {kind}")] {
            let named_by: Vec<String> = whole.split(' ').map(lookup::plain_word).collect();
            if let Some(ingredient) = lookup::exact(&whole, region)
                && plain_found
                    .matched
                    .taken()
                    .is_none_or(|plain| plain.key != ingredient.key)
            {
                return Some(Found {
                    matched: Match::Known(ingredient),
                    named_by,
                    doubts: Vec::new(),
                    also: Vec::new(),
                });
            }
        }
    }
    None
}

/// What a tin holds, where the tables have it from the tin: "1 can peaches".
pub fn from_tin(found: Found, amounts: &[Amount], region: Region) -> Found {
    // A cake of yeast is pressed fresh yeast.
    let is_block = amounts
        .iter()
        .any(|amount| amount.unit == Unit::Piece(Piece::Block));
    if is_block
        && found.named_by == ["yeast"]
        && let Some(ingredient) = lookup::exact("fresh yeast", region)
    {
        return Found {
            matched: Match::Known(ingredient),
            ..found
        };
    }
    let is_tin = amounts
        .iter()
        .any(|amount| amount.unit == Unit::Piece(Piece::Can));
    let is_one_word = found.named_by.len() == 1 && matches!(found.matched, Match::Known(_));
    if !is_tin || !is_one_word {
        return found;
    }
    match lookup::exact(&format!("canned {}", found.named_by[0]), region) {
        Some(ingredient) => Found {
            matched: Match::Known(ingredient),
            ..found
        },
        None => found,
    }
}

/// Dark chocolate by the cocoa in it, where the line says how much: "dark chocolate (72% cocoa)".
fn by_cocoa(
    words: &str,
    tails: &[String],
    brackets: &[String],
    plain_found: &Found,
    region: Region,
) -> Option<Found> {
    let plain = plain_found
        .matched
        .taken()
        .filter(|plain| plain.key == "dark_chocolate")?;
    let share = [words]
        .into_iter()
        .chain(tails.iter().chain(brackets).map(String::as_str))
        .find_map(percentage)?;
    let step = match share {
        65.0..100.0 => 70,
        57.0..65.0 => 60,
        _ => return None,
    };
    let ingredient = lookup::exact(&format!("{step} % dark chocolate"), region)
        .filter(|found| found.key != plain.key)?;
    Some(Found {
        matched: Match::Known(ingredient),
        ..plain_found.clone()
    })
}

/// The first percentage in a text.
fn percentage(text: &str) -> Option<f64> {
    let sign = text.find('%')?;
    let before = text[..sign].trim_end();
    let start = before
        .rfind(|letter: char| !(letter.is_ascii_digit() || letter == '.'))
        .map_or(0, |at| {
            at + before[at..].chars().next().map_or(1, char::len_utf8)
        });
    before[start..].parse().ok()
}

/// States that stand in the name itself.
#[derive(Clone, Copy, Debug, Default)]
pub struct States {
    /// The state it is measured in: said before the thing.
    pub form: Option<Form>,
    /// A state said after the thing, with no comma.
    pub form_after: Option<Form>,
    /// "Sifted flour".
    pub is_sifted: bool,
}

/// The states in a name. Words that are part of the ingredient's own name ("ground almonds") count
/// only where its table has weights for that state.
pub fn states(name: &str, found: &Found, taken: Option<&Ingredient>, region: Region) -> States {
    let mut states = States::default();
    let head = found.named_by.last();
    let mut is_after = false;
    for word in name
        .split(|letter: char| !(letter.is_alphanumeric() || letter == '\''))
        .filter(|word| !word.is_empty())
    {
        let lower = word.to_lowercase();
        let plain = lookup::plain_word(word);
        let is_own = found.named_by.contains(&plain);
        if matches!(
            lower.as_str(),
            "or" | "in" | "with" | "for" | "at" | "to" | "from" | "into" | "plus"
        ) {
            break;
        }
        if lower == "sifted" && !is_after {
            states.is_sifted = true;
        }
        if let Some(form) = phrase::form(&lower) {
            let has_weight = taken.is_some_and(|ingredient| {
                ingredient.fillings.iter().any(|row| row.form == Some(form))
            });
            let is_own = is_own && changes_name(&found.named_by, &plain, taken, region);
            // Ground is how spices are sold, and no state of theirs.
            let is_state = form != Form::Ground
                || taken.is_none_or(|ingredient| {
                    !matches!(ingredient.group, Group::Spice | Group::Flavour)
                });
            let names_whole = form != Form::Whole
                || taken.is_some_and(|ingredient| {
                    matches!(
                        ingredient.group,
                        Group::Nut | Group::Seed | Group::DriedFruit | Group::Spice
                    )
                });
            if (!is_own || has_weight) && names_whole && is_state {
                // A shape named last ("pecan halves", "apple puree") is the shape it is measured in.
                let is_shape = matches!(
                    lower.as_str(),
                    "halves" | "slices" | "cubes" | "chunks" | "puree" | "purée" | "slivers"
                );
                if is_after && !is_shape {
                    states.form_after = states.form_after.or(Some(form));
                } else {
                    states.form = Some(states.form.unwrap_or(form));
                }
            }
        }
        is_after |= head.is_some_and(|head| *head == plain);
    }
    states
}

/// Whether a word makes the ingredient what it is: ground almonds are not almonds, mashed banana is banana.
fn changes_name(
    named_by: &[String],
    word: &str,
    taken: Option<&Ingredient>,
    region: Region,
) -> bool {
    let rest: Vec<&str> = named_by
        .iter()
        .map(String::as_str)
        .filter(|other| *other != word)
        .collect();
    lookup::exact(&rest.join(" "), region).map(|ingredient| ingredient.key)
        != taken.map(|ingredient| ingredient.key)
}

/// Pieces and pinches as the table has them: "2 cinnamon sticks" counts sticks, a pinch of saffron is a piece.
pub fn pieces(amounts: &mut [Amount], name: &str, taken: Option<&Ingredient>) {
    let Some(ingredient) = taken else { return };
    let has = |piece: Piece| ingredient.pieces.iter().any(|row| row.piece == piece);
    let last = name
        .rsplit([' ', '-'])
        .next()
        .map(str::to_lowercase)
        .unwrap_or_default();
    for amount in amounts {
        amount.unit = match amount.unit {
            Unit::Volume(VolumeUnit::Pinch) if has(Piece::Pinch) => Unit::Piece(Piece::Pinch),
            Unit::Volume(VolumeUnit::Dash) if has(Piece::Dash) => Unit::Piece(Piece::Dash),
            Unit::Volume(VolumeUnit::Drop) if has(Piece::Drop) => Unit::Piece(Piece::Drop),
            Unit::Piece(Piece::Each) => match super::measure::piece(&last) {
                Some(piece) if piece != Piece::Each && has(piece) => Unit::Piece(piece),
                _ => amount.unit,
            },
            // A stick of cinnamon is the thing itself.
            Unit::Piece(Piece::Stick | Piece::Pod | Piece::Stalk)
                if ingredient.group != Group::Fat
                    && has(Piece::Each)
                    && !matches!(amount.unit, Unit::Piece(piece) if has(piece)) =>
            {
                Unit::Piece(Piece::Each)
            }
            unit => unit,
        };
    }
}

/// The name as it is shown: words about the part put back.
pub fn shown(name: &str, part: Option<Part>) -> String {
    let words = part_in_name(crumb(name)).1;
    match part {
        Some(part) => format!("{words} {}", part.word()),
        None => words.to_owned(),
    }
}
