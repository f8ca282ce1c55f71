//! What heat flow answered, in words.

use super::OvenSheet;
use super::oven::{both, minutes_words};
use crate::baking::oven::forecast::{Answer, Doubts, Forecast, OtherOven};
use crate::baking::oven::heat::bake::Moment;
use crate::baking::pan::PanEntry;
use crate::baking::quantity::{Share, Temperature, show};
use serde::Serialize;

/// One pan's bake as it is shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BakeSheet {
    /// The pan.
    pub pan: String,
    /// The pan as typed, for a timed bake of it; `None` for the recipe's own.
    pub entry: Option<PanEntry>,
    /// The core that it is done at.
    pub core: Temperature,
    /// "38 to 47 minutes"; a sentence where it never is done.
    pub time: String,
    /// "Look from 34 minutes on, every few minutes."
    pub look: String,
    /// What it is like while it bakes, sentence by sentence.
    pub said: Vec<String>,
    /// How the time was got, and what its spread comes from.
    pub got: String,
    /// The course to draw; empty where it never is done.
    pub course: Vec<Moment>,
    /// Minutes until it is done: early, usual, late.
    pub minutes: Option<[f64; 3]>,
    /// The drawing in words.
    pub drawn: String,
}

/// A bake that takes so many times as long as that of the recipe's pan is of a deeper cake.
const LONGER: f64 = 1.1;
/// A top that browned by more than this against the known bake is named; less than one over it, too.
const NAMED: f64 = 1.6;

/// The bakes of a sheet that was asked, in the order of its rows.
pub fn bake_sheet(sheet: &OvenSheet, answer: &Answer) -> Vec<BakeSheet> {
    let (basis, found) = (basis(sheet), &answer.bakes);
    let own = found
        .iter()
        .zip(&sheet.rows)
        .find(|(_, row)| row.is_own())
        .and_then(|(found, _)| found.as_ref());
    sheet
        .rows
        .iter()
        .zip(found)
        .map(|(row, found)| {
            let never = || BakeSheet {
                pan: row.label.clone(),
                entry: row.entry.clone(),
                core: row.core,
                time: "Not done within five hours".to_owned(),
                look: "The batter is too deep, or the oven too cool: take more pans, or set it hotter.".to_owned(),
                said: Vec::new(),
                got: basis.words.to_owned(),
                course: Vec::new(),
                minutes: None,
                drawn: String::new(),
            };
            let Some(found) = found else { return never() };
            BakeSheet {
                pan: row.label.clone(),
                entry: row.entry.clone(),
                core: row.core,
                time: minutes_words([found.minutes[0], found.minutes[2]]),
                look: format!(
                    "Look from {} on; about {} is likeliest.",
                    minutes_words([found.minutes[0] * 0.95; 2]),
                    minutes_words([found.minutes[1]; 2])
                ),
                said: said(row.is_own(), found, own, basis.is_known),
                got: format!("{} {}{}", basis.words, doubts(found), short(found, own)),
                course: found.course.clone(),
                minutes: Some(found.minutes),
                drawn: drawn(found),
            }
        })
        .collect()
}

/// By what the times are known.
struct Basis {
    words: &'static str,
    is_known: bool,
}

fn basis(sheet: &OvenSheet) -> Basis {
    let known = sheet.ask.as_ref().map_or(&[][..], |ask| &ask.known);
    let is_own = known.iter().any(|known| known.same_oven);
    Basis {
        words: if is_own {
            "From the bakes that you timed: heat flow carries them over to this pan and oven."
        } else if known.is_empty() {
            "By heat flow alone, since no bake of it is timed yet: time one, and write it in below."
        } else {
            "From the recipe's own time in its own pan, at the sea's height: heat flow carries it over to this pan and oven."
        },
        is_known: !known.is_empty(),
    }
}

fn said(is_own: bool, found: &Forecast, own: Option<&Forecast>, is_known: bool) -> Vec<String> {
    let mut said = Vec::new();
    if let (false, Some(own)) = (is_own, own) {
        let ratio = found.minutes[1] / own.minutes[1];
        said.push(format!(
            "{} times as long as in the recipe's pan.",
            show::factor(ratio)
        ));
    }
    let [core, coloured] = [found.core, found.coloured].map(|minutes| minutes_words([minutes; 2]));
    said.push(if found.coloured > found.core {
        format!("The middle is warm enough after {core}; the top takes {coloured} to colour.")
    } else {
        format!("The top has coloured after {coloured}; the middle is warm enough after {core}.")
    });
    said.extend(browning(found, is_known));
    said.push(format!(
        "It loses about {} of its weight as steam.",
        show::percent(Share::fraction(found.lost))
    ));
    said
}

/// Where the crust or the middle runs ahead, and which oven would put that right.
fn browning(found: &Forecast, is_known: bool) -> Option<String> {
    let as_much = show::factor(found.browned);
    let against = if is_known {
        "as in the bake that is known"
    } else {
        "as it takes to colour"
    };
    let ahead = if found.browned > NAMED {
        format!("The crust runs ahead: its top browns {as_much} times as much {against}.")
    } else if is_known && found.browned < 1.0 / NAMED {
        format!(
            "The middle runs ahead: by the time it is done, its top has browned {as_much} times as much {against}."
        )
    } else {
        return None;
    };
    Some(match found.other_oven {
        Some(OtherOven { celsius, minutes }) => format!(
            "{ahead} With the oven at {} it browns more alike, and takes {}.",
            both(Temperature::celsius((celsius / 5.0).round() * 5.0)),
            minutes_words([minutes[0], minutes[2]])
        ),
        None if found.browned > NAMED => {
            format!("{ahead} Cover it loosely once it is brown, or set the oven cooler.")
        }
        None => ahead,
    })
}

/// What is known of the model where a cake bakes for longer than the one it is reckoned from.
fn short(found: &Forecast, own: Option<&Forecast>) -> &'static str {
    if own.is_some_and(|own| found.minutes[1] > LONGER * own.minutes[1]) {
        " Against printed bakes, deeper cakes were reckoned a tenth or two short: expect the later half of it."
    } else {
        ""
    }
}

/// What the spread comes from, the largest first.
fn doubts(found: &Forecast) -> String {
    let Doubts {
        known,
        oven,
        done,
        stuff,
        model,
    } = found.doubts;
    let mut parts = [
        (known, "the known time itself"),
        (oven, "the oven"),
        (done.abs(), "when it counts as done"),
        (stuff, "how batter and crumb carry heat"),
        (model, "how far such reckonings were off on printed bakes"),
    ];
    parts.sort_by(|one, other| other.0.total_cmp(&one.0));
    let named: Vec<String> = parts
        .iter()
        .filter(|(part, _)| *part > 0.02)
        .take(3)
        .map(|(_, words)| (*words).to_owned())
        .collect();
    if named.is_empty() {
        return "Nine bakes in ten fall within it.".to_owned();
    }
    format!(
        "Nine bakes in ten fall within it; its width comes from {}.",
        show::listed(&named)
    )
}

fn drawn(found: &Forecast) -> String {
    let at = |part: f64| {
        let place = ((found.course.len() - 1) as f64 * part).round() as usize;
        found.course[place]
    };
    let [half, end] = [at(0.45), at(0.91)];
    let celsius = |value: f64| show::fixed(value, 0);
    format!(
        "Half-way, at {}, the middle is at {} °C, the edge at {} and the top at {}. When it is done, at {}: {}, {} and {} °C.",
        minutes_words([half.seconds / 60.0; 2]),
        celsius(half.centre),
        celsius(half.edge),
        celsius(half.top),
        minutes_words([end.seconds / 60.0; 2]),
        celsius(end.centre),
        celsius(end.edge),
        celsius(end.top),
    )
}
