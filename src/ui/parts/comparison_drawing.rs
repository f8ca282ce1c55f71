//! Drawings of bakes beside one another: slices to one scale, pH on the rule, minutes; and the curve through many. All that
//! they show is told in words and figures beside them.

use super::asked::Asked;
use super::ph_rule::{EDGE, WIDE, captioned, line, place, tick};
use crate::baking::comparison::{Answer, Outcome, OutcomeRow};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, drawing};
use leptos::prelude::Get;

/// Height of a curve's drawing above its scale.
const HIGH: f64 = 180.0;
/// Bounds about a curve hold in this share of cases.
const SURE: f64 = 0.9;
/// Into how many pieces a curve is drawn.
const PIECES: usize = 32;

fn svg(high: f64) -> Element {
    drawing("svg")
        .class("rule")
        .attribute("viewBox", format!("0 0 {WIDE} {high}"))
        .attribute("aria-hidden", "true")
}

fn label(x: f64, y: f64, words: String) -> Element {
    drawing("text")
        .class("rule__figure")
        .figure("x", x)
        .figure("y", y)
        .text(words)
}

fn of(rows: &[OutcomeRow], outcome: Outcome) -> Option<&[Option<f64>]> {
    let row = rows.iter().find(|row| row.outcome == outcome)?;
    Some(&row.values)
}

/// The slices of the bakes, each as high as it was measured, all to one scale.
pub fn slices(rows: &[OutcomeRow]) -> Option<Element> {
    let (centre, edge) = (of(rows, Outcome::Centre)?, of(rows, Outcome::Edge));
    let measured = |at: usize| {
        let centre = centre[at]?;
        // Without a height at the edge it is drawn level.
        let edge = edge.and_then(|edge| edge[at]).unwrap_or(centre);
        Some((centre, edge))
    };
    let highest = (0..centre.len())
        .filter_map(measured)
        .fold(0.0, |most: f64, (centre, edge)| most.max(centre).max(edge));
    let (room, floor) = (90.0, 100.0);
    let wide = (WIDE - 2.0 * EDGE) / centre.len() as f64;
    let drawn = (0..centre.len()).filter_map(|at| {
        let (centre, edge) = measured(at)?;
        let high = |value: f64| floor - room * value / highest;
        let (left, right) = (
            EDGE + wide * at as f64 + 4.0,
            EDGE + wide * (at + 1) as f64 - 4.0,
        );
        let middle = (left + right) / 2.0;
        // A curve through the middle's height has its handle twice as far out.
        let handle = 2.0 * high(centre) - high(edge);
        let figure = |it: f64| show::fixed(it, 1);
        let path = format!(
            "M{l} {floor} V{e} Q{m} {h} {r} {e} V{floor} Z",
            l = figure(left),
            e = figure(high(edge)),
            m = figure(middle),
            h = figure(handle),
            r = figure(right),
        );
        Some([
            drawing("path")
                .class("comparison__slice")
                .attribute("d", path),
            label(middle, floor + 14.0, format!("{}", at + 1)),
        ])
    });
    let drawn = svg(120.0).children(drawn.flatten());
    Some(captioned(
        drawn,
        "The slices, to one scale.",
        "By the heights in the middle and at the edge; drawn level where the edge was not measured.",
    ))
}

/// The pH of the crumbs on one rule.
pub fn phs(rows: &[OutcomeRow]) -> Option<Element> {
    let values = of(rows, Outcome::CrumbPh)?;
    let known = || values.iter().flatten().copied();
    let low = known().fold(6.0_f64, f64::min).floor();
    let high = known().fold(9.0_f64, f64::max).ceil();
    let whole = (low as i32)..=(high as i32);
    let ticks = whole.flat_map(|ph| tick(place(f64::from(ph), low, high), ph.to_string()));
    let marks = values.iter().enumerate().filter_map(|(at, value)| {
        let x = place((*value)?, low, high);
        // One above the other, so that none hides another.
        let y = 38.0 - 10.0 * at as f64;
        Some([
            drawing("circle")
                .class("rule__ring")
                .figure("cx", x)
                .figure("cy", y)
                .figure("r", 4.0),
            label(x + 10.0, y + 4.0, format!("{}", at + 1)),
        ])
    });
    let drawn = svg(70.0)
        .child(line("rule__line", EDGE, WIDE - EDGE, 44.0))
        .children(ticks)
        .children(marks.flatten());
    Some(captioned(
        drawn,
        "The pH of the crumbs.",
        "Each ring is one bake, by its number above.",
    ))
}

/// The minutes in the oven, as bars.
pub fn minutes(rows: &[OutcomeRow]) -> Option<Element> {
    let values = of(rows, Outcome::Minutes)?;
    let longest = values.iter().flatten().copied().fold(0.0, f64::max);
    let bars = values.iter().enumerate().filter_map(|(at, value)| {
        let minutes = (*value)?;
        let y = 18.0 * at as f64;
        Some([
            label(EDGE, y + 13.0, format!("{}", at + 1)),
            drawing("rect")
                .class("comparison__bar")
                .figure("x", EDGE + 10.0)
                .figure("y", y + 3.0)
                .figure(
                    "width",
                    (WIDE - 2.0 * EDGE - 10.0) * minutes / longest.max(1.0),
                )
                .figure("height", 12.0),
        ])
    });
    let drawn = svg(18.0 * values.len() as f64).children(bars.flatten());
    Some(captioned(
        drawn,
        "The time in the oven.",
        "Bars from 0 minutes, by the numbers above.",
    ))
}

/// The bakes as points, the curve through them with the band that its mean lies in, and the best amount.
pub fn curve(asked: Asked, answer: &Answer) -> Option<Element> {
    let curve = answer.curve.as_ref()?;
    let at = |piece: usize| curve.low + (curve.high - curve.low) * piece as f64 / PIECES as f64;
    let pieces: Vec<(f64, f64, f64)> = (0..=PIECES)
        .map(|piece| {
            let amount = at(piece);
            let half = curve.half_width(amount, SURE).unwrap_or(0.0);
            (amount, curve.at(amount), half)
        })
        .collect();
    let outcomes = || answer.points.iter().map(|it| it.outcome);
    let (least, most) = (
        outcomes().fold(f64::INFINITY, f64::min),
        outcomes().fold(f64::NEG_INFINITY, f64::max),
    );
    // A band that knows nothing is cut off, so that the points can be told apart.
    let room = (most - least).max(f64::MIN_POSITIVE);
    let low = pieces
        .iter()
        .map(|it| it.1 - it.2)
        .fold(least, f64::min)
        .max(least - room);
    let high = pieces
        .iter()
        .map(|it| it.1 + it.2)
        .fold(most, f64::max)
        .min(most + room);
    let x = |amount: f64| place(amount, curve.low, curve.high);
    let y = |outcome: f64| {
        let share = if high > low {
            ((outcome - low) / (high - low)).clamp(0.0, 1.0)
        } else {
            0.5
        };
        8.0 + (1.0 - share) * (HIGH - 16.0)
    };
    let point = |amount: f64, outcome: f64| {
        format!(
            "{},{}",
            show::fixed(x(amount), 1),
            show::fixed(y(outcome), 1)
        )
    };
    let joined = |points: &mut dyn Iterator<Item = String>| points.collect::<Vec<_>>().join(" ");
    let above = pieces.iter().map(|it| point(it.0, it.1 + it.2));
    let below = pieces.iter().rev().map(|it| point(it.0, it.1 - it.2));
    let band = drawing("polygon")
        .class("comparison__band")
        .attribute("points", joined(&mut above.chain(below)));
    let mean = drawing("polyline").class("comparison__curve").attribute(
        "points",
        joined(&mut pieces.iter().map(|it| point(it.0, it.1))),
    );
    let bakes = answer.points.iter().map(|it| {
        drawing("circle")
            .class("comparison__point")
            .figure("cx", x(it.amount))
            .figure("cy", y(it.outcome))
            .figure("r", 3.5)
    });
    let best = answer.best.map(|best| {
        drawing("line")
            .class("comparison__best")
            .figure("x1", x(best.amount))
            .figure("x2", x(best.amount))
            .figure("y1", 4.0)
            .figure("y2", HIGH)
    });
    let ends = [curve.low, curve.high].map(|amount| {
        let class = if amount == curve.low {
            "rule__end"
        } else {
            "rule__end rule__end--right"
        };
        drawing("text")
            .class(class)
            .figure("x", x(amount))
            .figure("y", HIGH + 14.0)
            .text(asked.amount_said(amount))
    });
    let drawn = svg(HIGH + 20.0)
        .child(band)
        .child(mean)
        .children(best)
        .children(bakes)
        .child(line("rule__line", EDGE, WIDE - EDGE, HIGH))
        .children(ends);
    let (top, bottom) = (asked.outcome_said(high), asked.outcome_said(low));
    let words = format!(
        "{}, from {bottom} at the bottom to {top} at the top.",
        asked.outcome.get().words()
    );
    Some(captioned(
        drawn,
        &words,
        "Rings: the bakes. Line: the curve that they bear out, its mean within the band in nine cases of ten. Dashed: the best amount.",
    ))
}
