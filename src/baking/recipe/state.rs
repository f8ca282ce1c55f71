//! States that stand in the name itself: "mashed banana", "sifted flour", "walnuts chopped".

use super::phrase;
use crate::baking::ingredient::lookup::{self, Found};
use crate::baking::ingredient::{Form, Group, Ingredient, Larder};
use crate::baking::text;

/// States that stand in the name itself.
#[derive(Clone, Copy, Debug, Default)]
pub struct States {
    /// The state it is measured in: said before the thing.
    pub form: Option<Form>,
    /// A state said after the thing, with no comma.
    pub form_after: Option<Form>,
    /// "Sifted flour".
    pub is_sifted: bool,
}

/// The states in a name. Words that are part of the ingredient's own name ("ground almonds") count
/// only where its table has weights for that state.
pub fn states(name: &str, found: &Found, taken: Option<&Ingredient>, larder: Larder<'_>) -> States {
    let mut states = States::default();
    let head = found.named_by.last();
    let mut is_after = false;
    let is_gap = |letter: char| !(letter.is_alphanumeric() || letter == '\'');
    let all_lower = text::lower(name);
    // No letter is longer or shorter in lower case, so the words stand beside one another.
    for (word, lower) in name
        .split(is_gap)
        .zip(all_lower.split(is_gap))
        .filter(|words| !words.0.is_empty())
    {
        let plain = lookup::plain_word(word);
        let is_own = found.named_by.contains(&plain);
        if matches!(
            lower,
            "or" | "in" | "with" | "for" | "at" | "to" | "from" | "into" | "plus"
        ) {
            break;
        }
        if lower == "sifted" && !is_after {
            states.is_sifted = true;
        }
        if let Some(form) = phrase::form(lower) {
            let has_weight = taken.is_some_and(|ingredient| {
                ingredient.fillings.iter().any(|row| row.form == Some(form))
            });
            let is_own = is_own && changes_name(&found.named_by, &plain, taken, larder);
            // Ground is how spices are sold, and no state of theirs.
            let is_state = form != Form::Ground
                || taken.is_none_or(|ingredient| {
                    !matches!(ingredient.group, Group::Spice | Group::Flavour)
                });
            let names_whole = form != Form::Whole
                || taken.is_some_and(|ingredient| {
                    matches!(
                        ingredient.group,
                        Group::Nut | Group::Seed | Group::DriedFruit | Group::Spice
                    )
                });
            if (!is_own || has_weight) && names_whole && is_state {
                // A shape named last ("pecan halves", "apple puree") is the shape it is measured in.
                let is_shape = matches!(
                    lower,
                    "halves" | "slices" | "cubes" | "chunks" | "puree" | "purée" | "slivers"
                );
                if is_after && !is_shape {
                    states.form_after = states.form_after.or(Some(form));
                } else {
                    states.form = Some(states.form.unwrap_or(form));
                }
            }
        }
        is_after |= head.is_some_and(|head| *head == plain);
    }
    states
}

/// Whether a word makes the ingredient what it is: ground almonds are not almonds, mashed banana is banana.
fn changes_name(
    named_by: &[String],
    word: &str,
    taken: Option<&Ingredient>,
    larder: Larder<'_>,
) -> bool {
    let rest: Vec<&str> = named_by
        .iter()
        .map(String::as_str)
        .filter(|other| *other != word)
        .collect();
    lookup::exact(&rest.join(" "), larder).map(|ingredient| ingredient.key)
        != taken.map(|ingredient| ingredient.key)
}
