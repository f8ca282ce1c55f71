//! Pressure and boiling points: published values by hand, and other programs'.

use batterwright::baking::oven::air::{
    boiling_point, caution, pressure, saturation_pressure, syrup_boiling_point,
};
use batterwright::baking::quantity::{Height, Pressure, Temperature};

/// The verification values that IAPWS prints beside the equations (IAPWS R7-97, tables 35 and 36; from memory).
#[test]
fn steam_is_that_of_the_release() {
    for (megapascals, kelvin) in [(0.1, 372.755_919), (1.0, 453.035_632), (10.0, 584.149_488)] {
        let found = boiling_point(Pressure::pascals(megapascals * 1e6)).expect("in region 4");
        assert!(
            (found.to_celsius() + 273.15 - kelvin).abs() < 5e-7,
            "{megapascals} MPa: {found:?}"
        );
    }
    for (kelvin, megapascals) in [
        (300.0, 0.353_658_941e-2),
        (500.0, 2.638_897_76),
        (600.0, 12.344_314_6),
    ] {
        let found = saturation_pressure(Temperature::celsius(kelvin - 273.15)).expect("region 4");
        assert!(
            (found.to_pascals() / 1e6 / megapascals - 1.0).abs() < 2e-9,
            "{kelvin} K: {found:?}"
        );
    }
}

/// Rows of the standard atmosphere by geometric height, printed to five figures (ICAO Doc 7488 and its kin, from memory).
#[test]
fn air_is_the_standard_atmosphere_by_geometric_height() {
    for (metres, pascals) in [
        (0.0, 101_325.0),
        (1_000.0, 89_876.0),
        (2_000.0, 79_501.0),
        (3_000.0, 70_121.0),
    ] {
        let found = pressure(Height::metres(metres)).expect("dry land");
        assert!(
            (found.to_pascals() - pascals).abs() < 0.5,
            "{metres} m: {found:?}"
        );
    }
}

/// Rows by geopotential height (the same source), put at their geometric one by hand: z = r H / (r - H), so 1,000 m of it are
/// 1,000.157 m on a map.
#[test]
fn geopotential_rows_come_out_at_their_own_heights() {
    for (metres, pascals) in [
        (1_000.157, 89_874.6),
        (2_000.629, 79_495.2),
        (3_001.416, 70_108.5),
    ] {
        let found = pressure(Height::metres(metres)).expect("dry land");
        assert!(
            (found.to_pascals() - pascals).abs() < 0.5,
            "{metres} m: {found:?}"
        );
    }
}

/// 5,280 ft are a mile: 83.43 kPa (worked by hand in the trade's reference). Denver's boiling point is the 94.9 °C of
/// extension leaflets for 5,000 ft.
#[test]
fn a_mile_up_is_known() {
    let found = pressure(Height::feet(5_280.0)).expect("dry land");
    assert!((found.to_pascals() - 83_430.0).abs() < 10.0, "{found:?}");
    let found = pressure(Height::feet(5_000.0)).and_then(|it| boiling_point(it).ok_or("no steam"));
    let found = found.expect("a boiling point").to_celsius();
    assert!((found - 94.90).abs() < 0.01, "{found}");
}

/// A crumb's syrup at the sea: activity 0.93 boils at 102.0 °C, 0.90 at 103.0, 0.85 at 104.6 (worked from IAPWS-97).
#[test]
fn a_syrup_boils_hotter() {
    for (activity, celsius) in [(0.93, 102.0), (0.90, 102.95), (0.85, 104.6)] {
        let found = syrup_boiling_point(Pressure::ATMOSPHERE, activity).expect("boils");
        assert!(
            (found.to_celsius() - celsius).abs() < 0.06,
            "{activity}: {found:?}"
        );
    }
    for activity in [0.0, -1.0, 1.1, f64::NAN] {
        assert!(syrup_boiling_point(Pressure::ATMOSPHERE, activity).is_none());
    }
}

/// Steam over water and water's boiling point are each other's inverse, to a hundredth of a millikelvin.
#[test]
fn there_and_back() {
    for celsius in (1..=370).map(f64::from) {
        let steam = saturation_pressure(Temperature::celsius(celsius)).expect("in region 4");
        let back = boiling_point(steam).expect("in region 4").to_celsius();
        assert!((back - celsius).abs() < 1e-5, "{celsius}: {back}");
    }
}

/// The shore of the Dead Sea and 5,000 m have figures; what lies beyond gets a sentence, and no figure is made up.
#[test]
fn where_nobody_bakes_gets_a_sentence() {
    for metres in [-430.0, 0.0, 3_500.0, 5_000.0] {
        assert!(pressure(Height::metres(metres)).is_ok(), "{metres}");
    }
    for metres in [-11_000.0, -430.1, 5_000.1, 8_849.0, f64::NAN, f64::INFINITY] {
        let said = pressure(Height::metres(metres)).expect_err("nobody bakes there");
        assert!(said.contains("-430"), "{said}");
    }
    assert!(caution(Height::metres(3_500.0)).is_none());
    assert!(caution(Height::metres(3_501.0)).is_some());
    for pascals in [0.0, 600.0, 3e7, f64::NAN] {
        assert!(boiling_point(Pressure::pascals(pascals)).is_none());
    }
    for celsius in [-1.0, 380.0, f64::NAN] {
        assert!(saturation_pressure(Temperature::celsius(celsius)).is_none());
    }
}

/// The figures that IAPWS' own equations and a standard atmosphere of another programmer give, every 100 m.
#[test]
fn other_programs_agree() {
    let rows = include_str!("air.tsv")
        .lines()
        .filter(|line| !line.starts_with('#'));
    let mut count = 0;
    for row in rows {
        let figures: Vec<f64> = row
            .split('\t')
            .map(|cell| cell.parse().expect("a number"))
            .collect();
        let [metres, pascals, boils, syrup] = figures[..] else {
            panic!("four figures: {row}");
        };
        let air = pressure(Height::metres(metres)).expect("dry land");
        assert!((air.to_pascals() / pascals - 1.0).abs() < 1e-3, "{row}");
        let found = boiling_point(air).expect("boils").to_celsius();
        assert!((found - boils).abs() < 0.1, "{row}: {found}");
        let found = syrup_boiling_point(air, 0.93).expect("boils").to_celsius();
        assert!((found - syrup).abs() < 0.1, "{row}: {found}");
        count += 1;
    }
    assert_eq!(count, 36);
}
