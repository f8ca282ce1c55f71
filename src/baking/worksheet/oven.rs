//! The oven: what it is set to, what the recipe says of it, and what is asked of heat flow. The answer takes longer than
//! a frame and is worked out beside the worksheet: [`bake_sheet`] puts it into words.

use super::kitchen::read_height;
use super::{Choices, Settings};
use crate::baking::balance::Kind;
use crate::baking::finding::Facts;
use crate::baking::ingredient::Group;
use crate::baking::oven::air::pressure;
use crate::baking::oven::charge::Charge;
use crate::baking::oven::core_temperature::{Core, cautions, core, signs};
use crate::baking::oven::forecast::{Ask, Known};
use crate::baking::oven::scale::{Oven, OvenKind, OvenScale, read_setting};
use crate::baking::pan::{Fill, Finish, Pan, PanEntry};
use crate::baking::quantity::{LengthUnit, Pressure, Temperature, Volume, show};
use crate::baking::recipe::{Baked, OvenSetting, Recipe, minutes_typed};
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
}

/// The oven as the page shows it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OvenSheet {
    /// The setting on every scale; `None` where neither recipe nor baker says one.
    pub setting: Option<String>,
    /// Where it is from, or what is missing.
    pub setting_from: String,
    /// What is wrong with the setting typed.
    pub setting_trouble: Option<String>,
    /// The kind of oven and how much it runs off, in words.
    pub oven: String,
    /// What the recipe says of its time, in words.
    pub recipe_time: String,
    /// The core when it is done: "97 °C (207 °F)", with the range; `None` for what has no core to measure.
    pub core: Option<String>,
    /// What else tells that it is done.
    pub signs: &'static str,
    /// What is to be minded.
    pub cautions: Vec<String>,
    /// The timed bakes, each in words, with what is wrong with it.
    pub bakes: Vec<BakeView>,
    /// Why no time can be worked out.
    pub cannot: Option<String>,
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

/// An oven no hotter than its core has to be never bakes it; so much more is the least, K.
const HOTTER: f64 = 15.0;
/// No pan of a cake is filled deeper, mm: beyond this nothing is reckoned.
const DEEPEST: f64 = 300.0;

/// What a bake is set to: the temperature that the oven really has, and its kind.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Heat {
    celsius: Temperature,
    kind: OvenKind,
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
        setting_from,
        setting_trouble: typed.as_ref().err().cloned(),
        oven: oven_words(&kitchen, settings),
        recipe_time: recipe_time(baked.as_ref()),
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
    asking.timed(choices, &mut sheet);
    match asking.ask(choices) {
        Ok((ask, rows)) => {
            sheet.ask = Some(ask);
            sheet.rows = rows;
        }
        Err(why) => sheet.cannot = Some(why),
    }
    sheet
}

/// What an ask follows from.
struct Asking<'a> {
    facts: &'a Facts<'a>,
    kitchen: Oven,
    air: Pressure,
    /// The air that the recipe is made for.
    air_there: Pressure,
    heat: Option<Heat>,
    /// The recipe's own setting for a still oven, or the usual one.
    still: Option<Temperature>,
    baked: Option<&'a Baked>,
    unit: LengthUnit,
}

/// Pans with batter in them.
struct Filled<'a> {
    fill: &'a Fill,
    /// The pan as typed; `None` for the recipe's own.
    entry: Option<&'a PanEntry>,
}

impl Filled<'_> {
    /// The batter in one of them.
    fn one(&self) -> Volume {
        self.fill.volume.mean * (1.0 / f64::from(self.fill.pan.count))
    }
}

impl Asking<'_> {
    /// The pans with batter in them: the recipe's own first, with as much as is baked in it.
    fn filled<'c>(&'c self, choices: &'c Choices) -> Vec<Filled<'c>> {
        let fit = self.facts.fit;
        let parts = fit
            .split
            .iter()
            .flat_map(|split| &split.parts)
            .map(|part| &part.fill);
        if choices.shelf.is_empty() {
            let own = parts.chain(&fit.own_fill).next();
            return own
                .into_iter()
                .map(|fill| Filled { fill, entry: None })
                .collect();
        }
        let own = fit.own_fill.iter().map(|fill| Filled { fill, entry: None });
        let shelf = parts.zip(&choices.shelf).map(|(fill, entry)| Filled {
            fill,
            entry: Some(entry),
        });
        own.chain(shelf).collect()
    }

    /// What heat flow is asked, or why nothing can be.
    fn ask(&self, choices: &Choices) -> Result<(Ask, Vec<AskedPan>), String> {
        let filled = self.filled(choices);
        let kind = self.facts.kind;
        let (Some(core_here), Some(core_there)) =
            (core(kind, self.air), core(kind, self.air_there))
        else {
            return Err(format!(
                "No time is worked out for {}: they have no core to reckon with. Go by the signs.",
                kind.words()
            ));
        };
        if filled.is_empty() {
            return Err(match self.facts.fit.own_fill {
                None if self.facts.percentages.batter.mean.to_grams() <= 0.0 => {
                    "Once ingredients are weighed, the time follows.".to_owned()
                }
                _ => "Say which pan it is baked in, and the time follows.".to_owned(),
            });
        }
        let Some(heat) = self.heat else {
            return Err("Say what the oven is set to, and the time follows.".to_owned());
        };
        let (Some(here), Some(there)) = (self.facts.charge, self.facts.charge_in(self.air_there))
        else {
            return Err("Too dry to be a batter: no time is worked out.".to_owned());
        };
        let wants = |charge: &Charge, core: &Core| {
            charge.core([core.low, core.typical, core.high], self.facts.setting)
        };
        let here_at = wants(here, &core_here);
        let there_at = wants(&there, &core_there);
        let wanted = here_at[1].to_celsius();
        if heat.celsius.to_celsius() < wanted + HOTTER {
            return Err(format!(
                "An oven at {} hardly brings a core to {}: it dries before it is done. Set it hotter.",
                both(heat.celsius),
                both(here_at[1])
            ));
        }
        if let Some(deep) = filled
            .iter()
            .find(|filled| filled.fill.depth.mean.to_millimetres() > DEEPEST)
        {
            return Err(format!(
                "The batter would stand {} deep in {}: take more pans, and the time follows.",
                show::length(deep.fill.depth.mean, self.unit),
                deep.fill.pan.label(self.unit)
            ));
        }
        let setup = |charge: &Charge, filled: &Filled, heat: Heat, core| {
            let heat = (heat.kind, heat.celsius);
            charge.setup(&filled.fill.pan, filled.one(), heat, core)
        };
        let mut known = Vec::new();
        let own = self
            .facts
            .fit
            .own_fill
            .as_ref()
            .map(|fill| Filled { fill, entry: None });
        if let (Some(own), Some(baked), Some(still)) = (&own, self.baked, self.still) {
            // A recipe's writer bakes at the sea, unless the baker says otherwise.
            let heat = Heat {
                celsius: still,
                kind: OvenKind::Still,
            };
            known.push(Known {
                setup: setup(&there, own, heat, there_at),
                minutes: [baked.low, baked.high],
                same_oven: false,
            });
        }
        for timed in &choices.oven.bakes {
            let Ok(read) = self.read(timed) else { continue };
            let Some(filled) = self.filled_like(&filled, read.pan) else {
                continue;
            };
            known.push(Known {
                setup: setup(here, filled, read.heat, here_at),
                minutes: read.minutes,
                same_oven: true,
            });
        }
        let rows = filled
            .iter()
            .map(|filled| AskedPan {
                label: label(&filled.fill.pan, self.unit),
                entry: filled.entry.cloned(),
                core: here_at[1],
            })
            .collect();
        let asked = filled
            .iter()
            .map(|filled| setup(here, filled, heat, here_at))
            .collect();
        let airs = filled
            .first()
            .filter(|_| self.air != self.air_there)
            .map(|filled| {
                [
                    setup(&there, filled, heat, there_at),
                    setup(here, filled, heat, here_at),
                ]
            });
        let ask = Ask { known, asked, airs };
        Ok((ask, rows))
    }

    /// What a timed bake was baked in, among the pans there are: without a pan the recipe's own.
    fn filled_like<'f>(
        &self,
        filled: &'f [Filled<'f>],
        pan: Option<Pan>,
    ) -> Option<&'f Filled<'f>> {
        filled.iter().find(|filled| match pan {
            None => filled.entry.is_none(),
            Some(pan) => filled.fill.pan.one() == pan.one(),
        })
    }

    /// A timed bake as figures, or what is wrong with it.
    fn read(&self, timed: &TimedBake) -> Result<Read, String> {
        let minutes = minutes_typed(&timed.minutes).ok_or_else(|| {
            format!(
                "\"{}\" is no time of baking: write minutes, such as 35 or 35 to 40.",
                timed.minutes.trim()
            )
        })?;
        let heat = match read_setting(&timed.setting, self.kitchen.scale)? {
            Some(dial) => Some(heat(&self.kitchen, dial)),
            None => self.heat,
        };
        let pan = match &timed.pan {
            Some(entry) => Some(
                entry
                    .read()
                    .map_err(|_| "Its pan cannot be reckoned with.".to_owned())?,
            ),
            None => None,
        };
        Ok(Read {
            minutes,
            heat: heat.ok_or_else(|| "Say what the oven was set to.".to_owned())?,
            pan,
        })
    }

    /// The timed bakes in words.
    fn timed(&self, choices: &Choices, sheet: &mut OvenSheet) {
        sheet.bakes = choices
            .oven
            .bakes
            .iter()
            .map(|timed| {
                let pan = match &timed.pan {
                    None => "The recipe's pan".to_owned(),
                    Some(entry) => entry
                        .read()
                        .map_or_else(|_| "A pan".to_owned(), |pan| pan.label(entry.unit)),
                };
                let setting = match timed.setting.trim() {
                    "" => "at the setting above".to_owned(),
                    setting => format!("at {setting}"),
                };
                let read = self.read(timed);
                let minutes = read.as_ref().map_or_else(
                    |_| timed.minutes.trim().to_owned(),
                    |read| minutes_words(read.minutes),
                );
                let missing = read
                    .as_ref()
                    .is_ok_and(|read| self.filled_like(&self.filled(choices), read.pan).is_none());
                BakeView {
                    words: format!("{pan}, {setting}: {minutes}"),
                    trouble: match read {
                        Err(trouble) => Some(trouble),
                        Ok(_) if missing => {
                            Some("Not used: that pan is not among those above.".to_owned())
                        }
                        Ok(_) => None,
                    },
                }
            })
            .collect();
    }
}

/// The air that the recipe is made for: that of the sea, unless the baker says otherwise.
fn air_there(choices: &Choices) -> Pressure {
    let height = read_height(&choices.made_for).ok().flatten();
    height
        .and_then(|height| pressure(height).ok())
        .unwrap_or(Pressure::ATMOSPHERE)
}

/// A pan's name, with what it is made of where that is not bright metal.
fn label(pan: &Pan, unit: LengthUnit) -> String {
    let label = pan.label(pan.unit(unit));
    match pan.finish {
        Finish::Bright => label,
        finish => format!("{label}, {}", show::amid(finish.words())),
    }
}

/// A timed bake as figures.
struct Read {
    minutes: [f64; 2],
    heat: Heat,
    pan: Option<Pan>,
}

/// The recipe's own setting as that of a still oven, and the line that names it.
fn named(recipe: &Recipe, kitchen: &Oven) -> Option<(Temperature, usize)> {
    recipe.lines.iter().find_map(|line| {
        let still = kitchen.still_of(&line.mentions.ovens)?;
        Some((still, line.number))
    })
}

/// What a still oven is usually set to for a kind, where nobody says so (textbooks; common practice, no source).
fn usual(kind: Kind) -> Temperature {
    Temperature::celsius(match kind {
        Kind::Muffin | Kind::Berry => 190.0,
        Kind::Biscuit => 220.0,
        Kind::Chiffon | Kind::Oil | Kind::Pound => 170.0,
        Kind::FruitCake => 150.0,
        Kind::LightFruit => 160.0,
        _ => 177.0,
    })
}

/// The heat that the baker's oven really has at a setting of its dial.
fn heat(kitchen: &Oven, dial: OvenSetting) -> Heat {
    let kind = match (dial.is_fan, kitchen.kind) {
        (true, OvenKind::Still | OvenKind::Deck) => OvenKind::Fan,
        (_, kind) => kind,
    };
    Heat {
        celsius: dial.temperature + kitchen.off,
        kind,
    }
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
