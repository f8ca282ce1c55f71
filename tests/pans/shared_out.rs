//! Batter shared out among pans, and how much of a recipe is baked.

use super::kit::{Ask, all_of, amount, each, fitted, inches, near, round};
use batterwright::baking::balance::Kind;
use batterwright::baking::pan::{HowMuch, Level, Shape, batter_of, kinds_of_batter};
use batterwright::baking::quantity::Length;
use proptest::prelude::*;

/// By hand: 1,000 g into two 8 in rounds and a 9 in one, all 2 in deep: areas as 64, 64 and 81, so 306.2, 306.2 and 387.6 g.
#[test]
fn rounds_of_one_depth_take_it_by_their_areas() {
    let fit = fitted(&Ask {
        shelf: vec![round(2, 8.0, 2.0), round(1, 9.0, 2.0)],
        amount: amount(HowMuch::Recipe, ""),
        ..Ask::default()
    });
    let split = fit.split.as_ref().expect("batter");
    assert_eq!(split.level, Level::SameDepth);
    assert!(split.left.is_none());
    for (found, by_hand) in each(&fit).into_iter().zip([306.22, 387.56]) {
        near(found, by_hand, 0.01);
    }
    // 1,000 g of 0.93 g/mL over 209 quarter-pi square inches of 6.4516 cm2.
    let depth = split.parts[1].fill.depth.mean;
    near(depth.to_centimetres(), 1075.27 / 1059.02, 1e-3);
}

/// Cups 1.5 in deep beside rounds 2 in deep are within a third; mini cups of 0.75 in are not.
#[test]
fn depths_that_differ_by_more_than_a_third_are_filled_by_share() {
    let level = |depth: f64| {
        let cups = inches(Shape::Cups, 6, 2.75, 2.75, depth);
        let ask = Ask {
            shelf: vec![round(2, 8.0, 2.0), cups],
            amount: amount(HowMuch::Half, ""),
            ..Ask::default()
        };
        fitted(&ask).split.expect("batter")
    };
    let alike = level(1.5);
    assert_eq!(alike.level, Level::SameDepth);
    let [one, two] = [0, 1].map(|part| alike.parts[part].fill.depth.mean.to_millimetres());
    near(one, two, 1e-6);
    let unlike = level(0.75);
    assert_eq!(unlike.level, Level::SameShare);
    let [one, two] = [0, 1].map(|part| unlike.parts[part].fill.share.mean.to_fraction());
    near(one, two, 1e-9);
}

/// By hand: pound batter of 0.85 g/mL, 1,000 g are 1176.5 mL; a loaf of 1375.0 mL takes 75 %, 1031.3 mL; left are 145.2 mL,
/// 123.4 g, and a cup of 109.8 mL takes 82.4 mL of it: 1.76 cups.
#[test]
fn what_is_above_the_usual_fill_is_left_over() {
    let fit = fitted(&Ask {
        kind: Kind::Pound,
        shelf: vec![inches(Shape::Loaf, 1, 8.5, 4.5, 2.5)],
        amount: amount(HowMuch::Recipe, ""),
        ..Ask::default()
    });
    let left = fit
        .split
        .as_ref()
        .and_then(|split| split.left)
        .expect("some left");
    near(left.batter.mean.to_grams(), 123.4, 0.2);
    near(left.cups, 1.763, 0.005);
    near(all_of(&fit), 1000.0, 1e-9);
}

/// A fill line half way up a straight pan of 1647.4 mL takes 823.7 mL, at 0.8 g/mL 658.9 g.
#[test]
fn no_pan_is_filled_above_its_fill_line() {
    let mut pan = round(1, 8.0, 2.0);
    pan.fill_line = "1".into();
    let fit = fitted(&Ask {
        kind: Kind::FruitCake,
        shelf: vec![pan, round(1, 8.0, 2.0)],
        amount: amount(HowMuch::Times, "1.5"),
        density: Some(0.8),
        ..Ask::default()
    });
    near(each(&fit)[0], 658.9, 0.1);
    near(each(&fit)[1], 1500.0 - 658.95, 0.1);
    near(all_of(&fit), 1500.0, 1e-9);
}

/// The same pan takes the recipe once, to the last bit, and stands as the recipe does; a kind's highest fill takes nothing off it.
#[test]
fn the_same_pan_takes_the_recipe_once() {
    for shape in Shape::ALL {
        let pan = batterwright::baking::pan::Pan::usual(shape)
            .entry(batterwright::baking::quantity::LengthUnit::Inches);
        let fit = fitted(&Ask {
            own: Some(pan.clone()),
            shelf: vec![pan],
            ..Ask::default()
        });
        assert_eq!(fit.factor, Some(1.0), "{shape:?}");
        let (own, other) = (fit.own_fill.expect("a fill"), fit.split.expect("a part"));
        assert!(other.left.is_none(), "{shape:?}");
        let ratio = other.parts[0].fill.depth.mean / own.depth.mean;
        near(ratio, 1.0, 1e-9);
    }
}

/// By hand: 2/3, 1 1/2, half, and 3 eggs of 2.
#[test]
fn amounts_are_those_asked_for() {
    let factor = |how, text: &str| {
        fitted(&Ask {
            text: "500 g flour\n2 large eggs",
            amount: amount(how, text),
            ..Ask::default()
        })
        .factor
    };
    assert_eq!(factor(HowMuch::Recipe, ""), Some(1.0));
    assert_eq!(factor(HowMuch::Half, "ignored"), Some(0.5));
    assert_eq!(factor(HowMuch::Times, "2/3"), Some(2.0 / 3.0));
    assert_eq!(factor(HowMuch::Times, "1 1/2"), Some(1.5));
    assert_eq!(factor(HowMuch::Times, "1,5"), Some(1.5));
    assert_eq!(factor(HowMuch::Eggs, "3"), Some(1.5));
    // Nothing on the shelf, and nothing asked for.
    assert_eq!(factor(HowMuch::AsFull, ""), None);
}

#[test]
fn an_amount_that_is_none_is_told() {
    for (how, text) in [
        (HowMuch::Times, ""),
        (HowMuch::Times, "0"),
        (HowMuch::Times, "-1"),
        (HowMuch::Times, "1000"),
        (HowMuch::Times, "twice"),
        (HowMuch::Times, "1/0"),
        (HowMuch::Eggs, "many"),
        (HowMuch::Eggs, "0"),
        // The recipe has none.
        (HowMuch::Eggs, "3"),
    ] {
        let fit = fitted(&Ask {
            amount: amount(how, text),
            ..Ask::default()
        });
        let trouble = fit.amount_trouble.unwrap_or_default();
        assert!(
            trouble.len() > 20 && trouble.ends_with('.'),
            "{text}: {trouble}"
        );
        assert_eq!(fit.factor, None);
        assert!(fit.split.is_none());
    }
}

/// By hand: 13 x 9 x 2 in and two 8 in rounds hold 234 + 201.06 in3, against 128 in3 of an 8 in square: 3.3989 times.
#[test]
fn several_pans_take_the_sum_of_their_volumes() {
    let mut ask = Ask {
        own: Some(inches(Shape::Square, 1, 8.0, 8.0, 2.0)),
        shelf: vec![
            inches(Shape::Rectangle, 1, 13.0, 9.0, 2.0),
            round(2, 8.0, 2.0),
        ],
        ..Ask::default()
    };
    let fit = fitted(&ask);
    near(fit.factor.expect("a factor"), 3.3989, 1e-4);
    near(fit.depth_factor.expect("a factor"), 3.3989, 1e-4);
    near(all_of(&fit), 3398.9, 0.1);
    // One that cannot be read leaves the factor open.
    ask.shelf[1].depth = "deep".into();
    let fit = fitted(&ask);
    assert_eq!(fit.factor, None);
    assert!(fit.split.is_none());
    assert_eq!(fit.shelf.iter().flatten().count(), 1);
}

/// By hand, 450 g in an 8 in round that lose 9 % and come to 2.6 mL/g: 1064.7 mL over 324.29 cm2, 32.83 mm; and 752.0 g of
/// 0.83 g/mL fill 55 % of 1647.4 mL.
#[test]
fn crumb_and_batter_by_hand() {
    let grown = fitted(&Ask {
        text: "250 g flour\n200 g milk",
        own: Some(round(1, 8.0, 2.0)),
        density: Some(0.83),
        expansion: Some(0.91 * 2.6 * 0.83),
        ..Ask::default()
    });
    let baked = grown.own_fill.and_then(|fill| fill.baked).expect("a crumb");
    near(baked.depth.mean.to_millimetres(), 32.83, 0.02);
    near(baked.share.mean.to_fraction(), 32.83 / 50.8, 1e-3);
    let filled = fitted(&Ask {
        text: "500 g flour\n252 g milk",
        own: Some(round(1, 8.0, 2.0)),
        density: Some(0.83),
        ..Ask::default()
    });
    let fill = filled.own_fill.expect("a fill");
    near(fill.of_brim.mean.to_fraction(), 0.55, 1e-4);
    assert_eq!(fill.baked, None);
}

/// By hand: 0.9 g/mL let 900 g stand 1,000 mL high, and an error of 10 % in the density moves that by as much.
#[test]
fn a_range_of_density_is_a_range_of_depth() {
    let fit = fitted(&Ask {
        text: "450 g flour\n450 g milk",
        kind: Kind::GlutenFree,
        own: Some(round(1, 8.0, 2.0)),
        ..Ask::default()
    });
    let volume = fit.own_fill.expect("a fill").volume;
    near(volume.mean.to_millilitres(), 1000.0, 1e-6);
    near(volume.low.to_millilitres(), 900.0, 1e-6);
    near(volume.high.to_millilitres(), 1125.0, 1e-6);
}

/// A weight that is not known exactly moves the volume by as much: at 0.8 g/mL every gram is 1.25 mL.
#[test]
fn a_range_of_weight_is_a_range_of_volume() {
    let fit = fitted(&Ask {
        text: "2 cups all-purpose flour\n200 g milk",
        own: Some(round(1, 8.0, 2.0)),
        density: Some(0.8),
        ..Ask::default()
    });
    let fill = fit.own_fill.expect("a fill");
    assert!(fill.batter.low < fill.batter.mean && fill.batter.mean < fill.batter.high);
    for (volume, grams) in [
        (fill.volume.low, fill.batter.low),
        (fill.volume.mean, fill.batter.mean),
        (fill.volume.high, fill.batter.high),
    ] {
        near(volume.to_millilitres(), grams.to_grams() * 1.25, 1e-9);
    }
}

/// The same round twice as deep: twice the volume, and the same depth takes no more.
#[test]
fn a_deeper_pan_takes_more_by_volume_and_as_much_by_depth() {
    let fit = fitted(&Ask {
        own: Some(round(1, 8.0, 2.0)),
        shelf: vec![round(1, 8.0, 4.0)],
        ..Ask::default()
    });
    near(fit.factor.expect("a factor"), 2.0, 1e-12);
    near(fit.depth_factor.expect("a factor"), 1.0, 1e-12);
}

#[test]
fn every_kind_has_a_batter() {
    for kind in Kind::ALL.into_iter().chain([Kind::Plain]) {
        let row = batter_of(kind);
        assert_eq!(row.kind, kind);
        assert!(row.fill.is_none_or(|fill| fill.low < fill.high));
    }
    assert_eq!(kinds_of_batter().len(), 33);
}

/// Typed by hand from the trade's figures.
#[test]
fn fills_and_weights_are_those_of_the_trade() {
    for (kind, low, high, density) in [
        (Kind::Pound, 0.60, 0.75, 0.85),
        (Kind::AngelFood, 0.67, 0.88, 0.30),
        (Kind::HighRatioYellow, 0.45, 0.60, 0.80),
        (Kind::Sponge, 0.60, 0.75, 0.50),
        (Kind::Chiffon, 0.50, 0.67, 0.48),
        (Kind::Muffin, 0.67, 0.80, 0.95),
        (Kind::FruitCake, 0.75, 0.90, 1.10),
        (Kind::Brownie, 0.50, 0.67, 1.05),
    ] {
        let row = batter_of(kind);
        let fill = row.fill.expect("a usual fill");
        near(fill.low.to_fraction(), low, 1e-9);
        near(fill.high.to_fraction(), high, 1e-9);
        near(row.density.mean.to_grams_per_millilitre(), density, 1e-9);
    }
    assert!(batter_of(Kind::Cookie).fill.is_none());
}

/// More batter than any pan holds: said, finite, and all of it accounted for.
#[test]
fn a_hundred_times_too_much_is_left_over() {
    let fit = fitted(&Ask {
        shelf: vec![inches(Shape::Cups, 1, 2.75, 2.75, 1.5)],
        amount: amount(HowMuch::Times, "100"),
        ..Ask::default()
    });
    near(all_of(&fit), 100_000.0, 1e-6);
    let part = fit.split.expect("a part").parts[0];
    assert!(part.fill.depth.mean < Length::inches(1.5));
}

fn any_pan() -> impl Strategy<Value = batterwright::baking::pan::PanEntry> {
    let sizes = (
        0_usize..17,
        1_u32..5,
        2.0_f64..16.0,
        0.5_f64..1.0,
        0.5_f64..4.0,
    );
    sizes.prop_map(|(shape, count, length, part, depth)| {
        inches(Shape::ALL[shape], count, length, length * part, depth)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(256) })]

    /// Whatever pans, whatever amount: what is poured and left is all of it, and no figure is none.
    #[test]
    fn what_is_shared_out_sums_to_the_whole(pans in prop::collection::vec(any_pan(), 1..5), times in 2_u32..400, kind in 0_usize..32) {
        let times = f64::from(times) / 100.0;
        let fit = fitted(&Ask {
            kind: Kind::ALL[kind],
            shelf: pans,
            amount: amount(HowMuch::Times, &format!("{times:.2}")),
            expansion: Some(2.0),
            ..Ask::default()
        });
        // A pan that the form refuses shares out nothing.
        if fit.shelf.iter().all(Option::is_some) {
            // Less than a gram that is left is not named.
            prop_assert!((all_of(&fit) - 1000.0 * times).abs() < 1.0);
            for part in fit.split.expect("parts").parts {
                let fill = part.fill;
                prop_assert!(fill.depth.mean.to_millimetres().is_finite() && fill.depth.mean > Length::ZERO);
                prop_assert!(fill.depth.low <= fill.depth.mean && fill.depth.mean <= fill.depth.high);
                prop_assert!(fill.baked.is_some_and(|baked| baked.depth.mean >= fill.depth.mean));
            }
        }
    }
}
