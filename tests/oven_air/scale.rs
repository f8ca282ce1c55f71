//! Oven scales, by hand.

use batterwright::baking::oven::scale::{
    FAN_COOLER, FAN_COOLER_US, Oven, OvenKind, OvenScale, read_setting,
};
use batterwright::baking::quantity::{Temperature, TemperatureChange};
use batterwright::baking::recipe::{OvenSetting, oven_settings};

const CELSIUS: Oven = Oven {
    kind: OvenKind::Still,
    scale: OvenScale::Celsius,
    off: TemperatureChange::celsius(0.0),
    fan_cooler: FAN_COOLER,
};

fn on(scale: OvenScale, fan_cooler: TemperatureChange) -> Oven {
    Oven {
        scale,
        fan_cooler,
        ..CELSIUS
    }
}

/// The trade's table of settings that are one: gas, F, C on the dial, fan C (common practice, no source).
#[test]
fn one_setting_reads_alike_on_every_scale() {
    for (gas, fahrenheit, celsius, fan) in [
        ("1", 275, 140, 120),
        ("2", 300, 150, 130),
        ("3", 325, 160, 140),
        ("4", 350, 180, 160),
        ("5", 375, 190, 170),
        ("6", 400, 200, 180),
        ("7", 425, 220, 200),
        ("8", 450, 230, 210),
        ("9", 475, 240, 220),
        ("1/2", 250, 120, 100),
        ("1/4", 225, 110, 90),
    ] {
        let by_gas = on(OvenScale::Gas, FAN_COOLER);
        let expected = format!("gas {gas} ({celsius} °C, {fahrenheit} °F, fan {fan} °C)");
        for typed in [
            format!("gas {gas}"),
            format!("{fahrenheit} F"),
            format!("{celsius}C"),
        ] {
            let setting = read_setting(&typed, OvenScale::Celsius).expect("a setting");
            let still = CELSIUS.still(setting.expect("one is typed"));
            assert_eq!(by_gas.words(still), expected, "{typed}");
        }
    }
}

#[test]
fn every_oven_sees_its_own_scale_first() {
    let mark_4 = Temperature::fahrenheit(350.0);
    assert_eq!(CELSIUS.words(mark_4), "180 °C (350 °F, fan 160 °C, gas 4)");
    let us = on(OvenScale::Fahrenheit, FAN_COOLER_US);
    assert_eq!(us.words(mark_4), "350 °F (180 °C, fan 325 °F, gas 4)");
    assert_eq!(us.short(mark_4), "350 °F");
    // 170 °C is mark 3 too; 185 °C is none.
    assert_eq!(
        CELSIUS.words(Temperature::celsius(170.0)),
        "170 °C (325 °F, fan 150 °C, gas 3)"
    );
    assert_eq!(
        CELSIUS.words(Temperature::celsius(185.0)),
        "185 °C (365 °F, fan 165 °C, gas 4 to 5)"
    );
    // Beyond the marks there is none.
    assert_eq!(
        on(OvenScale::Gas, FAN_COOLER).words(Temperature::celsius(95.0)),
        "95 °C, 205 °F, fan 75 °C"
    );
}

/// A difference of 25 F is 13.9 C: 32 is never added to it.
#[test]
fn differences_are_no_temperatures() {
    assert!((FAN_COOLER_US.to_celsius() - 13.89).abs() < 0.005);
    assert!((FAN_COOLER_US.to_fahrenheit() - 25.0).abs() < 1e-9);
    assert!((FAN_COOLER.to_fahrenheit() - 36.0).abs() < 1e-9);
}

#[test]
fn settings_are_read_as_typed() {
    let reads = |typed: &str, scale: OvenScale, celsius: f64, is_fan: bool| {
        let found = read_setting(typed, scale)
            .unwrap_or_else(|said| panic!("{typed}: {said}"))
            .expect("something is typed");
        assert!(
            (found.temperature.to_celsius() - celsius).abs() < 0.01 && found.is_fan == is_fan,
            "{typed}: {found:?}"
        );
    };
    use OvenScale::{Celsius, Fahrenheit, Gas};
    reads("350 F", Celsius, 176.667, false);
    reads("350°F", Celsius, 176.667, false);
    reads("180", Celsius, 180.0, false);
    reads("180", Fahrenheit, 180.0, false);
    reads("350", Celsius, 176.667, false);
    reads("350", Fahrenheit, 176.667, false);
    reads("gas 4", Celsius, 176.667, false);
    reads("Gas Mark 4", Fahrenheit, 176.667, false);
    reads("gas mark ½", Celsius, 121.111, false);
    reads("4", Gas, 176.667, false);
    reads("160 fan", Celsius, 160.0, true);
    reads("fan 160", Celsius, 160.0, true);
    reads("180C fan", Celsius, 180.0, true);
    reads("180 °C (fan)", Celsius, 180.0, true);
    reads("325 F convection", Fahrenheit, 162.778, true);
    reads("350F/180C/160C fan", Celsius, 176.667, false);
    assert_eq!(read_setting("  ", Celsius), Ok(None));
}

#[test]
fn what_is_no_setting_gets_a_sentence() {
    for (typed, scale) in [
        ("hot", OvenScale::Celsius),
        ("4", OvenScale::Celsius),
        ("12", OvenScale::Gas),
        ("gas 25", OvenScale::Celsius),
        ("-180", OvenScale::Celsius),
        ("1e9", OvenScale::Celsius),
        ("50 C", OvenScale::Celsius),
        ("9999999999999999999999", OvenScale::Celsius),
        ("200", OvenScale::Fahrenheit),
    ] {
        let said = read_setting(typed, scale).expect_err(typed);
        assert!(
            said.starts_with("Write") || said.starts_with("No cake"),
            "{said}"
        );
    }
}

/// Which of several is the still oven's: hand-read lines of the UK, US and Australia.
#[test]
fn fans_are_told_from_still_ovens() {
    for (line, still) in [
        ("Preheat the oven to 350F/180C/160C fan", 176.667),
        ("Heat oven to 180C/160C fan/gas 4", 180.0),
        ("Heat oven to 160C fan/180C/gas 4", 180.0),
        ("Preheat the oven to 180°C (160°C fan), gas mark 4", 180.0),
        ("Preheat oven to 180°C/fan 160°C/gas 4", 180.0),
        ("Preheat oven to fan 160C", 180.0),
        ("Preheat the oven to 160°C fan-forced", 180.0),
        ("Preheat the oven to 180C fan.", 200.0),
        ("Heat the oven to 200C/fan180C/gas 6", 200.0),
        ("Preheat to 180°C (160°C for fan ovens)", 180.0),
        ("oven 220 fan 200", 220.0),
        ("Preheat a fan-assisted oven to 150C", 170.0),
        ("Heat oven to 180C/160C fan 350F gas 4", 180.0),
    ] {
        let found = CELSIUS.still_of(&oven_settings(line)).expect(line);
        assert!(
            (found.to_celsius() - still).abs() < 0.01,
            "{line}: {found:?}"
        );
    }
    assert_eq!(CELSIUS.still_of(&oven_settings("Bake in the oven")), None);
}

/// By hand: a fan oven that runs 10 C hot is set 20 + 10 C below a still recipe's 180 C.
#[test]
fn the_dial_of_an_oven_that_runs_off() {
    let oven = Oven {
        kind: OvenKind::Fan,
        off: TemperatureChange::celsius(10.0),
        ..CELSIUS
    };
    let dial = oven.dial(Temperature::celsius(180.0));
    assert_eq!(
        dial,
        OvenSetting {
            temperature: Temperature::celsius(150.0),
            is_fan: true
        }
    );
    let still = CELSIUS.dial(Temperature::celsius(180.0));
    assert_eq!(still.temperature, Temperature::celsius(180.0));
}
