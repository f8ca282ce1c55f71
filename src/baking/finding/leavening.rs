//! The two verdicts of leavening, from which its findings follow.

use super::{Facts, gas_band, ph_band};
use super::{Verdict, VerdictKind};
use crate::baking::quantity::{Share, show};

/// From this chance on a verdict is very likely, from the other likely, and below that too close to call:
/// the calibrated words of the IPCC (Mastrandrea and others 2010, guidance note on uncertainty; from memory).
const VERY_LIKELY: f64 = 0.90;
const LIKELY: f64 = 0.66;

/// Acid against soda.
pub fn acid_verdict(facts: &Facts) -> Verdict {
    let Some(bowl) = facts.bowl else {
        return cannot_tell("Nothing that was weighed brings acid, base or a buffer yet.");
    };
    let band = ph_band(facts.kind);
    let short = bowl.chance_below(band.low);
    let spare = 1.0 - bowl.chance_below(band.high);
    let at = format!(
        "crumb pH about {} ({} to {}), where {} want {} to {}",
        show::ph(bowl.ph.mean.value()),
        show::ph(bowl.ph.low.value()),
        show::ph(bowl.ph.high.value()),
        facts.kind.words(),
        show::ph(band.low),
        show::ph(band.high),
    );
    let verdict = if short >= LIKELY {
        verdict(
            VerdictKind::Short,
            "Short of soda",
            format!("More acid than the soda answers: {at}."),
            short,
        )
    } else if spare >= LIKELY {
        verdict(
            VerdictKind::Spare,
            "Soda to spare",
            format!("More soda than the acid takes: {at}."),
            spare,
        )
    } else if short + spare <= 1.0 - LIKELY {
        verdict(
            VerdictKind::Agreed,
            "Acid and soda agree",
            format!("Acid and soda answer one another: {at}."),
            1.0 - short - spare,
        )
    } else {
        let side = if short > spare {
            "short of soda"
        } else {
            "soda to spare"
        };
        Verdict {
            kind: VerdictKind::TooClose,
            title: "Too close to call".into(),
            sentence: format!("It may agree or be {side}: {at}."),
            sure: "Too close to call".into(),
        }
    };
    with_holes(facts, verdict)
}

/// Gas against flour.
pub fn gas_verdict(facts: &Facts) -> Verdict {
    let (Some(bowl), Some(flour)) = (facts.bowl, facts.flour()) else {
        return cannot_tell("Gas is judged against flour, and no flour has a weight yet.");
    };
    let band = gas_band();
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
    let deviation = ((high - low) / 3.29).max(1e-9);
    // A spread that reaches over a limit is weighed by how much of it does.
    let beyond = |limit: f64| 1.0 / (1.0 + f64::exp(-1.702 * (mean - limit) / deviation));
    let (short, spare) = (1.0 - beyond(band.low), beyond(band.high));
    let verdict = if facts.kind.leans_on_air() && short > spare {
        Verdict {
            kind: VerdictKind::Agreed,
            title: "Raised by beaten air".into(),
            sentence: format!(
                "Powder and soda make {at}. Beaten air lifts {}, so little gas is no fault.",
                facts.kind.words()
            ),
            sure: "Beaten air is not reckoned".into(),
        }
    } else if short >= LIKELY {
        verdict(
            VerdictKind::Short,
            "Too little gas",
            format!("Soda and powder make {at}; a batter wants {limits}."),
            short,
        )
    } else if spare >= LIKELY {
        verdict(
            VerdictKind::Spare,
            "Too much gas",
            format!("Soda and powder make {at}; a batter holds {limits}."),
            spare,
        )
    } else if short + spare <= 1.0 - LIKELY {
        verdict(
            VerdictKind::Agreed,
            "Gas enough",
            format!("Soda and powder make {at}; a batter wants {limits}."),
            1.0 - short - spare,
        )
    } else {
        Verdict {
            kind: VerdictKind::TooClose,
            title: "Gas too close to call".into(),
            sentence: format!("Soda and powder make {at}, at the edge of {limits}."),
            sure: "Too close to call".into(),
        }
    };
    with_holes(facts, verdict)
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
    }
}

fn cannot_tell(why: &str) -> Verdict {
    Verdict {
        kind: VerdictKind::CannotTell,
        title: "Cannot tell".into(),
        sentence: why.into(),
        sure: "Not known".into(),
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
    }
}
