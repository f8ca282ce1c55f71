//! What the figures of this formula and the measurements of this bake say of a cause.
//!
//! Each reading is a chance that a figure lies past a limit which another part of the program states with its source; how far a
//! reading is trusted depends on how it was got. The more direct of two figures is taken, never both: they tell the same thing.

mod formula;
mod leaven;
mod meant;
mod oven;
mod pan;
mod there;

pub use self::formula::AGAINST_FLOUR;
use self::meant::Meant;
use super::odds::factor;
use super::{Figure, Known};
use crate::baking::finding::Facts;
use crate::baking::quantity::show;

/// How a figure was got.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Measured on this bake.
    Measured,
    /// Reckoned from the formula's weights, or written in the recipe.
    Reckoned,
    /// By a dial, or by what is usual.
    Usual,
}

impl By {
    /// How likely the figure shows a cause that is at work: a thing measured nearly always; what is written may have been weighed
    /// or done otherwise; a dial hardly tells (our own judgement).
    fn shown(self) -> f64 {
        match self {
            Self::Measured => 0.95,
            Self::Reckoned => 0.9,
            Self::Usual => 0.6,
        }
    }
}

/// What a figure says.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The chance that it lies past its limit, from 0 to 1.
    pub chance: f64,
    /// How it was got.
    pub by: By,
    /// The figure beside its limit, in a sentence.
    pub words: String,
}

impl Reading {
    fn new(chance: f64, by: By, words: String) -> Option<Self> {
        chance.is_finite().then_some(Self {
            chance: chance.clamp(0.0, 1.0),
            by,
            words,
        })
    }

    /// The mean of this and of what the figure says of another kind that is as likely meant; where it says nothing of that,
    /// of an even chance.
    fn or_as(self, other: Option<Self>) -> Self {
        let chance = other.as_ref().map_or(0.5, |other| other.chance);
        let words = other.filter(|other| other.words != self.words);
        Self {
            chance: (self.chance + chance) / 2.0,
            words: match words {
                Some(other) => format!(
                    "{} If another kind is meant: {}",
                    self.words,
                    show::amid(&other.words)
                ),
                None => self.words,
            },
            ..self
        }
    }

    /// What it multiplies the odds of its cause by.
    pub fn factor(&self) -> f64 {
        factor(self.chance, self.by.shown())
    }
}

/// What a figure says; `None` where it is not known. Where ratios alone told the kind, and without the fault would tell
/// another, it is the mean of what it says of both.
pub fn reading(figure: Figure, known: &Known) -> Option<Reading> {
    let as_it_looks = read(figure, known, known.facts)?;
    Some(match Meant::without(known.facts, figure) {
        Some(meant) => as_it_looks.or_as(read(figure, known, &meant.facts(known.facts))),
        None => as_it_looks,
    })
}

fn read(figure: Figure, known: &Known, facts: &Facts) -> Option<Reading> {
    match figure {
        Figure::None => None,
        Figure::Above(class) => formula::class(facts, class, true),
        Figure::Below(class) => formula::class(facts, class, false),
        Figure::FlourAbove => formula::flour(facts, true),
        Figure::FlourBelow => formula::flour(facts, false),
        Figure::StrongFlour => formula::strong_flour(facts),
        Figure::Gluten => there::gluten(facts),
        Figure::Air => there::air(facts),
        Figure::Fruit => there::fruit(facts),
        Figure::Leavened => there::leavened(facts),
        Figure::Aluminium => there::aluminium(facts),
        Figure::Ammonia => there::ammonia(facts),
        Figure::SeedColour => there::seed_colour(facts),
        Figure::BerryColour => there::berry_colour(facts),
        Figure::GasAbove => leaven::gas(facts, true),
        Figure::GasBelow => leaven::gas(facts, false),
        Figure::Stood => leaven::stood(known),
        Figure::PhAbove => leaven::ph(known, true),
        Figure::PhBelow => leaven::ph(known, false),
        Figure::FillAbove => pan::fill(facts, true),
        Figure::FillBelow => pan::fill(facts, false),
        Figure::OvenAbove => oven::heat(&known.oven, true),
        Figure::OvenBelow => oven::heat(&known.oven, false),
        Figure::BakedAbove => oven::too_long(known),
        Figure::BakedBelow => oven::too_short(known),
    }
}
