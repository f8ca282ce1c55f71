//! A pan cut through its middle with the batter in it, to scale.

use super::common::paragraph;
use crate::baking::pan::Section;
use crate::baking::quantity::show;
use crate::ui::dom::{Element, drawing, element};

/// The drawing of a pan. `widest` is the width of the widest pan on the page, in millimetres.
pub fn pan_drawing(section: Section, widest: f64) -> Element {
    let Section {
        top,
        base,
        depth,
        tube_top,
        tube_base,
        batter,
        count,
    } = section;
    let batter = batter.unwrap_or(0.0);
    let wide = widest.max(1.0) * 1.12;
    let air = (batter - depth).max(0.0) + depth * 0.25;
    let (floor, middle) = (air + depth, wide / 2.0);
    let level = batter.min(depth);
    // Half a width at the level of the batter, on walls that run straight from base to brim.
    let half = |base: f64, top: f64| {
        (base + (top - base) * if depth > 0.0 { level / depth } else { 0.0 }) / 2.0
    };
    let (outer, inner) = (half(base, top), half(tube_base, tube_top));
    let filled = |side: f64| {
        format!(
            "M{} {} H{} L{} {} H{} Z",
            at(middle + side * tube_base / 2.0),
            at(floor),
            at(middle + side * base / 2.0),
            at(middle + side * outer),
            at(floor - level),
            at(middle + side * inner),
        )
    };
    let wall = |side: f64, base: f64, top: f64| {
        format!(
            "M{} {} L{} {}",
            at(middle + side * base / 2.0),
            at(floor),
            at(middle + side * top / 2.0),
            at(air)
        )
    };
    let mut walls = format!(
        "M{} {} H{}",
        at(middle - base / 2.0),
        at(floor),
        at(middle + base / 2.0)
    );
    for side in [-1.0, 1.0] {
        walls += &wall(side, base, top);
        if tube_base > 0.0 {
            walls += &wall(side, tube_base, tube_top);
        }
    }
    let over = (batter > depth).then(|| {
        drawing("line")
            .class("pan__over")
            .figure("x1", middle - top / 2.0)
            .figure("x2", middle + top / 2.0)
            .figure("y1", floor - batter)
            .figure("y2", floor - batter)
    });
    let batter = drawing("path")
        .class("pan__batter")
        .attribute("d", filled(-1.0) + &filled(1.0));
    let drawn = drawing("svg")
        .class("pan")
        .attribute("viewBox", format!("0 0 {} {}", at(wide), at(floor + 8.0)))
        .attribute("aria-hidden", "true")
        .child(batter)
        .child(drawing("path").class("pan__wall").attribute("d", walls))
        .children(over);
    let caption = (count > 1).then(|| {
        element("figcaption")
            .class("drawing__words")
            .child(paragraph("drawing__key", format!("{count} of these.")))
    });
    element("figure")
        .class("drawing")
        .child(drawn)
        .children(caption)
}

/// A place in the drawing.
fn at(value: f64) -> String {
    show::fixed(value, 1)
}
