//! Readings written by hand, and how a reading of ours differs from one.
//!
//! A row: kind, country, line, ingredient, amounts, what it says besides, sure/doubt/any/unread, source; cells
//! apart by tabs. Several ingredients of a line stand apart by " & " in three of the cells, and "butter / margarine"
//! is butter, with margarine offered.

use batterwright::baking::formula::{Habits, weigh};
use batterwright::baking::ingredient::{Filling, Form, Piece, PieceSize, Region, by_key};
use batterwright::baking::quantity::Mass;
use batterwright::baking::recipe::{
    Amount, Aside, Level, Line, Match, Mentions, Reading, Recipe, Role, Section, Unit, VolumeUnit,
};

/// One line with its reading.
pub struct Hand<'a> {
    pub kind: &'a str,
    pub region: Region,
    pub line: String,
    pub parts: Vec<HandPart<'a>>,
    pub sure: &'a str,
}

/// One ingredient of it.
pub struct HandPart<'a> {
    /// The key, then those that may stand in its place; "-" where the tables have none.
    pub keys: Vec<&'a str>,
    pub amounts: Vec<Amount>,
    pub said: String,
}

/// What differs, by what it concerns.
#[derive(Default)]
pub struct Faults {
    /// Ingredient, amount or unit.
    pub reading: Vec<String>,
    /// The form it is measured in, its size, how full the measure is, whether it stays out of the batter.
    pub said: Vec<String>,
    /// Sure where it should doubt, or the other way round.
    pub sure: Vec<String>,
    /// What ought to be offered and is not.
    pub offers: Vec<String>,
}

impl Faults {
    pub fn words(&self) -> String {
        let all = [&self.reading, &self.said, &self.sure, &self.offers];
        all.into_iter()
            .flatten()
            .cloned()
            .collect::<Vec<_>>()
            .join("; ")
    }
}

/// The rows of a file.
pub fn rows(text: &str) -> impl Iterator<Item = Hand<'_>> {
    text.lines()
        .filter(|row| !row.starts_with('#') && !row.is_empty())
        .map(|row| {
            let cells: Vec<&str> = row.split('\t').collect();
            assert!(matches!(cells.len(), 7 | 8), "{} cells: {row}", cells.len());
            hand(cells[0], region(cells[1]), cells[2], &cells[3..7])
        })
}

/// A reading from its cells: ingredient, amounts, said besides, sure.
pub fn hand<'a>(kind: &'a str, region: Region, line: &str, cells: &[&'a str]) -> Hand<'a> {
    let part = |cell: &'a str, at: usize| cell.split('&').nth(at).unwrap_or("").trim();
    let parts = cells[0]
        .split(" & ")
        .enumerate()
        .map(|(at, keys)| HandPart {
            keys: keys.split(" / ").map(str::trim).collect(),
            amounts: amounts(part(cells[1], at)),
            said: part(cells[2], at).to_owned(),
        })
        .collect();
    Hand {
        kind,
        region,
        line: line.replace("\\t", "\t"),
        parts,
        sure: cells[3],
    }
}

/// The country of a word in a data file.
pub fn region(word: &str) -> Region {
    match word {
        "us" => Region::Us,
        "uk" => Region::Uk,
        "au" => Region::Au,
        "nz" => Region::Nz,
        "ca" => Region::Ca,
        other => panic!("no region {other:?}"),
    }
}

/// The unit of a word in a data file, and how many of it one is. Old household measures are taken as cooks' tables
/// of the time give them (common practice, no source).
fn unit(word: &str) -> (Unit, f64) {
    use VolumeUnit::*;
    let volume = |unit: VolumeUnit, many: f64| (Unit::Volume(unit), many);
    let piece = |piece: Piece| (Unit::Piece(piece), 1.0);
    match word {
        "g" => (Unit::Mass(Mass::GRAM), 1.0),
        "kg" => (Unit::Mass(Mass::grams(1000.0)), 1.0),
        "oz" => (Unit::Mass(Mass::OUNCE), 1.0),
        "lb" => (Unit::Mass(Mass::POUND), 1.0),
        "taste" => (Unit::ToTaste, 1.0),
        "cup" => volume(Cup, 1.0),
        "teacup" => volume(Cup, 0.75),
        "coffeecup" => volume(Cup, 1.0),
        "wineglass" => volume(Cup, 0.25),
        "eggsize" => volume(Tablespoon, 4.0),
        "walnutsize" => volume(Tablespoon, 2.0),
        "hazelnutsize" => volume(Tablespoon, 1.0),
        "breakfastcup" => volume(Millilitre, 284.130_625),
        "splash" => volume(Tablespoon, 1.0),
        "sprinkle" => volume(Teaspoon, 0.5),
        "saltspoon" => volume(Teaspoon, 0.25),
        "tbsp" => volume(Tablespoon, 1.0),
        "dsp" => volume(Dessertspoon, 1.0),
        "tsp" => volume(Teaspoon, 1.0),
        "floz" => volume(FluidOunce, 1.0),
        "gill" => volume(Gill, 1.0),
        "pt" => volume(Pint, 1.0),
        "qt" => volume(Quart, 1.0),
        "gal" => volume(Gallon, 1.0),
        "ml" => volume(Millilitre, 1.0),
        "cl" => volume(Centilitre, 1.0),
        "dl" => volume(Decilitre, 1.0),
        "l" => volume(Litre, 1.0),
        "pinch" => volume(Pinch, 1.0),
        "dash" => volume(Dash, 1.0),
        "drop" => volume(Drop, 1.0),
        "each" => piece(Piece::Each),
        "stick" => piece(Piece::Stick),
        "slice" => piece(Piece::Slice),
        "stalk" => piece(Piece::Stalk),
        "square" => piece(Piece::Square),
        "bar" => piece(Piece::Bar),
        "packet" => piece(Piece::Packet),
        "can" => piece(Piece::Can),
        "block" => piece(Piece::Block),
        "pot" => piece(Piece::Pot),
        "knob" => piece(Piece::Knob),
        "handful" => piece(Piece::Handful),
        "inch" => piece(Piece::Inch),
        "pod" => piece(Piece::Pod),
        "sprig" => piece(Piece::Sprig),
        _ => panic!("no unit {word:?}"),
    }
}

/// The amounts of a cell: "1 cup; 125 g", "2-3 tbsp".
fn amounts(cell: &str) -> Vec<Amount> {
    let number = |text: &str| {
        text.parse::<f64>()
            .unwrap_or_else(|_| panic!("no number {text:?}"))
    };
    cell.split(';')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| {
            let (count, word) = part
                .split_once(' ')
                .unwrap_or_else(|| panic!("no unit in {part:?}"));
            let (low, high) = count.split_once('-').unwrap_or((count, count));
            let (unit, many) = unit(word);
            Amount {
                low: number(low) * many,
                high: number(high) * many,
                unit,
            }
        })
        .collect()
}

/// Whether two lists of amounts say the same. A pinch, dash or drop may be a volume or a piece.
fn same_amounts(one: &[Amount], two: &[Amount]) -> bool {
    let plain = |unit: Unit| match unit {
        Unit::Piece(Piece::Pinch) => Unit::Volume(VolumeUnit::Pinch),
        Unit::Piece(Piece::Dash) => Unit::Volume(VolumeUnit::Dash),
        Unit::Piece(Piece::Drop) => Unit::Volume(VolumeUnit::Drop),
        unit => unit,
    };
    // "A little milk" has no amount that could be weighed, whichever way that is put.
    let weighable = |amounts: &[Amount]| -> Vec<Amount> {
        amounts
            .iter()
            .copied()
            .filter(|amount| amount.unit != Unit::ToTaste)
            .collect()
    };
    let (one, two) = (weighable(one), weighable(two));
    let near = |one: f64, two: f64| (one - two).abs() <= 1e-5 * two.abs().max(1.0);
    one.len() == two.len()
        && one.iter().zip(&two).all(|(one, two)| {
            near(one.low, two.low) && near(one.high, two.high) && plain(one.unit) == plain(two.unit)
        })
}

const FORMS: [(&str, Form); 16] = [
    ("melted", Form::Melted),
    ("packed", Form::Packed),
    ("loose", Form::Loose),
    ("chopped", Form::Chopped),
    ("sliced", Form::Sliced),
    ("cubed", Form::Cubed),
    ("slivered", Form::Slivered),
    ("whole", Form::Whole),
    ("halved", Form::Halved),
    ("mashed", Form::Mashed),
    ("pureed", Form::Pureed),
    ("grated", Form::Grated),
    ("ground", Form::Ground),
    ("whipped", Form::Whipped),
    ("crushed", Form::Crushed),
    ("chips", Form::Chips),
];
const FILLINGS: [(&str, Filling); 3] = [
    ("dipped", Filling::Dipped),
    ("spooned", Filling::Spooned),
    ("sifted", Filling::Sifted),
];
const SIZES: [(&str, PieceSize); 5] = [
    ("small", PieceSize::Small),
    ("medium", PieceSize::Medium),
    ("large", PieceSize::Large),
    ("extra_large", PieceSize::ExtraLarge),
    ("jumbo", PieceSize::Jumbo),
];
const LEVELS: [(&str, Level); 4] = [
    ("scant", Level::Scant),
    ("generous", Level::Generous),
    ("rounded", Level::Rounded),
    ("heaped", Level::Heaped),
];
const ASIDES: [(&str, Aside); 3] = [
    ("optional", Aside::Optional),
    ("to_serve", Aside::ToServe),
    ("for_the_pan", Aside::ForThePan),
];

fn word<T: PartialEq>(table: &[(&'static str, T)], wanted: &T) -> Option<&'static str> {
    table
        .iter()
        .find(|(_, value)| value == wanted)
        .map(|(word, _)| *word)
}

/// What a reading says besides, in the words of the data files.
fn besides(reading: &Reading) -> String {
    let said = [
        ("form", reading.form.and_then(|form| word(&FORMS, &form))),
        (
            "filling",
            reading
                .filling
                .and_then(|filling| word(&FILLINGS, &filling)),
        ),
        ("size", reading.size.and_then(|size| word(&SIZES, &size))),
        ("level", word(&LEVELS, &reading.level)),
        (
            "aside",
            reading.aside.and_then(|aside| word(&ASIDES, &aside)),
        ),
    ];
    said.iter()
        .filter_map(|(name, value)| value.map(|value| format!("{name}={value}")))
        .collect::<Vec<_>>()
        .join(",")
}

/// Where a reading differs from what is written.
pub fn differences(role: &Role, hand: &Hand) -> Faults {
    let mut faults = Faults::default();
    let reading = match (role, hand.sure) {
        (Role::Ingredient(reading), "unread") if !reading.doubts.is_empty() => return faults,
        (Role::Ingredient(_), "unread") => {
            faults.reading.push("read, and without a doubt".to_owned());
            return faults;
        }
        (_, "unread") => return faults,
        (Role::Ingredient(reading), _) => reading,
        (other, _) => {
            faults
                .reading
                .push(format!("no ingredient line: {other:?}"));
            return faults;
        }
    };
    let found: Vec<&Reading> = reading.all().collect();
    if found.len() != hand.parts.len() {
        let names: Vec<&str> = found.iter().map(|part| key(part)).collect();
        faults
            .reading
            .push(format!("{} ingredients: {names:?}", found.len()));
        return faults;
    }
    for (part, wanted) in found.iter().zip(&hand.parts) {
        if key(part) != wanted.keys[0] {
            faults.reading.push(format!("ingredient {}", key(part)));
        }
        if !same_amounts(&part.amounts, &wanted.amounts) {
            faults.reading.push(format!("amounts {:?}", part.amounts));
        }
        if besides(part) != wanted.said {
            faults.said.push(format!("says {:?}", besides(part)));
        }
        for other in &wanted.keys[1..] {
            if !offered(part).contains(other) {
                faults.offers.push(format!("{other} is not offered"));
            }
        }
    }
    let doubts: Vec<&String> = found.iter().flat_map(|part| &part.doubts).collect();
    match hand.sure {
        "sure" if !doubts.is_empty() => faults.sure.push(format!("doubts {doubts:?}")),
        "doubt" if doubts.is_empty() => faults.sure.push("no doubt".to_owned()),
        _ => {}
    }
    faults
}

fn key(reading: &Reading) -> &'static str {
    reading
        .ingredient
        .taken()
        .map_or("-", |ingredient| ingredient.key)
}

/// What may be chosen in a reading's place.
fn offered(reading: &Reading) -> Vec<&'static str> {
    let mut keys: Vec<&'static str> = match &reading.ingredient {
        Match::OneOf(several) => several.iter().map(|ingredient| ingredient.key).collect(),
        _ => Vec::new(),
    };
    keys.extend(reading.instead.iter().map(key));
    keys
}

/// Grams of a role's ingredients all together; `None` where one has no weight.
fn grams(role: &Role, region: Region) -> Option<f64> {
    let recipe = Recipe {
        title: None,
        lines: vec![Line {
            number: 1,
            text: String::new(),
            role: role.clone(),
            mentions: Mentions::default(),
        }],
    };
    let habits = Habits {
        region,
        filling: None,
        eggs: PieceSize::Large,
    };
    let formula = weigh(&recipe, &habits);
    (formula.unweighed.is_empty() && !formula.lines.is_empty()).then(|| {
        formula
            .lines
            .iter()
            .map(|line| line.grams.mean.to_grams())
            .sum()
    })
}

/// How far the weight of a sure reading lies from that of the reading by hand, as a share of it; 0 where the reading
/// says that it is unsure, or where neither has a weight.
pub fn silently_wrong(role: &Role, hand: &Hand) -> f64 {
    let Role::Ingredient(reading) = role else {
        return 0.0;
    };
    let faults = differences(role, hand);
    if faults.reading.is_empty() && faults.said.is_empty()
        || reading.all().any(|part| !part.doubts.is_empty())
    {
        return 0.0;
    }
    let mut parts = hand.parts.iter().map(|part| Reading {
        ingredient: by_key(part.keys[0]).map_or(Match::Unknown, Match::Known),
        name: String::new(),
        amounts: part.amounts.clone(),
        form: said(&part.said, "form", &FORMS),
        filling: said(&part.said, "filling", &FILLINGS),
        size: said(&part.said, "size", &SIZES),
        level: said(&part.said, "level", &LEVELS).unwrap_or_default(),
        is_loose: false,
        aside: said(&part.said, "aside", &ASIDES),
        section: Section::Batter,
        doubts: Vec::new(),
        understood: String::new(),
        is_taught: false,
        own_weight: None,
        also: Vec::new(),
        instead: Vec::new(),
    });
    let Some(mut wanted) = parts.next() else {
        return 0.0;
    };
    wanted.also = parts.collect();
    match (
        grams(role, hand.region),
        grams(&Role::Ingredient(wanted), hand.region),
    ) {
        (Some(ours), Some(wanted)) => (ours - wanted).abs() / wanted.max(1e-9),
        (Some(_), None) => f64::INFINITY,
        (None, _) => 0.0,
    }
}

fn said<T: Copy>(cell: &str, name: &str, table: &[(&'static str, T)]) -> Option<T> {
    let value = cell
        .split(',')
        .find_map(|part| part.strip_prefix(name)?.strip_prefix('='))?;
    table
        .iter()
        .find(|(word, _)| *word == value)
        .map(|(_, value)| *value)
}
