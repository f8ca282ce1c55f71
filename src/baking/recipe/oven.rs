//! Oven settings named in a line.

use super::token::{Kind, Token};
use crate::baking::quantity::Temperature;

/// No oven bakes below or above these.
const COOLEST: f64 = 90.0;
const HOTTEST: f64 = 290.0;

/// The oven settings in a line, in the order written.
pub fn ovens(tokens: &[Token]) -> Vec<Temperature> {
    let is_about_an_oven = tokens.iter().any(|token| {
        token.is_any(&[
            "oven",
            "preheat",
            "preheated",
            "bake",
            "baked",
            "baking",
            "gas",
            "fan",
            "convection",
            "heat",
        ])
    }) || tokens.len() <= 8;
    if !is_about_an_oven {
        return Vec::new();
    }
    let mut found: Vec<Temperature> = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let value = match token.kind {
            Kind::Integer(value) => value,
            Kind::Fraction(over, under) => over / under,
            _ => continue,
        };
        if let Some(temperature) = setting(tokens, at, value)
            && (COOLEST..=HOTTEST).contains(&temperature.to_celsius())
        {
            found.push(temperature);
        }
    }
    found
}

/// The setting that a number means, by the signs beside it.
fn setting(tokens: &[Token], at: usize, value: f64) -> Option<Temperature> {
    let before = |back: usize| at.checked_sub(back).and_then(|at| tokens.get(at));
    let is_gas = before(1).is_some_and(|token| token.is("gas"))
        || before(1).is_some_and(|token| token.is("mark"))
            && before(2).is_some_and(|token| token.is("gas"));
    if is_gas && value <= 10.0 {
        // Marks below 1 step by 25 F too: 1/2 is 250 F, 1/4 is 225 F (common practice, no source).
        return Some(match value {
            value if value < 0.3 => Temperature::fahrenheit(225.0),
            value if value < 1.0 => Temperature::fahrenheit(250.0),
            _ => Temperature::gas_mark(value),
        });
    }
    let mut next = at + 1;
    let mut has_degrees = false;
    while tokens.get(next).is_some_and(|token| {
        token.is_mark('°') || token.is_any(&["degrees", "degree", "deg"]) || token.is_mark('.')
    }) {
        has_degrees = true;
        next += 1;
    }
    // "Bake at 350 for 40 minutes".
    let is_plain = !has_degrees
        && (110.0..=500.0).contains(&value)
        && before(1)
            .is_some_and(|token| token.is_any(&["at", "bake", "oven", "to"]) || token.is_mark('@'))
        && tokens
            .iter()
            .any(|token| token.is_any(&["bake", "oven", "baking", "preheat"]))
        && tokens.get(next).is_none_or(|next| {
            matches!(next.kind, Kind::Mark(_) | Kind::Integer(_))
                || next.is_any(&["for", "until", "and", "about", "oven", "or"])
        });
    if is_plain {
        return Some(bare(value));
    }
    let scale = tokens.get(next)?;
    if scale.is_any(&["f", "fahrenheit", "farenheit", "fahrenheits"]) {
        return Some(Temperature::fahrenheit(value));
    }
    if scale.is_any(&["c", "celsius", "centigrade", "celcius"]) {
        return Some(Temperature::celsius(value));
    }
    let is_fan = scale.is_any(&["fan", "conventional"]);
    (has_degrees || is_fan).then(|| bare(value))
}

/// A number of degrees without a scale: no oven is set to 260 °C and few to less than that in °F.
fn bare(value: f64) -> Temperature {
    if value >= 260.0 {
        Temperature::fahrenheit(value)
    } else {
        Temperature::celsius(value)
    }
}

#[cfg(test)]
mod tests {
    use super::ovens;
    use crate::baking::recipe::token::tokens;

    #[track_caller]
    fn reads(text: &str, celsius: &[f64]) {
        let lower = text.to_ascii_lowercase();
        let found: Vec<f64> = ovens(&tokens(text, &lower))
            .iter()
            .map(|temperature| temperature.to_celsius().round())
            .collect();
        assert_eq!(found, celsius, "{text}");
    }

    #[test]
    fn settings_of_every_scale() {
        reads(
            "Preheat the oven to 350°F (180°C/gas 4).",
            &[177.0, 180.0, 177.0],
        );
        reads("Heat oven to 180C/160C fan/gas 4", &[180.0, 160.0, 177.0]);
        reads("Bake at 350 degrees for 30 minutes", &[177.0]);
        reads("Bake at 350 F for 30 minutes", &[177.0]);
        reads("bake at 350 for 40 minutes", &[177.0]);
        reads("Bake 180, 50 min", &[180.0]);
        reads("Bake 10 to 120 minutes in the oven", &[]);
        reads(
            "Warm the milk to 110°F, then stir in the yeast and leave it for ten minutes",
            &[],
        );
    }
}
