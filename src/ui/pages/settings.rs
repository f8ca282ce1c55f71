//! What holds for every recipe of this baker.

use crate::baking::ingredient::{PieceSize, Region};
use crate::baking::worksheet::{CupHabit, EggSize, LengthUnit, Settings};
use crate::ui::state::Bench;
use leptos::prelude::*;

const REGIONS: [(Region, &str); 5] = [
    (Region::Us, "United States"),
    (Region::Uk, "United Kingdom and Ireland"),
    (Region::Au, "Australia"),
    (Region::Nz, "New Zealand"),
    (Region::Ca, "Canada"),
];

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
#[component]
pub fn SettingsPage() -> impl IntoView {
    let bench = Bench::here();
    document().set_title("Settings · Batterwright");
    let unkept = move || match bench.unkept.get() {
        None => "Settings and recipes are kept on this device, in this browser, and nowhere else."
            .to_owned(),
        Some(reason) => format!("Nothing is being kept: {reason}."),
    };
    view! {
        <div class="sheet">
            <h1 class="sheet__title">"Settings"</h1>
            <p>"They hold at once, for every recipe."</p>
            <Choice
                name="region"
                legend="Cups, spoons and words of"
                hint="A US cup is 237 mL, a metric cup 250 mL; an Australian tablespoon is 20 mL."
                options=REGIONS.map(|(_, words)| words).to_vec()
                chosen=index(&REGIONS, |settings| settings.region)
                choose=Callback::new(move |at: usize| if let Some((region, _)) = REGIONS.get(at) { bench.set(|settings| settings.region = *region) })
            />
            <Choice
                name="cup-habit"
                legend="How a cup of flour is filled"
                hint="It decides up to a quarter of the flour. The scale is surer than any habit."
                options=HABITS.map(|(_, words)| words).to_vec()
                chosen=index(&HABITS, |settings| settings.cup_habit)
                choose=Callback::new(move |at: usize| if let Some((habit, _)) = HABITS.get(at) { bench.set(|settings| settings.cup_habit = *habit) })
            />
            <Choice
                name="eggs"
                legend="Eggs on the shelf"
                hint="Where a recipe names no size. Sizes are those of the country above."
                options=EGGS.map(|(_, words)| words).to_vec()
                chosen=index(&EGGS, |settings| settings.eggs.0)
                choose=Callback::new(move |at: usize| if let Some((size, _)) = EGGS.get(at) { bench.set(|settings| settings.eggs = EggSize(*size)) })
            />
            <Choice
                name="lengths"
                legend="Pans in"
                hint="For pans that you choose from now on."
                options=LENGTHS.map(|(_, words)| words).to_vec()
                chosen=index(&LENGTHS, |settings| settings.lengths)
                choose=Callback::new(move |at: usize| if let Some((unit, _)) = LENGTHS.get(at) { bench.set(|settings| settings.lengths = *unit) })
            />
            <h2 class="part__title">"Where things are kept"</h2>
            <p>{unkept}</p>
        </div>
    }
}

/// Which of the options the settings hold.
fn index<T: PartialEq + Send + Sync + 'static>(
    options: &'static [(T, &'static str)],
    of: fn(&Settings) -> T,
) -> Signal<usize> {
    let settings = Bench::here().settings();
    Signal::derive(move || {
        let now = settings.with(of);
        options
            .iter()
            .position(|(option, _)| *option == now)
            .unwrap_or(0)
    })
}

/// A choice of one among few.
#[component]
fn Choice(
    /// The name of the group of buttons.
    name: &'static str,
    /// What is chosen.
    legend: &'static str,
    /// A word of help.
    hint: &'static str,
    /// The options in words.
    options: Vec<&'static str>,
    /// Which of them holds.
    chosen: Signal<usize>,
    /// Called with the option that was touched.
    choose: Callback<usize>,
) -> impl IntoView {
    let hint_id = format!("{name}-hint");
    let described = hint_id.clone();
    let options = options.into_iter().enumerate().map(move |(at, words)| {
        view! {
            <label class="choice__option">
                <input
                    class="choice__button"
                    type="radio"
                    name=name
                    prop:checked=move || chosen.get() == at
                    on:change=move |_| choose.run(at)
                />
                <span>{words}</span>
            </label>
        }
    });
    view! {
        <fieldset class="choice" aria-describedby=described>
            <legend class="choice__legend">{legend}</legend>
            <p class="hint" id=hint_id>{hint}</p>
            {options.collect_view()}
        </fieldset>
    }
    .into_any()
}
