//! Eggs counted, and the whole numbers next to a part of one.

use super::kit::{Ask, amount, fitted, near, round};
use batterwright::baking::pan::HowMuch;

/// Count and grams of one, by hand from the pieces of USDA SR28: large 50 g, medium 44 g, white 33 g, yolk 17 g.
#[test]
fn eggs_are_counted_as_they_are_written() {
    for (text, count, each) in [
        ("500 g flour\n2 large eggs", 2.0, 50.0),
        ("500 g flour\n3 medium eggs", 3.0, 44.0),
        ("500 g flour\n150 g eggs", 3.0, 50.0),
        ("500 g flour\n4 egg whites", 4.0, 33.0),
        // Of whole eggs and yolks the eggs weigh more; two lines of them are one count.
        ("500 g flour\n2 eggs\n1 egg yolk", 2.0, 50.0),
        ("Cake\n500 g flour\n2 eggs\n1 egg", 3.0, 50.0),
    ] {
        let eggs = fitted(&Ask {
            text,
            ..Ask::default()
        })
        .eggs
        .unwrap_or_else(|| panic!("eggs in {text}"));
        near(eggs.count, count, 1e-9);
        near(eggs.each.to_grams(), each, 1e-9);
    }
    for text in [
        "500 g flour",
        "500 g flour\n2 flax eggs",
        "500 g flour\n100 g aquafaba",
    ] {
        let fit = fitted(&Ask {
            text,
            ..Ask::default()
        });
        assert_eq!(fit.eggs, None, "{text}");
    }
}

/// By hand: 3 eggs 1.3 times are 3.9; 3 are once the recipe, 4 are 4/3 of it, and stand as much deeper in a straight pan.
#[test]
fn whole_eggs_below_and_above() {
    let fit = fitted(&Ask {
        text: "300 g flour\n3 large eggs\n150 g milk",
        own: Some(round(1, 9.0, 3.0)),
        amount: amount(HowMuch::Times, "1.3"),
        ..Ask::default()
    });
    let counts: Vec<u32> = fit.whole_eggs.iter().map(|whole| whole.count).collect();
    assert_eq!(counts, [3, 4]);
    near(fit.whole_eggs[0].factor, 1.0, 1e-12);
    near(fit.whole_eggs[1].factor, 4.0 / 3.0, 1e-12);
    let depth = |split: &Option<batterwright::baking::pan::Split>| {
        let split = split.as_ref().expect("a split");
        split.parts[0].fill.depth.mean.to_millimetres()
    };
    let [now, three, four] = [
        depth(&fit.split),
        depth(&fit.whole_eggs[0].split),
        depth(&fit.whole_eggs[1].split),
    ];
    near(three / now, 1.0 / 1.3, 1e-6);
    near(four / now, 4.0 / 3.9, 1e-6);
}

#[test]
fn a_whole_number_asks_for_no_choice() {
    let counts = |text: &str| {
        let fit = fitted(&Ask {
            text: "300 g flour\n2 large eggs",
            amount: amount(HowMuch::Times, text),
            ..Ask::default()
        });
        let counts = fit.whole_eggs.iter().map(|whole| whole.count);
        counts.collect::<Vec<_>>()
    };
    assert!(counts("1.5").is_empty());
    assert!(counts("1.499").is_empty());
    // Less than one egg has only the one above it.
    assert_eq!(counts("0.25"), [1]);
    assert_eq!(counts("0.75"), [1, 2]);
}

/// The number of eggs that is offered, once taken, is a whole number.
#[test]
fn an_offer_that_is_taken_is_whole() {
    let fit = fitted(&Ask {
        text: "300 g flour\n3 large eggs\n150 g milk",
        amount: amount(HowMuch::Eggs, "4"),
        ..Ask::default()
    });
    near(fit.factor.expect("a factor"), 4.0 / 3.0, 1e-12);
    assert!(fit.whole_eggs.is_empty());
}
