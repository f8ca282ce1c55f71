//! What batter and crumb are to heat: heat capacity, conductivity and vapour pressure by composition, temperature, gas
//! and water.

/// Latent heat of water at 0 C, J/kg, and the heat capacity of its steam, J/(kg K): steam tables, to 0.3 % up to 150 C.
const STEAM: [f64; 2] = [2.501e6, 1860.0];
/// Heat capacity of water, J/(kg K).
pub const WATER_HEAT: f64 = 4186.0;
/// Specific gas constant of steam, J/(kg K).
pub const STEAM_GAS: f64 = 461.5;
/// Kelvin at 0 C.
pub const ICE: f64 = 273.15;
/// Conductivity of air with a little steam in it, W/(m K).
const AIR: f64 = 0.028;
/// The steepness of the batter's hold on water: water in it goes with the odds of its activity to this power (Oswin 1946;
/// 0.4 to 0.5 for crumb, from memory).
const HOLD: f64 = 0.45;
/// What part of the way through bubbles is open to vapour: films and liquid between them are in its way. Set with
/// all bakes of `tests/heat/bakes.tsv` in view, between charts and loaves.
const OPEN: f64 = 0.15;
/// What part of the gas leads on to other gas, so that vapour passes. Set with it.
const PORES: f64 = 0.3;
/// The most that the drift of vapour may add to its diffusion where it nears the pressure of the air.
const DRIFT: f64 = 4.0;

/// The batter as it goes into the oven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batter {
    /// Parts of its mass: water, fat, carbohydrate, protein, minerals. They sum to 1.
    pub parts: [f64; 5],
    /// Density with its air, kg/m3.
    pub density: f64,
    /// Activity of its water.
    pub activity: f64,
}

/// Density of each part at 25 C, kg/m3, and its conductivity at 25 and at 90 C, W/(m K), and its heat capacity at 60 C,
/// J/(kg K). Choi and Okos 1986, from memory.
const PARTS: [[f64; 4]; 5] = [
    [997.0, 0.611, 0.675, 4186.0],
    [915.0, 0.174, 0.154, 2054.0],
    [1591.0, 0.233, 0.291, 1646.0],
    [1317.0, 0.207, 0.265, 2075.0],
    [2417.0, 0.364, 0.431, 1192.0],
];

impl Batter {
    /// Density without any gas, kg/m3.
    pub fn solid_density(&self) -> f64 {
        1.0 / self.volumes().iter().sum::<f64>()
    }

    /// Volume of each part in a kilogram, m3.
    fn volumes(&self) -> [f64; 5] {
        let mut volumes = self.parts;
        for (volume, part) in volumes.iter_mut().zip(&PARTS) {
            *volume /= part[0];
        }
        volumes
    }

    /// Heat capacity of all but its water, J/K for each kilogram of batter.
    pub fn dry_heat(&self) -> f64 {
        (1..5).map(|part| self.parts[part] * PARTS[part][3]).sum()
    }

    /// Its gas-free conductivity, W/(m K), with so much of its first water, at a temperature: by volume.
    fn solid_conductivity(&self, water: f64, celsius: f64) -> f64 {
        let mut volumes = self.volumes();
        volumes[0] *= water;
        let warm = (celsius - 25.0) / 65.0;
        let of = |part: &[f64; 4]| part[1] + (part[2] - part[1]) * warm;
        let sum: f64 = volumes
            .iter()
            .zip(&PARTS)
            .map(|(volume, part)| volume * of(part))
            .sum();
        sum / volumes.iter().sum::<f64>()
    }

    /// Conductivity, W/(m K), where so much of the volume is gas: Maxwell's mean for bubbles in a body, and in the
    /// bubbles air and the vapour that goes from their warm to their cool walls, as de Vries, Sluimer and Bloksma 1989
    /// reckon it for dough; `times` is 1 as that is known. And what vapour its pores pass, kg/(m s Pa).
    pub fn conductivity(
        &self,
        water: f64,
        gas: f64,
        vapour: &Vapour,
        air: f64,
        times: f64,
    ) -> [f64; 2] {
        let body = self.solid_conductivity(water, vapour.celsius);
        let kelvin = vapour.celsius + ICE;
        let spread =
            2.6e-5 * (kelvin / 298.0).powf(1.81) * (101_325.0 / air) / (STEAM_GAS * kelvin);
        let drift = (air / (air - vapour.pressure).max(air / DRIFT)).min(DRIFT);
        let bubble =
            AIR + times * OPEN * spread * drift * vapour.by_kelvin * carried(vapour.celsius);
        let apart = body - bubble;
        let conducts =
            body * (bubble + 2.0 * body - 2.0 * gas * apart) / (bubble + 2.0 * body + gas * apart);
        [conducts, PORES * gas * spread]
    }

    /// The vapour over it, with so much of its first water, at a temperature, and how its pressure changes.
    pub fn vapour(&self, water: f64, celsius: f64) -> Vapour {
        let odds = self.activity / (1.0 - self.activity) * water.max(0.0).powf(1.0 / HOLD);
        let activity = odds / (1.0 + odds);
        let full = saturation(celsius);
        Vapour {
            celsius,
            pressure: activity * full,
            // Clausius and Clapeyron.
            by_kelvin: activity * full * (carried(celsius) - WATER_HEAT * celsius)
                / (STEAM_GAS * (celsius + ICE).powi(2)),
            by_water: full * activity * (1.0 - activity) / (HOLD * water.max(1e-6)),
        }
    }
}

/// Vapour over a batter.
#[derive(Clone, Copy, Debug, Default)]
pub struct Vapour {
    /// At this temperature, C.
    pub celsius: f64,
    /// Its pressure, Pa.
    pub pressure: f64,
    /// By how much that rises with temperature, Pa/K.
    pub by_kelvin: f64,
    /// By how much it rises with water, Pa for all of the first water.
    pub by_water: f64,
}

/// Heat in a kilogram of steam, J, from water at 0 C.
pub fn carried(celsius: f64) -> f64 {
    STEAM[0] + STEAM[1] * celsius
}

/// Pressure of steam over water, Pa: Buck 1981, to 0.1 % from 0 to 100 C and 1 % to 180 C.
pub fn saturation(celsius: f64) -> f64 {
    611.21 * ((18.678 - celsius / 234.5) * (celsius / (257.14 + celsius))).exp()
}
