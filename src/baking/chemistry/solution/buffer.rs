//! What buffers in a food beside its known acids, as lines.

use std::ops::Add;

/// The corners of the lines, pH.
const CORNERS: (f64, f64) = (6.0, 7.5);

/// Base that buffers take up on their way from their own pH, as three straight lines. Two are added as one is, since
/// all have the same corners.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Buffer {
    /// meq per unit of pH: below 6, from 6 to 7.5, above.
    pub slopes: [f64; 3],
    /// What the lines come to at each buffer's own pH, meq from the first corner.
    pub given: f64,
}

impl Buffer {
    /// A buffer that neither takes nor gives at its own pH, with its slopes in meq per unit of pH: below 6, from 6 to
    /// 7.5, above.
    pub fn around(own_ph: f64, slopes: [f64; 3]) -> Self {
        let mut buffer = Self { slopes, given: 0.0 };
        buffer.given = buffer.taken_up(own_ph).0;
        buffer
    }

    /// Base taken up at a pH, meq, and the slope there, meq per unit of pH.
    pub fn taken_up(&self, ph: f64) -> (f64, f64) {
        let [below, between, above] = self.slopes;
        let (low, high) = CORNERS;
        // Measured from the first corner; where lines start is of no account, since only differences count.
        let sum = below * (ph.min(low) - low)
            + between * (ph.clamp(low, high) - low)
            + above * (ph.max(high) - high);
        let slope = if ph < low {
            below
        } else if ph < high {
            between
        } else {
            above
        };
        (sum - self.given, slope)
    }

    /// So many times as much of it.
    pub fn times(&self, factor: f64) -> Self {
        Self {
            slopes: self.slopes.map(|slope| slope * factor),
            given: self.given * factor,
        }
    }
}

impl Add for Buffer {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            slopes: std::array::from_fn(|band| self.slopes[band] + other.slopes[band]),
            given: self.given + other.given,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand from pH 5.5 to 8 with slopes 2, 3 and 5: 2 x 0.5 + 3 x 1.5 + 5 x 0.5 = 8.
    #[test]
    fn lines_add_up_over_their_corners() {
        let buffer = Buffer::around(5.5, [2.0, 3.0, 5.0]);
        assert!(buffer.taken_up(5.5).0.abs() < 1e-12);
        assert!((buffer.taken_up(8.0).0 - 8.0).abs() < 1e-12);
        assert_eq!(buffer.taken_up(7.0).1, 3.0);
    }

    /// Two buffers around pH 5 and 8 of slope 1 meet nothing half way: +1.5 and -1.5.
    #[test]
    fn two_buffers_are_one() {
        let both = Buffer::around(5.0, [1.0; 3]) + Buffer::around(8.0, [1.0; 3]);
        assert!(both.taken_up(6.5).0.abs() < 1e-12);
        assert_eq!(both.taken_up(6.5).1, 2.0);
    }
}
