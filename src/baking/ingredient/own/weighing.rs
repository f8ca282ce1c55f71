//! A level measure, weighed a few times over.

use super::figure::figure;
use super::{HEAVIEST, ONE_WEIGHING, OwnField, OwnTrouble, kept, own};
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{Filling, FillingWeight, Form, Region, SpoonOrCup};
use crate::baking::quantity::{Mass, show};
use serde::Serialize;

/// Student's t that 95 % lie below, for 1 to 4 degrees of freedom, so that nine in ten lie between minus and plus it:
/// NIST/SEMATECH e-Handbook of statistical methods, table 1.3.6.7.2.
const STUDENT_95: [f64; 4] = [6.314, 2.920, 2.353, 2.132];

/// Half of what a kitchen scale that shows whole grams can tell apart.
const HALF_A_GRAM: f64 = 0.5;

/// What lies outside this is no food in a measure, g/mL: puffed rice is 0.06, syrup 1.45.
const DENSITIES: std::ops::RangeInclusive<f64> = 0.02..=2.0;

/// One measure, and its weights as typed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Weighing {
    /// The measure.
    pub measure: SpoonOrCup,
    /// The country whose size it has.
    pub region: Region,
    /// The state that it was in.
    pub form: Option<Form>,
    /// How the measure was filled.
    pub filling: Option<Filling>,
    /// Grams, each filling of the measure by itself; five at most count.
    pub figures: Vec<String>,
}

impl Default for Weighing {
    fn default() -> Self {
        Self {
            measure: SpoonOrCup::Cup,
            region: Region::default(),
            form: None,
            filling: None,
            figures: vec![String::new(); 3],
        }
    }
}

impl Weighing {
    /// The figures that can be used; what is wrong with the others is added to the troubles.
    pub(super) fn grams(&self, place: usize, troubles: &mut Vec<OwnTrouble>) -> Vec<f64> {
        let size = self.measure.volume_in(self.region).to_millilitres();
        let mut good = Vec::new();
        for (at, typed) in self.figures.iter().enumerate().take(5) {
            let sentence = match figure(typed) {
                Ok(None) => continue,
                Ok(Some(grams)) if grams <= HEAVIEST && DENSITIES.contains(&(grams / size)) => {
                    good.push(grams);
                    continue;
                }
                Ok(Some(_)) => format!(
                    "\"{}\" is not what {} mL of a food weigh: check the scale and the measure.",
                    typed.trim(),
                    show::fixed(size, 0)
                ),
                Err(sentence) => sentence,
            };
            troubles.push(OwnTrouble {
                field: OwnField::Weighing(place, at),
                sentence,
            });
        }
        good
    }

    /// The mean of the weighings and the range of one more, for the measure that was weighed, and how that was got;
    /// `None` where no figure can be used.
    pub fn result(&self) -> Option<(Estimate<Mass>, String)> {
        let grams = self.grams(0, &mut Vec::new());
        let many = grams.len();
        let count = many as f64;
        let mean = grams.iter().sum::<f64>() / count;
        let Some(student) = many.checked_sub(2).and_then(|at| STUDENT_95.get(at)) else {
            let one = Mass::grams(*grams.first()?);
            return Some((
                Estimate::apart(one, &[(ONE_WEIGHING, ONE_WEIGHING)]),
                "weighed once, so 8 % either side is assumed".into(),
            ));
        };
        let squares: f64 = grams.iter().map(|one| (one - mean).powi(2)).sum();
        let deviation = (squares / (count - 1.0)).sqrt();
        let half = (student * deviation * (1.0 + 1.0 / count).sqrt()).max(HALF_A_GRAM);
        let range = Estimate::between(
            Mass::grams((mean - half).max(0.0)),
            Mass::grams(mean),
            Mass::grams(mean + half),
        );
        Some((
            range,
            format!("weighed {many} times; nine in ten more would fall into the range"),
        ))
    }

    /// What the weighings come to, in a sentence; empty where none can be used.
    pub fn sentence(&self) -> String {
        let Some((weight, how)) = self.result() else {
            return String::new();
        };
        let range =
            show::mass_range(&weight).map_or(String::new(), |range| format!(", range {range}"));
        format!("Mean {}{range}: {how}.", show::mass(weight.mean))
    }

    /// The row that it makes, for the US measure, as the tables have it.
    pub(super) fn filling(&self) -> Option<FillingWeight> {
        let (weight, how) = self.result()?;
        let scale = self.measure.volume() / self.measure.volume_in(self.region);
        let how = if scale == 1.0 {
            how
        } else {
            format!(
                "{how}; from {} of a {} of {} mL",
                show::mass(weight.mean),
                self.measure.words(),
                show::fixed(self.measure.volume_in(self.region).to_millilitres(), 0)
            )
        };
        Some(FillingWeight {
            measure: self.measure,
            form: self.form,
            filling: self.filling,
            weight: weight.times(scale),
            cited: own(String::new()),
            note: kept(how),
        })
    }
}
