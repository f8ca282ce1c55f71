//! Every row of the table of swaps, through the door that the program uses.

use batterwright::baking::balance::Kind;
use batterwright::baking::ingredient::{Group, Ingredient, Region, by_key};
use batterwright::baking::quantity::Share;
use batterwright::baking::source::{self, Confidence};
use batterwright::baking::substitute::swap::{Job, Suits, Swap, all, swap_between, swaps_from};
use batterwright::baking::worksheet::{Inputs, Settings, worksheet};

#[track_caller]
fn ingredient(key: &str) -> &'static Ingredient {
    by_key(key).unwrap_or_else(|| panic!("no ingredient {key}"))
}

/// The swap of one ingredient for just those.
#[track_caller]
fn swap(from: &str, to: &[&str]) -> &'static Swap {
    swaps_from(ingredient(from))
        .find(|swap| {
            let keys = swap.brings.iter().map(|brought| brought.ingredient.key);
            keys.eq(to.iter().copied())
        })
        .unwrap_or_else(|| panic!("no swap of {from} for {to:?}"))
}

/// Grams of a part of the composition that a swap brings for each gram of the original.
fn brings(swap: &Swap, part: fn(&Ingredient) -> Option<Share>) -> f64 {
    let brought = swap.brings.iter();
    brought
        .map(|brought| {
            let share = part(brought.ingredient).map_or(0.0, Share::to_fraction);
            brought.for_a_gram.mean.to_grams() * share
        })
        .sum()
}

fn water(ingredient: &Ingredient) -> Option<Share> {
    ingredient.composition.water
}

fn fat(ingredient: &Ingredient) -> Option<Share> {
    ingredient.composition.fat
}

fn sugars(ingredient: &Ingredient) -> Option<Share> {
    ingredient.composition.sugars
}

#[track_caller]
fn assert_keeps(swap: &Swap, part: fn(&Ingredient) -> Option<Share>, within: f64) {
    let had = part(swap.from).map_or(0.0, Share::to_fraction);
    let brought = brings(swap, part);
    assert!(
        (brought - had).abs() <= within,
        "{} for {}: {brought:.3} instead of {had:.3}",
        swap.brings[0].ingredient.key,
        swap.from.key
    );
}

#[test]
fn every_row_is_whole() {
    let written = all().iter().filter(|swap| !swap.is_turned).count();
    assert!(written >= 90, "{written} rows");
    for swap in all() {
        let what = format!("{} for {}", swap.brings[0].ingredient.key, swap.from.key);
        assert!((1..=3).contains(&swap.brings.len()), "{what}");
        for brought in &swap.brings {
            let ratio = brought.for_a_gram;
            assert!(ratio.low.to_grams() > 0.0, "{what}");
            assert!(
                ratio.low <= ratio.mean && ratio.mean <= ratio.high,
                "{what}"
            );
            assert!(brought.ingredient != swap.from, "{what}");
        }
        assert!(
            swap.usual <= swap.most && swap.most <= Share::percent(100.0),
            "{what}"
        );
        assert!(!swap.jobs.is_empty(), "{what}");
        assert!(
            swap.kinds.iter().all(|kind| !swap.not_kinds.contains(kind)),
            "{what}"
        );
        assert_eq!(
            source::by_key(swap.cited.source.key),
            Some(swap.cited.source),
            "{what}"
        );
        let nameless = ["memory", "practice", "derivation"].contains(&swap.cited.source.key);
        assert!(
            swap.cited.confidence != Confidence::Published || !nameless,
            "{what}"
        );
        // A source that was read, or is remembered, says where.
        assert!(nameless || !swap.place.is_empty(), "{what}");
    }
}

/// What counts together in a swap there and back: flour with starch, fats with oils, one watery thing with another, but
/// no soda with an acid.
fn family(ingredient: &Ingredient) -> u8 {
    let bicarbonate = ingredient
        .leavening
        .and_then(|leavening| leavening.bicarbonate);
    match ingredient.group {
        Group::Leavener if bicarbonate.is_some() => 100,
        Group::Flour | Group::Starch => 0,
        Group::Fat | Group::Oil => 1,
        Group::Dairy | Group::PlantDairy | Group::Juice | Group::Acid => 2,
        group => 3 + group as u8,
    }
}

/// Low and high grams of what a swap brings of its main one's family.
fn main_ratio(swap: &Swap) -> (f64, f64) {
    let main = family(swap.brings[0].ingredient);
    let alike = swap
        .brings
        .iter()
        .filter(|brought| family(brought.ingredient) == main);
    alike.fold((0.0, 0.0), |(low, high), brought| {
        let ratio = brought.for_a_gram;
        (low + ratio.low.to_grams(), high + ratio.high.to_grams())
    })
}

#[test]
fn there_and_back_is_the_same_within_the_spread() {
    let mut pairs = 0;
    for there in all() {
        for back in swaps_from(there.brings[0].ingredient) {
            // Starch for flour in a crumb is not flour for starch in a sauce.
            let shared = there.jobs.iter().any(|job| back.jobs.contains(job));
            if back.brings[0].ingredient != there.from || !shared {
                continue;
            }
            pairs += 1;
            let (low, high) = main_ratio(there);
            let (back_low, back_high) = main_ratio(back);
            assert!(
                low * back_low <= 1.0 + 1e-9 && high * back_high >= 1.0 - 1e-9,
                "{} for {}: {low} to {high} there, {back_low} to {back_high} back",
                there.brings[0].ingredient.key,
                there.from.key
            );
        }
    }
    assert!(pairs >= 150, "{pairs} pairs");
}

#[test]
fn a_turned_row_says_nothing_of_the_other_way() {
    let turned = swap("caster_sugar", &["sugar"]);
    assert!(turned.is_turned);
    assert_eq!((turned.taste, turned.caution, turned.note), ("", "", ""));
    // 1 g of golden syrup for 0.97 to 1.03 g: by hand, 0.971 to 1.031 g back.
    let ratio = swap("golden_syrup", &["corn_syrup"]).brings[0].for_a_gram;
    assert!((ratio.low.to_grams() - 0.970_87).abs() < 1e-4);
    assert!((ratio.high.to_grams() - 1.030_93).abs() < 1e-4);
}

#[test]
fn plant_milks_keep_the_water_of_milk() {
    for to in [
        "soy_milk",
        "oat_milk",
        "almond_milk",
        "coconut_milk_drink",
        "pea_milk",
        "rice_milk",
    ] {
        assert_keeps(swap("milk", &[to]), water, 0.10);
    }
    for to in ["soy_milk", "oat_milk"] {
        assert_keeps(swap("buttermilk", &[to, "cider_vinegar"]), water, 0.10);
    }
}

/// What is dried and wetted again has the water it had.
#[test]
fn powders_and_water_make_the_original() {
    for (from, to) in [
        ("skimmed_milk", "milk_powder"),
        ("milk", "whole_milk_powder"),
        ("buttermilk", "buttermilk_powder"),
        ("egg", "dried_egg"),
        ("egg_white", "dried_egg_white"),
        ("egg_yolk", "dried_egg_yolk"),
        ("apricot", "dried_apricots"),
        ("apple", "dried_apple"),
        ("strawberries", "freeze_dried_fruit"),
        ("fresh_coconut", "desiccated_coconut"),
        ("orange_juice", "orange_juice_concentrate"),
    ] {
        assert_keeps(swap(from, &[to, "water"]), water, 0.03);
    }
}

#[test]
fn fats_and_water_for_butter_keep_its_fat_and_water() {
    for to in [
        "vegetable_oil",
        "olive_oil",
        "coconut_oil",
        "shortening",
        "lard",
        "ghee",
    ] {
        assert_keeps(swap("butter", &[to, "water"]), fat, 0.02);
        assert_keeps(swap("butter", &[to, "water"]), water, 0.03);
    }
    for to in ["margarine", "vegan_butter"] {
        assert_keeps(swap("butter", &[to]), fat, 0.03);
    }
}

#[test]
fn chocolate_from_cocoa_keeps_fat_and_sugars() {
    for fat_brought in ["shortening", "vegetable_oil", "butter"] {
        let swap = swap("unsweetened_chocolate", &["cocoa_natural", fat_brought]);
        assert_keeps(swap, fat, 0.05);
    }
    let dark = swap(
        "dark_chocolate",
        &["cocoa_natural", "sugar", "cocoa_butter"],
    );
    assert_keeps(dark, fat, 0.03);
    assert_keeps(dark, sugars, 0.03);
    let semisweet = swap("semisweet_chocolate", &["unsweetened_chocolate", "sugar"]);
    assert_keeps(semisweet, fat, 0.03);
    // Cocoa mass and sugar alone cannot have the fat of chocolate to which cocoa butter was added, so sugars give way.
    assert_keeps(semisweet, sugars, 0.10);
}

/// Soda for powder by the gas: two thirds to one of the powder's own soda, 30 %.
#[test]
fn soda_for_powder_brings_nearly_its_gas() {
    let soda = swap("baking_powder", &["baking_soda", "cream_of_tartar"]).brings[0];
    assert!((0.20..=0.30).contains(&soda.for_a_gram.mean.to_grams()));
    // Molar masses of 100.115 and 84.007 g: IUPAC standard atomic weights.
    let potassium = swap("baking_soda", &["potassium_bicarbonate"]).brings[0];
    assert!((potassium.for_a_gram.mean.to_grams() - 100.115 / 84.007).abs() < 0.01);
}

#[test]
fn a_swap_is_found_and_suits_kinds() {
    let (butter, oil) = (ingredient("butter"), ingredient("vegetable_oil"));
    let for_oil = swap_between(butter, oil).expect("oil stands for butter");
    assert_eq!(for_oil.from, butter);
    assert!(for_oil.jobs.contains(&Job::Shortens));
    assert_eq!(for_oil.suits(Kind::Muffin), Suits::Meant);
    assert_eq!(for_oil.suits(Kind::Pound), Suits::NotMeant);
    assert_eq!(for_oil.suits(Kind::Yeast), Suits::MeantForOthers);
    let margarine = swap_between(butter, ingredient("margarine")).expect("margarine for butter");
    assert_eq!(margarine.suits(Kind::Yeast), Suits::Open);
    assert_eq!(
        swap_between(butter, ingredient("passion_fruit_juice")),
        None
    );
    // Milk and vinegar, milk and lemon, milk alone: the plainest.
    let plainest = swap_between(ingredient("buttermilk"), ingredient("milk"));
    assert_eq!(plainest.map(|swap| swap.brings.len()), Some(1));
}

/// A plan writes what comes into the recipe's text by its name: in every country that is read as what was meant.
#[test]
fn what_a_swap_brings_is_read_again_by_its_name() {
    let mut brought: Vec<&Ingredient> = all()
        .iter()
        .flat_map(|swap| swap.brings.iter().map(|brought| brought.ingredient))
        .collect();
    brought.sort_by_key(|ingredient| ingredient.key);
    brought.dedup_by_key(|ingredient| ingredient.key);
    for region in Region::ALL {
        for ingredient in &brought {
            let mut inputs = Inputs::of_text(format!("Cake\n42 g {}", ingredient.name));
            inputs.choices.region = Some(region);
            let lines = worksheet(&inputs, &Settings::default()).lines;
            let read = lines.last().and_then(|line| line.ingredient);
            assert_eq!(
                (read, lines.len()),
                (Some(ingredient.key), 2),
                "{region:?}: {}",
                ingredient.name
            );
        }
    }
}
