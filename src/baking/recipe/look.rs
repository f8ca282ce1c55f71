//! Looking at one line alone: what it would be as a heading, an ingredient, a step.

use super::country::{Guess, LineTold, guess_again};
use super::heading::{self, Heading};
use super::ingredient_line::{self, Attempt};
use super::part::Part;
use super::seen::Seen;
use super::token::{self, Token};
use super::{Match, Mentions, Section, number_words, read_amount, running, tidy};
use crate::baking::ingredient::{Larder, Region, lookup};
use std::sync::{Arc, OnceLock};

/// What a line looks like, taken alone.
#[derive(Clone, Debug)]
pub struct Look {
    /// The tidy text, bullets taken off.
    pub text: String,
    pub bullet: tidy::Bullet,
    pub heading: Option<Heading>,
    pub attempt: Option<Attempt>,
    pub is_step: bool,
    pub is_sentence: bool,
    pub is_fact: bool,
    /// Whether the baker said that these words are no ingredient.
    pub is_dismissed: bool,
    /// Whether nothing but marks stands on it.
    pub is_bare: bool,
    pub has_pan: bool,
    pub words: usize,
    /// Found out once, where they are asked for.
    mentions: OnceLock<Mentions>,
}

/// What lines looked like when a text was last read. What a line looks like alone depends on its words and the
/// larder only, so it can be kept.
#[derive(Debug, Default)]
pub struct Looks {
    /// The country and the edition of the baker's own larder that it was looked at with.
    with: (Region, u64),
    seen: Seen<Look>,
    told: Seen<LineTold>,
}

impl Looks {
    /// What each of these lines looks like.
    pub(super) fn at(&mut self, lines: &[&str], larder: Larder<'_>) -> Vec<Arc<Look>> {
        let with = (larder.region, larder.own.edition());
        if self.with != with {
            self.seen.clear();
            self.with = with;
        }
        self.seen
            .of(lines.iter().copied(), |line| Look::at(line, larder))
    }

    /// Whose cups, spoons and words the lines of a text are in, as far as they tell.
    pub fn guess(&mut self, text: &str, home: Region) -> Guess {
        guess_again(&mut self.told, text, home)
    }
}

impl Look {
    /// Looks at one line.
    pub fn at(line: &str, larder: Larder<'_>) -> Self {
        let tidied = tidy::tidy(line);
        let (bullet, rest) = tidy::unbullet(&tidied);
        let text = rest.to_owned();
        let lower = text.to_ascii_lowercase();
        let tokens = token::tokens(&text, &lower);
        let is_short = text.len() <= ingredient_line::LONGEST;
        let (is_step, is_sentence) = (
            running::starts_as_step(&tokens),
            running::is_sentence(&tokens),
        );
        // Running text is not tried as an ingredient: most lines of a method are spared the work.
        let may_count = |first: &Token| {
            first.is_number()
                || number_words::small_number(first).is_some()
                || number_words::denominator(first).is_some()
                || first.is_any(&["a", "an"])
                || first.is_mark('(')
                || Part::of(first.lower).is_some()
        };
        let wants_enough = tokens
            .iter()
            .any(|token| token.is_any(&["enough", "sufficient"]));
        let is_running = is_step && tokens.len() >= 5
            || is_sentence && !wants_enough && !tokens.first().is_some_and(may_count);
        let attempt = (is_short && !tokens.is_empty() && !is_running)
            .then(|| ingredient_line::of_tokens(&text, &lower, &tokens, larder, Section::Batter));
        let plain = if larder.own.is_empty() {
            Vec::new()
        } else {
            lookup::words_of(&text)
        };
        let meaning = larder.own.meaning(&plain);
        let amount = larder
            .own
            .amount(&plain)
            .and_then(|amount| read_amount(amount).ok().flatten());
        let attempt = match (attempt, amount) {
            (Some(mut attempt), Some(amount)) => {
                attempt.reading.take_amount(&amount);
                attempt.reading.is_taught = true;
                attempt.fault = None;
                attempt.has_amount = true;
                Some(attempt)
            }
            (attempt, _) => attempt,
        };
        Self {
            is_dismissed: meaning == Some(None),
            heading: heading::heading(&text, bullet.heading),
            is_step,
            is_sentence,
            is_fact: running::is_fact(&lower)
                || running::is_multiplier(&tokens)
                || !line.is_ascii() && line.contains(['»', '›']),
            is_bare: text.is_empty() && !line.trim().is_empty(),
            has_pan: is_short && !super::pan::pans(&tokens).is_empty(),
            words: tokens.len(),
            mentions: OnceLock::new(),
            bullet,
            attempt,
            text,
        }
    }

    /// Pans, ovens and yield.
    pub fn mentions(&self) -> Mentions {
        let find = || {
            let lower = self.text.to_ascii_lowercase();
            let tokens: Vec<Token> = token::tokens(&self.text, &lower);
            running::mentions(&tokens, &self.text)
        };
        self.mentions.get_or_init(find).clone()
    }

    /// What follows these words, blanks aside, where the line starts with them.
    pub fn starts_with(&self, words: &str) -> Option<&str> {
        let start = self.text.get(..words.len())?;
        start
            .eq_ignore_ascii_case(words)
            .then(|| self.text[words.len()..].trim())
    }

    pub fn is_empty(&self) -> bool {
        self.text.is_empty()
    }

    /// "Flour enough to make a stiff batter": as much of a known thing as is needed.
    pub fn wants_enough(&self) -> bool {
        self.is_known()
            && self
                .attempt
                .as_ref()
                .is_some_and(|attempt| !attempt.has_amount && !attempt.reading.amounts.is_empty())
    }

    /// Whether the ingredient is known, or likely.
    pub fn is_known(&self) -> bool {
        self.attempt
            .as_ref()
            .is_some_and(|attempt| attempt.reading.ingredient != Match::Unknown)
    }

    /// An ingredient beyond doubt wherever it stands: an amount, a known name, no sentence.
    pub fn is_ingredient(&self) -> bool {
        let Some(attempt) = &self.attempt else {
            return false;
        };
        let is_plain = !self.is_step && !self.is_sentence && !self.is_fact;
        let is_amount = attempt.has_amount || attempt.fault.is_some();
        is_plain
            && is_amount
            && (!self.has_pan || self.is_known())
            && (self.is_known() || attempt.is_measured || attempt.fault.is_some())
            && self.words <= 40
    }

    /// A known ingredient without an amount: "Salt", "Butter, for greasing".
    pub fn is_bare_name(&self, larder: Larder<'_>) -> bool {
        let Some(attempt) = &self.attempt else {
            return false;
        };
        !attempt.has_amount
            && !self.is_step
            && !self.is_sentence
            && !self.is_fact
            && self.is_known()
            && self.words <= 14
            && (attempt.reading.aside.is_some()
                || attempt.reading.doubts.is_empty()
                || lookup::exact(&attempt.reading.name, larder).is_some())
    }

    /// "Coffee & walnut cake (20 cm, 10 slices)": the name of something baked, and figures in brackets only.
    pub fn is_bake_with_bracket(&self) -> bool {
        const BAKES: &[&str] = &[
            "cake",
            "cakes",
            "loaf",
            "muffins",
            "brownies",
            "bars",
            "cookies",
            "biscuits",
            "scones",
            "bread",
            "squares",
            "slice",
            "sponge",
            "cupcakes",
            "traybake",
            "gingerbread",
            "buns",
            "tart",
        ];
        let Some((name, _)) = self.text.split_once('(') else {
            return false;
        };
        let last = name
            .trim()
            .rsplit(' ')
            .next()
            .unwrap_or_default()
            .to_ascii_lowercase();
        !name.contains(|letter: char| letter.is_ascii_digit()) && BAKES.contains(&last.as_str())
    }

    /// A heading, where it is not also an ingredient ("Icing sugar", "Cream").
    pub fn heads(&self) -> Option<Heading> {
        let heading = self.heading?;
        let attempt = self.attempt.as_ref();
        if attempt.is_some_and(|attempt| {
            attempt.has_amount && attempt.reading.ingredient != Match::Unknown
        }) && !heading.is_main
        {
            return None;
        }
        let has_colon = self.text.trim_end().ends_with(':');
        let is_name = !heading.is_main
            && !has_colon
            && !self.bullet.heading
            && !self.text.to_ascii_lowercase().starts_with("for ")
            && self.is_known()
            && attempt.is_some_and(|attempt| attempt.reading.doubts.is_empty());
        (!is_name && !self.bullet.numbered).then_some(heading)
    }

    /// A heading that is the name of something bought as well: "Butterscotch sauce".
    pub fn may_head(&self) -> Option<Heading> {
        let heading = self.heading?;
        let lower = self.text.to_ascii_lowercase();
        let is_made = [
            "sauce",
            "frosting",
            "icing",
            "glaze",
            "filling",
            "topping",
            "ganache",
            "buttercream",
            "drizzle",
            "streusel",
            "crumble",
            "caramel",
            "custard",
            "syrup",
            "curd",
        ]
        .iter()
        .any(|end| lower.trim_end().ends_with(end));
        let has_amount = self
            .attempt
            .as_ref()
            .is_some_and(|attempt| attempt.has_amount);
        let is_free = !self.bullet.marked && !self.bullet.numbered;
        (is_made && !has_amount && is_free).then_some(heading)
    }
}

/// The sentence for an amount without an ingredient.
pub fn no_name(look: &Look) -> String {
    format!(
        "\"{}\" has an amount and no ingredient. Write what it is an amount of, such as \"2 cups flour\".",
        short(&look.text)
    )
}

/// The first words of a text.
fn short(text: &str) -> String {
    let mut shortened: String = text.chars().take(40).collect();
    if shortened.len() < text.len() {
        shortened.push('…');
    }
    shortened
}

/// Why a line's amount cannot be used.
pub fn unreadable(look: &Look) -> Option<String> {
    let attempt = look.attempt.as_ref()?;
    if let Some(fault) = &attempt.fault {
        return Some(fault.clone());
    }
    (attempt.has_amount && attempt.is_measured && !attempt.has_name).then(|| no_name(look))
}
