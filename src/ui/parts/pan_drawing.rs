//! A pan cut through its middle with the batter in it, to scale.

use super::common::paragraph;
use crate::baking::pan::{Cut, Section};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, drawing, element};

/// The drawing of a pan. `widest` is the width of the widest pan on the page, in millimetres.
pub fn pan_drawing(section: &Section, widest: f64) -> Element {
    let Section { profile, depth, .. } = section;
    let batter = section.batter.unwrap_or(0.0);
    let crumb = section.crumb.unwrap_or(0.0);
    let air = (batter.max(crumb) - depth).max(0.0) + depth * 0.25;
    let place = Place {
        middle: widest.max(1.0) * 0.56,
        floor: air + depth,
    };
    let path = |class: &'static str, profile: &[Cut], closed: bool| {
        drawing("path")
            .class(class)
            .attribute("d", place.halves(profile, closed))
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
        (height > 0.0).then(|| path(class, &up_to(profile, height), true))
    };
    let size = format!("0 0 {} {}", at(place.middle * 2.0), at(place.floor + 8.0));
    let drawn = drawing("svg")
        .class("pan")
        .attribute("viewBox", size)
        .attribute("aria-hidden", "true")
        .children(stands("pan__batter", batter.min(*depth)))
        .children(stands("pan__crumb", crumb))
        .child(path("pan__wall", profile, false))
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
        (Some(brim), None) => found.push(Cut { height, ..brim }),
        (None, _) => {}
    }
    found
}

/// Where the middle of the base stands in the drawing.
struct Place {
    middle: f64,
    floor: f64,
}

impl Place {
    /// Both halves of a profile, from the core's top down its wall, along the base and up the outer wall; closed across
    /// the top or left open.
    fn halves(&self, profile: &[Cut], closed: bool) -> String {
        let mut path = String::new();
        for side in [-1.0, 1.0] {
            let outer = profile.iter().map(|cut| (cut.wall, cut.height));
            // Without a core nothing stands in the middle but the middle of the base.
            let has_core = profile.iter().any(|cut| cut.core > 0.0);
            let inner: Vec<(f64, f64)> = match has_core || closed {
                true => profile
                    .iter()
                    .rev()
                    .map(|cut| (cut.core, cut.height))
                    .collect(),
                false => vec![(0.0, 0.0)],
            };
            for (step, (wide, height)) in inner.into_iter().chain(outer).enumerate() {
                path += if step == 0 { "M" } else { "L" };
                path += &at(self.middle + side * wide);
                path += " ";
                path += &at(self.floor - height);
            }
            if closed {
                path += "Z";
            }
        }
        path
    }
}

/// A place in the drawing.
fn at(value: f64) -> String {
    show::fixed(value, 1)
}
