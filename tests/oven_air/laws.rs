//! Whatever is typed, nothing fails and every figure is a number.

use batterwright::baking::finding::Edit;
use batterwright::baking::ingredient::Own;
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::oven::air::{boiling_point, pressure, saturation_pressure};
use batterwright::baking::oven::scale::{OvenScale, read_setting};
use batterwright::baking::quantity::{Height, Temperature};
use batterwright::baking::recipe::{oven_settings, read};
use batterwright::baking::worksheet::{Inputs, MixingEntry, Settings, mixing_sheet, worksheet};
use proptest::prelude::*;

/// Fields as they may be typed: figures and units, and anything else.
fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        "[-+−]?[0-9]{0,6}[.,]?[0-9]{0,4} ?(m|ft|feet|C|F|°C|degrees F|)",
        "(gas|gas mark|fan|)? ?[0-9/½.]{0,5} ?(C|F|fan|)",
        any::<String>(),
    ]
}

/// Cakes with lines of any weight, and with lines that cannot be weighed.
fn cake() -> impl Strategy<Value = String> {
    let line = prop_oneof![
        (0.0..1e4_f64, 0_usize..12).prop_map(|(grams, which)| {
            let names = [
                "plain flour",
                "self-raising flour",
                "sugar",
                "honey",
                "butter",
                "egg",
                "milk",
                "water",
                "baking powder",
                "baking soda",
                "cream of tartar",
                "cocoa powder",
            ];
            format!("{grams:.2} g {}", names[which])
        }),
        "\\PC{0,20}",
    ];
    prop::collection::vec(line, 0..9)
        .prop_map(|lines| format!("Cake\nIngredients\n{}", lines.join("\n")))
}

/// Lines that name times and heats in every order.
fn method() -> impl Strategy<Value = String> {
    let words = prop::sample::select(vec![
        "bake", "Bake", "for", "30", "1/0", "1 1/2", "hours", "minutes", "mins.", "to", "-",
        "until", "cool", "then", "oven", "at", "350", "F", "180C", "fan", "/", "(", "gas", "4",
        "another", "after", "if", "and", "½", "½-", ".", ",", ";", "°",
    ]);
    prop::collection::vec(words, 0..24).prop_map(|words| words.join(" "))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_kitchen_gives_a_worksheet(text in cake(), height in typed(), made_for in typed(), off in typed(), fan in typed()) {
        let settings = Settings { height, oven_off: off, fan_cooler: fan, ..Settings::default() };
        let mut inputs = Inputs::of_text(text);
        inputs.choices.made_for = made_for;
        let sheet = worksheet(&inputs, &settings);
        let oven = settings.kitchen_oven();
        prop_assert!(oven.off.to_celsius().abs() <= 60.1 && oven.fan_cooler.to_celsius().is_finite());
        prop_assert!(settings.air().to_pascals() > 50_000.0 && settings.air().to_pascals() < 110_000.0);
        if let Some(remedy) = sheet.altitude.and_then(|it| it.remedy) {
            for edit in remedy.edits {
                let Edit::Weigh { grams, .. } = edit else { continue };
                prop_assert!(grams.is_finite() && grams >= 0.0, "{grams}");
            }
        }
    }

    #[test]
    fn any_high_kitchen_has_weights_that_can_be_taken(text in cake(), metres in 300.0..3500.0_f64) {
        let settings = Settings { height: format!("{metres:.1} m"), ..Settings::default() };
        let inputs = Inputs::of_text(text);
        let Some(sheet) = worksheet(&inputs, &settings).altitude else { return Ok(()) };
        let taken = inputs.made_for(&sheet);
        let again = worksheet(&taken, &settings).altitude;
        if sheet.remedy.is_some() {
            prop_assert!(again.is_some_and(|again| again.remedy.is_none()));
        }
    }

    #[test]
    fn any_mixing_gives_a_sheet(text in cake(), room in typed(), fridge in typed(), wanted in typed(), rise in typed()) {
        let mut inputs = Inputs::of_text(text);
        inputs.choices.mixing = MixingEntry { room, fridge, wanted, rise, cold: Vec::new() };
        inputs.chill((3, 0), true);
        inputs.chill((99, 7), true);
        let sheet = mixing_sheet(&inputs, &Settings::default(), &Own::default());
        prop_assert!(sheet.words.iter().all(|words| !words.is_empty()));
    }

    #[test]
    fn any_setting_is_read_or_said(typed in typed()) {
        for scale in [OvenScale::Celsius, OvenScale::Fahrenheit, OvenScale::Gas] {
            match read_setting(&typed, scale) {
                Ok(None) => prop_assert!(typed.trim().is_empty()),
                Ok(Some(setting)) => {
                    let celsius = setting.temperature.to_celsius();
                    prop_assert!((90.0..=290.0).contains(&celsius), "{typed}: {celsius}");
                }
                Err(said) => prop_assert!(said.ends_with('.')),
            }
        }
        oven_settings(&typed);
    }

    #[test]
    fn any_method_is_read_to_its_end(line in method()) {
        let text = format!("Cake\nIngredients\n100 g flour\nMethod\n{line}");
        let recipe = read(&text, Larder::of(Region::Uk), &[]);
        for bake in recipe.lines.iter().flat_map(|line| &line.mentions.bakes) {
            prop_assert!(bake.low >= 1.0 && bake.low <= bake.high && bake.high <= 600.0, "{bake:?}");
        }
        if let Some(baked) = recipe.baked() {
            prop_assert!(baked.low <= baked.high && !baked.lines.is_empty());
        }
    }

    /// The higher, the thinner the air and the cooler water boils; hotter steam presses more.
    #[test]
    fn air_thins_with_height(low in -430.0..5000.0_f64, up in 0.1..500.0_f64, celsius in 0.0..370.0_f64) {
        let air = |metres: f64| pressure(Height::metres(metres));
        if let (Ok(below), Ok(above)) = (air(low), air(low + up)) {
            prop_assert!(above < below);
            prop_assert!(boiling_point(above) < boiling_point(below));
        }
        let steam = |celsius: f64| saturation_pressure(Temperature::celsius(celsius));
        prop_assert!(steam(celsius) < steam(celsius + 0.5));
    }
}
