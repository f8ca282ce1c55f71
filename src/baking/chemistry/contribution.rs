//! What one line brings to the bowl: a curve, a base, and how sure each is.

use super::{Curve, bicarbonate, leavening_uptake_deviation};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Weighed;
use crate::baking::quantity::Equivalents;

/// An ingredient whose acidity no source gives may take this much base to pH 7, meq per 100 g, one
/// standard deviation: flour takes 1.4, ripe banana 6. A guess, shown as one.
const UNKNOWN_ACIDITY: f64 = 3.0;

/// The part of its acid that fruit in pieces gives to the batter around it, and the standard deviation of that
/// part against itself: juice leaves at the cut and as skins burst (common practice, no source).
const FROM_PIECES: f64 = 0.35;
const FROM_PIECES_DEVIATION: f64 = 0.5;

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
    /// What its leavening acids take up.
    leavening: Curve,
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
    kind: Kind,
}

/// What a line is, as far as leavening goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Plain,
    SodaAlone,
    WithAcid,
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
            ingredient.slope(own) * (high - low) / 3.29
        });
        let known = acidity.is_some() || leavening.is_some();
        Self {
            line: line.line,
            part: line.part,
            base: Equivalents::milliequivalents(
                leavening.map_or(0.0, |leavening| bicarbonate(leavening, grams)),
            ),
            ingredient,
            leavening: leavening.map_or_else(Curve::default, |leavening| {
                Curve::of_leavening(leavening, grams)
            }),
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
            kind: match leavening {
                None => Kind::Plain,
                Some(leavening) if leavening.neutralised.1 == 0.0 => Kind::SodaAlone,
                Some(_) => Kind::WithAcid,
            },
        }
    }

    /// All that it takes up.
    pub fn curve(&self) -> Curve {
        self.ingredient + self.leavening
    }

    /// Base that the ingredient takes up to a pH, leavening left aside.
    pub fn acid(&self, ph: f64) -> Estimate<Equivalents> {
        let mean = self.ingredient.at(ph).to_milliequivalents();
        Estimate::normal(mean, self.ingredient_deviation(mean))
    }

    /// Base that is left at a pH once its own leavening acid has taken its part; negative for cream of tartar.
    pub fn free_soda(&self, ph: f64) -> Estimate<Equivalents> {
        let free = (self.base - self.leavening.at(ph)).to_milliequivalents();
        Estimate::normal(free, self.leavening_deviation(free))
    }

    /// The standard deviation of all that it takes up less all that it brings, meq.
    pub fn deviation(&self, ph: f64) -> f64 {
        let taken = self.ingredient.at(ph).to_milliequivalents();
        let free = (self.base - self.leavening.at(ph)).to_milliequivalents();
        self.ingredient_deviation(taken)
            .hypot(self.leavening_deviation(free))
            .hypot(self.guess)
    }

    /// The standard deviation of its bicarbonate by weighing, meq.
    pub fn base_deviation(&self) -> f64 {
        self.base.to_milliequivalents() * self.weighing
    }

    /// Soda without an acid of its own.
    pub fn is_soda_alone(&self) -> bool {
        self.kind == Kind::SodaAlone
    }

    /// Anything with soda or leavening acid in it.
    pub fn is_leavener(&self) -> bool {
        self.kind != Kind::Plain
    }

    /// True where no source gives its acidity.
    pub fn is_unknown(&self) -> bool {
        self.guess > 0.0
    }

    fn ingredient_deviation(&self, taken: f64) -> f64 {
        (taken * self.weighing.hypot(self.uptake)).hypot(self.own_ph)
    }

    fn leavening_deviation(&self, free: f64) -> f64 {
        (free * self.weighing).hypot(self.acids)
    }
}
