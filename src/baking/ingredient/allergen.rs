//! Allergens by the lists of the law.

use super::Region;
use crate::baking::source::{self, Source};
use serde::{Deserialize, Serialize};

/// An allergen that one of the laws of [`Law`] makes a seller name.
///
/// The lists differ, so what one law puts together stands apart here where another parts it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Allergen {
    /// Wheat, which is also a cereal with gluten; spelt and the old wheats are wheat.
    Wheat,
    /// Cereals with gluten other than wheat: rye, barley, oats.
    Gluten,
    /// Milk.
    Milk,
    /// Egg.
    Egg,
    /// Soya.
    Soya,
    /// The nuts that are on every list: almond, Brazil nut, cashew, hazelnut, macadamia, pecan, pistachio, walnut.
    TreeNuts,
    /// Pine nuts, which the EU and UK don't count among nuts.
    PineNuts,
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
    /// Fish.
    Fish,
    /// Crustaceans.
    Crustaceans,
    /// Molluscs.
    Molluscs,
}

/// A law on what a seller has to name.
///
/// It knows no limits, exemptions or "may contain": whoever sells reads the law itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Law {
    /// United States.
    Us,
    /// European Union, Great Britain and Northern Ireland.
    EuUk,
    /// Australia and New Zealand.
    AuNz,
    /// Canada.
    Ca,
}

impl Law {
    /// Every law, in the order shown.
    pub const ALL: [Self; 4] = [Self::Us, Self::EuUk, Self::AuNz, Self::Ca];

    /// The law of a country.
    pub fn of(region: Region) -> Self {
        match region {
            Region::Us => Self::Us,
            Region::Uk => Self::EuUk,
            Region::Au | Region::Nz => Self::AuNz,
            Region::Ca => Self::Ca,
        }
    }

    /// The law in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Us => "US law",
            Self::EuUk => "EU and UK law",
            Self::AuNz => "the Australia New Zealand Food Standards Code",
            Self::Ca => "Canadian law",
        }
    }

    /// Where its list is from.
    pub fn source(self) -> Option<&'static Source> {
        source::by_key(match self {
            Self::Us => "us_allergens",
            Self::EuUk => "eu_uk_allergens",
            Self::AuNz => "au_nz_allergens",
            Self::Ca => "ca_allergens",
        })
    }
}

impl Allergen {
    /// Every allergen, in the order shown.
    pub const ALL: [Self; 16] = [
        Self::Wheat,
        Self::Gluten,
        Self::Milk,
        Self::Egg,
        Self::Soya,
        Self::TreeNuts,
        Self::PineNuts,
        Self::Peanut,
        Self::Sesame,
        Self::Sulphites,
        Self::Mustard,
        Self::Lupin,
        Self::Celery,
        Self::Fish,
        Self::Crustaceans,
        Self::Molluscs,
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
            Self::PineNuts => "Pine nuts",
            Self::Peanut => "Peanut",
            Self::Sesame => "Sesame",
            Self::Sulphites => "Sulphites",
            Self::Mustard => "Mustard",
            Self::Lupin => "Lupin",
            Self::Celery => "Celery",
            Self::Fish => "Fish",
            Self::Crustaceans => "Crustaceans",
            Self::Molluscs => "Molluscs",
        }
    }

    /// A law's word for it; `None` where that law doesn't ask for it.
    ///
    /// Every one of these laws wants a nut, and a cereal with gluten, by its own name; that is the name of the ingredient.
    pub fn named_by(self, law: Law) -> Option<&'static str> {
        match law {
            Law::Us => self.named_in_us(),
            Law::EuUk => self.named_in_eu_and_uk(),
            Law::AuNz => self.named_in_australia_and_new_zealand(),
            Law::Ca => self.named_in_canada(),
        }
    }

    /// The nine major food allergens; sulphites by the rule on additives. Coconut and chestnut left the list of tree nuts
    /// in January 2025, pine nuts stayed.
    fn named_in_us(self) -> Option<&'static str> {
        match self {
            Self::Wheat => Some("wheat"),
            Self::Milk => Some("milk"),
            Self::Egg => Some("eggs"),
            Self::Soya => Some("soybeans"),
            Self::TreeNuts | Self::PineNuts => Some("tree nuts"),
            Self::Peanut => Some("peanuts"),
            Self::Sesame => Some("sesame"),
            // No major allergen, but from 10 mg/kg the label has to name it: 21 CFR 101.100(a)(4).
            Self::Sulphites => Some("sulfites"),
            Self::Fish => Some("fish"),
            Self::Crustaceans => Some("crustacean shellfish"),
            Self::Gluten | Self::Mustard | Self::Lupin | Self::Celery | Self::Molluscs => None,
        }
    }

    /// The fourteen of annex II.
    fn named_in_eu_and_uk(self) -> Option<&'static str> {
        match self {
            Self::Wheat | Self::Gluten => Some("cereals containing gluten"),
            Self::Milk => Some("milk"),
            Self::Egg => Some("eggs"),
            Self::Soya => Some("soybeans"),
            Self::TreeNuts => Some("nuts"),
            Self::Peanut => Some("peanuts"),
            Self::Sesame => Some("sesame seeds"),
            Self::Sulphites => Some("sulphur dioxide and sulphites"),
            Self::Mustard => Some("mustard"),
            Self::Lupin => Some("lupin"),
            Self::Celery => Some("celery"),
            Self::Fish => Some("fish"),
            Self::Crustaceans => Some("crustaceans"),
            Self::Molluscs => Some("molluscs"),
            Self::PineNuts => None,
        }
    }

    /// Plain English since 2024: wheat is named besides gluten.
    fn named_in_australia_and_new_zealand(self) -> Option<&'static str> {
        match self {
            Self::Wheat => Some("wheat, gluten"),
            Self::Gluten => Some("gluten"),
            Self::Milk => Some("milk"),
            Self::Egg => Some("egg"),
            Self::Soya => Some("soy"),
            Self::TreeNuts => Some("tree nuts"),
            Self::PineNuts => Some("pine nut"),
            Self::Peanut => Some("peanut"),
            Self::Sesame => Some("sesame"),
            Self::Sulphites => Some("sulphites"),
            Self::Lupin => Some("lupin"),
            Self::Fish => Some("fish"),
            Self::Crustaceans => Some("crustacean"),
            Self::Molluscs => Some("mollusc"),
            Self::Mustard | Self::Celery => None,
        }
    }

    /// The priority allergens, the sources of gluten and added sulphites.
    fn named_in_canada(self) -> Option<&'static str> {
        match self {
            Self::Wheat => Some("wheat"),
            Self::Gluten => Some("gluten"),
            Self::Milk => Some("milk"),
            Self::Egg => Some("eggs"),
            Self::Soya => Some("soy"),
            Self::TreeNuts | Self::PineNuts => Some("tree nuts"),
            Self::Peanut => Some("peanuts"),
            Self::Sesame => Some("sesame"),
            Self::Sulphites => Some("sulphites"),
            Self::Mustard => Some("mustard"),
            Self::Fish => Some("fish"),
            Self::Crustaceans => Some("crustaceans"),
            Self::Molluscs => Some("molluscs"),
            Self::Lupin | Self::Celery => None,
        }
    }
}
