//! Soda that stays solid: water dissolves so much of it and no more.

use super::leavening::SODA_MMOL_PER_GRAM;
use super::solution::{Activity, Answer, Carbon, Solution};

/// Grams of soda that dissolve in 100 g of water, by temperature in C: CRC handbook, from memory.
const SOLUBILITY: [(f64, f64); 4] = [(0.0, 7.0), (25.0, 10.3), (60.0, 16.4), (100.0, 23.6)];

/// Moles of soda that dissolve in a kilogram of water, straight between the tabled temperatures.
fn soluble(celsius: f64) -> f64 {
    let celsius = celsius.clamp(0.0, 100.0);
    let mut grams = SOLUBILITY[0].1;
    for pair in SOLUBILITY.windows(2) {
        let [(from, low), (to, high)] = [pair[0], pair[1]];
        if celsius >= from {
            grams = low + (high - low) * (celsius - from) / (to - from);
        }
    }
    grams * 10.0 * SODA_MMOL_PER_GRAM / 1000.0
}

/// The geometric mean of the activities of sodium and bicarbonate, mol/kg.
fn mean_activity(sodium: f64, bicarbonate: f64, celsius: f64, ionic: f64) -> f64 {
    (sodium * bicarbonate).max(0.0).sqrt() * Activity::at(celsius, ionic).single
}

/// Solves a solution of which soda is a part, mol/kg, its charge and its carbon in it already, with as much of it as
/// dissolves, sooner where the answer of one much like it is known; then the soda that stays solid, mol/kg.
///
/// Solid soda stays where the product of the activities of sodium and bicarbonate would be above that of water that
/// holds as much as it can of nothing else. Any other sodium but table salt is left aside. The product falls as soda is
/// taken out, so an interval holds the root; it is hunted by false position.
pub fn solve(solution: &Solution, soda: f64, like: Option<&Answer>) -> (Answer, f64) {
    let celsius = solution.celsius;
    let holds = soluble(celsius);
    let most = mean_activity(holds, holds, celsius, holds);
    let without = |solid: f64, like: Option<&Answer>| {
        let answer = less(solution, solid).solve_from(like);
        let sodium = soda - solid + solution.salt;
        let bicarbonate = answer.carbon.bicarbonate;
        let found = mean_activity(sodium, bicarbonate, celsius, answer.ionic_strength);
        (answer, found - most)
    };
    let (mut answer, mut over) = without(0.0, like);
    let all = match solution.carbon {
        Carbon::Closed { total } | Carbon::Venting { total, .. } => soda.min(total),
        Carbon::None | Carbon::Open { .. } => soda,
    };
    if over.is_nan() || over <= 0.0 || all <= 0.0 {
        return (answer, 0.0);
    }
    let (mut low, mut high) = (0.0, all);
    let (dry, mut under) = without(all, like);
    if under >= 0.0 {
        return (dry, all);
    }
    let mut solid = all;
    // The end that stayed where it was counts for half, so that it moves as well: the Illinois method.
    let mut stayed = 0.0_f64;
    for _ in 0..60 {
        solid = (low * under - high * over) / (under - over);
        let (found, sign) = without(solid, Some(&answer));
        answer = found;
        if sign.abs() <= 1e-11 * most {
            break;
        }
        if sign > 0.0 {
            (low, over) = (solid, sign);
            if stayed < 0.0 {
                under /= 2.0;
            }
            stayed = -1.0;
        } else {
            (high, under) = (solid, sign);
            if stayed > 0.0 {
                over /= 2.0;
            }
            stayed = 1.0;
        }
    }
    (answer, solid)
}

/// The solution without so much of its soda.
fn less(solution: &Solution, soda: f64) -> Solution {
    let mut less = *solution;
    less.strong -= soda;
    if let Carbon::Closed { total } | Carbon::Venting { total, .. } = &mut less.carbon {
        *total -= soda;
    }
    less
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A kilogram of water at 25 C with so much soda and nothing else, no gas leaving it.
    fn soda_water(soda: f64) -> (Answer, f64) {
        let solution = Solution {
            strong: soda,
            carbon: Carbon::Closed { total: soda },
            ..Solution::default()
        };
        solve(&solution, soda, None)
    }

    /// CRC handbook, from memory: 10.3 g in 100 g of water at 25 C, 1.226 mol/kg; 12.7 at 40, 14.5 at 50. A few per cent
    /// of the bicarbonate are carbonate and carbon dioxide, for which a little more dissolves.
    #[test]
    fn water_dissolves_a_tenth_of_its_weight_of_soda() {
        assert!((soluble(25.0) - 1.226).abs() < 1e-3);
        for (celsius, grams) in [(40.0, 12.7), (50.0, 14.5)] {
            let found = soluble(celsius) * 8.4007;
            assert!((found - grams).abs() < 0.4, "{celsius}: {found}");
        }
        assert_eq!(soda_water(1.0).1, 0.0);
        let (answer, solid) = soda_water(10.0);
        assert!((10.0 - solid - 1.226).abs() < 0.06, "{solid}");
        // Soda water is near pH 8 however much lies in it.
        assert!((7.7..8.6).contains(&answer.ph), "{answer:?}");
        assert!((soda_water(20.0).0.ph - answer.ph).abs() < 1e-6);
    }
}
