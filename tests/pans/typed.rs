//! Pans as they are typed: what is wrong gets a sentence at its field, what is right comes back.

use batterwright::baking::pan::{Pan, PanEntry, PanField, Shape, WaterUnit};
use batterwright::baking::quantity::{Length, LengthUnit};

const UNITS: [LengthUnit; 2] = [LengthUnit::Inches, LengthUnit::Centimetres];

fn typed(shape: Shape, changes: &[(PanField, &str)]) -> PanEntry {
    let mut entry = Pan::usual(shape).entry(LengthUnit::Inches);
    for (field, text) in changes {
        (*text).clone_into(entry.text_mut(*field));
    }
    entry
}

/// The fields that a sentence stands at, each sentence whole.
fn troubles(entry: &PanEntry) -> Vec<PanField> {
    let troubles = entry.read().err().unwrap_or_default();
    for trouble in &troubles {
        let sentence = &trouble.sentence;
        assert!(sentence.len() > 20 && sentence.ends_with('.'), "{sentence}");
    }
    troubles.iter().map(|trouble| trouble.field).collect()
}

#[test]
fn what_cannot_be_a_pan_is_said_at_its_field() {
    use PanField::*;
    for (shape, field, text) in [
        (Shape::Round, Length, "abc"),
        (Shape::Round, Length, ""),
        (Shape::Round, Length, "0"),
        (Shape::Round, Length, "-9"),
        (Shape::Round, Length, "39370"),
        (Shape::Round, Length, "NaN"),
        (Shape::Round, Length, "9 1/0"),
        (Shape::Round, Depth, "inf"),
        (Shape::Round, Count, "0"),
        (Shape::Round, Count, "1.5"),
        (Shape::Round, Count, "99999999999"),
        (Shape::Loaf, Width, "wide"),
        // A base that is nearly closed, and one that is as wide as a house.
        (Shape::Loaf, BaseWidth, "0.1"),
        (Shape::Loaf, BaseLength, "0"),
        (Shape::Round, BaseLength, "4000"),
        (Shape::Round, BaseLength, "x"),
        (Shape::Tube, Core, "10"),
        (Shape::Tube, CoreBase, "8.5"),
        (Shape::Ring, Core, "-1"),
        // Half of 8 in is 4 in.
        (Shape::Square, Corner, "4.1"),
        (Shape::Square, Corner, "round"),
        (Shape::Fluted, Flutes, "0"),
        (Shape::Fluted, Flutes, "101"),
        (Shape::Cups, Lining, "11"),
        (Shape::Cups, Lining, "thin"),
        (Shape::Jar, FillLine, "0"),
        (Shape::Jar, FillLine, "4.6"),
        (Shape::Jar, FillLine, "brim"),
        (Shape::Water, Water, "0"),
        (Shape::Water, Water, ""),
        (Shape::Water, Water, "much"),
        (Shape::Water, Water, "1e9"),
        // A litre and a half, a hand's breadth across, would stand higher than an oven; a tonne is no pan.
        (Shape::Water, Water, "1000000"),
        (Shape::Water, Depth, ""),
    ] {
        let entry = typed(shape, &[(field, text)]);
        assert_eq!(troubles(&entry), [field], "{shape:?} {field:?} {text:?}");
        assert_eq!(entry.text(field), text, "what was typed is kept");
    }
    // 150 L at 1 cm deep is 4.4 m across; 1 mL at 20 in deep is a hair.
    for (water, depth) in [("150000", "0.4"), ("1", "20")] {
        let entry = typed(Shape::Water, &[(Water, water), (Depth, depth)]);
        assert_eq!(troubles(&entry), [Water]);
    }
    // Several at once, each at its place.
    let entry = typed(Shape::Loaf, &[(Count, "no"), (Length, ""), (Depth, "0")]);
    assert_eq!(troubles(&entry), [Count, Length, Depth]);
    // A lining of 10 mm leaves nothing of a tube with a core nearly as wide as it.
    let entry = typed(
        Shape::Tube,
        &[
            (Length, "3"),
            (Core, "2.5"),
            (CoreBase, "2"),
            (Lining, "10"),
        ],
    );
    assert_eq!(troubles(&entry), [Lining]);
}

/// A field of another shape keeps its text and says nothing.
#[test]
fn fields_of_other_shapes_are_let_alone() {
    let entry = typed(
        Shape::Round,
        &[(PanField::Core, "core"), (PanField::Water, "?")],
    );
    assert_eq!(troubles(&entry), []);
}

/// By hand: 10 cups are 2365.88 mL; 5 cm deep that is 473.2 cm2, 24.55 cm across, and half of it stands half as deep.
#[test]
fn a_pan_by_its_water() {
    let mut entry = Pan::usual(Shape::Water).entry(LengthUnit::Centimetres);
    entry.water = "10".into();
    entry.water_unit = WaterUnit::Cups;
    entry.depth = "5".into();
    let pan = entry.read().expect("a pan");
    assert!((pan.brim().to_millilitres() - 2365.882).abs() < 1e-3);
    assert!((pan.length.to_centimetres() - 24.545).abs() < 1e-3);
    let half = pan.depth_of(pan.brim() / 2.0);
    assert!((half.to_centimetres() - 2.5).abs() < 1e-9);
    let inches = entry.in_unit(LengthUnit::Inches);
    assert_eq!(
        (inches.water.as_str(), inches.depth.as_str()),
        ("10", "1.969")
    );
}

/// By hand: 21.6 cm less twice 0.3 mm is 21.54 cm; 36.441 cm2 a centimetre.
#[test]
fn a_lining_takes_its_thickness_off_each_side() {
    let mut entry = Pan::usual(Shape::Square).entry(LengthUnit::Centimetres);
    entry.length = "21.6".into();
    entry.depth = "1".into();
    entry.lining = "0,3".into();
    let pan = entry.read().expect("a pan");
    assert!((pan.brim().to_millilitres() - 21.54 * 21.54).abs() < 1e-6);
}

/// By hand: corners of 2 cm take (4 - pi) x 4 cm2 away, 3.434 cm2 of 400.
#[test]
fn round_corners_take_their_area_away() {
    let mut entry = Pan::usual(Shape::Square).entry(LengthUnit::Centimetres);
    entry.length = "20".into();
    entry.depth = "1".into();
    entry.corner = "2".into();
    let pan = entry.read().expect("a pan");
    assert!((pan.brim().to_millilitres() - 396.566).abs() < 1e-3);
}

#[test]
fn every_usual_pan_comes_back_from_its_fields() {
    for shape in Shape::ALL {
        for unit in UNITS {
            let pan = Pan {
                lining: Length::millimetres(if shape.has_lining() { 0.4 } else { 0.0 }),
                fill_line: Some(Pan::usual(shape).depth * 0.5),
                base_length: Pan::usual(shape).base_length
                    * if shape.has_base() { 0.95 } else { 1.0 },
                ..Pan::usual(shape)
            };
            let pan = Pan {
                base_width: if shape.has_width() {
                    pan.base_width
                } else {
                    pan.base_length
                },
                ..pan
            };
            let back = pan
                .entry(unit)
                .read()
                .unwrap_or_else(|troubles| panic!("{troubles:?}"));
            assert_eq!(back.shape, shape);
            assert_eq!(back.count, pan.count);
            let ratio = back.brim() / pan.brim();
            assert!((ratio - 1.0).abs() < 2e-3, "{shape:?} {unit:?}: {ratio}");
        }
    }
}

/// There and back in the other unit, an entry is what it was.
#[test]
fn units_turn_into_one_another_and_back() {
    for shape in Shape::ALL {
        let entry = typed(shape, &[(PanField::FillLine, "0.5")]);
        let back = entry
            .in_unit(LengthUnit::Centimetres)
            .in_unit(LengthUnit::Inches);
        assert_eq!(back.read(), entry.read(), "{shape:?}");
    }
}
