//! Common sizes of pans, from `sizes.csv`: what charts, a standard and the trade know, in millimetres.
//!
//! What charts print is kept beside the sizes and never reckoned with: a printed volume and a geometric one don't go into
//! one ratio, and charts differ from geometry by up to a quarter.

use super::{Pan, Shape};
use crate::baking::ingredient::Region;
use crate::baking::packed::{self, Cells};
use crate::baking::quantity::{Length, LengthUnit, Volume};
use crate::baking::source::{self, Cited};
use std::sync::OnceLock;

/// Where pans of a size are made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Made {
    /// The United States and Canada.
    Us,
    /// Britain, Ireland, Australia and New Zealand.
    Uk,
    /// Continental Europe, gastronorm included.
    Europe,
    /// Japan.
    Japan,
    /// Anywhere.
    Anywhere,
}

include!(concat!(env!("OUT_DIR"), "/pan_lists.rs"));

/// A common size.
#[derive(Debug, PartialEq)]
pub struct Size {
    /// Its name in the table.
    pub key: &'static str,
    /// Where it is made for.
    pub made: Made,
    /// What it is called beyond its measures; empty where that is nothing.
    pub name: &'static str,
    /// The pan, as many as come in one tray.
    pub pan: Pan,
    /// What charts print for the brim of one: several where charts disagree, none where no chart was seen. Source `pan_charts`.
    pub brims: Vec<Volume>,
    /// The batter that a chart for decorators gives one. Source `decorator_chart`.
    pub batter: Option<Volume>,
    /// What a textbook gives as the volume of one. Source `friberg_2003`.
    pub textbook: Option<Volume>,
    /// Where the measures are from.
    pub cited: Cited,
    /// A word of explanation; empty where there is none.
    pub note: &'static str,
}

/// Every size, in the order of their keys.
pub fn sizes() -> &'static [Size] {
    static ALL: OnceLock<Vec<Size>> = OnceLock::new();
    ALL.get_or_init(|| packed::rows(9).map(unpacked).collect())
}

/// The size of that key.
pub fn size(key: &str) -> Option<&'static Size> {
    sizes().iter().find(|size| size.key == key)
}

/// The sizes of a shape, those of the baker's own country first, small before large.
pub fn sizes_of(shape: Shape, region: Region) -> Vec<&'static Size> {
    let own = match region {
        Region::Us | Region::Ca => Made::Us,
        Region::Uk | Region::Au | Region::Nz => Made::Uk,
    };
    let mut found: Vec<&Size> = sizes()
        .iter()
        .filter(|size| size.pan.shape == shape)
        .collect();
    found.sort_by(|one, other| {
        let area = |size: &Size| size.pan.one().area();
        (one.made != own)
            .cmp(&(other.made != own))
            .then(area(one).total_cmp(&area(other)))
            .then(
                one.pan
                    .depth
                    .to_millimetres()
                    .total_cmp(&other.pan.depth.to_millimetres()),
            )
    });
    found
}

impl Size {
    /// Whether a pan is of this size, as far as typed figures tell.
    pub fn is(&self, pan: &Pan) -> bool {
        let sides = |pan: &Pan| {
            [
                pan.length,
                pan.width,
                pan.depth,
                pan.base_length,
                pan.base_width,
                pan.core,
                pan.corner,
            ]
        };
        let pairs = sides(pan).into_iter().zip(sides(&self.pan));
        let near = |(one, other): (Length, Length)| (one - other).to_millimetres().abs() < 0.05;
        pan.shape == self.pan.shape && pairs.into_iter().all(near)
    }

    /// What it is called and measures, in the baker's unit and the other: "half sheet, 17 x 12 in sheet, 1 in deep (43.2 x
    /// 30.5 x 2.5 cm)".
    pub fn label(&self, unit: LengthUnit) -> String {
        let other = match unit {
            LengthUnit::Inches => LengthUnit::Centimetres,
            LengthUnit::Centimetres => LengthUnit::Inches,
        };
        let one = self.pan.one();
        let (label, measures) = (one.label(unit), one.measures(other));
        match self.name {
            "" => format!("{label} ({measures})"),
            name => format!("{label} ({measures}), {name}"),
        }
    }
}

fn unpacked(mut cells: Cells) -> Size {
    let key = cells.text();
    let shape = cells.choice(SHAPES).unwrap_or_default();
    let made = cells.choice(MADE).unwrap_or(Made::Anywhere);
    let name = cells.text();
    let [
        length,
        width,
        base_length,
        base_width,
        depth,
        core,
        core_base,
    ] = cells.figures().map(Length::millimetres);
    let [cavities, flutes] = cells.figures();
    let cups = |text: &str| -> Vec<Volume> {
        let cups = text.split_whitespace();
        cups.filter_map(crate::baking::text::decimal)
            .map(|cups| Volume::US_CUP * cups)
            .collect()
    };
    let usual = Pan::of(shape, length, width, depth);
    let or = |typed: Length, usual: Length| if typed > Length::ZERO { typed } else { usual };
    let base_length = or(base_length, usual.base_length);
    let pan = Pan {
        count: cavities as u32,
        base_length,
        base_width: match shape.has_width() {
            true => or(base_width, usual.base_width),
            false => base_length,
        },
        core: or(core, usual.core),
        core_base: or(
            core_base,
            if shape == Shape::Ring {
                core
            } else {
                usual.core_base
            },
        ),
        flutes: if flutes > 0.0 {
            flutes / 100.0
        } else {
            usual.flutes
        },
        ..usual
    };
    Size {
        key,
        made,
        name,
        pan,
        brims: cups(cells.text()),
        batter: cups(cells.text()).pop(),
        textbook: cups(cells.text()).pop(),
        cited: source::cited(cells.text()),
        note: cells.text(),
    }
}
