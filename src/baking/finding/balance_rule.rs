//! A rule of balance of its kind far from kept.

use super::outside::{may_judge, severity};
use super::{Facts, Finding};
use crate::baking::balance::Ruled;
use crate::baking::quantity::show;

/// How far past its limit a ratio must lie before it is worth a word, as a part of the limit: sound formulas of
/// textbooks lie up to a seventh past one rule or another (our own margin).
const MARGIN: f64 = 0.15;

/// Checks the rules of balance, in one finding.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let broken: Vec<&Ruled> = facts
        .standing
        .rules
        .iter()
        .filter(|ruled| is_broken(ruled))
        .collect();
    let Some(first) = broken.first().filter(|_| may_judge(facts)) else {
        return Vec::new();
    };
    let said: Vec<String> = broken
        .iter()
        .map(|ruled| {
            let what = show::sentence(ruled.rule.words);
            format!(
                "{what} is {}, where {} is the rule.",
                show::percent_with_range(&ruled.ratio),
                ruled.rule.limits()
            )
        })
        .collect();
    let mut lines: Vec<usize> = broken
        .iter()
        .flat_map(|ruled| ruled.lines.clone())
        .collect();
    lines.sort_unstable();
    lines.dedup();
    vec![Finding {
        name: "balance_rule",
        severity: severity(facts),
        title: "Out of balance for its kind".into(),
        sentence: format!(
            "{} The rules are those for {}. The kind is {}.",
            said.join(" "),
            facts.kind.words(),
            facts.kind_by.words()
        ),
        why: "What makes firm and what makes tender, what dries and what moistens, are held against each other: where one side outweighs the other, a cake falls or toughens.",
        limit: format!(
            "Each rule with a margin of 15 % (our own). {}",
            first.rule.source
        ),
        lines,
        remedies: Vec::new(),
    }]
}

/// Whether all of the ratio's spread lies past a limit and its margin.
fn is_broken(ruled: &Ruled) -> bool {
    let (least, most) = (
        ruled.ratio.low.to_fraction(),
        ruled.ratio.high.to_fraction(),
    );
    ruled
        .rule
        .low
        .is_some_and(|low| most < low * (1.0 - MARGIN))
        || ruled
            .rule
            .high
            .is_some_and(|high| least > high * (1.0 + MARGIN))
}
