//! Oven scales: a setting as it is typed, the oven that it is typed for, and its words on every scale.
//!
//! One step of a gas mark is 25 °F; the dial of a Celsius oven is marked in tens, so mark 4, 350 °F and 180 °C are one
//! setting (common practice, no source). An oven with a fan is set cooler: by 20 °C in the UK and Europe, by 25 °F in the US;
//! the trade's own range is 10 to 25 °C (common practice, no source).

use crate::baking::quantity::{Temperature, TemperatureChange, show};
use crate::baking::recipe::{OvenSetting, bare_degrees, is_baking, oven_settings};
use crate::baking::text::{decimal, lower};
use serde::{Deserialize, Serialize};

/// The scale of an oven's dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OvenScale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Gas marks.
    Gas,
}

/// How an oven brings its heat to the cake.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OvenKind {
    /// Still air, top and bottom heat.
    #[default]
    Still,
    /// A fan moves the air.
    Fan,
    /// The pan stands on a hot sole, in a deck that is filled.
    Deck,
    /// The fan of a bakery's oven.
    Brisk,
}

/// How much cooler an oven with a fan is set in the UK and Europe.
pub const FAN_COOLER: TemperatureChange = TemperatureChange::celsius(20.0);
/// The same in the US.
pub const FAN_COOLER_US: TemperatureChange = TemperatureChange::fahrenheit(25.0);

/// A baker's oven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oven {
    /// How it brings its heat.
    pub kind: OvenKind,
    /// The scale of its dial.
    pub scale: OvenScale,
    /// How much hotter it is than its dial says; negative where it is cooler.
    pub off: TemperatureChange,
    /// How much cooler an oven with a fan is set than one without.
    pub fan_cooler: TemperatureChange,
}

impl Oven {
    /// What a still oven that runs true would be set to for the heat that a setting stands for.
    pub fn still(&self, setting: OvenSetting) -> Temperature {
        if setting.is_fan {
            setting.temperature + self.fan_cooler
        } else {
            setting.temperature
        }
    }

    /// What this oven's own dial is to be set to for the heat of a still oven at that temperature.
    pub fn dial(&self, still: Temperature) -> OvenSetting {
        let is_fan = matches!(self.kind, OvenKind::Fan | OvenKind::Brisk);
        let cooler = if is_fan {
            still - self.fan_cooler
        } else {
            still
        };
        OvenSetting {
            temperature: cooler - self.off,
            is_fan,
        }
    }

    /// Which of the settings that a line names is for a still oven: the first without a fan, or what a fan's stands for.
    /// `None` where it names none.
    pub fn still_of(&self, named: &[OvenSetting]) -> Option<Temperature> {
        let first = named.iter().find(|setting| !setting.is_fan);
        first.or(named.first()).map(|setting| self.still(*setting))
    }

    /// A still oven's temperature on every scale, this oven's own first: "180 °C (350 °F, fan 160 °C, gas 4)".
    pub fn words(&self, still: Temperature) -> String {
        let dial = Dial::of(still);
        let celsius = format!("{} °C", show::fixed(dial.celsius, 0));
        let fahrenheit = format!("{} °F", show::fixed(dial.fahrenheit, 0));
        let fan = match self.scale {
            OvenScale::Fahrenheit => {
                let cooler = self.fan_cooler.to_fahrenheit();
                format!("fan {} °F", show::fixed(to_5(dial.fahrenheit - cooler), 0))
            }
            OvenScale::Celsius | OvenScale::Gas => {
                let cooler = self.fan_cooler.to_celsius();
                format!("fan {} °C", show::fixed(to_5(dial.celsius - cooler), 0))
            }
        };
        let gas = dial.gas;
        let (first, rest) = match self.scale {
            OvenScale::Celsius => (Some(celsius), [Some(fahrenheit), Some(fan), gas]),
            OvenScale::Fahrenheit => (Some(fahrenheit), [Some(celsius), Some(fan), gas]),
            OvenScale::Gas => (gas, [Some(celsius), Some(fahrenheit), Some(fan)]),
        };
        let rest: Vec<String> = rest.into_iter().flatten().collect();
        match first {
            Some(first) => format!("{first} ({})", rest.join(", ")),
            None => rest.join(", "),
        }
    }

    /// A temperature on this oven's scale alone: "180 °C", "gas 4".
    pub fn short(&self, temperature: Temperature) -> String {
        let dial = Dial::of(temperature);
        let celsius = format!("{} °C", show::fixed(dial.celsius, 0));
        match self.scale {
            OvenScale::Celsius => celsius,
            OvenScale::Fahrenheit => format!("{} °F", show::fixed(dial.fahrenheit, 0)),
            OvenScale::Gas => dial.gas.unwrap_or(celsius),
        }
    }
}

/// Gas marks with their °F and the °C that dials show for them, from and to.
const MARKS: [(&str, f64, f64, f64); 11] = [
    ("1/4", 225.0, 110.0, 110.0),
    ("1/2", 250.0, 120.0, 120.0),
    ("1", 275.0, 140.0, 140.0),
    ("2", 300.0, 150.0, 150.0),
    ("3", 325.0, 160.0, 170.0),
    ("4", 350.0, 180.0, 180.0),
    ("5", 375.0, 190.0, 190.0),
    ("6", 400.0, 200.0, 200.0),
    ("7", 425.0, 220.0, 220.0),
    ("8", 450.0, 230.0, 230.0),
    ("9", 475.0, 240.0, 240.0),
];

/// How near a mark's own figure a temperature counts as that mark, °C.
const NEAR: f64 = 1.5;

/// A temperature as dials show it.
struct Dial {
    celsius: f64,
    fahrenheit: f64,
    gas: Option<String>,
}

impl Dial {
    /// The mark's row where a temperature is one of its figures; the nearest five degrees elsewhere.
    fn of(temperature: Temperature) -> Self {
        let (celsius, fahrenheit) = (temperature.to_celsius(), temperature.to_fahrenheit());
        let is_dial = |low: f64, high: f64| (low - NEAR..=high + NEAR).contains(&celsius);
        let is_mark = |mark: f64| (fahrenheit - mark).abs() <= 1.8 * NEAR;
        let row = MARKS
            .iter()
            .find(|(_, mark, low, high)| is_mark(*mark) || is_dial(*low, *high));
        match row {
            Some((gas, mark, low, high)) => Self {
                celsius: if is_dial(*low, *high) && !is_mark(*mark) {
                    to_5(celsius)
                } else {
                    *low
                },
                fahrenheit: *mark,
                gas: Some(format!("gas {gas}")),
            },
            None => Self {
                celsius: to_5(celsius),
                fahrenheit: to_5(fahrenheit),
                gas: MARKS.windows(2).find_map(|pair| {
                    let is_between = pair[0].1 < fahrenheit && fahrenheit < pair[1].1;
                    is_between.then(|| format!("gas {} to {}", pair[0].0, pair[1].0))
                }),
            },
        }
    }
}

/// To the nearest five, as dials are marked.
fn to_5(value: f64) -> f64 {
    (value / 5.0).round() * 5.0
}

const NO_SETTING: &str = "Write a setting such as 180 C, 350 F, gas 4 or 160 C fan.";

/// Reads an oven setting as a baker types it: "350 F", "gas 4", "180C fan", and "180" on the scale given. `None` where
/// nothing is typed.
///
/// # Errors
///
/// A sentence where it is no setting, or where a bare number may be one on two scales.
pub fn read_setting(typed: &str, scale: OvenScale) -> Result<Option<OvenSetting>, String> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(None);
    }
    let words = lower(typed);
    let (bare, is_fan) = match words.strip_suffix("fan").or(words.strip_prefix("fan")) {
        Some(bare) => (bare.trim(), true),
        None => (words.as_str(), false),
    };
    if let Some(value) = decimal(bare) {
        let temperature = bare_setting(value, bare, scale)?;
        return Ok(Some(OvenSetting {
            temperature,
            is_fan,
        }));
    }
    let named = oven_settings(typed);
    let first = named.iter().find(|setting| !setting.is_fan);
    match first.or(named.first()) {
        Some(setting) => Ok(Some(*setting)),
        None => Err(NO_SETTING.into()),
    }
}

/// A number without its scale.
fn bare_setting(value: f64, typed: &str, scale: OvenScale) -> Result<Temperature, String> {
    let as_gas = scale == OvenScale::Gas && (0.2..=9.0).contains(&value);
    let temperature = if as_gas {
        Temperature::gas_mark(value)
    } else {
        let found = bare_degrees(value);
        let as_fahrenheit = Temperature::fahrenheit(value);
        // From 195 to 259 both scales have a use for it.
        if scale == OvenScale::Fahrenheit && found != as_fahrenheit && is_baking(as_fahrenheit) {
            return Err(format!(
                "Write {typed} C or {typed} F: an oven may be set to either."
            ));
        }
        found
    };
    if is_baking(temperature) {
        Ok(temperature)
    } else {
        Err(format!("No cake is baked at that. {NO_SETTING}"))
    }
}
