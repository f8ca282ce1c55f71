//! The temperatures of a bake as a drawing: middle, edge and top over time, the core that is wanted, and when it is done.

use super::ph_rule::{captioned, hatching};
use crate::baking::oven::heat::bake::Moment;
use crate::baking::quantity::show;
use crate::baking::worksheet::BakeSheet;
use crate::ui::dom::{Element, drawing};

/// Where the picture begins and ends, in its own units; one unit is a pixel on a narrow phone.
const LEFT: f64 = 30.0;
const RIGHT: f64 = 312.0;
const TOP: f64 = 10.0;
const FLOOR: f64 = 130.0;
/// The scale of temperature goes in steps of this, C.
const STEP: f64 = 50.0;

/// The course of a bake; `None` where it is never done.
pub fn bake_course(bake: &BakeSheet) -> Option<Element> {
    let [early, _, late] = bake.minutes?;
    let last = bake.course.last()?.seconds / 60.0;
    let whole = last.max(late) * 1.02;
    let hottest = bake
        .course
        .iter()
        .map(|moment| moment.top.max(moment.edge))
        .fold(100.0, f64::max);
    let highest = (hottest / STEP).ceil() * STEP;
    let x = |minutes: f64| LEFT + (RIGHT - LEFT) * (minutes / whole).clamp(0.0, 1.0);
    let y = |celsius: f64| FLOOR - (FLOOR - TOP) * (celsius / highest).clamp(0.0, 1.0);
    let path = |class: &'static str, figure: fn(&Moment) -> f64| {
        let mut d = String::new();
        for moment in &bake.course {
            let start = if d.is_empty() { 'M' } else { 'L' };
            let (x, y) = (x(moment.seconds / 60.0), y(figure(moment)));
            d.push_str(&format!(
                "{start}{} {} ",
                show::fixed(x, 1),
                show::fixed(y, 1)
            ));
        }
        drawing("path").class(class).attribute("d", d)
    };
    let band = drawing("rect")
        .class("rule__band")
        .figure("x", x(early))
        .figure("y", TOP)
        .figure("width", (x(late) - x(early)).max(2.0))
        .figure("height", FLOOR - TOP)
        .attribute("fill", "url(#hatch-bake)");
    let line = |class: &'static str, x1: f64, y1: f64, x2: f64, y2: f64| {
        drawing("line")
            .class(class)
            .figure("x1", x1)
            .figure("y1", y1)
            .figure("x2", x2)
            .figure("y2", y2)
    };
    let core = y(bake.core.to_celsius());
    let text = |x: f64, y: f64, words: String| {
        drawing("text")
            .class("rule__figure")
            .figure("x", x)
            .figure("y", y)
            .text(words)
    };
    let steps = (0..=(highest / STEP) as u32).map(|step| f64::from(step) * STEP);
    let minutes = minute_step(whole);
    let ticks = (0..=(whole / minutes) as u32).map(|step| f64::from(step) * minutes);
    let drawn = drawing("svg")
        .class("course")
        .attribute("viewBox", "0 0 320 166")
        .attribute("aria-hidden", "true")
        .child(hatching("hatch-bake"))
        .child(band)
        .child(line("course__parts", LEFT, core, RIGHT, core))
        .child(line("rule__line", LEFT, TOP, LEFT, FLOOR))
        .child(line("rule__line", LEFT, FLOOR, RIGHT, FLOOR))
        .child(path("course__top", |moment| moment.top))
        .child(path("course__made", |moment| moment.edge))
        .child(path("course__held", |moment| moment.centre))
        .children(steps.map(|celsius| text(LEFT - 15.0, y(celsius) + 4.0, show::fixed(celsius, 0))))
        .children(ticks.map(|at| text(x(at), FLOOR + 14.0, show::fixed(at, 0))))
        .child(text((LEFT + RIGHT) / 2.0, FLOOR + 30.0, "minutes".into()));
    Some(captioned(
        drawn,
        &bake.drawn,
        "°C over minutes. Full line: the middle. Dashes: beside the wall, half-way up. Dots: the skin on top. Level line: the core that is wanted. Hatched: done in nine bakes of ten.",
    ))
}

/// A round step of minutes of which five or so go into the whole.
fn minute_step(whole: f64) -> f64 {
    [2.0, 5.0, 10.0, 20.0, 30.0, 60.0]
        .into_iter()
        .find(|step| whole / step <= 6.5)
        .unwrap_or(60.0)
}
