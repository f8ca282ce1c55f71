//! What foods take up against what was titrated.

use super::bowls::{known, number, rows};
use batterwright::baking::chemistry::Curve;
use batterwright::baking::chemistry::solution::Carbon;
use batterwright::baking::quantity::Mass;

/// What a milliequivalent in 100 g is in a row's own measure. Equivalent weights by molar mass over protons.
fn unit(of: &str) -> f64 {
    let equivalent_weight = match of {
        "meq in 100 g" => return 1.0,
        "meq in 1 kg" => return 10.0,
        "citric" => 192.123 / 3.0,
        "malic" => 134.087 / 2.0,
        "tartaric" => 150.086 / 2.0,
        "lactic" => 90.078,
        "acetic" => 60.052,
        other => panic!("no equivalent weight for {other}"),
    };
    equivalent_weight / 1000.0
}

/// Each in the published range, or named as outside it.
#[test]
fn foods_take_up_the_base_that_was_titrated() {
    let rows = rows::<8>(include_str!("titrations.tsv"));
    assert!(rows.len() >= 30);
    let mut wrong = Vec::new();
    for [food, ph, of, low, high, source, _, differs] in rows {
        let acidity = known(food).acidity.expect("an acidity");
        let curve = Curve::of_acidity(acidity, Mass::grams(100.0));
        let found = curve.at(number(ph)).to_milliequivalents() * unit(of);
        let inside = (number(low)..=number(high)).contains(&found);
        println!("{food} to {ph}: {found:.3} {of}, {low} to {high} {differs}");
        if inside != differs.is_empty() {
            wrong.push(format!(
                "{food} to {ph}: {found:.3} {of}, {low} to {high} by {source}"
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// pH of a kilogram of egg white, 0.876 kg of it water, in balance with gas of a pressure of carbon dioxide, atm.
fn egg_white_under(pressure_atm: f64, celsius: f64) -> f64 {
    let acidity = known("egg_white").acidity.expect("an acidity");
    let mut white = Curve::of_acidity(acidity, Mass::grams(1000.0)).dissolved();
    // Chloride beside sodium and potassium, mol: about 0.17 % (from memory); a pH of 0.01 or 0.02.
    white.salt = 0.04;
    white.celsius = celsius;
    white.carbon = Carbon::Open { pressure_atm };
    white.in_water(0.876).expect("water").solve().ph
}

/// An egg in air loses carbon dioxide until its white has come to pH 9.5 at most ("Acid-base relationships within the
/// avian egg", a review, read in its abstract; Belitz: 9.4 after 21 days, up to 9.7). It cannot rise further than where
/// it is in balance with the air, some 0.0004 atm. In the hen, at 41 C and some 0.08 atm (from memory), it has 7.6 to
/// 7.9, as laid.
#[test]
fn egg_white_in_air_comes_to_rest_where_it_was_measured() {
    let in_air = egg_white_under(0.0004, 20.0);
    assert!((9.4..=9.7).contains(&in_air), "{in_air}");
    let as_laid = egg_white_under(0.08, 41.0);
    assert!((7.5..=7.9).contains(&as_laid), "{as_laid}");
}

/// Of the minerals: sodium 166 mg, potassium 163, calcium 7, magnesium 11 in 100 g (USDA SR28) are 126 meq/kg; chloride
/// some 170 mg (from memory) is 48; the proteins of a white hold some 24 at pH 7 by their make-up (from memory, 18 to
/// 30). What is left is base to pH 7, however old the egg: 54 meq/kg, 40 to 65.
#[test]
fn egg_white_has_the_base_of_its_minerals() {
    let acidity = known("egg_white").acidity.expect("an acidity");
    let to_neutral = Curve::of_acidity(acidity, Mass::grams(1000.0)).at(7.0);
    let base = -to_neutral.to_milliequivalents();
    assert!((40.0..=65.0).contains(&base), "{base}");
}
