//! Gathering: the chunks of a line put together: amounts that are the same twice, sums, notes, other ingredients.

use super::scan::{Chunk, Lead};
use super::sum::add;
use super::term::{self, Term};
use super::token::Token;
use super::{Amount, Level, Unit, phrase, understood};
use crate::baking::ingredient::lookup;
use crate::baking::ingredient::{Filling, Form, Ingredient, Larder, PieceSize};
use crate::baking::text::begins;

/// What is gathered from the chunks.
#[derive(Default)]
pub struct Gather {
    pub amounts: Vec<Amount>,
    pub level: Level,
    pub form: Option<Form>,
    pub filling: Option<Filling>,
    pub size: Option<PieceSize>,
    pub is_bare: bool,
    /// Whether the measure is only roughly known.
    pub is_loose: bool,
    pub leads: bool,
    pub name: String,
    /// What the name means, where it is written as the page shows it.
    pub shown: Option<lookup::Found>,
    pub tails: Vec<String>,
    pub brackets: Vec<String>,
    /// Other ingredients with amounts of their own.
    pub others: Vec<Other>,
    /// What the line says may stand in its place, amounts and all.
    pub instead: Vec<String>,
    /// Other ingredients that share the amount: "1 tsp each cinnamon, cloves and nutmeg".
    pub sharing: Vec<&'static Ingredient>,
    /// Ingredients of which one is to be chosen: "sultanas, raisins or currants".
    pub choices: Vec<&'static Ingredient>,
    /// Whether the line says "each".
    pub says_each: bool,
    pub doubts: Vec<String>,
    pub fault: Option<String>,
    /// Duals of a first term that wait for their partner: "2 tbsp (30 g) + 1/4 cup (50 g)".
    pub unpaired: Vec<(Amount, f64)>,
    /// Set where an alternative begins: amounts after it are not this line's.
    pub is_over: bool,
    /// Set where the last chunk was a bracket, so that words after it go on with the name.
    pub after_bracket: bool,
    /// Set where the next words belong to an amount that is set apart ("plus 2 tablespoons for sprinkling").
    pub is_set_apart: bool,
    /// Whether a form was said of the measure in a bracket with its own amount.
    pub bracket_form: Option<Form>,
}

/// A second ingredient in the same line.
pub struct Other {
    /// Its words, from its amount on.
    pub text: String,
    /// How it is named where nothing can be made of it.
    pub said: String,
}

impl Gather {
    /// One amount, and a name as the page shows it.
    pub fn one(&mut self, term: &Term, name: &str, found: lookup::Found) {
        self.take(term);
        name.clone_into(&mut self.name);
        self.shown = Some(found);
    }

    /// Walks the chunks outside brackets.
    pub fn read(&mut self, tokens: &[Token], line: &str, chunks: &[Chunk], larder: Larder<'_>) {
        let text = |from: usize, to: usize| {
            line.get(tokens[from].start..tokens[to - 1].end)
                .unwrap_or_default()
        };
        // A bracket between ("1/4 cup (60 ml) juice") is passed over.
        let words_after = |at: usize| match (chunks.get(at + 1), chunks.get(at + 2)) {
            (Some(Chunk::Words(from, to)), _)
            | (Some(Chunk::Bracket(_)), Some(Chunk::Words(from, to))) => text(*from, *to),
            _ => "",
        };
        for (at, chunk) in chunks.iter().enumerate() {
            match chunk {
                Chunk::Amount(term, lead) => {
                    let rest = line.get(tokens[term.at].start..).unwrap_or_default();
                    match self.amount(term, *lead, words_after(at), larder) {
                        Joined::Here => {}
                        // The rest of the line is read by itself.
                        Joined::Another => {
                            let said = term.amounts.first().map(understood::written);
                            self.others.push(Other {
                                text: rest.to_owned(),
                                said: format!("{} {}", said.unwrap_or_default(), words_after(at)),
                            });
                            return;
                        }
                        Joined::Instead => {
                            if self.instead.is_empty() {
                                self.instead.push(rest.to_owned());
                            }
                        }
                    }
                    self.after_bracket = false;
                }
                Chunk::Words(from, to) => {
                    let words = text(*from, *to);
                    if self.turns_to_choice(words, larder) {
                        // "20 drops of essence of lemon, or the rind of 1 lemon".
                        let rest = line.get(tokens[*from].start..).unwrap_or_default();
                        self.instead.extend(strip_or(rest).map(str::to_owned));
                        let is_one_more = chunks[at + 1..]
                            .iter()
                            .any(|chunk| matches!(chunk, Chunk::Amount(..)));
                        if is_one_more {
                            self.is_over = true;
                        }
                    }
                    if !std::mem::take(&mut self.is_set_apart) {
                        self.words(words, larder);
                    }
                    self.after_bracket = false;
                }
                Chunk::Bracket(inner) => {
                    self.bracket(tokens, line, inner, larder);
                    self.after_bracket = true;
                }
                Chunk::Break(mark) => {
                    self.after_bracket = false;
                    if *mark == '!' {
                        self.is_over = true;
                    }
                }
            }
        }
    }

    /// An amount outside brackets.
    fn amount(&mut self, term: &Term, lead: Lead, after: &str, larder: Larder<'_>) -> Joined {
        // "4 large or 5 medium eggs": the first count is taken, and the name is still to come.
        if lead == Lead::Or
            && term.is_bare
            && !self.amounts.is_empty()
            && !self.name.is_empty()
            && lookup::only_describes(&self.name)
        {
            self.size = self.size.or(phrase::size(&self.name.to_ascii_lowercase()));
            self.name.clear();
            return Joined::Here;
        }
        if self.is_over || lead == Lead::Or && !self.name.is_empty() && !self.amounts.is_empty() {
            self.is_over = true;
            return Joined::Instead;
        }
        let is_first = self.amounts.is_empty();
        let has_name = !self.name.is_empty();
        // "Instant coffee, dissolved in 2 tbsp boiling water | 3 tsp".
        let is_dissolved = self.tails.last().is_some_and(|tail| {
            ["dissolved", "mixed", "soaked", "blended"].contains(&tail.as_str())
        });
        if is_first && is_dissolved && lead == Lead::Other && self.names_another(after, larder) {
            let said = format!(
                "{} {after}",
                term.amounts
                    .first()
                    .map(understood::written)
                    .unwrap_or_default()
            );
            self.others.push(Other {
                text: said.clone(),
                said,
            });
            self.is_set_apart = true;
            return Joined::Here;
        }
        if is_first {
            self.take(term);
            if lead == Lead::Minus {
                self.fault = Some(term::BELOW_ZERO.to_owned());
            }
            // "Cake: 2 cups flour": what stood before was no name.
            if has_name
                && !after.is_empty()
                && !lookup::search(&self.name, larder).is_known()
                && lookup::search(after, larder).is_known()
            {
                self.tails.push(std::mem::take(&mut self.name));
            }
            return Joined::Here;
        }
        match lead {
            Lead::Plus | Lead::Minus => {
                let after_lower = after.to_ascii_lowercase();
                let is_set_apart = ["for ", "extra", "more", "additional"]
                    .iter()
                    .any(|start| after_lower.starts_with(start))
                    || after_lower.starts_with("to ")
                    || phrase::aside(&after_lower, false).is_some();
                if has_name && is_set_apart {
                    self.is_set_apart = true;
                    return Joined::Here;
                }
                if has_name && !self.is_own(after, larder) {
                    return Joined::Another;
                }
                let sign = if lead == Lead::Plus { 1.0 } else { -1.0 };
                // "Zest of 2 lemons + 1/4 cup lemon juice": what cannot be put together is another thing.
                let fits = self.amounts.iter().any(|amount| {
                    let mut whole = *amount;
                    term.amounts
                        .iter()
                        .any(|other| add(&mut whole, other, sign, larder))
                });
                if !fits
                    && has_name
                    && lead == Lead::Plus
                    && !lookup::only_describes(after)
                    && lookup::search(after, larder).is_sure()
                {
                    return Joined::Another;
                }
                self.sum(term, sign, after, larder);
            }
            Lead::To => {
                if let (Some(last), Some(end)) = (self.amounts.last_mut(), term.amounts.first()) {
                    let mut upper = Amount {
                        low: 0.0,
                        high: 0.0,
                        unit: last.unit,
                    };
                    if add(&mut upper, end, 1.0, larder) && upper.high > last.low {
                        last.high = upper.high;
                    }
                }
            }
            _ => {
                let is_weight_after = lead == Lead::None
                    && term
                        .amounts
                        .iter()
                        .all(|amount| matches!(amount.unit, Unit::Mass(_)))
                    && [
                        "once ", "when ", "after ", "in total", "weighed", "peeled", "stoned",
                        "net",
                    ]
                    .iter()
                    .any(|start| after.to_ascii_lowercase().starts_with(start));
                if has_name && after.to_ascii_lowercase().contains("reserved") {
                    self.is_set_apart = true;
                } else if has_name && is_weight_after {
                    self.dual(term, larder);
                } else if has_name && !self.is_own(after, larder) {
                    if lead != Lead::Other || self.names_another(after, larder) {
                        return Joined::Another;
                    }
                } else if lead != Lead::Other && !(term.is_bare && has_name) {
                    self.dual(term, larder);
                }
            }
        }
        Joined::Here
    }

    /// Whether words after a known name offer another in its place.
    fn turns_to_choice(&self, words: &str, larder: Larder<'_>) -> bool {
        (words.eq_ignore_ascii_case("or") || begins(words, "or "))
            && !self.amounts.is_empty()
            && lookup::search(&self.name, larder).is_known()
    }

    /// The first amount of the line.
    pub(super) fn take(&mut self, term: &Term) {
        self.amounts.extend(term.amounts.iter().copied());
        self.level = term.level;
        self.form = self.form.or(term.form);
        self.filling = self.filling.or(term.filling);
        self.is_bare = term.is_bare;
        self.is_loose = term.is_loose;
        self.doubts.extend(term.doubts.iter().cloned());
        self.fault = self.fault.take().or_else(|| term.fault.clone());
    }

    /// The same amount in another unit.
    pub(super) fn dual(&mut self, term: &Term, larder: Larder<'_>) {
        for amount in &term.amounts {
            let mut whole = *amount;
            self.unpaired.retain(|(first, sign)| {
                let mut sum = *first;
                let is_pair = add(&mut sum, amount, *sign, larder);
                if is_pair {
                    whole = sum;
                }
                !is_pair
            });
            // The same amount in a second column says nothing new.
            if !self.amounts.contains(&whole) {
                self.amounts.push(whole);
            }
        }
        self.form = self.form.or(term.form);
        self.fault = self.fault.take().or_else(|| term.fault.clone());
        if self.level == Level::Level {
            self.level = term.level;
        }
    }

    /// "1 cup plus 2 tablespoons": put together where the units allow it. Duals that have no partner fall out.
    pub(super) fn sum(&mut self, term: &Term, sign: f64, after: &str, larder: Larder<'_>) {
        self.fault = self.fault.take().or_else(|| term.fault.clone());
        self.doubts.extend(term.doubts.iter().cloned());
        let mut kept = Vec::new();
        let mut unpaired = Vec::new();
        for amount in &self.amounts {
            let mut whole = *amount;
            if term
                .amounts
                .iter()
                .any(|other| add(&mut whole, other, sign, larder))
            {
                kept.push(whole);
            } else {
                unpaired.push((*amount, sign));
            }
        }
        if kept.is_empty() {
            let written: Vec<String> = term.amounts.iter().map(understood::written).collect();
            self.doubts.push(format!("{} {} is left out: it cannot be put together with the first amount. Give it a line of its own.", written.join(", "), after).replace("  ", " "));
        } else {
            self.amounts = kept;
            self.unpaired = unpaired;
        }
    }

    /// Whether words after an amount say nothing but this line's own ingredient, or its state.
    fn is_own(&self, words: &str, larder: Larder<'_>) -> bool {
        if lookup::only_describes(words) || phrase::is_to_taste(&words.to_ascii_lowercase()) {
            return true;
        }
        match (
            lookup::search(words, larder).matched.taken(),
            lookup::search(&self.name, larder).matched.taken(),
        ) {
            (Some(one), Some(two)) => one.key == two.key,
            _ => shares_text(words, &self.name),
        }
    }

    /// Whether words name an ingredient other than this line's.
    pub(super) fn names_another(&self, words: &str, larder: Larder<'_>) -> bool {
        let found = lookup::search(words, larder);
        let Some(other) = found.matched.taken() else {
            return false;
        };
        let own = lookup::search(&self.name, larder);
        own.matched.taken().is_none_or(|own| own.key != other.key)
    }

    /// Words outside brackets.
    fn words(&mut self, words: &str, larder: Larder<'_>) {
        if self.is_over && !self.name.is_empty() {
            return;
        }
        if self.name.is_empty() {
            words.clone_into(&mut self.name);
        } else if lookup::only_describes(&self.name) || self.after_bracket && !begins(words, "or ")
        {
            if self.after_bracket && !lookup::only_describes(&self.name) {
                let whole = format!("{} {words}", self.name);
                if lookup::only_describes(words)
                    || !lookup::search(&whole, larder).is_known()
                        && lookup::search(&self.name, larder).is_known()
                {
                    self.tails.push(words.to_owned());
                    return;
                }
            }
            self.name.push(' ');
            self.name.push_str(words);
        } else {
            self.tails.push(words.to_owned());
        }
    }

    /// Ingredients that stand in notes without an amount: "1 tsp each cinnamon, cloves and nutmeg" names three,
    /// "sultanas, raisins or currants" one of three.
    pub fn list_sharing(&mut self, found: &lookup::Found, larder: Larder<'_>) {
        let Some(own) = found.matched.taken() else {
            return;
        };
        // "Mixed spices, cloves and nutmeg" says what is mixed.
        if found.named_by.iter().any(|word| word == "mixed") {
            return;
        }
        let joins = |word: &'static str| {
            move |tail: &String| {
                tail.split([' ', '/'])
                    .any(|it| it.eq_ignore_ascii_case(word))
            }
        };
        let (is_choice, is_list) = (
            self.tails.iter().any(joins("or")),
            self.tails.iter().any(joins("and")) || self.tails.iter().any(|tail| tail.contains('&')),
        );
        for tail in &self.tails {
            let lower = tail.to_ascii_lowercase();
            let lower = lower.trim_start_matches("and ").trim_start_matches("or ");
            let is_joined = [
                "in ", "with ", "for ", "to ", "from ", "at ", "on ", "such ", "like ", "if ",
                "of ", "plus ", "as ", "about ", "until ", "not ", "then ",
            ]
            .iter()
            .any(|start| lower.starts_with(start));
            if is_joined || tail.split(' ').count() > 5 || lookup::only_describes(tail) {
                continue;
            }
            let other = lookup::search(lower, larder);
            let is_own_kind = other
                .named_by
                .iter()
                .all(|word| found.named_by.contains(word));
            let is_open = matches!(other.matched, lookup::Match::OneOf(_));
            if !other.doubts.is_empty() && !is_open || is_own_kind && !self.says_each {
                continue;
            }
            let members = match &other.matched {
                lookup::Match::OneOf(several) if is_choice => several.clone(),
                matched => matched.taken().into_iter().collect(),
            };
            let named = members
                .into_iter()
                .chain(other.also.iter().copied())
                .filter(|other| other.key != own.key)
                .filter(|other| self.says_each || is_choice || !shares_word(own, other));
            if is_choice {
                self.choices.extend(named);
            } else if self.says_each || is_list || self.amounts.is_empty() {
                self.sharing.extend(named);
            } else {
                self.others.extend(named.map(|other| Other {
                    text: String::new(),
                    said: other.name.to_owned(),
                }));
            }
        }
    }
}

/// What an amount comes to when it follows others.
enum Joined {
    /// It belongs to this ingredient, or is set apart from it.
    Here,
    /// It begins another ingredient.
    Another,
    /// It begins what may stand in this one's place.
    Instead,
}

/// What follows "or", "or use".
pub(super) fn strip_or(words: &str) -> Option<&str> {
    let rest = words
        .get(3..)
        .filter(|_| begins(words, "or "))?
        .trim_start();
    Some(rest.strip_prefix("use ").unwrap_or(rest))
}

/// Whether two ingredients are of one plant or animal by their names.
pub fn shares_word(one: &Ingredient, two: &Ingredient) -> bool {
    shares_text(one.name, two.name)
}

/// Whether two texts have a word of four letters or more in common.
pub fn shares_text(one: &str, two: &str) -> bool {
    let words = |text: &str| -> Vec<String> {
        text.split(|letter: char| !letter.is_alphanumeric())
            .filter(|word| word.len() > 2 && !lookup::only_describes(word))
            .map(lookup::plain_word)
            .collect()
    };
    let ones = words(one);
    words(two).iter().any(|word| ones.contains(word))
}
