//! The oven: what it is set to, what the recipe says of it, and what is asked of heat flow. The answer takes longer than
//! a frame and is worked out beside the worksheet: [`bake_sheet`] puts it into words.

use super::oven_ask::{Asking, Heat, air_there, heat};
use super::{Choices, Settings};
use crate::baking::balance::Kind;
use crate::baking::finding::Facts;
use crate::baking::ingredient::Group;
use crate::baking::oven::core_temperature::{cautions, core, signs};
use crate::baking::oven::forecast::Ask;
use crate::baking::oven::scale::{Oven, OvenKind, OvenScale, read_setting};
use crate::baking::pan::PanEntry;
use crate::baking::quantity::{Temperature, show};
use crate::baking::recipe::{Baked, OvenSetting, Recipe};
use serde::{Deserialize, Serialize};

/// What the baker says of the oven for one recipe, as typed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct OvenEntry {
    /// What the oven is set to; empty takes what the recipe says.
    pub setting: String,
    /// Bakes of this recipe that were timed in the baker's own oven.
    pub bakes: Vec<TimedBake>,
}

/// A bake that was timed, as typed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct TimedBake {
    /// The pan; `None` is the recipe's own.
    pub pan: Option<PanEntry>,
    /// The setting; empty is the recipe's.
    pub setting: String,
    /// How long it took.
    pub minutes: String,
    /// The name of the trial's record that it is from; empty where it was typed here.
    pub trial: String,
}

/// The oven as the page shows it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OvenSheet {
    /// The setting on every scale; `None` where neither recipe nor baker says one.
    pub setting: Option<String>,
    /// The same heat as a still oven that runs true is set to, on every scale.
    pub scales: Option<String>,
    /// Where it is from, or what is missing.
    pub setting_from: String,
    /// What is wrong with the setting typed.
    pub setting_trouble: Option<String>,
    /// The kind of oven and how much it runs off, in words.
    pub oven: String,
    /// What the recipe says of its time, in words.
    pub recipe_time: String,
    /// The core when it is done, with the range; `None` for what has no core to measure.
    pub core: Option<String>,
    /// The same in short: "97 °C (207 °F)".
    pub core_usual: Option<String>,
    /// What else tells that it is done.
    pub signs: &'static str,
    /// What is to be minded.
    pub cautions: Vec<String>,
    /// The timed bakes, each in words, with what is wrong with it.
    pub bakes: Vec<BakeView>,
    /// Why no time can be worked out.
    pub cannot: Option<String>,
    /// What the times leave out.
    pub left_out: Option<String>,
    /// What is asked, in the order of `rows`.
    #[serde(skip)]
    pub ask: Option<Ask>,
    /// The pans that are asked about.
    #[serde(skip)]
    pub rows: Vec<AskedPan>,
}

/// A timed bake in words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BakeView {
    /// "9 in round, 2 in deep, at 180 °C: 35 minutes".
    pub words: String,
    /// What is wrong with it.
    pub trouble: Option<String>,
}

/// A pan that is asked about.
#[derive(Clone, Debug, PartialEq)]
pub struct AskedPan {
    /// Its name.
    pub label: String,
    /// The pan as typed; `None` for the recipe's own.
    pub entry: Option<PanEntry>,
    /// The core that it is done at.
    pub core: Temperature,
}

impl AskedPan {
    /// Whether it is the recipe's own.
    pub fn is_own(&self) -> bool {
        self.entry.is_none()
    }
}

/// The oven for a recipe, and what is asked of it.
pub fn oven_sheet(
    facts: &Facts,
    recipe: &Recipe,
    choices: &Choices,
    settings: &Settings,
) -> OvenSheet {
    let kitchen = settings.kitchen_oven();
    let air = settings.air();
    let named = named(recipe, &kitchen);
    let typed = read_setting(&choices.oven.setting, kitchen.scale);
    let (usual, setting_from) = match (&typed, named) {
        (Ok(Some(_)), _) => (None, "Your choice.".to_owned()),
        (_, Some((_, line))) => (None, format!("Named in line {line}.")),
        (_, None) => (
            Some(usual(facts.kind)),
            format!(
                "The text names no oven: the usual one for {} is taken.",
                facts.kind.words()
            ),
        ),
    };
    let still = named.map(|(still, _)| still).or(usual);
    let dial = match (&typed, still) {
        (Ok(Some(typed)), _) => Some(*typed),
        (_, Some(still)) => Some(kitchen.dial(still)),
        (_, None) => None,
    };
    let heat = dial.map(|dial| heat(&kitchen, dial));
    let core_here = core(facts.kind, air);
    let baked = recipe.baked();
    let mut sheet = OvenSheet {
        setting: dial.map(|dial| dial_words(&kitchen, dial)),
        scales: heat.map(|heat| scales(&kitchen, heat)),
        setting_from,
        setting_trouble: typed.as_ref().err().cloned(),
        oven: oven_words(&kitchen, settings),
        recipe_time: recipe_time(baked.as_ref()),
        core_usual: core_here.as_ref().map(|core| both(core.typical)),
        core: core_here.as_ref().map(|core| {
            let between = [core.low, core.high].map(|end| show::fixed(end.to_celsius(), 0));
            format!(
                "{} in the middle; {} to {} °C will do",
                both(core.typical),
                between[0],
                between[1]
            )
        }),
        signs: signs(facts.kind),
        cautions: core_here.as_ref().map_or_else(Vec::new, |core| {
            let has = |group| {
                facts
                    .formula
                    .lines
                    .iter()
                    .any(|line| line.ingredient.group == group)
            };
            cautions(core, has(Group::Egg), has(Group::Flour))
        }),
        bakes: Vec::new(),
        cannot: None,
        left_out: left_out(facts),
        ask: None,
        rows: Vec::new(),
    };
    let asking = Asking {
        facts,
        kitchen,
        air,
        air_there: air_there(choices),
        heat,
        still,
        baked: baked.as_ref(),
        unit: settings.lengths,
    };
    sheet.bakes = asking.timed(choices);
    match asking.ask(choices) {
        Ok((ask, rows)) => {
            sheet.ask = Some(ask);
            sheet.rows = rows;
        }
        Err(why) => sheet.cannot = Some(why),
    }
    sheet
}

/// Lines that are in the batter and have no weight make it more than is reckoned.
fn left_out(facts: &Facts) -> Option<String> {
    let holes = facts.holes();
    (!holes.is_empty()).then(|| {
        format!(
            "Left out, since they have no weight: {}. There is more batter than that, and it bakes longer.",
            show::lines(&holes)
        )
    })
}

/// The recipe's own setting as that of a still oven, and the line that names it.
pub(super) fn named(recipe: &Recipe, kitchen: &Oven) -> Option<(Temperature, usize)> {
    recipe.lines.iter().find_map(|line| {
        let still = kitchen.still_of(&line.mentions.ovens)?;
        Some((still, line.number))
    })
}

/// What a still oven is usually set to for a kind, where nobody says so (textbooks; common practice, no source).
pub(super) fn usual(kind: Kind) -> Temperature {
    Temperature::celsius(match kind {
        Kind::Muffin | Kind::Berry => 190.0,
        Kind::Biscuit => 220.0,
        Kind::Chiffon | Kind::Oil | Kind::Pound => 170.0,
        Kind::FruitCake => 150.0,
        Kind::LightFruit => 160.0,
        _ => 177.0,
    })
}

/// The heat of an oven as what a still one is set to, on every scale.
fn scales(kitchen: &Oven, heat: Heat) -> String {
    let still = kitchen.still(OvenSetting {
        temperature: heat.celsius,
        is_fan: matches!(heat.kind, OvenKind::Fan | OvenKind::Brisk),
    });
    format!("A still oven that runs true: {}.", kitchen.words(still))
}

/// A setting on the oven's own scale, and on the others.
fn dial_words(kitchen: &Oven, dial: OvenSetting) -> String {
    let celsius = format!("{} °C", show::fixed(dial.temperature.to_celsius(), 0));
    let fahrenheit = format!("{} °F", show::fixed(dial.temperature.to_fahrenheit(), 0));
    let words = match kitchen.scale {
        OvenScale::Celsius => format!("{celsius} ({fahrenheit})"),
        OvenScale::Fahrenheit => format!("{fahrenheit} ({celsius})"),
        OvenScale::Gas => format!(
            "{} ({celsius}, {fahrenheit})",
            kitchen.short(dial.temperature)
        ),
    };
    if dial.is_fan {
        format!("{words}, fan")
    } else {
        words
    }
}

fn oven_words(kitchen: &Oven, settings: &Settings) -> String {
    let kind = match kitchen.kind {
        OvenKind::Still => "A still oven",
        OvenKind::Fan => "An oven with a fan",
        OvenKind::Deck => "A deck oven, filled",
        OvenKind::Brisk => "A bakery's oven with a fan",
    };
    let off = kitchen.off.to_celsius();
    let off = if off == 0.0 {
        ", true to its dial".to_owned()
    } else {
        let way = if off > 0.0 { "hotter" } else { "cooler" };
        format!(
            ", {} °C {way} than its dial says",
            show::fixed(off.abs(), 0)
        )
    };
    let height = match settings.height() {
        Ok(Some(height)) if height.to_metres().abs() >= 100.0 => {
            format!(", {} m above the sea", show::fixed(height.to_metres(), 0))
        }
        _ => String::new(),
    };
    format!("{kind}{off}{height}. Settings has all of these.")
}

fn recipe_time(baked: Option<&Baked>) -> String {
    match baked {
        Some(baked) => format!(
            "The recipe says {} ({}).",
            minutes_words([baked.low, baked.high]),
            show::lines(&baked.lines)
        ),
        None => "The recipe names no time.".to_owned(),
    }
}

/// Minutes from and to: "35 to 40 minutes", "1 h 10 min".
pub(super) fn minutes_words([low, high]: [f64; 2]) -> String {
    let [from, to] = [low, high].map(f64::round);
    if to >= 90.0 {
        let one = |minutes: f64| match (minutes / 60.0).floor() {
            hours if hours >= 1.0 => {
                let rest = minutes - hours * 60.0;
                if rest < 1.0 {
                    format!("{} h", show::fixed(hours, 0))
                } else {
                    format!("{} h {} min", show::fixed(hours, 0), show::fixed(rest, 0))
                }
            }
            _ => format!("{} min", show::fixed(minutes, 0)),
        };
        if from == to {
            one(from)
        } else {
            format!("{} to {}", one(from), one(to))
        }
    } else if from == to {
        format!("{} minutes", show::fixed(from, 0))
    } else {
        format!("{} to {} minutes", show::fixed(from, 0), show::fixed(to, 0))
    }
}

/// A temperature in °C and °F.
pub(super) fn both(temperature: Temperature) -> String {
    format!(
        "{} °C ({} °F)",
        show::fixed(temperature.to_celsius(), 0),
        show::fixed(temperature.to_fahrenheit(), 0)
    )
}

#[cfg(test)]
mod tests {
    use super::minutes_words;

    #[test]
    fn minutes_in_words() {
        for (minutes, words) in [
            ([34.6, 35.2], "35 minutes"),
            ([29.6, 35.0], "30 to 35 minutes"),
            ([59.0, 95.4], "59 min to 1 h 35 min"),
            ([89.7, 89.7], "1 h 30 min"),
            ([119.7, 179.6], "2 h to 3 h"),
        ] {
            assert_eq!(minutes_words(minutes), words);
        }
    }
}
