//! What foods take up against what was titrated.

use super::bowls::{known, number, rows};
use batterwright::baking::chemistry::Curve;
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
