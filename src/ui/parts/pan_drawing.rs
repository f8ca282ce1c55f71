//! A pan cut through its middle with the batter in it, to scale.

use super::common::paragraph;
use crate::baking::pan::{Cut, Section};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, drawing, element};

/// The drawing of a pan. `widest` is the width of the widest pan on the page, in millimetres.
pub fn pan_drawing(section: &Section, widest: f64) -> Element {
    let Section {
        profile,
        depth,
        batter,
        count,
    } = section;
    let batter = batter.unwrap_or(0.0);
    let air = (batter - depth).max(0.0) + depth * 0.25;
    let place = Place {
        middle: widest.max(1.0) * 0.56,
        floor: air + depth,
    };
    let level = batter.min(*depth);
    let brim = profile.last().map_or(0.0, |cut| cut.wall);
    let over = (batter > *depth).then(|| {
        let height = place.floor - batter;
        drawing("line")
            .class("pan__over")
            .figure("x1", place.middle - brim)
            .figure("x2", place.middle + brim)
            .figure("y1", height)
            .figure("y2", height)
    });
    let filled = below(profile, level);
    let batter = drawing("path")
        .class("pan__batter")
        .attribute("d", place.halves(&filled, true));
    let walls = drawing("path")
        .class("pan__wall")
        .attribute("d", place.halves(profile, false));
    let size = format!("0 0 {} {}", at(place.middle * 2.0), at(place.floor + 8.0));
    let drawn = drawing("svg")
        .class("pan")
        .attribute("viewBox", size)
        .attribute("aria-hidden", "true")
        .child(batter)
        .child(walls)
        .children(over);
    let caption = (*count > 1).then(|| {
        element("figcaption")
            .class("drawing__words")
            .child(paragraph("drawing__key", format!("{count} of these.")))
    });
    element("figure")
        .class("drawing")
        .child(drawn)
        .children(caption)
}

/// The part of a profile below a height, ended there.
fn below(profile: &[Cut], height: f64) -> Vec<Cut> {
    let mut found: Vec<Cut> = profile
        .iter()
        .copied()
        .take_while(|cut| cut.height < height)
        .collect();
    if let (Some(last), Some(next)) = (found.last(), profile.get(found.len())) {
        let part = (height - last.height) / (next.height - last.height);
        let between = |from: f64, to: f64| from + (to - from) * part;
        found.push(Cut {
            height,
            core: between(last.core, next.core),
            wall: between(last.wall, next.wall),
        });
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
            let mut inner = profile.iter().rev().map(|cut| (cut.core, cut.height));
            let outer = profile.iter().map(|cut| (cut.wall, cut.height));
            // Without a core nothing stands in the middle.
            let has_core = profile.iter().any(|cut| cut.core > 0.0);
            let inner: Vec<(f64, f64)> = match (has_core, closed) {
                (true, _) | (false, true) => inner.collect(),
                (false, false) => inner.next_back().into_iter().collect(),
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
