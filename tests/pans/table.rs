//! The table of common sizes, against geometry and against what charts print.

use batterwright::baking::ingredient::Region;
use batterwright::baking::pan::{Made, Shape, Size, size, sizes, sizes_of};
use batterwright::baking::quantity::{LengthUnit, Volume};
use batterwright::baking::source::by_key;

const BRIMS: &str = include_str!("brims.tsv");

fn brims() -> impl Iterator<Item = (&'static str, f64, &'static str)> {
    BRIMS
        .lines()
        .filter(|line| !line.starts_with('#'))
        .skip(1)
        .map(|line| {
            let mut cells = line.split('\t');
            let mut cell = || cells.next().expect("three cells in a row");
            let (key, millilitres, differs) = (cell(), cell(), cell());
            (key, millilitres.parse().expect("a figure"), differs)
        })
}

fn brim(size: &Size) -> f64 {
    size.pan.one().brim().to_millilitres()
}

/// Within half a per cent, which the rounding of the measures takes up: a cup of 19.05 mm stands there as 19.0.
#[test]
fn every_size_holds_what_its_geometry_says() {
    let mut count = 0;
    for (key, millilitres, differs) in brims() {
        let ours = brim(size(key).unwrap_or_else(|| panic!("no size {key}")));
        let off = ours / millilitres - 1.0;
        assert_eq!(
            off.abs() > 0.005,
            !differs.is_empty(),
            "{key}: {ours:.1} mL, by hand {millilitres} mL"
        );
        count += 1;
    }
    assert_eq!(count, 130);
}

/// By hand, for the sizes that no list of brims has: frustum of 24 over 23 cm, 2.5 cm deep, 1084.7 mL, less 3 % for its flutes.
#[test]
fn tart_tins_are_fluted_frusta() {
    let tart = brim(size("tart_24cm").expect("a tart tin"));
    assert!((tart / (1084.7 * 0.97) - 1.0).abs() < 5e-4, "{tart}");
}

/// By hand: half an ellipse 65 mm wide and 55 mm deep, 2808 mm2, carried round a circle of 77.5 mm: 1367 mL.
#[test]
fn a_ring_is_half_an_ellipse_carried_round() {
    let ring = brim(size("ring_savarin_22").expect("a ring"));
    assert!((ring / 1367.2 - 1.0).abs() < 5e-4, "{ring}");
}

#[test]
fn every_size_is_sourced_and_offered() {
    assert!(sizes().len() >= 110);
    for size in sizes() {
        assert!(by_key(size.cited.source.key).is_some(), "{}", size.key);
        assert!(
            sizes_of(size.pan.shape, Region::Us)
                .iter()
                .any(|other| other.key == size.key)
        );
        let label = size.label(LengthUnit::Inches);
        assert!(label.contains(" in") && label.contains(" cm"), "{label}");
    }
    for key in ["pan_charts", "decorator_chart", "friberg_2003"] {
        assert!(by_key(key).is_some(), "{key}");
    }
}

#[test]
fn sizes_of_the_own_country_come_first() {
    for (region, own) in [(Region::Us, Made::Us), (Region::Nz, Made::Uk)] {
        let first = sizes_of(Shape::Round, region)[0];
        assert_eq!(first.made, own);
    }
    let first = sizes_of(Shape::Round, Region::Uk)[0].label(LengthUnit::Centimetres);
    assert_eq!(
        first,
        "15 cm round, 4.5 cm deep (5.91 x 1.77 in), sandwich tin"
    );
}

/// Charts print rounded and cautious volumes. Rows further off than a quarter have their reason here.
#[test]
fn charts_print_within_a_quarter_of_geometry() {
    const FURTHER_OFF: [(&str, &str); 4] = [
        ("muffin_mini", "2 tablespoons are heaped: 22 mL to the brim"),
        ("muffin_std_shallow", "the batter for a cup, not its brim"),
        (
            "rect_11x7x2",
            "one chart prints 6 cups, another 10; geometry has 10.7",
        ),
        ("round_8x1_5", "printed as 4 cups, the geometry is 5.2"),
    ];
    let mut offs: Vec<(f64, &str)> = Vec::new();
    for size in sizes() {
        for printed in &size.brims {
            let off = *printed / size.pan.one().brim() - 1.0;
            offs.push((off, size.key));
        }
    }
    offs.sort_by(|one, other| one.0.total_cmp(&other.0));
    for (off, key) in &offs {
        println!("{key}: print {:+.0} %", off * 100.0);
    }
    for (key, reason) in FURTHER_OFF {
        assert!(
            offs.iter().any(|(off, of)| *of == key && off.abs() > 0.22),
            "{key} is not off: {reason}"
        );
    }
    for (off, key) in offs {
        let is_named = FURTHER_OFF.iter().any(|(name, _)| *name == key);
        assert!(off.abs() <= 0.25 || is_named, "{key}: {off:.2}");
    }
}

/// Four of a textbook's figures and of charts, typed by hand from the prints.
#[test]
fn prints_are_those_of_the_charts() {
    let cups = |cups: f64| Volume::US_CUP * cups;
    let round = size("round_9x2").expect("a size");
    assert_eq!(round.brims, [cups(8.0)]);
    assert_eq!(round.batter, Some(cups(5.0)));
    assert_eq!(round.textbook, Some(cups(8.5)));
    let traybake = size("rect_13x9x2").expect("a size");
    assert_eq!(traybake.brims, [cups(14.0), cups(15.0)]);
}
