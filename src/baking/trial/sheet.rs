//! A bake as the page shows it.

use super::measured::degrees;
use super::{Lesson, Measured, OutcomeTrouble, Trial, lessons, measured};
use crate::baking::ingredient::Own;
use crate::baking::quantity::{Length, Temperature, show};
use crate::baking::worksheet::{Inputs, Looks, Settings, Worksheet, worksheet_again};

/// A bake, ready to be shown.
#[derive(Clone, Debug, PartialEq)]
pub struct TrialSheet {
    /// What was typed, as figures.
    pub measured: Measured,
    /// What is wrong, each at its field.
    pub troubles: Vec<OutcomeTrouble>,
    /// What follows from the figures, beside what was reckoned.
    pub figures: Vec<TrialFigure>,
    /// What it teaches.
    pub lessons: Vec<Lesson>,
    /// The pan that it was baked in.
    pub pan: String,
    /// What is to be minded, whole sentences.
    pub cautions: Vec<String>,
    /// The worksheet of the recipe as it was baked.
    pub worksheet: Worksheet,
}

/// A figure that follows from what was measured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TrialFigure {
    /// What it is.
    pub label: &'static str,
    /// In words.
    pub value: String,
    /// How it was got, and from what source.
    pub how: String,
}

/// Egg is to have reached this, C: 160 °F (US Department of Agriculture, safe minimum internal temperatures).
const EGG: f64 = 71.1;
/// A core so much off the usual one is told, K.
const OFF: f64 = 4.0;

/// A bake as it is shown; `id` is the name of its record, `now` the recipe as it stands today.
pub fn trial_sheet(
    id: &str,
    trial: &Trial,
    now: &Inputs,
    settings: &Settings,
    own: &Own,
) -> TrialSheet {
    let worksheet = worksheet_again(&mut Looks::default(), &trial.as_baked(), settings, own);
    let pans = &worksheet.pans;
    let pan = pans.shelf.first().unwrap_or(&pans.own);
    let depth = pan.entry.read().ok().map(|pan| pan.depth);
    let (found, troubles) = measured(trial, settings, depth);
    TrialSheet {
        figures: figures(&found, &worksheet, settings),
        lessons: lessons(id, trial, &found, now, &worksheet, (settings, own)),
        pan: pan.label.clone(),
        cautions: cautions(&found, &worksheet),
        measured: found,
        troubles,
        worksheet,
    }
}

fn figures(found: &Measured, sheet: &Worksheet, settings: &Settings) -> Vec<TrialFigure> {
    let mut figures = Vec::new();
    if let (Some(before), Some(after)) = (found.mass_in, found.mass_out) {
        let lost = (1.0 - after.to_grams() / before.to_grams()) * 100.0;
        figures.push(TrialFigure {
            label: "Lost in the oven",
            value: format!("{} % of its weight", show::trimmed(lost, 1)),
            how: format!(
                "{} went in, {} came out. Most cakes lose 8 to 15 % (common practice, no source); less is wetter.",
                show::mass(before),
                show::mass(after)
            ),
        });
    }
    if let (Some(centre), Some(edge)) = (found.centre, found.edge) {
        figures.push(contour(centre, edge, settings));
    }
    if let (Some(core), Some(row)) = (found.core, sheet.oven.rows.first()) {
        figures.push(core_figure(core, row.core, settings));
    }
    if let Some(ph) = found.crumb_ph {
        let reckoned = sheet.leavening.rule.as_ref().map(|rule| rule.crumb);
        figures.push(TrialFigure {
            label: "pH of the crumb",
            value: match reckoned {
                Some(crumb) => format!(
                    "{} measured, {} reckoned ({} to {})",
                    show::ph(ph.value()),
                    show::ph(crumb.mean),
                    show::ph(crumb.low),
                    show::ph(crumb.high)
                ),
                None => format!("{} measured", show::ph(ph.value())),
            },
            how:
                "A strip in a slurry is read to about 0.2 either side (common practice, no source)."
                    .to_owned(),
        });
    }
    figures
}

/// How much the middle stands above the edge. After the contour of the AACC's layer cake template, 10-91.01, which takes two
/// edges (from memory).
fn contour(centre: Length, edge: Length, settings: &Settings) -> TrialFigure {
    let apart = centre.to_millimetres() - edge.to_millimetres();
    let shown = show::length(Length::millimetres(apart.abs()), settings.lengths);
    let share = apart / edge.to_millimetres();
    TrialFigure {
        label: "Contour",
        value: if apart.abs() < 1.0 {
            "level".to_owned()
        } else if apart > 0.0 {
            format!("domed: {shown} above the edge")
        } else {
            format!("sunken: {shown} below the edge")
        },
        how: format!(
            "Height in the middle less that at the edge, {} % of it. After the contour of a layer cake template (AACC 10-91.01, from memory).",
            show::fixed(share * 100.0, 0)
        ),
    }
}

fn core_figure(core: Temperature, usual: Temperature, settings: &Settings) -> TrialFigure {
    let scale = settings.kitchen_oven().scale;
    let off = core.to_celsius() - usual.to_celsius();
    TrialFigure {
        label: "Core",
        value: format!(
            "{}, {}",
            degrees(core, scale),
            match off {
                off if off < -OFF => "below what this cake is usually done at",
                off if off > OFF => "above what this cake is usually done at",
                _ => "as this cake is usually done",
            }
        ),
        how: format!(
            "Usually {} (see the oven's part of the ticket).",
            degrees(usual, scale)
        ),
    }
}

/// What is to be minded: doneness first.
fn cautions(found: &Measured, sheet: &Worksheet) -> Vec<String> {
    let mut said = Vec::new();
    let core = found.core.map(Temperature::to_celsius);
    if core.is_some_and(|core| core < EGG) {
        said.push(
            "Its core stayed below 71.1 °C (160 °F): with egg or raw flour in it, it is not to be eaten, given or sold."
                .to_owned(),
        );
    }
    said.extend(sheet.oven.cautions.iter().cloned());
    said.push(
        "Batter is not to be tasted: raw flour and raw egg can carry germs. Score the baked cake."
            .to_owned(),
    );
    if !sheet.allergens.is_empty() {
        let names: Vec<String> = sheet
            .allergens
            .iter()
            .map(|it| show::amid(&it.name))
            .collect();
        said.push(format!(
            "Tell whoever tastes it what is in it: {}. A help, never a guarantee: read the packets.",
            show::listed(&names)
        ));
    }
    said
}
