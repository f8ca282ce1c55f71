//! Every shape's volume, against thin slices whose areas are those of polygons drawn here.

use batterwright::baking::pan::{Pan, Shape, Symmetry};
use batterwright::baking::quantity::{Length, Volume};
use std::f64::consts::{PI, SQRT_2, TAU};

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// The corners of an outline, in millimetres.
type Outline = Vec<(f64, f64)>;

/// Half the sum of cross products: the area of any polygon.
fn area(outline: &Outline) -> f64 {
    let next = outline.iter().cycle().skip(1);
    let twice: f64 = outline
        .iter()
        .zip(next)
        .map(|((x, y), (u, v))| x * v - u * y)
        .sum();
    twice.abs() / 2.0
}

fn arc(centre: (f64, f64), radius: f64, from: f64, to: f64) -> impl Iterator<Item = (f64, f64)> {
    const STEPS: usize = 720;
    (0..=STEPS).map(move |step| {
        let angle = from + (to - from) * step as f64 / STEPS as f64;
        (
            centre.0 + radius * angle.cos(),
            centre.1 + radius * angle.sin(),
        )
    })
}

fn ellipse(length: f64, width: f64) -> Outline {
    arc((0.0, 0.0), 1.0, 0.0, TAU)
        .map(|(x, y)| (x * length / 2.0, y * width / 2.0))
        .collect()
}

fn rounded(length: f64, width: f64, corner: f64) -> Outline {
    let (x, y) = (length / 2.0 - corner, width / 2.0 - corner);
    [(x, y), (-x, y), (-x, -y), (x, -y)]
        .into_iter()
        .enumerate()
        .flat_map(|(place, centre)| {
            let from = place as f64 * PI / 2.0;
            arc(centre, corner, from, from + PI / 2.0)
        })
        .collect()
}

/// A square that stands on its corner, half a disc on each upper side; scaled so that it is so wide across both.
fn heart(across: f64) -> Outline {
    // Side 2: the upper sides run from (sqrt 2, 0) over (0, sqrt 2) to (-sqrt 2, 0).
    let half = SQRT_2 / 2.0;
    let outline: Outline = std::iter::once((0.0, -SQRT_2))
        .chain(arc((half, half), 1.0, -PI / 4.0, 3.0 * PI / 4.0))
        .chain(arc((-half, half), 1.0, PI / 4.0, 5.0 * PI / 4.0))
        .collect();
    let widest = outline.iter().map(|(x, _)| x.abs()).fold(0.0, f64::max);
    let scale = across / 2.0 / widest;
    outline
        .into_iter()
        .map(|(x, y)| (x * scale, y * scale))
        .collect()
}

fn hexagon(across: f64) -> Outline {
    (0..6)
        .map(|corner| f64::from(corner) * PI / 3.0)
        .map(|angle| (across / 2.0 * angle.cos(), across / 2.0 * angle.sin()))
        .collect()
}

/// The area of a section at a part of the depth, drawn.
fn drawn(pan: &Pan, part: f64) -> f64 {
    let [
        length,
        width,
        depth,
        base_length,
        base_width,
        core,
        core_base,
        corner,
    ] = [
        pan.length,
        pan.width,
        pan.depth,
        pan.base_length,
        pan.base_width,
        pan.core,
        pan.core_base,
        pan.corner,
    ]
    .map(Length::to_millimetres);
    let lining = pan.lining.to_millimetres();
    let at = |base: f64, brim: f64, walls: f64| base * (1.0 - part) + brim * part + walls * lining;
    let (a, b) = (at(base_length, length, -2.0), at(base_width, width, -2.0));
    let core_at = if core > 0.0 {
        at(core_base, core, 2.0)
    } else {
        0.0
    };
    let disc = |across: f64| area(&ellipse(across, across));
    match pan.shape {
        Shape::Square | Shape::Rectangle | Shape::Sheet | Shape::Loaf => {
            area(&rounded(a, b, corner))
        }
        Shape::Heart => area(&heart(a)),
        Shape::Hexagon => area(&hexagon(a)),
        Shape::Oval => area(&ellipse(a, b)),
        Shape::Hemisphere => {
            // The ball through brim and base has its middle on the axis.
            let ball = (length * length / 4.0 + depth * depth) / (2.0 * depth);
            let below = ball - part * depth;
            disc(2.0 * (ball * ball - below * below).max(0.0).sqrt())
        }
        Shape::Ball => disc(length * (1.0 - (2.0 * part - 1.0).powi(2)).max(0.0).sqrt()),
        Shape::Ring => {
            let (middle, half) = ((length + core) / 4.0, (length - core) / 4.0);
            let wide = half * (1.0 - (1.0 - part).powi(2)).sqrt();
            disc(2.0 * (middle + wide)) - disc(2.0 * (middle - wide))
        }
        _ => pan.flutes * (disc(a) - disc(core_at)),
    }
}

/// The sum of thin slices, each as thick as the others and as wide as at its middle.
fn sliced(pan: &Pan, part: f64) -> f64 {
    const SLICES: u32 = 400;
    let thick = part / f64::from(SLICES);
    let sum: f64 = (0..SLICES)
        .map(|slice| drawn(pan, (f64::from(slice) + 0.5) * thick))
        .sum();
    sum * thick * pan.depth.to_millimetres() / 1000.0
}

/// Every shape at its usual size, and some with everything unusual.
fn pans() -> Vec<Pan> {
    let mut pans: Vec<Pan> = Shape::ALL.map(|shape| Pan::usual(shape).one()).into();
    let unusual = |shape, length: f64, width: f64, depth: f64| {
        let pan = Pan::of(shape, mm(length), mm(width), mm(depth));
        Pan {
            base_length: pan.base_length * 0.9,
            base_width: pan.base_width * 0.85,
            corner: if shape.has_corners() {
                mm(18.0)
            } else {
                mm(0.0)
            },
            lining: if shape.has_lining() { mm(1.5) } else { mm(0.0) },
            ..pan
        }
    };
    pans.extend([
        unusual(Shape::Square, 200.0, 200.0, 50.0),
        unusual(Shape::Rectangle, 330.0, 230.0, 50.0),
        unusual(Shape::Sheet, 506.0, 301.0, 65.0),
        unusual(Shape::Loaf, 230.0, 130.0, 70.0),
        unusual(Shape::Fluted, 247.0, 247.0, 89.0),
        unusual(Shape::Cups, 70.0, 70.0, 38.0),
        unusual(Shape::Heart, 254.0, 254.0, 51.0),
        unusual(Shape::Hexagon, 300.0, 300.0, 51.0),
        unusual(Shape::Oval, 273.0, 200.0, 51.0),
        // A flat bowl, and one that closes above its middle.
        Pan::of(Shape::Hemisphere, mm(200.0), mm(200.0), mm(60.0)),
        Pan::of(Shape::Hemisphere, mm(120.0), mm(120.0), mm(110.0)),
        Pan::of(Shape::Ring, mm(220.0), mm(220.0), mm(32.5)),
    ]);
    pans
}

#[test]
fn volumes_are_those_of_thin_slices() {
    for pan in pans() {
        for part in [0.02, 0.3, 0.62, 1.0] {
            let ours = pan.volume_to(pan.depth * part).to_millilitres();
            let theirs = sliced(&pan, part);
            assert!(
                (ours / theirs - 1.0).abs() < 2e-4,
                "{:?} to {part}: {ours} against {theirs}",
                pan.shape
            );
        }
    }
}

/// Revolved, the half widths of a section give the volume back: the model of the oven stands on that.
#[test]
fn half_widths_give_the_volume_back() {
    const SLICES: u32 = 4000;
    for pan in pans() {
        if pan.symmetry() == Symmetry::Slab {
            continue;
        }
        let thick = pan.depth.to_millimetres() / f64::from(SLICES);
        let volume: f64 = (0..SLICES)
            .map(|slice| {
                let (core, wall) = pan.across(mm((f64::from(slice) + 0.5) * thick));
                let (core, wall) = (core.to_millimetres(), wall.to_millimetres());
                assert!(core >= 0.0 && wall > core, "{:?}", pan.shape);
                PI * (wall * wall - core * core) * thick
            })
            .sum();
        let ours = pan.brim().to_millilitres() * 1000.0;
        assert!(
            (volume / ours - 1.0).abs() < 2e-4,
            "{:?}: {volume} {ours}",
            pan.shape
        );
    }
}

/// By hand: a loaf of 5 in closes by 3/8 in at each end, so half of it is 2.125 in at the base and 2.3125 half way up; a 9 in
/// square has the radius of a disc of 81 in2, 5.078 in; a ball of 6 in is 2.598 in half wide at a quarter of its height.
#[test]
fn half_widths_by_hand() {
    let half = |shape, part: f64| {
        let sizes = match shape {
            Shape::Square => (9.0, 9.0, 2.0),
            Shape::Loaf => (9.0, 5.0, 3.0),
            _ => (6.0, 6.0, 6.0),
        };
        let [length, width, depth] = [sizes.0, sizes.1, sizes.2].map(Length::inches);
        let pan = Pan::of(shape, length, width, depth);
        pan.across(depth * part).1.to_inches()
    };
    for (shape, part, by_hand) in [
        (Shape::Loaf, 0.0, 2.125),
        (Shape::Loaf, 0.5, 2.3125),
        (Shape::Loaf, 1.0, 2.5),
        (Shape::Square, 0.3, 5.0777),
        (Shape::Ball, 0.25, 2.5981),
        (Shape::Ball, 0.5, 3.0),
    ] {
        let found = half(shape, part);
        assert!((found - by_hand).abs() < 1e-4, "{shape:?} {part}: {found}");
    }
    assert_eq!(Pan::usual(Shape::Loaf).symmetry(), Symmetry::Slab);
    assert_eq!(Pan::usual(Shape::Heart).symmetry(), Symmetry::Axis);
    assert_eq!(Pan::usual(Shape::Ball).symmetry(), Symmetry::Ball);
}

/// Worked by hand from the formulas of solid geometry.
#[test]
fn volumes_by_hand() {
    let inches = |shape, length: f64, width: f64, depth: f64| {
        let [length, width, depth] = [length, width, depth].map(Length::inches);
        Pan::of(shape, length, width, depth)
    };
    for (pan, millilitres) in [
        // pi / 12 x 1.5 x (2.75^2 + 2.75 x 2 + 2^2) in3.
        (inches(Shape::Cups, 2.75, 2.75, 1.5), 109.8),
        // 3 / 6 x (8.25 x 4.25 + 9 x 5 + 17.25 x 9.25) in3.
        (inches(Shape::Loaf, 9.0, 5.0, 3.0), 1963.4),
        // 2 / 3 pi 3^3 in3.
        (inches(Shape::Hemisphere, 6.0, 6.0, 3.0), 926.7),
        // 0.61267 x 10^2 x 2 in3.
        (inches(Shape::Heart, 10.0, 10.0, 2.0), 2008.0),
        // 0.6495 x 12^2 x 2 in3.
        (inches(Shape::Hexagon, 12.0, 12.0, 2.0), 3065.4),
        // pi / 4 x 9^2 x 2 in3.
        (inches(Shape::Round, 9.0, 9.0, 2.0), 2085.0),
        // 13 x 9 x 2 in3.
        (inches(Shape::Rectangle, 13.0, 9.0, 2.0), 3834.6),
        // Frusta of 10 over 8.5 in and of 2.25 over 3 in, 4 in high: 269.4 - 21.8 in3.
        (inches(Shape::Tube, 10.0, 10.0, 4.0), 4057.4),
        // Frusta of 9.75 over 7.5 in and of 2.25 over 3 in, 3.5 in high, less 7 % for the flutes: 0.93 x 186.58 in3.
        (inches(Shape::Fluted, 9.75, 9.75, 3.5), 2843.5),
        // 4 / 3 pi 3^3 in3.
        (inches(Shape::Ball, 6.0, 6.0, 6.0), 1853.3),
    ] {
        let brim = pan.brim().to_millilitres();
        assert!((brim - millilitres).abs() < 0.1, "{:?}: {brim}", pan.shape);
    }
}

/// By hand: 9 to 8 in round 81 / 64; 10 in square to 8 in round 100 / 50.265; 13 x 9 to 9 in round 117 / 63.617.
#[test]
fn ratios_of_areas_by_hand() {
    let area = |shape, length: f64, width: f64| {
        Pan::of(
            shape,
            Length::inches(length),
            Length::inches(width),
            Length::inches(2.0),
        )
        .area()
    };
    let round = |across| area(Shape::Round, across, across);
    for (ratio, by_hand, within) in [
        (round(9.0) / round(8.0), 1.265_625, 1e-6),
        (
            area(Shape::Square, 10.0, 10.0) / round(8.0),
            1.989_437,
            1e-6,
        ),
        (
            area(Shape::Rectangle, 13.0, 9.0) / round(9.0),
            1.839_118,
            1e-5,
        ),
    ] {
        assert!((ratio - by_hand).abs() < within, "{ratio} {by_hand}");
    }
}

/// Wedding charts, read: 12 in round 56, 12 in square 72; 6, 8, 10, 14 and 16 in rounds 12, 24, 38, 78 and 100, within two.
#[test]
fn slices_are_those_of_wedding_charts() {
    let slices = |shape, across: f64| {
        let across = Length::inches(across);
        Pan::of(shape, across, across, Length::inches(4.0)).slices()
    };
    assert_eq!(slices(Shape::Round, 12.0), Some(56));
    assert_eq!(slices(Shape::Square, 12.0), Some(72));
    for (across, chart) in [
        (6.0, 12_u32),
        (8.0, 24),
        (10.0, 38),
        (14.0, 78),
        (16.0, 100),
    ] {
        let ours = slices(Shape::Round, across).expect("a tier");
        assert!(
            ours.abs_diff(chart) <= 2,
            "{across} in: {ours}, chart {chart}"
        );
    }
    assert_eq!(slices(Shape::Cups, 2.75), None);
    assert_eq!(slices(Shape::Round, 4.0), None);
}

#[test]
fn depth_undoes_volume_and_volume_rises_with_height() {
    for pan in pans() {
        let mut before = Volume::ZERO;
        for step in 1..=60 {
            let height = pan.depth * (f64::from(step) / 40.0);
            let volume = pan.volume_to(height);
            assert!(volume > before, "{:?} at {step}", pan.shape);
            before = volume;
            let back = pan.depth_of(volume) / height;
            assert!(
                (back - 1.0).abs() < 1e-7,
                "{:?} at {step}: {back}",
                pan.shape
            );
        }
        assert_eq!(pan.volume_to(Length::ZERO), Volume::ZERO);
        assert!(pan.depth_of(Volume::ZERO).to_millimetres() < 1e-9);
    }
}

#[test]
fn twice_as_many_hold_twice_as_much() {
    for pan in pans() {
        let two = Pan { count: 2, ..pan };
        assert_eq!(two.brim() / pan.brim(), 2.0);
        assert_eq!(two.area() / pan.area(), 2.0);
        assert_eq!(two.one(), pan);
        let depth = two.depth_of(pan.brim() * 1.2);
        assert!((depth / pan.depth_of(pan.brim() * 0.6) - 1.0).abs() < 1e-9);
    }
}
