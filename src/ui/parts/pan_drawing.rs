//! A pan cut through its middle with the batter in it, to scale.

use super::common::paragraph;
use crate::baking::pan::{Cut, Section};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, drawing, element};

/// Air above a pan, as a part of its depth, and ground below it, in millimetres.
const AIR: f64 = 0.25;
const GROUND: f64 = 8.0;

/// What a pan takes in a drawing, in millimetres: its width, and its height with what stands above the brim.
pub fn extent(section: &Section) -> (f64, f64) {
    let wide = section.profile.iter().map(|cut| cut.wall * 2.0);
    let stands = section
        .batter
        .unwrap_or(0.0)
        .max(section.crumb.unwrap_or(0.0));
    let above = (stands - section.depth).max(0.0) + section.depth * AIR;
    (wide.fold(0.0, f64::max), above + section.depth + GROUND)
}

/// The drawing of a pan, as many millimetres wide as all drawings of the page, so that they have one scale.
pub fn pan_drawing(section: &Section, wide: f64) -> Element {
    let Section { profile, depth, .. } = section;
    let batter = section.batter.unwrap_or(0.0);
    let crumb = section.crumb.unwrap_or(0.0);
    let high = extent(section).1;
    let place = Place {
        middle: wide / 2.0,
        floor: high - GROUND,
    };
    let path = |class: &'static str, profile: &[Cut], end: &str| {
        drawing("path")
            .class(class)
            .attribute("d", place.outline(profile, end))
    };
    let brim = profile.last().map_or(0.0, |cut| cut.wall);
    let level = |class: &'static str, height: f64, wide: f64| {
        drawing("line")
            .class(class)
            .figure("x1", place.middle - wide)
            .figure("x2", place.middle + wide)
            .figure("y1", place.floor - height)
            .figure("y2", place.floor - height)
    };
    let over = (batter > *depth).then(|| level("pan__over", batter, brim));
    let line = section.fill_line.map(|height| {
        let wide = up_to(profile, height).last().map_or(0.0, |cut| cut.wall);
        level("pan__fill-line", height, wide)
    });
    let stands = |class: &'static str, height: f64| {
        (height > 0.0).then(|| path(class, &up_to(profile, height), "Z"))
    };
    let size = format!("0 0 {} {}", at(wide), at(high));
    let drawn = drawing("svg")
        .class("pan")
        .attribute("viewBox", size)
        .attribute("aria-hidden", "true")
        .children(stands("pan__batter", batter.min(*depth)))
        .children(stands("pan__crumb", crumb))
        .child(path("pan__wall", profile, ""))
        .children(line)
        .children(over);
    let caption = caption(section).map(|words| {
        element("figcaption")
            .class("drawing__words")
            .child(paragraph("drawing__key", words))
    });
    element("figure")
        .class("drawing")
        .child(drawn)
        .children(caption)
}

/// What the signs of the drawing mean; `None` where nothing but batter is drawn.
fn caption(section: &Section) -> Option<String> {
    let mut words = Vec::new();
    if section.count > 1 {
        words.push(format!("One of {}.", section.count));
    }
    if section.crumb.is_some() {
        words.push("Filled: the batter. Dashed: the crumb that is expected.".to_owned());
    }
    if section.fill_line.is_some() {
        words.push("Dotted: the fill line.".to_owned());
    }
    (!words.is_empty()).then(|| words.join(" "))
}

/// A profile up to a height, ended there: above the brim the walls go on straight.
fn up_to(profile: &[Cut], height: f64) -> Vec<Cut> {
    let mut found: Vec<Cut> = profile
        .iter()
        .copied()
        .take_while(|cut| cut.height < height)
        .collect();
    match (found.last().copied(), profile.get(found.len())) {
        (Some(last), Some(next)) => {
            let part = (height - last.height) / (next.height - last.height);
            let between = |from: f64, to: f64| from + (to - from) * part;
            found.push(Cut {
                height,
                core: between(last.core, next.core),
                wall: between(last.wall, next.wall),
            });
        }
        // What closes at the top is full, and nothing is drawn above it.
        (Some(brim), None) if brim.wall > brim.core => found.push(Cut { height, ..brim }),
        _ => {}
    }
    found
}

/// Where the middle of the base stands in the drawing.
struct Place {
    middle: f64,
    floor: f64,
}

impl Place {
    /// Walls and base, open at the top: of a pan with a core one line on each side of it. `end` closes each, or nothing.
    fn outline(&self, profile: &[Cut], end: &str) -> String {
        let outer = |side: f64| profile.iter().map(move |cut| (side * cut.wall, cut.height));
        let inner = |side: f64| profile.iter().map(move |cut| (side * cut.core, cut.height));
        if profile.iter().any(|cut| cut.core > 0.0) {
            let halves =
                [-1.0, 1.0].map(|side| self.line(inner(side).rev().chain(outer(side))) + end);
            return halves.concat();
        }
        self.line(outer(-1.0).rev().chain(outer(1.0))) + end
    }

    fn line(&self, places: impl Iterator<Item = (f64, f64)>) -> String {
        let mut path = String::new();
        for (step, (wide, height)) in places.enumerate() {
            path += if step == 0 { "M" } else { "L" };
            path += &at(self.middle + wide);
            path += " ";
            path += &at(self.floor - height);
        }
        path
    }
}

/// A place in the drawing.
fn at(value: f64) -> String {
    show::fixed(value, 1)
}
