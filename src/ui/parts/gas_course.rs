//! The gas from the bowl to the hot crumb as a drawing: what was made, what of it the batter still has, against the
//! band that its flour needs and holds; and its words.

use super::ph_rule::{captioned, hatching};
use crate::baking::quantity::show;
use crate::baking::worksheet::{GasMoment, GasSheet};
use crate::ui::dom::{Element, drawing};

/// Where the picture begins and ends, in its own units; one unit is a pixel on a narrow phone.
const LEFT: f64 = 30.0;
const RIGHT: f64 = 312.0;
const TOP: f64 = 10.0;
const FLOOR: f64 = 120.0;
/// Where the bench ends and the oven begins.
const DOOR: f64 = 110.0;

/// The course of the gas.
pub fn gas_course(gas: &GasSheet) -> Option<Element> {
    let last = gas.course.iter().rfind(|moment| !moment.oven)?;
    let x = |moment: &GasMoment| {
        if moment.oven {
            warmth(gas, moment.celsius, last.celsius)
        } else {
            LEFT + (DOOR - LEFT) * moment.minutes / last.minutes.max(1e-9)
        }
    };
    let highest = gas.scale_high.max(1e-9);
    let y = |percent: f64| FLOOR - (FLOOR - TOP) * (percent / highest).clamp(0.0, 1.0);
    let path = |class: &'static str, figure: fn(&GasMoment) -> f64| {
        let mut d = format!("M{} {}", show::fixed(LEFT, 1), show::fixed(FLOOR, 1));
        for moment in &gas.course {
            let (x, y) = (x(moment), y(figure(moment)));
            d.push_str(&format!(" L{} {}", show::fixed(x, 1), show::fixed(y, 1)));
        }
        drawing("path").class(class).attribute("d", d)
    };
    let band = drawing("rect")
        .class("rule__band")
        .figure("x", DOOR)
        .figure("y", y(gas.band_high))
        .figure("width", RIGHT - DOOR)
        .figure("height", y(gas.band_low) - y(gas.band_high))
        .attribute("fill", "url(#hatch-course)");
    let upright = |class: &'static str, at: f64| {
        drawing("line")
            .class(class)
            .figure("x1", at)
            .figure("x2", at)
            .figure("y1", TOP)
            .figure("y2", FLOOR)
    };
    let floor = drawing("line")
        .class("rule__line")
        .figure("x1", LEFT)
        .figure("x2", RIGHT)
        .figure("y1", FLOOR)
        .figure("y2", FLOOR);
    // A batter that sets hotter than its core gets has no place for it in the picture; the words say so.
    let sets = (gas.sets_at <= gas.hottest).then(|| warmth(gas, gas.sets_at, last.celsius));
    let drawn = drawing("svg")
        .class("course")
        .attribute("viewBox", "0 0 320 156")
        .attribute("aria-hidden", "true")
        .child(hatching("hatch-course"))
        .child(band)
        .child(upright("course__parts", DOOR))
        .children(sets.map(|at| upright("course__parts", at)))
        .child(upright("rule__line", LEFT))
        .child(floor)
        .child(path("course__made", |moment| moment.made))
        .child(path("course__held", |moment| moment.held))
        .children([0.0, gas.band_low, gas.band_high].map(|percent| {
            text(
                "rule__figure",
                LEFT - 14.0,
                y(percent) + 4.0,
                show::fixed(percent, 1),
            )
        }))
        .children(sets.map(|at| text("rule__figure", at, FLOOR + 14.0, "sets".into())))
        .children([
            text("rule__figure", DOOR, FLOOR + 14.0, "into the oven".into()),
            text("rule__figure", LEFT, FLOOR + 14.0, "0".into()),
            text(
                "rule__end rule__end--middle",
                (LEFT + DOOR) / 2.0,
                FLOOR + 30.0,
                format!("bench, {} min", show::fixed(last.minutes, 0)),
            ),
            text(
                "rule__end rule__end--middle",
                (DOOR + RIGHT) / 2.0,
                FLOOR + 30.0,
                format!("core, up to {} C", show::fixed(gas.hottest, 0)),
            ),
        ]);
    Some(captioned(
        drawn,
        &gas.course_words,
        "Gas, per cent of the flour. Full line: what the batter holds. Dashes: what was made. Hatched: what this flour needs and holds.",
    ))
}

/// Where a temperature of the core falls.
fn warmth(gas: &GasSheet, celsius: f64, bench: f64) -> f64 {
    DOOR + (RIGHT - DOOR) * ((celsius - bench) / (gas.hottest - bench)).clamp(0.0, 1.0)
}

fn text(class: &'static str, x: f64, y: f64, words: String) -> Element {
    drawing("text")
        .class(class)
        .figure("x", x)
        .figure("y", y)
        .text(words)
}
