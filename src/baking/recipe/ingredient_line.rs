//! One line read as an ingredient.
//!
//! Goes in: the tidy line. Comes out: an [`Attempt`]: what it would be as an ingredient, and what
//! tells whether it is one. Whether it is taken for one is left to [`role`](super::role).

use super::gather::Gather;
use super::measure;
use super::name;
use super::part::{self, Part};
use super::scan::{Chunk, Lead, scan};
use super::state;
use super::term::Term;
use super::token::{Token, tokens};
use super::{Amount, Aside, Level, Match, Reading, Section, Unit, phrase, several, understood};
use crate::baking::ingredient::lookup::{self, Found};
use crate::baking::ingredient::{Filling, Form, Group, Ingredient, Larder, Piece};
use crate::baking::text::{holds, lower};

/// A longer line than this holds no single ingredient.
pub const LONGEST: usize = 400;

/// A line read as an ingredient.
#[derive(Clone, Debug)]
pub struct Attempt {
    /// The reading.
    pub reading: Reading,
    /// Why its amount cannot be used.
    pub fault: Option<String>,
    /// Whether the line has an amount.
    pub has_amount: bool,
    /// Whether an amount leads the line.
    pub leads: bool,
    /// Whether the first amount has a measure, and does not only count.
    pub is_measured: bool,
    /// Whether there is a name at all.
    pub has_name: bool,
}

/// Reads a tidy line, bullets taken off, as an ingredient.
pub fn attempt(line: &str, larder: Larder<'_>, section: Section) -> Attempt {
    let lower = line.to_ascii_lowercase();
    let tokens = tokens(line, &lower);
    of_tokens(line, &lower, &tokens, larder, section)
}

/// The same of a line that was cut into tokens before.
pub fn of_tokens(
    line: &str,
    lower: &str,
    all: &[Token],
    larder: Larder<'_>,
    section: Section,
) -> Attempt {
    let mut gather = Gather::default();
    let (part, from) = part::leading_part(all);
    let (is_some, from) = some(all, from);
    if let Some((amount, rest)) = name::size_of(lower) {
        gather.amounts.push(amount);
        gather.is_loose = true;
        gather.doubts.push(format!(
            "\"{}\" is taken as {}.",
            rest.1,
            understood::written(&amount)
        ));
        gather.name = rest.0.to_owned();
    } else if let Some((eggs, name)) = name::weight_of_eggs(lower) {
        gather.amounts.push(TO_TASTE);
        gather.doubts.push(format!(
            "As much as {eggs} weigh in their shells. Weigh them, and give that weight."
        ));
        gather.name = name.to_owned();
    } else {
        let rest = &all[from..];
        let chunks = scan(rest);
        gather.leads = matches!(chunks.first(), Some(Chunk::Amount(..))) || part.is_some();
        match shown(line, rest, &chunks, larder) {
            Some((term, name, found)) => gather.one(term, name, found),
            None => gather.read(rest, line, &chunks, larder),
        }
    }
    let has_amount = !gather.amounts.is_empty();
    if is_some && !has_amount {
        gather.amounts.push(TO_TASTE);
    }
    if holds(lower, "that quantity of ") {
        gather.amounts = vec![TO_TASTE];
        gather.doubts = vec!["It goes by the amount of another line. Write how much.".to_owned()];
        gather.name = lower
            .split("that quantity of ")
            .nth(1)
            .unwrap_or_default()
            .to_owned();
    }
    let is_liquid = ["liquid from", "liquid of", "water from", "brine from"]
        .iter()
        .any(|start| lower.contains(start));
    if is_liquid && (lower.contains("chickpea") || lower.contains("garbanzo")) {
        // What is drawn off the tin is less than the tin.
        gather.name = "aquafaba".to_owned();
        let is_volume = |amount: &Amount| matches!(amount.unit, Unit::Volume(_));
        if gather.amounts.iter().any(is_volume) {
            gather.amounts.retain(is_volume);
        } else {
            gather
                .amounts
                .retain(|amount| matches!(amount.unit, Unit::Piece(_)));
        }
        gather.brackets.clear();
    }
    let is_rate = all.first().is_some_and(|token| token.is("to"))
        && all
            .get(1)
            .is_some_and(|token| token.is_any(&["every", "each"]));
    if is_rate {
        gather.fault = Some("It gives an amount by the measure of something else. Write the amount for this recipe.".to_owned());
    }
    if holds(lower, "made up to") || holds(lower, "topped up to") {
        gather.doubts.push(
            "What it is made up with is not counted. Give that a line of its own.".to_owned(),
        );
    }
    let says_each = all.iter().any(|token| token.is_any(&["each", "apiece"]));
    gather.says_each = says_each;
    let zest_first = part::zest_first(lower);
    finish(gather, part, has_amount, zest_first, larder, section)
}

/// One amount and then a name just as the page shows it. What is behind its commas and in its brackets belongs to
/// it, whatever that would say elsewhere: a weight printed by the page is read as the ingredient it was printed for.
fn shown<'c, 'l>(
    line: &'l str,
    tokens: &[Token],
    chunks: &'c [Chunk],
    larder: Larder<'_>,
) -> Option<(&'c Term, &'l str, Found)> {
    let [Chunk::Amount(term, Lead::None), _, _, ..] = chunks else {
        return None;
    };
    let of = usize::from(tokens.get(term.next)?.is("of"));
    let name = line.get(tokens.get(term.next + of)?.start..)?;
    Some((term, name, lookup::shown(name, larder)?))
}

/// An amount that nobody can weigh.
const TO_TASTE: Amount = Amount {
    low: 1.0,
    high: 1.0,
    unit: Unit::ToTaste,
};

/// "A little milk", "some flour".
fn some(tokens: &[Token], from: usize) -> (bool, usize) {
    let is = |at: usize, words: &[&str]| {
        tokens
            .get(from + at)
            .is_some_and(|token| token.is_any(words))
    };
    let article = usize::from(is(0, &["a"]));
    let very = article + usize::from(is(article, &["very", "wee", "tiny"]));
    if is(very, &["little", "bit"]) && (very > 0 || is(0, &["little"]) || is(1, &["of"])) {
        (true, from + very + 1 + usize::from(is(very + 1, &["of"])))
    } else if is(0, &["as"]) && is(1, &["much", "many"])
        || is(0, &["loads", "lots", "plenty"]) && is(1, &["of"])
    {
        (true, from + 2)
    } else if is(0, &["some", "enough", "sufficient"]) {
        (true, from + 1)
    } else {
        (false, from)
    }
}

/// From what was gathered to a reading.
fn finish(
    mut gather: Gather,
    part: Option<Part>,
    has_amount: bool,
    zest_first: bool,
    larder: Larder<'_>,
    section: Section,
) -> Attempt {
    if gather.doubts.iter().any(|doubt| doubt == measure::SQUEEZE)
        && !gather.name.to_ascii_lowercase().contains("juice")
    {
        gather.name.push_str(" juice");
    }
    let name_lower = lower(&gather.name);
    let notes: Vec<String> = gather
        .tails
        .iter()
        .chain(&gather.brackets)
        .map(|note| lower(note))
        .collect();
    let is_counted = matches!(
        gather.amounts.first(),
        None | Some(Amount {
            unit: Unit::Piece(Piece::Each),
            ..
        })
    );
    let (found, used_part) = match gather.shown.take() {
        Some(found) => (found, None),
        None => name::resolve(
            &gather.name,
            &gather.tails,
            &gather.brackets,
            part,
            is_counted,
            larder,
            &mut gather.doubts,
        ),
    };
    let found = name::from_tin(found, &gather.amounts, larder);
    let taken = found.matched.taken();
    gather.list_sharing(&found, larder);

    let mut aside = phrase::aside(&name_lower, true);
    let mut section = section;
    for note in &notes {
        aside = aside.or(phrase::aside(note, false));
    }
    for note in notes.iter().chain([&name_lower]) {
        if phrase::is_to_taste(note) && gather.amounts.is_empty() {
            gather.amounts.push(TO_TASTE);
        }
        if phrase::is_beside(note) && !note.contains("plus") && !note.contains("extra") {
            section = Section::Beside;
        }
        gather.filling = gather.filling.or(phrase::filling(note));
    }
    if aside == Some(Aside::ToServe)
        && taken.is_some_and(|ingredient| ingredient.group == Group::Flour)
    {
        aside = Some(Aside::ForThePan);
    }
    if let Some(level) = gather
        .brackets
        .iter()
        .find_map(|note| phrase::level(&lower(note)))
        && gather.level == Level::Level
    {
        gather.level = level;
    }
    let counts_pieces = gather
        .amounts
        .iter()
        .any(|amount| matches!(amount.unit, Unit::Piece(_)));
    if counts_pieces {
        gather.size = gather.size.or(phrase::size(&name_lower));
        for note in &notes {
            gather.size = gather
                .size
                .or(phrase::size(note).filter(|_| note.len() < 30));
        }
    }
    let before = state::states(&gather.name, &found, taken, larder);
    gather.filling = gather
        .filling
        .or(before.is_sifted.then_some(Filling::Sifted));
    let after = after_form(&notes, &before, &gather.amounts, taken);
    let form = before
        .form
        .or(gather.form)
        .or(gather.bracket_form)
        .or(after);

    name::pieces(&mut gather.amounts, &gather.name, taken);
    if let Some(ingredient) = taken {
        name::glass_of_wine(&mut gather, ingredient);
        name::spoon_of_flavour(&mut gather, ingredient);
    }
    gather.doubts.extend(found.doubts.iter().cloned());
    if gather
        .amounts
        .iter()
        .any(|amount| amount.low == 0.0 && amount.high == 0.0)
        && gather.fault.is_none()
    {
        gather.doubts.push("The amount is zero.".to_owned());
    }
    let shown = name::shown(&gather.name, used_part);
    if found.matched == Match::Unknown {
        gather.doubts.push(unknown(&shown));
    }
    let is_measured = gather
        .amounts
        .first()
        .is_some_and(|amount| !matches!(amount.unit, Unit::Piece(Piece::Each) | Unit::ToTaste));
    let has_name = !shown.is_empty() && (found.is_known() || !lookup::only_describes(&gather.name));
    let is_taught = larder
        .own
        .meaning_of(&shown)
        .is_some_and(|meaning| meaning == found.matched.taken());
    let mut reading = Reading {
        ingredient: found.matched.clone(),
        name: shown,
        amounts: std::mem::take(&mut gather.amounts),
        form,
        filling: gather.filling,
        size: gather.size,
        level: gather.level,
        is_loose: gather.is_loose,
        aside,
        section,
        doubts: std::mem::take(&mut gather.doubts),
        understood: String::new(),
        is_taught,
        own_weight: None,
        also: Vec::new(),
        instead: Vec::new(),
    };
    reading.understood = understood::understood(&reading);
    several::offers_by_note(&notes, &mut reading, larder);
    let line = several::Line {
        gather: &gather,
        found: &found,
        part: used_part,
        zest_first,
        larder,
    };
    several::add(&line, &mut reading);
    Attempt {
        reading,
        fault: gather.fault,
        has_amount,
        leads: gather.leads,
        is_measured,
        has_name,
    }
}

/// What is said of a name that the tables do not hold.
pub fn unknown(name: &str) -> String {
    if name.is_empty() {
        "There is an amount and no ingredient.".to_owned()
    } else {
        format!("No ingredient called \"{name}\" is in the tables.")
    }
}

/// The state that a note after the name gives to what is measured. Nuts, chocolate and fat are
/// measured first and cut or melted after; fruit and vegetables only fit a cup once they are cut.
fn after_form(
    notes: &[String],
    states: &state::States,
    amounts: &[Amount],
    taken: Option<&Ingredient>,
) -> Option<Form> {
    let by_volume = amounts
        .iter()
        .any(|amount| matches!(amount.unit, Unit::Volume(_)));
    let fits_only_cut =
        taken.is_some_and(|ingredient| matches!(ingredient.group, Group::Fruit | Group::Vegetable));
    let forms = notes.iter().flat_map(|note| {
        note.split(|letter: char| !letter.is_alphanumeric())
            .filter_map(phrase::form)
    });
    states
        .form_after
        .into_iter()
        .chain(forms)
        .find(|form| match form {
            Form::Packed | Form::Loose => true,
            Form::Mashed
            | Form::Grated
            | Form::Pureed
            | Form::Crushed
            | Form::Chopped
            | Form::Sliced
            | Form::Cubed => by_volume && fits_only_cut,
            _ => false,
        })
}
