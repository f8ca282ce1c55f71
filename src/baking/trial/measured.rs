//! What was typed of a bake, as figures; at each field that cannot be, a sentence.

use super::{OutcomeField, Trial};
use crate::baking::oven::scale::{OvenScale, read_setting};
use crate::baking::pan::Pan;
use crate::baking::quantity::{Length, LengthUnit, Mass, Ph, Temperature, show};
use crate::baking::recipe::{OvenSetting, minutes_typed, read_grams};
use crate::baking::text::lower;
use crate::baking::worksheet::Settings;

/// A bake as figures; `None` is unknown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measured {
    /// Minutes between mixing and the oven.
    pub waited: Option<f64>,
    /// What the oven was set to.
    pub oven: Option<OvenSetting>,
    /// What a thermometer in the oven read.
    pub oven_read: Option<Temperature>,
    /// The pan, where another than planned.
    pub pan: Option<Pan>,
    /// How long it baked, minutes; the mean where two are given.
    pub minutes: Option<f64>,
    /// Its core when it came out.
    pub core: Option<Temperature>,
    /// Its height in the middle.
    pub centre: Option<Length>,
    /// Its height at the edge.
    pub edge: Option<Length>,
    /// The batter in one pan.
    pub mass_in: Option<Mass>,
    /// The same cake, baked.
    pub mass_out: Option<Mass>,
    /// The pH of its crumb.
    pub crumb_ph: Option<Ph>,
}

/// What is wrong at a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutcomeTrouble {
    /// Where.
    pub field: OutcomeField,
    /// What was found, what was expected.
    pub sentence: String,
}

/// How deep the pan is that it was baked in.
pub type PanDepth = Option<Length>;

/// So many times the depth of its pan no cake stands: a tall soufflé stands twice as high.
const HIGHEST: f64 = 3.0;
/// The lowest and the highest cake without a pan to go by, mm.
const HEIGHTS: std::ops::RangeInclusive<f64> = 1.0..=400.0;
/// The core of a cake that was in the oven, C: no core is hotter than its boiling syrup.
const CORES: std::ops::RangeInclusive<f64> = 20.0..=125.0;
/// An oven that bakes, C.
const OVENS: std::ops::RangeInclusive<f64> = 50.0..=350.0;
/// The pH of anything that is eaten as cake.
const CRUMBS: std::ops::RangeInclusive<f64> = 2.0..=11.0;
/// A cake that loses more is no cake any more; most lose 8 to 15 % (common practice, no source).
const MOST_LOST: f64 = 0.6;

/// The figures of a bake, and a sentence at each field that cannot be; `depth` is that of its pan.
pub fn measured(
    trial: &Trial,
    settings: &Settings,
    depth: PanDepth,
) -> (Measured, Vec<OutcomeTrouble>) {
    let mut troubles = Vec::new();
    let mut reader = Reader {
        trial,
        settings,
        troubles: &mut troubles,
    };
    let mut found = Measured {
        waited: reader.figure(OutcomeField::Waited, waited),
        oven: reader.figure(OutcomeField::Oven, oven),
        oven_read: reader.figure(OutcomeField::OvenRead, oven_read),
        pan: reader.figure(OutcomeField::Pan, pan),
        minutes: reader.figure(OutcomeField::Minutes, minutes),
        core: reader.figure(OutcomeField::Core, core),
        centre: reader.figure(OutcomeField::HeightCentre, |typed, settings| {
            height(typed, settings, depth)
        }),
        edge: reader.figure(OutcomeField::HeightEdge, |typed, settings| {
            height(typed, settings, depth)
        }),
        mass_in: reader.figure(OutcomeField::MassIn, mass),
        mass_out: reader.figure(OutcomeField::MassOut, mass),
        crumb_ph: reader.figure(OutcomeField::CrumbPh, crumb_ph),
    };
    if let (Some(before), Some(after)) = (found.mass_in, found.mass_out)
        && let Some(sentence) = mass_trouble(before, after)
    {
        reader.trouble(OutcomeField::MassOut, sentence);
        found.mass_out = None;
    }
    (found, troubles)
}

struct Reader<'a> {
    trial: &'a Trial,
    settings: &'a Settings,
    troubles: &'a mut Vec<OutcomeTrouble>,
}

impl Reader<'_> {
    /// A field as a figure; what is wrong with it is noted.
    fn figure<T>(
        &mut self,
        field: OutcomeField,
        read: impl Fn(&str, &Settings) -> Result<T, String>,
    ) -> Option<T> {
        let typed = self.trial.typed(field).trim();
        if typed.is_empty() {
            return None;
        }
        match read(typed, self.settings) {
            Ok(figure) => Some(figure),
            Err(sentence) => {
                self.trouble(field, sentence);
                None
            }
        }
    }

    fn trouble(&mut self, field: OutcomeField, sentence: String) {
        self.troubles.push(OutcomeTrouble { field, sentence });
    }
}

fn waited(typed: &str, _: &Settings) -> Result<f64, String> {
    let minutes = number(typed).filter(|(_, unit)| unit.is_empty() || unit.starts_with("min"));
    match minutes {
        Some((minutes, _)) if minutes <= 1440.0 => Ok(minutes),
        _ => Err(format!(
            "\"{typed}\" is no wait: write minutes from 0 to 1440, such as 20."
        )),
    }
}

fn oven(typed: &str, settings: &Settings) -> Result<OvenSetting, String> {
    let found = read_setting(typed, settings.kitchen_oven().scale)?;
    found.ok_or_else(|| "Write a setting such as 170 C.".to_owned())
}

fn pan(typed: &str, _: &Settings) -> Result<Pan, String> {
    let mention = crate::baking::recipe::pan_typed(typed);
    mention.map(|mention| Pan::named(&mention)).ok_or_else(|| {
        format!("\"{typed}\" names no pan: write its shape and size, such as 18 cm round tin, 7 cm deep.")
    })
}

fn minutes(typed: &str, _: &Settings) -> Result<f64, String> {
    let found = minutes_typed(typed).map(|[low, high]| (low + high) / 2.0);
    found.filter(|minutes| *minutes <= 600.0).ok_or_else(|| {
        format!("\"{typed}\" is no time of baking: write minutes, such as 34 or 34 to 36.")
    })
}

fn core(typed: &str, _: &Settings) -> Result<Temperature, String> {
    // No core is as hot in Celsius as any is in Fahrenheit.
    let of_bare = |figure| match figure > *CORES.end() {
        true => Temperature::fahrenheit(figure),
        false => Temperature::celsius(figure),
    };
    temperature(typed, of_bare, CORES).ok_or_else(|| {
        format!(
            "\"{typed}\" is no core of a cake: write degrees with C or F, such as 97 C or 207 F."
        )
    })
}

fn oven_read(typed: &str, settings: &Settings) -> Result<Temperature, String> {
    let of_bare = match settings.kitchen_oven().scale {
        OvenScale::Fahrenheit => Temperature::fahrenheit,
        _ => Temperature::celsius,
    };
    temperature(typed, of_bare, OVENS).ok_or_else(|| {
        format!(
            "\"{typed}\" is no heat of an oven: write degrees with C or F, such as 168 C or 335 F."
        )
    })
}

/// Degrees with C, with F, or bare, within bounds in C.
fn temperature(
    typed: &str,
    of_bare: impl Fn(f64) -> Temperature,
    bounds: std::ops::RangeInclusive<f64>,
) -> Option<Temperature> {
    let (figure, unit) = number(typed)?;
    let found = match unit.trim_start_matches(['°', ' ']) {
        "c" | "celsius" => Temperature::celsius(figure),
        "f" | "fahrenheit" => Temperature::fahrenheit(figure),
        "" => of_bare(figure),
        _ => return None,
    };
    Some(found).filter(|found| bounds.contains(&found.to_celsius()))
}

fn height(typed: &str, settings: &Settings, depth: PanDepth) -> Result<Length, String> {
    let wrong =
        || format!("\"{typed}\" is no height of a cake: write it such as 6.2 cm or 2 1/2 in.");
    let (figure, unit) = number(typed).ok_or_else(wrong)?;
    let found = match unit.as_str() {
        "mm" => Length::millimetres(figure),
        "cm" => Length::centimetres(figure),
        "in" | "inch" | "inches" | "\"" => Length::inches(figure),
        "" if settings.lengths == LengthUnit::Inches => Length::inches(figure),
        "" => Length::centimetres(figure),
        _ => return Err(wrong()),
    };
    let unit = settings.lengths;
    if let Some(depth) = depth
        && found.to_millimetres() > depth.to_millimetres() * HIGHEST
    {
        return Err(format!(
            "{} is {} times as high as its pan is deep ({}): look at the figure and its unit.",
            show::length(found, unit),
            show::trimmed(found.to_millimetres() / depth.to_millimetres(), 1),
            show::length(depth, unit)
        ));
    }
    match HEIGHTS.contains(&found.to_millimetres()) {
        true => Ok(found),
        false => Err(wrong()),
    }
}

fn mass(typed: &str, _: &Settings) -> Result<Mass, String> {
    match read_grams(typed)? {
        Some(grams) if grams > 0.0 => Ok(Mass::grams(grams)),
        _ => Err("A cake that weighs nothing is none: write grams.".to_owned()),
    }
}

/// What cannot be of two weights.
fn mass_trouble(before: Mass, after: Mass) -> Option<String> {
    let lost = 1.0 - after.to_grams() / before.to_grams();
    if lost < 0.0 {
        return Some(format!(
            "A cake weighs less baked than as batter: {} went in.",
            show::mass(before)
        ));
    }
    (lost > MOST_LOST).then(|| {
        format!(
            "It would have lost {} % of its weight: weigh batter and cake of the same pan.",
            show::fixed(lost * 100.0, 0)
        )
    })
}

fn crumb_ph(typed: &str, _: &Settings) -> Result<Ph, String> {
    let found = number(typed).filter(|(ph, unit)| unit.is_empty() && CRUMBS.contains(ph));
    found.map(|(ph, _)| Ph::of(ph)).ok_or_else(|| {
        format!("\"{typed}\" is no pH of a crumb: write a number from 2 to 11, such as 6.8.")
    })
}

/// A figure that may be a whole number with a fraction, and the unit behind it; never less than 0.
fn number(typed: &str) -> Option<(f64, String)> {
    let typed = lower(typed.trim());
    let end = typed
        .find(|sign: char| !(sign.is_ascii_digit() || matches!(sign, '.' | ',' | '/' | ' ')))
        .unwrap_or(typed.len());
    let (figure, unit) = typed.split_at(end);
    let figure = crate::baking::pan::plain_number(figure)?;
    figure.is_finite().then(|| (figure, unit.trim().to_owned()))
}

/// The same scale as the settings have it, for a figure that is shown beside one that was typed.
pub(super) fn degrees(temperature: Temperature, scale: OvenScale) -> String {
    match scale {
        OvenScale::Fahrenheit => format!("{} °F", show::fixed(temperature.to_fahrenheit(), 0)),
        _ => format!("{} °C", show::fixed(temperature.to_celsius(), 0)),
    }
}
