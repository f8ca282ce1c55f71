//! How much of the recipe is baked, whole numbers of eggs, and what a cup of batter weighs.

use super::common::{button, folded, paragraph, select, text_field};
use crate::baking::pan::{AmountEntry, HowMuch};
use crate::baking::worksheet::{BatterCup, PanSheet};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

fn pans<R>(bench: Bench, read: impl FnOnce(&PanSheet) -> R) -> R {
    bench.part(Part::Pans, |sheet| read(&sheet.pans))
}

/// How the amount is told, and the figure that it takes.
pub fn amount(bench: Bench) -> Element {
    let how = select(
        "amount-how".into(),
        "How much",
        HowMuch::ALL.map(HowMuch::words).into(),
        move || {
            let how = pans(bench, |pans| pans.amount.how);
            HowMuch::ALL.iter().position(|it| *it == how).unwrap_or(0)
        },
        move |at| {
            if let Some(&how) = HowMuch::ALL.get(at) {
                bench.choose_amount(how);
            }
        },
    );
    let figure = text_field(
        "amount-figure".into(),
        "text",
        move || {
            match pans(bench, |pans| pans.amount.how) {
                HowMuch::Eggs => "How many eggs",
                _ => "How many times",
            }
            .to_owned()
        },
        move || pans(bench, |pans| pans.amount.text.clone()),
        move || pans(bench, |pans| pans.amount_trouble.clone()),
        move |text| {
            bench.change("how much is baked".into(), true, |inputs| {
                inputs.choices.amount.text = text;
            });
        },
    )
    .hidden_while(move || !pans(bench, |pans| pans.amount.how.is_typed()));
    element("div")
        .class("pan-form__fields no-print")
        .children([how, figure])
}

/// A part of an egg, and the whole numbers next to it, each taken at a touch.
pub fn whole_eggs(bench: Bench) -> Element {
    element("div").class("pans__eggs").children_of(move || {
        let Some(eggs) = pans(bench, |pans| pans.eggs.clone()) else {
            return Vec::new();
        };
        let offers = eggs.offers.into_iter().map(|offer| {
            let what = offer.label.clone();
            let count = offer.count;
            let take = button("button", offer.label, move || {
                bench.change(what.clone(), false, |inputs| {
                    inputs.choices.amount = AmountEntry::eggs(count);
                });
            });
            element("li")
                .class("pans__egg")
                .child(take)
                .child(element("span").text(offer.words))
        });
        vec![
            paragraph("pans__words", eggs.words),
            paragraph(
                "hint no-print",
                "Or take a whole number of eggs, and of all else as much:",
            ),
            element("ul")
                .class("pans__offers no-print")
                .attribute("aria-label", "Whole numbers of eggs")
                .children(offers),
        ]
    })
}

/// How full pans usually are and what batter weighs; the fields for a cup of batter open at a touch.
pub fn batter_weighed(bench: Bench) -> Element {
    let cup = select(
        "batter-cup".into(),
        "Which cup",
        BatterCup::ALL.map(BatterCup::words).into(),
        move || {
            let cup = pans(bench, |pans| pans.said.cup);
            BatterCup::ALL.iter().position(|it| *it == cup).unwrap_or(0)
        },
        move |at| {
            if let Some(&cup) = BatterCup::ALL.get(at) {
                bench.change(
                    "which cup the batter is weighed in".into(),
                    false,
                    |inputs| {
                        inputs.choices.batter.cup = cup;
                    },
                );
            }
        },
    );
    let grams = text_field(
        "batter-grams".into(),
        "decimal",
        || "Grams of batter in a level cup".to_owned(),
        move || pans(bench, |pans| pans.said.cup_grams.clone()),
        move || pans(bench, |pans| pans.cup_trouble.clone()),
        move |text| {
            bench.change("what a cup of batter weighs".into(), true, |inputs| {
                inputs.choices.batter.cup_grams = text;
            });
        },
    );
    let fields = element("div")
        .class("pan-form__fields")
        .children([grams, cup]);
    element("div").children([
        element("p")
            .class("hint")
            .text_of(move || pans(bench, |pans| pans.usual.clone())),
        folded("Weigh a cup of batter").child(fields),
    ])
}
