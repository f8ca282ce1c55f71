//! What 100 g of an ingredient hold.

use crate::baking::quantity::Share;

/// Composition as shares of the edible weight; `None` where no source gives a figure.
///
/// Starch and sugars are parts of the carbohydrate; `derived` names the columns worked out by
/// difference (carbohydrate less fibre less sugars) instead of measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Composition {
    /// Water.
    pub water: Option<Share>,
    /// Protein.
    pub protein: Option<Share>,
    /// Fat.
    pub fat: Option<Share>,
    /// Total carbohydrate, fibre included.
    pub carbohydrate: Option<Share>,
    /// Total sugars.
    pub sugars: Option<Share>,
    /// Starch.
    pub starch: Option<Share>,
    /// Dietary fibre.
    pub fibre: Option<Share>,
    /// Ethanol.
    pub alcohol: Option<Share>,
    /// Sodium.
    pub sodium: Option<Share>,
    /// Names of the fields above that are derived by difference.
    pub derived: Vec<&'static str>,
}
