//! What holds for every recipe of this baker.

use crate::baking::ingredient::{PieceSize, Region};
use crate::baking::oven::scale::{OvenKind, OvenScale};
use crate::baking::worksheet::{CupHabit, EggSize, LengthUnit, Settings};
use crate::ui::dom::{Element, element};
use crate::ui::parts::{hinted_field, radio};
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

const OVENS: [(OvenKind, &str); 4] = [
    (OvenKind::Still, "Still: heat from above and below"),
    (OvenKind::Fan, "With a fan"),
    (OvenKind::Deck, "Deck: pans stand on the hot sole, filled"),
    (OvenKind::Brisk, "A bakery's fan oven, filled"),
];

const SCALES: [(Option<OvenScale>, &str); 4] = [
    (None, "My country's"),
    (Some(OvenScale::Celsius), "Degrees Celsius"),
    (Some(OvenScale::Fahrenheit), "Degrees Fahrenheit"),
    (Some(OvenScale::Gas), "Gas marks"),
];

/// A field of text: its id, its label, a hint, what stands in it, what is wrong with it, and where it goes.
struct Field {
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    value: fn(&Settings) -> &String,
    trouble: fn(&Settings) -> Option<&'static str>,
    place: fn(&mut Settings) -> &mut String,
}

const HEIGHT: Field = Field {
    id: "height",
    label: "Height of your kitchen above the sea",
    hint: "With its unit: 1600 m or 5280 ft. The thinner the air, the more room the gas takes up and the cooler the crumb stays.",
    value: |settings| &settings.height,
    trouble: |settings| settings.height().err(),
    place: |settings| &mut settings.height,
};

const OVEN_OFF: Field = Field {
    id: "oven-off",
    label: "How far your oven is off its dial",
    hint: "By a thermometer in it: +10 C where it is hotter than it says, -25 F where it is cooler. Home ovens are off by 10 °C as a rule.",
    value: |settings| &settings.oven_off,
    trouble: |settings| settings.oven_off().err(),
    place: |settings| &mut settings.oven_off,
};

const FAN_COOLER: Field = Field {
    id: "fan-cooler",
    label: "How much cooler an oven with a fan is set",
    hint: "Your country's custom if empty: 25 F in the United States, 20 C elsewhere.",
    value: |settings| &settings.fan_cooler,
    trouble: |settings| settings.fan_cooler().err(),
    place: |settings| &mut settings.fan_cooler,
};

/// The page of settings. Each holds at once.
pub fn settings(bench: Bench) -> Element {
    document().set_title("Settings · Batterwright");
    let regions = Region::ALL.map(|region| {
        let chosen = move || bench.settings().region == region;
        radio("region", region.words(), chosen, move || {
            bench.set(|settings| settings.region = region)
        })
    });
    let habits = HABITS.map(|(habit, words)| {
        let chosen = move || bench.settings().cup_habit == habit;
        radio("cup-habit", words, chosen, move || {
            bench.set(|settings| settings.cup_habit = habit)
        })
    });
    let eggs = EGGS.map(|(size, words)| {
        let chosen = move || bench.settings().eggs.0 == size;
        radio("eggs", words, chosen, move || {
            bench.set(|settings| settings.eggs = EggSize(size))
        })
    });
    let lengths = LENGTHS.map(|(unit, words)| {
        let chosen = move || bench.settings().lengths == unit;
        radio("lengths", words, chosen, move || {
            bench.set(|settings| settings.lengths = unit)
        })
    });
    let ovens = OVENS.map(|(oven, words)| {
        let chosen = move || bench.settings().oven == oven;
        radio("oven", words, chosen, move || {
            bench.set(|settings| settings.oven = oven)
        })
    });
    let scales = SCALES.map(|(scale, words)| {
        let chosen = move || bench.settings().oven_scale == scale;
        radio("oven-scale", words, chosen, move || {
            bench.set(|settings| settings.oven_scale = scale)
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
        field(bench, HEIGHT),
        choice(
            "oven",
            "Your oven",
            "It decides how fast a cake bakes, and what a recipe's setting means for it.",
            ovens,
        ),
        choice(
            "oven-scale",
            "The oven's dial",
            "Settings are shown on this scale first.",
            scales,
        ),
        field(bench, OVEN_OFF),
        field(bench, FAN_COOLER),
        element("h2")
            .class("part__title")
            .text("Where things are kept"),
        element("p").text_of(kept),
    ])
}

/// A field of text with its hint. It is kept as typed, whatever it is.
fn field(bench: Bench, field: Field) -> Element {
    hinted_field(
        field.id.into(),
        "text",
        move || field.label.to_owned(),
        Some(field.hint),
        move || (field.value)(&bench.settings()).clone(),
        move || (field.trouble)(&bench.settings()).map(str::to_owned),
        move |text| bench.set(|settings| *(field.place)(settings) = text),
    )
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
