//! The recipe's pan, the pan on the shelf, and the factor between them.

use super::{Pan, PanEntry, Shape};
use crate::baking::balance::Kind;
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Density, Length, LengthUnit, Mass, Quantity, Share, Volume};
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

/// The pans of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// The recipe's own pan; `None` where what was typed cannot be read.
    pub own: Option<Pan>,
    /// Where it is from.
    pub origin: Origin,
    /// The pan on the shelf; `None` where none is chosen or it cannot be read.
    pub other: Option<Pan>,
    /// How much of the formula the other pan takes, by volume.
    pub factor: Option<f64>,
    /// The same by area: the factor that would keep the depth.
    pub area_factor: Option<f64>,
    /// The batter in the recipe's own pan.
    pub own_fill: Option<Fill>,
    /// The scaled batter in the other pan.
    pub other_fill: Option<Fill>,
}

/// How a batter stands in a pan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Its volume.
    pub volume: Estimate<Volume>,
    /// Its depth.
    pub depth: Estimate<Length>,
    /// Its depth against the pan's.
    pub share: Estimate<Share>,
}

/// Fits a recipe into its own pan and into another.
///
/// The factor is the ratio of brim volumes, so that the other pan is filled as high, part for part.
pub fn fit(
    recipe: &Recipe,
    own: Option<&PanEntry>,
    other: Option<&PanEntry>,
    batter: Estimate<Mass>,
    kind: Kind,
) -> Fit {
    let (own, origin) = match own {
        Some(entry) => (entry.read().ok(), Origin::Chosen),
        None => match named(recipe) {
            Some((pan, origin)) => (Some(pan), origin),
            None => (Some(Pan::usual(Shape::Round)), Origin::Taken),
        },
    };
    let other = other.and_then(|entry| entry.read().ok());
    let known = (origin != Origin::Taken).then_some(own).flatten();
    let ratio = |measure: fn(&Pan) -> f64| Some(measure(&other?) / measure(&known?));
    let factor =
        ratio(|pan| pan.brim().base()).filter(|factor| factor.is_finite() && *factor > 0.0);
    let has_batter = batter.mean > Mass::ZERO;
    let fill = |pan: Pan, factor: f64| has_batter.then(|| filled(&pan, batter.times(factor), kind));
    Fit {
        own_fill: known.and_then(|pan| fill(pan, 1.0)),
        other_fill: other
            .zip(factor)
            .and_then(|(pan, factor)| fill(pan, factor)),
        own,
        origin,
        other,
        factor,
        area_factor: ratio(Pan::area),
    }
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

fn filled(pan: &Pan, batter: Estimate<Mass>, kind: Kind) -> Fill {
    let density = batter_density(kind);
    let heavy = |mass: Mass| mass / density.high;
    let light = |mass: Mass| mass / density.low;
    // Mass and density vary apart; the ends are set by the root of squares of the two.
    let mean = batter.mean / density.mean;
    let apart = |by_mass: Volume, by_density: Volume| {
        Volume::millilitres((by_mass - mean).base().hypot((by_density - mean).base()))
    };
    let below = apart(batter.low / density.mean, heavy(batter.mean));
    let above = apart(batter.high / density.mean, light(batter.mean));
    let volume = Estimate::between(mean - below, mean, mean + above);
    let depth = volume.map(|volume| pan.depth_of(Volume::millilitres(volume.base().max(0.0))));
    Fill {
        volume,
        depth,
        share: depth.map(|depth| Share::fraction(depth / pan.depth)),
    }
}

/// Batter density by kind: textbook scaling sheets (Gisslen; Sultan; AACC 10-90), from memory.
pub fn batter_density(kind: Kind) -> Estimate<Density> {
    let (low, mean, high) = match kind {
        Kind::AngelFood => (0.26, 0.30, 0.36),
        Kind::Sponge | Kind::Genoise | Kind::Chiffon => (0.40, 0.48, 0.55),
        Kind::Pound | Kind::Victoria => (0.80, 0.85, 0.90),
        _ => (0.80, 0.93, 1.05),
    };
    let [low, mean, high] = [low, mean, high].map(Density::grams_per_millilitre);
    Estimate::between(low, mean, high)
}
