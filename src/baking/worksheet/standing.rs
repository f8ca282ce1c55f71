//! How the formula stands to formulas of its kind, as it is shown.

use super::Spread;
use crate::baking::balance::{Class, Count, Pull, Range, Ruled, Side, Stands};
use crate::baking::finding::Facts;
use crate::baking::quantity::{Mass, Share, show};
use serde::Serialize;

/// A formula's classes laid against the ranges of its kind, and its kind's rules.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RangeSheet {
    /// Whose ranges they are and how the kind is known, in a sentence.
    pub kind: String,
    /// The classes; none without flour.
    pub rows: Vec<RangeRow>,
    /// The rules of balance, each in a sentence.
    pub rules: Vec<String>,
}

/// One class against its range, per cent of the flour.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RangeRow {
    /// "Sugar".
    pub name: &'static str,
    /// What the formula holds.
    pub percent: Spread,
    /// The least, the usual and the most of its kind; `None` where no range is known.
    pub range: Option<[f64; 3]>,
    /// Right end of the scale.
    pub scale_high: f64,
    /// The figure in words: "107 % (101 % to 114 %)".
    pub shown: String,
    /// Where it stands, in words: "within 80 to 110 %, usually 100 %".
    pub stands: String,
    /// How it was counted, from which lines, and where the range is from.
    pub how: String,
}

/// What pulls the batter two opposite ways.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PullPair {
    /// What pulls one way: "Tougheners", "Driers".
    pub left: &'static str,
    /// What pulls the other way.
    pub right: &'static str,
    /// The part of the first in both, as a fraction.
    pub left_share: f64,
    /// Both sides in words, each with what it is made of.
    pub words: [String; 2],
}

/// The ranges of a formula.
pub fn range_sheet(facts: &Facts) -> RangeSheet {
    let standing = facts.standing;
    RangeSheet {
        kind: kind(facts),
        rows: standing
            .counts
            .iter()
            .filter_map(|count| row(count, standing.range(count.class)))
            .collect(),
        rules: standing.rules.iter().map(rule).collect(),
    }
}

fn kind(facts: &Facts) -> String {
    let (kind, by) = (facts.kind.words(), facts.kind_by.words());
    match facts.standing.kind {
        _ if facts.flour().is_none() => "Without flour there are no percentages to compare.".into(),
        Some(own) if own == facts.kind => {
            format!("Laid against {kind}; the kind is {by}.")
        }
        Some(like) => format!(
            "The kind is {kind}, {by}. For these no ranges are known, so the formula is laid against the {} that it is like.",
            like.words()
        ),
        None => format!(
            "The kind is {kind}: {by}. No ranges are known for it, so the figures stand alone."
        ),
    }
}

fn row(count: &Count, range: Option<&Range>) -> Option<RangeRow> {
    let percent = count.of_flour?;
    let nothing = count.lines.is_empty() && count.unknown.is_empty();
    if nothing && range.is_none_or(|range| range.high == Share::fraction(0.0)) {
        return None;
    }
    let ends = range.map(|range| [range.low, range.typical, range.high].map(Share::to_percent));
    let [low, mean, high] = [percent.low, percent.mean, percent.high].map(Share::to_percent);
    let top = ends.map_or(high, |ends| high.max(ends[2]));
    Some(RangeRow {
        name: count.class.name(),
        percent: Spread { mean, low, high },
        range: ends,
        // From nothing to somewhat past the further end, so that the end is seen to be one.
        scale_high: (top * 1.15).max(1.0),
        shown: show::percent_with_range(&percent),
        stands: range.map_or_else(
            || "no range is known".to_owned(),
            |range| {
                let stands = Stands::of(&percent, range.low, range.high);
                let between = if stands == Stands::TooClose {
                    ": "
                } else {
                    " "
                };
                format!(
                    "{}{between}{} to {}, usually {}",
                    stands.words(),
                    show::plain(range.low.to_percent()),
                    show::percent(range.high),
                    show::percent(range.typical),
                )
            },
        ),
        how: how(count, range),
    })
}

fn how(count: &Count, range: Option<&Range>) -> String {
    let mut how = count.class.counted().to_owned();
    // All lines bring water.
    if !count.lines.is_empty() && count.class != Class::Water {
        how.push_str(&format!(" From {}.", show::lines(&count.lines)));
    }
    if !count.unknown.is_empty() {
        how.push_str(&format!(
            " No source gives it for {}: left out, not zero.",
            show::lines(&count.unknown)
        ));
    }
    if let Some(range) = range {
        how.push_str(&format!(" The range: {}.", range.cited.words()));
        if !range.note.is_empty() {
            how.push_str(&format!(" {}.", show::sentence(range.note)));
        }
    }
    how
}

fn rule(ruled: &Ruled) -> String {
    let verdict = match ruled.stands() {
        Stands::Within => "kept",
        Stands::TooClose => "too close to call",
        Stands::Below | Stands::Above => "not kept",
    };
    format!(
        "{}: {}, where {} is the rule: {verdict}. {}",
        show::sentence(ruled.rule.words),
        show::percent_with_range(&ruled.ratio),
        ruled.rule.limits(),
        ruled.rule.source,
    )
}

/// Both pairs; none where nothing pulls.
pub fn pull_pairs(facts: &Facts) -> Vec<PullPair> {
    let pull = &facts.standing.pull;
    [
        ("Tougheners", Side::Tough, "Tenderisers", Side::Tender),
        ("Driers", Side::Dry, "Moisteners", Side::Moist),
    ]
    .into_iter()
    .filter_map(|(left, one, right, other)| {
        let (weight, against) = (pull.of(one), pull.of(other));
        let both = weight + against;
        (both > Mass::ZERO).then(|| PullPair {
            left,
            right,
            left_share: weight / both,
            words: [
                side(facts, pull, left, one, both),
                side(facts, pull, right, other, both),
            ],
        })
    })
    .collect()
}

/// "Tougheners are 43 % of both, 164 % of the flour: flour 100 %, egg white 64 %."
fn side(facts: &Facts, pull: &Pull, name: &str, side: Side, both: Mass) -> String {
    let amount = |grams: Mass| match facts.percentages.of(grams) {
        Some(share) => show::percent(share),
        None => show::mass(grams),
    };
    let mut parts: Vec<_> = pull.parts.iter().filter(|part| part.0 == side).collect();
    parts.sort_by(|one, other| other.2.to_grams().total_cmp(&one.2.to_grams()));
    let parts: Vec<String> = parts
        .into_iter()
        .map(|(_, what, grams)| format!("{what} {}", amount(*grams)))
        .collect();
    let weight = pull.of(side);
    if parts.is_empty() {
        return format!("{name}: none.");
    }
    let of_flour = match facts.percentages.flour {
        Some(_) => format!("{} of the flour", amount(weight)),
        None => amount(weight),
    };
    format!(
        "{name} are {} of both, {of_flour}: {}.",
        show::percent(Share::fraction(weight / both)),
        parts.join(", ")
    )
}
