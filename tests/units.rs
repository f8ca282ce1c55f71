//! The units of measure, each against its definition.
//!
//! NIST Handbook 44, appendix C, defines the US units from the inch of 25.4 mm and the pound of 0.453 592 37 kg. NIST SP 811,
//! appendix B.8, prints the same factors to seven figures. The UK Units of Measurement Regulations 1995 define the imperial
//! gallon as 4.546 09 L. Metric cups and spoons are from memory of the standards bodies: AS 1325 (Australia), NZS and CGSB.

use batterwright::baking::ingredient::{Region, SpoonOrCup};
use batterwright::baking::quantity::{Length, Mass, Temperature, TemperatureChange, Volume};
use batterwright::baking::recipe::VolumeUnit;

/// Equal but for the last bits of a binary fraction.
#[track_caller]
fn exactly(ours: f64, theirs: f64, what: &str) {
    assert!(
        (ours / theirs - 1.0).abs() < 1e-14,
        "{what}: {ours} is not {theirs}"
    );
}

/// Equal to the seven figures that are printed.
#[track_caller]
fn to_seven_figures(ours: f64, printed: f64, what: &str) {
    assert!(
        (ours / printed - 1.0).abs() < 5e-7,
        "{what}: {ours} is not {printed}"
    );
}

fn millilitres(unit: VolumeUnit, region: Region) -> f64 {
    unit.volume(region).to_millilitres()
}

#[test]
fn us_volumes_are_parts_of_a_gallon_of_231_cubic_inches() {
    use VolumeUnit::*;
    // Handbook 44, appendix C: 1 gallon = 231 cubic inches, an inch 2.54 cm.
    let gallon = 231.0 * 2.54 * 2.54 * 2.54;
    for (unit, in_a_gallon, exact, sp_811) in [
        // Unit, how many a gallon holds (Handbook 44), exact mL, mL as SP 811 B.8 prints it.
        (Gallon, 1.0, 3_785.411_784, 3_785.412),
        (Quart, 4.0, 946.352_946, 946.352_9),
        (Pint, 8.0, 473.176_473, 473.176_5),
        (Cup, 16.0, 236.588_236_5, 236.588_2),
        (Gill, 32.0, 118.294_118_25, 118.294_1),
        (FluidOunce, 128.0, 29.573_529_562_5, 29.573_53),
        (Tablespoon, 256.0, 14.786_764_781_25, 14.786_76),
        (Teaspoon, 768.0, 4.928_921_593_75, 4.928_922),
    ] {
        let ours = millilitres(unit, Region::Us);
        let what = format!("US {unit:?}");
        exactly(ours, gallon / in_a_gallon, &what);
        exactly(ours, exact, &what);
        to_seven_figures(ours, sp_811, &what);
    }
    exactly(
        Volume::US_CUP.to_millilitres(),
        236.588_236_5,
        "the US cup of the tables",
    );
    for (measure, exact) in [
        (SpoonOrCup::Cup, 236.588_236_5),
        (SpoonOrCup::Tablespoon, 14.786_764_781_25),
        (SpoonOrCup::Teaspoon, 4.928_921_593_75),
    ] {
        exactly(
            measure.volume().to_millilitres(),
            exact,
            "a measure of the tables",
        );
    }
}

#[test]
fn imperial_volumes_are_parts_of_a_gallon_of_4_54609_litres() {
    use VolumeUnit::*;
    // Units of Measurement Regulations 1995; SP 811 B.8 prints gallon, gill and fluid ounce too.
    for (unit, in_a_gallon, exact) in [
        (Gallon, 1.0, 4_546.09),
        (Quart, 4.0, 1_136.522_5),
        (Pint, 8.0, 568.261_25),
        (Gill, 32.0, 142.065_312_5),
        (FluidOunce, 160.0, 28.413_062_5),
    ] {
        for region in [Region::Uk, Region::Au, Region::Nz] {
            let ours = millilitres(unit, region);
            exactly(ours, 4_546.09 / in_a_gallon, &format!("imperial {unit:?}"));
            exactly(ours, exact, &format!("imperial {unit:?}"));
        }
    }
    to_seven_figures(
        millilitres(Gill, Region::Uk),
        142.065_3,
        "SP 811, gill [Canadian and U.K.]",
    );
    to_seven_figures(
        millilitres(FluidOunce, Region::Uk),
        28.413_06,
        "SP 811, ounce [Canadian and U.K. fluid]",
    );
}

#[test]
fn metric_cups_and_spoons_are_round() {
    use VolumeUnit::*;
    // From memory: a cup of 250 mL and a teaspoon of 5 mL in all four, a tablespoon of 20 mL in Australia alone.
    for region in [Region::Uk, Region::Au, Region::Nz, Region::Ca] {
        let tablespoon = if region == Region::Au { 20.0 } else { 15.0 };
        assert_eq!(millilitres(Cup, region), 250.0, "{region:?}");
        assert_eq!(millilitres(Tablespoon, region), tablespoon, "{region:?}");
        assert_eq!(millilitres(Dessertspoon, region), 10.0, "{region:?}");
        assert_eq!(millilitres(Teaspoon, region), 5.0, "{region:?}");
    }
    // SI prefixes.
    for (unit, size) in [
        (Millilitre, 1.0),
        (Centilitre, 10.0),
        (Decilitre, 100.0),
        (Litre, 1000.0),
    ] {
        assert_eq!(millilitres(unit, Region::Us), size, "{unit:?}");
    }
    // Small measures of the trade: an eighth and a sixteenth of a US teaspoon (common practice).
    exactly(
        millilitres(Dash, Region::Us),
        4.928_921_593_75 / 8.0,
        "dash",
    );
    exactly(
        millilitres(Pinch, Region::Us),
        4.928_921_593_75 / 16.0,
        "pinch",
    );
}

#[test]
fn masses_lengths_and_temperatures_are_those_of_the_standards() {
    // Handbook 44, appendix C: pound and ounce avoirdupois, exact. SP 811 B.8: 4.535 924 E-01 and 2.834 952 E-02 kg.
    exactly(Mass::POUND.to_grams(), 453.592_37, "pound");
    exactly(Mass::OUNCE.to_grams(), 28.349_523_125, "ounce");
    exactly(
        Mass::OUNCE.to_grams() * 16.0,
        Mass::POUND.to_grams(),
        "16 ounces",
    );
    to_seven_figures(Mass::POUND.to_grams(), 453.592_4, "SP 811, pound");
    to_seven_figures(Mass::OUNCE.to_grams(), 28.349_52, "SP 811, ounce");
    // Handbook 44, appendix C: the inch, exact.
    exactly(Length::inches(1.0).to_millimetres(), 25.4, "inch");
    exactly(
        Length::centimetres(2.54).to_inches(),
        1.0,
        "2.54 cm in inches",
    );
    // SP 811 B.8: t/C = (t/F - 32)/1.8, a difference of 1 F is 1/1.8 C; both exact.
    for (fahrenheit, celsius) in [
        (32.0, 0.0),
        (212.0, 100.0),
        (-40.0, -40.0),
        (350.0, 318.0 / 1.8),
    ] {
        let point = Temperature::fahrenheit(fahrenheit);
        assert!(
            (point.to_celsius() - celsius).abs() < 1e-12,
            "{fahrenheit} F"
        );
        let back = Temperature::celsius(celsius).to_fahrenheit();
        assert!((back - fahrenheit).abs() < 1e-12, "{celsius} C");
    }
    exactly(
        TemperatureChange::fahrenheit(25.0).to_celsius(),
        25.0 / 1.8,
        "a difference of 25 F",
    );
}
