//! A difference in words that a reader can be sent.

use super::ingredients::{Amount, Matched};
use super::{Difference, IngredientChange, SaidChange};
use crate::baking::quantity::{Mass, show};

/// What the words begin with: the recipe's name and the version's; empty where there is neither.
pub(super) fn head(title: Option<&str>, name: &str) -> String {
    let (title, name) = (title.unwrap_or("").trim(), name.trim());
    match (title, name) {
        ("", name) => name.to_owned(),
        (title, "") => title.to_owned(),
        (title, name) if name.contains(title) => name.to_owned(),
        (title, name) => format!("{title}, {name}"),
    }
}

/// The words: ingredients first, then pan, method and allergens.
pub(super) fn words(head: &str, matched: &[Matched], found: &Difference) -> String {
    let amounts = amounts(matched);
    let mut sentences = Vec::new();
    if !amounts.is_empty() {
        sentences.push(amounts.join("; "));
    } else if matched.iter().any(|it| it.change.differs()) {
        sentences.push("The amounts are the same, and how sure they are differs".into());
    }
    sentences.extend(said(&found.said));
    sentences.extend(method(found));
    sentences.extend(allergens(found));
    if sentences.is_empty() {
        sentences.push("Nothing differs".into());
    }
    let words = sentences
        .iter()
        .map(|sentence| show::sentence(sentence) + ".")
        .collect::<Vec<_>>()
        .join(" ");
    match head {
        "" => words,
        head => format!("{head}: {words}"),
    }
}

/// One piece of words for each change of amounts; what took another's place is told with it.
fn amounts(matched: &[Matched]) -> Vec<String> {
    let mut told = Vec::new();
    let mut slots = Vec::new();
    for it in matched.iter().filter(|it| it.change.differs()) {
        if let (Some(before), Some(after)) = (&it.change.before, &it.change.after) {
            told.extend(changed(it, before, after));
            continue;
        }
        // What stood in one place is told once, where it first comes up.
        if !slots.contains(&&it.slot) {
            slots.push(&it.slot);
            told.extend(exchanged(matched, it));
        }
    }
    told
}

/// All that came and went in the place of one change.
fn exchanged(matched: &[Matched], of: &Matched) -> Vec<String> {
    let here = |it: &&Matched| it.slot == of.slot;
    let side = |amount: fn(&IngredientChange) -> Option<&Amount>,
                other: fn(&IngredientChange) -> Option<&Amount>| {
        let alone = matched
            .iter()
            .filter(here)
            .filter(|it| other(&it.change).is_none());
        alone
            .filter_map(|it| Some(named(it, amount(&it.change)?)))
            .collect::<Vec<_>>()
    };
    let came = side(|it| it.after.as_ref(), |it| it.before.as_ref());
    let went = side(|it| it.before.as_ref(), |it| it.after.as_ref());
    match (came.as_slice(), went.as_slice()) {
        ([], went) => went.iter().map(|it| format!("{it} left out")).collect(),
        (came, []) => came.iter().map(|it| format!("{it} added")).collect(),
        (came, went) => vec![format!("{} instead of {}", listed(came), listed(went))],
    }
}

/// More or less of it; nothing where only its spread is another.
fn changed(it: &Matched, before: &Amount, after: &Amount) -> Option<String> {
    if before.shown == after.shown {
        return None;
    }
    let said = it.said;
    let aside = aside(&it.change);
    let all = measured(after);
    let Some((old, new)) = before
        .grams
        .zip(after.grams)
        .filter(|_| !it.change.change_shown.is_empty())
    else {
        return Some(format!(
            "{said}{aside}: {all} where it was {}",
            measured(before)
        ));
    };
    let by = show::mass(Mass::grams((new.mean - old.mean).abs()));
    let way = if new.mean > old.mean { "more" } else { "less" };
    Some(format!("{by} {way} {said}{aside}, {all} in all"))
}

/// An amount with the name: "3 g (1/2 teaspoon) salt".
fn named(it: &Matched, amount: &Amount) -> String {
    let aside = aside(&it.change);
    match amount.grams {
        Some(_) => format!("{} {}{aside}", measured(amount), it.said),
        None => format!("{}{aside}, without a weight,", it.said),
    }
}

/// An amount with its spoons.
fn measured(amount: &Amount) -> String {
    match &amount.spoons {
        Some(spoons) => format!("{} ({spoons})", amount.shown),
        None => amount.shown.clone(),
    }
}

/// Where it goes if not into the batter.
fn aside(change: &IngredientChange) -> String {
    let place = change.beside.as_deref().and_then(|it| it.split(':').next());
    place.map_or_else(String::new, |place| format!(" ({})", lower(place)))
}

fn said(said: &[SaidChange]) -> Vec<String> {
    let changed = said.iter().filter(|it| it.differs());
    changed
        .map(|it| format!("{}: {} (was {})", it.label, it.after, it.before))
        .collect()
}

fn method(found: &Difference) -> Option<String> {
    match found.lines_come.len().max(found.lines_gone.len()) {
        0 => None,
        1 => Some("One other line of the text differs".into()),
        lines => Some(format!("{lines} other lines of the text differ")),
    }
}

/// A reader who must not eat it is told first of all what came in.
fn allergens(found: &Difference) -> Option<String> {
    let names =
        |names: &[String]| listed(&names.iter().map(|name| lower(name)).collect::<Vec<_>>());
    let (gained, lost) = (&found.allergens_gained, &found.allergens_lost);
    let said = match (gained.is_empty(), lost.is_empty()) {
        (true, true) => return None,
        (false, true) => format!("Allergens that came in: {}", names(gained)),
        (true, false) => format!(
            "Allergens that went out, by its ingredients: {}",
            names(lost)
        ),
        (false, false) => format!(
            "Allergens that came in: {}; that went out, by its ingredients: {}",
            names(gained),
            names(lost)
        ),
    };
    Some(format!("{said}. Read every packet"))
}

/// "a", "a and b", "a, b and c".
fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// The first letter made a small one.
fn lower(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        std::iter::once(first.to_ascii_lowercase())
            .chain(letters)
            .collect()
    })
}
