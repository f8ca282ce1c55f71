//! Steps in time: a second-order Runge-Kutta-Chebyshev method, explicit, and stable over steps that grow with the
//! square of its stages. It keeps sums exactly, so that heat and water balance to rounding.
//!
//! Sommeijer, Shampine and Verwer 1998, J Comput Appl Math 88:315.

/// The damping of the published method.
const DAMPING: f64 = 2.0 / 13.0;
/// The most stages of a step.
const MOST: usize = 24;

/// How far a step of so many stages may reach, as a multiple of one over the fastest rate.
fn reach(stages: usize) -> f64 {
    let square = (stages * stages) as f64;
    2.0 / 3.0 * (square - 1.0) * (1.0 - 2.0 / 15.0 * DAMPING)
}

/// The longest step, s, that the most stages bear at a fastest rate, 1/s.
pub fn longest(rate: f64) -> f64 {
    reach(MOST) / rate
}

/// Room for the stages of a step, kept between steps.
#[derive(Clone, Debug, Default)]
pub struct Stages {
    start: Vec<f64>,
    slope: Vec<f64>,
    before: Vec<f64>,
    rate: Vec<f64>,
}

impl Stages {
    /// Takes one step, s, of `state` under `slope_of`, which writes the state's change in a second; `fastest` bounds
    /// its rates, 1/s.
    pub fn step(
        &mut self,
        state: &mut Vec<f64>,
        seconds: f64,
        fastest: f64,
        mut slope_of: impl FnMut(&[f64], &mut [f64]),
    ) {
        let stages = (2..=MOST)
            .find(|stages| reach(*stages) >= seconds * fastest)
            .unwrap_or(MOST);
        let size = state.len();
        for room in [&mut self.slope, &mut self.rate] {
            room.resize(size, 0.0);
        }
        self.start.clone_from(state);
        slope_of(&self.start, &mut self.slope);

        let w0 = 1.0 + DAMPING / (stages * stages) as f64;
        let mut chebyshev = Chebyshev::at(w0);
        let w1 = {
            let (first, second) = chebyshev.clone().of_degree(stages);
            first / second
        };
        let b2 = 1.0 / (4.0 * w0 * w0);
        let (mut b_before, mut b_last) = (b2, b2);
        let mut a_last = 1.0 - b_last * w0;
        self.before.clone_from(state);
        let first = b2 * w1 * seconds;
        for (value, slope) in state.iter_mut().zip(&self.slope) {
            *value += first * slope;
        }
        chebyshev.next();
        for _ in 2..=stages {
            slope_of(state, &mut self.rate);
            chebyshev.next();
            let b = chebyshev.second / (chebyshev.first * chebyshev.first);
            let mu = 2.0 * b * w0 / b_last;
            let nu = -b / b_before;
            let by_rate = 2.0 * b * w1 / b_last * seconds;
            let by_slope = -a_last * by_rate;
            let by_start = 1.0 - mu - nu;
            for (((value, before), (start, slope)), rate) in state
                .iter_mut()
                .zip(&mut self.before)
                .zip(self.start.iter().zip(&self.slope))
                .zip(&self.rate)
            {
                let next = by_start * start
                    + mu * *value
                    + nu * *before
                    + by_rate * rate
                    + by_slope * slope;
                *before = std::mem::replace(value, next);
            }
            a_last = 1.0 - b * chebyshev.value;
            (b_before, b_last) = (b_last, b);
        }
    }
}

/// A Chebyshev polynomial of the first kind at a point, with its first and second derivative there.
#[derive(Clone, Debug)]
struct Chebyshev {
    at: f64,
    value: f64,
    first: f64,
    second: f64,
    before: [f64; 3],
}

impl Chebyshev {
    /// The one of degree 0.
    fn at(at: f64) -> Self {
        Self {
            at,
            value: 1.0,
            first: 0.0,
            second: 0.0,
            before: [0.0; 3],
        }
    }

    /// Goes on to the next degree.
    fn next(&mut self) {
        // From degree 0 to 1 the recurrence goes by half.
        let twice = if self.first == 0.0 { 1.0 } else { 2.0 };
        let [value, first, second] = self.before;
        let next = [
            twice * self.at * self.value - value,
            twice * (self.value + self.at * self.first) - first,
            twice * (2.0 * self.first + self.at * self.second) - second,
        ];
        self.before = [self.value, self.first, self.second];
        [self.value, self.first, self.second] = next;
    }

    /// First and second derivative of the one of a degree.
    fn of_degree(mut self, degree: usize) -> (f64, f64) {
        for _ in 0..degree {
            self.next();
        }
        (self.first, self.second)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// y' = -y and y' = 1, and the order: half the step, a quarter of the error.
    #[test]
    fn second_order() {
        let end = |steps: usize| {
            let mut stages = Stages::default();
            let mut state = vec![1.0, 0.0];
            for _ in 0..steps {
                stages.step(&mut state, 2.0 / steps as f64, 40.0, |now, slope| {
                    slope[0] = -now[0];
                    slope[1] = 1.0;
                });
            }
            assert!((state[1] - 2.0).abs() < 1e-12);
            (state[0] - f64::exp(-2.0)).abs()
        };
        let ratio = end(20) / end(40);
        assert!((3.6..4.4).contains(&ratio), "{ratio}");
    }

    /// Stable at the end of its reach, for the fastest rate and for every slower one.
    #[test]
    fn stays_stable() {
        for stages in [2, 3, 5, 9, MOST] {
            for part in [1.0, 0.9, 0.7, 0.4, 0.1, 0.01] {
                let mut room = Stages::default();
                let mut state = vec![1.0];
                let rate = reach(stages) * part;
                for _ in 0..50 {
                    room.step(&mut state, 1.0, reach(stages), |now, slope| {
                        slope[0] = -rate * now[0];
                    });
                }
                assert!(state[0].abs() <= 1.0, "{stages} {part} {}", state[0]);
            }
        }
    }
}
