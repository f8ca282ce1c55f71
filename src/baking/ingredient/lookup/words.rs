//! Words of names in one plain form, and which of them only describe.

use crate::baking::ingredient::{Allergen, Ingredient};
use crate::baking::lexicon::Lexicon;
use crate::baking::text::lower_letter;

/// A name's words in the one form that both the tables and the text are brought to: lower case,
/// no accents, no hyphens, singular, one spelling. At most so many words.
pub fn plain(name: &str, most: usize) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    let mut rest = name;
    while !rest.is_empty() && out.len() < most {
        let end = rest.find(is_gap).unwrap_or(rest.len());
        if end > 0 {
            let word = plain_word(&rest[..end]);
            if !word.is_empty() {
                push_spelt(&mut out, word);
            }
        }
        let gap = rest[end..].chars().next();
        if gap == Some('/') {
            out.push("or".to_owned());
        } else if matches!(gap, Some('&' | '+')) {
            out.push("and".to_owned());
        }
        rest = &rest[end + gap.map_or(0, char::len_utf8)..];
    }
    while out.last().is_some_and(|word| {
        matches!(
            word.as_str(),
            "or" | "and" | "of" | "the" | "a" | "with" | "in"
        )
    }) {
        out.pop();
    }
    let joints = out
        .iter()
        .take_while(|word| {
            matches!(
                word.as_str(),
                "or" | "and" | "of" | "the" | "a" | "an" | "with" | "in"
            )
        })
        .count();
    out.drain(..joints);
    out.retain(|word| !matches!(word.as_str(), "the" | "a" | "an"));
    let both = (0..out.len().saturating_sub(1)).find(|at| out[*at] == "and" && out[at + 1] == "or");
    if let Some(at) = both {
        out.remove(at);
    }
    out
}

/// What stands between words.
fn is_gap(character: char) -> bool {
    !(character.is_alphanumeric() || matches!(character, '\'' | '%'))
}

/// One word in plain form.
pub fn plain_word(word: &str) -> String {
    let mut out = String::with_capacity(word.len());
    if word.is_ascii() {
        // Most words are.
        word.clone_into(&mut out);
        out.make_ascii_lowercase();
        out.retain(|character| character != '\'');
        singular(&mut out);
        return out;
    }
    for character in word.chars() {
        match character {
            'a'..='z' | '0'..='9' | '%' => out.push(character),
            'A'..='Z' => out.push(character.to_ascii_lowercase()),
            '\'' => {}
            'à'..='å' | 'À'..='Å' => out.push('a'),
            'è'..='ë' | 'È'..='Ë' => out.push('e'),
            'ì'..='ï' | 'Ì'..='Ï' => out.push('i'),
            'ò'..='ö' | 'ø' | 'Ò'..='Ö' | 'Ø' => out.push('o'),
            'ù'..='ü' | 'Ù'..='Ü' => out.push('u'),
            'ç' | 'Ç' => out.push('c'),
            'ñ' | 'Ñ' => out.push('n'),
            'æ' | 'Æ' => out.push_str("ae"),
            'œ' | 'Œ' => out.push_str("oe"),
            'ß' => out.push_str("ss"),
            _ => out.push(lower_letter(character)),
        }
    }
    singular(&mut out);
    out
}

/// Takes the plural off. The same rule is used on the tables, so it need not be right, only the same.
fn singular(word: &mut String) {
    if word.len() < 4 {
        return;
    }
    // How much falls off, and what takes its place.
    let (off, on) = match word.as_bytes() {
        b"leaves" | b"loaves" | b"halves" => (3, "f"),
        b"knives" => (3, "fe"),
        [.., b'i', b'e', b's'] => (3, "y"),
        [.., b'i', b'e'] => (2, "y"),
        [.., b'x' | b'o', b'e', b's']
        | [.., b'c' | b's', b'h', b'e', b's']
        | [.., b's', b's', b'e', b's']
        | [.., b'z', b'z', b'e', b's'] => (2, ""),
        [.., b's' | b'u' | b'i', b's'] => return,
        [.., b's'] => (1, ""),
        _ => return,
    };
    word.truncate(word.len() - off);
    word.push_str(on);
}

/// Words in the one spelling that is kept; some are two words.
static SPELT: Lexicon<&str> = Lexicon::new(&[
    ("yoghurt yogourt yoghourt yogart", "yogurt"),
    ("flavour flavouring flavoring", "flavor"),
    ("flavoured", "flavored"),
    ("colour colouring coloring", "color"),
    ("grey", "gray"),
    ("castor", "caster"),
    ("allpurpose", "all purpose"),
    ("selfraising selfrising", "self raising"),
    ("wholewheat", "whole wheat"),
    ("wholegrain", "whole grain"),
    ("semisweet", "semi sweet"),
    ("lowfat", "low fat"),
    ("nonfat", "non fat"),
    ("fullfat", "full fat"),
    ("sulphured", "sulfured"),
    ("unsulphured", "unsulfured"),
    ("glace glaced", "glace"),
    ("choc choco", "chocolate"),
    ("veg", "vegetable"),
    ("pwdr pwd pdr", "powder"),
    ("ess", "essence"),
    ("evoo", "extra virgin olive oil"),
    ("ap", "all purpose"),
    ("crystallised", "crystallized"),
    ("caramelised", "caramelized"),
    ("pasteurised", "pasteurized"),
    ("n", "and"),
    ("lemon's", "lemon"),
]);

/// Adds a word in the one spelling that is kept.
fn push_spelt(out: &mut Vec<String>, word: String) {
    if word == "rising" && out.last().is_some_and(|last| last == "self") {
        out.push("raising".to_owned());
    } else if let Some(spelt) = SPELT.find(&word) {
        out.extend(spelt.split(' ').map(str::to_owned));
    } else {
        out.push(word);
    }
}

static SHARED_HEADS: Lexicon<()> = Lexicon::new(&[(
    "extract essence flavouring oil zest rind peel juice milk flour butter yogurt cream crumb vinegar \
     liqueur jam seed puree meal",
    (),
)]);

/// Heads that two names share: "almond or vanilla extract", "lemon or orange zest".
pub fn is_shared_head(word: &str) -> bool {
    SHARED_HEADS.has(word)
}

/// Whether a word parts one ingredient from another that may take its place.
pub fn is_or(word: &str) -> bool {
    word == "or"
}

static CUTS: Lexicon<()> = Lexicon::new(&[(
    "in with at from for to such like of if plu plus see about enough preferably eg ie that which \
     without until as per on into before after i you we depending but then not minus less including \
     use using is are it when",
    (),
)]);

/// Whether the name is over where this word stands.
pub fn cuts(word: &str) -> bool {
    CUTS.has(word)
}

/// Whether an unknown word has the shape of one that only describes: "rinsed", "loosely", "70%".
pub fn looks_describing(word: &str) -> bool {
    const CHANGES: &[&str] = &[
        "dried",
        "powdered",
        "condensed",
        "evaporated",
        "malted",
        "candied",
        "crystallized",
        "smoked",
        "pickled",
        "fermented",
        "sprouted",
        "flavored",
        "sweetened",
        "spiced",
        "freeze",
        "jelly",
        "caramelized",
    ];
    if word.ends_with('%') || word.bytes().all(|byte| byte.is_ascii_digit()) || word.len() == 1 {
        return true;
    }
    word.len() >= 5
        && (word.ends_with("ed") || word.ends_with("ly"))
        && !["seed", "weed", "bred"]
            .iter()
            .any(|end| word.ends_with(end))
        && !CHANGES.contains(&word)
}

/// A name may promise a diet that the ingredient taken for it does not keep.
pub fn diet_doubt(plain: &[String], ingredient: &Ingredient) -> Option<String> {
    let has = |word: &str| plain.iter().any(|known| known == word);
    let follows = |one: &str, two: &str| {
        plain
            .windows(2)
            .any(|pair| pair[0] == one && pair[1] == two)
    };
    let from_plants = has("vegan")
        || has("eggless")
        || follows("plant", "based")
        || follows("dairy", "free")
        || follows("non", "dairy");
    if from_plants && ingredient.plant_based == Some(false) {
        return Some(format!(
            "Taken for {}, which is not made of plants alone. Choose the one that is meant.",
            ingredient.name
        ));
    }
    let free_of_gluten = follows("gluten", "free") || has("gf");
    if free_of_gluten
        && ingredient
            .allergens
            .iter()
            .any(|allergen| matches!(allergen, Allergen::Wheat | Allergen::Gluten))
    {
        return Some(format!(
            "Taken for {}, which holds gluten. Choose the one that is meant.",
            ingredient.name
        ));
    }
    if follows("sugar", "free")
        && matches!(
            ingredient.group,
            super::super::Group::Sugar
                | super::super::Group::Syrup
                | super::super::Group::Chocolate
        )
    {
        return Some(format!(
            "Taken for {}, which is not free of sugar.",
            ingredient.name
        ));
    }
    None
}

/// Words that describe and do not change what the ingredient is. Where a name of the tables holds
/// one of them ("plain flour", "unsalted butter"), that name is found first.
/// To add one: it must be harmless before every ingredient of the tables.
pub const DESCRIBING: &[&str] = &[
    // How it is got and how good it is.
    "fresh",
    "freshly",
    "ripe",
    "overripe",
    "underripe",
    "organic",
    "good",
    "best",
    "high",
    "quality",
    "premium",
    "natural",
    "pure",
    "real",
    "plain",
    "regular",
    "ordinary",
    "standard",
    "classic",
    "homemade",
    "home",
    "made",
    "store",
    "bought",
    "shop",
    "leftover",
    "favorite",
    "favourite",
    "your",
    "my",
    "our",
    "any",
    "some",
    "other",
    "own",
    "choice",
    "brand",
    "local",
    "seasonal",
    "free",
    "range",
    "cage",
    "farm",
    "pasture",
    "raised",
    "wild",
    "vegan",
    "plant",
    "based",
    "dairy",
    "gluten",
    "gf",
    "kosher",
    "fine",
    "coarse",
    "virgin",
    "extra",
    "cold",
    "pressed",
    "european",
    "style",
    "unbleached",
    "bleached",
    "enriched",
    "unwaxed",
    "waxed",
    "seedless",
    "boneless",
    "skinless",
    "skin",
    "unsweetened",
    "unsalted",
    "unrefined",
    "unflavored",
    "unroasted",
    "untreated",
    "uncooked",
    "unpeeled",
    "unseasoned",
    "salted",
    "raw",
    "mild",
    "crisp",
    "firm",
    "soft",
    "silken",
    "tart",
    "juicy",
    "tender",
    "young",
    "mature",
    "lean",
    // Warmth.
    "warm",
    "hot",
    "boiling",
    "lukewarm",
    "tepid",
    "cool",
    "chilled",
    "iced",
    "frozen",
    "thawed",
    "defrosted",
    "room",
    "temperature",
    "temp",
    "softened",
    "soft",
    "melted",
    "ice",
    "scalded",
    "just",
    "boiled",
    // Size and number.
    "large",
    "medium",
    "small",
    "xl",
    "lg",
    "med",
    "sm",
    "jumbo",
    "big",
    "giant",
    "mini",
    "size",
    "sized",
    "whole",
    "full",
    "heaping",
    "heaped",
    "rounded",
    "scant",
    "generous",
    "level",
    "thick",
    "thin",
    "long",
    "short",
    "each",
    "few",
    "several",
    "average",
    "decent",
    "nice",
    "approx",
    "approximately",
    "roughly",
    "around",
    "total",
    "more",
    "additional",
    "couple",
    "couples",
    "inch",
    "cm",
    "bite",
    "very",
    "well",
    "so",
    // What is done with it.
    "chopped",
    "diced",
    "cubed",
    "sliced",
    "slivered",
    "halved",
    "quartered",
    "mashed",
    "pureed",
    "puree",
    "grated",
    "shredded",
    "ground",
    "crushed",
    "whipped",
    "beaten",
    "whisked",
    "separated",
    "sifted",
    "packed",
    "loose",
    "peeled",
    "cored",
    "pitted",
    "stoned",
    "seeded",
    "deseeded",
    "drained",
    "rinsed",
    "washed",
    "cooked",
    "roasted",
    "toasted",
    "baked",
    "steamed",
    "squeezed",
    "strained",
    "juiced",
    "zested",
    "cracked",
    "crumbled",
    "cut",
    "torn",
    "broken",
    "blanched",
    "hulled",
    "trimmed",
    "shelled",
    "flaked",
    "minced",
    "divided",
    "optional",
    "opt",
    "stiff",
    "frothy",
    "foamy",
    "fluffy",
    "needed",
    "required",
    "desired",
    "canned",
    "tinned",
    "jarred",
    "bottled",
    "prepared",
    "warmed",
    "cooled",
    "heated",
    "brewed",
    "strong",
    "rested",
    "soaked",
    "ready",
    "spooned",
    "leveled",
    "levelled",
    "scooped",
    "weighed",
    "measured",
    "julienned",
    "and",
    "also",
    "lightly",
    "finely",
    "coarsely",
    "roughly",
    "thinly",
    "thickly",
    "gently",
    "firmly",
    "tightly",
    "loosely",
    "slightly",
    "partly",
    "day",
    "old",
    "solid",
    "pack",
    "removed",
    "reserved",
    "blended",
    "liquid",
    "boiled",
    // Shapes that a thing comes in.
    "piece",
    "bit",
    "chunk",
    "half",
    "slice",
    "cube",
    "segment",
    "kernel",
    "flesh",
    "meat",
    "strip",
    "wedge",
    "ring",
    "granule",
    "crystal",
    "stick",
    "pod",
    "sprig",
    "dice",
    "can",
    "tin",
    "packet",
    "sachet",
    "square",
    "bar",
    // Cultivars and origins: facts of the trade, no brands.
    "granny",
    "smith",
    "bramley",
    "gala",
    "honeycrisp",
    "fuji",
    "braeburn",
    "cox",
    "jonagold",
    "mcintosh",
    "cortland",
    "bartlett",
    "anjou",
    "conference",
    "bosc",
    "williams",
    "comice",
    "meyer",
    "eureka",
    "navel",
    "valencia",
    "hass",
    "cavendish",
    "medjool",
    "deglet",
    "ceylon",
    "saigon",
    "vietnamese",
    "indonesian",
    "cassia",
    "madagascar",
    "tahitian",
    "mexican",
    "bourbon",
    "english",
    "belgian",
    "irish",
    "french",
    "sicilian",
    "persian",
    "california",
    "californian",
    "turkish",
    "roma",
    "desiree",
    "marcona",
    "marconas",
    "hawaiian",
    "florida",
];
