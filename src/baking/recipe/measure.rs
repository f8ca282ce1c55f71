//! Measure words: from "Tbsp." and "cans" to a unit.
//!
//! Goes in: tokens and a place among them, a count having been read before. Comes out: the unit
//! that stands there, and where it ends.

use super::token::{Kind, Token};
use super::{Unit, VolumeUnit};
use crate::baking::ingredient::{Piece, lookup};
use crate::baking::quantity::Mass;

/// A unit as it was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// The unit.
    pub unit: Unit,
    /// How many of the unit one of the word is: 250 for a metric cup in millilitres.
    pub factor: f64,
    /// The token after it.
    pub next: usize,
    /// Whether it is an old or loose measure that is only roughly known, with what it is taken as.
    pub doubt: Option<&'static str>,
}

impl Measure {
    /// Whether it measures mass or volume, and does not count.
    pub fn weighs_or_fills(&self) -> bool {
        matches!(self.unit, Unit::Mass(_) | Unit::Volume(_))
    }
}

/// The measure that starts at a token.
///
/// Words are matched as bytes here and wherever every word of a line is asked: the compiler then tells them apart
/// letter by letter, where strings would be compared with each word of the list in turn.
pub fn measure(tokens: &[Token], at: usize) -> Option<Measure> {
    let token = tokens.get(at)?;
    if token.kind != Kind::Word {
        return None;
    }
    if let Some(found) = two_words(tokens, at) {
        return Some(found);
    }
    let unit = case_matters(token)
        .or_else(|| plain(token.lower))
        .or_else(|| misspelt(token.lower))?;
    let found = Measure {
        unit,
        factor: 1.0,
        next: past_dot(tokens, at + 1),
        doubt: None,
    };
    let found = if let Unit::Piece(_) = unit {
        piece_in_place(tokens, at, found)?
    } else {
        found
    };
    Some(found)
}

/// Past a full stop or an "(s)" that belongs to the unit.
fn past_dot(tokens: &[Token], at: usize) -> usize {
    let tight = |at: usize, mark: char| {
        tokens
            .get(at)
            .is_some_and(|token| token.is_mark(mark) && !token.spaced)
    };
    let mut next = at;
    if tight(next, '(')
        && tokens
            .get(next + 1)
            .is_some_and(|token| token.is_any(&["s", "es"]))
        && tight(next + 2, ')')
    {
        next += 3;
    }
    // Two dots in a row lead the eye to a column; they are no part of the unit.
    if tight(next, '.') && !tight(next + 1, '.') {
        next += 1;
    }
    next
}

/// Letters whose case tells: "T" is a tablespoon, "t" a teaspoon.
fn case_matters(token: &Token) -> Option<Unit> {
    let unit = match token.text {
        "T" | "Tb" => VolumeUnit::Tablespoon,
        "t" => VolumeUnit::Teaspoon,
        "c" | "C" => VolumeUnit::Cup,
        _ => return None,
    };
    Some(Unit::Volume(unit))
}

/// What is said of a squeeze, which is one of juice.
pub const SQUEEZE: &str = "A squeeze is taken as 1/2 teaspoon of juice. Write the amount.";

/// Half an imperial pint, in millilitres: what British books mean by a breakfast cup (common practice, no source).
const BREAKFAST_CUP: f64 = 284.130_625;

/// Words for so little that it cannot be measured: "a few grains", "three scrapings".
pub fn is_specks(word: &str) -> bool {
    matches!(
        word.as_bytes(),
        b"grain"
            | b"grains"
            | b"grating"
            | b"gratings"
            | b"scraping"
            | b"scrapings"
            | b"speck"
            | b"specks"
            | b"shake"
            | b"shakes"
    )
}

/// Two words that make one measure, and old measures that are only roughly known.
fn two_words(tokens: &[Token], at: usize) -> Option<Measure> {
    let first = tokens[at].lower;
    let mut second_at = past_dot(tokens, at + 1);
    if tokens
        .get(second_at)
        .is_some_and(|token| token.is_mark('-'))
    {
        second_at += 1;
    }
    let second = tokens
        .get(second_at)
        .filter(|token| token.kind == Kind::Word)
        .map_or("", |token| token.lower)
        .as_bytes();
    let made = |unit: VolumeUnit, factor: f64, doubt: Option<&'static str>, words: usize| {
        let next = if words == 2 { second_at + 1 } else { at + 1 };
        Some(Measure {
            unit: Unit::Volume(unit),
            factor,
            next: past_dot(tokens, next),
            doubt,
        })
    };
    let is_cup = matches!(
        second,
        b"cup" | b"cups" | b"cupful" | b"cupfuls" | b"cupsful"
    );
    let is_spoon = matches!(
        second,
        b"spoon" | b"spoons" | b"spoonful" | b"spoonfuls" | b"spoonsful"
    );
    match first.as_bytes() {
        b"fl" | b"fluid" | b"liquid" if matches!(second, b"oz" | b"ozs" | b"ounce" | b"ounces") => {
            made(VolumeUnit::FluidOunce, 1.0, None, 2)
        }
        b"metric" if is_cup => made(VolumeUnit::Millilitre, 250.0, None, 2),
        b"australian" | b"aussie" if matches!(second, b"tablespoon" | b"tablespoons" | b"tbsp") => {
            made(VolumeUnit::Millilitre, 20.0, None, 2)
        }
        b"imperial" | b"uk" | b"british" if matches!(second, b"pint" | b"pints") => {
            made(VolumeUnit::Millilitre, 568.261_25, None, 2)
        }
        b"us" | b"american" | b"standard" | b"measuring" if is_cup => {
            made(VolumeUnit::Cup, 1.0, None, 2)
        }
        b"tea" if is_spoon => made(VolumeUnit::Teaspoon, 1.0, None, 2),
        b"table" if is_spoon => made(VolumeUnit::Tablespoon, 1.0, None, 2),
        b"dessert" if is_spoon => made(VolumeUnit::Dessertspoon, 1.0, None, 2),
        b"tea" if is_cup => made(
            VolumeUnit::Cup,
            0.75,
            Some("A teacup is taken as 3/4 cup; old books differ."),
            2,
        ),
        b"coffee" if is_cup => made(
            VolumeUnit::Cup,
            1.0,
            Some("A coffee cup is taken as 1 cup; old books differ."),
            2,
        ),
        b"breakfast" if is_cup => made(
            VolumeUnit::Millilitre,
            BREAKFAST_CUP,
            Some("A breakfast cup is taken as half an imperial pint; old books differ."),
            2,
        ),
        b"coffee" if is_spoon => made(
            VolumeUnit::Teaspoon,
            0.5,
            Some("A coffee spoon is taken as 1/2 teaspoon."),
            2,
        ),
        b"salt" if is_spoon => made(
            VolumeUnit::Teaspoon,
            0.25,
            Some("A saltspoon is taken as 1/4 teaspoon."),
            2,
        ),
        b"teacup" | b"teacups" | b"teacupful" | b"teacupfuls" => made(
            VolumeUnit::Cup,
            0.75,
            Some("A teacup is taken as 3/4 cup; old books differ."),
            1,
        ),
        b"saltspoon" | b"saltspoons" | b"saltspoonful" | b"saltspoonfuls" => made(
            VolumeUnit::Teaspoon,
            0.25,
            Some("A saltspoon is taken as 1/4 teaspoon."),
            1,
        ),
        b"wineglass" | b"wineglassful" | b"wineglasses" => made(
            VolumeUnit::Cup,
            0.25,
            Some("A wineglass is taken as 1/4 cup; old books differ."),
            1,
        ),
        b"glass" | b"glasses" | b"glassful" | b"tumbler" | b"mug" | b"mugs" => made(
            VolumeUnit::Cup,
            1.0,
            Some("A glass or mug is taken as 1 cup. Measure yours."),
            1,
        ),
        b"wine" | b"sherry" if matches!(second, b"glass" | b"glasses" | b"glassful") => made(
            VolumeUnit::Cup,
            0.25,
            Some("A wineglass is taken as 1/4 cup; old books differ."),
            2,
        ),
        b"coffeecup" | b"coffeecups" | b"coffeecupful" => made(
            VolumeUnit::Cup,
            1.0,
            Some("A coffee cup is taken as 1 cup; old books differ."),
            1,
        ),
        b"breakfastcup" | b"breakfastcups" | b"breakfastcupful" | b"breakfastcupfuls" => made(
            VolumeUnit::Millilitre,
            BREAKFAST_CUP,
            Some("A breakfast cup is taken as half an imperial pint; old books differ."),
            1,
        ),
        b"great" | b"large" | b"big" | b"kitchen" if is_spoon => made(
            VolumeUnit::Tablespoon,
            1.0,
            Some("A large spoon is taken as a tablespoon."),
            2,
        ),
        b"shot" | b"shots" => made(
            VolumeUnit::Millilitre,
            30.0,
            Some("A shot is taken as 30 ml."),
            1,
        ),
        b"ladle" | b"ladleful" | b"ladles" => made(
            VolumeUnit::Cup,
            0.5,
            Some("A ladle is taken as 1/2 cup. Measure yours."),
            1,
        ),
        b"splash" | b"drizzle" | b"glug" | b"lug" | b"splashes" => made(
            VolumeUnit::Tablespoon,
            1.0,
            Some("A splash is taken as 1 tablespoon. Write the amount."),
            1,
        ),
        _ if is_specks(first) => made(VolumeUnit::Pinch, 1.0, Some("Taken as a pinch."), 1),
        b"squeeze" | b"squirt" => made(VolumeUnit::Teaspoon, 0.5, Some(SQUEEZE), 1),
        b"sprinkle" | b"sprinkling" => made(
            VolumeUnit::Teaspoon,
            0.5,
            Some("Taken as 1/2 teaspoon. Write the amount."),
            1,
        ),
        b"spoon" | b"spoons" | b"spoonful" | b"spoonfuls" => made(
            VolumeUnit::Tablespoon,
            1.0,
            Some("A spoon without its kind is taken as a tablespoon."),
            1,
        ),
        b"scoop" | b"scoops" => made(
            VolumeUnit::Cup,
            0.25,
            Some("A scoop is taken as 1/4 cup. Measure yours."),
            1,
        ),
        b"tad" | b"smidgen" | b"touch" | b"hint" | b"smidge" => {
            made(VolumeUnit::Pinch, 1.0, Some("Taken as a pinch."), 1)
        }
        _ => None,
    }
}

/// The unit of a word in lower case.
fn plain(word: &str) -> Option<Unit> {
    use VolumeUnit::*;
    let volume = |unit: VolumeUnit| Some(Unit::Volume(unit));
    let mass = |unit: Mass| Some(Unit::Mass(unit));
    match word.as_bytes() {
        b"cup" | b"cups" | b"cupful" | b"cupfuls" | b"cupsful" | b"cp" | b"cps" => volume(Cup),
        b"tablespoon" | b"tablespoons" | b"tablespoonful" | b"tablespoonfuls"
        | b"tablespoonsful" | b"tbsp" | b"tbsps" | b"tbs" | b"tb" | b"tbl" | b"tbls" | b"tblsp"
        | b"tblsps" | b"tblspn" | b"tbspn" | b"tbspns" | b"tabsp" | b"tablespn" | b"tblespoon"
        | b"tblespoons" | b"tablesp" | b"tbps" | b"tablespoon's" | b"tablespons" | b"tblspoon" => {
            volume(Tablespoon)
        }
        b"dessertspoon" | b"dessertspoons" | b"dessertspoonful" | b"dessertspoonfuls" | b"dsp"
        | b"dstspn" | b"dssp" | b"dessertsp" | b"dstsp" => volume(Dessertspoon),
        b"teaspoon" | b"teaspoons" | b"teaspoonful" | b"teaspoonfuls" | b"teaspoonsful"
        | b"tsp" | b"tsps" | b"teas" | b"tspn" | b"tspns" | b"teasp" | b"tspoon" | b"teaspn"
        | b"ts" | b"teaspons" | b"teapoon" | b"teapoons" => volume(Teaspoon),
        b"floz" => volume(FluidOunce),
        b"gill" | b"gills" => volume(Gill),
        b"pint" | b"pints" | b"pt" | b"pts" => volume(Pint),
        b"quart" | b"quarts" | b"qt" | b"qts" => volume(Quart),
        b"gallon" | b"gallons" | b"gal" | b"gals" => volume(Gallon),
        b"ml" | b"mls" | b"cc" | b"millilitre" | b"millilitres" | b"milliliter"
        | b"milliliters" | b"mil" | b"mils" => volume(Millilitre),
        b"cl" | b"cls" | b"centilitre" | b"centilitres" | b"centiliter" | b"centiliters" => {
            volume(Centilitre)
        }
        b"dl" | b"dls" | b"decilitre" | b"decilitres" | b"deciliter" | b"deciliters" => {
            volume(Decilitre)
        }
        b"l" | b"ltr" | b"ltrs" | b"lt" | b"litre" | b"litres" | b"liter" | b"liters" => {
            volume(Litre)
        }
        b"pinch" | b"pinches" => volume(Pinch),
        b"dash" | b"dashes" => volume(Dash),
        b"drop" | b"drops" => volume(Drop),
        b"g" | b"gr" | b"grs" | b"gm" | b"gms" | b"gram" | b"grams" | b"gramme" | b"grammes" => {
            mass(Mass::GRAM)
        }
        b"kg" | b"kgs" | b"kilo" | b"kilos" | b"kilogram" | b"kilograms" | b"kilogramme"
        | b"kilogrammes" => mass(Mass::grams(1000.0)),
        b"mg" | b"mgs" | b"milligram" | b"milligrams" => mass(Mass::grams(0.001)),
        b"oz" | b"ozs" | b"ounce" | b"ounces" | b"onz" => mass(Mass::OUNCE),
        b"lb" | b"lbs" | b"pound" | b"pounds" | b"lbm" => mass(Mass::POUND),
        _ => piece(word).map(Unit::Piece),
    }
}

/// A spoon with a slip in it: two letters changed places, or one is wrong, missing or too many.
fn misspelt(word: &str) -> Option<Unit> {
    let known = ["tablespoon", "teaspoon"];
    let single = word.trim_end_matches('s');
    if single.len() < 7 || !single.starts_with('t') {
        return None;
    }
    let near = known
        .into_iter()
        .find(|known| lookup::slips(single, known) <= 2)?;
    plain(near)
}

/// The piece that a word counts, if it does.
pub fn piece(word: &str) -> Option<Piece> {
    Some(match word.as_bytes() {
        b"stick" | b"sticks" | b"quill" | b"quills" => Piece::Stick,
        b"slice" | b"slices" | b"round" | b"rounds" => Piece::Slice,
        b"stalk" | b"stalks" | b"rib" | b"ribs" => Piece::Stalk,
        b"square" | b"squares" | b"sq" | b"sqs" => Piece::Square,
        b"bar" | b"bars" => Piece::Bar,
        b"packet" | b"packets" | b"sachet" | b"sachets" | b"envelope" | b"envelopes"
        | b"package" | b"packages" | b"pkg" | b"pkgs" | b"pkge" | b"pk" | b"pkt" | b"pkts"
        | b"pack" | b"packs" | b"box" | b"boxes" | b"bag" | b"bags" | b"pouch" | b"pouches"
        | b"tube" | b"tubes" | b"satchet" => Piece::Packet,
        b"can" | b"cans" | b"tin" | b"tins" => Piece::Can,
        b"block" | b"blocks" => Piece::Block,
        b"carton" | b"cartons" | b"ctn" | b"pot" | b"pots" | b"tub" | b"tubs" | b"jar"
        | b"jars" | b"container" | b"containers" | b"bottle" | b"bottles" | b"punnet"
        | b"punnets" => Piece::Pot,
        b"knob" | b"knobs" => Piece::Knob,
        b"handful" | b"handfuls" | b"handsful" | b"bunch" | b"bunches" | b"fistful" => {
            Piece::Handful
        }
        b"pod" | b"pods" => Piece::Pod,
        b"sprig" | b"sprigs" | b"leaf" | b"leaves" => Piece::Sprig,
        b"piece" | b"pieces" | b"pcs" | b"nos" | b"clove" | b"cloves" | b"head" | b"heads"
        | b"ball" | b"balls" | b"sheet" | b"sheets" | b"cube" | b"cubes" | b"ring" | b"rings"
        | b"segment" | b"segments" | b"wedge" | b"wedges" | b"cake" | b"cakes" | b"loaf"
        | b"rasher" | b"fillet" => Piece::Each,
        _ => return None,
    })
}

/// Whether the word names something that holds an amount printed on it.
pub fn is_container(word: &str) -> bool {
    matches!(
        piece(word),
        Some(Piece::Packet | Piece::Can | Piece::Pot | Piece::Block | Piece::Bar)
    ) || matches!(word, "tubs" | "cake" | "piece" | "pieces" | "log" | "ball")
}

/// Words for pieces are also names ("2 cloves", "1 cake"): they count only where a name follows.
fn piece_in_place(tokens: &[Token], at: usize, found: Measure) -> Option<Measure> {
    let word = tokens[at].lower;
    let mut after = found.next;
    let has_of = tokens.get(after).is_some_and(|token| token.is("of"));
    after += usize::from(has_of);
    let follows = tokens.get(after);
    let name_follows = follows.is_some_and(|token| {
        token.kind == Kind::Word
            && !token.is_any(&["cut", "chopped", "crushed", "or", "and", "for", "to", "in"])
    });
    match word {
        "cube" | "cubes"
            if name_follows
                && follows.is_some_and(|token| {
                    token.is_any(&["butter", "margarine", "unsalted", "salted"])
                }) =>
        {
            Some(Measure {
                unit: Unit::Piece(Piece::Stick),
                ..found
            })
        }
        "cake" | "cakes" => (has_of
            || follows.is_some_and(|token| token.is_any(&["yeast", "compressed", "fresh"])))
        .then_some(Measure {
            unit: Unit::Piece(Piece::Block),
            ..found
        }),
        "clove" | "cloves" => follows
            .is_some_and(|token| token.is_any(&["garlic", "fresh", "of"]) || has_of)
            .then_some(found),
        "loaf" | "ring" | "rings" | "round" | "rounds" | "head" | "heads" | "ball" | "balls"
        | "piece" | "pieces" | "sheet" | "sheets" | "segment" | "segments" | "wedge" | "wedges"
        | "cube" | "cubes" | "leaf" | "leaves" | "pod" | "pods" | "square" | "squares"
        | "block" | "blocks" | "rib" | "ribs" => name_follows.then_some(found),
        "box" if follows.is_some_and(|token| token.is_any(&["grater"])) => None,
        _ => Some(found),
    }
}

/// Whether a measure may stand without a number: "pinch of salt".
pub fn stands_alone(word: &str) -> bool {
    matches!(
        word.as_bytes(),
        b"pinch"
            | b"pinches"
            | b"dash"
            | b"dashes"
            | b"knob"
            | b"handful"
            | b"splash"
            | b"drizzle"
            | b"squeeze"
            | b"drop"
            | b"drops"
            | b"sprinkle"
            | b"sprinkling"
            | b"glug"
            | b"smidgen"
            | b"tad"
            | b"touch"
            | b"hint"
            | b"grating"
            | b"speck"
            | b"shake"
            | b"bunch"
    )
}

#[cfg(test)]
mod tests {
    use super::{Unit, VolumeUnit, measure};
    use crate::baking::ingredient::Piece;
    use crate::baking::quantity::Mass;
    use crate::baking::recipe::token::tokens;

    fn unit(text: &str) -> Option<Unit> {
        let lower = text.to_ascii_lowercase();
        measure(&tokens(text, &lower), 0).map(|found| found.unit)
    }

    #[test]
    fn case_tells_a_spoon_from_a_spoon() {
        assert_eq!(unit("T sugar"), Some(Unit::Volume(VolumeUnit::Tablespoon)));
        assert_eq!(unit("t. salt"), Some(Unit::Volume(VolumeUnit::Teaspoon)));
        assert_eq!(unit("TSP salt"), Some(Unit::Volume(VolumeUnit::Teaspoon)));
        assert_eq!(
            unit("fl. oz. milk"),
            Some(Unit::Volume(VolumeUnit::FluidOunce))
        );
        assert_eq!(unit("oz. butter"), Some(Unit::Mass(Mass::OUNCE)));
    }

    #[test]
    fn pieces_are_units_only_before_a_name() {
        assert_eq!(unit("cloves"), None);
        assert_eq!(unit("cloves garlic"), Some(Unit::Piece(Piece::Each)));
        assert_eq!(unit("sticks butter"), Some(Unit::Piece(Piece::Stick)));
        assert_eq!(unit("cake mix"), None);
    }
}
