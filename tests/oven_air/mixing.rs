//! Batter temperatures, by hand.

use batterwright::baking::ingredient::{Composition, Own, by_key};
use batterwright::baking::oven::mixing::{
    Liquid, Part, batter_temperature, heat_capacity, liquid_for,
};
use batterwright::baking::quantity::{Mass, Share, Temperature, TemperatureChange};
use batterwright::baking::worksheet::{Inputs, MixingEntry, Settings, mixing_sheet};

const BOILS: Temperature = Temperature::celsius(100.0);

fn part(grams: f64, capacity: f64, celsius: f64) -> Part {
    Part {
        grams: Mass::grams(grams),
        capacity,
        at: Temperature::celsius(celsius),
    }
}

fn needed(parts: &[Part], wanted: f64, rise: f64) -> Liquid {
    let (wanted, rise) = (
        Temperature::celsius(wanted),
        TemperatureChange::celsius(rise),
    );
    liquid_for(parts, 0, wanted, rise, BOILS).expect("a liquid")
}

/// 35 % water, 12 % fat, 46 % carbohydrate, 6 % protein and 1 % ash: 1463 + 202 + 653 + 93 + 8 = 2419 J/(kg K).
#[test]
fn heat_capacity_follows_from_composition() {
    let percent = |value: f64| Some(Share::percent(value));
    let mut batter = Composition {
        water: percent(35.0),
        protein: percent(6.0),
        fat: percent(12.0),
        carbohydrate: percent(46.0),
        sugars: None,
        starch: None,
        fibre: None,
        alcohol: None,
        sodium: None,
        derived: Vec::new(),
    };
    let found = heat_capacity(&batter).expect("a known composition");
    assert!((found - 2.419).abs() < 0.001, "{found}");
    batter.fat = None;
    assert_eq!(heat_capacity(&batter), None);
    let water = by_key("water").expect("water");
    let found = heat_capacity(&water.composition).expect("known");
    assert!((found - 4.177).abs() < 0.001, "{found}");
}

/// As much water at 80 C as at 20 C is 50 C, and a degree more by mixing.
#[test]
fn heats_add_up() {
    let parts = [part(100.0, 4.18, 80.0), part(100.0, 4.18, 20.0)];
    let found = batter_temperature(&parts, TemperatureChange::celsius(1.0)).expect("a bowl");
    assert!((found.to_celsius() - 51.0).abs() < 1e-9);
    assert_eq!(batter_temperature(&[], TemperatureChange::default()), None);
}

/// 200 g of flour (1.8 J/(g K)) at 21 C and 200 g of water for a batter at 25 C that mixing warms by 1: the flour lacks
/// 200 x 1.8 x 3 = 1080 J, which 836 J/K of water bring at 24 + 1.292 C.
#[test]
fn the_liquid_brings_what_is_missing() {
    let parts = [part(200.0, 4.18, 10.0), part(200.0, 1.8, 21.0)];
    let Liquid::At(found) = needed(&parts, 25.0, 1.0) else {
        panic!("a temperature");
    };
    assert!((found.to_celsius() - 25.292).abs() < 1e-3, "{found:?}");
    // Poured in at that, the batter is what was wanted.
    let poured = [part(200.0, 4.18, found.to_celsius()), parts[1]];
    let batter = batter_temperature(&poured, TemperatureChange::celsius(1.0)).expect("a bowl");
    assert!((batter.to_celsius() - 25.0).abs() < 1e-9);
}

/// 1 kg of flour at 40 C and 500 g of water at 25 C for 20 C with 3 C from the mixer: water would have to be at -2.8 C. The
/// flour brings 41,400 J too much, the water 16,720; a gram of ice takes 334 + 4.18 x 17 J and what its water would have
/// brought, 33.4 J: 132.5 g.
#[test]
fn what_is_colder_than_ice_takes_ice() {
    let parts = [part(500.0, 4.18, 25.0), part(1000.0, 1.8, 40.0)];
    let Liquid::Ice(ice) = needed(&parts, 20.0, 3.0) else {
        panic!("ice");
    };
    assert!((ice.to_grams() - 132.5).abs() < 0.1, "{ice:?}");
}

#[test]
fn what_no_liquid_can_be_is_said() {
    let little = [part(10.0, 4.18, 20.0), part(1000.0, 1.8, 5.0)];
    assert_eq!(needed(&little, 25.0, 0.0), Liquid::TooHot);
    let warm = [part(10.0, 4.18, 20.0), part(1000.0, 1.8, 40.0)];
    assert_eq!(needed(&warm, 20.0, 0.0), Liquid::TooCold);
    assert_eq!(
        liquid_for(&little, 7, BOILS, TemperatureChange::default(), BOILS),
        None
    );
}

const CAKE: &str =
    "Cake\nIngredients\n200 g plain flour\n200 g sugar\n100 g butter\n100 g egg\n150 g milk";

fn words(text: &str, entry: MixingEntry) -> String {
    let mut inputs = Inputs::of_text(text);
    inputs.choices.mixing = entry;
    mixing_sheet(&inputs, &Settings::default(), &Own::default())
        .words
        .join(" ")
}

fn wanted(wanted: &str) -> MixingEntry {
    MixingEntry {
        wanted: wanted.into(),
        ..MixingEntry::default()
    }
}

/// All at 21 C and a degree from mixing: 22 C. Milk and egg from the fridge, by hand from the food table, J/(g K): milk
/// 0.8813 x 4.18 + 0.0315 x 1.55 + 0.048 x 1.42 + 0.0325 x 1.68 + 0.0067 x 0.84 = 3.861, egg about 3.39, flour about 1.78, sugar
/// 1.42, butter about 2.12. (579 + 339) x 4 + (356 + 284 + 212) x 21 over 1770 is 12.2 C, and 13.2 with mixing.
#[test]
fn a_cake_out_of_the_fridge_is_cold() {
    assert!(words(CAKE, wanted("")).contains("about 22 °C (72 °F)"));
    let mut inputs = Inputs::of_text(CAKE);
    inputs.chill((6, 0), true);
    inputs.chill((7, 0), true);
    let sheet = mixing_sheet(&inputs, &Settings::default(), &Own::default());
    assert_eq!(sheet.lines.iter().filter(|line| line.2).count(), 2);
    assert!(sheet.words[0].contains("about 13 °C"), "{:?}", sheet.words);
    inputs.chill((6, 0), false);
    assert_eq!(inputs.choices.mixing.cold.len(), 1);
}

#[test]
fn the_milk_is_asked_for_and_egg_is_minded() {
    assert!(
        words(CAKE, wanted("24 C")).contains("its liquid (milk, whole) has to be at 27 °C"),
        "{}",
        words(CAKE, wanted("24 C"))
    );
    assert!(
        words(CAKE, wanted("38 C")).contains("sets egg in flakes"),
        "{}",
        words(CAKE, wanted("38 C"))
    );
    assert!(words(CAKE, wanted("60 C")).contains("hotter than it boils"));
    assert!(words(CAKE, wanted("-20 C")).contains("chill flour"));
    let dry = "Cake\nIngredients\n200 g plain flour\n100 g butter\n100 g egg";
    assert!(words(dry, wanted("24 C")).contains("no liquid of its own"));
}

#[test]
fn what_is_typed_wrong_gets_a_sentence_at_its_field() {
    let mut inputs = Inputs::of_text(CAKE);
    inputs.choices.mixing = MixingEntry {
        room: "warm".into(),
        fridge: "4".into(),
        wanted: "99 C".into(),
        rise: "-3 C".into(),
        ..MixingEntry::default()
    };
    let sheet = mixing_sheet(&inputs, &Settings::default(), &Own::default());
    assert!(
        sheet.troubles.iter().all(Option::is_some),
        "{:?}",
        sheet.troubles
    );
    assert!(sheet.words[0].contains("22 °C"), "{:?}", sheet.words);
    let fine = mixing_sheet(
        &Inputs::of_text(CAKE),
        &Settings::default(),
        &Own::default(),
    );
    assert!(fine.troubles.iter().all(Option::is_none));
    assert!(
        words(
            "Cake\nIngredients\n200 g plain flour\n3 blobs curd",
            wanted("")
        )
        .contains("line 4")
    );
    assert_eq!(words("", wanted("20 C")), "");
}
