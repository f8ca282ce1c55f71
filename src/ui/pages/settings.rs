//! What holds for every recipe of this baker.

use crate::baking::ingredient::{PieceSize, Region};
use crate::baking::worksheet::{CupHabit, EggSize, LengthUnit};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::{Get, document};

const HABITS: [(CupHabit, &str); 4] = [
    (CupHabit::Unknown, "Not known: carry the spread of all ways"),
    (CupHabit::Dipped, "Dipped into the bag and levelled"),
    (CupHabit::Spooned, "Spooned in and levelled"),
    (CupHabit::Sifted, "Sifted first, then spooned in"),
];

const EGGS: [(PieceSize, &str); 5] = [
    (PieceSize::Small, "Small"),
    (PieceSize::Medium, "Medium"),
    (PieceSize::Large, "Large"),
    (PieceSize::ExtraLarge, "Extra large"),
    (PieceSize::Jumbo, "Jumbo or king"),
];

const LENGTHS: [(LengthUnit, &str); 2] = [
    (LengthUnit::Inches, "Inches"),
    (LengthUnit::Centimetres, "Centimetres"),
];

/// The page of settings. Each holds at once.
pub fn settings(bench: Bench) -> Element {
    document().set_title("Settings · Batterwright");
    let regions = Region::ALL.map(|region| {
        let chosen = move || bench.settings().region == region;
        option("region", region.words(), chosen, move || {
            bench.set(|settings| settings.region = region)
        })
    });
    let habits = HABITS.map(|(habit, words)| {
        let chosen = move || bench.settings().cup_habit == habit;
        option("cup-habit", words, chosen, move || {
            bench.set(|settings| settings.cup_habit = habit)
        })
    });
    let eggs = EGGS.map(|(size, words)| {
        let chosen = move || bench.settings().eggs.0 == size;
        option("eggs", words, chosen, move || {
            bench.set(|settings| settings.eggs = EggSize(size))
        })
    });
    let lengths = LENGTHS.map(|(unit, words)| {
        let chosen = move || bench.settings().lengths == unit;
        option("lengths", words, chosen, move || {
            bench.set(|settings| settings.lengths = unit)
        })
    });
    let kept = move || match bench.unkept.get() {
        None => "Settings and recipes are kept on this device, in this browser, and nowhere else."
            .to_owned(),
        Some(reason) => format!("Nothing is being kept: {reason}."),
    };
    element("div").class("sheet").children([
        element("h1").class("sheet__title").text("Settings"),
        element("p").text("They hold at once, for every recipe."),
        choice(
            "region",
            "Your country",
            "Its cups, spoons, eggs and words hold where a recipe's words tell no other. A US cup is 237 mL, a metric cup 250 mL; an Australian tablespoon is 20 mL.",
            regions,
        ),
        choice(
            "cup-habit",
            "How a cup of flour is filled",
            "It decides up to a quarter of the flour. The scale is surer than any habit.",
            habits,
        ),
        choice(
            "eggs",
            "Eggs on the shelf",
            "Where a recipe names no size. Sizes are those of the country above.",
            eggs,
        ),
        choice(
            "lengths",
            "Pans in",
            "For pans that you choose from now on.",
            lengths,
        ),
        element("h2")
            .class("part__title")
            .text("Where things are kept"),
        element("p").text_of(kept),
    ])
}

/// A choice of one among few.
fn choice<const MANY: usize>(
    name: &'static str,
    legend: &'static str,
    hint: &'static str,
    options: [Element; MANY],
) -> Element {
    let hint_id = format!("{name}-hint");
    element("fieldset")
        .class("choice")
        .attribute("aria-describedby", hint_id.clone())
        .child(element("legend").class("choice__legend").text(legend))
        .child(
            element("p")
                .class("hint")
                .attribute("id", hint_id)
                .text(hint),
        )
        .children(options)
}

fn option(
    name: &'static str,
    words: &'static str,
    chosen: impl Fn() -> bool + 'static,
    choose: impl Fn() + 'static,
) -> Element {
    let radio = element("input")
        .class("choice__button")
        .attribute("type", "radio")
        .attribute("name", name)
        .chosen_while(chosen)
        .on("change", move |_| choose());
    element("label")
        .class("choice__option")
        .child(radio)
        .child(element("span").text(words))
}
