//! The formula against formulas of its kind: a rule for each class, the rules of balance, what pulls the batter.

use super::common::{figure, folded_while, paragraph};
use super::ph_rule::{EDGE, WIDE, bar, hatching, line, place};
use crate::baking::quantity::show;
use crate::baking::worksheet::{BalanceSheet, PullPair, RangeRow};
use crate::ui::dom::{Element, drawing, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// Where the scale of a class runs, down from the top.
const SCALE: f64 = 22.0;
/// The name of the hatching, which one drawing holds for all of them.
const HATCH: &str = "hatch-range";

/// The folded panel. Nothing is drawn while it is shut.
pub fn standing(bench: Bench) -> Element {
    let open = RwSignal::new(false);
    let drawn = move || match open.get() {
        true => bench.part(Part::Balance, |sheet| draw(&sheet.balance)),
        false => Vec::new(),
    };
    folded_while("figure standing", "Against formulas of its kind", open)
        .child(element("div").children_of(drawn))
}

fn draw(balance: &BalanceSheet) -> Vec<Element> {
    let ranges = &balance.ranges;
    let mut drawn = vec![paragraph("hint", ranges.kind.clone())];
    drawn.extend(
        ranges
            .rows
            .iter()
            .enumerate()
            .flat_map(|(at, row)| class(row, at == 0)),
    );
    if !ranges.rows.is_empty() {
        drawn.push(paragraph("drawing__key", "Of the flour, which is 100 %. Hatched: formulas of the kind; upright line: the usual. Bar: the spread of this formula; triangle: its mean."));
    }
    if !ranges.rules.is_empty() {
        drawn.push(heading("Rules of balance"));
        drawn.extend(
            ranges
                .rules
                .iter()
                .map(|rule| paragraph("standing__words", rule.clone())),
        );
    }
    if !balance.pull.is_empty() {
        drawn.push(heading("What pulls the batter"));
        drawn.extend(balance.pull.iter().flat_map(pair));
    }
    drawn
}

fn heading(words: &'static str) -> Element {
    element("h4").class("standing__head").text(words)
}

/// A class: its figure, the drawing, where it stands in words.
fn class(row: &RangeRow, has_hatching: bool) -> [Element; 3] {
    let x = |value| place(value, 0.0, row.scale_high);
    let mean = x(row.percent.mean);
    let band = row.range.map(|[low, typical, high]| {
        [
            bar("rule__band", x(low), x(high), 2.0, SCALE - 2.0)
                .attribute("fill", format!("url(#{HATCH})")),
            drawing("line")
                .class("rule__tick")
                .figure("x1", x(typical))
                .figure("x2", x(typical))
                .figure("y1", 2.0)
                .figure("y2", SCALE),
        ]
    });
    let drawn = drawing("svg")
        .class("rule")
        .attribute("viewBox", "0 0 320 26")
        .attribute("aria-hidden", "true")
        .children(has_hatching.then(|| hatching(HATCH)))
        .children(band.into_iter().flatten())
        .child(line("rule__line", EDGE, WIDE - EDGE, SCALE))
        .child(bar(
            "rule__spread",
            x(row.percent.low),
            x(row.percent.high),
            12.0,
            6.0,
        ))
        .child(drawing("path").class("rule__mark").attribute(
            "d",
            format!(
                "M{} {} l-6 -12 h12 z",
                show::fixed(mean, 1),
                show::fixed(SCALE, 1)
            ),
        ));
    [
        figure(row.name.into(), row.shown.clone(), row.how.clone()),
        drawn,
        paragraph("standing__words", format!("{}: {}.", row.name, row.stands)),
    ]
}

/// Where the ends of the beam and its pivot are.
const LEFT: f64 = 70.0;
const RIGHT: f64 = 250.0;
const PIVOT: f64 = 34.0;

/// A pair as a beam on its pivot, a load at either end; and its words.
fn pair(pair: &PullPair) -> [Element; 3] {
    let tilt = ((pair.left_share - 0.5) * 60.0).clamp(-16.0, 16.0);
    let fixed = |value: f64| show::fixed(value, 1);
    let beam = format!(
        "M{} {} L{} {} M160 34 l-9 22 h18 z",
        fixed(LEFT),
        fixed(PIVOT + tilt),
        fixed(RIGHT),
        fixed(PIVOT - tilt)
    );
    let load = |at: f64, foot: f64, share: f64| {
        // Its face grows with its share.
        let side = 26.0 * f64::sqrt(share.clamp(0.0, 1.0));
        bar(
            "rule__bar",
            at - side / 2.0,
            at + side / 2.0,
            foot - side,
            side,
        )
    };
    let name = |at: f64, words: &'static str| {
        drawing("text")
            .class("rule__figure")
            .figure("x", at)
            .figure("y", 68.0)
            .text(words)
    };
    let drawn = drawing("svg")
        .class("rule")
        .attribute("viewBox", "0 0 320 74")
        .attribute("aria-hidden", "true")
        .child(drawing("path").class("standing__beam").attribute("d", beam))
        .child(load(LEFT, PIVOT + tilt, pair.left_share))
        .child(load(RIGHT, PIVOT - tilt, 1.0 - pair.left_share))
        .child(name(LEFT, pair.left))
        .child(name(RIGHT, pair.right));
    let [left, right] = &pair.words;
    [
        drawn,
        paragraph("standing__words", left.clone()),
        paragraph("standing__words", right.clone()),
    ]
}
