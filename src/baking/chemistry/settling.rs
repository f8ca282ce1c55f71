//! What leavening phosphates take up if they settle otherwise than reckoned.
//!
//! Calcium phosphate is reckoned as it settles nearly to apatite, aluminium by the trade's value, which is that of its
//! hydroxide. Neither is sure in the minutes of a bake: calcium phosphate may stay dissolved, and where aluminium
//! meets phosphate the solid is aluminium phosphate ("Determination of soluble species and precipitates of aluminum
//! phosphate", titrations of aluminium(III) with orthophosphate, found AlPO4 and Al3(OH)3(PO4)2; read in its abstract).
//! Either way less base is taken up. How far it goes in a crumb is not known: not at all is the mean here, all the way
//! is the upper end of the crumb's range.

use super::Curve;
use super::acid::Protons;
use super::leavening::is_by_value;
use super::release::{Doing, Work};
use super::solution::Acid;
use crate::baking::ingredient::Leavening;
use crate::baking::quantity::Mass;
use std::ops::Add;

/// Aluminium, g/mol.
const ALUMINIUM: f64 = 26.982;

/// What may settle otherwise in a line or a bowl.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Settling {
    /// What is reckoned of the acids that hold it.
    reckoned: Curve,
    /// Aluminium, mmol.
    aluminium: f64,
    /// Phosphate, mmol.
    phosphate: f64,
    /// Protons that the phosphate has less of than as dihydrogen phosphate, mmol.
    gone: f64,
}

impl Settling {
    /// Of so much of a leavener, whose acids work like that.
    pub fn of(leavening: &Leavening, grams: Mass, works: &[Work]) -> Self {
        let mut settling = Self::default();
        for (acid, share) in leavening.acids.iter().filter(|(acid, _)| is_by_value(acid)) {
            let grams = grams.to_grams() * share / 100.0;
            let aluminium = grams * acid.aluminium / ALUMINIUM;
            settling.aluminium += aluminium;
            // NaAl3H14(PO4)8: two protons short of eight dihydrogen phosphates beside three aluminium and a sodium.
            if acid.key == "sodium_aluminium_phosphate" {
                settling.phosphate += aluminium * 8.0 / 3.0;
                settling.gone += aluminium * 2.0 / 3.0;
            }
        }
        for work in works {
            match work.doing {
                Doing::Calcium(moles) => settling.phosphate += 2000.0 * moles,
                Doing::Steady(_) if settling.aluminium > 0.0 => {}
                _ => continue,
            }
            settling.reckoned = settling.reckoned + Curve::of_work(work);
        }
        settling
    }

    /// Base that is reckoned as taken up at a pH and is not if calcium phosphate stays dissolved and aluminium settles
    /// as its phosphate: meq, never less than nothing.
    ///
    /// From dihydrogen phosphate an aluminium ion with a phosphate in AlPO4 sets two protons free, one that ends as
    /// hydroxide three; phosphate that stays dissolved gives its protons by its constants.
    pub fn spared(&self, ph: f64) -> f64 {
        let bound = self.aluminium.min(self.phosphate);
        let dissolved = Protons::at(ph).lost(Acid::Phosphoric as usize) - 1.0;
        let taken =
            3.0 * (self.aluminium - bound) + 2.0 * bound + dissolved * (self.phosphate - bound)
                - self.gone;
        (self.reckoned.at(ph).to_milliequivalents() - taken).max(0.0)
    }
}

impl Add for Settling {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            reckoned: self.reckoned + other.reckoned,
            aluminium: self.aluminium + other.aluminium,
            phosphate: self.phosphate + other.phosphate,
            gone: self.gone + other.gone,
        }
    }
}

impl std::iter::Sum for Settling {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::super::NEUTRAL;
    use super::super::leavening::work;
    use super::*;
    use crate::baking::ingredient::by_key;

    fn spared(key: &str, grams: f64, ph: f64) -> f64 {
        let leavening = by_key(key).and_then(|found| found.leavening).expect("one");
        let grams = Mass::grams(grams);
        Settling::of(leavening, grams, &work(leavening, grams)).spared(ph)
    }

    /// By hand for 100 g of powder with 22.8 g of sodium aluminium sulphate and 8.9 g of monocalcium phosphate: 94 mmol
    /// of aluminium, 70.6 of phosphate. Reckoned to pH 7: 282 meq and 35.3 x 2.08 = 73.6, together 356. With all
    /// phosphate as AlPO4: 2 x 70.6 + 3 x 23.4 = 211. Between them 144.
    #[test]
    fn aluminium_phosphate_spares_two_of_four_protons() {
        let found = spared("baking_powder_aluminium", 100.0, NEUTRAL);
        assert!((found - 144.0).abs() < 3.0, "{found}");
    }

    /// Coated monocalcium phosphate, 37.5 g in 100 g of powder, is 160 mmol. Reckoned to pH 7 333 meq; dissolved, with
    /// a second constant of 6.79 at ionic strength 0.25 to 0.3, two phosphates of 0.61 to 0.62 protons each: 196 to 199.
    #[test]
    fn dissolved_calcium_phosphate_takes_three_fifths() {
        let found = spared("baking_powder_phosphate", 100.0, NEUTRAL);
        assert!((found - 136.0).abs() < 4.0, "{found}");
    }

    /// Tartrate and sulphate without phosphate settle as reckoned: a value of 104 is three protons to an aluminium.
    #[test]
    fn without_phosphate_nothing_is_spared() {
        assert!(spared("baking_powder_tartrate", 100.0, NEUTRAL) == 0.0);
        assert!(spared("baking_soda", 100.0, NEUTRAL) == 0.0);
    }
}
