//! What kind of cake it is, where the baker says it: the bands of crumb and gas and the ranges follow.

use super::common::select;
use crate::baking::balance::Kind;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;

/// The choice for the open recipe.
pub fn kind(bench: Bench) -> Element {
    let now = move || bench.chosen(|chosen| chosen.kind);
    let choose = move |kind| {
        bench.change("the kind of cake".into(), false, |inputs| {
            inputs.choices.kind = kind;
        });
    };
    choice(
        ("kind", "Judged as", "As its formula and title tell"),
        now,
        choose,
    )
}

/// The choice for one bake.
pub fn kind_of_bake(bench: Bench, id: u64) -> Element {
    let now = move || {
        bench.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == id);
            kept.and_then(|kept| kept.trial.plan.choices.kind)
        })
    };
    let choose = move |kind| bench.change_trial(id, |trial| trial.plan.choices.kind = kind);
    let unsaid = "As its first bake, formula and title tell";
    choice(("meant-as", "It was meant as", unsaid), now, choose)
}

fn choice(
    (id, label, unsaid): (&str, &'static str, &'static str),
    now: impl Fn() -> Option<Kind> + 'static,
    choose: impl Fn(Option<Kind>) + 'static,
) -> Element {
    let options = std::iter::once(unsaid)
        .chain(Kind::ALL.map(Kind::words))
        .collect();
    let place = move || {
        let place = now().and_then(|said| Kind::ALL.iter().position(|kind| *kind == said));
        place.map_or(0, |at| at + 1)
    };
    let choose =
        move |at: usize| choose(at.checked_sub(1).and_then(|at| Kind::ALL.get(at).copied()));
    let choice = select(id.to_owned(), label, options, place, choose);
    element("div").class("no-print").child(choice)
}
