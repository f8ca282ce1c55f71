//! The air at a height above the sea, and where water and a crumb's syrup boil in it.
//!
//! **Pressure.** The International Standard Atmosphere (ICAO Doc 7488, the troposphere): at the sea 101,325 Pa and 15 °C,
//! and 6.5 K colder with each kilometre of geopotential height. A height on a map is geometric and is turned into
//! geopotential first; the difference is 0.5 m at 1,800 m. Weather moves the pressure by 3 % to either side, which is 250 m.
//!
//! **Steam.** IAPWS-IF97, region 4: the saturation pressure of water and the backward equation for its temperature, from
//! 273.15 K to the critical point (Wagner and others 2000, J Eng Gas Turb Power 122:150).
//!
//! **Syrup.** Water in a batter boils where its activity times the saturation pressure is the pressure of the air.

use crate::baking::quantity::{Height, Pressure, Temperature, TemperatureChange};

/// The lowest dry land, m: the shore of the Dead Sea (common practice, no source; it falls by about a metre a year).
const LOWEST: f64 = -430.0;
/// The highest that anything is reckoned for, m: hardly anybody lives higher.
const HIGHEST: f64 = 5_000.0;
/// The highest that was checked against other programs and tables, m.
const CHECKED: f64 = 3_500.0;

/// Temperature of the standard atmosphere at the sea, K.
const SEA_KELVIN: f64 = 288.15;
/// How much colder it is with each metre of geopotential height, K.
const COLDER: f64 = 0.0065;
/// Standard gravity, m/s2.
const GRAVITY: f64 = 9.806_65;
/// The gas constant of dry air, J/(kg K).
const DRY_AIR: f64 = 287.052_87;
/// The earth's radius that turns geometric into geopotential height, m.
const EARTH: f64 = 6_356_766.0;

/// Kelvin at 0 °C.
const ICE: f64 = 273.15;
/// Coefficients of region 4, n1 to n10.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];
/// Where region 4 ends: the saturation pressure at 273.15 K and the critical point, Pa and K.
const STEAM_FROM: f64 = 611.212_677;
const CRITICAL_PRESSURE: f64 = 22.064e6;
const CRITICAL_KELVIN: f64 = 647.096;

/// The pressure of the air at a geometric height.
///
/// # Errors
///
/// A sentence where nobody bakes: below the lowest dry land, or above 5,000 m.
pub fn pressure(height: Height) -> Result<Pressure, &'static str> {
    let metres = height.to_metres();
    if metres.is_nan() || metres < LOWEST {
        return Err("No dry land lies that deep. Write a height from -430 m to 5,000 m.");
    }
    if metres > HIGHEST {
        return Err(
            "Nothing is reckoned for above 5,000 m. Write a height from -430 m to 5,000 m.",
        );
    }
    let geopotential = EARTH * metres / (EARTH + metres);
    let kelvin = SEA_KELVIN - COLDER * geopotential;
    let exponent = GRAVITY / (DRY_AIR * COLDER);
    Ok(Pressure::ATMOSPHERE * (kelvin / SEA_KELVIN).powf(exponent))
}

/// What is to be said of a height that lies beyond what was checked.
pub fn caution(height: Height) -> Option<&'static str> {
    (height.to_metres() > CHECKED).then_some(
        "Above 3,500 m none of these figures was checked against anything: take them as a first guess.",
    )
}

/// Where water boils under a pressure; `None` outside 611.2 Pa to 22.064 MPa.
pub fn boiling_point(pressure: Pressure) -> Option<Temperature> {
    let pascals = pressure.to_pascals();
    if !(STEAM_FROM..=CRITICAL_PRESSURE).contains(&pascals) {
        return None;
    }
    let beta = (pascals / 1e6).sqrt().sqrt();
    let e = beta * beta + N[2] * beta + N[5];
    let f = N[0] * beta * beta + N[3] * beta + N[6];
    let g = N[1] * beta * beta + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = N[9] + d;
    let kelvin = (sum - (sum * sum - 4.0 * (N[8] + N[9] * d)).sqrt()) / 2.0;
    Some(Temperature::celsius(kelvin - ICE))
}

/// How much cooler water boils under a pressure than at the sea; none where nothing is known of it.
pub fn boils_cooler(pressure: Pressure) -> TemperatureChange {
    match (boiling_point(Pressure::ATMOSPHERE), boiling_point(pressure)) {
        (Some(sea), Some(here)) => sea - here,
        _ => TemperatureChange::default(),
    }
}

/// The pressure of steam over water at a temperature; `None` outside 0 °C to the critical point, 373.946 °C.
pub fn saturation_pressure(temperature: Temperature) -> Option<Pressure> {
    let kelvin = temperature.to_celsius() + ICE;
    if !(ICE..=CRITICAL_KELVIN).contains(&kelvin) {
        return None;
    }
    let theta = kelvin + N[8] / (kelvin - N[9]);
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let root = 2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt());
    Some(Pressure::pascals(root.powi(4) * 1e6))
}

/// Where water of an activity, above 0 and up to 1, boils under a pressure: the plateau that a moist crumb stays at.
/// `None` outside what [`boiling_point`] knows.
pub fn syrup_boiling_point(pressure: Pressure, activity: f64) -> Option<Temperature> {
    (activity > 0.0 && activity <= 1.0)
        .then(|| boiling_point(pressure / activity))
        .flatten()
}
