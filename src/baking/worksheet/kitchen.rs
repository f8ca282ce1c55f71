//! The baker's kitchen: its height and its oven, as typed, as figures, and what is wrong with them.

use super::Settings;
use crate::baking::ingredient::Region;
use crate::baking::oven::air::pressure;
use crate::baking::oven::scale::{FAN_COOLER, FAN_COOLER_US, Oven, OvenScale};
use crate::baking::quantity::{Height, Pressure, Temperature, TemperatureChange};
use crate::baking::text::{decimal, lower};

/// An oven that is further off than this is broken, and a fan makes no more of a difference than that, C.
const MOST_OFF: f64 = 60.0;
const MOST_COOLER: f64 = 40.0;

const HEIGHT: &str = "Write the height with metres or feet, such as 1600 m or 5280 ft.";
const OFF: &str =
    "Write how far off it is with its scale, up to 60 C to either side: +10 C, -25 F.";
const COOLER: &str = "Write how much cooler with its scale, from 0 to 40 C: 20 C, 25 F.";

impl Settings {
    /// The height of the kitchen above the sea; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn height(&self) -> Result<Option<Height>, &'static str> {
        read_height(&self.height)
    }

    /// The pressure of the air in the kitchen; that at the sea where no height is said, or none that is one.
    pub fn air(&self) -> Pressure {
        let height = self.height().ok().flatten().unwrap_or(Height::SEA);
        pressure(height).unwrap_or(Pressure::ATMOSPHERE)
    }

    /// How much hotter the oven is than its dial says; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn oven_off(&self) -> Result<Option<TemperatureChange>, &'static str> {
        change(&self.oven_off, -MOST_OFF, MOST_OFF).ok_or(OFF)
    }

    /// How much cooler an oven with a fan is set; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn fan_cooler(&self) -> Result<Option<TemperatureChange>, &'static str> {
        change(&self.fan_cooler, 0.0, MOST_COOLER).ok_or(COOLER)
    }

    /// The oven, by custom of the country where nothing is said or nothing that can be read.
    pub fn kitchen_oven(&self) -> Oven {
        let is_us = self.region == Region::Us;
        let (scale, cooler) = if is_us {
            (OvenScale::Fahrenheit, FAN_COOLER_US)
        } else {
            (OvenScale::Celsius, FAN_COOLER)
        };
        Oven {
            kind: self.oven,
            scale: self.oven_scale.unwrap_or(scale),
            off: self.oven_off().ok().flatten().unwrap_or_default(),
            fan_cooler: self.fan_cooler().ok().flatten().unwrap_or(cooler),
        }
    }
}

/// A height above the sea as typed; `None` where nothing is said.
///
/// # Errors
///
/// A sentence that says what is wrong.
pub fn read_height(typed: &str) -> Result<Option<Height>, &'static str> {
    let Some((figure, unit)) = figure(typed).ok_or(HEIGHT)? else {
        return Ok(None);
    };
    let height = match unit.as_str() {
        "m" | "metre" | "metres" | "meter" | "meters" => Height::metres(figure),
        "ft" | "foot" | "feet" | "'" => Height::feet(figure),
        // The sea is as high in every unit.
        "" if figure == 0.0 => Height::SEA,
        _ => return Err(HEIGHT),
    };
    pressure(height).map(|_| Some(height))
}

/// A temperature with its scale, within so many degrees Celsius; nothing where nothing is typed, `None` for anything else.
pub fn temperature(typed: &str, low: f64, high: f64) -> Option<Option<Temperature>> {
    let Some((figure, unit)) = figure(typed)? else {
        return Some(None);
    };
    let found = match scale(&unit)? {
        OvenScale::Fahrenheit => Temperature::fahrenheit(figure),
        _ => Temperature::celsius(figure),
    };
    (low..=high)
        .contains(&found.to_celsius())
        .then_some(Some(found))
}

/// The scale that a unit names.
fn scale(unit: &str) -> Option<OvenScale> {
    let unit = unit.trim_start_matches(['°', ' ']);
    match unit.strip_prefix("degrees").unwrap_or(unit).trim() {
        "c" | "celsius" => Some(OvenScale::Celsius),
        "f" | "fahrenheit" => Some(OvenScale::Fahrenheit),
        _ => None,
    }
}

/// A difference of temperatures with its scale, within so many degrees Celsius; nothing where nothing is typed, `None` for
/// anything else.
pub fn change(typed: &str, low: f64, high: f64) -> Option<Option<TemperatureChange>> {
    let Some((figure, unit)) = figure(typed)? else {
        return Some(None);
    };
    let change = match scale(&unit) {
        Some(OvenScale::Fahrenheit) => TemperatureChange::fahrenheit(figure),
        Some(_) => TemperatureChange::celsius(figure),
        // No difference is none on any scale.
        None if unit.is_empty() && figure == 0.0 => TemperatureChange::default(),
        None => return None,
    };
    // A hair's breadth beyond the end is the rounding of a scale.
    let is_within = (low - 1e-9..=high + 1e-9).contains(&change.to_celsius());
    is_within.then_some(Some(change))
}

/// A figure with its sign, and the unit behind it; nothing where nothing is typed, `None` for anything else.
fn figure(typed: &str) -> Option<Option<(f64, String)>> {
    let typed = lower(typed.trim());
    if typed.is_empty() {
        return Some(None);
    }
    let (sign, rest) = match typed.strip_prefix(['-', '−', '–']) {
        Some(rest) => (-1.0, rest),
        None => (1.0, typed.strip_prefix('+').unwrap_or(&typed)),
    };
    let rest = rest.trim_start();
    let end = rest
        .find(|sign: char| !(sign.is_ascii_digit() || matches!(sign, '.' | ',')))
        .unwrap_or(rest.len());
    let (figure, unit) = rest.split_at(end);
    Some(Some((
        sign * decimal(&without_thousands(figure)?)?,
        unit.trim().to_owned(),
    )))
}

/// A figure with its thousands put together and a decimal point. A point before three figures may part either, so that is
/// `None`; a comma before three is taken for thousands.
fn without_thousands(figure: &str) -> Option<String> {
    match figure.split_once([',', '.']) {
        Some((whole, part)) if part.len() == 3 && !whole.is_empty() && whole != "0" => {
            let has_comma = figure.contains(',');
            (has_comma && !part.contains([',', '.'])).then(|| format!("{whole}{part}"))
        }
        _ => Some(figure.replace(',', ".")),
    }
}
