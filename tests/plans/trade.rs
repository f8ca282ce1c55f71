//! Values of the trade: common practice, no source.

use super::{Region, in_region, place_of, sheet, totals, try_plan};
use batterwright::baking::finding::VerdictKind;
use batterwright::baking::worksheet::{Inputs, Judgement, SwapPlan, Worksheet};

/// A juice cake on powder alone.
fn juice_cake(juice: &str) -> Inputs {
    let text = format!(
        "Juice cake\n250 g plain flour\n200 g sugar\n240 g {juice}\n110 g butter\n100 g egg\n12 g baking powder"
    );
    in_region(&text, Region::Us)
}

fn milk_cake() -> Inputs {
    in_region(
        "Plain cake\n2 cups all-purpose flour\n1 cup sugar\n1 cup milk\n3 teaspoons baking powder\n1/2 cup butter\n2 eggs",
        Region::Us,
    )
}

fn swapped(mut inputs: Inputs, key: &str, to: &str) -> (Inputs, SwapPlan) {
    inputs.swap(place_of(&inputs, key), to, Some(100));
    let plan = try_plan(&inputs).unwrap_or_else(|why| panic!("{key} to {to}: {why}"));
    (inputs, plan)
}

fn of(inputs: &Inputs, key: &str) -> f64 {
    totals(inputs).get(key).copied().unwrap_or(0.0)
}

/// Passion-fruit or lemon juice of pH 2 to 3 in the place of orange juice of about 4: put in as it is, the crumb ends more
/// acid, short of soda and with less gas in the oven; planned, a part of the powder becomes soda.
#[test]
fn a_sour_juice_for_a_mild_one_turns_powder_into_soda() {
    for (words, key) in [
        ("passion fruit juice", "passion_fruit_juice"),
        ("lemon juice", "lemon_juice"),
    ] {
        let mild = juice_cake("orange juice");
        let (before, naive) = (sheet(&mild), sheet(&juice_cake(words)));
        let ph = |sheet: &Worksheet| sheet.leavening.rule.as_ref().expect("a crumb").crumb.mean;
        assert!(
            ph(&naive) < ph(&before) - 0.5,
            "{words}: {} to {}",
            ph(&before),
            ph(&naive)
        );
        assert_eq!(naive.leavening.verdict.kind, VerdictKind::Short, "{words}");
        // The sourer juice sets more of the gas free on the bench, so that the batter holds less as it sets.
        let gas = |sheet: &Worksheet| {
            let gas = sheet.leavening.gas.as_ref().expect("gas");
            (
                gas.early_percent,
                gas.course.last().map_or(0.0, |moment| moment.held),
            )
        };
        let (before_gas, naive_gas) = (gas(&before), gas(&naive));
        assert!(naive_gas.0 > before_gas.0 + 10.0, "{words}: {naive_gas:?}");
        assert!(naive_gas.1 < before_gas.1, "{words}: {naive_gas:?}");

        let (_, plan) = swapped(mild.clone(), "orange_juice", key);
        let (powder, soda) = (
            of(&plan.after, "baking_powder"),
            of(&plan.after, "baking_soda"),
        );
        // More than a pinch of one for a pinch of the other: the powder's gas is the soda's now.
        assert!(
            soda > 2.0 && powder < 8.0,
            "{words}: {soda} g soda, {powder} g powder"
        );
        let after = sheet(&plan.after);
        assert_ne!(after.leavening.verdict.kind, VerdictKind::Short, "{words}");
        assert!(ph(&after) > ph(&naive), "{words}");
    }
}

/// Half a teaspoon of soda, 2.3 g, answers a cup of soured milk; and four spoons of powder give the gas of one of soda.
#[test]
fn half_a_spoon_of_soda_answers_a_cup_of_soured_milk() {
    const SPOON: f64 = 4.6;
    for to in ["buttermilk", "buttermilk+baking_soda"] {
        let (before, plan) = swapped(milk_cake(), "milk", to);
        let soda = of(&plan.after, "baking_soda");
        assert!(
            (SPOON / 4.0..=SPOON * 0.75).contains(&soda),
            "{to}: {soda} g"
        );
        let powder = of(&before, "baking_powder") - of(&plan.after, "baking_powder");
        assert!(
            (2.5..=4.5).contains(&(powder / soda)),
            "{to}: {powder} g of powder for {soda} g"
        );
        assert_ne!(plan.judgement, Judgement::GivesUp, "{:?}", plan.sentences);
    }
}

/// Soda does about four times what powder does.
#[test]
fn a_spoon_of_soda_is_about_four_of_powder() {
    let sour = "Buttermilk cake\n250 g plain flour\n200 g sugar\n240 g buttermilk\n110 g butter\n100 g egg\n12 g baking powder";
    let inputs = in_region(sour, Region::Us);
    let mut chosen = inputs.clone();
    chosen.choices.swaps.nothing_new = true;
    let (_, plan) = swapped(chosen, "baking_powder", "baking_soda");
    let soda = of(&plan.after, "baking_soda");
    assert!(
        (12.0 / 4.5..=12.0 / 2.5).contains(&soda),
        "{soda} g of soda for 12 g of powder"
    );
}
