//! A method cut into clauses: what is done, and in which vessel.

use super::super::method::{self, Step};
use super::super::{Line, Recipe};
use crate::baking::lexicon::Lexicon;

/// What a clause does with what it names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deed {
    /// Begins a mixture of its own: "cream the butter and sugar".
    Mix,
    /// Goes to what is there: "stir in the flour".
    Add,
    /// Comes by itself, mostly after the oven: "dust with icing sugar".
    Later,
    /// Anything else: "line the tin", "bake for 30 minutes".
    Other,
}

/// The vessel that a clause names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Vessel {
    /// "large bowl".
    pub words: String,
    /// "a", "another": one that was not there before.
    pub is_new: bool,
}

/// A piece of a sentence with one deed in it.
#[derive(Clone, Debug)]
pub struct Clause {
    /// Its line and words, without those behind "until".
    pub step: Step,
    pub deed: Deed,
    pub vessel: Option<Vessel>,
    /// Where "into" or "to" stands, if it does.
    pub into: Option<usize>,
    /// Whether the cake is in the oven from here on.
    pub bakes: bool,
}

static DEEDS: Lexicon<Deed> = Lexicon::new(&[
    (
        "beat blend boil chop combine cook cream crush curdle cut dissolve grate grind heat infuse make mash measure melt mix \
         place process pulse puree put rub sieve sift simmer soak sour steep stir tip toss warm weigh whip whisk whizz work",
        Deed::Mix,
    ),
    (
        "add alternate crumble crack drop dump fold incorporate ladle pour scrape",
        Deed::Add,
    ),
    (
        "brush decorate drizzle dust frost glaze ice pipe press roll sandwich scatter sprinkle spread swirl top trickle",
        Deed::Later,
    ),
    (
        "allow bake check chill cool cover divide gather grease invert knead leave let line loosen oil preheat \
         remove reserve rest return serve set shape slice smooth spoon stand store take test transfer turn unmould wrap",
        Deed::Other,
    ),
]);

/// Words that may stand between a clause's beginning and its verb.
const BEFORE_VERB: &[&str] = &[
    "also",
    "finally",
    "first",
    "gently",
    "gradually",
    "just",
    "lightly",
    "meanwhile",
    "next",
    "now",
    "once",
    "quickly",
    "slowly",
    "step",
    "then",
    "carefully",
];
/// Words that a verb is only one behind: "add the flour", and never "the mix" or "a roll".
const NO_VERB_AFTER: &[&str] = &["a", "an", "the", "this", "that", "of", "well"];
/// Nouns that are verbs too: they are that only where one of `VERB_BEFORE` follows. "Cream" may begin a sentence without.
const NOUNS: &[&str] = &[
    "cream", "frost", "glaze", "grease", "ice", "line", "measure", "oil", "press", "roll",
    "sandwich", "serve", "sour", "spoon", "store", "top",
];
/// What follows a noun that is a verb.
const VERB_BEFORE: &[&str] = &[
    "a", "all", "an", "both", "each", "it", "out", "over", "the", "them", "this", "together",
    "two", "up", "your",
];
/// What follows "in" where something goes into what is there: "stir the sugar in by degrees".
const IN_SO: &[&str] = &[
    "and",
    "batch",
    "by",
    "gently",
    "gradually",
    "half",
    "quickly",
    "small",
    "spoonful",
    "three",
    "two",
    "well",
];
/// What a clause is no longer about.
const UNTIL: &[&str] = &["until", "till"];
const VESSELS: &[&str] = &[
    "basin",
    "beaker",
    "blender",
    "bowl",
    "cup",
    "jug",
    "mixer",
    "pan",
    "pitcher",
    "pot",
    "processor",
    "saucepan",
];
/// What may stand before a vessel and tells it from others.
const WHICH: &[&str] = &[
    "big",
    "clean",
    "deep",
    "dry",
    "food",
    "glass",
    "heatproof",
    "large",
    "measuring",
    "medium",
    "metal",
    "microwave",
    "mixing",
    "second",
    "separate",
    "small",
    "stand",
    "wide",
];
/// What tells a vessel that was not there before.
const NEW: &[&str] = &["a", "an", "another", "one", "separate", "second", "third"];

/// The clauses of a recipe's method, in order.
pub fn clauses(recipe: &Recipe) -> Vec<Clause> {
    method::lines(&recipe.lines).flat_map(of_line).collect()
}

fn of_line(line: &Line) -> Vec<Clause> {
    let sentences = line.text.split(['.', ';', ':', '!', '?']);
    sentences
        .flat_map(|sentence| {
            let pieces = sentence
                .split([',', '(', ')', '–', '—'])
                .map(method::words)
                .filter(|words| !words.is_empty());
            let mut clauses: Vec<Vec<String>> = Vec::new();
            for piece in pieces {
                for (part, words) in by_verb(piece).into_iter().enumerate() {
                    let begins = verb(&words).is_some();
                    match clauses.last_mut() {
                        // "In a large bowl, whisk the flour": the verb comes behind the comma.
                        Some(last) if later_verb(last).is_none() && verb(last).is_none() => {
                            last.extend(words)
                        }
                        // A piece without a verb of its own goes on with the one before; "cream" is one at the start only.
                        Some(last) if part == 0 && (!begins || words[0] == "cream") => {
                            last.extend(words);
                        }
                        _ => clauses.push(words),
                    }
                }
            }
            clauses
        })
        .map(|words| clause(line.number, words))
        .collect()
}

/// Cuts before "and", "then" where a verb follows.
fn by_verb(words: Vec<String>) -> Vec<Vec<String>> {
    let mut pieces: Vec<Vec<String>> = vec![Vec::new()];
    for at in 0..words.len() {
        let joins = matches!(words[at].as_str(), "and" | "then");
        // "The chocolate and cream": what may begin a sentence as a verb is a noun here.
        let is_noun = words.get(at + 1).is_some_and(|next| next == "cream");
        let begins = joins && at > 0 && !is_noun && verb(&words[at + 1..]).is_some();
        if begins {
            pieces.push(Vec::new());
        }
        if let Some(last) = pieces.last_mut() {
            last.push(words[at].clone());
        }
    }
    pieces
}

/// The verb that words begin with, and where it stands.
fn verb(words: &[String]) -> Option<(usize, Deed)> {
    let at = words.iter().position(|word| {
        let word = word.as_str();
        !BEFORE_VERB.contains(&word) && word != "and" && word.parse::<u32>().is_err()
    })?;
    let deed = DEEDS.find(&words[at])?;
    let next = words.get(at + 1).map(String::as_str);
    let is_noun = NOUNS.contains(&words[at].as_str())
        && !next.is_some_and(|next| VERB_BEFORE.contains(&next));
    let begins = words[at] == "cream" && !next.is_some_and(|next| matches!(next, "of" | "cheese"));
    (!is_noun || begins).then_some((at, *deed))
}

fn clause(line: usize, mut words: Vec<String>) -> Clause {
    if let Some(end) = words.iter().position(|word| UNTIL.contains(&word.as_str())) {
        words.truncate(end);
    }
    let into = words.iter().position(|word| word == "into" || word == "to");
    let vessel = vessel(&words);
    let (at, deed) = verb(&words)
        .or_else(|| later_verb(&words))
        .unwrap_or((0, Deed::Other));
    let goes_in = match words.get(at + 1).map(String::as_str) {
        Some("in" | "into" | "through") => vessel.is_none() || into.is_some(),
        Some("with") => true,
        _ => goes_in_so(&words),
    };
    let goes_to_what_is_there =
        into.is_some_and(|into| words.get(into + 1).is_some_and(|word| word == "the"));
    let deed = match deed {
        Deed::Mix if goes_in || goes_to_what_is_there => Deed::Add,
        Deed::Mix if words.iter().any(|word| word == "oven") => Deed::Other,
        deed => deed,
    };
    let bakes = words.iter().any(|word| word == "bake");
    // "Cream the butter" names no cream.
    if words
        .get(at)
        .is_some_and(|word| NOUNS.contains(&word.as_str()))
        && deed != Deed::Other
    {
        words[at].clear();
    }
    Clause {
        bakes,
        step: Step { line, words },
        deed,
        vessel,
        into,
    }
}

/// "Stir the sugar in by degrees", "whisk the oil in".
fn goes_in_so(words: &[String]) -> bool {
    let mut places = words.iter().enumerate().skip(1);
    places.any(|(at, word)| {
        word == "in"
            && words
                .get(at + 1)
                .is_none_or(|next| IN_SO.contains(&next.as_str()))
    })
}

/// "In a large bowl whisk the flour": the verb comes behind the vessel.
fn later_verb(words: &[String]) -> Option<(usize, Deed)> {
    let places = words.iter().enumerate().skip(1);
    places
        .filter(|(at, _)| !NO_VERB_AFTER.contains(&words[at - 1].as_str()))
        .find_map(|(at, word)| Some((at, *DEEDS.find(word)?)))
}

fn vessel(words: &[String]) -> Option<Vessel> {
    let at = words
        .iter()
        .position(|word| VESSELS.contains(&word.as_str()))?;
    let from = (0..at)
        .rev()
        .take_while(|before| WHICH.contains(&words[*before].as_str()))
        .last()
        .unwrap_or(at);
    let article = from.checked_sub(1).map(|before| words[before].as_str());
    let is_named = |word: &str| NEW.contains(&word);
    Some(Vessel {
        is_new: article.is_some_and(is_named) || words[from..at].iter().any(|word| is_named(word)),
        words: words[from..=at].join(" "),
    })
}
