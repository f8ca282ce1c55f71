//! The batter's sugars by kind.

use crate::baking::estimate::Estimate;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::SugarKind;
use crate::baking::quantity::Mass;

/// Sugars and polyols of a batter.
#[derive(Clone, Debug, PartialEq)]
pub struct SugarsByKind {
    /// Each kind that is there.
    pub kinds: Vec<(SugarKind, Estimate<Mass>)>,
    /// Sugars of which no source gives the kind.
    pub unknown_kind: Estimate<Mass>,
    /// The lines that bring them.
    pub unknown_kind_lines: Vec<usize>,
    /// The lines of which not even the total is known.
    pub unknown: Vec<usize>,
}

impl SugarsByKind {
    /// All of them, the mean.
    pub fn all(&self) -> Mass {
        let kinds: Mass = self.kinds.iter().map(|kind| kind.1.mean).sum();
        kinds + self.unknown_kind.mean
    }
}

/// So many times as much, where the factor too is a low, a typical and a high figure.
pub(super) fn weighed_by(grams: &Estimate<Mass>, [low, typical, high]: [f64; 3]) -> Estimate<Mass> {
    let mean = grams.mean.to_grams().max(1e-12);
    let weighing = (
        (grams.mean - grams.low).to_grams() / mean,
        (grams.high - grams.mean).to_grams() / mean,
    );
    let factor = ((typical - low) / typical, (high - typical) / typical);
    Estimate::apart(grams.mean * typical, &[weighing, factor])
}

/// The sugars of the batter lines that are chosen.
pub fn sugars_by_kind(formula: &Formula, chosen: impl Fn(&Weighed) -> bool) -> SugarsByKind {
    let lines: Vec<&Weighed> = formula.batter().filter(|line| chosen(line)).collect();
    let kinds = SugarKind::ALL.into_iter().filter_map(|kind| {
        let parts: Vec<_> = lines
            .iter()
            .map(|line| line.grams.times(line.ingredient.sugar(kind).to_fraction()))
            .collect();
        let sum = Estimate::sum(&parts);
        (sum.mean > Mass::ZERO).then_some((kind, sum))
    });
    let kinds = kinds.collect();
    let (mut parts, mut unknown_kind_lines, mut unknown) = (Vec::new(), Vec::new(), Vec::new());
    for line in lines {
        match line.ingredient.sugars_of_unknown_kind() {
            Some(share) => {
                let grams = line.grams.times(share.to_fraction());
                // Less is what a split total is out by.
                if grams.mean > line.grams.mean * 0.01 {
                    unknown_kind_lines.push(line.line);
                }
                parts.push(grams);
            }
            None => unknown.push(line.line),
        }
    }
    SugarsByKind {
        kinds,
        unknown_kind: Estimate::sum(&parts),
        unknown_kind_lines,
        unknown,
    }
}

/// The water that is free to dissolve them: not that of fruit in pieces.
pub(super) fn free_water(formula: &Formula) -> Estimate<Mass> {
    let lines = formula.batter().filter(|line| !line.in_pieces);
    let parts: Vec<_> = lines
        .filter_map(|line| {
            let share = line.ingredient.composition.water?;
            Some(line.grams.times(share.to_fraction()))
        })
        .collect();
    Estimate::sum(&parts)
}
