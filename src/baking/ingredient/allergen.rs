//! Allergens by the lists of the law.

use serde::{Deserialize, Serialize};

/// An allergen that the US (FALCPA, FASTER Act) or the EU and UK (Regulation 1169/2011, annex II)
/// make a seller name. The names are the law's, shortened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Allergen {
    /// Wheat, which is also a cereal with gluten.
    Wheat,
    /// Cereals with gluten other than wheat: rye, barley, oats.
    Gluten,
    /// Milk.
    Milk,
    /// Egg.
    Egg,
    /// Soya.
    Soya,
    /// Tree nuts.
    TreeNuts,
    /// Peanuts.
    Peanut,
    /// Sesame.
    Sesame,
    /// Sulphites above 10 mg/kg, as in much dried fruit and wine.
    Sulphites,
    /// Mustard.
    Mustard,
    /// Lupin.
    Lupin,
    /// Celery.
    Celery,
}

impl Allergen {
    /// Every allergen, in the order shown.
    pub const ALL: [Self; 12] = [
        Self::Wheat,
        Self::Gluten,
        Self::Milk,
        Self::Egg,
        Self::Soya,
        Self::TreeNuts,
        Self::Peanut,
        Self::Sesame,
        Self::Sulphites,
        Self::Mustard,
        Self::Lupin,
        Self::Celery,
    ];

    /// Its name on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Wheat => "Wheat (gluten)",
            Self::Gluten => "Other cereals with gluten",
            Self::Milk => "Milk",
            Self::Egg => "Egg",
            Self::Soya => "Soya",
            Self::TreeNuts => "Tree nuts",
            Self::Peanut => "Peanut",
            Self::Sesame => "Sesame",
            Self::Sulphites => "Sulphites",
            Self::Mustard => "Mustard",
            Self::Lupin => "Lupin",
            Self::Celery => "Celery",
        }
    }
}
