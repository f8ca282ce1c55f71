//! The recipe's pan, the pans on the shelf, and how much of the recipe goes into them.

use super::fill::filled;
use super::split::{Pour, split};
use super::{AmountEntry, Fill, HowMuch, Pan, PanEntry, Shape, Split, Wanted, batter_of};
use crate::baking::balance::Kind;
use crate::baking::estimate::Estimate;
use crate::baking::formula::{Eggs, Formula, counted_eggs};
use crate::baking::quantity::{Density, LengthUnit, Mass, Share};
use crate::baking::recipe::{Recipe, Role};

/// Where the recipe's own pan is from.
#[derive(Clone, Debug, PartialEq)]
pub enum Origin {
    /// The text names it.
    Named {
        /// At this line.
        line: usize,
        /// Whether it names the depth too, or the usual one is taken.
        depth: bool,
    },
    /// The baker chose it.
    Chosen,
    /// Nobody named it; a usual one is taken to draw, and no factor is claimed.
    Taken,
}

/// What is chosen and known of the pans and the batter.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The recipe's own pan, where the baker says it.
    pub own: Option<&'a PanEntry>,
    /// The pans on the shelf.
    pub shelf: &'a [PanEntry],
    /// How much is baked.
    pub amount: &'a AmountEntry,
    /// What the batter weighs, measured; `None` goes by its kind.
    pub density: Option<Estimate<Density>>,
    /// Baked volume over that of the batter; `None` where it is not known.
    pub expansion: Option<Estimate<f64>>,
}

/// The pans of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// The recipe's own pan; `None` where what was typed cannot be read.
    pub own: Option<Pan>,
    /// Where it is from.
    pub origin: Origin,
    /// The pans on the shelf; `None` for each that cannot be read.
    pub shelf: Vec<Option<Pan>>,
    /// How much of the recipe is baked; `None` where nothing else than the recipe is asked for, or it cannot be told.
    pub factor: Option<f64>,
    /// As much as fills the pans on the shelf as full as the recipe fills its own, part for part.
    pub full_factor: Option<f64>,
    /// As much as stands in them as deep as the recipe stands in its own.
    pub depth_factor: Option<f64>,
    /// What is wrong with the amount.
    pub amount_trouble: Option<String>,
    /// What the batter weighs.
    pub density: Estimate<Density>,
    /// Whether that was measured.
    pub is_measured: bool,
    /// The recipe's batter in its own pan.
    pub own_fill: Option<Fill>,
    /// What is baked, shared out among the pans on the shelf, or in the recipe's own where none stands there.
    pub split: Option<Split>,
    /// The eggs of the recipe, where it is counted by some.
    pub eggs: Option<Eggs>,
    /// What whole numbers of eggs would come to; empty where a whole number is baked anyway.
    pub whole_eggs: Vec<WholeEggs>,
}

/// A whole number of eggs, and the formula with it.
#[derive(Clone, Debug, PartialEq)]
pub struct WholeEggs {
    /// How many.
    pub count: u32,
    /// How much of the recipe that is.
    pub factor: f64,
    /// The same batter in the same pans.
    pub split: Option<Split>,
}

/// Above this share of what a pan holds, batter has no room to rise, where a kind has no usual fill of its own
/// (common practice, no source).
const HIGHEST: Share = Share::fraction(0.8);

/// So near a whole number of eggs nobody weighs them.
const WHOLE: f64 = 0.02;

/// Fits a recipe into its own pan and into those on the shelf.
pub fn fit(
    recipe: &Recipe,
    formula: &Formula,
    batter: Estimate<Mass>,
    kind: Kind,
    asked: &Asked,
) -> Fit {
    let (own, origin) = match asked.own {
        Some(entry) => (entry.read().ok(), Origin::Chosen),
        None => match named(recipe) {
            Some((pan, origin)) => (Some(pan), origin),
            None => (Some(Pan::usual(Shape::Round)), Origin::Taken),
        },
    };
    let shelf: Vec<Option<Pan>> = asked.shelf.iter().map(|entry| entry.read().ok()).collect();
    // All of them or none: pans that are left out would be filled as if they were not there.
    let pans: Option<Vec<Pan>> = shelf.iter().copied().collect();
    let pans = pans.filter(|pans| !pans.is_empty());
    let known = (origin != Origin::Taken).then_some(own).flatten();
    let density = asked.density.unwrap_or(batter_of(kind).density);
    let fill = |pan: Pan| filled(&pan, batter, density, asked.expansion);
    let own_fill = known.filter(|_| batter.mean > Mass::ZERO).map(fill);

    let full_factor = ratio(pans.as_deref(), known, |pan| pan.brim().to_millilitres());
    let eggs = counted_eggs(recipe, formula);
    let (factor, amount_trouble) = match asked.amount.read() {
        Ok(Wanted::AsFull) => (full_factor, None),
        Ok(Wanted::Times(times)) => (Some(times), None),
        Ok(Wanted::Eggs(count)) => match eggs {
            Some(eggs) => (Some(count / eggs.count), None),
            None => (None, Some("The recipe has no eggs to count by.".to_owned())),
        },
        Err(sentence) => (None, Some(sentence)),
    };
    let pour = |factor: f64| Pour {
        batter: batter.times(factor),
        density,
        expansion: asked.expansion,
        highest: highest(
            kind,
            own_fill.filter(|_| asked.amount.how == HowMuch::AsFull),
        ),
    };
    // With nothing on the shelf, what is asked for goes into the recipe's own pan.
    let into = match asked.shelf {
        [] => known.map(|pan| vec![pan]),
        _ => pans.clone(),
    };
    let poured = |factor: f64| split(into.as_deref()?, &pour(factor));
    let whole_eggs = match (eggs, factor) {
        (Some(eggs), Some(factor)) => whole_eggs(&eggs, factor, poured),
        _ => Vec::new(),
    };
    Fit {
        depth_factor: depth_factor(pans.as_deref(), known, own_fill.as_ref()),
        split: factor.and_then(poured),
        own,
        origin,
        shelf,
        factor,
        full_factor,
        amount_trouble,
        density,
        is_measured: asked.density.is_some(),
        own_fill,
        eggs,
        whole_eggs,
    }
}

/// The highest fill: the kind's, or the brim where pans are to be filled as full as a recipe that fills its own beyond that.
fn highest(kind: Kind, own: Option<Fill>) -> Share {
    let usual = batter_of(kind).fill.map_or(HIGHEST, |fill| fill.high);
    match own {
        Some(own) if own.of_brim.mean > usual => {
            Share::fraction(own.of_brim.mean.to_fraction().max(1.0))
        }
        _ => usual,
    }
}

/// A measure of all pans on the shelf against the same of the recipe's own.
fn ratio(pans: Option<&[Pan]>, own: Option<Pan>, measure: impl Fn(&Pan) -> f64) -> Option<f64> {
    let all: f64 = pans?.iter().map(&measure).sum();
    let ratio = all / measure(&own?);
    (ratio.is_finite() && ratio > 0.0).then_some(ratio)
}

/// The factor of the same depth: by what the pans hold to the recipe's own depth, by areas where that is not known.
fn depth_factor(pans: Option<&[Pan]>, own: Option<Pan>, fill: Option<&Fill>) -> Option<f64> {
    match fill {
        Some(fill) => {
            let depth = fill.depth.mean;
            ratio(pans, own, |pan| pan.volume_to(depth).to_millilitres())
        }
        None => ratio(pans, own, Pan::area),
    }
}

/// The whole numbers below and above a scaled number of eggs.
fn whole_eggs(eggs: &Eggs, factor: f64, poured: impl Fn(f64) -> Option<Split>) -> Vec<WholeEggs> {
    let scaled = eggs.count * factor;
    if (scaled - scaled.round()).abs() < WHOLE || scaled > 10_000.0 {
        return Vec::new();
    }
    [scaled.floor(), scaled.ceil()]
        .into_iter()
        .filter(|count| *count >= 1.0)
        .map(|count| {
            let factor = count / eggs.count;
            WholeEggs {
                count: count as u32,
                factor,
                split: poured(factor),
            }
        })
        .collect()
}

/// The first pan that the text names, and where.
fn named(recipe: &Recipe) -> Option<(Pan, Origin)> {
    recipe.lines.iter().find_map(|line| {
        let mentions = &line.mentions;
        let (Role::Method | Role::Note | Role::Ingredient(_)) = &line.role else {
            return None;
        };
        let mention = mentions.pans.first()?;
        let pan = Pan::named(mention);
        // A size that no pan has is a slip of the text, not a pan.
        pan.entry(LengthUnit::Centimetres).read().ok()?;
        let depth = Pan::names_depth(mention);
        Some((
            pan,
            Origin::Named {
                line: line.number,
                depth,
            },
        ))
    })
}
