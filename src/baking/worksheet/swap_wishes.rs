//! Wishes of a swap that cannot all be had, each told before anything is reckoned.

use super::swap::{line_at, swap_asked};
use super::{Inputs, LineWords, SwapEntry, SwapLine};
use crate::baking::finding::Facts;
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Ingredient, Larder};
use crate::baking::quantity::show;
use crate::baking::substitute::swap::Swap;

/// Holds what is wished against the recipe and against itself.
///
/// # Errors
/// A sentence for the first wish that cannot be had.
pub fn check(inputs: &Inputs, facts: &Facts, larder: Larder) -> Result<(), String> {
    checked(inputs, facts, larder).map_err(|why| show::sentence(&why))
}

fn checked(inputs: &Inputs, facts: &Facts, larder: Larder) -> Result<(), String> {
    let entry = &inputs.choices.swaps;
    for asked in &entry.lines {
        let line = line_of(inputs, facts, &asked.line)?;
        check_asked(entry, asked, line, larder)?;
    }
    for held in &entry.held {
        // What is no longer there holds nothing.
        let Ok(line) = line_of(inputs, facts, held) else {
            continue;
        };
        if entry.lines.iter().any(|asked| asked.line == *held) {
            return Err(format!(
                "{} is to be swapped and to stay as it is: take one of the two back.",
                named(line)
            ));
        }
        if let Some(why) = bars(entry, line.ingredient) {
            return Err(format!(
                "{} is to stay as it is, and {why}: take one of the two back.",
                named(line)
            ));
        }
    }
    Ok(())
}

fn line_of<'a>(
    inputs: &Inputs,
    facts: &'a Facts,
    words: &LineWords,
) -> Result<&'a Weighed, String> {
    let place = inputs.line_of(words).ok_or_else(|| {
        format!(
            "\"{}\" was to be swapped, and the recipe has that line no more: take it back, or choose again.",
            words.text
        )
    })?;
    line_at(facts, place).ok_or_else(|| {
        format!(
            "\"{}\" (line {}) was to be swapped, and it is no ingredient with a weight: mend its line first, or take it back.",
            words.text, place.0
        )
    })
}

fn check_asked(
    entry: &SwapEntry,
    asked: &SwapLine,
    line: &Weighed,
    larder: Larder,
) -> Result<(), String> {
    let named = named(line);
    if asked.percent == Some(0) {
        return Err(format!(
            "0 % of {named} is nothing to swap: say from 1 to 100 %, or take it back."
        ));
    }
    let swap = swap_asked(line.ingredient, &asked.to);
    for brought in brought(swap, &asked.to, larder) {
        if let Some(why) = bars(entry, brought) {
            return Err(format!(
                "{} was to come for {named}, and {why}: choose something else.",
                brought.name
            ));
        }
    }
    let usual = swap.map_or(100.0, |swap| swap.usual.to_percent());
    let goes = asked.percent.map_or(usual, f64::from);
    match bars(entry, line.ingredient) {
        Some(why) if goes < 100.0 => Err(format!(
            "A part of {named} would stay, and {why}: let all of it go, or choose something else."
        )),
        _ => Ok(()),
    }
}

fn brought(swap: Option<&Swap>, to: &str, larder: Larder) -> Vec<&'static Ingredient> {
    match swap {
        Some(swap) => swap
            .brings
            .iter()
            .map(|brought| brought.ingredient)
            .collect(),
        None => larder.by_key(to).into_iter().collect(),
    }
}

/// Why an ingredient may not be in the cake that is wished, after "and"; `None` where it may.
fn bars(entry: &SwapEntry, ingredient: &Ingredient) -> Option<String> {
    if entry.lacks(ingredient) {
        return Some(format!("{} is not in the house", ingredient.name));
    }
    let words = entry.without.bars(ingredient)?;
    Some(format!("the cake is to be {words}"))
}

/// "butter, unsalted (line 5)".
fn named(line: &Weighed) -> String {
    format!("{} (line {})", line.ingredient.name, line.line)
}
