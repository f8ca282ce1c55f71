//! Percentages and totals as they are shown.

use super::standing::{pull_pairs, range_sheet};
use super::sugar::sugar_sheet;
use super::{BalanceSheet, PartTotal, Spread, TableRow};
use crate::baking::balance::{Constituent, Total, total};
use crate::baking::finding::Facts;
use crate::baking::quantity::{Mass, Share, show};

/// The table of percentages and the totals.
pub fn balance_sheet(facts: &Facts) -> BalanceSheet {
    let percentages = facts.percentages;
    let percent = |grams: Mass| {
        percentages
            .of(grams)
            .map_or_else(|| "no flour".to_owned(), show::percent)
    };
    let rows = facts
        .formula
        .batter()
        .map(|line| TableRow {
            line: line.line,
            name: line.ingredient.name.to_owned(),
            grams_shown: show::mass(line.grams.mean),
            percent: percentages.of(line.grams.mean).map(Share::to_percent),
            percent_shown: percent(line.grams.mean),
        })
        .collect();
    let totals = Constituent::ALL
        .into_iter()
        .map(|constituent| {
            let total = total(facts.formula, constituent);
            PartTotal {
                name: constituent.name().to_owned(),
                grams: Spread::from(total.grams),
                grams_shown: show::mass(total.grams.mean),
                percent_shown: percent(total.grams.mean),
                how: how(&total),
                unknown: total.unknown,
            }
        })
        .collect();
    let basis = match (percentages.flour, percentages.stands_in) {
        (None, _) => "No flour in the batter, so no percentages.".to_owned(),
        (Some(_), true) => format!(
            "There is no flour, so {} is taken for it.",
            show::lines(&percentages.flour_lines)
        ),
        (Some(flour), false) => format!(
            "Flour is 100 %: {}, from {}.",
            show::mass(flour.mean),
            show::lines(&percentages.flour_lines)
        ),
    };
    let (figures, sugar) = sugar_sheet(facts);
    let mut gaps: Vec<String> = facts
        .formula
        .holes()
        .map(|line| format!("Line {} has no weight; the totals leave it out.", line.line))
        .collect();
    gaps.extend(
        facts
            .unread
            .iter()
            .map(|line| format!("Line {line} could not be read; the totals leave it out.")),
    );
    BalanceSheet {
        flour: percentages.flour.map(Spread::from),
        flour_basis: basis,
        rows,
        totals,
        figures,
        sugar,
        batter: (percentages.batter.mean > Mass::ZERO).then(|| Spread::from(percentages.batter)),
        servings: facts.servings,
        gaps,
        ranges: range_sheet(facts),
        pull: pull_pairs(facts),
    }
}

/// How a total was got and what it leaves out.
fn how(total: &Total) -> String {
    let mut how = "The sum of each line's weight times its share in the food table".to_owned();
    if let Some(range) = show::mass_range(&total.grams) {
        how.push_str(&format!("; by the spread of the weights {range}"));
    }
    how.push('.');
    if !total.derived.is_empty() {
        how.push_str(&format!(
            " Worked out by difference for {}.",
            show::lines(&total.derived)
        ));
    }
    if !total.unknown.is_empty() {
        how.push_str(&format!(
            " No source gives it for {}: left out, not zero.",
            show::lines(&total.unknown)
        ));
    }
    how
}
