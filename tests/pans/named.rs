//! Pans as recipes name them, from a line of text to the pan that is reckoned with.

use batterwright::baking::pan::Shape;
use batterwright::baking::quantity::LengthUnit;
use batterwright::baking::worksheet::{Inputs, PanView, Settings, worksheet};

fn named(line: &str) -> PanView {
    let text = format!("Cake\n250 g flour\n200 g milk\n\nMethod\n{line}");
    worksheet(&Inputs::of_text(text), &Settings::default())
        .pans
        .own
}

/// Count, length, width and depth in millimetres, to a millimetre.
#[track_caller]
fn reads(line: &str, shape: Shape, count: u32, [length, width, depth]: [f64; 3]) {
    let view = named(line);
    let pan = view.entry.read().expect("a pan");
    assert!(view.from.starts_with("Named"), "{line}: {}", view.from);
    assert_eq!((pan.shape, pan.count), (shape, count), "{line}");
    for (found, by_hand) in [(pan.length, length), (pan.width, width), (pan.depth, depth)] {
        assert!(
            (found.to_millimetres() - by_hand).abs() < 1.0,
            "{line}: {}",
            pan.label(LengthUnit::Centimetres)
        );
    }
}

#[test]
fn shapes_by_their_words() {
    let inches = |length: f64, width: f64, depth: f64| [length, width, depth].map(|it| it * 25.4);
    for (line, shape, size) in [
        (
            "Grease a 9-inch heart-shaped cake tin.",
            Shape::Heart,
            inches(9.0, 9.0, 2.0),
        ),
        (
            "Line a 9 x 2 inch hexagonal pan.",
            Shape::Hexagon,
            inches(9.0, 9.0, 2.0),
        ),
        (
            "Butter a 10 x 7 inch oval baking dish.",
            Shape::Oval,
            inches(10.0, 7.0, 2.0),
        ),
        (
            "Butter a 22 cm savarin mould.",
            Shape::Ring,
            [220.0, 220.0, 57.15],
        ),
        (
            "Butter a 22 cm ring mould.",
            Shape::Ring,
            [220.0, 220.0, 57.15],
        ),
        (
            "Grease a 10-inch bundt pan.",
            Shape::Fluted,
            inches(10.0, 10.0, 3.5),
        ),
        (
            "Grease a 10-inch angel food pan.",
            Shape::Tube,
            inches(10.0, 10.0, 3.5),
        ),
        (
            "Press into a 24 cm fluted tart tin.",
            Shape::Tart,
            [240.0, 240.0, 25.4],
        ),
        (
            "Grease a 16 cm hemisphere mould.",
            Shape::Hemisphere,
            [160.0, 160.0, 80.0],
        ),
        (
            "Line a 13 x 9 inch Swiss roll tin.",
            Shape::Sheet,
            inches(13.0, 9.0, 1.0),
        ),
        (
            "Grease a 9 inch springform ring.",
            Shape::Round,
            inches(9.0, 9.0, 2.0),
        ),
    ] {
        reads(line, shape, 1, size);
    }
}

/// Sizes with names, from the table: half and quarter sheets inside, gastronorm less its rim, tins by the flour of a loaf.
#[test]
fn sizes_by_their_names() {
    for (line, shape, count, size) in [
        (
            "Spread in a half sheet pan.",
            Shape::Sheet,
            1,
            [431.8, 304.8, 25.4],
        ),
        (
            "Spread in two half-size sheet pans.",
            Shape::Sheet,
            2,
            [431.8, 304.8, 25.4],
        ),
        (
            "Spread in a quarter sheet pan.",
            Shape::Sheet,
            1,
            [304.8, 215.9, 25.4],
        ),
        (
            "Spread in a full-sheet pan.",
            Shape::Sheet,
            1,
            [635.0, 431.8, 25.4],
        ),
        ("Line a GN 1/1 tray.", Shape::Sheet, 1, [506.0, 301.0, 65.0]),
        (
            "Line a gastronorm 2/3 tin.",
            Shape::Sheet,
            1,
            [330.0, 301.0, 65.0],
        ),
        (
            "Grease a 1 lb loaf tin.",
            Shape::Loaf,
            1,
            [160.0, 110.0, 70.0],
        ),
        (
            "Grease a 900g/2lb loaf tin.",
            Shape::Loaf,
            1,
            [230.0, 130.0, 70.0],
        ),
        (
            "Line two 2 lb loaf tins.",
            Shape::Loaf,
            2,
            [230.0, 130.0, 70.0],
        ),
        (
            "Grease a mini muffin tin.",
            Shape::Cups,
            24,
            [44.45, 44.45, 19.05],
        ),
        (
            "Line a 6-cup jumbo muffin tin.",
            Shape::Cups,
            6,
            [88.9, 88.9, 44.45],
        ),
        (
            "Line a 12-hole muffin tin.",
            Shape::Cups,
            12,
            [69.85, 69.85, 38.1],
        ),
        (
            "Line a 12-hole bun tin.",
            Shape::Cups,
            12,
            [65.0, 65.0, 20.0],
        ),
    ] {
        reads(line, shape, count, size);
    }
}

/// Words that are about what is baked or where it is kept name no pan of that kind.
#[test]
fn words_of_other_things_name_no_pan() {
    for line in [
        "Stir the tart cherries and the pie filling into the batter, then fill a 9 inch round cake pan.",
        "Pour from the bowl into a 9 inch round pan.",
    ] {
        reads(line, Shape::Round, 1, [228.6, 228.6, 50.8]);
    }
    for line in [
        "Keep in a mason jar.",
        "Cool on a baking sheet.",
        "Add 1 jar jam.",
    ] {
        assert!(!named(line).from.starts_with("Named"), "{line}");
    }
    assert_eq!(
        named("Divide the batter among 6 mason jars.").entry.shape,
        Shape::Jar
    );
}
