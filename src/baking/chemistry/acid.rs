//! How many protons acids have given up at a pH, in a batter of usual ionic strength.
//!
//! What an ingredient takes up is asked for thousands of times at one ionic strength, so the constants are mixed once.
//! The pH of a batter is not reckoned here but at its own ionic strength, in [`super::solution`].

use super::IONIC_STRENGTH;
use super::solution::{ACIDS, Activity, CARBONIC, CONSTANTS, Constants, STEPS, step_constant};
use std::sync::OnceLock;

/// The constants as a meter sees them, of every acid in the order of [`super::solution::ALL`], then of carbonic acid;
/// zero where an acid has no such step.
fn constants() -> &'static [[f64; STEPS]; ACIDS + 1] {
    static MIXED: OnceLock<[[f64; STEPS]; ACIDS + 1]> = OnceLock::new();
    MIXED.get_or_init(|| {
        let activity = Activity::at(25.0, IONIC_STRENGTH);
        let mixed = |acid: &Constants| {
            let mut constants = [0.0; STEPS];
            for (place, step) in acid.steps.iter().enumerate() {
                constants[place] = step_constant(step, 25.0) * activity.step[place];
            }
            constants
        };
        let mut all = [mixed(&CARBONIC); ACIDS + 1];
        for (place, acid) in CONSTANTS.iter().enumerate() {
            all[place] = mixed(acid);
        }
        all
    })
}

/// A pH, made ready to ask how many protons acids have given up at it.
pub struct Protons {
    /// The pH.
    pub ph: f64,
    /// 10 to the pH: the inverse of the proton's activity.
    inverse: f64,
    constants: &'static [[f64; STEPS]; ACIDS + 1],
}

impl Protons {
    /// At this pH.
    pub fn at(ph: f64) -> Self {
        Self {
            ph,
            inverse: 10_f64.powf(ph),
            constants: constants(),
        }
    }

    /// The mean number of protons that a molecule of the acid at that place in [`super::solution::ALL`] has given up.
    pub fn lost(&self, place: usize) -> f64 {
        let (mut weight, mut sum, mut lost) = (1.0, 1.0, 0.0);
        for (step, constant) in self.constants[place].iter().enumerate() {
            weight *= self.inverse * constant;
            sum += weight;
            lost += weight * (step + 1) as f64;
        }
        lost / sum
    }

    /// The same for carbonic acid.
    pub fn carbonic(&self) -> f64 {
        self.lost(ACIDS)
    }

    /// Bicarbonate, and carbonate, for one of dissolved carbon dioxide.
    pub fn carbonate(&self) -> [f64; 2] {
        let [first, second, ..] = self.constants[ACIDS];
        let bicarbonate = self.inverse * first;
        [bicarbonate, bicarbonate * self.inverse * second]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::chemistry::solution::Acid;

    fn mixed_pk(acid: Acid, step: usize) -> f64 {
        -constants()[acid as usize][step].log10()
    }

    /// Half of a one-step acid is dissociated where the pH equals its constant: the definition.
    #[test]
    fn half_is_gone_at_the_constant() {
        let protons = Protons::at(mixed_pk(Acid::Acetic, 0));
        assert!((protons.lost(Acid::Acetic as usize) - 0.5).abs() < 1e-9);
    }

    /// Davies by hand at I 0.25: 0.5108 (0.5 / 1.5 - 0.075) = 0.13196; a neutral acid adds 0.025.
    #[test]
    fn mixed_constants_follow_davies() {
        assert!((mixed_pk(Acid::Citric, 0) - (3.128 - 0.13196 - 0.025)).abs() < 1e-4);
        assert!((mixed_pk(Acid::Citric, 2) - (6.396 - 5.0 * 0.13196)).abs() < 1e-4);
    }

    /// Citric acid gives 2.95 equivalents to pH 7 in water of ionic strength 0.3, worked from its constants.
    #[test]
    fn citric_acid_gives_nearly_three() {
        assert!((Protons::at(7.0).lost(Acid::Citric as usize) - 2.95).abs() < 0.01);
    }

    /// Pyrophosphate at ionic strength 0.3 has mixed constants 6.05 and 8.52, worked out beforehand.
    #[test]
    fn pyrophosphate_keeps_its_charges_in_mind() {
        assert!((mixed_pk(Acid::Pyrophosphoric, 2) - 6.05).abs() < 0.02);
        assert!((mixed_pk(Acid::Pyrophosphoric, 3) - 8.52).abs() < 0.03);
    }
}
