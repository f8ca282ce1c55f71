//! Measure words: from "Tbsp." and "cans" to a unit.
//!
//! Goes in: tokens and a place among them, a count having been read before. Comes out: the unit
//! that stands there, and where it ends.

use super::token::{Kind, Token};
use super::{Unit, VolumeUnit};
use crate::baking::ingredient::{Piece, lookup};
use crate::baking::lexicon::Lexicon;
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
const SPECKS: &str = "grain grains grating gratings scraping scrapings speck specks shake shakes";

/// Whether a word stands for so little that it cannot be measured.
pub fn is_specks(word: &str) -> bool {
    is_among(word, SPECKS)
}

/// Whether a word stands in a row of words.
fn is_among(word: &str, words: &str) -> bool {
    words.split(' ').any(|known| known == word)
}

/// A measure of a word and what must follow it, or of one word alone that is only roughly known.
struct Named {
    /// The second word, one of these; empty where none is needed.
    second: &'static str,
    unit: VolumeUnit,
    factor: f64,
    doubt: Option<&'static str>,
}

/// A measure that everybody knows by two words.
const fn two(second: &'static str, unit: VolumeUnit, factor: f64) -> Named {
    Named {
        second,
        unit,
        factor,
        doubt: None,
    }
}

/// An old or loose measure, with what is said of it.
const fn rough(second: &'static str, unit: VolumeUnit, factor: f64, doubt: &'static str) -> Named {
    Named {
        second,
        unit,
        factor,
        doubt: Some(doubt),
    }
}

const CUPS: &str = "cup cups cupful cupfuls cupsful";
const SPOONS: &str = "spoon spoons spoonful spoonfuls spoonsful";
const GLASSES: &str = "glass glasses glassful";
const TEACUP: &str = "A teacup is taken as 3/4 cup; old books differ.";
const COFFEE_CUP: &str = "A coffee cup is taken as 1 cup; old books differ.";
const BREAKFAST: &str = "A breakfast cup is taken as half an imperial pint; old books differ.";
const SALTSPOON: &str = "A saltspoon is taken as 1/4 teaspoon.";
const WINEGLASS: &str = "A wineglass is taken as 1/4 cup; old books differ.";
const AS_A_PINCH: &str = "Taken as a pinch.";

/// Two words that make one measure, and old measures that are only roughly known.
static NAMED: Lexicon<Named> = {
    use VolumeUnit::*;
    Lexicon::new(&[
        (
            "fl fluid liquid",
            two("oz ozs ounce ounces", FluidOunce, 1.0),
        ),
        ("metric", two(CUPS, Millilitre, 250.0)),
        (
            "australian aussie",
            two("tablespoon tablespoons tbsp", Millilitre, 20.0),
        ),
        (
            "imperial uk british",
            two("pint pints", Millilitre, 568.261_25),
        ),
        ("us american standard measuring", two(CUPS, Cup, 1.0)),
        ("tea", two(SPOONS, Teaspoon, 1.0)),
        ("table", two(SPOONS, Tablespoon, 1.0)),
        ("dessert", two(SPOONS, Dessertspoon, 1.0)),
        ("tea", rough(CUPS, Cup, 0.75, TEACUP)),
        ("coffee", rough(CUPS, Cup, 1.0, COFFEE_CUP)),
        (
            "breakfast",
            rough(CUPS, Millilitre, BREAKFAST_CUP, BREAKFAST),
        ),
        (
            "coffee",
            rough(
                SPOONS,
                Teaspoon,
                0.5,
                "A coffee spoon is taken as 1/2 teaspoon.",
            ),
        ),
        ("salt", rough(SPOONS, Teaspoon, 0.25, SALTSPOON)),
        (
            "teacup teacups teacupful teacupfuls",
            rough("", Cup, 0.75, TEACUP),
        ),
        (
            "saltspoon saltspoons saltspoonful saltspoonfuls",
            rough("", Teaspoon, 0.25, SALTSPOON),
        ),
        (
            "wineglass wineglassful wineglasses",
            rough("", Cup, 0.25, WINEGLASS),
        ),
        (
            "glass glasses glassful tumbler mug mugs",
            rough(
                "",
                Cup,
                1.0,
                "A glass or mug is taken as 1 cup. Measure yours.",
            ),
        ),
        ("wine sherry", rough(GLASSES, Cup, 0.25, WINEGLASS)),
        (
            "coffeecup coffeecups coffeecupful",
            rough("", Cup, 1.0, COFFEE_CUP),
        ),
        (
            "breakfastcup breakfastcups breakfastcupful breakfastcupfuls",
            rough("", Millilitre, BREAKFAST_CUP, BREAKFAST),
        ),
        (
            "great large big kitchen",
            rough(
                SPOONS,
                Tablespoon,
                1.0,
                "A large spoon is taken as a tablespoon.",
            ),
        ),
        (
            "shot shots",
            rough("", Millilitre, 30.0, "A shot is taken as 30 ml."),
        ),
        (
            "ladle ladleful ladles",
            rough("", Cup, 0.5, "A ladle is taken as 1/2 cup. Measure yours."),
        ),
        (
            "splash drizzle glug lug splashes",
            rough(
                "",
                Tablespoon,
                1.0,
                "A splash is taken as 1 tablespoon. Write the amount.",
            ),
        ),
        (SPECKS, rough("", Pinch, 1.0, AS_A_PINCH)),
        ("squeeze squirt", rough("", Teaspoon, 0.5, SQUEEZE)),
        (
            "sprinkle sprinkling",
            rough(
                "",
                Teaspoon,
                0.5,
                "Taken as 1/2 teaspoon. Write the amount.",
            ),
        ),
        (
            "spoon spoons spoonful spoonfuls",
            rough(
                "",
                Tablespoon,
                1.0,
                "A spoon without its kind is taken as a tablespoon.",
            ),
        ),
        (
            "scoop scoops",
            rough("", Cup, 0.25, "A scoop is taken as 1/4 cup. Measure yours."),
        ),
        (
            "tad smidgen touch hint smidge",
            rough("", Pinch, 1.0, AS_A_PINCH),
        ),
    ])
};

/// Two words that make one measure, and old measures that are only roughly known.
fn two_words(tokens: &[Token], at: usize) -> Option<Measure> {
    let mut named = NAMED.all(tokens[at].lower).peekable();
    named.peek()?;
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
        .map_or("", |token| token.lower);
    let found = named.find(|named| named.second.is_empty() || is_among(second, named.second))?;
    let last = if found.second.is_empty() {
        at
    } else {
        second_at
    };
    Some(Measure {
        unit: Unit::Volume(found.unit),
        factor: found.factor,
        next: past_dot(tokens, last + 1),
        doubt: found.doubt,
    })
}

/// Units by their words.
static UNITS: Lexicon<Unit> = {
    use Unit::{Mass as Weight, Volume};
    use VolumeUnit::*;
    Lexicon::new(&[
        ("cup cups cupful cupfuls cupsful cp cps", Volume(Cup)),
        (
            "tablespoon tablespoons tablespoonful tablespoonfuls tablespoonsful tbsp tbsps tbs tb tbl tbls tblsp tblsps \
             tblspn tbspn tbspns tabsp tablespn tblespoon tblespoons tablesp tbps tablespoon's tablespons tblspoon",
            Volume(Tablespoon),
        ),
        (
            "dessertspoon dessertspoons dessertspoonful dessertspoonfuls dsp dstspn dssp dessertsp dstsp",
            Volume(Dessertspoon),
        ),
        (
            "teaspoon teaspoons teaspoonful teaspoonfuls teaspoonsful tsp tsps teas tspn tspns teasp tspoon teaspn ts \
             teaspons teapoon teapoons",
            Volume(Teaspoon),
        ),
        ("floz", Volume(FluidOunce)),
        ("gill gills", Volume(Gill)),
        ("pint pints pt pts", Volume(Pint)),
        ("quart quarts qt qts", Volume(Quart)),
        ("gallon gallons gal gals", Volume(Gallon)),
        (
            "ml mls cc millilitre millilitres milliliter milliliters mil mils",
            Volume(Millilitre),
        ),
        (
            "cl cls centilitre centilitres centiliter centiliters",
            Volume(Centilitre),
        ),
        (
            "dl dls decilitre decilitres deciliter deciliters",
            Volume(Decilitre),
        ),
        ("l ltr ltrs lt litre litres liter liters", Volume(Litre)),
        ("pinch pinches", Volume(Pinch)),
        ("dash dashes", Volume(Dash)),
        ("drop drops", Volume(Drop)),
        (
            "g gr grs gm gms gram grams gramme grammes",
            Weight(Mass::GRAM),
        ),
        (
            "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
            Weight(Mass::grams(1000.0)),
        ),
        ("mg mgs milligram milligrams", Weight(Mass::grams(0.001))),
        ("oz ozs ounce ounces onz", Weight(Mass::OUNCE)),
        ("lb lbs pound pounds lbm", Weight(Mass::POUND)),
    ])
};

/// The unit of a word in lower case.
fn plain(word: &str) -> Option<Unit> {
    UNITS
        .find(word)
        .copied()
        .or_else(|| piece(word).map(Unit::Piece))
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

/// What is counted, by its words.
static PIECES: Lexicon<Piece> = Lexicon::new(&[
    ("stick sticks quill quills", Piece::Stick),
    ("slice slices round rounds", Piece::Slice),
    ("stalk stalks rib ribs", Piece::Stalk),
    ("square squares sq sqs", Piece::Square),
    ("bar bars", Piece::Bar),
    (
        "packet packets sachet sachets envelope envelopes package packages pkg pkgs pkge pk pkt pkts pack packs box boxes \
         bag bags pouch pouches tube tubes satchet",
        Piece::Packet,
    ),
    ("can cans tin tins", Piece::Can),
    ("block blocks", Piece::Block),
    (
        "carton cartons ctn pot pots tub tubs jar jars container containers bottle bottles punnet punnets",
        Piece::Pot,
    ),
    ("knob knobs", Piece::Knob),
    (
        "handful handfuls handsful bunch bunches fistful",
        Piece::Handful,
    ),
    ("pod pods", Piece::Pod),
    ("sprig sprigs leaf leaves", Piece::Sprig),
    (
        "piece pieces pcs nos clove cloves head heads ball balls sheet sheets cube cubes ring rings segment segments wedge \
         wedges cake cakes loaf rasher fillet",
        Piece::Each,
    ),
]);

/// The piece that a word counts, if it does.
pub fn piece(word: &str) -> Option<Piece> {
    PIECES.find(word).copied()
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

static ALONE: Lexicon<()> = Lexicon::new(&[(
    "pinch pinches dash dashes knob handful splash drizzle squeeze drop drops sprinkle sprinkling glug smidgen tad \
     touch hint grating speck shake bunch",
    (),
)]);

/// Whether a measure may stand without a number: "pinch of salt".
pub fn stands_alone(word: &str) -> bool {
    ALONE.has(word)
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
