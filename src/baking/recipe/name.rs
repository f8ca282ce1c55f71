//! The name in an ingredient line: which ingredient it means, notes and kinds named after the thing taken into account.

use super::gather::Gather;
use super::part::{Part, fits, part_in_name, part_in_notes, part_of};
use super::{Amount, Match, Unit, VolumeUnit};
use crate::baking::ingredient::lookup::{self, Found};
use crate::baking::ingredient::{Group, Ingredient, Larder, Piece};
use crate::baking::text::{decimal, holds};

/// "Butter the size of an egg": the amount that old books mean by it, the name, and the words themselves.
pub fn size_of(lower: &str) -> Option<(Amount, (&str, &str))> {
    let (at, past) = ["size of ", "as big as ", "as large as "]
        .iter()
        .filter(|words| holds(lower, words))
        .find_map(|words| lower.find(*words).map(|at| (at, at + words.len())))?;
    let thing = lower[past..]
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
    let name = [
        "a piece of ",
        "a bit of ",
        "a lump of ",
        "piece of ",
        "lump of ",
        "bit of ",
    ]
    .iter()
    .find_map(|start| name.strip_prefix(start))
    .unwrap_or(name);
    let amount = Amount {
        low: tablespoons,
        high: tablespoons,
        unit: Unit::Volume(VolumeUnit::Tablespoon),
    };
    (!name.is_empty()).then_some((amount, (name, lower[at..].trim())))
}

/// "The weight of 8 eggs in sugar": the eggs, and the name of what is to weigh as much.
pub fn weight_of_eggs(lower: &str) -> Option<(&str, &str)> {
    let at = holds(lower, "weight of ")
        .then(|| lower.find("weight of "))?
        .filter(|at| *at <= 4)?;
    let (eggs, name) = lower[at + 10..].split_once(" in ")?;
    (eggs.ends_with("eggs") || eggs.ends_with("egg")).then_some((eggs, name.trim()))
}

/// Which ingredient the words mean, notes taken into account, and the part that was asked for.
pub fn resolve(
    name: &str,
    tails: &[String],
    brackets: &[String],
    part: Option<Part>,
    is_counted: bool,
    larder: Larder<'_>,
    doubts: &mut Vec<String>,
) -> (Found, Option<Part>) {
    let words = crumb(name);
    let (own_part, bare) = part_in_name(words);
    let part = part.or(own_part);
    let noted = part.or_else(|| {
        is_counted
            .then(|| part_in_notes(tails, brackets))
            .flatten()
            .filter(|part| fits(bare, *part, larder))
    });
    if let Some(part) = noted {
        let thing = bare.split(" and ").next().unwrap_or(bare);
        if let Some(found) = part_of(thing, part, larder) {
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
            return (found, Some(part));
        }
    }
    let plain_found = lookup::search(words, larder);
    if let Some(found) = refined(words, tails, brackets, &plain_found, larder) {
        return (found, None);
    }
    // "Nuts (pecans or walnuts)": the bracket says which.
    if plain_found
        .matched
        .taken()
        .is_some_and(|plain| plain.key == "nuts")
        && let Some(found) = brackets
            .iter()
            .map(|bracket| lookup::search(bracket, larder))
            .find(|found| {
                found
                    .matched
                    .taken()
                    .is_some_and(|nut| nut.group == Group::Nut)
                    && found.doubts.is_empty()
            })
    {
        return (found, None);
    }
    if let Some(found) = by_cocoa(words, tails, brackets, &plain_found, larder) {
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
            let found = lookup::search(&whole, larder);
            if found.is_known() {
                return (found, None);
            }
        }
        // "Large, free-range" aside, the name may stand in a note: "ripe, mashed, bananas".
        if lookup::only_describes(words)
            && let Some(found) = tails
                .iter()
                .map(|tail| lookup::search(tail, larder))
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

/// A kind that is named after the thing: "sugar, brown", "almonds, ground", "vanilla (extract)".
fn refined(
    words: &str,
    tails: &[String],
    brackets: &[String],
    plain_found: &Found,
    larder: Larder<'_>,
) -> Option<Found> {
    for note in tails.iter().take(2).chain(brackets.iter().take(2)) {
        let first = note.split([',', ';']).next().unwrap_or_default();
        let kind: Vec<&str> = first
            .split([' ', '-'])
            .filter(|word| {
                let is_adverb = word.ends_with("ly") && word.len() > 4 || *word == "well";
                !word.is_empty() && !is_adverb && *word != "and"
            })
            .collect();
        if kind.is_empty() || kind.len() > 4 {
            continue;
        }
        let kind = kind.join(" ");
        // "Almonds, ground" and "pineapple, drained" are other things; "apples, peeled" is not.
        let is_other = ["ground", "drained", "sweetened"]
            .iter()
            .any(|word| kind.contains(word));
        // "Raisins, sultanas, currants" lists three things and no kinds of one.
        if tails.len() > 1 && lookup::exact(&kind, larder).is_some() {
            continue;
        }
        if lookup::only_describes(&kind) && !is_other {
            continue;
        }
        for whole in [format!("{kind} {words}"), format!("{words} {kind}")] {
            let named_by: Vec<String> = whole.split(' ').map(lookup::plain_word).collect();
            if let Some(ingredient) = lookup::exact(&whole, larder)
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
pub fn from_tin(found: Found, amounts: &[Amount], larder: Larder<'_>) -> Found {
    // A cake of yeast is pressed fresh yeast.
    let is_block = amounts
        .iter()
        .any(|amount| amount.unit == Unit::Piece(Piece::Block));
    let is_packet = amounts
        .iter()
        .any(|amount| amount.unit == Unit::Piece(Piece::Packet));
    if (is_block || is_packet)
        && found.named_by == ["yeast"]
        && let Some(ingredient) = lookup::exact(
            if is_block {
                "fresh yeast"
            } else {
                "dried yeast"
            },
            larder,
        )
    {
        return Found {
            matched: Match::Known(ingredient),
            doubts: Vec::new(),
            ..found
        };
    }
    let by_volume = |fits: fn(VolumeUnit) -> bool| {
        amounts
            .first()
            .is_some_and(|amount| matches!(amount.unit, Unit::Volume(unit) if fits(unit)))
    };
    // Yeast by the cup is no dried yeast.
    if found.named_by == ["yeast"]
        && by_volume(|unit| matches!(unit, VolumeUnit::Cup | VolumeUnit::Gill | VolumeUnit::Pint))
        && let Some(ingredient) = lookup::exact("fresh yeast", larder)
    {
        return Found {
            matched: Match::Known(ingredient),
            doubts: vec![
                "Yeast by the cup was liquid, which the tables do not hold; fresh yeast is taken."
                    .to_owned(),
            ],
            ..found
        };
    }
    // A square of chocolate without its kind is the bitter one of old books.
    let by_square = amounts
        .iter()
        .any(|amount| amount.unit == Unit::Piece(Piece::Square));
    if by_square
        && found.named_by == ["chocolate"]
        && let Match::OneOf(mut several) = found.matched.clone()
    {
        several.reverse();
        return Found {
            matched: Match::OneOf(several),
            doubts: vec![
                "Which chocolate is not said; by the square, unsweetened is taken.".to_owned(),
            ],
            ..found
        };
    }
    // "1/2 tsp lemon" may be juice, zest or extract, which only its writer knows.
    if let [fruit] = found.named_by.as_slice()
        && matches!(fruit.as_str(), "lemon" | "orange" | "almond")
        && by_volume(|unit| unit == VolumeUnit::Teaspoon)
        && let Some(extract) = lookup::exact(&format!("{fruit} extract"), larder)
    {
        let parts = ["juice", "zest"].map(|part| lookup::exact(&format!("{fruit} {part}"), larder));
        return Found {
            matched: Match::OneOf(
                std::iter::once(extract)
                    .chain(parts.into_iter().flatten())
                    .collect(),
            ),
            doubts: vec![format!(
                "By the teaspoon, {fruit} is taken for its extract. It may be juice or zest."
            )],
            ..found
        };
    }
    // Ginger by the inch is the root; by the spoon it is ground.
    let is_root = amounts.iter().any(|amount| {
        matches!(
            amount.unit,
            Unit::Piece(Piece::Inch | Piece::Knob | Piece::Each | Piece::Slice)
        )
    });
    if is_root
        && found.named_by == ["ginger"]
        && let Some(ingredient) = lookup::exact("fresh ginger", larder)
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
    match lookup::exact(&format!("canned {}", found.named_by[0]), larder) {
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
    larder: Larder<'_>,
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
    let ingredient = lookup::exact(&format!("{step} % dark chocolate"), larder)
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
    decimal(&before[start..])
}

/// Pieces and pinches as the table has them: "2 cinnamon sticks" counts sticks, a pinch of saffron is a piece.
pub fn pieces(amounts: &mut [Amount], name: &str, taken: Option<&Ingredient>) {
    let Some(ingredient) = taken else { return };
    let has = |piece: Piece| ingredient.pieces.iter().any(|row| row.piece == piece);
    let last = || {
        let word = name.rsplit([' ', '-']).next();
        word.map(str::to_lowercase).unwrap_or_default()
    };
    for amount in amounts {
        amount.unit = match amount.unit {
            Unit::Volume(VolumeUnit::Pinch) if has(Piece::Pinch) => Unit::Piece(Piece::Pinch),
            Unit::Volume(VolumeUnit::Dash) if has(Piece::Dash) => Unit::Piece(Piece::Dash),
            Unit::Volume(VolumeUnit::Drop) if has(Piece::Drop) => Unit::Piece(Piece::Drop),
            Unit::Piece(Piece::Each)
                if matches!(last().as_str(), "cake" | "cakes") && has(Piece::Block) =>
            {
                Unit::Piece(Piece::Block)
            }
            Unit::Piece(Piece::Each) => match super::measure::piece(&last()) {
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

/// The part of a cup that a glass of wine or of a flavouring water is, in books that measure by the wineglass
/// (common practice, no source).
const WINEGLASS: f64 = 0.25;

/// "A glass of sherry" is a wineglass, whatever a glass of milk may be.
pub fn glass_of_wine(gather: &mut Gather, ingredient: &Ingredient) {
    let is_wine = ingredient.key == "rose_water"
        || ingredient
            .composition
            .alcohol
            .is_some_and(|alcohol| alcohol.to_percent() > 8.0);
    let Some(doubt) = gather
        .doubts
        .iter_mut()
        .find(|doubt| doubt.starts_with("A glass or mug"))
    else {
        return;
    };
    if is_wine {
        *doubt = "A wineglass is taken as 1/4 cup; old books differ.".to_owned();
        for amount in &mut gather.amounts {
            amount.low *= WINEGLASS;
            amount.high *= WINEGLASS;
        }
    }
}

/// "One spoonful of vanilla": of what is measured by the teaspoon, a spoon is a teaspoon.
pub fn spoon_of_flavour(gather: &mut Gather, ingredient: &Ingredient) {
    let is_small = matches!(ingredient.group, Group::Spice | Group::Leavener)
        || ingredient.key.ends_with("_extract");
    let Some(doubt) = gather
        .doubts
        .iter_mut()
        .find(|doubt| doubt.starts_with("A spoon without"))
    else {
        return;
    };
    if is_small {
        *doubt = "A spoon without its kind is taken as a teaspoon here.".to_owned();
        for amount in &mut gather.amounts {
            amount.unit = Unit::Volume(VolumeUnit::Teaspoon);
        }
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
