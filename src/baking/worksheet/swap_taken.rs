//! The recipe as a plan makes it: new weights, other words, new lines. The old text's lines keep their words, but for
//! those that are swapped.

use super::{Inputs, SwapEntry};
use crate::baking::finding::{Facts, last_leavener, soda_name};
use crate::baking::ingredient::{Group, Ingredient, Region};
use crate::baking::quantity::show;
use crate::baking::substitute::plan::{Amount, Fate, Plan};

/// The inputs as they become.
pub(super) fn carried_out(inputs: &Inputs, facts: &Facts, plan: &Plan) -> Inputs {
    let mut after = inputs.clone();
    after.choices.swaps = SwapEntry::default();
    // Words that go may be those that told whose cups and spoons the rest is in.
    after.choices.region = Some(facts.region);
    // Weights go by today's lines; then words, which keep the count of lines; then new lines, from the last upwards.
    for amount in &plan.amounts {
        if let (Some(place), Fate::Moves | Fate::Goes) = (amount.place, amount.fate)
            && !(amount.fate == Fate::Goes && amount.after <= 0.0)
            && counted(inputs, facts, amount).is_none()
        {
            after.weigh(place, Some(amount.after));
        }
    }
    for amount in &plan.amounts {
        if let Some((line, words)) = counted(inputs, facts, amount) {
            after.reword(line, &words);
        }
    }
    let region = facts.region;
    let line_of = |amount: &Amount| {
        format!(
            "{} g {}",
            show::plain(amount.after),
            read_name(amount.ingredient, region)
        )
    };
    let mut added: Vec<(usize, String)> = Vec::new();
    for gone in plan
        .amounts
        .iter()
        .filter(|amount| amount.fate == Fate::Goes)
    {
        let Some(place) = gone.place else { continue };
        let mut comes = plan
            .amounts
            .iter()
            .filter(|amount| amount.fate == Fate::Comes(place) && amount.after > 0.0)
            .map(line_of);
        if gone.after <= 0.0 {
            let alone = !facts
                .formula
                .lines
                .iter()
                .any(|line| line.line == place.0 && line.part != place.1);
            if alone {
                after.reword(place.0, &comes.next().unwrap_or_default());
            } else {
                after.weigh(place, Some(0.0));
            }
        }
        added.extend(comes.map(|text| (place.0, text)));
    }
    for new in plan
        .amounts
        .iter()
        .filter(|amount| amount.fate == Fate::Added)
    {
        let below = match new.ingredient.group {
            Group::Leavener => last_leavener(facts),
            _ => facts
                .formula
                .batter()
                .map(|line| line.line)
                .max()
                .unwrap_or(0),
        };
        added.push((below, line_of(new)));
    }
    // Stable: lines below the same one keep their order once they are put in from the last.
    added.sort_by_key(|(line, _)| *line);
    for (line, text) in added.into_iter().rev() {
        after.add_after(line, &text);
    }
    after
}

/// The name by which the reader knows an ingredient again; soda has one in the country's words.
fn read_name(ingredient: &'static Ingredient, region: Region) -> &'static str {
    match ingredient.key {
        "baking_soda" => soda_name(region),
        _ => ingredient.name,
    }
}

/// The line of an amount that stays and its words with another count, where it is counted in eggs and comes to whole ones:
/// "4 eggs, beaten" of which half goes is "2 eggs, beaten". Alone on its line, and not mended.
fn counted(inputs: &Inputs, facts: &Facts, amount: &Amount) -> Option<(usize, String)> {
    let place = amount.place?;
    let is_alone =
        (facts.formula.lines.iter()).all(|line| line.line != place.0 || line.part == place.1);
    if amount.ingredient.group != Group::Egg || !is_alone || inputs.correction(place).is_some() {
        return None;
    }
    let text = inputs.recipe_text();
    let text = text.lines().nth(place.0.checked_sub(1)?)?;
    let digits: usize = text.bytes().take_while(u8::is_ascii_digit).count();
    let before: u32 = text[..digits].parse().ok().filter(|count| *count > 0)?;
    let each = amount.before / f64::from(before);
    let count = (amount.after / each).round();
    let is_whole = (amount.after - count * each).abs() <= HALF_A_GRAM;
    // "1 eggs" is no English, and grams at the front are no count.
    let is_said = (EGG.0..=EGG.1).contains(&each) && count >= 2.0 && before >= 2;
    // "4 1/2 eggs" and "4 to 5 eggs" are other counts.
    let rest = text[digits..].strip_prefix(' ')?;
    let is_plain =
        rest.starts_with(|letter: char| letter.is_ascii_alphabetic()) && !rest.starts_with("to ");
    (is_whole && is_said && is_plain).then(|| (place.0, format!("{count:.0} {rest}")))
}

/// What rounding to whole grams leaves open.
const HALF_A_GRAM: f64 = 0.5;
/// What an egg, a white or a yolk weighs, g.
const EGG: (f64, f64) = (10.0, 80.0);
