//! Oven settings named in a line.

use super::OvenSetting;
use super::token::{Kind, Token};
use crate::baking::quantity::Temperature;

/// No oven bakes below or above these.
const COOLEST: f64 = 90.0;
const HOTTEST: f64 = 290.0;

/// The oven settings in a line, in the order written.
pub fn ovens(tokens: &[Token]) -> Vec<OvenSetting> {
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
    let mut found: Vec<Found> = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let value = match token.kind {
            Kind::Integer(value) => value,
            Kind::Fraction(over, under) => over / under,
            _ => continue,
        };
        if let Some((temperature, next)) = setting(tokens, at, value)
            && is_baking(temperature)
        {
            found.push(Found {
                setting: OvenSetting {
                    temperature,
                    is_fan: false,
                },
                at,
                next,
            });
        }
    }
    mark_fans(tokens, &mut found);
    found.into_iter().map(|found| found.setting).collect()
}

/// Whether an oven is ever set so.
pub fn is_baking(temperature: Temperature) -> bool {
    (COOLEST..=HOTTEST).contains(&temperature.to_celsius())
}

/// A setting and the tokens that it stands on.
struct Found {
    setting: OvenSetting,
    at: usize,
    next: usize,
}

/// Finds whose each "fan" is: that of the setting beside it, and of two the cooler one's, since air that moves heats more.
fn mark_fans(tokens: &[Token], found: &mut [Found]) {
    for (fan, _) in tokens
        .iter()
        .enumerate()
        .filter(|(_, token)| token.is_any(&["fan", "convection"]))
    {
        let before = found
            .iter()
            .rposition(|it| it.next <= fan && tokens[it.next..fan].iter().all(is_before_fan));
        let after = found
            .iter()
            .position(|it| it.at > fan && tokens[fan + 1..it.at].iter().all(is_after_fan));
        let heat = |place: usize| found[place].setting.temperature;
        let whose = match (before, after) {
            (Some(before), Some(after)) if heat(after) < heat(before) => Some(after),
            (before, after) => before.or(after),
        };
        if let Some(place) = whose {
            found[place].setting.is_fan = true;
        }
    }
}

/// What may stand between a setting and the "fan" that it is for: "160C (for fan ovens)".
fn is_before_fan(token: &Token) -> bool {
    matches!(token.kind, Kind::Mark('(' | '-' | ',' | '/' | '|'))
        || token.is_any(&["in", "a", "for", "on", "if", "using", "with"])
}

/// What may stand between "fan" and its setting: "fan-assisted oven: 160C", "fan gas mark 3".
fn is_after_fan(token: &Token) -> bool {
    matches!(token.kind, Kind::Mark('(' | '-' | ':' | '/'))
        || token.is_any(&[
            "oven", "ovens", "forced", "assisted", "bake", "at", "to", "mode", "setting", "gas",
            "mark",
        ])
}

/// The setting that a number means, by the signs beside it, and the token after it.
fn setting(tokens: &[Token], at: usize, value: f64) -> Option<(Temperature, usize)> {
    let before = |back: usize| at.checked_sub(back).and_then(|at| tokens.get(at));
    let is_gas = before(1).is_some_and(|token| token.is("gas"))
        || before(1).is_some_and(|token| token.is("mark"))
            && before(2).is_some_and(|token| token.is("gas"));
    if is_gas && value <= 10.0 {
        return Some((Temperature::gas_mark(value), at + 1));
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
        && before(1).is_some_and(|token| {
            token.is_any(&["at", "bake", "fan", "oven", "to"]) || token.is_mark('@')
        })
        && tokens
            .iter()
            .any(|token| token.is_any(&["bake", "oven", "baking", "fan", "preheat"]))
        && tokens.get(next).is_none_or(|next| {
            matches!(next.kind, Kind::Mark(_) | Kind::Integer(_))
                || next.is_any(&["for", "until", "and", "about", "oven", "or"])
        });
    if is_plain {
        return Some((bare(value), next));
    }
    let scale = tokens.get(next)?;
    if scale.is_any(&["f", "fahrenheit", "farenheit", "fahrenheits"]) {
        return Some((Temperature::fahrenheit(value), next + 1));
    }
    if scale.is_any(&["c", "celsius", "centigrade", "celcius"]) {
        return Some((Temperature::celsius(value), next + 1));
    }
    let is_fan = scale.is_any(&["fan", "conventional"]);
    (has_degrees || is_fan).then(|| (bare(value), next))
}

/// A number of degrees without a scale: no oven is set to 260 °C and few to less than that in °F.
pub fn bare(value: f64) -> Temperature {
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
            .map(|setting| setting.temperature.to_celsius().round())
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
