//! Ovens and pans as heat meets them. Convection and dips were set with the bakes of `tests/heat/bakes.tsv` that are
//! marked as tuned on; the rest is physics or the trade's.

use super::heat::bake::{Oven, Skin};
use super::scale::OvenKind;
use crate::baking::pan::Finish;
use crate::baking::quantity::{Pressure, Temperature};

/// What part of radiation batter and crust take (handbooks, from memory).
const CRUST: f64 = 0.9;
/// Pressure of vapour in an oven with a cake in it, as a part of all: what the cake gives off, and of a gas flame
/// (common practice, no source; 0.03 to 0.15).
const DAMP: f64 = 0.07;

/// What a pan is to heat: what part of radiation it takes (bright metal 0.1 to 0.3, all others nearly black, 0.9), what its
/// wall holds back (5 mm of glass at 1.1 W/(m K), 2 mm of silicone at 0.25, 5 mm of padding at 0.05) and what heat it
/// takes itself (1 mm of aluminium or 0.7 mm of steel). Handbooks, from memory.
pub fn skin(finish: Finish) -> Skin {
    let (radiation, resistance, capacity) = match finish {
        Finish::Bright => (0.25, [0.0, 0.0], 2400.0),
        Finish::Strips => (0.25, [0.1, 0.0], 2400.0),
        Finish::Dark => (0.9, [0.0, 0.0], 2400.0),
        Finish::Glass => (0.9, [0.0045, 0.0045], 10_500.0),
        Finish::Silicone => (0.9, [0.008, 0.008], 2900.0),
    };
    Skin {
        radiation,
        resistance,
        capacity,
    }
}

/// An oven of a kind at a temperature, in air of a pressure.
///
/// Convection of the top, the walls and the base: still air about a pan 6.5 W/(m2 K), a little more from below; a home
/// oven's fan as much as makes up for 20 K, as the trade has it; a bakery's fan 18. A door that was opened costs 30 K
/// (15 where a fan is at work), and a load that fills a deck or a bakery's oven 60 K for longer.
pub fn oven(kind: OvenKind, celsius: Temperature, air: Pressure) -> Oven {
    let (convection, dip) = match kind {
        OvenKind::Still => ([6.5, 6.5, 8.5], [30.0, 300.0]),
        OvenKind::Fan => ([13.5, 13.5, 13.5], [15.0, 300.0]),
        OvenKind::Deck => ([6.5, 6.5, 8.5], [60.0, 900.0]),
        OvenKind::Brisk => ([18.0, 18.0, 18.0], [60.0, 600.0]),
    };
    // Thinner air carries less heat: by the square root of its density.
    let thin = (air.to_pascals() / Pressure::ATMOSPHERE.to_pascals()).sqrt();
    Oven {
        celsius: celsius.to_celsius(),
        dip,
        convection: convection.map(|convection| convection * thin),
        radiation: CRUST,
        air: air.to_pascals(),
        damp: DAMP * air.to_pascals(),
    }
}
