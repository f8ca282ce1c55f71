//! Recipes told in sentences: where no line of a recipe is an ingredient, its steps are read for amounts of known
//! things: "Beat 4 oz butter with 4 oz sugar, then add 2 eggs."

use super::ingredient_line::attempt;
use super::look::Look;
use super::term::{self, Place};
use super::token::{Token, tokens};
use super::{Match, Reading, Role, Section, Unit, number_words};
use crate::baking::ingredient::{Group, Larder, Piece};
use std::sync::Arc;

/// What is said of each ingredient that was found in a sentence.
const DOUBT: &str = "Found in a sentence. Check that each amount is counted once.";

/// How many words a name in a sentence may have.
const LONGEST_NAME: usize = 6;

/// Turns steps and notes into ingredients where the recipe has no other.
pub fn fill(looks: &[Arc<Look>], roles: &mut [Role], larder: Larder<'_>) {
    if roles
        .iter()
        .any(|role| matches!(role, Role::Ingredient(_) | Role::Unread(_)))
    {
        return;
    }
    for (look, role) in looks.iter().zip(roles) {
        if !matches!(role, Role::Method | Role::Note) || look.is_fact {
            continue;
        }
        let mut found = ingredients(&look.text, larder).into_iter();
        if let Some(mut first) = found.next() {
            first.also.extend(found);
            *role = Role::Ingredient(first);
        }
    }
}

/// Every amount of a known thing in a text.
fn ingredients(text: &str, larder: Larder<'_>) -> Vec<Reading> {
    let lower = text.to_ascii_lowercase();
    let all = tokens(text, &lower);
    let starts: Vec<usize> = (0..all.len())
        .filter(|at| starts_amount(&all, *at))
        .collect();
    let mut found = Vec::new();
    for (nth, at) in starts.iter().enumerate() {
        let end = starts.get(nth + 1).copied().unwrap_or(all.len());
        found.extend(one(text, &all[*at..end], larder));
    }
    found
}

/// Whether an amount starts at a token, and not in the middle of one.
fn starts_amount(all: &[Token], at: usize) -> bool {
    let before = at.checked_sub(1).map(|before| &all[before]);
    let goes_on = before.is_some_and(|before| {
        before.is_number()
            || before.is_mark('-')
            || before.is_mark('/')
            || before.is_any(&["a", "an"])
    });
    let is_word = number_words::small_number(&all[at]).is_some() || all[at].is_any(&["a", "half"]);
    (all[at].is_number() || is_word)
        && !goes_on
        && term::term(all, at, Place::Joined).is_some_and(|term| {
            !term.is_bare
                && term
                    .amounts
                    .iter()
                    .any(|amount| amount.unit != Unit::ToTaste)
                || term.is_bare && !all[at].is("a")
        })
}

/// The ingredient in a stretch of text that an amount opens: the longest name that is known beyond doubt.
fn one(text: &str, stretch: &[Token], larder: Larder<'_>) -> Option<Reading> {
    let first = stretch.first()?;
    let ends = stretch
        .iter()
        .position(|token| token.is_mark('.') && token.spaced || token.is_mark(';'))
        .unwrap_or(stretch.len());
    let amount = term::term(stretch, 0, Place::Start)?.next;
    for last in (amount + 1..=ends.min(amount + LONGEST_NAME)).rev() {
        let words = text.get(first.start..stretch[last - 1].end)?;
        let mut reading = attempt(words, larder, Section::Batter).reading;
        let is_counted = reading
            .amounts
            .first()
            .is_some_and(|amount| amount.unit == Unit::Piece(Piece::Each));
        let fits = reading.ingredient.taken().is_some_and(|ingredient| {
            !is_counted
                || matches!(
                    ingredient.group,
                    Group::Egg | Group::Fruit | Group::Vegetable
                )
        });
        if fits && reading.doubts.is_empty() && reading.ingredient != Match::Unknown {
            reading.doubts.push(DOUBT.to_owned());
            for other in &mut reading.also {
                other.doubts.push(DOUBT.to_owned());
            }
            return Some(reading);
        }
    }
    None
}
