//! What the tests of pans have in common.

use batterwright::baking::balance::{Kind, percentages};
use batterwright::baking::estimate::Estimate;
use batterwright::baking::formula::{Habits, weigh};
use batterwright::baking::ingredient::{Larder, PieceSize, Region};
use batterwright::baking::pan::{AmountEntry, Asked, Fit, HowMuch, Pan, PanEntry, Shape, fit};
use batterwright::baking::quantity::{Density, Length, LengthUnit, Mass};
use batterwright::baking::recipe::read;

/// What is asked of a fit, with the usual in what a test leaves out.
pub struct Ask {
    pub text: &'static str,
    pub kind: Kind,
    pub own: Option<PanEntry>,
    pub shelf: Vec<PanEntry>,
    pub amount: AmountEntry,
    pub density: Option<f64>,
    pub expansion: Option<f64>,
}

impl Default for Ask {
    fn default() -> Self {
        Self {
            text: "500 g flour\n500 g milk",
            kind: Kind::Plain,
            own: None,
            shelf: Vec::new(),
            amount: AmountEntry::default(),
            density: None,
            expansion: None,
        }
    }
}

pub fn fitted(ask: &Ask) -> Fit {
    let recipe = read(ask.text, Larder::of(Region::Us), &[]);
    let habits = Habits {
        region: Region::Us,
        filling: None,
        eggs: PieceSize::Large,
    };
    let formula = weigh(&recipe, &habits);
    let batter = percentages(&formula).batter;
    let asked = Asked {
        own: ask.own.as_ref(),
        shelf: &ask.shelf,
        amount: &ask.amount,
        density: ask
            .density
            .map(|density| Estimate::exact(Density::grams_per_millilitre(density))),
        expansion: ask.expansion.map(Estimate::exact),
    };
    fit(&recipe, &formula, batter, ask.kind, &asked)
}

/// A pan of that shape in inches, so many of them.
pub fn inches(shape: Shape, count: u32, length: f64, width: f64, depth: f64) -> PanEntry {
    let [length, width, depth] = [length, width, depth].map(Length::inches);
    let one = Pan::of(shape, length, width, depth);
    Pan { count, ..one }.entry(LengthUnit::Inches)
}

pub fn round(count: u32, across: f64, depth: f64) -> PanEntry {
    inches(Shape::Round, count, across, across, depth)
}

pub fn amount(how: HowMuch, text: &str) -> AmountEntry {
    AmountEntry {
        how,
        text: text.into(),
    }
}

/// All that is poured and left over, in grams.
pub fn all_of(fit: &Fit) -> f64 {
    let split = fit.split.as_ref().expect("batter that is shared out");
    let poured: f64 = split
        .parts
        .iter()
        .map(|part| part.each.mean.to_grams() * f64::from(part.fill.pan.count))
        .sum();
    poured + split.left.map_or(0.0, |left| left.batter.mean.to_grams())
}

/// Grams into each, pan by pan.
pub fn each(fit: &Fit) -> Vec<f64> {
    let split = fit.split.as_ref().expect("batter that is shared out");
    let grams = |mass: Mass| mass.to_grams();
    split
        .parts
        .iter()
        .map(|part| grams(part.each.mean))
        .collect()
}

#[track_caller]
pub fn near(found: f64, by_hand: f64, within: f64) {
    assert!(
        (found - by_hand).abs() <= within,
        "{found}, by hand {by_hand}"
    );
}
