//! The packed tables of swaps, once, the first time that one is asked for.
//!
//! Cells are read in the order in which `build.rs` writes them.

use super::egg::{EggGiven, EggWanted, EggWork};
use super::swap::{Brought, Job, Swap};
use crate::baking::balance::Kind;
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{self, Ingredient};
use crate::baking::packed::{self, Cells};
use crate::baking::quantity::{Mass, Share};
use crate::baking::source::cited;
use std::sync::OnceLock;

include!(concat!(env!("OUT_DIR"), "/swap_lists.rs"));

/// Every swap, a row that holds both ways followed by its other way round.
pub fn swaps() -> &'static [Swap] {
    static SWAPS: OnceLock<Vec<Swap>> = OnceLock::new();
    SWAPS.get_or_init(|| packed::rows(6).filter_map(swap).flatten().collect())
}

/// What an egg does, by kind of cake.
pub fn eggs_wanted() -> &'static [EggWanted] {
    static WANTED: OnceLock<Vec<EggWanted>> = OnceLock::new();
    WANTED.get_or_init(|| packed::rows(7).filter_map(egg_wanted).collect())
}

/// What stands for an egg, and how well.
pub fn eggs_given() -> &'static [EggGiven] {
    static GIVEN: OnceLock<Vec<EggGiven>> = OnceLock::new();
    GIVEN.get_or_init(|| packed::rows(8).filter_map(egg_given).collect())
}

fn food(cells: &mut Cells) -> Option<&'static Ingredient> {
    ingredient::all().get(cells.place()?)
}

/// The row, and its other way round where that holds.
fn swap(mut cells: Cells) -> Option<Vec<Swap>> {
    let from = food(&mut cells)?;
    let brings: Vec<Brought> = cells.list().filter_map(brought).collect();
    let main = *brings.first()?;
    let both = cells.place().is_some();
    let [usual, most] = cells.figures().map(Share::percent);
    let jobs = cells.choices(JOBS);
    let swap = Swap {
        from,
        brings,
        usual,
        most,
        jobs,
        kinds: cells.choices(KINDS),
        not_kinds: cells.choices(KINDS),
        taste: cells.text(),
        colour: cells.text(),
        keeping: cells.text(),
        caution: cells.text(),
        cited: cited(cells.text()),
        place: cells.text(),
        note: cells.text(),
        is_turned: false,
    };
    let other = both.then(|| turned(&swap, main));
    Some(std::iter::once(swap).chain(other).collect())
}

/// A swap the other way round. What was said of the written way is left out.
fn turned(swap: &Swap, main: Brought) -> Swap {
    Swap {
        from: main.ingredient,
        brings: vec![Brought {
            ingredient: swap.from,
            for_a_gram: inverse(main.for_a_gram),
        }],
        usual: swap.usual,
        most: swap.most,
        jobs: swap.jobs.clone(),
        kinds: Vec::new(),
        not_kinds: Vec::new(),
        taste: "",
        colour: "",
        keeping: "",
        caution: "",
        cited: swap.cited,
        place: swap.place,
        note: "",
        is_turned: true,
    }
}

/// Grams of the original for one gram of what came in its place. No ratio of the table is zero.
fn inverse(ratio: Estimate<Mass>) -> Estimate<Mass> {
    let grams = |mass: Mass| Mass::grams(1.0 / mass.to_grams());
    Estimate::between(grams(ratio.high), grams(ratio.mean), grams(ratio.low))
}

fn brought(mut cells: Cells) -> Option<Brought> {
    let ingredient = food(&mut cells)?;
    let [low, mean, high] = cells.figures().map(Mass::grams);
    Some(Brought {
        ingredient,
        for_a_gram: Estimate::between(low, mean, high),
    })
}

fn work(cells: &mut Cells) -> EggWork {
    let [binding, leavening, emulsifying, moistening] =
        cells.figures().map(|strength| strength as u8);
    EggWork {
        binding,
        leavening,
        emulsifying,
        moistening,
    }
}

fn egg_wanted(mut cells: Cells) -> Option<EggWanted> {
    Some(EggWanted {
        kind: cells.choice(KINDS)?,
        work: work(&mut cells),
        cited: cited(cells.text()),
        note: cells.text(),
    })
}

fn egg_given(mut cells: Cells) -> Option<EggGiven> {
    Some(EggGiven {
        ingredient: food(&mut cells)?,
        work: work(&mut cells),
        result: cells.text(),
        cited: cited(cells.text()),
    })
}
