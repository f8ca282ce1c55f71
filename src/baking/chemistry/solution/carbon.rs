//! Carbon in a bowl: dissolved carbon dioxide, bicarbonate, carbonate, and what leaves as gas.

/// How a bowl holds its carbon.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Carbon {
    /// There is none.
    #[default]
    None,
    /// As much as stands in balance with gas of this pressure of carbon dioxide.
    Open {
        /// Pressure of carbon dioxide, atm.
        pressure_atm: f64,
    },
    /// So much, all of it kept in the water, however high its pressure.
    Closed {
        /// All carbon, mol/kg.
        total: f64,
    },
    /// So much; what the water cannot hold under this pressure leaves as gas.
    Venting {
        /// All carbon, mol/kg.
        total: f64,
        /// Pressure of carbon dioxide at which bubbles grow, atm.
        pressure_atm: f64,
    },
}

/// Carbon in the water, mol/kg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Dissolved {
    /// Carbon dioxide, with the little true carbonic acid counted in.
    pub dioxide: f64,
    /// Bicarbonate.
    pub bicarbonate: f64,
    /// Carbonate.
    pub carbonate: f64,
}

impl Dissolved {
    /// So much dioxide, and what goes with it where the two steps' constants are `ratios` of the proton's activity.
    pub fn beside(dioxide: f64, ratios: [f64; 2]) -> Self {
        let bicarbonate = dioxide * ratios[0];
        Self {
            dioxide,
            bicarbonate,
            carbonate: bicarbonate * ratios[1],
        }
    }

    /// So much carbon in all, shared out.
    pub fn sharing(total: f64, ratios: [f64; 2]) -> Self {
        Self::beside(total / (1.0 + ratios[0] * (1.0 + ratios[1])), ratios)
    }

    /// All of it.
    pub fn total(&self) -> f64 {
        self.dioxide + self.bicarbonate + self.carbonate
    }
}
