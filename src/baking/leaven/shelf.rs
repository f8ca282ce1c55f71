//! The leaveners that amounts are found for: what the recipe holds of them, and how much more they bring.

use super::wish::{Cupboard, POWDERS};
use crate::baking::finding::{Facts, POWDER, soda_name};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Bicarbonate, FlourBasis, Ingredient, Region, by_key};

/// The four leaveners, in the order of all lists of four here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leavener {
    /// Sodium bicarbonate.
    Soda,
    /// Baking powder of a kind.
    Powder,
    /// Cream of tartar.
    Tartar,
    /// Potassium bicarbonate.
    Potassium,
}

/// Amounts of the four, in tenths of a gram: what a small scale shows.
pub type Amounts = [u32; 4];

impl Leavener {
    pub const ALL: [Self; 4] = [Self::Soda, Self::Powder, Self::Tartar, Self::Potassium];

    /// Which of the four an ingredient is; `None` for any other, self-raising flour and ammonia among them.
    fn of(ingredient: &Ingredient) -> Option<Self> {
        let leavening = ingredient.leavening?;
        let with_acid = leavening.neutralised.1 > 0.0;
        match leavening.bicarbonate {
            Some((Bicarbonate::Sodium, _)) if !with_acid => Some(Self::Soda),
            Some((Bicarbonate::Potassium, _)) if !with_acid => Some(Self::Potassium),
            Some(_) if with_acid && ingredient.flour_basis == FlourBasis::Never => {
                Some(Self::Powder)
            }
            None if ingredient.key == "cream_of_tartar" => Some(Self::Tartar),
            _ => None,
        }
    }

    /// How much of it is tried at most, per cent of flour: well beyond what any cake is made with.
    pub fn most(self) -> f64 {
        match self {
            Self::Soda => 3.0,
            Self::Powder => 8.0,
            Self::Tartar => 6.0,
            Self::Potassium => 3.6,
        }
    }

    /// Grams of soda that a gram of it does about as much as: powder's share of soda, and 84.007 / 188.177 for cream of
    /// tartar. Potassium bicarbonate does 0.84 and counts as more, since soda is what bakers have.
    pub fn worth(self) -> f64 {
        match self {
            Self::Soda => 1.0,
            Self::Powder => 0.3,
            Self::Tartar => 0.446,
            Self::Potassium => 1.1,
        }
    }

    fn is_in(self, cupboard: &Cupboard) -> bool {
        match self {
            Self::Soda => cupboard.soda,
            Self::Powder => cupboard.powder,
            Self::Tartar => cupboard.tartar,
            Self::Potassium => cupboard.potassium,
        }
    }
}

/// One of the four, as the recipe has it and as the cupboard has it.
pub struct Shelf<'a> {
    pub leavener: Leavener,
    /// What would be added.
    pub ingredient: &'static Ingredient,
    /// The name by which the reader knows it.
    pub name: &'static str,
    /// The recipe's lines of it that stay what they are; the first takes a new amount.
    pub lines: Vec<&'a Weighed>,
    /// Lines of another kind than that in the cupboard: they go.
    pub others: Vec<&'a Weighed>,
    /// Whether it may be used.
    pub there: bool,
    /// Sodium in a gram of it, mg.
    pub sodium: f64,
}

impl<'a> Shelf<'a> {
    /// All four; `None` if the tables lack one.
    pub fn all(facts: &Facts<'a>, cupboard: &Cupboard) -> Option<[Self; 4]> {
        let [soda, powder, tartar, potassium] =
            Leavener::ALL.map(|leavener| Self::of(leavener, facts, cupboard));
        Some([soda?, powder?, tartar?, potassium?])
    }

    fn of(leavener: Leavener, facts: &Facts<'a>, cupboard: &Cupboard) -> Option<Self> {
        let lines = facts
            .formula
            .batter()
            .filter(|line| Leavener::of(line.ingredient) == Some(leavener));
        let own = lines.clone().next().map(|line| line.ingredient);
        let (ingredient, name) = match leavener {
            Leavener::Soda => (by_key("baking_soda")?, soda_name(facts.region)),
            Leavener::Powder => powder(cupboard, own, facts.region)?,
            Leavener::Tartar => (by_key("cream_of_tartar")?, "cream of tartar"),
            Leavener::Potassium => (by_key("potassium_bicarbonate")?, "potassium bicarbonate"),
        };
        let (lines, others) = lines.partition(|line| {
            leavener != Leavener::Powder || line.ingredient.key == ingredient.key
        });
        Some(Self {
            leavener,
            ingredient,
            name,
            lines,
            others,
            there: leavener.is_in(cupboard),
            sodium: ingredient
                .composition
                .sodium
                .map_or(0.0, |share| share.to_fraction() * 1000.0),
        })
    }

    /// What the recipe holds of it, g.
    pub fn own(&self) -> f64 {
        self.lines
            .iter()
            .map(|line| line.grams.mean.to_grams())
            .sum()
    }

    /// The same as the scale shows it.
    pub fn own_tenths(&self) -> u32 {
        tenths(self.own())
    }

    /// So many tenths in grams; the recipe's own amount stays as exact as it is.
    pub fn grams(&self, tenths: u32) -> f64 {
        if tenths == self.own_tenths() {
            self.own()
        } else {
            f64::from(tenths) / 10.0
        }
    }

    /// The amount that eighths of a teaspoon come nearest to with, g; the recipe's own stays.
    pub fn by_spoons(&self, tenths: u32) -> Option<f64> {
        if tenths == self.own_tenths() {
            return Some(self.own());
        }
        let teaspoon = self.ingredient.teaspoon()?;
        Some((self.grams(tenths) / teaspoon * 8.0).round() / 8.0 * teaspoon)
    }
}

/// Grams as the scale's tenths.
pub fn tenths(grams: f64) -> u32 {
    // Beyond what a number of tenths holds, the cast stops at the largest.
    (grams * 10.0).round().max(0.0) as u32
}

/// The powder in the cupboard: of the kind that was chosen, or else the recipe's own, or else what its country's word means.
fn powder(
    cupboard: &Cupboard,
    own: Option<&'static Ingredient>,
    region: Region,
) -> Option<(&'static Ingredient, &'static str)> {
    let chosen = cupboard.powder_kind.as_deref();
    if let Some(key) = POWDERS.iter().find(|key| Some(**key) == chosen) {
        let powder = by_key(key)?;
        return Some((powder, powder.name));
    }
    let usual = match region {
        Region::Us | Region::Ca => "baking_powder",
        Region::Uk | Region::Au | Region::Nz => "baking_powder_blend",
    };
    Some((own.or_else(|| by_key(usual))?, POWDER))
}
