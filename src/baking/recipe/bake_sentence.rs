//! What a sentence of a method says of a length of time in it: that it is baking, or that it is not.

use super::bake_time::BakeWords;
use super::oven;
use super::token::{Kind, Token};
use crate::baking::lexicon::Lexicon;

/// How many tokens behind a time still tell of it; less than an oven setting asks for a word about ovens.
const REACH: usize = 8;

/// What a verb says of the time behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Deed {
    Bake,
    /// In the oven or on the hob.
    Cook,
    /// Into the oven or elsewhere.
    Put,
    /// Back into the oven, or to the table.
    Return,
    /// The oven's heat or something else.
    Turn,
    GoOn,
    /// Anything that is not baking.
    Other,
}

static DEEDS: Lexicon<Deed> = Lexicon::new(&[
    ("bake bakes baked baking", Deed::Bake),
    ("cook cooks cooked cooking", Deed::Cook),
    ("put place pop slide", Deed::Put),
    ("return", Deed::Return),
    ("reduce lower turn drop decrease", Deed::Turn),
    ("continue", Deed::GoOn),
    (
        "allow aside beat blend boil check checking chill cool cooling cover covering fold freeze frost heat infuse keep knead \
         leave let melt microwave mix open opening preheat proof prove refrigerate remove removing rest resting rise roast \
         rotate rotating serve simmer sit soak stand standing steam steep stir test testing toast wait warm whip whisk",
        Deed::Other,
    ),
]);

/// Nouns that "baking" and "cooking" stand before.
const THINGS: &[&str] = &[
    "ammonia",
    "beans",
    "case",
    "cases",
    "chocolate",
    "dish",
    "oil",
    "paper",
    "pan",
    "pans",
    "parchment",
    "powder",
    "sheet",
    "sheets",
    "soda",
    "spray",
    "tin",
    "tins",
    "tray",
    "trays",
];

/// What is cooked so is on the hob.
const HOB: &[&str] = &[
    "boil",
    "frying",
    "hob",
    "microwave",
    "saucepan",
    "simmer",
    "stir",
    "stirring",
    "stove",
    "whisking",
];

/// What is cooked until then is in the oven.
const SIGNS: &[&str] = &[
    "firm",
    "golden",
    "risen",
    "skewer",
    "springs",
    "springy",
    "tester",
    "toothpick",
];

/// The first token of the sentence that a token stands in.
pub fn sentence_start(tokens: &[Token], at: usize) -> usize {
    (0..at)
        .rev()
        .find(|place| {
            let is_short = place
                .checked_sub(1)
                .is_some_and(|before| tokens[before].is_any(&["approx", "deg", "temp"]));
            matches!(tokens[*place].kind, Kind::Mark('.' | '!' | '?'))
                && tokens[place + 1].spaced
                && !is_short
        })
        .map_or(0, |place| place + 1)
}

/// A sentence around a length of time.
pub struct Sentence<'a> {
    /// Its words before the time.
    pub before: &'a [Token<'a>],
    /// All words after it.
    pub after: &'a [Token<'a>],
    /// Where in `before` the last time of baking ended.
    pub past: usize,
}

impl Sentence<'_> {
    /// How the time of baking is said; `None` where it is another time.
    pub fn words(&self, has_one: bool, is_further: bool) -> Option<BakeWords> {
        let lead = self.lead()?;
        let is_more = is_further
            || lead
            || self
                .after
                .first()
                .is_some_and(|token| token.is_any(&["more", "longer", "extra"]));
        if self.is_counted_from_the_end() || self.follows(&["at", "a", "time"]) {
            return None;
        }
        let words = self.by_verb(has_one)?;
        let words = if is_more && words == BakeWords::Step {
            BakeWords::Further
        } else {
            words
        };
        let is_conditional = self.has(&["if", "unless"]);
        (words != BakeWords::Further || !is_conditional).then_some(words)
    }

    /// Looks at the words right before the time: whether they say that it comes on top; `None` where they make it a moment
    /// or a last part ("after 20 minutes", "for the last 10 minutes").
    fn lead(&self) -> Option<bool> {
        let mut is_more = false;
        let mut is_least = false;
        for token in self.before.iter().rev() {
            if token.is_any(&["another", "further", "additional", "extra"]) {
                is_more = true;
            } else if token.is_any(&["least", "most"]) {
                is_least = true;
            } else if token.is_any(&["after", "every", "last", "final", "remaining", "within"])
                || token.is("at") && !is_least
            {
                return None;
            } else if !(token.is_any(&[
                "about",
                "approx",
                "approximately",
                "around",
                "roughly",
                "a",
                "an",
                "the",
                "at",
            ]) || token.is_mark('.')
                || token.is_mark('('))
            {
                break;
            }
        }
        Some(is_more)
    }

    /// Whether the time is one before the end: "5 minutes before the end".
    fn is_counted_from_the_end(&self) -> bool {
        self.after
            .first()
            .is_some_and(|token| token.is_any(&["before", "from"]))
            && self
                .after
                .iter()
                .take(4)
                .any(|token| token.is_any(&["end", "done", "it", "they", "is"]))
    }

    /// Whether these words stand right behind the time.
    fn follows(&self, words: &[&str]) -> bool {
        self.after.len() >= words.len()
            && self
                .after
                .iter()
                .zip(words)
                .all(|(token, word)| token.is(word))
    }

    /// Whether any of these words stands before the time.
    fn has(&self, words: &[&str]) -> bool {
        self.before.iter().any(|token| token.is_any(words))
    }

    /// What the nearest verb before the time makes of it.
    fn by_verb(&self, has_one: bool) -> Option<BakeWords> {
        let verb = (0..self.before.len())
            .rev()
            .filter_map(|at| Some((at, self.deed(at)?)))
            .find(|(at, deed)| *deed != Deed::Other || !self.is_in_until(*at));
        let Some((at, deed)) = verb else {
            return self.without_verb();
        };
        let between = &self.before[at + 1..];
        let near_oven = between
            .iter()
            .chain(self.after.iter().take(3))
            .any(|token| token.is_any(&["oven", "ovens"]));
        match deed {
            Deed::Bake => self.by_bake(at),
            Deed::Cook if self.is_label(at) => Some(BakeWords::Fact),
            Deed::Cook => self.is_in_oven(near_oven).then_some(BakeWords::Step),
            Deed::Put => near_oven.then_some(BakeWords::Step),
            Deed::Return => near_oven.then_some(BakeWords::Further),
            Deed::Turn => (self.is_turned_down(at)).then_some(BakeWords::Further),
            Deed::GoOn => has_one.then_some(BakeWords::Further),
            Deed::Other => None,
        }
    }

    /// What a verb says; `None` for other words, and where a verb's word is a noun.
    fn deed(&self, at: usize) -> Option<Deed> {
        let token = &self.before[at];
        let deed = *DEEDS
            .find(token.lower)
            .filter(|_| token.kind == Kind::Word)?;
        let next = self.before.get(at + 1);
        let previous = at.checked_sub(1).and_then(|at| self.before.get(at));
        let is_thing = next.is_some_and(|next| next.is_any(THINGS))
            // "A cool oven", "the heat".
            || deed == Deed::Other && next.is_some_and(|next| next.is("oven"))
                && !token.is_any(&["preheat", "heat", "open", "opening", "warm"])
            // "The rest", "the mix".
            || token.is_any(&["boil", "cover", "mix", "rest", "roast", "toast"])
                && previous.is_some_and(|previous| previous.is("the"))
            || token.is("heat") && previous.is_some_and(|previous| {
                previous.is_any(&["the", "oven", "low", "medium", "high", "moderate", "your"])
            });
        (!is_thing).then_some(deed)
    }

    /// Whether a verb only says until when: "until it begins to leave the sides".
    fn is_in_until(&self, at: usize) -> bool {
        let starts = at.checked_sub(1).is_some_and(|at| {
            let token = &self.before[at];
            token.is_any(&["and", "then", "or"])
                || matches!(token.kind, Kind::Mark(',' | ';' | '&' | '('))
        });
        let until = self.before[..at]
            .iter()
            .rposition(|token| token.is_any(&["until", "till"]));
        !starts
            && until
                .is_some_and(|until| !self.before[until..at].iter().any(|token| token.is("then")))
    }

    /// Whether a verb heads a fact: "Bake: 35 minutes", "Cooking time 1 hour".
    fn is_label(&self, at: usize) -> bool {
        self.before
            .get(at + 1)
            .is_some_and(|next| next.is_mark(':') || next.is("time"))
    }

    /// The time behind "bake".
    fn by_bake(&self, at: usize) -> Option<BakeWords> {
        let near = &self.before[at.saturating_sub(3)..at];
        let is_refused = near
            .iter()
            .any(|token| token.is_any(&["not", "don't", "never"]))
            || near.last().is_some_and(|token| {
                token.is_any(&["after", "before", "has", "have", "been", "while", "during"])
            });
        if is_refused || self.has(&["griddle"]) {
            return None;
        }
        if self.is_label(at) {
            return Some(BakeWords::Fact);
        }
        let goes_on = near.iter().any(|token| {
            token.is_any(&["continue", "continuing", "on", "finish", "resume", "return"])
        }) || (0..at)
            .any(|turn| self.deed(turn) == Some(Deed::Turn) && self.is_turned_down(turn))
            || self.is_on_top(at);
        Some(if goes_on {
            BakeWords::Further
        } else {
            BakeWords::Step
        })
    }

    /// Whether this comes on top of a time before it in the sentence: "bake 10 minutes, turn the tin and bake 20 minutes",
    /// "bake 10 minutes, then 20 minutes at 160C".
    fn is_on_top(&self, at: usize) -> bool {
        let behind = &self.before[self.past..];
        let has = |words: &[&str]| behind.iter().any(|token| token.is_any(words));
        let is_new =
            at >= self.past && has(&["and", "rotate", "turn", "cover", "uncover", "remove"]);
        self.past > 0 && (is_new || has(&["then"])) && !has(&["or"])
    }

    /// Whether what is turned is the heat of the oven, and not off.
    fn is_turned_down(&self, at: usize) -> bool {
        let rest = &self.before[at + 1..];
        rest.iter().any(|token| {
            token.is_any(&["oven", "temperature"])
                || matches!(token.kind, Kind::Integer(value) if (100.0..=500.0).contains(&value))
        }) && !rest.iter().any(|token| token.is_any(&["off", "out"]))
    }

    /// Whether what is cooked is in the oven.
    fn is_in_oven(&self, near_oven: bool) -> bool {
        let around = |words: &[&str]| {
            self.has(words)
                || self
                    .after
                    .iter()
                    .take(REACH)
                    .any(|token| token.is_any(words))
        };
        near_oven || (!around(HOB) && (around(SIGNS) || self.has_setting()))
    }

    /// Whether an oven setting stands before the time, or soon behind it.
    fn has_setting(&self) -> bool {
        let soon = &self.after[..self.after.len().min(REACH)];
        let is_at = soon.first().is_some_and(|token| token.is("at"));
        !oven::ovens(self.before).is_empty() || is_at && !oven::ovens(soon).is_empty()
    }

    /// A time without a verb: "in a moderate oven for 1 hour", "325 for 1 hr", "40 minutes at 180C", "30 min bake".
    fn without_verb(&self) -> Option<BakeWords> {
        let is_after_heat = self.before.last().is_some_and(|token| token.is("for"))
            && self.before.len() >= 2
            && matches!(self.before[self.before.len() - 2].kind, Kind::Integer(value) if (140.0..=500.0).contains(&value));
        let is_in_oven = self.has(&["oven"])
            || self.follows(&["in", "the", "oven"])
            || self.follows(&["bake"])
            || self.follows(&["to", "bake"])
            || self.has_setting();
        (is_after_heat || is_in_oven).then_some(BakeWords::Step)
    }
}
