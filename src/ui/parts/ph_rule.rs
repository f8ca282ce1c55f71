//! The pH rule as a drawing: a scale, the band of this kind of cake, the crumb with its spread; and its words.

use super::common::paragraph;
use crate::baking::quantity::show;
use crate::baking::worksheet::PhRule;
use crate::ui::dom::{Element, Words, drawing, element};

/// Width of the drawing, in its own units; one unit is a pixel on a narrow phone.
pub const WIDE: f64 = 320.0;
/// Room at either end, so that figures at the ends are not cut.
pub const EDGE: f64 = 12.0;
/// Where the scale runs, down from the top.
const SCALE: f64 = 44.0;

/// Where a value falls on a scale, in the drawing's units, kept within it.
pub fn place(value: f64, low: f64, high: f64) -> f64 {
    let share = if high > low {
        ((value - low) / (high - low)).clamp(0.0, 1.0)
    } else {
        0.0
    };
    EDGE + share * (WIDE - 2.0 * EDGE)
}

/// The rule of pH.
pub fn ph_rule(rule: &PhRule) -> Element {
    let x = |value| place(value, rule.scale_low, rule.scale_high);
    let whole = (rule.scale_low.ceil() as i32)..=(rule.scale_high.floor() as i32);
    let ticks = whole.flat_map(|tick| self::tick(x(f64::from(tick)), tick.to_string()));
    let mean = x(rule.crumb.mean);
    let drawn = frame("hatch-ph")
        .child(band(x(rule.band_low), x(rule.band_high), 14.0, "hatch-ph"))
        .child(line("rule__line", EDGE, WIDE - EDGE, SCALE))
        .children(ticks)
        .child(bar(
            "rule__spread",
            x(rule.crumb.low),
            x(rule.crumb.high),
            25.0,
            8.0,
        ))
        .child(
            drawing("path")
                .class("rule__mark")
                .attribute("d", format!("M{} 44 l-7 -16 h14 z", show::fixed(mean, 1))),
        )
        .child(line(
            "rule__whisker rule__whisker--thin",
            x(rule.batter.low),
            x(rule.batter.high),
            8.0,
        ))
        .child(
            drawing("circle")
                .class("rule__ring")
                .figure("cx", x(rule.batter.mean))
                .figure("cy", 8.0)
                .figure("r", 5.0),
        )
        .child(words("rule__end", EDGE, "sour"))
        .child(words("rule__end rule__end--right", WIDE - EDGE, "soapy"))
        .child(words("rule__end rule__end--middle", WIDE / 2.0, "pH"));
    let key = format!(
        "Triangle: the crumb. Ring: the batter before the oven. Hatched: the band. {}",
        rule.band_for
    );
    captioned(drawn, &rule.words, key)
}

/// An empty drawing with its hatching, so that colour never stands alone.
pub fn frame(hatch: &'static str) -> Element {
    drawing("svg")
        .class("rule")
        .attribute("viewBox", "0 0 320 84")
        .attribute("aria-hidden", "true")
        .child(hatching(hatch))
}

/// The hatching of a band, by the name that it is used under.
pub fn hatching(hatch: &'static str) -> Element {
    let square = |class: &'static str, width: &'static str| {
        drawing("rect")
            .class(class)
            .attribute("width", width)
            .attribute("height", "6")
    };
    let pattern = drawing("pattern")
        .attribute("id", hatch)
        .attribute("width", "6")
        .attribute("height", "6")
        .attribute("patternUnits", "userSpaceOnUse")
        .attribute("patternTransform", "rotate(45)")
        .child(square("rule__ground", "6"))
        .child(square("rule__hatch", "2"));
    drawing("defs").child(pattern)
}

/// A drawing with its words, and what its signs mean.
pub fn captioned(drawn: Element, words: &str, key: impl Into<Words>) -> Element {
    let caption = element("figcaption").class("drawing__words").children([
        paragraph("drawing__said", words.to_owned()),
        paragraph("drawing__key", key),
    ]);
    element("figure")
        .class("drawing")
        .child(drawn)
        .child(caption)
}

/// The hatched band of what is wanted, from the given height down to the scale.
pub fn band(from: f64, to: f64, top: f64, hatch: &str) -> Element {
    bar("rule__band", from, to, top, SCALE - top).attribute("fill", format!("url(#{hatch})"))
}

/// A bar along the scale.
pub fn bar(class: &'static str, from: f64, to: f64, top: f64, high: f64) -> Element {
    drawing("rect")
        .class(class)
        .figure("x", from)
        .figure("y", top)
        .figure("width", (to - from).max(1.0))
        .figure("height", high)
}

/// A line along the scale.
pub fn line(class: &'static str, from: f64, to: f64, y: f64) -> Element {
    drawing("line")
        .class(class)
        .figure("x1", from)
        .figure("x2", to)
        .figure("y1", y)
        .figure("y2", y)
}

/// A division of the scale and its figure.
pub fn tick(x: f64, figure: String) -> [Element; 2] {
    [
        drawing("line")
            .class("rule__tick")
            .figure("x1", x)
            .figure("x2", x)
            .figure("y1", SCALE)
            .figure("y2", 52.0),
        drawing("text")
            .class("rule__figure")
            .figure("x", x)
            .figure("y", 66.0)
            .text(figure),
    ]
}

/// Words below the scale.
pub fn words(class: &'static str, x: f64, words: &'static str) -> Element {
    drawing("text")
        .class(class)
        .figure("x", x)
        .figure("y", 81.0)
        .text(words)
}
