//! Weak acids and how many protons they have given up at a pH.

use super::IONIC_STRENGTH;
use std::sync::OnceLock;

/// A weak acid: its molar mass and its pKa values at 25 C and no ionic strength.
#[derive(Debug, PartialEq)]
pub struct Acid {
    /// The acid's name.
    pub name: &'static str,
    /// Molar mass, g/mol.
    pub molar_mass: f64,
    /// pKa of each step.
    pub pk: &'static [f64],
    /// Charges that are gone before the first of these steps.
    pub charge: f64,
}

/// Davies A at 25 C, from the density and permittivity of water.
const DAVIES_A: f64 = 0.5108;

impl Acid {
    /// Citric acid: Goldberg, Kishore and Lennen 2002, J Phys Chem Ref Data 31:231.
    pub const CITRIC: Self = Self::neutral("citric acid", 192.123, &[3.128, 4.761, 6.396]);
    /// Malic acid: Eden and Bates 1959, J Res NBS 62:161.
    pub const MALIC: Self = Self::neutral("malic acid", 134.087, &[3.459, 5.097]);
    /// Quinic acid: CRC Handbook, from memory.
    pub const QUINIC: Self = Self::neutral("quinic acid", 192.167, &[3.58]);
    /// Tartaric acid: Goldberg and others 2002.
    pub const TARTARIC: Self = Self::neutral("tartaric acid", 150.086, &[3.036, 4.366]);
    /// Lactic acid: Martell and Smith.
    pub const LACTIC: Self = Self::neutral("lactic acid", 90.078, &[3.86]);
    /// Acetic acid: Goldberg and others 2002.
    pub const ACETIC: Self = Self::neutral("acetic acid", 60.052, &[4.756]);
    /// Oxalic acid: Goldberg and others 2002.
    pub const OXALIC: Self = Self::neutral("oxalic acid", 90.034, &[1.27, 4.266]);
    /// Succinic acid: Goldberg and others 2002.
    pub const SUCCINIC: Self = Self::neutral("succinic acid", 118.088, &[4.207, 5.636]);
    /// Gluconic acid: values from 3.3 to 3.9 are published.
    pub const GLUCONIC: Self = Self::neutral("gluconic acid", 196.155, &[3.7]);
    /// Aconitic acid (trans): CRC Handbook, from memory; the third step is weakly known.
    pub const ACONITIC: Self = Self::neutral("aconitic acid", 174.108, &[2.8, 4.46, 6.3]);
    /// Chlorogenic acid: spectrophotometric studies, from memory.
    pub const CHLOROGENIC: Self = Self::neutral("chlorogenic acid", 354.311, &[3.4, 8.3]);
    /// Phosphoric acid: Goldberg and others 2002, from memory.
    pub const PHOSPHORIC: Self = Self::neutral("phosphoric acid", 97.995, &[2.148, 7.198, 12.35]);
    /// Carbonic acid, counted from dissolved carbon dioxide: Goldberg and others 2002.
    pub const CARBONIC: Self = Self::neutral("carbonic acid", 44.009, &[6.351, 10.329]);

    /// Sodium acid pyrophosphate: the last two of its four protons. Goldberg and others 2002, from memory.
    pub const PYROPHOSPHATE: Self = Self {
        name: "sodium acid pyrophosphate",
        molar_mass: 221.94,
        pk: &[6.72, 9.46],
        charge: 2.0,
    };

    /// Every acid that the tables may name, in the order of their columns.
    pub const ALL: [&Self; 12] = [
        &Self::CITRIC,
        &Self::MALIC,
        &Self::QUINIC,
        &Self::TARTARIC,
        &Self::LACTIC,
        &Self::ACETIC,
        &Self::OXALIC,
        &Self::SUCCINIC,
        &Self::GLUCONIC,
        &Self::ACONITIC,
        &Self::CHLOROGENIC,
        &Self::PHOSPHORIC,
    ];

    /// An acid that has all its protons: name, molar mass in g/mol, pKa of each step.
    const fn neutral(name: &'static str, molar_mass: f64, pk: &'static [f64]) -> Self {
        Self {
            name,
            molar_mass,
            pk,
            charge: 0.0,
        }
    }

    /// The constant of step `step` (from 0) as a meter sees it: activity of the proton, concentrations of
    /// the rest, by the Davies equation; a neutral species has log10 of its coefficient at 0.1 I.
    pub fn mixed_pk(&self, step: usize) -> f64 {
        let before = self.charge + step as f64;
        self.pk[step] + log_activity(before + 1.0) - log_activity(before)
    }
}

/// log10 of the activity coefficient of a species of that charge.
fn log_activity(charge: f64) -> f64 {
    let root = IONIC_STRENGTH.sqrt();
    let davies = DAVIES_A * (root / (1.0 + root) - 0.3 * IONIC_STRENGTH);
    if charge == 0.0 {
        0.1 * IONIC_STRENGTH
    } else {
        -davies * charge * charge
    }
}

/// The most steps that an acid has.
const STEPS: usize = 3;

/// The constants as a meter sees them, 10 to the minus pK, of every acid of [`Acid::ALL`], then carbonic acid and
/// pyrophosphate; zero where an acid has no such step. Worked out once.
fn constants() -> &'static [[f64; STEPS]; 14] {
    static CONSTANTS: OnceLock<[[f64; STEPS]; 14]> = OnceLock::new();
    CONSTANTS.get_or_init(|| {
        let mut constants = [[0.0; STEPS]; 14];
        let acids = Acid::ALL
            .into_iter()
            .chain([&Acid::CARBONIC, &Acid::PYROPHOSPHATE]);
        for (row, acid) in constants.iter_mut().zip(acids) {
            for (step, constant) in row.iter_mut().enumerate().take(acid.pk.len()) {
                *constant = 10_f64.powf(-acid.mixed_pk(step));
            }
        }
        constants
    })
}

/// A pH, made ready to ask how many protons acids have given up at it.
pub struct Protons {
    /// The pH.
    pub ph: f64,
    /// 10 to the pH: the inverse of the proton's activity.
    inverse: f64,
    constants: &'static [[f64; STEPS]; 14],
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

    /// The mean number of protons that a molecule of the acid at that place in [`Acid::ALL`] has given up.
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
        self.lost(Acid::ALL.len())
    }

    /// The same for the two protons that sodium acid pyrophosphate still has.
    pub fn pyrophosphate(&self) -> f64 {
        self.lost(Acid::ALL.len() + 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half of a one-step acid is dissociated where the pH equals its constant: the definition.
    #[test]
    fn half_is_gone_at_the_constant() {
        assert_eq!(Acid::ALL[5].name, "acetic acid");
        let protons = Protons::at(Acid::ACETIC.mixed_pk(0));
        assert!((protons.lost(5) - 0.5).abs() < 1e-9);
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
        assert!((Protons::at(7.0).lost(0) - 2.95).abs() < 0.01);
    }

    /// Pyrophosphate at ionic strength 0.3 has mixed constants 6.05 and 8.52, worked out beforehand.
    #[test]
    fn pyrophosphate_keeps_its_charges_in_mind() {
        assert!((Acid::PYROPHOSPHATE.mixed_pk(0) - 6.05).abs() < 0.02);
        assert!((Acid::PYROPHOSPHATE.mixed_pk(1) - 8.52).abs() < 0.03);
    }
}
