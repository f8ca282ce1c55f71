//! What mends a cause, as changes of the formula; what lies in hands, pan or oven is told in words alone.

use super::figures::AGAINST_FLOUR;
use super::{Cause, Figure};
use crate::baking::balance::Class;
use crate::baking::finding::{
    Edit, Facts, Remedy, last_leavener, less_gas, less_soda, less_sugar, may_judge, more_gas,
    more_soda,
};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::FlourBasis;
use crate::baking::quantity::{Mass, Share, show};

/// The mends of a cause, none where it is not mended by an amount.
pub fn remedies(cause: &Cause, facts: &Facts) -> Vec<Remedy> {
    let by_bowl = |mend: fn(&Facts, &crate::baking::chemistry::Bowl) -> Vec<Remedy>| {
        facts.bowl.map_or_else(Vec::new, |bowl| mend(facts, bowl))
    };
    match cause.figure {
        Figure::Above(Class::Sugar) if !may_judge(facts) => less_sugar(facts),
        Figure::Above(class) => to_usual(facts, class, true).into_iter().collect(),
        Figure::Below(class) => to_usual(facts, class, false).into_iter().collect(),
        Figure::FlourAbove => flour(facts, true).into_iter().collect(),
        Figure::FlourBelow => flour(facts, false).into_iter().collect(),
        Figure::GasAbove => by_bowl(less_gas),
        Figure::GasBelow => by_bowl(more_gas),
        Figure::PhBelow => by_bowl(more_soda),
        Figure::PhAbove => by_bowl(less_soda),
        Figure::SeedColour | Figure::BerryColour if facts.has_loose_soda() => by_bowl(less_soda),
        _ => Vec::new(),
    }
}

/// A class at what is usual for the kind, by its heaviest line. Salt that was left out is written in.
fn to_usual(facts: &Facts, class: Class, above: bool) -> Option<Remedy> {
    if !may_judge(facts) {
        return None;
    }
    let standing = facts.standing;
    let (count, range) = (standing.count(class), standing.range(class)?);
    let usual = facts.flour()? * range.typical.to_fraction();
    let more = usual.to_grams() - count.grams.mean.to_grams();
    if (more < 0.0) != above {
        return None;
    }
    let of_kind = format!(
        "{} of the flour, which is usual for {}",
        show::percent(range.typical),
        facts.kind.words()
    );
    let lines = facts.formula.batter();
    let held = lines.filter_map(|line| {
        let share = class.share(line.ingredient).filter(|share| *share > 0.0)?;
        Some((line, share))
    });
    let weight = |line: &Weighed| line.grams.mean.to_grams();
    match held.max_by(|a, b| weight(a.0).total_cmp(&weight(b.0))) {
        Some((line, share)) => weighed(line, weight(line) + more / share, &of_kind),
        None if class == Class::Salt => {
            let grams = rounded(usual.to_grams());
            Some(Remedy {
                label: format!("Add {} salt", show::mass(Mass::grams(grams))),
                sentence: format!("It is {of_kind}."),
                edits: vec![Edit::AddAfter {
                    line: last_leavener(facts),
                    text: format!("{} g salt", show::plain(grams)),
                }],
            })
        }
        None => None,
    }
}

/// Flour that stands to sugar, fat, egg and liquid as is usual for the kind.
fn flour(facts: &Facts, much: bool) -> Option<Remedy> {
    if !may_judge(facts) {
        return None;
    }
    let standing = facts.standing;
    let (mut grams, mut usual) = (Mass::ZERO, 0.0);
    for class in AGAINST_FLOUR {
        grams = grams + standing.count(class).grams.mean;
        usual += standing.range(class)?.typical.to_fraction();
    }
    let now = facts.flour()?.to_grams();
    let wanted = grams.to_grams() / usual;
    if !wanted.is_finite() || (wanted < now) != much {
        return None;
    }
    let lines = facts.formula.batter();
    let flours = lines.filter(|line| line.ingredient.flour_basis == FlourBasis::Always);
    let weight = |line: &Weighed| line.grams.mean.to_grams();
    let line = flours.max_by(|a, b| weight(a).total_cmp(&weight(b)))?;
    let of_kind = format!(
        "all else then is {} of the flour, which is usual for {}",
        show::percent(Share::fraction(usual)),
        facts.kind.words()
    );
    weighed(line, weight(line) + wanted - now, &of_kind)
}

/// A line at another weight; `None` where nothing of it would be left, or nothing changes that a scale shows.
fn weighed(line: &Weighed, grams: f64, why: &str) -> Option<Remedy> {
    let before = line.grams.mean;
    let grams = rounded(grams);
    if !grams.is_finite() || grams < 0.1 || (grams - before.to_grams()).abs() < 0.1 {
        return None;
    }
    let after = Mass::grams(grams);
    Some(Remedy {
        label: format!("Use {} {}", show::mass(after), line.ingredient.name),
        sentence: format!("Instead of {}: {why}.", show::mass(before)),
        edits: vec![Edit::Weigh {
            line: line.line,
            part: line.part,
            grams,
        }],
    })
}

/// Tenths of a gram below 20 g, whole grams above.
fn rounded(grams: f64) -> f64 {
    if grams < 20.0 {
        (grams * 10.0).round() / 10.0
    } else {
        grams.round()
    }
}
