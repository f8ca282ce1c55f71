//! A pan cut through its middle with the batter in it, to scale.

use super::common::paragraph;
use crate::baking::pan::Section;
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
            "M{:.1} {floor:.1} H{:.1} L{:.1} {:.1} H{:.1} Z",
            middle + side * tube_base / 2.0,
            middle + side * base / 2.0,
            middle + side * outer,
            floor - level,
            middle + side * inner,
        )
    };
    let wall = |side: f64, base: f64, top: f64| {
        format!(
            "M{:.1} {floor:.1} L{:.1} {air:.1}",
            middle + side * base / 2.0,
            middle + side * top / 2.0
        )
    };
    let mut walls = format!(
        "M{:.1} {floor:.1} H{:.1}",
        middle - base / 2.0,
        middle + base / 2.0
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
        .attribute("viewBox", format!("0 0 {wide:.1} {:.1}", floor + 8.0))
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
