//! The two pans as they are shown.

use super::{Choices, LengthUnit, PanSheet, PanView};
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::pan::{Fill, Origin, Pan, PanEntry};
use crate::baking::quantity::{Length, show};

/// Both pans, the factor, and all of it in words.
pub fn pan_sheet(facts: &Facts, choices: &Choices, unit: LengthUnit) -> PanSheet {
    let fit = facts.fit;
    let from = match fit.origin {
        Origin::Named { line, depth: true } => format!("Named in line {line}."),
        Origin::Named { line, depth: false } => {
            format!(
                "Named in line {line}, without its depth: the usual one is taken. Measure yours."
            )
        }
        Origin::Chosen => "Your choice.".to_owned(),
        Origin::Taken => {
            "The text names no pan. Say which it is, and another pan can be reckoned.".to_owned()
        }
    };
    let own = view(fit.own, choices.own_pan.as_ref(), from, fit.own_fill, unit);
    let other = choices.other_pan.as_ref().map(|entry| {
        view(
            fit.other,
            Some(entry),
            "Your choice.".into(),
            fit.other_fill,
            unit,
        )
    });
    let words = match (fit.factor, fit.area_factor) {
        (Some(factor), Some(area)) => format!(
            "By volume the other pan takes {} times the recipe, filled as high as the recipe's own. The same depth would take {} times.",
            show::factor(factor),
            show::factor(area),
        ),
        _ if choices.other_pan.is_none() => {
            "Choose another pan to scale the formula to it.".to_owned()
        }
        _ if fit.origin == Origin::Taken => {
            "Say which pan the recipe is for, and the factor follows.".to_owned()
        }
        _ => "Mend the pan sizes, and the factor follows.".to_owned(),
    };
    PanSheet {
        own,
        other,
        factor: fit.factor,
        factor_shown: fit
            .factor
            .map(|factor| format!("{} times the recipe", show::factor(factor))),
        words,
    }
}

fn view(
    pan: Option<Pan>,
    typed: Option<&PanEntry>,
    from: String,
    fill: Option<Fill>,
    unit: LengthUnit,
) -> PanView {
    let unit = match (typed, &pan) {
        (None, Some(pan)) => pan.unit(unit),
        (Some(entry), _) => entry.unit,
        (None, None) => unit,
    };
    let troubles = typed
        .and_then(|entry| entry.read().err())
        .unwrap_or_default();
    let entry = typed
        .cloned()
        .or_else(|| pan.map(|pan| pan.entry(unit)))
        .unwrap_or_default();
    let depth_shown = fill.map(|fill| between(&fill.depth, |depth| length_both(depth, unit)));
    let fill_shown = fill.map(|fill| {
        let (low, high) = (
            show::percent(fill.share.low),
            show::percent(fill.share.high),
        );
        format!(
            "{} of its depth ({low} to {high})",
            show::percent(fill.share.mean)
        )
    });
    let label = pan.map_or_else(
        || "A pan that cannot be reckoned yet".to_owned(),
        |pan| pan.label(unit),
    );
    let brim_shown = pan.map_or_else(String::new, |pan| show::volume(pan.brim()));
    let words = match (&pan, &depth_shown, &fill_shown) {
        (Some(_), Some(depth), Some(fill)) => format!(
            "{label}: holds {brim_shown} at the brim. The batter stands {depth} deep, {fill}."
        ),
        (Some(_), _, _) => format!("{label}: holds {brim_shown} at the brim."),
        (None, _, _) => label.clone(),
    };
    PanView {
        label,
        entry,
        from,
        known: pan.is_some(),
        troubles,
        brim_shown,
        depth_shown,
        fill_shown,
        section: pan.map(|pan| pan.section(fill.map(|fill| fill.depth.mean))),
        words,
    }
}

/// A mean in words with its range.
fn between(estimate: &Estimate<Length>, words: impl Fn(Length) -> String) -> String {
    words(estimate.mean)
}

/// A length in the baker's unit first, and the other beside it.
fn length_both(length: Length, unit: LengthUnit) -> String {
    let rounded = Length::millimetres((length.to_millimetres()).round());
    let inches = Length::inches((length.to_inches() * 10.0).round() / 10.0);
    let (centimetres, inches) = (
        show::length(rounded, LengthUnit::Centimetres),
        show::length(inches, LengthUnit::Inches),
    );
    match unit {
        LengthUnit::Inches => format!("{inches} ({centimetres})"),
        LengthUnit::Centimetres => format!("{centimetres} ({inches})"),
    }
}
