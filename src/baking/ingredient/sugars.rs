//! Sugars by kind, and the polyols and rare sugars that stand beside them.

use super::Ingredient;
use crate::baking::quantity::Share;
use crate::baking::source::Cited;

/// A kind of sugar, or of what is used in a sugar's place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SugarKind {
    /// Cane and beet sugar.
    Sucrose,
    /// Glucose, also dextrose.
    Glucose,
    /// Fructose.
    Fructose,
    /// Milk sugar.
    Lactose,
    /// Malt sugar.
    Maltose,
    /// Galactose, half of what lactose splits into.
    Galactose,
    /// Allulose, which labels do not count as sugar.
    Allulose,
    /// Erythritol, a polyol.
    Erythritol,
    /// Xylitol, a polyol.
    Xylitol,
    /// Sorbitol, a polyol.
    Sorbitol,
    /// Maltitol, a polyol.
    Maltitol,
}

impl SugarKind {
    /// Every kind, sugars first, in the order of the table's columns.
    pub const ALL: [Self; 11] = [
        Self::Sucrose,
        Self::Glucose,
        Self::Fructose,
        Self::Lactose,
        Self::Maltose,
        Self::Galactose,
        Self::Allulose,
        Self::Erythritol,
        Self::Xylitol,
        Self::Sorbitol,
        Self::Maltitol,
    ];

    /// Its name on the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Sucrose => "Sucrose",
            Self::Glucose => "Glucose",
            Self::Fructose => "Fructose",
            Self::Lactose => "Lactose",
            Self::Maltose => "Maltose",
            Self::Galactose => "Galactose",
            Self::Allulose => "Allulose",
            Self::Erythritol => "Erythritol",
            Self::Xylitol => "Xylitol",
            Self::Sorbitol => "Sorbitol",
            Self::Maltitol => "Maltitol",
        }
    }

    /// Whether it is part of the total sugars of food tables and labels.
    pub fn is_counted(self) -> bool {
        (self as usize) < (Self::Allulose as usize)
    }

    /// Molar mass, g/mol, without water of crystals: by the formula, with the standard atomic weights of IUPAC.
    pub fn molar_mass(self) -> f64 {
        match self {
            Self::Sucrose | Self::Lactose | Self::Maltose => 342.30,
            Self::Glucose | Self::Fructose | Self::Galactose | Self::Allulose => 180.16,
            Self::Erythritol => 122.12,
            Self::Xylitol => 152.15,
            Self::Sorbitol => 182.17,
            Self::Maltitol => 344.31,
        }
    }
}

/// How the sugars of an ingredient split.
#[derive(Clone, Debug, PartialEq)]
pub struct Sugars {
    /// The kinds that the table lists, as shares of the food.
    pub parts: Vec<(SugarKind, Share)>,
    /// Where the split is from.
    pub cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

impl Ingredient {
    /// The share of a kind, of what the table lists: the rest is of unknown kind.
    pub fn sugar(&self, kind: SugarKind) -> Share {
        let parts = self.sugars.iter().flat_map(|sugars| &sugars.parts);
        parts.filter(|part| part.0 == kind).map(|part| part.1).sum()
    }

    /// The share of sugars of which no source gives the kind; `None` where not even their total is known.
    pub fn sugars_of_unknown_kind(&self) -> Option<Share> {
        let Some(total) = self.composition.sugars else {
            return self.sugars.as_ref().map(|_| Share::default());
        };
        let counted = SugarKind::ALL.into_iter().filter(|kind| kind.is_counted());
        let known: Share = counted.map(|kind| self.sugar(kind)).sum();
        Some(Share::fraction((total - known).to_fraction().max(0.0)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::ingredient::by_key;

    fn of(key: &str, kind: SugarKind) -> f64 {
        let share = by_key(key).map(|food| food.sugar(kind));
        share.unwrap_or_default().to_percent()
    }

    /// USDA SR28: 19296 honey, 09040 banana, 01077 milk.
    #[test]
    fn kinds_are_those_of_the_release() {
        for (key, kind, grams) in [
            ("honey", SugarKind::Fructose, 40.94),
            ("honey", SugarKind::Glucose, 35.75),
            ("banana", SugarKind::Sucrose, 2.39),
            ("milk", SugarKind::Lactose, 5.05),
            ("milk", SugarKind::Sucrose, 0.0),
            ("sugar", SugarKind::Sucrose, 99.8),
        ] {
            assert!((of(key, kind) - grams).abs() < 1e-9, "{key} {kind:?}");
        }
    }

    /// SR28 19304: 74.72 g of sugars in molasses, 29.40, 11.92 and 12.79 g of them split: 20.61 g are of unknown kind.
    #[test]
    fn what_is_not_split_stays_unknown() {
        let rest = |key| by_key(key).and_then(Ingredient::sugars_of_unknown_kind);
        let molasses = rest("molasses").map_or(0.0, Share::to_percent);
        assert!((molasses - 20.61).abs() < 1e-9);
        // Jam has a total and no split, almond flour not even a total.
        assert!((rest("jam").map_or(0.0, Share::to_percent) - 48.5).abs() < 1e-9);
        assert_eq!(rest("almond_flour"), None);
        assert_eq!(rest("xylitol"), Some(Share::default()));
    }

    /// C12H22O11, C6H12O6, C4H10O4, C5H12O5, C6H14O6, C12H24O11 with C 12.011, H 1.008, O 15.999.
    #[test]
    fn molar_masses_follow_from_the_formulas() {
        let of = |carbon: f64, hydrogen: f64, oxygen: f64| {
            carbon * 12.011 + hydrogen * 1.008 + oxygen * 15.999
        };
        for (kind, formula) in [
            (SugarKind::Sucrose, of(12.0, 22.0, 11.0)),
            (SugarKind::Glucose, of(6.0, 12.0, 6.0)),
            (SugarKind::Erythritol, of(4.0, 10.0, 4.0)),
            (SugarKind::Xylitol, of(5.0, 12.0, 5.0)),
            (SugarKind::Sorbitol, of(6.0, 14.0, 6.0)),
            (SugarKind::Maltitol, of(12.0, 24.0, 11.0)),
        ] {
            assert!((kind.molar_mass() - formula).abs() < 0.01, "{kind:?}");
        }
    }
}
