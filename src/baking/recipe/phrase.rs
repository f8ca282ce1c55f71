//! What the words around a name say: state, filling, size, and why a line stays out of the batter.

use super::{Aside, Level};
use crate::baking::ingredient::{Filling, Form, PieceSize};
use crate::baking::lexicon::Lexicon;
use crate::baking::text::{Phrases, holds, letters};

static FORMS: Lexicon<Form> = Lexicon::new(&[
    ("melted", Form::Melted),
    ("packed", Form::Packed),
    ("loose loosely unpacked", Form::Loose),
    ("chopped minced broken crumbled", Form::Chopped),
    ("diced cubed cubes chunks dice", Form::Cubed),
    ("sliced slices", Form::Sliced),
    ("slivered slivers julienned", Form::Slivered),
    ("whole", Form::Whole),
    ("halved halves", Form::Halved),
    ("mashed", Form::Mashed),
    ("pureed puree purée puréed purèe", Form::Pureed),
    ("grated shredded", Form::Grated),
    ("ground", Form::Ground),
    ("whipped", Form::Whipped),
    ("crushed", Form::Crushed),
    ("chips", Form::Chips),
]);

/// The state that a word names.
pub fn form(word: &str) -> Option<Form> {
    FORMS.find(word).copied()
}

/// Words for a cup filled with what was sifted before.
const SIFTED: Phrases = Phrases(&Phrases::of([
    "measured after sift",
    "sifted before measur",
    "sifted, then measured",
    "sift before measur",
    "sifted then measured",
]));

/// Words for a cup filled with a spoon, where it is levelled too.
const SPOONED: Phrases = Phrases(&Phrases::of(["spooned", "spoon ", "spoon-"]));

/// Words for a cup that went into the bag.
const DIPPED: Phrases = Phrases(&Phrases::of([
    "scooped",
    "dipped and",
    "dip and sweep",
    "scoop and",
    "dip-and",
]));

/// How a cup was filled, where a note says so.
pub fn filling(note: &str) -> Option<Filling> {
    let letters = letters(note);
    let has = |phrases: Phrases| phrases.any_in(note, letters);
    let is_levelled = || {
        ["level", "swept", "into"]
            .iter()
            .any(|words| holds(note, words))
    };
    if has(SIFTED) {
        Some(Filling::Sifted)
    } else if has(SPOONED) && is_levelled() {
        Some(Filling::Spooned)
    } else {
        has(DIPPED).then_some(Filling::Dipped)
    }
}

/// The size class that words name.
pub fn size(words: &str) -> Option<PieceSize> {
    let mut previous = "";
    let mut found = None;
    for word in words
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
    {
        found = match word {
            "large" | "lg" | "lge" | "big" if matches!(previous, "extra" | "x" | "very") => {
                Some(PieceSize::ExtraLarge)
            }
            "large" | "lg" | "lge" => Some(PieceSize::Large),
            "xl" | "xlarge" => Some(PieceSize::ExtraLarge),
            "jumbo" | "king" => Some(PieceSize::Jumbo),
            "medium" | "med" => Some(PieceSize::Medium),
            "small" | "sm" => Some(PieceSize::Small),
            _ => found,
        };
        previous = word;
    }
    found
}

/// How full the measure is, where a note says so.
pub fn level(note: &str) -> Option<Level> {
    note.split(|letter: char| !letter.is_alphanumeric())
        .find_map(|word| match word {
            "scant" => Some(Level::Scant),
            "heaping" | "heaped" => Some(Level::Heaped),
            "rounded" => Some(Level::Rounded),
            "generous" => Some(Level::Generous),
            _ => None,
        })
}

/// Words that leave the amount to the baker's taste or need.
const TO_TASTE: Phrases = Phrases(&Phrases::of([
    "to taste",
    "as needed",
    "as required",
    "as desired",
    "as necessary",
    "if needed",
    "to your taste",
    "your taste",
    "as you like",
    "as you please",
    "to your liking",
    "enough to",
]));

/// Whether a note leaves the amount to the baker's taste or need.
pub fn is_to_taste(note: &str) -> bool {
    TO_TASTE.any_in(note, letters(note))
}

/// Words that set a part of the amount aside.
const BESIDES: Phrases = Phrases(&Phrases::of([
    "plus",
    "extra",
    "more ",
    "additional",
    "and some",
    "as well",
    "leftover",
    "reserve",
    "divided",
    "little for",
    "and for",
]));

/// Words for what may be left out.
const OPTIONAL: Phrases = Phrases(&Phrases::of([
    "optional",
    "(opt",
    "if desired",
    "if you like",
    "if using",
    "if liked",
    "if you want",
    "if wanted",
    "if wished",
    "if u ",
    "if you have",
    "only if your",
    "only if you",
    "if you choose",
    "when liked",
]));

/// Words for what never leaves the pan.
const PAN: Phrases = Phrases(&Phrases::of([
    "greasing",
    "to grease",
    "for the pan",
    "for the tin",
    "for the dish",
    "for the skillet",
    "for the mould",
    "for the mold",
    "for pan",
    "for tin",
    "for your pan",
    "for dusting the",
    "to dust the pan",
    "to dust the tin",
    "to flour the",
    "flouring",
    "for lining",
    "to line",
    "coating the pan",
    "buttering",
    "for oiling",
    "to oil",
    "for rolling",
    "work surface",
    "for frying",
    "the mould",
    "the mold",
    "for the baking dish",
]));

/// Words for what is put on afterwards.
const SERVE: Phrases = Phrases(&Phrases::of([
    "to serve",
    "for serving",
    "to decorate",
    "for decorating",
    "for decoration",
    "for garnish",
    "to garnish",
    "as garnish",
    "as a garnish",
    "as decoration",
    "for topping",
    "to top",
    "for the top",
    "on top",
    "for sprinkling",
    "to sprinkle",
    "for drizzling",
    "to drizzle",
    "to finish",
    "for finishing",
    "for brushing",
    "to brush",
    "for dusting",
    "to dust",
    "when serving",
    "for dredging",
    "to dredge",
    "for sprinkle",
    "for rolling in",
    "to accompany",
    "to fill",
    "for filling",
    "to sandwich",
    "to scatter",
    "for scattering",
    "to glaze",
    "for glazing",
    "for presentation",
]));

/// Why a line stays out of the batter, from one of its notes in lower case. `is_main` marks the words
/// that hold the name: "extra butter for greasing" is for the pan, while in "butter, plus extra for
/// greasing" only the extra is.
pub fn aside(note: &str, is_main: bool) -> Option<Aside> {
    let letters = letters(note);
    let has = |phrases: Phrases| phrases.any_in(note, letters);
    if !is_main && has(BESIDES) {
        return None;
    }
    if note == "opt" || note.ends_with(" opt") {
        return Some(Aside::Optional);
    }
    if holds(note, "plus ") || holds(note, "more for") {
        let is_optional = holds(note, "(optional") || holds(note, "optional)");
        return is_optional.then_some(Aside::Optional);
    }
    if has(OPTIONAL) {
        return Some(Aside::Optional);
    }
    if has(PAN) {
        return Some(Aside::ForThePan);
    }
    if has(SERVE) || note == "garnish" || note == "topping" {
        return Some(Aside::ToServe);
    }
    None
}

/// Whether a note says that the line belongs to a part that never meets the batter.
pub fn is_beside(note: &str) -> bool {
    let Some(rest) = note.split("for ").nth(1) else {
        return false;
    };
    let rest = rest.trim_start_matches("the ").trim_start_matches("a ");
    [
        "glaze",
        "icing",
        "frosting",
        "filling",
        "syrup",
        "drizzle",
        "ganache",
        "buttercream",
        "sauce",
        "streusel",
        "topping",
    ]
    .iter()
    .any(|part| rest.starts_with(part))
}

#[cfg(test)]
mod tests {
    use super::{Aside, PieceSize, aside, size};

    #[test]
    fn extra_for_the_pan_is_only_the_extra() {
        assert_eq!(aside("plus extra for greasing", false), None);
        assert_eq!(aside("for greasing", false), Some(Aside::ForThePan));
        assert_eq!(
            aside("extra butter for greasing", true),
            Some(Aside::ForThePan)
        );
        assert_eq!(aside("blended into flour", false), None);
        assert_eq!(aside("for the skillet", false), Some(Aside::ForThePan));
        assert_eq!(aside("flour plus more for dusting", true), None);
        assert_eq!(aside("optional", false), Some(Aside::Optional));
    }

    #[test]
    fn sizes() {
        assert_eq!(size("extra-large"), Some(PieceSize::ExtraLarge));
        assert_eq!(size("large free-range"), Some(PieceSize::Large));
        assert_eq!(size("organic"), None);
    }
}
