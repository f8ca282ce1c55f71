//! Reading: pasted text to a [`Recipe`], every line kept and each with how it was understood.
//!
//! Goes in: any text a person pastes, the country its words are taken from, and the baker's
//! corrections. Comes out: one [`Line`] for each line of the text, in order. Text from a person is
//! never an error: a line that cannot be read stays, says why, and leaves the rest alone.
//! What a line weighs is left to [`formula`](crate::baking::formula).

mod amount;
mod bake_sentence;
mod bake_time;
mod bowls;
mod bracket;
mod correction;
mod country;
mod each;
mod gather;
mod heading;
mod ingredient_line;
mod length;
pub mod linked;
mod look;
mod measure;
mod method;
mod name;
mod number;
mod number_words;
mod oven;
mod pan;
mod pan_kind;
mod pan_size;
mod part;
mod phrase;
mod poured;
mod role;
mod running;
mod running_text;
mod scan;
mod seen;
mod several;
mod state;
mod step_time;
mod sum;
mod term;
mod tidy;
mod time_span;
mod token;
mod understood;

pub use amount::{Amount, Level, Unit, VolumeUnit};
pub use bake_time::{BakeTime, BakeWords, Baked, minutes_typed};
pub use bowls::{Bowl, Portion, bowls};
use correction::read_amount;
pub use correction::{Correction, amount_trouble, read_grams};
pub use country::{Certainty, Guess, guess};

use super::ingredient::lookup;
pub use super::ingredient::lookup::Match;
use super::ingredient::{Filling, Form, Larder, PieceSize};
use super::quantity::{Length, Mass, Temperature};
use look::Look;
pub use look::Looks;
pub use oven::{bare as bare_degrees, is_baking};
pub use pan::pan_typed;
use std::collections::HashMap;
use std::sync::Arc;
pub use step_time::{StepTime, step_times};

/// A line's words in the plain form in which they are remembered: bullets and markup taken off, lower case.
pub fn plain_line(line: &str) -> String {
    let tidied = tidy::tidy(line);
    lookup::words_of(tidy::unbullet(&tidied).1).join(" ")
}

/// The oven settings in a few words, in the order written: "350F/180C/160C fan".
pub fn oven_settings(words: &str) -> Vec<OvenSetting> {
    let tidied = tidy::tidy(words);
    let lower = tidied.to_ascii_lowercase();
    oven::ovens(&token::tokens(&tidied, &lower))
}

/// Reads a recipe. Every line of the text is kept; the baker's corrections go first.
pub fn read(text: &str, larder: Larder<'_>, corrections: &[Correction]) -> Recipe {
    read_again(&mut Looks::default(), text, larder, corrections)
}

/// The same, with what was seen of lines before: a letter typed in one line looks at that line alone.
pub fn read_again(
    looks: &mut Looks,
    text: &str,
    larder: Larder<'_>,
    corrections: &[Correction],
) -> Recipe {
    let texts: Vec<&str> = text.lines().collect();
    let looks = looks.at(&texts, larder);
    let (title, roles) = role::roles(&looks, larder);
    let mut lines: Vec<Line> = texts
        .iter()
        .zip(roles)
        .enumerate()
        .map(|(at, (text, role))| Line {
            number: at + 1,
            text: (*text).to_owned(),
            mentions: match &role {
                Role::Method | Role::Note => looks[at].mentions(),
                // A step in which ingredients were found.
                Role::Ingredient(_) if looks[at].is_step || looks[at].is_sentence => {
                    looks[at].mentions()
                }
                _ => Mentions::default(),
            },
            role,
        })
        .collect();
    role::doubt_minus(&looks, &mut lines);
    poured::settle(&mut lines, &looks);
    correct(&mut lines, &looks, corrections, larder);
    Recipe {
        title: title.map(|at| looks[at].text.clone()),
        lines,
    }
}

/// Puts what the baker said in place of what was read.
fn correct(
    lines: &mut [Line],
    looks: &[Arc<Look>],
    corrections: &[Correction],
    larder: Larder<'_>,
) {
    if corrections.is_empty() {
        return;
    }
    let mut wanted: HashMap<(&str, usize), Vec<&Correction>> = HashMap::new();
    for correction in corrections {
        let place = (correction.text.trim(), correction.occurrence);
        wanted.entry(place).or_default().push(correction);
    }
    let mut seen: HashMap<String, usize> = HashMap::new();
    let mut section = Section::Batter;
    for (line, look) in lines.iter_mut().zip(looks) {
        if let Role::Heading(opened @ (Section::Batter | Section::Beside)) = line.role {
            section = opened;
        }
        let text = line.text.trim();
        if text.is_empty() {
            continue;
        }
        let count = seen.entry(text.to_owned()).or_default();
        let corrections = wanted.get(&(text, *count));
        *count += 1;
        for correction in corrections.into_iter().flatten() {
            line.role = corrected(
                std::mem::replace(&mut line.role, Role::Blank),
                look,
                section,
                correction,
                larder,
            );
        }
    }
}

/// One line's role with a correction in it.
fn corrected(
    role: Role,
    look: &Look,
    section: Section,
    correction: &Correction,
    larder: Larder<'_>,
) -> Role {
    if correction.is_ingredient == Some(false) {
        return Role::Note;
    }
    let key = correction.ingredient.as_deref();
    let is_wanted = correction.is_ingredient == Some(true)
        || key.is_some()
        || correction.amount.is_some()
        || correction.grams.is_some();
    let mut role = match role {
        Role::Ingredient(_) => role,
        _ if is_wanted => role::forced(look, section, correction.amount.is_some(), larder),
        _ => return role,
    };
    let Role::Ingredient(line) = &mut role else {
        return role;
    };
    let Some(reading) = line.part_mut(correction.part) else {
        return role;
    };
    if let Some(key) = key {
        let named = reading.instead.iter().position(|instead| {
            instead
                .ingredient
                .taken()
                .is_some_and(|known| known.key == key)
        });
        if let Some(at) = named {
            // What the line itself names as a choice comes with its own amounts.
            let chosen = reading.instead.remove(at);
            let before = std::mem::replace(reading, chosen);
            reading.also = before.also.clone();
            reading.instead = before.instead.clone();
            reading.section = before.section;
            reading.aside = before.aside;
        }
        match larder.by_key(key) {
            Some(ingredient) => {
                reading.ingredient = Match::Known(ingredient);
                reading.doubts.clear();
            }
            None => reading.doubts.push(format!(
                "The correction names \"{key}\", which is not in the tables; it is left out."
            )),
        }
    }
    if let Some(typed) = &correction.amount {
        match read_amount(typed) {
            Ok(Some(term)) => reading.take_amount(&term),
            Ok(None) => {}
            Err(sentence) => reading.doubts.push(sentence),
        }
    }
    match correction.grams {
        // None of it is a weight too: a mend may leave a leavener out.
        Some(grams) if (0.0..=number::LARGEST).contains(&grams) => {
            reading.own_weight = Some(Mass::grams(grams))
        }
        Some(_) => reading.doubts.push(
            "The corrected weight must lie from 0 to 1,000,000 g; it is left out.".to_owned(),
        ),
        None => {}
    }
    reading.understood = understood::understood(reading);
    role
}

/// A recipe as it was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Recipe {
    /// What the recipe calls itself, if it does.
    pub title: Option<String>,
    /// Every line of the text, in order; line `n` stands at `n - 1`.
    pub lines: Vec<Line>,
}

/// One line of the text and how it was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Counted from 1.
    pub number: usize,
    /// The line as it was pasted.
    pub text: String,
    /// What it was taken for.
    pub role: Role,
    /// Pans, ovens and a yield that it names in running text.
    pub mentions: Mentions,
}

/// What a line was taken for.
#[derive(Clone, Debug, PartialEq)]
pub enum Role {
    /// Nothing on it.
    Blank,
    /// The recipe's name.
    Title,
    /// The head of a part: "For the frosting", "Method".
    Heading(Section),
    /// Something that goes into a bowl.
    Ingredient(Reading),
    /// A step of the method.
    Method,
    /// Anything else that was kept: a story, a tip, a yield.
    Note,
    /// It looks like an ingredient or has an amount, but cannot be read; the sentence says why.
    Unread(String),
}

/// The part of a recipe that a heading opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// Ingredients of the cake itself: the batter or dough.
    Batter,
    /// Ingredients that never meet the batter before it is baked: frosting, icing, glaze, syrup, filling, sauce, topping put on afterwards.
    Beside,
    /// Steps.
    Method,
    /// Notes, tips, equipment, nutrition.
    Notes,
}

/// What a line of running text names besides words.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mentions {
    /// Pans, with their sizes.
    pub pans: Vec<PanMention>,
    /// Oven settings, in the order written.
    pub ovens: Vec<OvenSetting>,
    /// How long it is baked, in the order written.
    pub bakes: Vec<BakeTime>,
    /// How many the recipe makes, as written.
    pub makes: Option<String>,
}

/// An oven setting named in the text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvenSetting {
    /// What the oven is set to.
    pub temperature: Temperature,
    /// Whether that is for an oven with a fan.
    pub is_fan: bool,
}

/// A pan named in the text: how many, what kind, the lengths that stand beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct PanMention {
    /// How many of them; 1 where the text says "a".
    pub count: u32,
    /// The kind of pan.
    pub kind: PanKind,
    /// The row of the table of pan sizes that the words name: "half sheet", "2 lb loaf tin".
    pub size: Option<&'static str>,
    /// The lengths as written, largest sides first as the text has them, depth last if it is named. Empty for "a loaf tin".
    pub lengths: Vec<Length>,
}

/// Kinds of pan that text names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PanKind {
    /// Round or springform.
    Round,
    /// Square.
    Square,
    /// Rectangle: traybake, "13 x 9".
    Rectangle,
    /// Sheet pan, Swiss roll tin, gastronorm.
    Sheet,
    /// Loaf.
    Loaf,
    /// Plain tube.
    Tube,
    /// Fluted tube.
    Fluted,
    /// Ring with a round bottom.
    Ring,
    /// Tart, flan or pie tin.
    Tart,
    /// Half a ball.
    Bowl,
    /// Hexagon.
    Hexagon,
    /// Heart.
    Heart,
    /// Oval.
    Oval,
    /// Jar.
    Jar,
    /// Muffin or cupcake cups; `count` is the number of cups.
    Cups,
}

/// An ingredient line as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Which ingredient it is.
    pub ingredient: Match,
    /// The words that were read as its name, amounts and notes taken off.
    pub name: String,
    /// The amounts as written: the first is the main one, dual amounts follow. Empty: none was given.
    pub amounts: Vec<Amount>,
    /// The state in which it is measured ("1 cup mashed banana", "packed").
    pub form: Option<Form>,
    /// How the cup was filled, where the line itself says so ("1 cup sifted flour").
    pub filling: Option<Filling>,
    /// Its size class ("2 large eggs").
    pub size: Option<PieceSize>,
    /// Scant, heaped and the like.
    pub level: Level,
    /// Whether the measure is only roughly known: a splash, a teacup, the size of an egg.
    pub is_loose: bool,
    /// Whether the line calls it optional, or for serving, greasing, dusting: kept, and left out of the batter.
    pub aside: Option<Aside>,
    /// The part of the recipe it stands in.
    pub section: Section,
    /// What is unsure about the reading, as sentences; empty when it is sure.
    pub doubts: Vec<String>,
    /// How the line was understood, in one short sentence.
    pub understood: String,
    /// Whether its name means this because the baker once said so.
    pub is_taught: bool,
    /// The baker's own weight for this line, in place of all the above.
    pub own_weight: Option<super::quantity::Mass>,
    /// Other ingredients of the same line, in its order: "salt and pepper", "1 egg plus 1 yolk". They hold no more of them.
    pub also: Vec<Reading>,
    /// What the line says may stand in its place, with amounts of their own: "1 cup butter or 3/4 cup oil".
    pub instead: Vec<Reading>,
}

impl Reading {
    /// This ingredient, then the others of the line.
    pub fn all(&self) -> impl Iterator<Item = &Self> {
        std::iter::once(self).chain(&self.also)
    }

    /// The level spoons that it is measured by: "1 1/2 teaspoons"; `None` for any other measure.
    pub fn spoons(&self) -> Option<String> {
        let [amount] = self.amounts.as_slice() else {
            return None;
        };
        let is_spoon = matches!(
            amount.unit,
            Unit::Volume(VolumeUnit::Teaspoon | VolumeUnit::Dessertspoon | VolumeUnit::Tablespoon)
        );
        let is_so = is_spoon && self.level == Level::Level && self.own_weight.is_none();
        is_so.then(|| understood::written(amount))
    }

    /// Takes an amount in place of what was read; doubts about that are settled.
    fn take_amount(&mut self, term: &term::Term) {
        self.amounts.clone_from(&term.amounts);
        self.level = term.level;
        self.is_loose = term.is_loose;
        self.form = term.form.or(self.form);
        self.filling = term.filling.or(self.filling);
        self.doubts.clone_from(&term.doubts);
        match self.ingredient.taken() {
            Some(ingredient) => name::pieces(&mut self.amounts, &self.name, Some(ingredient)),
            None => self.doubts.push(ingredient_line::unknown(&self.name)),
        }
    }

    /// The ingredient at a place in the line, 0 the first.
    fn part_mut(&mut self, part: usize) -> Option<&mut Self> {
        match part.checked_sub(1) {
            None => Some(self),
            Some(at) => self.also.get_mut(at),
        }
    }
}

/// Why an ingredient line stays out of the batter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aside {
    /// "Optional".
    Optional,
    /// "To serve", "to decorate".
    ToServe,
    /// "For greasing", "for dusting".
    ForThePan,
}
