//! Baking powder left alone with much acid.

use super::{Facts, Finding, Severity, VerdictKind, acid_verdict, mend};
use crate::baking::balance::Kind;
use crate::baking::quantity::{Share, show};

/// Acid that no loose soda answers, as soda against flour, per cent: a quarter of a teaspoon to two cups.
const MOST: f64 = 0.5;

/// Checks the sour lines against loose soda, where there is powder.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl.filter(|_| facts.is_leavened()) else {
        return Vec::new();
    };
    let (sour, soda) = (facts.sour_sum(), facts.loose_soda());
    let all_soda = facts.powders().next().is_none()
        && !facts.formula.batter().any(|line| {
            line.ingredient
                .leavening
                .is_some_and(|it| it.neutralised.1 > 0.0 && it.bicarbonate.is_some())
        });
    let left = facts.as_soda(sour - soda).unwrap_or(0.0);
    if all_soda
        || soda > sour / 2.0
        || left < MOST
        || matches!(facts.kind, Kind::FruitCake | Kind::Yeast)
    {
        return Vec::new();
    }
    // The mends of a bowl that is short stand with that finding.
    let short = acid_verdict(facts).kind == VerdictKind::Short;
    vec![Finding {
        name: "powder_in_acid",
        severity: if short { Severity::Look } else { Severity::Note },
        title: "Powder in a sour batter".into(),
        sentence: format!(
            "The sour lines would answer soda of {} of the flour, and the powder brings none for them. Part of it must become soda.",
            show::percent(Share::percent(left))
        ),
        why: "Powder holds just acid enough for its own soda. In a sour batter it goes off in the bowl and the sourness stays.",
        limit: "At most 0.5 % of the flour in soda, a quarter of a teaspoon to two cups (our own limit; common practice).".into(),
        lines: facts.sour().into_iter().map(|(line, _)| line).take(3).collect(),
        remedies: if short { Vec::new() } else { mend::more_soda(facts, bowl) },
    }]
}
