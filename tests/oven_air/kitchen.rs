//! The baker's height and oven, from what is typed to the worksheet.

use batterwright::baking::chemistry::course::{HOTTEST, Handling};
use batterwright::baking::ingredient::Region;
use batterwright::baking::oven::scale::{FAN_COOLER, FAN_COOLER_US, OvenKind, OvenScale};
use batterwright::baking::quantity::TemperatureChange;
use batterwright::baking::worksheet::{Inputs, Settings, worksheet};

fn at(height: &str) -> Settings {
    Settings {
        height: height.into(),
        ..Settings::default()
    }
}

fn off(oven_off: &str) -> Settings {
    Settings {
        oven_off: oven_off.into(),
        ..Settings::default()
    }
}

#[test]
fn heights_are_read_with_their_unit() {
    for (typed, metres) in [
        ("1600 m", 1600.0),
        ("1,600 metres", 1600.0),
        ("1600m", 1600.0),
        ("5280 ft", 1609.344),
        ("5,280 feet", 1609.344),
        ("5280'", 1609.344),
        ("-400 m", -400.0),
        ("− 400 M", -400.0),
        ("12,5 m", 12.5),
        ("0.125 m", 0.125),
        ("0", 0.0),
    ] {
        let found = at(typed)
            .height()
            .expect(typed)
            .expect("something is typed");
        assert!(
            (found.to_metres() - metres).abs() < 1e-9,
            "{typed}: {found:?}"
        );
    }
    assert_eq!(at("  ").height(), Ok(None));
}

/// A number alone, a point that may part thousands, and heights where nobody bakes: a sentence, and the sea's air.
#[test]
fn what_is_no_height_gets_a_sentence() {
    for typed in [
        "1600",
        "high",
        "m",
        "1.600 m",
        "1,600,00 m",
        "1 600 m",
        "5000 yd",
        "1e3 m",
        "8849 m",
        "-11000 m",
        "NaN m",
        "--5 m",
        "99999999999999999999999999 m",
    ] {
        let settings = at(typed);
        assert!(settings.height().is_err(), "{typed}");
        assert_eq!(settings.air().to_pascals(), 101_325.0, "{typed}");
    }
}

#[test]
fn an_oven_that_runs_off_is_read_with_its_scale() {
    for (typed, celsius) in [
        ("+10 C", 10.0),
        ("10°C", 10.0),
        ("-25 F", -25.0 / 1.8),
        ("-25 degrees F", -25.0 / 1.8),
        ("−5,5 c", -5.5),
        ("60 C", 60.0),
        ("108 F", 60.0),
        ("0", 0.0),
    ] {
        let found = off(typed)
            .oven_off()
            .expect(typed)
            .expect("something is typed");
        assert!(
            (found.to_celsius() - celsius).abs() < 1e-9,
            "{typed}: {found:?}"
        );
    }
    assert_eq!(off("").oven_off(), Ok(None));
    for typed in ["10", "a lot", "61 C", "-109 F", "5 K", "+-3 C"] {
        assert!(off(typed).oven_off().is_err(), "{typed}");
        assert_eq!(
            off(typed).kitchen_oven().off,
            TemperatureChange::celsius(0.0)
        );
    }
}

#[test]
fn an_oven_is_its_country_s_where_nothing_is_said() {
    let of = |region| {
        let settings = Settings {
            region,
            ..Settings::default()
        };
        let oven = settings.kitchen_oven();
        (oven.kind, oven.scale, oven.fan_cooler)
    };
    let still = OvenKind::Still;
    assert_eq!(
        of(Region::Us),
        (still, OvenScale::Fahrenheit, FAN_COOLER_US)
    );
    assert_eq!(of(Region::Uk), (still, OvenScale::Celsius, FAN_COOLER));
    let said = Settings {
        fan_cooler: "15 C".into(),
        ..Settings::default()
    };
    assert_eq!(
        said.kitchen_oven().fan_cooler,
        TemperatureChange::celsius(15.0)
    );
    for typed in ["-5 C", "41 C", "15"] {
        let said = Settings {
            fan_cooler: typed.into(),
            ..Settings::default()
        };
        assert!(said.fan_cooler().is_err(), "{typed}");
        assert_eq!(said.kitchen_oven().fan_cooler, FAN_COOLER_US);
    }
}

/// Water boils at 96.65 C at 1,000 m and at 99.97 C at the sea (IAPWS-97 with the standard atmosphere), so a core stays
/// 3.32 C cooler.
#[test]
fn the_hottest_core_falls_with_the_boiling_point() {
    assert_eq!(Handling::default().hottest(), HOTTEST);
    let handling = Handling {
        air: at("1000 m").air().to_atmospheres(),
        ..Handling::default()
    };
    assert!((handling.hottest() - (98.0 - 3.32)).abs() < 0.01);
}

const CAKE: &str = "Cake\n\nIngredients\n200 g plain flour\n200 g sugar\n100 g butter\n100 g egg\n150 g milk\n9 g baking powder";

/// The worksheet is reckoned under the air of the baker's height: the same gas takes up more room, and the core stays
/// cooler. By hand at 2,000 m: the pressure is 0.785 of the sea's, so dry gas takes up 1.27 times its room and wet gas more.
#[test]
fn the_worksheet_knows_the_height() {
    let inputs = Inputs::of_text(CAKE);
    let gas = |height: &str| {
        let sheet = worksheet(&inputs, &at(height)).leavening.gas.expect("gas");
        let litres = sheet
            .course_words
            .split("some ")
            .nth(1)
            .and_then(|rest| rest.split(' ').next())
            .and_then(|figure| figure.parse::<f64>().ok())
            .expect("a volume in the words");
        (sheet.hottest, litres)
    };
    let (sea, high) = (gas(""), gas("2000 m"));
    assert_eq!(gas("0"), sea);
    assert_eq!(gas("8849 m"), sea);
    assert!((sea.0 - high.0 - 6.65).abs() < 0.02, "{sea:?} {high:?}");
    let more = high.1 / sea.1;
    assert!(more > 1.27 && more < 2.0, "{sea:?} {high:?}");
}
