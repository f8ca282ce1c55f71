//! Mending one line by hand: which ingredient, what weight, or that it is none.

use crate::baking::ingredient;
use crate::baking::worksheet::{Offer, SheetLine};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many ingredients are offered at once.
const OFFERS: usize = 6;
/// More than any kitchen weighs, in grams.
const HEAVIEST: f64 = 1_000_000.0;

/// The form for mending a line. What is written holds at once.
#[component]
pub fn Mend(
    /// Counted from 1.
    line: usize,
    /// The line as the worksheet has it.
    this: Memo<Option<SheetLine>>,
) -> impl IntoView {
    let bench = Bench::here();
    let corrected =
        Memo::new(move |_| this.with(|this| this.as_ref().is_some_and(|this| this.corrected)));
    view! {
        <div class="mend">
            <OwnWeight line />
            <OwnIngredient line this />
            <div class="mend__buttons">
                <button
                    class="button button--plain"
                    type="button"
                    on:click=move |_| bench.change(format!("line {line} is not an ingredient"), false, |inputs| inputs.call_ingredient(line, Some(false)))
                >
                    "Not an ingredient"
                </button>
                {move || corrected.get().then(|| view! {
                    <button
                        class="button button--plain"
                        type="button"
                        on:click=move |_| bench.change(format!("what line {line} was mended to"), false, |inputs| inputs.uncorrect(line))
                    >
                        "Take back what I changed"
                    </button>
                })}
            </div>
        </div>
    }
}

/// The baker's own weight for the line.
#[component]
fn OwnWeight(line: usize) -> impl IntoView {
    let bench = Bench::here();
    let trouble = RwSignal::new(String::new());
    let (field, hint, said) = (
        format!("own-weight-{line}"),
        format!("own-weight-{line}-hint"),
        format!("own-weight-{line}-trouble"),
    );
    let described = format!("{hint} {said}");
    let typed = move |event| match read_grams(&event_target_value(&event)) {
        Ok(grams) => {
            trouble.set(String::new());
            bench.change(format!("your weight for line {line}"), true, |inputs| {
                inputs.weigh(line, grams)
            });
        }
        Err(sentence) => trouble.set(sentence),
    };
    view! {
        <div class="field">
            <label class="label" for=field.clone()>"Your own weight in the recipe, in grams"</label>
            <p class="hint" id=hint>"From the scale or the packet. Empty takes it back."</p>
            <input
                class="input input--number"
                id=field
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-describedby=described
                aria-invalid=move || trouble.with(|trouble| (!trouble.is_empty()).to_string())
                prop:value=own_weight(bench, line)
                on:input=typed
            />
            <p class="trouble" id=said role="status">{trouble}</p>
        </div>
    }
}

/// The weight that the baker has given, as written; found by asking the inputs for what they hold of the line.
fn own_weight(bench: Bench, line: usize) -> String {
    let said = bench.inputs().with_untracked(|inputs| {
        inputs
            .correction(line)
            .and_then(|correction| correction.grams)
    });
    said.map(|grams| grams.to_string()).unwrap_or_default()
}

/// A weight as typed; a comma may stand for the point, "g" may follow. Empty is no weight of one's own.
fn read_grams(typed: &str) -> Result<Option<f64>, String> {
    let plain = typed
        .trim()
        .trim_end_matches(['g', 'G'])
        .trim_end()
        .replace(',', ".");
    if plain.is_empty() {
        return Ok(None);
    }
    match plain.parse::<f64>() {
        Ok(grams) if (0.0..=HEAVIEST).contains(&grams) => Ok(Some(grams)),
        Ok(_) => Err(format!(
            "{} is no weight for a kitchen: write grams from 0 to 1000000.",
            typed.trim()
        )),
        Err(_) => Err(format!(
            "\"{}\" is not a number: write grams, such as 125 or 12.5.",
            typed.trim()
        )),
    }
}

/// Which ingredient the line is: the likely ones first, any other by its name.
#[component]
fn OwnIngredient(line: usize, this: Memo<Option<SheetLine>>) -> impl IntoView {
    let bench = Bench::here();
    let asked = RwSignal::new(String::new());
    let likely = Memo::new(move |_| {
        this.with(|this| {
            this.as_ref()
                .map(|this| this.offers.clone())
                .unwrap_or_default()
        })
    });
    let offers = move || match asked.with(|asked| asked.trim().is_empty()) {
        true => likely.get(),
        false => asked.with(|asked| found(asked)),
    };
    let none = move || !asked.with(|asked| asked.trim().is_empty()) && offers().is_empty();
    let field = format!("own-ingredient-{line}");
    let choose = move |offer: Offer| {
        asked.set(String::new());
        bench.change(format!("line {line} is {}", offer.name), false, |inputs| {
            inputs.name(line, Some(offer.key.to_owned()))
        });
    };
    view! {
        <div class="field">
            <label class="label" for=field.clone()>"It is another ingredient"</label>
            <input
                class="input"
                id=field
                type="search"
                autocomplete="off"
                placeholder="Write a name, such as buttermilk"
                prop:value=asked
                on:input=move |event| asked.set(event_target_value(&event))
            />
            <ul class="offers" aria-label="Ingredients that it may be">
                {move || offers().into_iter().map(|offer| view! {
                    <li><button class="button button--offer" type="button" on:click=move |_| choose(offer.clone())>{offer.name}</button></li>
                }).collect_view()}
            </ul>
            <p class="hint" role="status">{move || none().then_some("The tables hold no such ingredient. Give its weight above; its make-up stays unknown.")}</p>
        </div>
    }
}

/// Ingredients with a name in which every written word begins a word.
fn found(asked: &str) -> Vec<Offer> {
    let asked = asked.to_lowercase();
    let begins = |name: &str| {
        asked.split_whitespace().all(|part| {
            name.split([' ', '-', '('])
                .any(|word| word.starts_with(part))
        })
    };
    let mut keys: Vec<usize> = Vec::new();
    let mut add = |index: usize| {
        if keys.len() < OFFERS && !keys.contains(&index) {
            keys.push(index)
        }
    };
    for (index, known) in ingredient::all().iter().enumerate() {
        if begins(&known.name.to_lowercase()) {
            add(index);
        }
    }
    for alias in ingredient::aliases() {
        if begins(alias.name) {
            add(alias.index);
        }
    }
    keys.into_iter()
        .filter_map(|index| ingredient::all().get(index))
        .map(|known| Offer {
            key: known.key,
            name: known.name,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_are_read_with_point_or_comma() {
        assert_eq!(read_grams(" 12,5 g"), Ok(Some(12.5)));
        assert_eq!(read_grams(""), Ok(None));
        assert_eq!(read_grams("0"), Ok(Some(0.0)));
        assert!(read_grams("-1").is_err());
        assert!(read_grams("1e308").is_err());
        assert!(read_grams("NaN").is_err());
        assert!(read_grams("some").is_err());
    }
}
