//! Every row of every table, through the door that the program itself uses.
//!
//! `build.rs` has checked the form of the tables; here their figures are held against published
//! ones: household weights of USDA SR28, size classes of eggs, the law on leavening, titratable
//! acidity of juices.

use batterwright::baking::ingredient::{
    Bicarbonate, Filling, FlourBasis, Form, Group, Ingredient, Piece, PieceSize, Region,
    SpoonOrCup, Titratable, Uptake, aliases, all, by_key, leavening_acid,
};
use batterwright::baking::quantity::{Mass, Share, Volume};
use batterwright::baking::recipe::VolumeUnit;
use batterwright::baking::source::{self, Cited, Confidence};

#[track_caller]
fn ingredient(key: &str) -> &'static Ingredient {
    by_key(key).unwrap_or_else(|| panic!("no row {key}"))
}

/// Low, typical and high grams of a level measure.
fn filling(
    ingredient: &Ingredient,
    measure: SpoonOrCup,
    form: Option<Form>,
    filling: Option<Filling>,
) -> Option<(f64, f64, f64)> {
    let mut rows = ingredient.fillings.iter();
    let row =
        rows.find(|row| row.measure == measure && row.form == form && row.filling == filling)?;
    Some((
        row.weight.low.to_grams(),
        row.weight.mean.to_grams(),
        row.weight.high.to_grams(),
    ))
}

/// Low, typical and high grams of one piece.
#[track_caller]
fn piece(
    key: &str,
    piece: Piece,
    size: Option<PieceSize>,
    region: Option<Region>,
) -> (f64, f64, f64) {
    let mut rows = ingredient(key).pieces.iter();
    let row = rows
        .find(|row| row.piece == piece && row.size == size && row.region == region)
        .unwrap_or_else(|| panic!("no piece row for {key} {piece:?} {size:?} {region:?}"));
    (
        row.weight.low.to_grams(),
        row.weight.mean.to_grams(),
        row.weight.high.to_grams(),
    )
}

fn volume(measure: SpoonOrCup) -> f64 {
    // US definitions: a cup is 16 tablespoons or 48 teaspoons (NIST Handbook 44).
    let cup = Volume::US_CUP.to_millilitres();
    match measure {
        SpoonOrCup::Cup => cup,
        SpoonOrCup::Tablespoon => cup / 16.0,
        SpoonOrCup::Teaspoon => cup / 48.0,
    }
}

/// The sizes stand twice, once for reading recipes and once for weighing a measure of one's own.
#[test]
fn measures_have_the_sizes_that_recipes_are_read_with() {
    for region in Region::ALL {
        for (measure, unit) in [
            (SpoonOrCup::Cup, VolumeUnit::Cup),
            (SpoonOrCup::Tablespoon, VolumeUnit::Tablespoon),
            (SpoonOrCup::Teaspoon, VolumeUnit::Teaspoon),
        ] {
            let (ours, theirs) = (measure.volume_in(region), unit.volume(region));
            assert!(
                (ours / theirs - 1.0).abs() < 1e-12,
                "{measure:?} {region:?}"
            );
        }
    }
}

fn percent(share: Option<Share>) -> Option<f64> {
    share.map(Share::to_percent)
}

#[track_caller]
fn assert_sourced(cited: &Cited, what: &str) {
    let found = source::by_key(cited.source.key);
    assert_eq!(
        found,
        Some(cited.source),
        "{what}: its source is not in the list"
    );
    // A figure marked as read must name where it was read.
    let nameless = ["memory", "practice", "derivation"].contains(&cited.source.key);
    assert!(
        cited.confidence != Confidence::Published || !nameless,
        "{what}: called published, but {} is no publication",
        cited.source.key
    );
}

#[test]
fn sources_are_in_order_and_cited_in_full() {
    let sources = source::all();
    assert!(sources.windows(2).all(|pair| pair[0].key < pair[1].key));
    for source in sources {
        assert!(
            source.citation.len() > 10,
            "{}: {}",
            source.key,
            source.citation
        );
    }
}

#[test]
fn ingredients_are_in_order_and_sourced() {
    assert!(all().len() >= 190, "{} ingredients", all().len());
    assert!(all().windows(2).all(|pair| pair[0].key < pair[1].key));
    for ingredient in all() {
        assert_sourced(&ingredient.cited, ingredient.key);
        assert_eq!(by_key(ingredient.key), Some(ingredient));
        for row in &ingredient.fillings {
            assert_sourced(&row.cited, ingredient.key);
        }
        for row in &ingredient.pieces {
            assert_sourced(&row.cited, ingredient.key);
        }
        if let Some(leavening) = ingredient.leavening {
            assert_sourced(&leavening.cited, ingredient.key);
        }
        if let Some(acidity) = ingredient.acidity {
            assert_sourced(&acidity.ph_cited, acidity.key);
            assert_sourced(&acidity.buffer_cited, acidity.key);
            if let Some(cited) = &acidity.acids_cited {
                assert_sourced(cited, acidity.key);
            }
        }
    }
}

#[test]
fn compositions_add_up() {
    // Mostly ash, essential oil or matter that no column holds.
    const INCOMPLETE: &[&str] = &[
        "activated_charcoal",
        "lemon_oil",
        "matcha",
        "salt",
        "salt_flake",
        "soy_sauce",
        "tea_leaves",
    ];
    for ingredient in all() {
        let (key, c) = (ingredient.key, &ingredient.composition);
        let parts = [c.water, c.protein, c.fat, c.carbohydrate, c.alcohol];
        for part in parts.iter().chain([&c.sugars, &c.starch, &c.fibre]) {
            assert!(
                percent(*part).is_none_or(|p| (0.0..=100.0).contains(&p)),
                "{key}"
            );
        }
        let sum: f64 = parts.iter().filter_map(|part| percent(*part)).sum();
        assert!(sum <= 101.5, "{key}: {sum:.1} g in 100 g");
        let whole = parts[..4].iter().all(Option::is_some);
        let excused = ingredient.group == Group::Leavener || INCOMPLETE.contains(&key);
        assert!(
            !whole || excused || sum >= 85.0,
            "{key}: only {sum:.1} g in 100 g"
        );
    }
}

#[test]
fn starch_by_difference_is_the_difference() {
    let mut seen = 0;
    for ingredient in all() {
        let (key, c) = (ingredient.key, &ingredient.composition);
        // The starch of ground almonds is that of the whole nut, SR28 12061.
        if !c.derived.contains(&"starch") || key == "almond_flour" {
            continue;
        }
        let known = |share| percent(share).unwrap_or(0.0);
        let difference = known(c.carbohydrate) - known(c.sugars) - known(c.fibre);
        let starch = percent(c.starch).expect("a derived figure is there");
        assert!(
            (starch - difference).abs() < 0.02,
            "{key}: {starch} for {difference}"
        );
        seen += 1;
    }
    assert!(seen > 20, "only {seen} rows derive their starch");
}

/// USDA SR28, per 100 g: water, protein, fat, carbohydrate. Typed by hand from the release.
#[test]
fn compositions_are_those_of_the_release() {
    for (key, water, protein, fat, carbohydrate) in [
        ("plain_flour", 11.92, 10.33, 0.98, 76.31),
        ("cake_flour", 12.51, 8.20, 0.86, 78.03),
        ("sugar", 0.02, 0.0, 0.0, 99.98),
        ("butter", 17.94, 0.85, 81.11, 0.06),
        ("milk", 88.13, 3.15, 3.25, 4.80),
        ("buttermilk", 90.13, 3.31, 0.88, 4.79),
        ("egg", 76.15, 12.56, 9.51, 0.72),
        ("egg_white", 87.57, 10.90, 0.17, 0.73),
        ("egg_yolk", 52.31, 15.86, 26.54, 3.59),
        ("banana", 74.91, 1.09, 0.33, 22.84),
        ("cocoa_natural", 3.0, 19.60, 13.70, 57.90),
        ("honey", 17.10, 0.30, 0.0, 82.40),
        ("oats", 10.84, 13.15, 6.52, 67.70),
        ("lemon_juice", 92.31, 0.35, 0.24, 6.90),
        ("pumpkin_puree", 89.97, 1.10, 0.28, 8.09),
    ] {
        let c = &ingredient(key).composition;
        let ours = [c.water, c.protein, c.fat, c.carbohydrate]
            .map(|share| percent(share).unwrap_or(f64::NAN));
        for (ours, theirs) in ours.iter().zip([water, protein, fat, carbohydrate]) {
            assert!((ours - theirs).abs() < 1e-6, "{key}: {ours} for {theirs}");
        }
    }
}

#[test]
fn names_lead_somewhere() {
    assert!(aliases().len() >= 900, "{} names", aliases().len());
    let mut named = vec![false; all().len()];
    for alias in aliases() {
        assert_eq!(alias.name, alias.name.to_lowercase());
        named[alias.index] = true;
    }
    for (ingredient, named) in all().iter().zip(named) {
        assert!(named, "{} has no name that people write", ingredient.key);
    }
}

#[test]
fn a_name_means_one_thing_in_one_place() {
    const EVERYWHERE: [Region; 5] = [Region::Us, Region::Uk, Region::Au, Region::Nz, Region::Ca];
    let mut meant = std::collections::HashMap::new();
    // A second meaning is offered beside the first, and stands there only to be offered.
    for alias in aliases().iter().filter(|alias| !alias.is_second) {
        let regions = alias
            .region
            .map_or(EVERYWHERE.to_vec(), |region| vec![region]);
        for region in regions {
            let before = meant.insert((alias.name, region as u8), alias.index);
            assert_eq!(before, None, "{} in {region:?}", alias.name);
        }
    }
    let key = |name: &str, region: Region| {
        let mut found = aliases().iter().filter(|alias| alias.name == name);
        let alias = found.find(|alias| alias.region.is_none_or(|there| there == region));
        alias.map(|alias| all()[alias.index].key)
    };
    // Facts of the trade: the same word on the two sides of the Atlantic.
    assert_eq!(key("cornflour", Region::Uk), Some("corn_starch"));
    assert_eq!(key("cornflour", Region::Us), Some("corn_flour"));
    assert_eq!(
        key("self raising flour", Region::Uk),
        Some("self_raising_flour_uk")
    );
    assert_eq!(
        key("self rising flour", Region::Us),
        Some("self_raising_flour_us")
    );
    assert_eq!(key("bicarbonate of soda", Region::Au), Some("baking_soda"));
    assert_eq!(key("cream", Region::Uk), Some("double_cream"));
    assert_eq!(key("cream", Region::Us), Some("heavy_cream"));
    assert_eq!(key("treacle", Region::Uk), Some("black_treacle"));
    assert_eq!(key("courgette", Region::Uk), key("zucchini", Region::Us));
}

#[test]
fn weights_rise_from_low_to_high_and_are_dense_as_foods_are() {
    for ingredient in all() {
        let key = ingredient.key;
        for row in &ingredient.fillings {
            let w = &row.weight;
            assert!(w.low <= w.mean && w.mean <= w.high, "{key}");
            // Popcorn weighs 0.034 g/mL, puffed cereals 0.06, syrups 1.45, salt and acids not above 1.3.
            let density = w.mean.to_grams() / volume(row.measure);
            assert!(
                (0.03..1.5).contains(&density),
                "{key} {:?}: {density:.2} g/mL",
                row.measure
            );
            assert!(
                w.low.to_grams() > 0.4 * w.mean.to_grams(),
                "{key}: low is far below"
            );
            assert!(
                w.high.to_grams() < 2.0 * w.mean.to_grams(),
                "{key}: high is far above"
            );
        }
        for row in &ingredient.pieces {
            let w = &row.weight;
            assert!(
                Mass::ZERO < w.low && w.low <= w.mean && w.mean <= w.high,
                "{key} {:?}",
                row.piece
            );
        }
    }
}

#[test]
fn measures_of_one_food_agree() {
    for ingredient in all() {
        let densities: Vec<f64> = [
            SpoonOrCup::Cup,
            SpoonOrCup::Tablespoon,
            SpoonOrCup::Teaspoon,
        ]
        .into_iter()
        .filter_map(|measure| {
            filling(ingredient, measure, None, None).map(|(_, mean, _)| mean / volume(measure))
        })
        .collect();
        let most = densities.iter().copied().fold(0.0, f64::max);
        let least = densities.iter().copied().fold(f64::INFINITY, f64::min);
        assert!(
            most <= least * 1.4,
            "{}: {densities:?} g/mL",
            ingredient.key
        );
    }
}

#[test]
fn what_is_measured_by_volume_has_a_weight() {
    // Sold and used by the piece.
    const BY_PIECE: &[&str] = &["gelatine_leaf", "vanilla_bean"];
    // Used by the spoon alone.
    const BY_SPOON: &[&str] = &["cooking_spray", "stevia"];
    for ingredient in all() {
        let key = ingredient.key;
        let default = |measure| filling(ingredient, measure, None, None).is_some();
        if BY_PIECE.contains(&key) {
            assert!(!ingredient.pieces.is_empty(), "{key}");
            continue;
        }
        assert!(
            default(SpoonOrCup::Cup)
                || default(SpoonOrCup::Tablespoon)
                || default(SpoonOrCup::Teaspoon),
            "{key} has no measure that is not tied to a form or a filling"
        );
        let by_spoon = matches!(
            ingredient.group,
            Group::Leavener
                | Group::Flavour
                | Group::Spice
                | Group::Thickener
                | Group::Acid
                | Group::Seed
                | Group::Vegetable
        );
        assert!(
            by_spoon || BY_SPOON.contains(&key) || default(SpoonOrCup::Cup),
            "{key} has no cup weight"
        );
    }
}

#[test]
fn flour_is_heavier_dipped_than_spooned_and_lightest_sifted() {
    for ingredient in all() {
        if ingredient.group != Group::Flour || ingredient.flour_basis == FlourBasis::Never {
            continue;
        }
        let cup = |how| {
            let row = filling(ingredient, SpoonOrCup::Cup, None, Some(how));
            row.unwrap_or_else(|| panic!("{} has no row for {how:?}", ingredient.key))
        };
        let (dipped, spooned, sifted) = (
            cup(Filling::Dipped),
            cup(Filling::Spooned),
            cup(Filling::Sifted),
        );
        assert!(
            sifted.1 < spooned.1 && spooned.1 < dipped.1,
            "{}",
            ingredient.key
        );
    }
}

/// Household weights that SR28 names, typed by hand, must lie within the spread we state.
#[test]
fn cups_and_spoons_of_the_release_lie_within_our_spread() {
    use SpoonOrCup::{Cup, Tablespoon, Teaspoon};
    let plain = [
        ("plain_flour", Cup, 125.0),
        ("self_raising_flour_us", Cup, 125.0),
        ("bread_flour", Cup, 137.0),
        ("whole_wheat_flour", Cup, 120.0),
        ("rye_flour", Cup, 102.0),
        ("barley_flour", Cup, 148.0),
        ("buckwheat_flour", Cup, 120.0),
        ("rice_flour", Cup, 158.0),
        ("cornmeal", Cup, 157.0),
        ("corn_starch", Cup, 128.0),
        ("almond_flour", Cup, 95.0),
        ("oats", Cup, 81.0),
        ("sugar", Cup, 200.0),
        ("light_brown_sugar", Cup, 220.0),
        ("icing_sugar", Cup, 120.0),
        ("honey", Cup, 339.0),
        ("maple_syrup", Cup, 315.0),
        ("molasses", Cup, 337.0),
        ("corn_syrup", Cup, 341.0),
        ("butter", Cup, 227.0),
        ("shortening", Cup, 205.0),
        ("vegetable_oil", Cup, 218.0),
        ("olive_oil", Cup, 216.0),
        ("milk", Cup, 244.0),
        ("buttermilk", Cup, 245.0),
        ("sour_cream", Cup, 230.0),
        ("yogurt", Cup, 245.0),
        ("heavy_cream", Cup, 238.0),
        ("cream_cheese", Cup, 232.0),
        ("soy_milk", Cup, 243.0),
        ("coconut_milk", Cup, 226.0),
        ("egg", Cup, 243.0),
        ("banana", Cup, 225.0),
        ("apple_sauce", Cup, 244.0),
        ("pumpkin_puree", Cup, 245.0),
        ("blueberries", Cup, 148.0),
        ("raisins", Cup, 145.0),
        ("cocoa_natural", Cup, 86.0),
        ("semisweet_chocolate", Cup, 168.0),
        ("walnuts", Cup, 117.0),
        ("peanut_butter", Cup, 258.0),
        ("lemon_juice", Cup, 244.0),
        ("orange_juice", Cup, 248.0),
        ("white_vinegar", Cup, 238.0),
        ("vanilla_extract", Teaspoon, 4.2),
        ("baking_soda", Teaspoon, 4.6),
        ("baking_powder", Teaspoon, 4.6),
        ("baking_powder_low_sodium", Teaspoon, 5.0),
        ("cream_of_tartar", Teaspoon, 3.0),
        ("salt", Teaspoon, 6.0),
        ("cinnamon", Teaspoon, 2.6),
        ("ground_ginger", Teaspoon, 1.8),
        ("dry_yeast", Teaspoon, 4.0),
        ("lemon_zest", Tablespoon, 6.0),
        ("whole_flaxseed", Cup, 168.0),
        ("poppy_seeds", Tablespoon, 8.8),
    ];
    let by_form = [
        ("light_brown_sugar", Cup, Some(Form::Packed), None, 220.0),
        ("light_brown_sugar", Cup, Some(Form::Loose), None, 145.0),
        ("icing_sugar", Cup, None, Some(Filling::Sifted), 100.0),
        ("cake_flour", Cup, None, Some(Filling::Dipped), 137.0),
        ("heavy_cream", Cup, Some(Form::Whipped), None, 120.0),
        ("raisins", Cup, Some(Form::Packed), None, 165.0),
        ("strawberries", Cup, Some(Form::Sliced), None, 166.0),
        ("flaked_almonds", Cup, Some(Form::Slivered), None, 108.0),
    ];
    let plain = plain.map(|(key, measure, grams)| (key, measure, None, None, grams));
    for (key, measure, form, how, grams) in plain.into_iter().chain(by_form) {
        let row = filling(ingredient(key), measure, form, how);
        let (low, _, high) =
            row.unwrap_or_else(|| panic!("{key} {measure:?} {form:?} {how:?}: no row"));
        assert!(
            (low..=high).contains(&grams),
            "{key} {measure:?}: {grams} is not in {low} to {high}"
        );
    }
}

/// Means of the trials in USDA Home Economics Research Report 41 (1977), g per US cup.
#[test]
fn cups_agree_with_the_measuring_trials() {
    use Filling::{Sifted, Spooned};
    for (key, how, grams) in [
        ("plain_flour", Some(Sifted), 116.0),
        ("plain_flour", Some(Spooned), 126.0),
        ("bread_flour", Some(Sifted), 117.0),
        ("bread_flour", Some(Spooned), 123.0),
        ("cake_flour", Some(Sifted), 99.0),
        ("cake_flour", Some(Spooned), 111.0),
        ("icing_sugar", None, 113.0),
        ("icing_sugar", Some(Sifted), 95.0),
        ("sugar", None, 196.0),
        ("corn_starch", None, 125.0),
        ("molasses", None, 309.0),
        ("vegetable_oil", None, 209.0),
        ("shortening", None, 187.0),
        ("margarine", None, 225.0),
    ] {
        let (low, _, high) =
            filling(ingredient(key), SpoonOrCup::Cup, None, how).expect("the row is there");
        assert!(
            (low..=high).contains(&grams),
            "{key} {how:?}: {grams} is not in {low} to {high}"
        );
    }
}

/// Class limits in grams with the shell: USDA AMS (ounces a dozen), EU 2023/2465, Australian guide,
/// New Zealand minimum masses, Canadian regulations. About 12 % is shell (SR28 refuse).
#[test]
fn eggs_keep_to_their_size_classes() {
    use PieceSize::{ExtraLarge, Large, Medium, Small};
    let dozen = Mass::OUNCE.to_grams() / 12.0;
    for (region, size, low, high) in [
        (Region::Us, Small, 18.0 * dozen, 21.0 * dozen),
        (Region::Us, Medium, 21.0 * dozen, 24.0 * dozen),
        (Region::Us, Large, 24.0 * dozen, 27.0 * dozen),
        (Region::Us, ExtraLarge, 27.0 * dozen, 30.0 * dozen),
        (Region::Uk, Medium, 53.0, 63.0),
        (Region::Uk, Large, 63.0, 73.0),
        (Region::Au, Medium, 42.0, 50.0),
        (Region::Au, Large, 50.0, 58.3),
        (Region::Au, ExtraLarge, 58.3, 66.7),
        (Region::Nz, Medium, 44.0, 53.0),
        (Region::Nz, Large, 62.0, 68.0),
        (Region::Ca, Medium, 49.0, 56.0),
        (Region::Ca, Large, 56.0, 63.0),
    ] {
        let (_, whole, _) = piece("egg", Piece::Each, Some(size), Some(region));
        // The contents of a class lie between 0.87 of its lightest egg and 0.89 of its heaviest;
        // SR28's round figures miss by half a gram.
        assert!(
            (0.87 * low - 0.5..=0.89 * high + 0.5).contains(&whole),
            "{region:?} {size:?}: {whole} g of {low:.1} to {high:.1} g in the shell"
        );
        let (_, white, _) = piece("egg_white", Piece::Each, Some(size), Some(region));
        let (_, yolk, _) = piece("egg_yolk", Piece::Each, Some(size), Some(region));
        // Yolk is 27 to 31 of the 90.5 parts that are not shell (Cotterill and Geiger 1977).
        assert!(
            (0.28..0.37).contains(&(yolk / (white + yolk))),
            "{region:?} {size:?}"
        );
        assert!(
            (white + yolk - whole).abs() < 3.0,
            "{region:?} {size:?}: parts and whole differ"
        );
    }
    // SR28: a US large egg, its white, its yolk.
    assert_eq!(piece("egg", Piece::Each, None, None).1, 50.0);
    assert_eq!(piece("egg_white", Piece::Each, None, None).1, 33.0);
    assert_eq!(piece("egg_yolk", Piece::Each, None, None).1, 17.0);
    // A large egg is not the same in Sydney, Chicago and London.
    let large = |region| piece("egg", Piece::Each, Some(Large), Some(region)).1;
    assert!(large(Region::Au) < large(Region::Us) && large(Region::Us) < large(Region::Uk));
}

#[test]
fn pieces_of_the_trade() {
    // A stick is a quarter of a pound: 4 oz by the wrapper.
    let stick = piece("butter", Piece::Stick, None, None).1;
    assert!(
        (stick - Mass::POUND.to_grams() / 4.0).abs() < 0.01,
        "{stick}"
    );
    // SR28: bananas without their skins, lemon and orange juice a fruit, a packet of yeast.
    assert_eq!(
        piece("banana", Piece::Each, Some(PieceSize::Medium), None).1,
        118.0
    );
    assert_eq!(
        piece("banana", Piece::Each, Some(PieceSize::Large), None).1,
        136.0
    );
    assert_eq!(piece("lemon_juice", Piece::Each, None, None).1, 48.0);
    assert_eq!(piece("lime_juice", Piece::Each, None, None).1, 44.0);
    assert_eq!(piece("orange_juice", Piece::Each, None, None).1, 86.0);
    assert_eq!(piece("dry_yeast", Piece::Packet, None, None).1, 7.2);
    assert_eq!(
        piece("carrot", Piece::Each, Some(PieceSize::Medium), None).1,
        61.0
    );
    // Usual cans: 14 oz of condensed milk, 15 oz of pumpkin.
    assert_eq!(piece("condensed_milk", Piece::Can, None, None).1, 397.0);
    assert_eq!(piece("pumpkin_puree", Piece::Can, None, None).1, 425.0);
}

#[test]
fn acidity_rows_are_plausible() {
    for ingredient in all() {
        let Some(acidity) = ingredient.acidity else {
            continue;
        };
        let key = acidity.key;
        let (low, typical, high) = acidity.ph;
        assert!(
            0.0 < low && low <= typical && typical <= high && high < 14.0,
            "{key}"
        );
        let b = &acidity.buffer;
        // Amino acids and phosphate buffer most below pH 6 and least in alkali; phosphate added to
        // oat milk and the phenols of wine and tea bend that a little.
        assert!(b.from_6_to_7_5 <= 1.2 * b.below_6, "{key}");
        assert!(
            b.above_7_5 <= b.below_6 && b.above_7_5 <= 1.5 * b.from_6_to_7_5,
            "{key}"
        );
        assert!((0.0..=1.0).contains(&acidity.deviation), "{key}");
        assert!(total_acid_equivalents(ingredient) >= 0.0, "{key}");
        if let Some(published) = acidity.titratable {
            let (low, high) = (published.low, published.high);
            assert!(0.0 < low && low <= high, "{key}");
            assert!(!published.source.citation.is_empty(), "{key}");
        }
    }
}

/// Milliequivalents of base that 100 g of the listed acids take up, all protons off.
fn total_acid_equivalents(ingredient: &Ingredient) -> f64 {
    let acids = ingredient
        .acidity
        .map(|acidity| acidity.acids)
        .unwrap_or_default();
    // Grams over molar mass times protons; molar masses from atomic weights.
    1000.0
        * (acids.citric / 192.12 * 3.0
            + acids.malic / 134.09 * 2.0
            + acids.quinic / 192.17
            + acids.tartaric / 150.09 * 2.0
            + acids.lactic / 90.08
            + acids.acetic / 60.05
            + acids.oxalic / 90.03 * 2.0
            + acids.succinic / 118.09 * 2.0
            + acids.gluconic / 196.16
            + acids.aconitic / 174.11 * 3.0
            + acids.chlorogenic / 354.31
            + acids.phosphoric / 98.0 * 2.0)
}

#[test]
fn juices_and_vinegars_hold_the_acid_that_is_titrated_in_them() {
    let mut seen = 0;
    for ingredient in all() {
        let Some(acidity) = ingredient.acidity else {
            continue;
        };
        let sour = matches!(ingredient.group, Group::Juice | Group::Acid)
            && (acidity.key.ends_with("_juice") || acidity.key.starts_with("vinegar"));
        if !sour || acidity.key == "vinegar_balsamic" {
            continue;
        }
        let Some(Titratable {
            acid, low, high, ..
        }) = acidity.titratable
        else {
            panic!(
                "{}: no titratable acidity to hold it against",
                ingredient.key
            );
        };
        let grams_per_equivalent = match acid {
            "citric" => 64.04,
            "malic" => 67.05,
            "tartaric" => 75.05,
            "acetic" => 60.05,
            other => panic!("{other} is not the acid of a juice"),
        };
        // Total acid is above titratable: potassium holds a tenth to a third of it.
        let total = total_acid_equivalents(ingredient) / 1000.0 * grams_per_equivalent;
        assert!(
            (0.95 * low..=1.5 * high).contains(&total),
            "{}: {total:.2} g as {acid}, published {low} to {high}",
            ingredient.key
        );
        seen += 1;
    }
    assert!(seen >= 15, "only {seen} juices and vinegars");
}

#[test]
fn leaveners_keep_the_law_and_their_balance() {
    // Carbon dioxide in the bicarbonates, by molar mass: 44.01 / 84.01, / 100.12, / 79.06.
    let gas = |key: &str| {
        let leavening = ingredient(key)
            .leavening
            .unwrap_or_else(|| panic!("{key}: no leavening row"));
        let (bicarbonate, grams) = leavening.bicarbonate.expect("a bicarbonate");
        grams
            * match bicarbonate {
                Bicarbonate::Sodium => 0.5239,
                Bicarbonate::Potassium => 0.4396,
                Bicarbonate::Ammonium => 0.5567,
            }
    };
    for powder in all()
        .iter()
        .filter(|row| row.key.starts_with("baking_powder"))
    {
        // Canada, B.03.002: at least 10 % carbon dioxide; the long-standing US figure is 12 %.
        let least = if powder.key == "baking_powder_low_sodium" {
            10.0
        } else {
            12.0
        };
        assert!(gas(powder.key) >= least, "{}", powder.key);
        // A powder is mixed so that acid and soda are even, within a tenth.
        let leavening = powder.leavening.expect("checked above");
        let as_sodium = gas(powder.key) / 0.5239;
        let ratio = leavening.neutralised.1 / as_sodium;
        assert!(
            (0.95..1.12).contains(&ratio),
            "{}: acid for {ratio:.2} of its soda",
            powder.key
        );
    }
    // 21 CFR 137.180: at least 0.5 %; UK Bread and Flour Regulations 1998: at least 0.4 %.
    assert!(gas("self_raising_flour_us") >= 0.5);
    assert!(gas("self_raising_flour_uk") >= 0.4);
    // One proton a molecule: 84.01 / 188.18 g of soda a gram.
    let tartar = ingredient("cream_of_tartar").leavening.expect("a row");
    assert!((tartar.neutralised.1 - 100.0 * 84.01 / 188.18).abs() < 0.1);
    assert_eq!(
        ingredient("baking_soda")
            .leavening
            .expect("a row")
            .bicarbonate,
        Some((Bicarbonate::Sodium, 100.0))
    );
    // Soda in US self-rising flour, from the sodium that SR28 gives: 1193 mg with 2.1 % salt.
    let (_, soda) = ingredient("self_raising_flour_us")
        .leavening
        .expect("a row")
        .bicarbonate
        .expect("soda");
    let sodium = soda * 273.7 + 2.1 * 393.4;
    assert!((sodium - 1193.0).abs() < 25.0, "{sodium:.0} mg");
}

/// Stoichiometry by hand: protons of a molecule times 84.007 g/mol of soda, against its molar mass.
#[test]
fn leavening_acids_take_up_what_their_protons_say() {
    let acids = leavening_acid::all();
    assert_eq!(acids.len(), 19);
    assert!(acids.windows(2).all(|pair| pair[0].key < pair[1].key));
    let acid = |key: &str| {
        leavening_acid::by_key(key).unwrap_or_else(|| panic!("no leavening acid {key}"))
    };
    for acid in acids {
        assert_sourced(&acid.value_cited, acid.key);
        assert_sourced(&acid.rate_cited, acid.key);
        let (low, typical, high) = acid.neutralising_value;
        assert!(low <= typical && typical <= high, "{}", acid.key);
        let gas = acid.gas;
        assert_eq!(gas.mixing + gas.bench + gas.oven, 100.0, "{}", acid.key);
        assert!(acid.active.0 < acid.active.1, "{}", acid.key);
    }
    for (key, protons) in [
        ("cream_of_tartar", 1.0),
        ("tartaric_acid", 2.0),
        ("citric_acid", 3.0),
        ("citric_acid_monohydrate", 3.0),
        ("malic_acid", 2.0),
        ("fumaric_acid", 2.0),
        ("adipic_acid", 2.0),
        ("glucono_delta_lactone", 1.0),
        ("sodium_aluminium_sulphate", 3.0),
    ] {
        let (low, _, high) = acid(key).neutralising_value;
        let value = protons * 84.007 / acid(key).molar_mass * 100.0;
        assert!(
            (low - 0.3..=high + 0.3).contains(&value),
            "{key}: {value:.1} g of soda for 100 g, not {low} to {high}"
        );
    }
    // Metals by formula, mg/g: Na 22.990, K 39.098, Al 26.982 g/mol.
    for (key, sodium, potassium, aluminium) in [
        ("pyrophosphate_10", 2.0, 0.0, 0.0),
        ("pyrophosphate_28", 2.0, 0.0, 0.0),
        ("pyrophosphate_40", 2.0, 0.0, 0.0),
        ("sodium_aluminium_sulphate", 1.0, 0.0, 1.0),
        ("sodium_aluminium_phosphate", 1.0, 0.0, 3.0),
        ("cream_of_tartar", 0.0, 1.0, 0.0),
        ("monocalcium_phosphate", 0.0, 0.0, 0.0),
    ] {
        let acid = acid(key);
        for (ours, atoms, mass) in [
            (acid.sodium, sodium, 22.990),
            (acid.potassium, potassium, 39.098),
            (acid.aluminium, aluminium, 26.982),
        ] {
            let theirs = atoms * mass / acid.molar_mass * 1000.0;
            assert!((ours - theirs).abs() < 0.6, "{key}: {ours} for {theirs:.1}");
        }
    }
    // What follows a curve is what the curves were worked out for.
    for acid in acids {
        let expected = match acid.key {
            "monocalcium_phosphate" | "monocalcium_phosphate_coated" => Uptake::CalciumPhosphate,
            key if key.starts_with("pyrophosphate") => Uptake::Pyrophosphate,
            _ => Uptake::Value,
        };
        assert_eq!(acid.uptake, expected, "{}", acid.key);
    }
}

/// Shares of the acids times their neutralising values, against the soda that the row says they use up.
#[test]
fn leaveners_neutralise_what_their_acids_do() {
    let mut seen = 0;
    for ingredient in all() {
        let Some(leavening) = ingredient.leavening else {
            continue;
        };
        let (low, typical, high) = leavening.neutralised;
        assert_eq!(leavening.acids.is_empty(), typical == 0.0);
        if leavening.acids.is_empty() {
            assert_eq!(leavening.acids_in_words(), "", "{}", ingredient.key);
            continue;
        }
        let shares: f64 = leavening.acids.iter().map(|(_, share)| share).sum();
        assert!(shares <= 100.0, "{}", ingredient.key);
        let values = leavening.acids.iter();
        let sum: f64 = values
            .map(|(acid, share)| acid.neutralising_value.1 * share / 100.0)
            .sum();
        assert!(
            (low - 1e-9..=high + 1e-9).contains(&sum),
            "{}: its acids take up {sum:.2} g, not {low} to {high}",
            ingredient.key
        );
        // The typical figure stands close by: 45 and 44.6 of cream of tartar are farthest apart.
        assert!((sum / typical - 1.0).abs() < 0.01, "{}", ingredient.key);
        seen += 1;
    }
    assert!(seen >= 20, "only {seen} leaveners with acid");
    let sodium = |key: &str| {
        let row = ingredient(key);
        let leavening = row.leavening.expect("a row");
        let soda = leavening.bicarbonate.map_or(0.0, |(_, grams)| grams);
        let acids = leavening.acids.iter();
        let acids: f64 = acids.map(|(acid, share)| acid.sodium * share).sum();
        let ours = row.composition.sodium.expect("sodium").to_percent() * 1000.0;
        (ours, soda * 273.7 + acids)
    };
    // Sodium of the whole from soda and acids, mg in 100 g, where no source gives the powder's own otherwise.
    for key in [
        "baking_powder_aluminium",
        "baking_powder_aluminium_phosphate",
        "baking_powder_blend",
        "baking_powder_phosphate",
        "baking_powder_phosphate_single",
        "baking_powder_pyrophosphate",
        "baking_powder_tartrate",
        "sodium_acid_pyrophosphate",
        "sodium_aluminium_phosphate",
    ] {
        let (ours, parts) = sodium(key);
        assert!(
            (ours / parts - 1.0).abs() < 0.01,
            "{key}: {ours} for {parts:.0} mg"
        );
    }
}

#[test]
fn allergens_and_plant_origin_agree() {
    use batterwright::baking::ingredient::Allergen;
    for ingredient in all() {
        let animal = ingredient
            .allergens
            .iter()
            .any(|a| matches!(a, Allergen::Milk | Allergen::Egg));
        assert!(
            !(animal && ingredient.plant_based == Some(true)),
            "{}",
            ingredient.key
        );
    }
    for (key, allergen) in [
        ("plain_flour", Allergen::Wheat),
        ("spelt_flour", Allergen::Wheat),
        ("rye_flour", Allergen::Gluten),
        ("oats", Allergen::Gluten),
        ("butter", Allergen::Milk),
        ("egg_white", Allergen::Egg),
        ("soy_milk", Allergen::Soya),
        ("almond_flour", Allergen::TreeNuts),
        ("marzipan", Allergen::TreeNuts),
        ("peanut_butter", Allergen::Peanut),
        ("tahini", Allergen::Sesame),
        ("mayonnaise", Allergen::Mustard),
    ] {
        assert!(
            ingredient(key).allergens.contains(&allergen),
            "{key} lacks {allergen:?}"
        );
    }
    for key in ["butter", "egg", "honey", "gelatine", "milk_chocolate"] {
        assert_eq!(ingredient(key).plant_based, Some(false), "{key}");
    }
    for key in [
        "plain_flour",
        "sugar",
        "vegan_butter",
        "oat_milk",
        "aquafaba",
        "baking_powder",
    ] {
        assert_eq!(ingredient(key).plant_based, Some(true), "{key}");
    }
}

/// Each law's list, typed by hand: 21 USC 321(qq) with 21 CFR 101.100(a)(4); Regulation 1169/2011, annex II; Food Standards
/// Code, schedule 9; Food and Drug Regulations B.01.010.1. All from memory.
#[test]
fn each_law_names_its_own_allergens() {
    use batterwright::baking::ingredient::{Allergen, Law};
    let us = "wheat, milk, eggs, soybeans, tree nuts, peanuts, sesame, sulfites, fish, crustacean shellfish";
    let eu_uk = "cereals containing gluten, milk, eggs, soybeans, nuts, peanuts, sesame seeds, \
                 sulphur dioxide and sulphites, mustard, lupin, celery, fish, crustaceans, molluscs";
    let au_nz = "wheat, gluten, milk, egg, soy, tree nuts, pine nut, peanut, sesame, sulphites, lupin, fish, \
                 crustacean, mollusc";
    let ca = "wheat, gluten, milk, eggs, soy, tree nuts, peanuts, sesame, sulphites, mustard, fish, crustaceans, molluscs";
    for (region, law, list) in [
        (Region::Us, Law::Us, us),
        (Region::Uk, Law::EuUk, eu_uk),
        (Region::Au, Law::AuNz, au_nz),
        (Region::Nz, Law::AuNz, au_nz),
        (Region::Ca, Law::Ca, ca),
    ] {
        assert_eq!(Law::of(region), law);
        let mut named: Vec<&str> = Allergen::ALL
            .into_iter()
            .filter_map(|allergen| allergen.named_by(law))
            .flat_map(|words| words.split(", "))
            .collect();
        let mut once = std::collections::HashSet::new();
        named.retain(|word| once.insert(*word));
        assert_eq!(named.join(", "), list, "{}", law.words());
        assert!(law.source().is_some(), "{} has no source", law.words());
    }
    // What one law asks for and another doesn't.
    assert_eq!(Allergen::Lupin.named_by(Law::Us), None);
    assert_eq!(Allergen::Gluten.named_by(Law::Us), None);
    assert_eq!(Allergen::PineNuts.named_by(Law::EuUk), None);
    assert_eq!(Allergen::Mustard.named_by(Law::AuNz), None);
    assert_eq!(Allergen::Celery.named_by(Law::Ca), None);
}

#[test]
fn allergens_stand_in_the_rows_that_bring_them() {
    use batterwright::baking::ingredient::Allergen::{self, *};
    let holds: [(&str, &[Allergen]); 14] = [
        ("oats", &[Gluten]),
        ("rye_flour", &[Gluten]),
        ("marzipan", &[TreeNuts]),
        ("pine_nuts", &[PineNuts]),
        ("malted_milk_powder", &[Wheat, Gluten, Milk]),
        ("soy_lecithin", &[Soya]),
        ("soy_protein_isolate", &[Soya]),
        ("royal_icing_sugar", &[Egg]),
        ("suet", &[Wheat]),
        ("wheat_starch", &[Wheat]),
        ("dried_apricots", &[Sulphites]),
        // None of the four laws counts these among nuts.
        ("coconut_milk", &[]),
        ("chestnuts", &[]),
        ("tigernut_flour", &[]),
    ];
    for (key, allergens) in holds {
        assert_eq!(ingredient(key).allergens, allergens, "{key}");
    }
}

/// Every household measure that USDA gives for an ingredient of ours, cups, spoons and pieces: it lies within the spread
/// that we state, or the table says why not. `cargo test usda -- --nocapture` prints them side by side.
#[test]
fn every_household_measure_of_usda_lies_within_our_spread_or_has_a_reason() {
    let (mut seen, mut excused) = (0, 0);
    let mut faults = Vec::new();
    println!("ingredient | USDA words | USDA g | ours g | deviation");
    for line in include_str!("tables/usda_measures.tsv").lines() {
        if line.starts_with('#') {
            continue;
        }
        let cells: Vec<&str> = line.split('\t').collect();
        let [
            key,
            row,
            words,
            grams,
            measure,
            count,
            form,
            how,
            size,
            reason,
        ] = cells[..]
        else {
            panic!("not ten cells: {line}");
        };
        let count: f64 = count.parse().expect("a number of measures");
        let theirs: f64 = grams.parse().expect("grams");
        let ours = household(key, measure, form, how, size);
        let Some((low, mean, high)) = ours.map(|(a, b, c)| (a * count, b * count, c * count))
        else {
            faults.push(format!("{key}, {words}: no row for it"));
            continue;
        };
        // The release rounds to whole grams or tenths.
        let rounding = if grams.contains('.') { 0.05 } else { 0.5 };
        let within = (low - rounding..=high + rounding).contains(&theirs);
        println!(
            "{key} | {words} | {theirs} | {mean:.1} ({low:.1} to {high:.1}) | {:+.1} %{}",
            100.0 * (mean / theirs - 1.0),
            if within { "" } else { " | " }.to_owned() + reason
        );
        match (within, reason.is_empty()) {
            (false, true) => faults.push(format!(
                "{key}, SR28 {row}, {words}: {theirs} g is not in {low:.1} to {high:.1} g"
            )),
            (true, false) => faults.push(format!("{key}, {words}: needs no reason")),
            (false, false) => excused += 1,
            (true, true) => {}
        }
        seen += 1;
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(
        seen > 650 && excused < 20,
        "{seen} measures, {excused} excused"
    );
}

/// Low, typical and high grams of one measure or piece, in the form named: its own row before another spoon's, a spoon's
/// before the cup's.
fn household(
    key: &str,
    measure: &str,
    form: &str,
    how: &str,
    size: &str,
) -> Option<(f64, f64, f64)> {
    // The words of the tables are those that a kept recipe uses.
    fn word<T: serde::de::DeserializeOwned>(word: &str) -> Option<T> {
        serde_json::from_value(serde_json::Value::String(word.to_owned())).ok()
    }
    let food = ingredient(key);
    let wanted = match measure {
        "cup" => SpoonOrCup::Cup,
        "tablespoon" => SpoonOrCup::Tablespoon,
        "teaspoon" => SpoonOrCup::Teaspoon,
        piece => {
            let piece: Option<Piece> = word(piece);
            let size: Option<PieceSize> = word(size);
            // The release is of US pieces.
            let of = |region| {
                let mut rows = food.pieces.iter();
                rows.find(|row| {
                    Some(row.piece) == piece && row.size == size && row.region == region
                })
            };
            let row = of(Some(Region::Us)).or_else(|| of(None))?;
            let w = &row.weight;
            return Some((w.low.to_grams(), w.mean.to_grams(), w.high.to_grams()));
        }
    };
    let (form, how): (Option<Form>, Option<Filling>) = (word(form), word(how));
    let is_spoon = |measure: SpoonOrCup| measure != SpoonOrCup::Cup;
    let rows = food
        .fillings
        .iter()
        .filter(|row| row.form == form && row.filling == how);
    let row = rows.max_by_key(|row| {
        (
            row.measure == wanted,
            is_spoon(row.measure) == is_spoon(wanted),
        )
    })?;
    let scale = volume(wanted) / volume(row.measure);
    let w = &row.weight;
    Some((
        w.low.to_grams() * scale,
        w.mean.to_grams() * scale,
        w.high.to_grams() * scale,
    ))
}

/// What other sources say stands beside what is in use: the things of the measuring trials each have another figure.
#[test]
fn sources_that_disagree_are_kept() {
    let (mut seen, mut apart) = (0, 0);
    for ingredient in all() {
        let key = ingredient.key;
        for other in &ingredient.others {
            assert_sourced(&other.cited, key);
            let w = &other.weight;
            assert!(
                Mass::ZERO < w.low && w.low <= w.mean && w.mean <= w.high,
                "{key}"
            );
            let grams = w.mean.to_grams();
            // Beyond half and twice it would be another thing; a syrup as light as water and a fluffed powder are kept to be seen.
            let cup = grams / volume(other.measure);
            let plain = ingredient.fillings.iter().find(|row| row.form.is_none());
            let ours = plain.map(|row| row.weight.mean.to_grams() / volume(row.measure));
            assert!(
                ours.is_none_or(|ours| (0.5..2.0).contains(&(cup / ours))),
                "{key}: {grams} g"
            );
            let same = filling(ingredient, other.measure, other.form, other.filling);
            apart +=
                usize::from(same.is_some_and(|(_, mean, _)| (grams / mean - 1.0).abs() > 0.05));
            seen += 1;
        }
    }
    assert!(seen > 200 && apart > 80, "{seen} figures, {apart} apart");
    for key in [
        "plain_flour",
        "cake_flour",
        "bread_flour",
        "whole_wheat_flour",
        "self_raising_flour_us",
        "rye_flour_dark",
        "rye_flour_light",
        "barley_flour",
        "corn_flour",
        "cornmeal",
        "almond_flour",
        "rice_flour",
        "tapioca_starch",
        "potato_starch",
        "corn_starch",
        "sugar",
        "caster_sugar",
        "light_brown_sugar",
        "icing_sugar",
        "cocoa_natural",
        "oats",
        "butter",
        "margarine",
        "shortening",
        "vegetable_oil",
        "molasses",
        "honey",
        "maple_syrup",
        "milk",
        "buttermilk",
        "water",
        "yogurt",
        "sour_cream",
        "banana",
        "apple_sauce",
        "pumpkin_puree",
        "semisweet_chocolate",
        "walnuts",
        "raisins",
        "coconut_shredded_sweet",
        "baking_powder",
        "baking_soda",
        "salt",
        "salt_flake",
        "vanilla_extract",
        "xanthan_gum",
        "instant_yeast",
    ] {
        assert!(
            !ingredient(key).others.is_empty(),
            "{key} has one source only"
        );
    }
    // Flour bag labels: 30 g a quarter cup (21 CFR 101.9); HERR 41: 126 g spooned; trials of 2011 and 2013: 142 g dipped.
    let mut cups: Vec<f64> = ingredient("plain_flour")
        .others
        .iter()
        .map(|other| other.weight.mean.to_grams())
        .collect();
    cups.sort_by(f64::total_cmp);
    for grams in [120.0, 126.0, 142.0] {
        assert!(cups.contains(&grams), "{grams} is not among {cups:?}");
    }
}
