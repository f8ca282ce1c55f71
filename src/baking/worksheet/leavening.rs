//! Acid, soda and gas as they are shown.

use super::line::source;
use super::{
    AcidShare, BatterSaid, FigureShown, GasMoment, GasSheet, LeaveningSheet, PhRule, Spread,
};
use crate::baking::chemistry::course::{self, SETS_AT, Stage, State};
use crate::baking::chemistry::{
    Bowl, CARBON_DIOXIDE_GRAMS_PER_MMOL, NEUTRAL, Part, SODA_MMOL_PER_GRAM,
};
use crate::baking::finding::{Facts, acid_verdict, gas_band, gas_verdict, ph_band};
use crate::baking::formula::Weighed;
use crate::baking::quantity::{Equivalents, Mass, Share, show};

/// Both verdicts with the figures behind them.
pub fn leavening_sheet(facts: &Facts, said: &BatterSaid) -> LeaveningSheet {
    LeaveningSheet {
        verdict: acid_verdict(facts),
        gas_verdict: gas_verdict(facts),
        shares: facts.bowl.map_or_else(Vec::new, |bowl| shares(facts, bowl)),
        acid: facts.bowl.map(|bowl| Spread::from(bowl.acid)),
        soda: facts.bowl.map(|bowl| Spread::from(bowl.soda)),
        rule: facts.bowl.map(|bowl| rule(facts, bowl)),
        gas: facts.bowl.and_then(|bowl| gas(facts, bowl)),
        figures: facts.bowl.map_or_else(Vec::new, figures),
        said: said.clone(),
        waits_trouble: said.waits().err(),
        crumb_ph_trouble: said.crumb_ph().err(),
    }
}

fn shares(facts: &Facts, bowl: &Bowl) -> Vec<AcidShare> {
    bowl.parts
        .iter()
        .filter_map(|part| {
            let line = facts
                .formula
                .batter()
                .find(|line| (line.line, line.part) == (part.line, part.part))?;
            Some(share(line, part))
        })
        .collect()
}

fn share(line: &Weighed, part: &Part) -> AcidShare {
    let mean = part.acid.mean.to_milliequivalents();
    let figure = show::milliequivalents(mean.abs());
    let side = match (part.unknown, figure.as_str()) {
        (true, _) => "not known".to_owned(),
        (false, "0") => "neither acid nor base".to_owned(),
        (false, figure) if mean > 0.0 => format!("{figure} meq acid"),
        (false, figure) => format!("{figure} meq base"),
    };
    AcidShare {
        line: line.line,
        name: line.ingredient.name.to_owned(),
        acid: Spread::from(part.acid),
        shown: side,
        how: how(line),
        unknown: part.unknown,
    }
}

/// How a line's acid or base was got, in sentences.
fn how(line: &Weighed) -> String {
    let mut how = String::new();
    if let Some(leavening) = line.ingredient.leavening {
        if let Some((_, grams)) = leavening.bicarbonate {
            how.push_str(&format!("{} g of bicarbonate in 100 g", show::plain(grams)));
        }
        if leavening.neutralised.1 > 0.0 {
            let with = if how.is_empty() { "" } else { ", with " };
            how.push_str(&format!(
                "{with}{} that takes up {} g of soda",
                leavening.acids_in_words(),
                show::plain(leavening.neutralised.1)
            ));
        }
        how.push_str(&format!(". {}. ", source(leavening.cited)));
    }
    match line.ingredient.acidity {
        Some(acidity) => {
            let (low, typical, high) = acidity.ph;
            how.push_str(&format!(
                "Its own pH is about {} ({} to {}): {}. ",
                show::plain(typical),
                show::plain(low),
                show::plain(high),
                source(acidity.ph_cited)
            ));
            if let Some(cited) = acidity.acids_cited {
                how.push_str(&format!("Acids: {}. ", source(cited)));
            }
            how.push_str(&format!(
                "Other buffering: {}.",
                source(acidity.buffer_cited)
            ));
        }
        None if line.ingredient.leavening.is_none() => {
            how.push_str("No source gives its acidity. It is counted as none, and the spread is widened for it.");
        }
        None => {}
    }
    let notes = [
        line.ingredient
            .leavening
            .map_or("", |leavening| leavening.note),
        line.ingredient.acidity.map_or("", |acidity| acidity.note),
    ];
    for note in notes.into_iter().filter(|note| !note.is_empty()) {
        how.push_str(&format!(" {}.", show::sentence(note)));
    }
    if line.in_pieces {
        how.push_str(" It stays in pieces, so about a third of its acid is counted (common practice, no source).");
    }
    how.trim_end().to_owned()
}

fn rule(facts: &Facts, bowl: &Bowl) -> PhRule {
    let band = ph_band(facts.kind);
    let (crumb, batter) = (Spread::from(bowl.ph), Spread::from(bowl.batter_ph));
    let how = if bowl.is_measured() {
        "reckoned from the bowl and your measurement, each by its certainty, at"
    } else {
        "reckoned at"
    };
    PhRule {
        scale_low: (band.low - 1.0)
            .min(crumb.low)
            .min(batter.low)
            .floor()
            .max(1.0),
        scale_high: (band.high + 1.0)
            .max(crumb.high)
            .max(batter.high)
            .ceil()
            .min(13.0),
        band_low: band.low,
        band_high: band.high,
        band_for: band.source.to_owned(),
        crumb,
        batter,
        words: format!(
            "The crumb is {how} pH {}, nine cases in ten from {} to {}; the batter before the oven, with its gas in it, at {}. The band for {} runs from {} to {}. The kind is {}.{}{}",
            show::ph(crumb.mean),
            show::ph(crumb.low),
            show::ph(crumb.high),
            show::ph(batter.mean),
            facts.kind.words(),
            show::ph(band.low),
            show::ph(band.high),
            facts.kind_by.words(),
            least_sure(facts, bowl),
            upper_end(bowl),
        ),
    }
}

/// What the upper end of the pH stands for, where phosphates make it.
fn upper_end(bowl: &Bowl) -> &'static str {
    // Less than this is lost in the rest of the range.
    if bowl.settled_otherwise() < 0.3 {
        ""
    } else {
        " The upper end is for phosphates that take up less soda than the trade's values say, as they may in the minutes of a bake."
    }
}

/// The line that makes the pH unsure most, in a sentence.
fn least_sure(facts: &Facts, bowl: &Bowl) -> String {
    let parts = bowl.parts_by(&|part| part.acid.deviation());
    let name = |part: &Part| {
        facts
            .formula
            .batter()
            .find(|line| (line.line, line.part) == (part.line, part.part))
            .map(|line| line.ingredient.name)
    };
    match parts.first().map(|part| (part.line, name(part))) {
        Some((line, Some(name))) => format!(" Least sure in it is {name} (line {line})."),
        _ => String::new(),
    }
}

fn gas(facts: &Facts, bowl: &Bowl) -> Option<GasSheet> {
    let flour = facts.flour()?;
    let band = gas_band(facts);
    let percent = bowl
        .gas
        .made
        .map(|made| Share::percent(made / flour * 100.0));
    let shown = |share: Share| show::percent(share);
    let early = bowl.gas.early;
    Some(GasSheet {
        grams: Spread::from(bowl.gas.made),
        percent: Spread {
            mean: percent.mean.to_percent(),
            low: percent.low.to_percent(),
            high: percent.high.to_percent(),
        },
        band_low: band.low,
        band_high: band.high,
        scale_high: (percent.high.to_percent() * 1.1).max(band.high * 1.25),
        early_percent: early.to_percent(),
        words: format!(
            "Soda and powder set free {} of carbon dioxide, {} of the flour ({} to {}); {} want {} to {} %. {} of it is there before the oven.",
            show::mass(bowl.gas.made.mean),
            shown(percent.mean),
            shown(percent.low),
            shown(percent.high),
            facts.kind.words(),
            show::plain(band.low),
            show::plain(band.high),
            shown(early),
        ),
        course: course(bowl, flour),
        sets_at: sets_at(facts),
        hottest: facts.handling.hottest(),
        course_words: course_words(facts, bowl),
    })
}

/// The course up to the hot core, against the flour.
fn course(bowl: &Bowl, flour: Mass) -> Vec<GasMoment> {
    let percent = |moles: f64| {
        moles * 1000.0 * CARBON_DIOXIDE_GRAMS_PER_MMOL / flour.to_grams().max(1e-9) * 100.0
    };
    let moment = |state: &State| GasMoment {
        oven: state.stage == Stage::Oven,
        minutes: state.minutes,
        celsius: state.celsius,
        made: percent(state.made),
        held: percent(state.made - state.lost),
    };
    let hot = |state: &&State| state.stage != Stage::Crumb;
    bowl.course.iter().filter(hot).map(moment).collect()
}

/// The core temperature at which the crumb sets, C.
fn sets_at(facts: &Facts) -> f64 {
    facts
        .setting
        .map_or(SETS_AT, |setting| setting.at.mean.to_celsius())
}

/// The course in words.
fn course_words(facts: &Facts, bowl: &Bowl) -> String {
    let sets = course::at(&bowl.course, sets_at(facts));
    let (Some(sets), Some(crumb)) = (sets, bowl.course.last()) else {
        return "Without water in it nothing can be said of the course.".into();
    };
    let grams =
        |moles: f64| show::mass(Mass::grams(moles * 1000.0 * CARBON_DIOXIDE_GRAMS_PER_MMOL));
    let kept = crumb.kept * 1000.0 / SODA_MMOL_PER_GRAM;
    let left = if kept < 0.05 {
        "Hardly any soda is left in the crumb".to_owned()
    } else {
        format!(
            "The bicarbonate of {} of soda is left in the crumb",
            show::mass(Mass::grams(kept))
        )
    };
    format!(
        "{} of the gas is lost in mixing and waiting. {} about {} C, bubbles of gas, beaten air and steam come to some {} ml. {left}, and {} of carbon dioxide stays dissolved. How much of the gas a batter holds is known to about 30 %.",
        show::percent(bowl.gas.lost),
        if sets_at(facts) > sets.celsius {
            "The crumb does not get as hot as it would set at; when it is hottest, at"
        } else {
            "When the crumb sets at"
        },
        show::fixed(sets.celsius, 0),
        show::fixed((sets.litres * 100.0).round() * 10.0, 0),
        grams(crumb.dissolved),
    )
}

/// The milliequivalents, and the same in soda.
fn figures(bowl: &Bowl) -> Vec<FigureShown> {
    let meq = |value: Equivalents| {
        format!(
            "{} meq",
            show::milliequivalents(value.to_milliequivalents())
        )
    };
    let spread = |estimate: &crate::baking::estimate::Estimate<Equivalents>| {
        let (low, high) = (meq(estimate.low), meq(estimate.high));
        if low == high {
            meq(estimate.mean)
        } else {
            format!("{} ({low} to {high})", meq(estimate.mean))
        }
    };
    let soda = |value: Equivalents| {
        show::mass(Mass::grams(
            (value.to_milliequivalents() / SODA_MMOL_PER_GRAM).max(0.0),
        ))
    };
    vec![
        FigureShown {
            label: "Acid to pH 7".into(),
            value: spread(&bowl.acid),
            how: "What every ingredient takes up from its own pH to 7: its acids by their constants, the rest by buffer slopes. A milliequivalent is answered by 0.084 g of soda.".into(),
        },
        FigureShown {
            label: "Free soda".into(),
            value: spread(&bowl.soda),
            how: "All bicarbonate less what the leaveners' own acid takes up to pH 7: by neutralising value, phosphates by a curve. Baking powder brings little.".into(),
        },
        FigureShown {
            label: "Soda still missing to pH 7".into(),
            value: soda(bowl.missing(NEUTRAL)),
            how: "The acid to pH 7 and the little bicarbonate that a crumb keeps at that pH, less the free soda, divided by 11.9 meq for a gram of soda.".into(),
        },
    ]
}
