//! What the trade knows of each ingredient: composition, acidity, leavening, cup and piece weights.
//!
//! The figures stand in the CSV tables of this folder. `build.rs` checks every row and packs the tables into
//! the program, so a wrong row stops the build and names its file and line.
//! An empty cell is unknown, never zero.

mod acidity;
mod allergen;
pub mod card;
mod composition;
mod filling;
pub mod find;
mod group;
mod larder;
mod leavening;
pub mod leavening_acid;
pub mod lookup;
pub mod own;
mod piece;
mod sugars;
mod unpack;

pub use acidity::{Acidity, Buffer, OrganicAcids, Titratable};
pub use allergen::{Allergen, Law};
pub use composition::Composition;
pub use filling::{Filling, FillingWeight, Form, SpoonOrCup};
pub use group::{FlourBasis, Group};
pub use larder::{Larder, Own};
pub use leavening::{Bicarbonate, Leavening};
pub use leavening_acid::{GasTiming, LeaveningAcid, Uptake};
pub use piece::{Piece, PieceSize, PieceWeight, Region};
pub use sugars::{SugarKind, Sugars};

use super::source::Cited;

/// One ingredient, with all that the tables say of it.
#[derive(Debug, PartialEq)]
pub struct Ingredient {
    /// The name used in records and in the tables: `lower_snake_case`.
    pub key: &'static str,
    /// The name shown on the page.
    pub name: &'static str,
    /// The family it belongs to.
    pub group: Group,
    /// Whether it counts as flour in baker's percentages.
    pub flour_basis: FlourBasis,
    /// What 100 g of it hold.
    pub composition: Composition,
    /// How its sugars split; `None` where no source says so.
    pub sugars: Option<Sugars>,
    /// Where the composition is from.
    pub cited: Cited,
    /// How it takes up base or acid; `None` where nobody told us.
    pub acidity: Option<&'static Acidity>,
    /// The soda and leavening acid in it; `None` where it has none.
    pub leavening: Option<&'static Leavening>,
    /// What a level cup or spoon of it weighs, by form and way of filling.
    pub fillings: Vec<FillingWeight>,
    /// What one piece of it weighs.
    pub pieces: Vec<PieceWeight>,
    /// What other sources say that a level cup or spoon of it weighs: figures to set beside those in use.
    pub others: Vec<FillingWeight>,
    /// The allergens it brings by law's lists. A help, never a guarantee: read the packet.
    pub allergens: Vec<Allergen>,
    /// Whether it comes from plants alone; `None` where the packet decides.
    pub plant_based: Option<bool>,
    /// A word of caution or explanation, empty where there is none.
    pub note: &'static str,
}

/// A name that people write, and the ingredient it means.
#[derive(Debug, PartialEq)]
pub struct Alias {
    /// The name as the tables keep it: lower case, words apart by one space.
    pub name: &'static str,
    /// The place of the ingredient in [`all`].
    pub index: usize,
    /// Where the name has this meaning; `None` everywhere.
    pub region: Option<Region>,
    /// Whether it is a second meaning, offered beside the first: "yeast" may be fresh.
    pub is_second: bool,
}

impl Ingredient {
    /// A level US teaspoon of it, g; `None` where no source tells.
    pub fn teaspoon(&self) -> Option<f64> {
        self.fillings
            .iter()
            .find(|filling| filling.measure == SpoonOrCup::Teaspoon)
            .map(|filling| filling.weight.mean.to_grams())
            .filter(|grams| *grams > 0.0)
    }
}

/// Every ingredient, in the order of their keys.
pub fn all() -> &'static [Ingredient] {
    &unpack::tables().ingredients
}

/// Every name that people write, in the order of their ingredients.
pub fn aliases() -> &'static [Alias] {
    &unpack::tables().aliases
}

/// The ingredient of that key.
pub fn by_key(key: &str) -> Option<&'static Ingredient> {
    let all = all();
    let place = all.binary_search_by(|ingredient| ingredient.key.cmp(key));
    place.ok().map(|place| &all[place])
}
