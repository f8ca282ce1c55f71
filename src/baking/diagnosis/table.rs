//! The signs of a fault, what may cause them, and who says so.

use crate::baking::balance::Class;
use crate::baking::packed::{self, Cells};
use crate::baking::source::{self, Source};
use std::sync::OnceLock;

/// Where a sign is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// On the whole cake.
    Shape,
    /// On a slice.
    Crumb,
    /// Outside.
    Crust,
    /// By taste and smell.
    Taste,
    /// As a tint.
    Colour,
    /// On the batter and the pan.
    Pan,
}

/// What part of the work a cause lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The formula.
    Formula,
    /// The pan.
    Pan,
    /// The oven.
    Oven,
    /// Everything that hands do.
    Handling,
}

/// The figure that bears on a cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Nothing that is written or measured tells of it.
    None,
    /// A class above its range.
    Above(Class),
    /// A class below its range.
    Below(Class),
    /// Flour against all the rest.
    FlourAbove,
    /// The same, too little of it.
    FlourBelow,
    /// Strong flour in the flour.
    StrongFlour,
    /// Whether there is gluten at all.
    Gluten,
    /// Whether beaten air lifts such a cake.
    Air,
    /// Whether there is fruit.
    Fruit,
    /// Gas above its band.
    GasAbove,
    /// Gas below its band.
    GasBelow,
    /// Minutes that the batter stood, and the gas that left.
    Stood,
    /// Crumb pH above its band, or soda left over.
    PhAbove,
    /// Crumb pH below its band.
    PhBelow,
    /// Whether there is soda or powder.
    Leavened,
    /// Powder with aluminium.
    Aluminium,
    /// Baker's ammonia.
    Ammonia,
    /// Seeds or carrots in an alkaline crumb.
    SeedColour,
    /// Berries, walnuts or beetroot in an alkaline crumb.
    BerryColour,
    /// The pan fuller than is usual.
    FillAbove,
    /// The pan emptier than is usual.
    FillBelow,
    /// The oven hotter than is wanted.
    OvenAbove,
    /// The oven cooler than is wanted.
    OvenBelow,
    /// Loss, minutes and core beyond done.
    BakedAbove,
    /// Core and minutes short of done.
    BakedBelow,
}

include!(concat!(env!("OUT_DIR"), "/diagnosis_lists.rs"));

/// What is seen on a cake.
#[derive(Debug, PartialEq)]
pub struct Sign {
    /// By which it is kept.
    pub key: &'static str,
    /// Where it is seen.
    pub group: Group,
    /// "Sunk in the middle".
    pub words: &'static str,
    /// Other words for it; empty where there are none.
    pub also: &'static str,
    /// The causes that a table names for it.
    pub named: Vec<Named>,
    /// How many tables speak of it.
    pub tables: usize,
}

/// A cause that tables name for a sign.
#[derive(Debug, PartialEq)]
pub struct Named {
    /// Its place among the causes.
    pub cause: usize,
    /// The tables.
    pub sources: Vec<&'static Source>,
}

/// What may be behind a fault.
#[derive(Debug, PartialEq)]
pub struct Cause {
    /// By which it is kept.
    pub key: &'static str,
    /// What part of the work it lies in.
    pub place: Place,
    /// How common it is, against the others: 1 to 3 (common practice, no source).
    pub prior: f64,
    /// The figure that bears on it.
    pub figure: Figure,
    /// "Too much sugar".
    pub name: &'static str,
    /// How it does it, in a sentence.
    pub how: &'static str,
    /// What would tell it from others, in a sentence.
    pub tells: &'static str,
    /// What mends it, in a sentence.
    pub remedy: &'static str,
    /// What is to be minded; empty where nothing is.
    pub caution: &'static str,
}

impl Sign {
    /// The tables that name a cause for it, by the cause's place; empty where none does.
    pub fn sources(&self, cause: usize) -> &[&'static Source] {
        let named = self.named.iter().find(|named| named.cause == cause);
        named.map_or(&[], |named| &named.sources)
    }
}

/// Every sign, in the order of their keys.
pub fn signs() -> &'static [Sign] {
    static SIGNS: OnceLock<Vec<Sign>> = OnceLock::new();
    SIGNS.get_or_init(|| packed::rows(12).map(unpacked_sign).collect())
}

/// Every cause, in the order of their keys.
pub fn causes() -> &'static [Cause] {
    static CAUSES: OnceLock<Vec<Cause>> = OnceLock::new();
    CAUSES.get_or_init(|| packed::rows(13).map(unpacked_cause).collect())
}

/// The sign of that key.
pub fn sign(key: &str) -> Option<&'static Sign> {
    signs().iter().find(|sign| sign.key == key)
}

/// The cause of that key.
pub fn cause(key: &str) -> Option<&'static Cause> {
    causes().iter().find(|cause| cause.key == key)
}

fn unpacked_sign(mut cells: Cells) -> Sign {
    let mut sign = Sign {
        key: cells.text(),
        group: cells.choice(GROUPS).unwrap_or(Group::Shape),
        words: cells.text(),
        also: cells.text(),
        named: cells.list().filter_map(unpacked_named).collect(),
        tables: 0,
    };
    let named = sign.named.iter().flat_map(|named| &named.sources);
    let mut tables: Vec<&str> = named.map(|source| source.key).collect();
    tables.sort_unstable();
    tables.dedup();
    sign.tables = tables.len();
    sign
}

fn unpacked_named(mut cells: Cells) -> Option<Named> {
    let cause = cells.place()?;
    let places = cells.text().split(' ');
    Some(Named {
        cause,
        sources: places
            .filter_map(|place| source::all().get(place.parse::<usize>().ok()?))
            .collect(),
    })
}

fn unpacked_cause(mut cells: Cells) -> Cause {
    Cause {
        key: cells.text(),
        place: cells.choice(PLACES).unwrap_or(Place::Handling),
        prior: cells.figure(),
        figure: cells.choice(FIGURES).unwrap_or(Figure::None),
        name: cells.text(),
        how: cells.text(),
        tells: cells.text(),
        remedy: cells.text(),
        caution: cells.text(),
    }
}
