//! A programme whose figures are all near 1, and its least cost by the simplex method (Dantzig 1963).

use super::programme::{Programme, Row};
use super::shares::Together;
use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};

/// Prices are told apart by at most this part of themselves: far above the solver's rounding of 1e-10, far below any
/// difference of price that is meant.
const APART: f64 = 2e-5;
/// What a change that costs nothing counts for, against the highest price: it is made only where it is of use.
const IDLE: f64 = 1e-6;
/// What a limit gives way for, against the highest price.
const FAR_ABOVE: f64 = 1e6;
/// What an unknown brings to a row is rounding below this part of the row's size.
const ROUNDING: f64 = 1e-12;

/// How far the members of a line may go down and up, in sizes, what a size costs, and what a size is.
struct Line {
    down: f64,
    up: f64,
    price: f64,
    size: f64,
}

/// A row in its own sizes, its target at 0.
struct Band {
    /// What a size of each line brings.
    per_size: Vec<f64>,
    /// Where the row stands while nothing moves.
    at: f64,
    free: f64,
    price: f64,
    low: f64,
    high: f64,
}

pub struct Scaled {
    lines: Vec<Line>,
    bands: Vec<Band>,
}

impl Scaled {
    /// `sizes` are those of the rows.
    pub fn of(programme: &Programme, lines: &[Together], sizes: &[f64]) -> Self {
        let held: Vec<f64> = (programme.unknowns.iter()).map(|it| it.held()).collect();
        let mut scaled = Self {
            lines: lines.iter().map(|it| line(programme, it)).collect(),
            bands: Vec::new(),
        };
        for (row, size) in programme.rows.iter().zip(sizes) {
            let band = band(row, *size, &held, lines, &scaled.lines);
            scaled.bands.push(band);
        }
        scaled.set_prices(lines);
        scaled
    }

    /// Prices against the highest, each moved apart from the others by its place.
    fn set_prices(&mut self, lines: &[Together]) {
        let prices =
            (self.lines.iter().map(|it| it.price)).chain(self.bands.iter().map(|it| it.price));
        let highest = prices.fold(0.0, f64::max);
        let against = |price: f64| if highest > 0.0 { price / highest } else { 0.0 };
        for (line, it) in self.lines.iter_mut().zip(lines) {
            line.price = against(line.price).max(IDLE) * apart(2 * it.first());
        }
        for (index, band) in self.bands.iter_mut().enumerate() {
            band.price = against(band.price) * apart(2 * index + 1);
        }
    }

    /// The change of each line that costs least, in units. Limits give way only where they cannot all hold. `None`
    /// where the solver fails, which nothing that [`super::programme::solve`] takes has brought about.
    pub fn least_cost(&self) -> Option<Vec<f64>> {
        self.solved(false).or_else(|| self.solved(true))
    }

    fn solved(&self, limits_give_way: bool) -> Option<Vec<f64>> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let moves: Vec<[Variable; 2]> = (self.lines.iter())
            .map(|line| [line.up, line.down].map(|most| problem.add_var(line.price, (0.0, most))))
            .collect();
        for (index, band) in self.bands.iter().enumerate() {
            let mut terms = Vec::new();
            for (brought, [up, down]) in band.per_size.iter().zip(&moves) {
                if brought.abs() > ROUNDING {
                    terms.extend([(*up, *brought), (*down, -brought)]);
                }
            }
            band.add_pieces(&mut problem, &mut terms);
            if limits_give_way {
                let price = FAR_ABOVE + apart(2 * index + 1);
                terms.push((problem.add_var(price, (0.0, f64::INFINITY)), -1.0));
                terms.push((problem.add_var(price, (0.0, f64::INFINITY)), 1.0));
            }
            problem.add_constraint(terms, ComparisonOp::Eq, -band.at);
        }
        let solution = problem.solve().ok()?;
        let lines = self.lines.iter().zip(moves);
        Some(
            lines
                .map(|(line, [up, down])| (solution[up] - solution[down]) * line.size)
                .collect(),
        )
    }
}

impl Band {
    /// Where a row may stand: inside the free width for nothing, over and under it for its price, as far as its limits
    /// go.
    fn add_pieces(&self, problem: &mut Problem, terms: &mut Vec<(Variable, f64)>) {
        let [low, high] = [-self.free, self.free].map(|end| end.clamp(self.low, self.high));
        terms.push((problem.add_var(0.0, (low, high)), -1.0));
        terms.push((problem.add_var(self.price, (0.0, self.high - high)), -1.0));
        terms.push((problem.add_var(self.price, (0.0, low - self.low)), 1.0));
    }
}

fn line(programme: &Programme, line: &Together) -> Line {
    let unknown = |place: usize| &programme.unknowns[place];
    let size = line.sum(|place| programme.size(place));
    Line {
        down: line.sum(|place| unknown(place).held() - unknown(place).least) / size,
        up: line.sum(|place| unknown(place).most - unknown(place).held()) / size,
        price: unknown(line.first()).price * size,
        size,
    }
}

fn band(row: &Row, size: f64, held: &[f64], lines: &[Together], scaled: &[Line]) -> Band {
    let lines = lines.iter().zip(scaled);
    Band {
        per_size: lines
            .map(|(it, line)| row.per_unit[it.first()] * line.size / size)
            .collect(),
        at: (row.sum(held) - row.target) / size,
        free: row.free / size,
        price: row.price * size,
        low: (row.low - row.target) / size,
        high: (row.high - row.target) / size,
    }
}

/// Between 1 and 1 + [`APART`], another for each place: no sum of few of them is a sum of few others. The mixing of
/// bits is SplitMix64's (Steele and others 2014).
fn apart(place: usize) -> f64 {
    let mut bits = (place as u64 + 1).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    1.0 + APART * (bits ^ (bits >> 31)) as f64 / u64::MAX as f64
}
