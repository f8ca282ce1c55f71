//! The two verdicts of leavening, from which its findings follow.

use super::facts::chance_above;
use super::{Facts, gas_band, ph_band, soda_left};
use super::{Verdict, VerdictKind};
use crate::baking::balance::Kind;
use crate::baking::chemistry::Bowl;
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, Share, show};

/// From this chance on a verdict is very likely, from the other likely, and below that too close to call:
/// the calibrated words of the IPCC (Mastrandrea and others 2010, guidance note on uncertainty; from memory).
pub(in crate::baking) const VERY_LIKELY: f64 = 0.90;
pub(in crate::baking) const LIKELY: f64 = 0.66;

/// Acid against soda.
pub fn acid_verdict(facts: &Facts) -> Verdict {
    let Some(bowl) = facts.bowl else {
        return cannot_tell("Nothing that was weighed brings acid, base or a buffer yet.");
    };
    let band = ph_band(facts.kind);
    let short = bowl.chance_below(band.low);
    let at = format!(
        "crumb pH about {} ({} to {}), where {} want {} to {}",
        show::ph(bowl.ph.mean.value()),
        show::ph(bowl.ph.low.value()),
        show::ph(bowl.ph.high.value()),
        facts.kind.words(),
        show::ph(band.low),
        show::ph(band.high),
    );
    if !facts.ammonia().is_empty() {
        return with_holes(
            facts,
            too_close(
                "Too close to call",
                format!(
                    "Baker's ammonia leaves as gas, and how much of it stays is not reckoned. If all of it stayed: {at}."
                ),
            ),
        );
    }
    let loose = facts.has_loose_soda();
    if !loose && wants_none(facts) {
        let none = if facts.is_leavened() {
            "The powder brings its own acid, and nothing here is sour enough to want soda"
        } else {
            "There is no soda or powder, and nothing here that wants any"
        };
        return with_holes(
            facts,
            verdict(
                VerdictKind::Agreed,
                NONE_NEEDED,
                format!("{none}: {at}."),
                1.0,
            ),
        );
    }
    // Where no soda is loose there is none to spare.
    let above = if loose {
        1.0 - bowl.chance_below(band.high)
    } else {
        0.0
    };
    let left = soda_left(facts.kind);
    let chance_left = |limit: f64| {
        facts.soda_left().map_or(0.0, |(mean, deviation)| {
            chance_above(mean, deviation, limit)
        })
    };
    let (spare, gross) = (chance_left(left.spare).max(above), chance_left(left.gross));
    let of_flour = facts.soda_left().map_or_else(String::new, |(mean, _)| {
        format!(
            " Soda of {} of the flour finds no acid.",
            show::percent(Share::percent(mean))
        )
    });
    let verdict = if short >= LIKELY {
        let mut short = verdict(
            VerdictKind::Short,
            "Short of soda",
            format!("More acid than the soda answers: {at}."),
            short,
        );
        if is_weak(facts) {
            short.sure = "Weak".into();
            short.mild = true;
        }
        short
    } else if gross >= LIKELY {
        verdict(
            VerdictKind::Spare,
            GROSS,
            format!("Far more soda than the acid takes: {at}.{of_flour}"),
            gross,
        )
    } else if spare >= LIKELY {
        Verdict {
            mild: above < LIKELY,
            ..verdict(
                VerdictKind::Spare,
                "Soda to spare",
                format!("More soda than the acid takes: {at}.{of_flour}"),
                spare,
            )
        }
    } else if short + above <= 1.0 - LIKELY {
        verdict(
            VerdictKind::Agreed,
            "Acid and soda agree",
            format!("Acid and soda answer one another: {at}."),
            1.0 - short - above,
        )
    } else {
        let side = if short > above {
            "short of soda"
        } else {
            "soda to spare"
        };
        too_close(
            "Too close to call",
            format!("It may agree or be {side}: {at}."),
        )
    };
    with_holes(facts, verdict)
}

/// The titles by which findings know a verdict.
pub(super) const GROSS: &str = "Gross excess of soda";
pub(super) const NONE_NEEDED: &str = "No soda needed";

/// Whether a batter without loose soda wants none: nothing in it is sour, or its kind keeps its acid.
fn wants_none(facts: &Facts) -> bool {
    !facts.is_sour()
        || (!facts.is_leavened() && matches!(facts.kind, Kind::Brownie | Kind::FruitCake))
        || (!facts.is_leavened() && facts.kind.is_foam() && is_of_the_foam(facts))
}

/// Whether the sour lines are no more than steadies beaten egg: a quarter of a teaspoon of cream of tartar, 4 meq,
/// for each white of 33 g.
fn is_of_the_foam(facts: &Facts) -> bool {
    const MEQ_PER_GRAM: f64 = 0.12;
    let eggs: f64 = facts
        .formula
        .batter()
        .filter(|line| line.ingredient.group == Group::Egg)
        .map(|line| line.grams.mean.to_grams())
        .sum();
    facts.sour_sum() <= MEQ_PER_GRAM * eggs
}

/// Whether a low crumb is weak evidence: layer cakes on powder alone are reckoned 0.4 to 0.7 below the textbook
/// bands, and it is not known which of the two is off.
pub(in crate::baking) fn is_weak(facts: &Facts) -> bool {
    const RECKONED_LOW: f64 = 0.7;
    facts.kind.is_layer()
        && !facts.has_loose_soda()
        && facts
            .bowl
            .is_some_and(|bowl| bowl.ph.mean.value() > ph_band(facts.kind).low - RECKONED_LOW)
}

/// Gas against flour.
pub fn gas_verdict(facts: &Facts) -> Verdict {
    let (Some(bowl), Some(flour)) = (facts.bowl, facts.flour()) else {
        return cannot_tell("Gas is judged against flour, and no flour has a weight yet.");
    };
    let band = gas_band(facts);
    let kind = facts.kind.words();
    let percent = bowl.gas.made.map(|made| Share::fraction(made / flour));
    let [low, mean, high] =
        [percent.low, percent.mean, percent.high].map(|share| share.to_percent());
    let at = format!(
        "{} of the flour ({} to {})",
        show::percent(percent.mean),
        show::percent(percent.low),
        show::percent(percent.high)
    );
    let limits = format!("{} to {} %", show::plain(band.low), show::plain(band.high));
    let deviation = (high - low) / 3.29;
    // A spread that reaches over a limit is weighed by how much of it does.
    let spare = chance_above(mean, deviation, band.high);
    let short = if band.low > 0.0 {
        1.0 - chance_above(mean, deviation, band.low)
    } else {
        0.0
    };
    let by_air = facts.kind.leans_on_air()
        && (short > 1.0 - LIKELY || matches!(facts.kind, Kind::AngelFood | Kind::Pound));
    let verdict = if facts.kind == Kind::Yeast {
        Verdict {
            kind: VerdictKind::Agreed,
            title: "Raised by yeast".into(),
            sentence: format!("Powder and soda make {at}. What yeast makes is not reckoned."),
            sure: "Yeast is not reckoned".into(),
            mild: false,
        }
    } else if !facts.ammonia().is_empty() {
        too_close(
            "Gas too close to call",
            with_ammonia(facts, bowl, flour, &at),
        )
    } else if by_air && spare < LIKELY {
        Verdict {
            kind: VerdictKind::Agreed,
            title: "Raised by beaten air".into(),
            sentence: format!(
                "Powder and soda make {at}. Beaten air lifts {kind}, so little gas is no fault."
            ),
            sure: "Beaten air is not reckoned".into(),
            mild: false,
        }
    } else if short >= LIKELY {
        verdict(
            VerdictKind::Short,
            "Too little gas",
            format!("Soda and powder make {at}; {kind} want {limits}."),
            short,
        )
    } else if spare >= LIKELY {
        verdict(
            VerdictKind::Spare,
            "Too much gas",
            format!("Soda and powder make {at}; {kind} hold {limits}."),
            spare,
        )
    } else if short + spare <= 1.0 - LIKELY {
        verdict(
            VerdictKind::Agreed,
            "Gas enough",
            format!("Soda and powder make {at}; {kind} want {limits}."),
            1.0 - short - spare,
        )
    } else {
        too_close(
            "Gas too close to call",
            format!("Soda and powder make {at}, at the edge of {limits}."),
        )
    };
    with_holes(facts, verdict)
}

/// The gas of a batter with baker's ammonia, of which `at` is the carbon dioxide.
fn with_ammonia(facts: &Facts, bowl: &Bowl, flour: Mass, at: &str) -> String {
    let share = |grams: Mass| show::percent(Share::fraction(grams / flour));
    let more = bowl.gas.if_dry;
    let more = format!("{} to {}", share(more.low), share(more.high));
    let all = format!("All leaveners make carbon dioxide, {at}.");
    if facts.kind != Kind::Cookie {
        return format!(
            "{all} That is all that lifts: the ammonia itself, room for {more} more where goods bake dry, stays in a moist crumb."
        );
    }
    let made = bowl.gas.made;
    format!(
        "{all} Baked thin and dry, baker's ammonia adds ammonia and steam with the room of {more} more: {} to {} in all. Where they \
         stay moist its ammonia stays in, so nothing is built on that.",
        share(made.low + bowl.gas.if_dry.low),
        share(made.high + bowl.gas.if_dry.high),
    )
}

fn too_close(title: &str, sentence: String) -> Verdict {
    Verdict {
        kind: VerdictKind::TooClose,
        title: title.into(),
        sentence,
        sure: "Too close to call".into(),
        mild: false,
    }
}

fn verdict(kind: VerdictKind, title: &str, sentence: String, chance: f64) -> Verdict {
    let sure = if chance >= VERY_LIKELY {
        "Very likely"
    } else {
        "Likely"
    };
    Verdict {
        kind,
        title: title.into(),
        sentence,
        sure: sure.into(),
        mild: false,
    }
}

fn cannot_tell(why: &str) -> Verdict {
    Verdict {
        kind: VerdictKind::CannotTell,
        title: "Cannot tell".into(),
        sentence: why.into(),
        sure: "Not known".into(),
        mild: false,
    }
}

/// A verdict on a formula with holes is not claimed: it says what is missing, and what the rest would say.
fn with_holes(facts: &Facts, verdict: Verdict) -> Verdict {
    let holes = facts.holes();
    if holes.is_empty() {
        return verdict;
    }
    let lines = show::lines(&holes);
    let (have, them) = if holes.len() == 1 {
        ("has", "it")
    } else {
        ("have", "them")
    };
    Verdict {
        kind: VerdictKind::CannotTell,
        title: "Cannot tell yet".into(),
        sentence: format!(
            "{} {have} no weight. Without {them}: {}",
            show::sentence(&lines),
            verdict.sentence
        ),
        sure: format!("Not before {lines} {have} a weight"),
        mild: false,
    }
}
