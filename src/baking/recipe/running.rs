//! Running text: what tells a step or a story from an ingredient, and what it names besides words.

use super::token::{Kind, Token};
use super::{Mentions, bake_time, measure, oven, pan};
use crate::baking::text;

/// What a line of running text names.
pub fn mentions(tokens: &[Token], text: &str) -> Mentions {
    Mentions {
        pans: pan::pans(tokens),
        bakes: bake_time::bakes(tokens),
        ovens: oven::ovens(tokens),
        makes: makes(text),
    }
}

/// How many the recipe makes, as written after "serves", "makes" or "yield".
pub fn makes(text: &str) -> Option<String> {
    let lower = text.to_ascii_lowercase();
    for start in [
        "serves",
        "makes",
        "yields",
        "yield",
        "servings",
        "makes about",
        "portions",
        "serving size",
        "makes enough for",
    ] {
        if let Some(rest) = lower.strip_prefix(start) {
            let rest = text[text.len() - rest.len()..]
                .trim_start_matches([':', ' ', '-', '|', '.'])
                .split('|')
                .next()
                .unwrap_or_default()
                .trim();
            let has_figure = rest.contains(|letter: char| letter.is_ascii_digit())
                || rest.split(' ').next().is_some_and(|word| {
                    [
                        "one", "two", "three", "four", "six", "eight", "ten", "twelve", "a", "an",
                        "about",
                    ]
                    .contains(&text::lower(word).as_str())
                });
            return (has_figure && rest.len() < 80).then(|| rest.trim_end_matches('.').to_owned());
        }
    }
    None
}

/// Whether the line states a yield, a time or another fact of the recipe, and is no ingredient.
pub fn is_fact(lower: &str) -> bool {
    const STARTS: &[&str] = &[
        "serves",
        "skip to",
        "home »",
        "makes",
        "yield",
        "servings",
        "serving",
        "prep",
        "preparation time",
        "cook time",
        "cooking time",
        "total time",
        "bake time",
        "baking time",
        "time:",
        "active time",
        "ready in",
        "calories",
        "course",
        "cuisine",
        "author",
        "by ",
        "print",
        "pin ",
        "jump to",
        "rating",
        "published",
        "updated",
        "source",
        "from the kitchen",
        "recipe by",
        "recipe from",
        "adapted from",
        "difficulty",
        "skill level",
        "oven:",
        "oven temp",
        "oven temperature",
        "temperature",
        "http",
        "www.",
        "copyright",
        "©",
        "share",
        "save",
        "cook:",
        "total:",
        "chill time",
        "cooling time",
        "rest time",
        "resting time",
        "inactive",
        "level:",
        "category",
        "keyword",
        "diet:",
    ];
    let is_day = |start: &str| {
        lower
            .strip_prefix(start)
            .is_some_and(|rest| rest.trim_end_matches([':', '.']).parse::<u8>().is_ok())
    };
    if ["day ", "part ", "stage ", "page ", "step "]
        .into_iter()
        .any(is_day)
    {
        return true;
    }
    let is_rating = [" votes", " reviews", " ratings", " review", " rating"]
        .iter()
        .any(|end| lower.ends_with(end))
        && lower.contains(|letter: char| letter.is_ascii_digit());
    if is_rating {
        return true;
    }
    let states_yield = ["yield:", "serves:", "makes:", "servings:"];
    let first = lower.as_bytes().first();
    STARTS
        .iter()
        .any(|start| start.as_bytes().first() == first && lower.starts_with(start))
        || lower.contains(':') && states_yield.iter().any(|words| text::holds(lower, words))
        || is_bake_time(lower)
}

/// "325 for 1 hr", "oven 220 fan 200".
fn is_bake_time(lower: &str) -> bool {
    let mut words = lower.split(' ');
    let is_heat = |word: Option<&str>| {
        word.and_then(|word| word.trim_end_matches(['°', 'f', 'c']).parse::<u32>().ok())
            .is_some_and(|heat| (140..=500).contains(&heat))
    };
    match words.next() {
        Some("oven" | "bake" | "fan") => is_heat(words.next()),
        first => {
            is_heat(first)
                && words.next() == Some("for")
                && ["min", "hr", "hour"]
                    .iter()
                    .any(|time| lower.contains(time))
        }
    }
}

/// Whether the line only offers to multiply the recipe: "1x 2x 3x".
pub fn is_multiplier(tokens: &[Token]) -> bool {
    tokens.len() >= 2
        && tokens
            .iter()
            .all(|token| token.is_number() || token.is("x") || token.is_mark('×'))
}

/// Words that start a step and are never the name of an ingredient.
const VERBS: &[&str] = &[
    "add",
    "allow",
    "alternate",
    "alternately",
    "arrange",
    "assemble",
    "bake",
    "beat",
    "begin",
    "blend",
    "boil",
    "bring",
    "brush",
    "butterfly",
    "check",
    "chill",
    "chop",
    "combine",
    "continue",
    "cook",
    "cool",
    "core",
    "cover",
    "crack",
    "crumble",
    "cut",
    "decorate",
    "defrost",
    "dip",
    "discard",
    "dissolve",
    "divide",
    "drain",
    "drizzle",
    "drop",
    "ease",
    "enjoy",
    "fill",
    "finish",
    "fit",
    "fold",
    "freeze",
    "garnish",
    "gently",
    "gradually",
    "grate",
    "grease",
    "heat",
    "incorporate",
    "insert",
    "invert",
    "keep",
    "knead",
    "lay",
    "leave",
    "let",
    "level",
    "lift",
    "lightly",
    "line",
    "make",
    "mash",
    "measure",
    "melt",
    "microwave",
    "mix",
    "move",
    "once",
    "peel",
    "place",
    "position",
    "pour",
    "preheat",
    "prepare",
    "press",
    "process",
    "pulse",
    "push",
    "put",
    "refrigerate",
    "reduce",
    "remove",
    "repeat",
    "reserve",
    "rest",
    "return",
    "roll",
    "rotate",
    "rub",
    "run",
    "scatter",
    "scrape",
    "separate",
    "serve",
    "set",
    "sieve",
    "sift",
    "simmer",
    "slice",
    "slide",
    "slowly",
    "smooth",
    "soak",
    "spoon",
    "spread",
    "sprinkle",
    "squeeze",
    "stir",
    "store",
    "strain",
    "take",
    "test",
    "tip",
    "toss",
    "transfer",
    "turn",
    "turned",
    "wait",
    "warm",
];

/// More of them, that also describe where an ingredient follows at once.
const OPENINGS: &[&str] = &[
    "in",
    "using",
    "when",
    "while",
    "meanwhile",
    "then",
    "after",
    "before",
    "next",
    "now",
    "finally",
    "first",
    "to make",
    "with",
    "if",
    "as",
    "use",
    "wash",
    "weigh",
    "whip",
    "whisk",
    "whizz",
    "wrap",
    "work",
    "unmould",
    "unmold",
    "start",
    "dust",
    "do",
    "this",
    "these",
];

/// Nouns that are verbs too: they start a step only where "the", "a" or "together" follows soon.
const BOTH: &[&str] = &[
    "butter", "cream", "flour", "ice", "juice", "zest", "sugar", "oil", "salt", "season", "top",
    "frost", "glaze", "spray", "halve", "quarter", "toast", "split",
];

/// Whether the line starts as a step does.
pub fn starts_as_step(tokens: &[Token]) -> bool {
    let mut at = 0;
    if tokens.first().is_some_and(|token| token.is("step"))
        && tokens.get(1).is_some_and(Token::is_number)
    {
        return true;
    }
    // "1 Preheat the oven": a step's number without its full stop.
    if tokens
        .first()
        .is_some_and(|token| matches!(token.kind, Kind::Integer(value) if value < 40.0))
    {
        at = 1;
        if tokens
            .get(at)
            .is_some_and(|token| matches!(token.kind, Kind::Mark('.' | ')' | ':' | '-')))
        {
            at += 1;
        }
    }
    let Some(first) = tokens.get(at).filter(|token| token.kind == Kind::Word) else {
        return false;
    };
    let follows_liking = tokens
        .get(at + 1)
        .is_some_and(|next| next.is_any(&["liked", "desired", "wished", "wanted"]));
    if first.is_any(&["when", "if"]) && follows_liking {
        return false;
    }
    let is_enough = tokens
        .get(at + 1)
        .is_some_and(|next| next.is_any(&["enough", "sufficient"]));
    if is_enough {
        return false;
    }
    if first.is("as") && tokens.get(at + 1).is_some_and(|next| next.is("much")) {
        return false;
    }
    // "Roll in: 3 tbsp sugar": what stands before the colon heads an amount.
    let heads_amount = (1..tokens.len().min(5)).any(|colon| {
        tokens[colon].is_mark(':')
            && tokens.get(colon + 1).is_some_and(Token::is_number)
            && measure::measure(tokens, colon + 2).is_some()
    });
    if heads_amount {
        return false;
    }
    // "Lightly sweetened whipped cream".
    if first.is("lightly")
        && tokens
            .get(at + 1)
            .is_some_and(|next| next.lower.ends_with("ed"))
    {
        return false;
    }
    // "3 level tablespoonfuls": after a figure, what stands before a measure is no verb.
    let has_measure = measure::measure(tokens, at + 1).is_some()
        || measure::measure(tokens, at).is_some()
            && tokens.get(at + 1).is_some_and(|next| next.is("of"));
    // "1 slice citron peel" is no "slice the cake".
    let is_slice = first.is_any(&["slice", "slices", "drop", "drops"])
        && !tokens
            .iter()
            .skip(at + 1)
            .take(4)
            .any(|token| token.is_any(&["the", "into", "in", "each", "by"]));
    if at == 1 && (has_measure || is_slice) {
        return false;
    }
    // "Cream sugar and eggs. Sift the rest.": a later sentence tells.
    let goes_on_as_step = BOTH.contains(&first.lower)
        && tokens.windows(2).any(|pair| {
            pair[0].is_mark('.')
                && pair[1].spaced
                && pair[1].kind == Kind::Word
                && VERBS.contains(&pair[1].lower)
        });
    if goes_on_as_step {
        return true;
    }
    let follows = |words: &[&str], reach: usize| {
        tokens
            .iter()
            .skip(at + 1)
            .take(reach)
            .any(|token| token.is_any(words))
    };
    let second_is_amount = tokens.get(at + 1).is_none_or(|token| {
        token.is_number() || matches!(token.kind, Kind::Mark(':' | '-' | ',' | '|' | '('))
    });
    if VERBS.contains(&first.lower) {
        // "Warm water, 1 cup", "Butter, melted", "Chill": an adjective before an amount.
        let reads_as_name = matches!(
            first.lower,
            "warm"
                | "cool"
                | "level"
                | "lightly"
                | "drop"
                | "smooth"
                | "rest"
                | "set"
                | "spread"
                | "heat"
                | "line"
        ) && !follows(
            &[
                "oven", "the", "a", "an", "to", "in", "until", "into", "and", "with", "on", "for",
            ],
            6,
        );
        return tokens.len() > at + 1
            && !(reads_as_name
                || second_is_amount
                    && tokens.len() < at + 6
                    && at == 0
                    && matches!(first.lower, "drizzle" | "drop"));
    }
    if OPENINGS.contains(&first.lower) {
        return tokens.len() > at + 3;
    }
    if BOTH.contains(&first.lower) && !second_is_amount {
        return follows(&["the", "a", "an", "your", "together", "each", "and"], 3)
            && !follows(&["size", "to", "enough", "for"], 3)
            && follows(
                &[
                    "the", "a", "an", "your", "together", "each", "with", "until", "pan", "tin",
                ],
                12,
            )
            && tokens.len() > at + 4
            && !tokens.get(at + 1).is_some_and(|token| token.is("of"));
    }
    false
}

/// Whether the line reads as sentences: it is long, ends with a full stop, or goes on after one.
pub fn is_sentence(tokens: &[Token]) -> bool {
    let words = tokens
        .iter()
        .filter(|token| token.kind == Kind::Word)
        .count();
    let ends = tokens
        .last()
        .is_some_and(|token| matches!(token.kind, Kind::Mark('.' | '!' | '?')));
    let goes_on = tokens.windows(2).any(|pair| {
        matches!(pair[0].kind, Kind::Mark('.' | '!' | '?'))
            && pair[1].spaced
            && pair[1].kind == Kind::Word
            && pair[1].text.starts_with(char::is_uppercase)
            && pair[1].text.len() > 1
    });
    let has_verb = tokens.iter().any(|token| {
        token.is_any(&[
            "is", "are", "was", "were", "will", "you", "your", "i", "we", "it", "this", "that",
            "these", "they", "until", "have", "has", "my", "our", "should", "would", "don't",
            "it's", "i've",
        ])
    });
    words >= 24
        || ends && words >= 9
        || goes_on && words >= 9
        || ends && has_verb && words >= 5
        || has_verb && words >= 9
}
