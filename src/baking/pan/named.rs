//! The pan that a recipe's text names.

use super::{Pan, Shape, size};
use crate::baking::quantity::{Length, Quantity};
use crate::baking::recipe::{PanKind, PanMention};

impl Pan {
    /// The pan that a text names; sizes that it leaves out are the usual ones of that kind.
    pub fn named(mention: &PanMention) -> Self {
        let known = mention.size.and_then(size);
        let shape = known.map_or_else(|| shape(mention.kind), |size| size.pan.shape);
        let usual = known.map_or_else(|| Self::usual(shape), |size| size.pan);
        let count = match shape {
            // As many cups as the tin has, where the text counts none.
            Shape::Cups if mention.count == 0 => usual.count,
            _ => mention.count.max(1),
        };
        let pan = match mention.lengths[..] {
            // A name such as "2 lb" says more than one length beside it.
            [] | [_] if known.is_some() => usual,
            [] => usual,
            ref lengths => measured(shape, lengths, Self::names_depth(mention)),
        };
        Self { count, ..pan }
    }

    /// Whether a text names a pan's depth: the third length of an oblong, the second and shorter of the others.
    pub fn names_depth(mention: &PanMention) -> bool {
        match (shape(mention.kind).has_width(), &mention.lengths[..]) {
            (true, lengths) => lengths.len() >= 3,
            (false, [length, .., depth]) => *depth < *length * 0.75,
            _ => false,
        }
    }
}

fn shape(kind: PanKind) -> Shape {
    match kind {
        PanKind::Round => Shape::Round,
        PanKind::Square => Shape::Square,
        PanKind::Rectangle => Shape::Rectangle,
        PanKind::Sheet => Shape::Sheet,
        PanKind::Loaf => Shape::Loaf,
        PanKind::Tube => Shape::Tube,
        PanKind::Fluted => Shape::Fluted,
        PanKind::Ring => Shape::Ring,
        PanKind::Cups => Shape::Cups,
        PanKind::Tart => Shape::Tart,
        PanKind::Bowl => Shape::Hemisphere,
        PanKind::Hexagon => Shape::Hexagon,
        PanKind::Heart => Shape::Heart,
        PanKind::Oval => Shape::Oval,
        PanKind::Jar => Shape::Jar,
    }
}

/// A pan by the lengths beside it, at least one: "8 x 8 x 2" and "8 x 2" name the depth last, "8 x 8" names none.
fn measured(shape: Shape, lengths: &[Length], has_depth: bool) -> Pan {
    let first = lengths[0];
    let usual = Pan::usual(shape);
    let (length, width) = match lengths {
        [a, b, ..] if shape.has_width() => longer_first(*a, *b),
        _ => (first, first * (usual.width / usual.length)),
    };
    let depth = match lengths.last() {
        Some(depth) if has_depth => *depth,
        _ => shape.usual_depth(length),
    };
    Pan::of(shape, length, width, depth)
}

fn longer_first(a: Length, b: Length) -> (Length, Length) {
    if a.base() < b.base() { (b, a) } else { (a, b) }
}
