//! The temperature of the batter as it is mixed: what it comes to, and how warm its liquid has to be for a wanted one.

use super::gather::with_facts;
use super::kitchen::{change, temperature};
use super::swap_entry::LineWords;
use super::{Inputs, LinePart, Settings};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Group, Own};
use crate::baking::oven::air::boiling_point;
use crate::baking::oven::mixing::{
    Liquid, Part, SCRAMBLES, batter_temperature, liquid_for, liquid_of,
};
use crate::baking::quantity::{Mass, Temperature, TemperatureChange, show};
use crate::baking::recipe::Looks;
use serde::{Deserialize, Serialize};

/// Temperatures where nothing is typed, C: a room and a fridge (common practice, no source).
const ROOM: Temperature = Temperature::celsius(21.0);
const FRIDGE: Temperature = Temperature::celsius(4.0);
/// What mixing adds where nothing is typed, C (common practice, no source: 0 by hand to 3 in a fast mixer).
const RISE: TemperatureChange = TemperatureChange::celsius(1.0);
/// So much of a batter may be of unknown make-up before its temperature is unknown too, as a part.
const UNKNOWN: f64 = 0.05;

const TEMPERATURE: &str =
    "Write a temperature from -20 to 60 C with its scale, such as 21 C or 70 F.";
const RISE_TROUBLE: &str =
    "Write how much mixing warms it with its scale, from 0 to 10 C: 1 C, 2 F.";

/// What the baker says of mixing, as typed; empty where nothing is said.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct MixingEntry {
    /// Temperature of the room, and of all that stands in it.
    pub room: String,
    /// Temperature of the fridge.
    pub fridge: String,
    /// Temperature that the batter is to have.
    pub wanted: String,
    /// What mixing adds.
    pub rise: String,
    /// Ingredients that come out of the fridge.
    pub cold: Vec<LineWords>,
}

impl MixingEntry {
    /// What is wrong with each field, in the order room, fridge, wanted, rise.
    fn troubles(&self) -> [Option<&'static str>; 4] {
        let wrong = |typed: &str| degrees(typed).is_none().then_some(TEMPERATURE);
        [
            wrong(&self.room),
            wrong(&self.fridge),
            wrong(&self.wanted),
            added(&self.rise).is_none().then_some(RISE_TROUBLE),
        ]
    }
}

fn degrees(typed: &str) -> Option<Option<Temperature>> {
    temperature(typed, -20.0, 60.0)
}

fn added(typed: &str) -> Option<Option<TemperatureChange>> {
    change(typed, 0.0, 10.0)
}

/// The batter's temperature and what it takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MixingSheet {
    /// What is wrong with room, fridge, wanted and rise.
    pub troubles: [Option<&'static str>; 4],
    /// The ingredients of the batter: where, what, and whether out of the fridge.
    pub lines: Vec<(LinePart, String, bool)>,
    /// What it comes to, and what the liquid has to be, in sentences.
    pub words: Vec<String>,
}

impl Inputs {
    /// Says whether an ingredient comes out of the fridge.
    pub fn chill(&mut self, place: LinePart, is_cold: bool) {
        let Some(line) = self.line_words(place) else {
            return;
        };
        let cold = &mut self.choices.mixing.cold;
        cold.retain(|other| *other != line);
        if is_cold {
            cold.push(line);
        }
    }
}

/// The sheet. It is asked for where it is looked at, and is no part of the worksheet.
pub fn mixing_sheet(inputs: &Inputs, settings: &Settings, own: &Own) -> MixingSheet {
    with_facts(&mut Looks::default(), inputs, settings, own, |known| {
        let entry = &inputs.choices.mixing;
        let cold: Vec<LinePart> = entry
            .cold
            .iter()
            .filter_map(|line| inputs.line_of(line))
            .collect();
        let lines: Vec<&Weighed> = known.facts.formula.batter().collect();
        let holes = known.facts.formula.holes().map(|line| line.line);
        let missed: Vec<usize> = holes.chain(known.facts.unread.iter().copied()).collect();
        MixingSheet {
            troubles: entry.troubles(),
            lines: lines
                .iter()
                .map(|line| {
                    let place = (line.line, line.part);
                    (
                        place,
                        line.ingredient.name.to_owned(),
                        cold.contains(&place),
                    )
                })
                .collect(),
            words: match missed.as_slice() {
                [] => Bowl::of(entry, &lines, &cold).words(settings),
                _ => vec![format!("Give {} a weight first.", show::lines(&missed))],
            },
        }
    })
}

/// What goes into the bowl, and how warm.
struct Bowl<'a> {
    lines: &'a [&'a Weighed],
    /// The parts whose heat is known, each with its place among the lines.
    parts: Vec<(usize, Part)>,
    unknown: Vec<usize>,
    wanted: Option<Temperature>,
    rise: TemperatureChange,
}

impl<'a> Bowl<'a> {
    fn of(entry: &MixingEntry, lines: &'a [&'a Weighed], cold: &[LinePart]) -> Self {
        let or = |typed: &str, usual: Temperature| degrees(typed).flatten().unwrap_or(usual);
        let (room, fridge) = (or(&entry.room, ROOM), or(&entry.fridge, FRIDGE));
        let mut bowl = Self {
            lines,
            parts: Vec::new(),
            unknown: Vec::new(),
            wanted: degrees(&entry.wanted).flatten(),
            rise: added(&entry.rise).flatten().unwrap_or(RISE),
        };
        for (at, line) in lines.iter().enumerate() {
            let is_cold = cold.contains(&(line.line, line.part));
            match Part::of(line, if is_cold { fridge } else { room }) {
                Some(part) => bowl.parts.push((at, part)),
                None => bowl.unknown.push(at),
            }
        }
        bowl
    }

    fn words(&self, settings: &Settings) -> Vec<String> {
        let grams = |lines: &mut dyn Iterator<Item = &usize>| -> f64 {
            lines.map(|at| self.lines[*at].grams.mean.to_grams()).sum()
        };
        let all = grams(&mut (0..self.lines.len()).collect::<Vec<_>>().iter());
        let unknown = grams(&mut self.unknown.iter());
        let numbers: Vec<usize> = self.unknown.iter().map(|at| self.lines[*at].line).collect();
        if unknown > UNKNOWN * all {
            return vec![format!(
                "No source tells what {} is made of, so the batter's temperature is not known.",
                show::lines(&numbers)
            )];
        }
        let parts: Vec<Part> = self.parts.iter().map(|part| part.1).collect();
        let Some(comes_to) = batter_temperature(&parts, self.rise) else {
            return Vec::new();
        };
        let mut words = vec![format!(
            "As it stands the batter comes to about {}.",
            both(comes_to)
        )];
        if let Some(wanted) = self.wanted {
            words.push(self.liquid(&parts, wanted, settings));
        }
        if !numbers.is_empty() {
            words.push(format!(
                "Left out, since no source tells what it is made of: {}.",
                show::lines(&numbers)
            ));
        }
        words.push("By weight, heat capacity and temperature of each ingredient, and what mixing adds. Fat that melts and the bowl itself are left out: some 2 °C either way.".into());
        words
    }

    /// What the liquid has to be for the batter that is wanted.
    fn liquid(&self, parts: &[Part], wanted: Temperature, settings: &Settings) -> String {
        let found = liquid_of(self.lines).and_then(|line| {
            let at = self.parts.iter().position(|part| part.0 == line)?;
            Some((line, at))
        });
        let Some((line, at)) = found else {
            return "It has no liquid of its own to warm or cool: warm or chill egg and butter."
                .into();
        };
        let boils = boiling_point(settings.air()).unwrap_or(Temperature::celsius(100.0));
        let name = self.lines[line].ingredient.name;
        let is_water = self.lines[line].ingredient.key == "water";
        let needed = liquid_for(parts, at, wanted, self.rise, boils);
        let for_it = format!("For a batter at {}", both(wanted));
        match needed {
            Some(Liquid::At(needed)) if needed > SCRAMBLES && self.has_egg() => format!(
                "{for_it} its liquid ({name}) would have to be at {}, which sets egg in flakes: warm egg or butter instead.",
                both(needed)
            ),
            Some(Liquid::At(needed)) => {
                format!(
                    "{for_it} its liquid ({name}) has to be at {}.",
                    both(needed)
                )
            }
            Some(Liquid::Ice(ice)) if is_water => format!(
                "{for_it} its liquid ({name}) would have to be colder than it can be: take {} of its {} as crushed ice, and see that it melts.",
                show::mass(ice),
                show::mass(self.lines[line].grams.mean)
            ),
            Some(Liquid::TooHot) => format!(
                "{for_it} its liquid ({name}) would have to be hotter than it boils: warm egg, butter or the room."
            ),
            Some(Liquid::Ice(_) | Liquid::TooCold) | None => format!(
                "{for_it} its liquid ({name}) would have to be colder than it can be: chill flour, sugar or butter as well."
            ),
        }
    }

    fn has_egg(&self) -> bool {
        self.lines.iter().any(|line| {
            line.ingredient.group == Group::Egg
                && line.ingredient.plant_based == Some(false)
                && line.grams.mean > Mass::ZERO
        })
    }
}

/// A temperature on both scales.
fn both(temperature: Temperature) -> String {
    format!(
        "{} °C ({} °F)",
        show::fixed(temperature.to_celsius(), 0),
        show::fixed(temperature.to_fahrenheit(), 0)
    )
}
