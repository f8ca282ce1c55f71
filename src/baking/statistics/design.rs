//! Designs in two factors, in coded units: -1 and 1 are a factor's low and high amount, 0 is half way.
//!
//! NIST e-Handbook 5.3.3.3 (full factorials), 5.3.3.6.1 (central composites) and 5.3.3.7 (centre points).

/// Coded amounts of two factors.
pub type Coded = [f64; 2];

/// How far out on its axis a central composite varies one factor alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axial {
    /// As far as its low and high amount: three amounts of each factor, and none beyond.
    FaceCentred,
    /// The fourth root of the number of corners, 1.414: what is known is as sure in every direction. Goes beyond the low
    /// and the high amount.
    Rotatable,
}

impl Axial {
    /// The distance, in coded units.
    pub fn distance(self) -> f64 {
        match self {
            Self::FaceCentred => 1.0,
            Self::Rotatable => 4_f64.powf(0.25),
        }
    }
}

/// Both factors at their low and high amount in every combination, in the standard order (the first changes fastest),
/// then so many times the centre.
pub fn factorial(centres: usize) -> Vec<Coded> {
    let corners = [[-1.0, -1.0], [1.0, -1.0], [-1.0, 1.0], [1.0, 1.0]];
    corners
        .into_iter()
        .chain(vec![[0.0, 0.0]; centres])
        .collect()
}

/// A factorial, each factor by itself below and above the centre, and so many times the centre: enough for every square
/// and the product.
pub fn central_composite(axial: Axial, centres: usize) -> Vec<Coded> {
    let far = axial.distance();
    let mut runs = factorial(0);
    runs.extend([[-far, 0.0], [far, 0.0], [0.0, -far], [0.0, far]]);
    runs.extend(vec![[0.0, 0.0]; centres]);
    runs
}

/// The amount that a coded one stands for.
pub fn amount(coded: f64, low: f64, high: f64) -> f64 {
    (low + high) / 2.0 + coded * (high - low) / 2.0
}

/// The coded amount; `None` where low and high are the same.
pub fn coded(amount: f64, low: f64, high: f64) -> Option<f64> {
    let coded = (2.0 * amount - low - high) / (high - low);
    coded.is_finite().then_some(coded)
}
