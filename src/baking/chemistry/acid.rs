//! Weak acids and how many protons they have given up at a pH.

use super::IONIC_STRENGTH;

/// A weak acid: its molar mass and its pKa values at 25 C and no ionic strength.
#[derive(Debug, PartialEq)]
pub struct Acid {
    /// The acid's name.
    pub name: &'static str,
    /// Molar mass, g/mol.
    pub molar_mass: f64,
    /// pKa of each step.
    pub pk: &'static [f64],
}

/// Davies A at 25 C, from the density and permittivity of water.
const DAVIES_A: f64 = 0.5108;

impl Acid {
    /// Citric acid: Goldberg, Kishore and Lennen 2002, J Phys Chem Ref Data 31:231.
    pub const CITRIC: Self = Self {
        name: "citric acid",
        molar_mass: 192.123,
        pk: &[3.128, 4.761, 6.396],
    };
    /// Malic acid: Eden and Bates 1959, J Res NBS 62:161.
    pub const MALIC: Self = Self {
        name: "malic acid",
        molar_mass: 134.087,
        pk: &[3.459, 5.097],
    };
    /// Quinic acid: CRC Handbook, from memory.
    pub const QUINIC: Self = Self {
        name: "quinic acid",
        molar_mass: 192.167,
        pk: &[3.58],
    };
    /// Tartaric acid: Goldberg and others 2002.
    pub const TARTARIC: Self = Self {
        name: "tartaric acid",
        molar_mass: 150.086,
        pk: &[3.036, 4.366],
    };
    /// Lactic acid: Martell and Smith.
    pub const LACTIC: Self = Self {
        name: "lactic acid",
        molar_mass: 90.078,
        pk: &[3.86],
    };
    /// Acetic acid: Goldberg and others 2002.
    pub const ACETIC: Self = Self {
        name: "acetic acid",
        molar_mass: 60.052,
        pk: &[4.756],
    };
    /// Oxalic acid: Goldberg and others 2002.
    pub const OXALIC: Self = Self {
        name: "oxalic acid",
        molar_mass: 90.034,
        pk: &[1.27, 4.266],
    };
    /// Succinic acid: Goldberg and others 2002.
    pub const SUCCINIC: Self = Self {
        name: "succinic acid",
        molar_mass: 118.088,
        pk: &[4.207, 5.636],
    };
    /// Gluconic acid: values from 3.3 to 3.9 are published.
    pub const GLUCONIC: Self = Self {
        name: "gluconic acid",
        molar_mass: 196.155,
        pk: &[3.7],
    };
    /// Aconitic acid (trans): CRC Handbook, from memory; the third step is weakly known.
    pub const ACONITIC: Self = Self {
        name: "aconitic acid",
        molar_mass: 174.108,
        pk: &[2.8, 4.46, 6.3],
    };
    /// Chlorogenic acid: spectrophotometric studies, from memory.
    pub const CHLOROGENIC: Self = Self {
        name: "chlorogenic acid",
        molar_mass: 354.311,
        pk: &[3.4, 8.3],
    };
    /// Phosphoric acid: Goldberg and others 2002, from memory.
    pub const PHOSPHORIC: Self = Self {
        name: "phosphoric acid",
        molar_mass: 97.995,
        pk: &[2.148, 7.198, 12.35],
    };
    /// Carbonic acid, counted from dissolved carbon dioxide: Goldberg and others 2002.
    pub const CARBONIC: Self = Self {
        name: "carbonic acid",
        molar_mass: 44.009,
        pk: &[6.351, 10.329],
    };

    /// The constant of step `step` (from 0) as a meter sees it: activity of the proton, concentrations of
    /// the rest, by the Davies equation; a neutral species has log10 of its coefficient at 0.1 I.
    pub fn mixed_pk(&self, step: usize) -> f64 {
        let root = IONIC_STRENGTH.sqrt();
        let davies = DAVIES_A * (root / (1.0 + root) - 0.3 * IONIC_STRENGTH);
        let log_activity = |charge: f64| {
            if charge == 0.0 {
                0.1 * IONIC_STRENGTH
            } else {
                -davies * charge * charge
            }
        };
        let before = step as f64;
        self.pk[step] + log_activity(before + 1.0) - log_activity(before)
    }

    /// The mean number of protons that a molecule has given up at a pH.
    pub fn protons_lost(&self, ph: f64) -> f64 {
        Self::lost_from((0..self.pk.len()).map(|step| self.mixed_pk(step)), ph)
    }

    /// The same for constants given as a meter sees them.
    pub(super) fn lost_from(constants: impl Iterator<Item = f64>, ph: f64) -> f64 {
        let (mut weight, mut sum, mut lost) = (1.0, 1.0, 0.0);
        for (step, constant) in constants.enumerate() {
            weight *= 10_f64.powf(ph - constant);
            sum += weight;
            lost += weight * (step + 1) as f64;
        }
        lost / sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half of a one-step acid is dissociated where the pH equals its constant: the definition.
    #[test]
    fn half_is_gone_at_the_constant() {
        let constant = Acid::ACETIC.mixed_pk(0);
        assert!((Acid::ACETIC.protons_lost(constant) - 0.5).abs() < 1e-12);
    }

    /// Davies by hand at I 0.25: 0.5108 (0.5 / 1.5 - 0.075) = 0.13196; a neutral acid adds 0.025.
    #[test]
    fn mixed_constants_follow_davies() {
        assert!((Acid::CITRIC.mixed_pk(0) - (3.128 - 0.13196 - 0.025)).abs() < 1e-4);
        assert!((Acid::CITRIC.mixed_pk(2) - (6.396 - 5.0 * 0.13196)).abs() < 1e-4);
    }

    /// Citric acid gives 2.95 equivalents to pH 7 in water of ionic strength 0.3, worked from its constants.
    #[test]
    fn citric_acid_gives_nearly_three() {
        assert!((Acid::CITRIC.protons_lost(7.0) - 2.95).abs() < 0.01);
    }
}
