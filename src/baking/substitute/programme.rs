//! The least change of some amounts that keeps some sums of them: a linear programme with absolute values.
//!
//! Knows nothing of baking. Looked for are the amounts x, each between its least and its most, that make the least of
//!
//! sum over unknowns of price |x - start| + sum over rows of price max(0, |sum of per_unit x - target| - free),
//!
//! while every row keeps within its low and high. Where no amounts do, these limits give way at a price far above all
//! others, each by as little as can be, weighed by the row's size; the sum of absolute values then leaves a clash in
//! few rows rather than a little of it in many.
//!
//! The answer is one and the same both ways. Unknowns that no row and no price tells apart move together, in
//! proportion to what was there. What else costs the same is told apart by raising each price by up to a fifty-thousandth
//! of itself, by a figure that depends on its place alone: a change and its mirror image cost the same, so the answer to
//! the mirrored question is the mirrored answer.

use super::scaled::Scaled;
use super::shares::together;

/// An amount that may move.
#[derive(Clone, Debug, PartialEq)]
pub struct Unknown {
    /// What it is before, in any unit; it may lie outside the two that follow.
    pub start: f64,
    /// The least it may become.
    pub least: f64,
    /// The most it may become.
    pub most: f64,
    /// The cost of a unit of change, either way; not below 0.
    pub price: f64,
}

/// What is to be kept: a sum over the unknowns.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What a unit of each unknown brings: as many as there are unknowns.
    pub per_unit: Vec<f64>,
    /// What the sum should come to.
    pub target: f64,
    /// How far from the target costs nothing; not below 0.
    pub free: f64,
    /// The cost of a unit beyond that; not below 0.
    pub price: f64,
    /// The limit below that holds; infinite where there is none.
    pub low: f64,
    /// The limit above that holds; infinite where there is none.
    pub high: f64,
}

/// What may move and what is to be kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Programme {
    /// The amounts.
    pub unknowns: Vec<Unknown>,
    /// The sums over them.
    pub rows: Vec<Row>,
}

/// The best amounts.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// One for each unknown, within its least and its most.
    pub amounts: Vec<f64>,
    /// What they cost, without what limits were missed by.
    pub cost: f64,
    /// Rows whose limit cannot be held, with by how much: above 0 over the high one, below 0 under the low one. Empty
    /// where all hold.
    pub missed: Vec<(usize, f64)>,
}

/// The largest figure taken: beyond it sums lose what small amounts bring.
const LARGEST: f64 = 1e12;
/// Per size of a row: a limit missed by less is held.
const HELD: f64 = 1e-7;
/// The least size, of an unknown against the average and of anything at all, so that nothing is divided by next to 0.
const LITTLE: f64 = 1e-3;
const LEAST: f64 = 1e-9;

/// The best amounts for a programme.
///
/// `None` only for bad input: a figure that is not a number, is above 1e12 in size or, other than a row's limits, is
/// infinite; a least above its most, a low limit above its high one; a price or a free width below 0; a row that has
/// not one entry for each unknown.
pub fn solve(programme: &Programme) -> Option<Solved> {
    if !programme.is_sound() {
        return None;
    }
    let lines = together(programme);
    let sizes = programme.row_sizes();
    let changes = Scaled::of(programme, &lines, &sizes).least_cost()?;
    let mut amounts = vec![0.0; programme.unknowns.len()];
    for (line, change) in lines.iter().zip(changes) {
        line.share(change, &programme.unknowns, &mut amounts);
    }
    Some(Solved {
        cost: programme.cost(&amounts),
        missed: programme.missed(&amounts, &sizes),
        amounts,
    })
}

impl Programme {
    fn is_sound(&self) -> bool {
        self.unknowns.iter().all(Unknown::is_sound)
            && (self.rows.iter())
                .all(|row| row.per_unit.len() == self.unknowns.len() && row.is_sound())
    }

    fn cost(&self, amounts: &[f64]) -> f64 {
        let moved = self.unknowns.iter().zip(amounts);
        let moved = moved.map(|(unknown, amount)| unknown.price * (amount - unknown.start).abs());
        let lost = self
            .rows
            .iter()
            .map(|row| row.price * ((row.sum(amounts) - row.target).abs() - row.free).max(0.0));
        moved.chain(lost).sum()
    }

    fn missed(&self, amounts: &[f64], sizes: &[f64]) -> Vec<(usize, f64)> {
        let rows = self.rows.iter().zip(sizes).enumerate();
        rows.filter_map(|(index, (row, size))| {
            let sum = row.sum(amounts);
            let by = sum - sum.clamp(row.low, row.high);
            (by.abs() > HELD * size).then_some((index, by))
        })
        .collect()
    }

    /// How large a change of an unknown is usual: what is there of it, and no less than a thousandth of the average.
    pub(super) fn size(&self, place: usize) -> f64 {
        let there = self.unknowns.iter().map(|unknown| unknown.start.abs());
        let average = there.sum::<f64>() / self.unknowns.len() as f64;
        let size = self.unknowns[place].start.abs();
        size.max(LITTLE * average).max(LEAST)
    }

    /// The most that a usual change of one unknown changes each row.
    fn row_sizes(&self) -> Vec<f64> {
        let most = |row: &Row| {
            let brought = row.per_unit.iter().enumerate();
            brought
                .map(|(place, one)| one.abs() * self.size(place))
                .fold(LEAST, f64::max)
        };
        self.rows.iter().map(most).collect()
    }
}

fn is_plain(figure: f64) -> bool {
    figure.abs() <= LARGEST
}

fn is_cost(figure: f64) -> bool {
    is_plain(figure) && figure >= 0.0
}

impl Unknown {
    fn is_sound(&self) -> bool {
        let bounds = [self.start, self.least, self.most];
        bounds.into_iter().all(is_plain) && self.least <= self.most && is_cost(self.price)
    }

    /// The amount nearest to `amount` that it may become.
    pub(super) fn within(&self, amount: f64) -> f64 {
        amount.clamp(self.least, self.most)
    }

    /// The amount nearest to what it was; any other costs what this one costs and the way from here besides.
    pub(super) fn held(&self) -> f64 {
        self.within(self.start)
    }
}

impl Row {
    fn is_sound(&self) -> bool {
        let limit = |figure: f64, none: f64| is_plain(figure) || figure == none;
        self.per_unit.iter().all(|one| is_plain(*one))
            && is_plain(self.target)
            && [self.free, self.price].into_iter().all(is_cost)
            && limit(self.low, f64::NEG_INFINITY)
            && limit(self.high, f64::INFINITY)
            && self.low <= self.high
    }

    /// What the amounts come to.
    pub(super) fn sum(&self, amounts: &[f64]) -> f64 {
        let brought = self.per_unit.iter().zip(amounts);
        brought.map(|(one, amount)| one * amount).sum()
    }
}
