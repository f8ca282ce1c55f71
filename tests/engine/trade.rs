//! What the law asks of leaveners, what the trade's values say of acids, and what bakers have always done.

use super::bowls::{bowl_of, known, number, rows};
use batterwright::baking::chemistry::{
    CARBON_DIOXIDE_GRAMS_PER_MMOL, SODA_MMOL_PER_GRAM, bicarbonate,
};
use batterwright::baking::ingredient::leavening_acid::{self, by_key};
use batterwright::baking::quantity::Mass;

/// Carbon dioxide in the bicarbonate of so much of a leavener, g.
fn available(leavener: &str, grams: f64) -> f64 {
    let leavening = known(leavener).leavening.expect("a leavening");
    bicarbonate(leavening, Mass::grams(grams)) * CARBON_DIOXIDE_GRAMS_PER_MMOL
}

/// Every powder has the gas that is published for it, and at least what the law asks.
#[test]
fn leaveners_have_the_gas_of_law_and_trade() {
    for [leavener, lowest, published, tolerance, source, _] in
        rows::<6>(include_str!("powders.tsv"))
    {
        let found = available(leavener, 100.0);
        println!("{leavener}: {found:.2}, published {published}, at least {lowest}");
        assert!(
            (found - number(published)).abs() <= number(tolerance),
            "{leavener}: {found}, published {published} by {source}"
        );
        assert!(found >= number(lowest), "{leavener}: {found}, law {lowest}");
    }
}

/// In a batter of flour, milk and egg a powder gives nine tenths of its gas at least before the crumb has cooled; what
/// is missing stays as bicarbonate where pyrophosphate is not the acid (worked out by hand: 0.03 atm at pH 7 keeps 6
/// mmol/kg of water, a tenth of a powder's at most).
#[test]
fn a_batter_makes_the_gas_of_its_powder() {
    for powder in [
        "baking_powder",
        "baking_powder_aluminium",
        "baking_powder_phosphate",
        "baking_powder_tartrate",
        "baking_powder_phosphate_single",
    ] {
        let bowl = bowl_of(&format!("plain_flour 250; milk 180; egg 100; {powder} 10"));
        let share = bowl.gas.made.mean.to_grams() / available(powder, 10.0);
        println!("{powder}: {share:.3} of its gas in the oven");
        assert!((0.9..=1.0 + 1e-9).contains(&share), "{powder}: {share}");
    }
}

/// Neutralising value by stoichiometry: protons x 84.007 / molar mass x 100, the reaction being known. Published
/// values of the trade beside it: citric 131 (monohydrate 120), tartaric 112, malic 125, cream of tartar 44.6, adipic
/// 115, fumaric 145, lactone 47.2 (the trade takes 45), lactic syrup of 88 % 82, sodium aluminium sulphate 104.
#[test]
fn neutralising_values_come_from_the_reaction() {
    // Key, protons, part of the weight that is the acid, the trade's value.
    let acids = [
        ("citric_acid", 3.0, 1.0, 131.0),
        ("citric_acid_monohydrate", 3.0, 1.0, 120.0),
        ("tartaric_acid", 2.0, 1.0, 112.0),
        ("malic_acid", 2.0, 1.0, 125.0),
        ("cream_of_tartar", 1.0, 1.0, 44.6),
        ("adipic_acid", 2.0, 1.0, 115.0),
        ("fumaric_acid", 2.0, 1.0, 145.0),
        ("glucono_delta_lactone", 1.0, 1.0, 47.2),
        ("lactic_acid", 1.0, 0.88, 82.0),
        ("sodium_aluminium_sulphate", 3.0, 1.0, 104.0),
    ];
    for (key, protons, part, trade) in acids {
        let acid = by_key(key).unwrap_or_else(|| panic!("no leavening acid {key}"));
        let reaction = part * protons * 100_000.0 / (acid.molar_mass * SODA_MMOL_PER_GRAM);
        assert!((reaction - trade).abs() < 0.5, "{key}: {reaction}");
        let (low, _, high) = acid.neutralising_value;
        assert!(
            low - 0.5 <= reaction && reaction <= high + 0.5,
            "{key}: {reaction}"
        );
    }
    // None can give more than all of its protons; phosphates and the pyrophosphate by 3, 4 and 14 of them.
    for acid in leavening_acid::all() {
        let most = match acid.key {
            "monocalcium_phosphate" | "monocalcium_phosphate_coated" => 2.8,
            "pyrophosphate_10" | "pyrophosphate_28" | "pyrophosphate_40" => 2.0,
            "calcium_acid_pyrophosphate" => 2.0,
            "sodium_aluminium_phosphate" => 14.0,
            "dicalcium_phosphate" | "dimagnesium_phosphate" => 1.0,
            _ => 3.0,
        };
        let most = most * 100_000.0 / (acid.molar_mass * SODA_MMOL_PER_GRAM);
        assert!(acid.neutralising_value.2 <= most * 1.04, "{}", acid.key);
    }
}

/// Common practice, no source: half a teaspoon of soda (2.3 g) to a cup of soured milk, as in old cookery books one
/// teaspoon to two cups (Harland, read). The cake of flour, eggs and cultured buttermilk around it ends neither sour
/// nor soapy; so does one on milk soured with vinegar, though higher, since that holds 60 % of the acid.
#[test]
fn half_a_teaspoon_of_soda_to_a_cup_of_soured_milk() {
    for (milk, low, high) in [("buttermilk", 6.9, 7.6), ("sour_milk", 7.0, 8.0)] {
        let bowl = bowl_of(&format!(
            "plain_flour 250; {milk} 245; egg 100; butter 113; baking_soda 2.3"
        ));
        let ph = bowl.ph.mean.value();
        println!("{milk}: {ph:.2}");
        assert!((low..=high).contains(&ph), "{milk}: {ph}");
    }
}

/// Common practice, no source: soda has about four times the power of powder. By gas 3.2 to 4.
#[test]
fn soda_is_about_four_times_powder() {
    for powder in [
        "baking_powder",
        "baking_powder_aluminium",
        "baking_powder_phosphate",
        "baking_powder_pyrophosphate",
        "baking_powder_tartrate",
    ] {
        let ratio = available("baking_soda", 1.0) / available(powder, 1.0);
        assert!((3.2..=4.0).contains(&ratio), "{powder}: {ratio}");
    }
}

/// Common practice, no source: lemon juice near pH 2, orange nearer 4, whichever way one puts it: the juice alone in
/// a bowl has its own pH.
#[test]
fn a_juice_by_itself_keeps_its_own_ph() {
    for (juice, low, high) in [("lemon_juice", 2.0, 2.6), ("orange_juice", 3.5, 4.2)] {
        let ph = bowl_of(&format!("{juice} 100")).ph.mean.value();
        println!("{juice}: {ph:.2}");
        assert!((low..=high).contains(&ph), "{juice}: {ph}");
    }
}
