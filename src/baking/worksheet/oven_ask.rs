//! What is asked of heat flow for a recipe: its batter in its pans, in the baker's oven and air, and the bakes that are
//! known; or why nothing can be asked.

use super::kitchen::read_height;
use super::oven::{both, minutes_words};
use super::{AskedPan, BakeView, Choices, TimedBake};
use crate::baking::finding::Facts;
use crate::baking::oven::air::pressure;
use crate::baking::oven::charge::Charge;
use crate::baking::oven::core_temperature::{Core, core};
use crate::baking::oven::forecast::{Ask, Known};
use crate::baking::oven::scale::{Oven, OvenKind, read_setting};
use crate::baking::pan::{Fill, Finish, Pan, PanEntry};
use crate::baking::quantity::{LengthUnit, Pressure, Temperature, Volume, show};
use crate::baking::recipe::{Baked, OvenSetting, minutes_typed};

/// An oven no hotter than its core has to be never bakes it; so much more is the least, K.
const HOTTER: f64 = 15.0;
/// No pan of a cake is filled deeper, mm: beyond this nothing is reckoned.
const DEEPEST: f64 = 300.0;

/// What a bake is set to: the temperature that the oven really has, and its kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Heat {
    pub celsius: Temperature,
    pub kind: OvenKind,
}

/// What an ask follows from.
pub(super) struct Asking<'a> {
    pub facts: &'a Facts<'a>,
    pub kitchen: Oven,
    pub air: Pressure,
    /// The air that the recipe is made for.
    pub air_there: Pressure,
    pub heat: Option<Heat>,
    /// The recipe's own setting for a still oven, or the usual one.
    pub still: Option<Temperature>,
    pub baked: Option<&'a Baked>,
    pub unit: LengthUnit,
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
    pub(super) fn ask(&self, choices: &Choices) -> Result<(Ask, Vec<AskedPan>), String> {
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
        let there = match self.air == self.air_there {
            true => self.facts.charge.cloned(),
            false => self.facts.charge_in(self.air_there),
        };
        let (Some(here), Some(there)) = (self.facts.charge, there) else {
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
    pub(super) fn timed(&self, choices: &Choices) -> Vec<BakeView> {
        choices
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
            .collect()
    }
}

/// The air that the recipe is made for: that of the sea, unless the baker says otherwise.
pub(super) fn air_there(choices: &Choices) -> Pressure {
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

/// The heat that the baker's oven really has at a setting of its dial.
pub(super) fn heat(kitchen: &Oven, dial: OvenSetting) -> Heat {
    let kind = match (dial.is_fan, kitchen.kind) {
        (true, OvenKind::Still | OvenKind::Deck) => OvenKind::Fan,
        (_, kind) => kind,
    };
    Heat {
        celsius: dial.temperature + kitchen.off,
        kind,
    }
}
