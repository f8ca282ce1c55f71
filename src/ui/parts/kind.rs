//! What kind of cake it is, where the baker says it: the bands of crumb and gas and the ranges follow.

use super::common::select;
use crate::baking::balance::Kind;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;

/// The choice.
pub fn kind(bench: Bench) -> Element {
    let options = std::iter::once("As its formula and title tell")
        .chain(Kind::ALL.map(Kind::words))
        .collect();
    let now = move || {
        let said = bench.chosen(|chosen| chosen.kind);
        said.and_then(|said| Kind::ALL.iter().position(|kind| *kind == said))
            .map_or(0, |at| at + 1)
    };
    let choose = move |at: usize| {
        let kind = at.checked_sub(1).and_then(|at| Kind::ALL.get(at).copied());
        bench.change("the kind of cake".into(), false, |inputs| {
            inputs.choices.kind = kind;
        });
    };
    let choice = select("kind".into(), "Judged as", options, now, choose);
    element("div").class("no-print").child(choice)
}
