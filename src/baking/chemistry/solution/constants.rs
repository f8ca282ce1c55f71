//! Constants of acids and water, and how they move with temperature.
//!
//! The same figures stand in `tests/reference/acids.csv` and `water.csv` with a source to every row; a test holds
//! the two together, and the independent solver's database is written from those files.

use crate::baking::source::Confidence;

/// Kelvin at 0 C.
const ICE: f64 = 273.15;
/// The temperature of the constants as they are tabled, K.
const TABLED_AT: f64 = 298.15;
/// The gas constant, kJ/(mol K).
const GAS_CONSTANT: f64 = 8.314_462_618e-3;

/// A weak acid that a table may name. Its place among [`CONSTANTS`] is its number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Acid {
    /// Citric acid.
    Citric,
    /// Malic acid.
    Malic,
    /// Tartaric acid, L(+).
    Tartaric,
    /// Lactic acid.
    Lactic,
    /// Acetic acid.
    Acetic,
    /// Ascorbic acid.
    Ascorbic,
    /// Orthophosphoric acid.
    Phosphoric,
    /// Pyrophosphoric acid; sodium acid pyrophosphate is this with two of its protons gone.
    Pyrophosphoric,
    /// Oxalic acid.
    Oxalic,
    /// Quinic acid.
    Quinic,
    /// Gluconic acid, without its lactone.
    Gluconic,
    /// Adipic acid.
    Adipic,
    /// Fumaric acid.
    Fumaric,
    /// Succinic acid.
    Succinic,
    /// Aconitic acid, trans.
    Aconitic,
    /// Chlorogenic acid (5-caffeoylquinic).
    Chlorogenic,
    /// Benzoic acid.
    Benzoic,
}

/// How many acids there are.
pub const ACIDS: usize = 17;

/// Every acid, in the order of [`CONSTANTS`].
pub const ALL: [Acid; ACIDS] = [
    Acid::Citric,
    Acid::Malic,
    Acid::Tartaric,
    Acid::Lactic,
    Acid::Acetic,
    Acid::Ascorbic,
    Acid::Phosphoric,
    Acid::Pyrophosphoric,
    Acid::Oxalic,
    Acid::Quinic,
    Acid::Gluconic,
    Acid::Adipic,
    Acid::Fumaric,
    Acid::Succinic,
    Acid::Aconitic,
    Acid::Chlorogenic,
    Acid::Benzoic,
];

/// The most protons that an acid gives.
pub const STEPS: usize = 4;

/// What is known of an acid that starts with all its protons and no charge.
#[derive(Debug, PartialEq)]
pub struct Constants {
    /// Molar mass without water of crystals, g/mol.
    pub molar_mass: f64,
    /// Of each proton that it gives, at 25 C and no ionic strength: pKa; enthalpy of giving it, kJ/mol; heat
    /// capacity of giving it, J/(mol K). Where neither is known both are 0, so that the constant stays as it is
    /// at 25 C.
    pub steps: &'static [[f64; 3]],
    /// How far its pKa are to be trusted. Enthalpies and heat capacities are from memory but for malic acid.
    pub confidence: Confidence,
}

const fn row(molar_mass: f64, confidence: Confidence, steps: &'static [[f64; 3]]) -> Constants {
    Constants {
        molar_mass,
        steps,
        confidence,
    }
}

use Confidence::{Memory, Published};

/// The constants of every acid, in the order of [`ALL`].
pub static CONSTANTS: [Constants; ACIDS] = [
    // Goldberg, Kishore and Lennen 2002, J Phys Chem Ref Data 31:231.
    row(
        192.123,
        Published,
        &[
            [3.128, 4.07, -131.0],
            [4.761, 2.23, -178.0],
            [6.396, -3.38, -254.0],
        ],
    ),
    // Eden and Bates 1959, J Res NBS 62:161; measured from 0 to 50 C.
    row(
        134.087,
        Published,
        &[[3.459, 2.95, -155.0], [5.097, -1.18, -221.0]],
    ),
    // Goldberg and others 2002.
    row(
        150.086,
        Published,
        &[[3.036, 3.19, -147.0], [4.366, 0.93, -218.0]],
    ),
    // Martell and Smith, Critical stability constants.
    row(90.078, Published, &[[3.86, -0.33, -148.0]]),
    // Goldberg and others 2002.
    row(60.052, Published, &[[4.756, -0.41, -142.0]]),
    // CRC Handbook, 4.04 to 4.17 in its editions; no enthalpy.
    row(176.124, Memory, &[[4.17, 0.0, 0.0], [11.57, 0.0, 0.0]]),
    // Goldberg and others 2002.
    row(
        97.995,
        Memory,
        &[
            [2.148, -8.0, -141.0],
            [7.198, 3.6, -230.0],
            [12.35, 16.0, -242.0],
        ],
    ),
    // Goldberg and others 2002. The last two decide what sodium acid pyrophosphate gives.
    row(
        177.975,
        Memory,
        &[
            [0.83, -9.2, -90.0],
            [2.26, -5.0, -130.0],
            [6.72, 0.5, -136.0],
            [9.46, 1.4, -141.0],
        ],
    ),
    // Goldberg and others 2002.
    row(
        90.034,
        Published,
        &[[1.27, -3.9, -231.0], [4.266, -7.0, -231.0]],
    ),
    // CRC Handbook; no enthalpy.
    row(192.167, Memory, &[[3.58, 0.0, 0.0]]),
    // Between the published 3.3 and 3.9, which don't agree; no enthalpy.
    row(196.155, Published, &[[3.7, 0.0, 0.0]]),
    // CRC Handbook; no heat capacity.
    row(146.141, Memory, &[[4.43, -1.6, 0.0], [5.41, -2.7, 0.0]]),
    // NIST 46; no heat capacity.
    row(116.072, Published, &[[3.053, 0.5, 0.0], [4.494, -2.8, 0.0]]),
    // Goldberg and others 2002.
    row(
        118.088,
        Published,
        &[[4.207, 3.0, -121.0], [5.636, -0.5, -217.0]],
    ),
    // CRC Handbook; the third is an estimate (5.9 to 6.5); no enthalpy.
    row(
        174.108,
        Memory,
        &[[2.8, 0.0, 0.0], [4.46, 0.0, 0.0], [6.3, 0.0, 0.0]],
    ),
    // Spectrophotometric studies, 3.3 to 3.6 and 8.3 to 8.5; no enthalpy.
    row(354.311, Memory, &[[3.4, 0.0, 0.0], [8.3, 0.0, 0.0]]),
    // NIST 46.
    row(122.123, Published, &[[4.204, 0.46, -150.0]]),
];

/// Carbonic acid, counted from all dissolved carbon dioxide: Goldberg and others 2002.
pub static CARBONIC: Constants = row(
    44.009,
    Published,
    &[[6.351, 9.15, -371.0], [10.329, 14.7, -249.0]],
);

impl Acid {
    /// What is known of it.
    pub fn constants(self) -> &'static Constants {
        &CONSTANTS[self as usize]
    }
}

/// The temperature in kelvin.
fn kelvin(celsius: f64) -> f64 {
    celsius + ICE
}

/// The constant of a step of [`Constants::steps`] at a temperature in C, mol/kg at no ionic strength.
///
/// ln K = ln K0 + (dH/R)(1/T0 - 1/T) + (dCp/R)(T0/T - 1 + ln(T/T0)), with a heat capacity that stays the same:
/// Goldberg and others 2002. Above 60 C that is stretched; 0.05 in pK either way.
pub fn step_constant(step: &[f64; 3], celsius: f64) -> f64 {
    let [pk, enthalpy, heat_capacity] = *step;
    let kelvin = kelvin(celsius);
    let ratio = TABLED_AT / kelvin;
    let bent = heat_capacity / 1000.0 * (ratio - 1.0 - ratio.ln());
    (enthalpy * (1.0 / TABLED_AT - 1.0 / kelvin) / GAS_CONSTANT + bent / GAS_CONSTANT
        - pk * std::f64::consts::LN_10)
        .exp()
}

/// Coefficients of the decimal logarithm of water's own constant against kelvin T: 1, T, 1/T, log10 T, T squared.
/// The database phreeqc.dat of PHREEQC 3.
pub const WATER: [f64; 5] = [
    293.29227,
    0.136_083_3,
    -10_576.913,
    -123.73158,
    -6.996_455e-5,
];

/// Water's own constant at a temperature in C, mol2/kg2: the product of the activities of proton and hydroxide
/// where that of water is 1.
pub fn water_constant(celsius: f64) -> f64 {
    let kelvin = kelvin(celsius);
    let [one, first, inverse, logarithm, second] = WATER;
    ((one + first * kelvin + inverse / kelvin + second * kelvin * kelvin) * std::f64::consts::LN_10
        + logarithm * kelvin.ln())
    .exp()
}

/// Coefficients of the natural logarithm of Henry's constant of carbon dioxide, MPa for a mole fraction of 1,
/// against 1/T in kelvin: 1, 1/T, squared, cubed; 0 to 160 C.
/// Carroll, Slupsky and Mather 1991, J Phys Chem Ref Data 20:1201.
pub const HENRY: [f64; 4] = [-6.8346, 1.2817e4, -3.7668e6, 2.997e8];

/// MPa in an atmosphere, times moles of water in a kilogram.
const ATMOSPHERE_OF_WATER: f64 = 0.101_325 * 1000.0 / 18.015;

/// Carbon dioxide that a kilogram of water takes up under an atmosphere of it at a temperature in C, as activity
/// in mol/kg.
pub fn henry(celsius: f64) -> f64 {
    let inverse = 1.0 / kelvin(celsius);
    let [one, first, second, third] = HENRY;
    ATMOSPHERE_OF_WATER / (one + inverse * (first + inverse * (second + inverse * third))).exp()
}

/// Davies A by temperature in C, worked out from the density and permittivity of water.
pub const DAVIES: [[f64; 2]; 15] = [
    [0.0, 0.4918],
    [5.0, 0.4953],
    [10.0, 0.4989],
    [15.0, 0.5027],
    [20.0, 0.5067],
    [25.0, 0.5108],
    [30.0, 0.5151],
    [40.0, 0.5243],
    [50.0, 0.5342],
    [60.0, 0.5449],
    [70.0, 0.5563],
    [80.0, 0.5686],
    [90.0, 0.5817],
    [95.0, 0.5887],
    [100.0, 0.5959],
];

/// Davies A at a temperature in C, on a straight line between the rows of [`DAVIES`] and level beyond them.
pub fn davies(celsius: f64) -> f64 {
    let (mut below, mut above) = (DAVIES[0], DAVIES[0]);
    for row in DAVIES {
        above = row;
        if row[0] >= celsius {
            break;
        }
        below = row;
    }
    let width = above[0] - below[0];
    if width > 0.0 {
        below[1] + (above[1] - below[1]) * (celsius - below[0]) / width
    } else {
        above[1]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
        assert!(
            (found - expected).abs() <= tolerance,
            "{what}: found {found}, expected {expected}"
        );
    }

    /// pK by temperature as worked out beforehand from the same figures by another program: water, the two of
    /// carbonic acid, the three of citric acid, the second of phosphoric acid; carbon dioxide in mol/(kg atm).
    #[test]
    fn constants_move_with_temperature() {
        for (celsius, water, carbonic, citric, phosphoric, gas) in [
            (
                0.0,
                14.938,
                [6.574, 10.616],
                [3.22, 4.833, 6.394],
                7.303,
                0.0757,
            ),
            (
                25.0,
                13.995,
                [6.351, 10.329],
                [3.128, 4.761, 6.396],
                7.198,
                0.03473,
            ),
            (
                60.0,
                13.015,
                [6.298, 10.136],
                [3.094, 4.775, 6.537],
                7.203,
                0.01695,
            ),
            (
                95.0,
                12.319,
                [6.448, 10.109],
                [3.134, 4.88, 6.784],
                7.327,
                0.01148,
            ),
        ] {
            let pk = |step: &[f64; 3]| -step_constant(step, celsius).log10();
            let what = format!("{celsius} C");
            near(-water_constant(celsius).log10(), water, 0.0006, &what);
            near(henry(celsius), gas, gas * 5e-4, &what);
            for (step, expected) in CARBONIC.steps.iter().zip(carbonic) {
                near(pk(step), expected, 0.0006, &what);
            }
            for (step, expected) in Acid::Citric.constants().steps.iter().zip(citric) {
                near(pk(step), expected, 0.0006, &what);
            }
            near(
                pk(&Acid::Phosphoric.constants().steps[1]),
                phosphoric,
                0.0006,
                &what,
            );
        }
    }

    #[test]
    fn davies_a_lies_between_its_rows() {
        for (celsius, expected) in [
            (-5.0, 0.4918),
            (0.0, 0.4918),
            (2.5, 0.493_55),
            (25.0, 0.5108),
            (35.0, 0.5197),
            (100.0, 0.5959),
            (200.0, 0.5959),
        ] {
            near(davies(celsius), expected, 1e-9, &format!("{celsius} C"));
        }
    }

    #[test]
    fn an_acid_stands_at_its_own_place() {
        for (place, acid) in ALL.into_iter().enumerate() {
            assert_eq!(acid as usize, place);
            assert!(acid.constants().steps.len() <= STEPS);
        }
    }
}
