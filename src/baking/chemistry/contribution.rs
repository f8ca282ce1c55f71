//! What one line brings to the bowl: a curve, a base, and how sure each is.

use super::acid::Protons;
use super::course::Batter;
use super::leavening::work;
use super::release::{Doing, Work};
use super::settling::Settling;
use super::solution::Acid;
use super::{Curve, bicarbonate, leavening_uptake_deviation};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Bicarbonate, Ingredient};
use crate::baking::quantity::{Equivalents, Mass};

/// An ingredient whose acidity no source gives may take this much base to pH 7, meq per 100 g, one
/// standard deviation: flour takes 1.4, ripe banana 6. A guess, shown as one.
const UNKNOWN_ACIDITY: f64 = 3.0;

/// The part of its acid that fruit in pieces gives to the batter around it, and the standard deviation of that
/// part against itself: juice leaves at the cut and as skins burst (common practice, no source).
const FROM_PIECES: f64 = 0.35;
const FROM_PIECES_DEVIATION: f64 = 0.5;

/// Sodium, g/mol.
const SODIUM: f64 = 22.990;

/// Sodium of a line, mol; none where it is not known, since ions that take no part move the pH by hundredths.
fn sodium(line: &Weighed) -> f64 {
    let share = line.ingredient.composition.sodium;
    share.map_or(0.0, |share| share.to_fraction()) * line.grams.mean.to_grams() / SODIUM
}

/// Base that so much of an ingredient takes up to a pH, its leavening acids at work, less the bicarbonate that it
/// brings: linear in its grams. Fruit in pieces gives a part of its acid only.
pub fn base_missing(
    ingredient: &Ingredient,
    in_pieces: bool,
    grams: Mass,
    at: &Protons,
) -> Equivalents {
    let met = if in_pieces { FROM_PIECES } else { 1.0 };
    let own = ingredient.acidity.map_or_else(Curve::default, |acidity| {
        Curve::of_acidity(acidity, grams) * met
    });
    let Some(leavening) = ingredient.leavening else {
        return Equivalents::milliequivalents(own.at_protons(at));
    };
    let works: Curve = work(leavening, grams).iter().map(Curve::of_work).sum();
    Equivalents::milliequivalents((own + works).at_protons(at) - bicarbonate(leavening, grams))
}

/// One line's part in the bowl.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Contribution {
    /// The line of the text.
    pub line: usize,
    /// Which of the line's ingredients, from 0.
    pub part: usize,
    /// Bicarbonate in its leavening: the base it brings, and the gas it can make.
    pub base: Equivalents,
    /// What the ingredient takes up, as far as it meets the batter.
    ingredient: Curve,
    /// What its leavening acids take up once they have done all their work.
    leavening: Curve,
    /// These acids, with when they work.
    works: Vec<Work>,
    /// What of them may settle otherwise than reckoned.
    pub settling: Settling,
    /// Whose its bicarbonate is.
    bicarbonate_of: Option<Bicarbonate>,
    /// Sodium chloride and the like, mol: ions that take no part.
    salt: f64,
    /// Relative standard deviation of the weight.
    weighing: f64,
    /// Relative standard deviation of what the ingredient takes up: its own, and how much of it meets the batter.
    uptake: f64,
    /// Standard deviation that comes from where the ingredient's own pH lies, meq.
    own_ph: f64,
    /// Standard deviation of its leavening acids, meq.
    acids: f64,
    /// Standard deviation of the guess for an unknown acidity, meq; zero where it is known.
    guess: f64,
    /// Anything with soda or leavening acid in it.
    leavener: bool,
}

impl Contribution {
    /// The part of a weighed line.
    pub fn of(line: &Weighed) -> Self {
        let grams = line.grams.mean;
        let acidity = line.ingredient.acidity;
        let leavening = line.ingredient.leavening;
        let (met, pieces) = if line.in_pieces {
            (FROM_PIECES, FROM_PIECES_DEVIATION)
        } else {
            (1.0, 0.0)
        };
        let ingredient = acidity.map_or_else(Curve::default, |acidity| {
            Curve::of_acidity(acidity, grams) * met
        });
        let own_ph = acidity.map_or(0.0, |acidity| {
            let (low, own, high) = acidity.ph;
            let carbonate = Curve::carbonate_slope(acidity, grams) * met;
            (ingredient.slope(own) + carbonate) * (high - low) / 3.29
        });
        let known = acidity.is_some() || leavening.is_some();
        let works = leavening.map_or_else(Vec::new, |leavening| work(leavening, grams));
        Self {
            line: line.line,
            part: line.part,
            base: Equivalents::milliequivalents(
                leavening.map_or(0.0, |leavening| bicarbonate(leavening, grams)),
            ),
            ingredient,
            leavening: works.iter().map(Curve::of_work).sum(),
            settling: leavening.map_or_else(Settling::default, |leavening| {
                Settling::of(leavening, grams, &works)
            }),
            works,
            bicarbonate_of: leavening
                .and_then(|leavening| leavening.bicarbonate)
                .map(|(kind, _)| kind),
            salt: if leavening.is_some() {
                0.0
            } else {
                sodium(line)
            },
            weighing: line.grams.relative_deviation(),
            uptake: acidity.map_or(0.0, |acidity| acidity.deviation.hypot(pieces)),
            own_ph,
            acids: leavening.map_or(0.0, |leavening| {
                leavening_uptake_deviation(leavening, grams).to_milliequivalents()
            }),
            guess: if known {
                0.0
            } else {
                grams.to_grams() / 100.0 * UNKNOWN_ACIDITY
            },
            leavener: leavening.is_some(),
        }
    }

    /// Puts it into a batter.
    pub fn put_into(&self, batter: &mut Batter) {
        batter.solution.add(&self.ingredient.dissolved());
        batter.solution.salt += self.salt;
        let bicarbonate = self.base.to_milliequivalents() / 1000.0;
        batter.solution.strong += bicarbonate;
        batter.bicarbonate += bicarbonate;
        batter.ammonium += self.ammonium().to_milliequivalents() / 1000.0;
        if self.bicarbonate_of == Some(Bicarbonate::Sodium) {
            batter.soda += bicarbonate;
        }
        batter.acids.extend_from_slice(&self.works);
    }

    /// Base that its pyrophosphate would take by the trade's value and its constants do not give at pH 7, meq: half
    /// of two. Which of them a crumb follows is not known.
    pub fn pyrophosphate(&self) -> f64 {
        let moles = self.works.iter().map(|work| match work.doing {
            Doing::Weak(Acid::Pyrophosphoric, moles, _) => moles,
            _ => 0.0,
        });
        moles.sum::<f64>() * 1000.0
    }

    /// All that it takes up.
    pub fn curve(&self) -> Curve {
        self.ingredient + self.leavening
    }

    /// Base that the ingredient takes up to a pH, leavening left aside.
    pub fn acid(&self, at: &Protons) -> Estimate<Equivalents> {
        let mean = self.ingredient.at_protons(at);
        Estimate::normal(mean, self.ingredient_variance(mean).sqrt())
    }

    /// Base that is left at a pH once its own leavening acid has taken its part; negative for cream of tartar.
    pub fn free_soda(&self, at: &Protons) -> Estimate<Equivalents> {
        let free = self.free(at);
        Estimate::normal(free, self.leavening_variance(free).sqrt())
    }

    /// The standard deviation of all that it takes up less all that it brings, meq.
    pub fn deviation(&self, at: &Protons) -> f64 {
        let ingredient = self.ingredient_variance(self.ingredient.at_protons(at));
        let leavening = self.leavening_variance(self.free(at));
        (ingredient + leavening + self.guess * self.guess).sqrt()
    }

    /// The standard deviation of its bicarbonate by weighing, meq.
    pub fn base_deviation(&self) -> f64 {
        self.base.to_milliequivalents() * self.weighing
    }

    /// The part of its bicarbonate that is ammonium's: all of it or none.
    pub fn ammonium(&self) -> Equivalents {
        match self.bicarbonate_of {
            Some(Bicarbonate::Ammonium) => self.base,
            _ => Equivalents::ZERO,
        }
    }

    /// Anything with soda or leavening acid in it.
    pub fn is_leavener(&self) -> bool {
        self.leavener
    }

    /// True where no source gives its acidity.
    pub fn is_unknown(&self) -> bool {
        self.guess > 0.0
    }

    fn free(&self, at: &Protons) -> f64 {
        self.base.to_milliequivalents() - self.leavening.at_protons(at)
    }

    fn ingredient_variance(&self, taken: f64) -> f64 {
        let relative = self.weighing * self.weighing + self.uptake * self.uptake;
        taken * taken * relative + self.own_ph * self.own_ph
    }

    fn leavening_variance(&self, free: f64) -> f64 {
        let weighed = free * self.weighing;
        weighed * weighed + self.acids * self.acids
    }
}
