//! The leavening worked out from what is wished: how sour, from what cupboard, with how much sodium.

use super::common::{button, folded_while, paragraph, select, text_field, tick};
use crate::baking::ingredient::by_key;
use crate::baking::leaven::{POWDERS, Per, Tang, WishEntry};
use crate::baking::worksheet::{Change, LeaveningPlan};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The folded panel. Nothing is reckoned while it is shut.
pub fn plan_panel(bench: Bench) -> Element {
    let open = RwSignal::new(false);
    let wished = Memo::new(move |_| wish(bench, WishEntry::clone));
    let plan = Memo::new(move |_| {
        open.get().then(|| {
            // A new weight or a new wish, and nothing else, asks for new amounts.
            bench.part(Part::Leavening, |_| ());
            bench.part(Part::Balance, |_| ());
            wished.track();
            bench.leavening_plan()
        })
    });
    folded_while("figure no-print", "Work out the leavening", open).child(
        element("div")
            .class("plan")
            .child(tang(bench))
            .child(cupboard(bench))
            .child(powder_kind(bench))
            .child(own_ph(bench))
            .child(own_lift(bench))
            .child(sodium(bench))
            .child(sodium_per(bench))
            .child(
                element("div")
                    .attribute("role", "status")
                    .children_of(move || {
                        plan.get().map_or_else(Vec::new, |plan| said(bench, &plan))
                    }),
            ),
    )
}

fn said(bench: Bench, plan: &Result<LeaveningPlan, String>) -> Vec<Element> {
    let plan = match plan {
        Ok(plan) => plan,
        Err(why) => return vec![paragraph("remedy__sentence", why.clone())],
    };
    let [first, rest @ ..] = plan.answer.sentences.as_slice() else {
        return Vec::new();
    };
    let apply = plan.answer.remedy.clone().map(|remedy| {
        button("button button--strong", "Use these amounts", move || {
            bench.apply(&remedy);
        })
    });
    [element("p").child(element("strong").text(first.clone()))]
        .into_iter()
        .chain(
            rest.iter()
                .map(|more| paragraph("remedy__sentence", more.clone())),
        )
        .chain([changes(&plan.changes, plan.answer.remedy.is_some())])
        .chain(apply)
        .collect()
}

fn changes(changes: &[Change], changed: bool) -> Element {
    let facts = changes.iter().map(|change| {
        let words = match changed {
            true => format!("{}, now {}", change.after, change.before),
            false => change.before.clone(),
        };
        element("div")
            .class("facts__fact")
            .child(element("dt").class("facts__label").text(change.label))
            .child(element("dd").class("facts__words").text(words))
    });
    element("dl").class("facts").children(facts)
}

fn wish<R>(bench: Bench, read: impl FnOnce(&WishEntry) -> R) -> R {
    bench.chosen(|chosen| read(&chosen.leavening))
}

fn change(bench: Bench, typed: bool, change: impl FnOnce(&mut WishEntry)) {
    bench.change("what is wished of the leavening".into(), typed, |inputs| {
        change(&mut inputs.choices.leavening);
    });
}

fn tang(bench: Bench) -> Element {
    let now = move || {
        let tang = wish(bench, |wish| wish.tang);
        Tang::ALL.iter().position(|it| *it == tang).unwrap_or(0)
    };
    select(
        "plan-tang".into(),
        "The crumb is to be",
        Tang::ALL.map(Tang::words).to_vec(),
        now,
        move |at| {
            let tang = Tang::ALL.get(at).copied().unwrap_or_default();
            change(bench, true, |wish| wish.tang = tang);
        },
    )
}

/// One of the ticks of the cupboard.
type Tick = fn(&mut WishEntry) -> &mut bool;

fn cupboard(bench: Bench) -> Element {
    let ticks: [(&str, Tick); 4] = [
        ("Baking soda", |wish| &mut wish.cupboard.soda),
        ("Baking powder", |wish| &mut wish.cupboard.powder),
        ("Cream of tartar", |wish| &mut wish.cupboard.tartar),
        ("Potassium bicarbonate", |wish| &mut wish.cupboard.potassium),
    ];
    let options = ticks.map(|(words, there)| {
        tick(
            words,
            move || *there(&mut wish(bench, WishEntry::clone)),
            move || {
                change(bench, true, |wish| {
                    let there = there(wish);
                    *there = !*there;
                });
            },
        )
    });
    element("fieldset")
        .class("choice")
        .child(element("legend").class("label").text("In the cupboard"))
        .children(options)
}

fn powder_kind(bench: Bench) -> Element {
    let names = POWDERS
        .iter()
        .filter_map(|key| by_key(key).map(|kind| kind.name));
    let options = std::iter::once("The recipe's own, or the usual one").chain(names);
    let now = move || {
        let kind = wish(bench, |wish| wish.cupboard.powder_kind.clone());
        POWDERS
            .iter()
            .position(|key| Some(*key) == kind.as_deref())
            .map_or(0, |at| at + 1)
    };
    let choose = move |at: usize| {
        let kind = at.checked_sub(1).and_then(|at| POWDERS.get(at));
        let kind = kind.map(|key| (*key).to_owned());
        change(bench, true, |wish| wish.cupboard.powder_kind = kind);
    };
    let kind = select(
        "plan-powder".into(),
        "Kind of baking powder",
        options.collect(),
        now,
        choose,
    );
    kind.hidden_while(move || !wish(bench, |wish| wish.cupboard.powder))
}

fn own_ph(bench: Bench) -> Element {
    text_field(
        "plan-ph".into(),
        "decimal",
        || "Or a pH of the crumb (empty for that of the kind)".to_owned(),
        move || wish(bench, |wish| wish.ph.clone()),
        move || wish(bench, |wish| wish.own_ph().err()),
        move |typed| change(bench, true, |wish| wish.ph = typed),
    )
}

fn own_lift(bench: Bench) -> Element {
    text_field(
        "plan-lift".into(),
        "decimal",
        || "Gas, per cent of the flour (empty for that of the kind)".to_owned(),
        move || wish(bench, |wish| wish.lift.clone()),
        move || wish(bench, |wish| wish.own_lift().err()),
        move |typed| change(bench, true, |wish| wish.lift = typed),
    )
}

fn sodium(bench: Bench) -> Element {
    text_field(
        "plan-sodium".into(),
        "decimal",
        || "At most so much sodium, mg (empty for no limit)".to_owned(),
        move || wish(bench, |wish| wish.sodium.clone()),
        move || wish(bench, |wish| wish.sodium_limit().err()),
        move |typed| change(bench, true, |wish| wish.sodium = typed),
    )
}

/// Shown where the recipe says how many it serves, or did when the choice was made.
fn sodium_per(bench: Bench) -> Element {
    let now = move || usize::from(wish(bench, |wish| wish.sodium_per) == Per::Serving);
    let choose = move |at: usize| {
        let per = Per::ALL.get(at).copied().unwrap_or_default();
        change(bench, true, |wish| wish.sodium_per = per);
    };
    select(
        "plan-sodium-per".into(),
        "That limit holds",
        Per::ALL.map(Per::words).to_vec(),
        now,
        choose,
    )
    .hidden_while(move || {
        let known = bench.part(Part::Balance, |sheet| sheet.balance.servings.is_some());
        !known && now() == 0
    })
}
