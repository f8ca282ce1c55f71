//! Laws of plans, over the demos, the recipes of the verdicts and the swaps of the table.

use super::{own, recipes, sheet, side_by_side, try_plan, weighed, weighed_out};
use batterwright::baking::ingredient::Allergen;
use batterwright::baking::ingredient::by_key;
use batterwright::baking::substitute::Without;
use batterwright::baking::substitute::swap::{Swap, swaps_from};
use batterwright::baking::worksheet::{
    Choices, Inputs, Judgement, LinePart, Settings, SwapEntry, SwapPlan, VerdictKind, Worksheet,
    swap_offers,
};

/// Findings of acid, gas and balance, by hand from the list of findings.
const OF_LIMITS: [&str; 16] = [
    "acid_outside",
    "balance_rule",
    "crumb_gummy",
    "crumb_soapy",
    "egg_beyond",
    "fat_beyond",
    "gas_excess",
    "gas_short",
    "liquid_beyond",
    "no_leavening",
    "salt_beyond",
    "sets_early",
    "sets_late",
    "soda_excess",
    "soda_short",
    "sugar_beyond",
];

fn limits(sheet: &Worksheet) -> Vec<(&'static str, String)> {
    let findings = sheet.findings.iter();
    findings
        .filter(|finding| OF_LIMITS.contains(&finding.name))
        .map(|finding| (finding.name, finding.title.to_lowercase()))
        .collect()
}

/// One swap for each line of a recipe, another of the offers from line to line.
pub fn swapped(inputs: &Inputs) -> Vec<(LinePart, Inputs)> {
    let lines = weighed(inputs).into_iter();
    lines
        .filter_map(|(place, ..)| {
            let offers = swap_offers(inputs, &Settings::default(), own(inputs), place);
            let offer = offers.get(place.0 % offers.len().max(1))?;
            let mut chosen = inputs.clone();
            chosen.swap(place, &offer.to, None);
            Some((place, chosen))
        })
        .collect()
}

#[test]
fn an_ingredient_for_itself_changes_nothing() {
    for (name, inputs) in recipes().into_iter().step_by(3) {
        for (place, key, _) in weighed(&inputs) {
            let mut chosen = inputs.clone();
            chosen.swap(place, key, Some(100));
            let Ok(plan) = try_plan(&chosen) else {
                continue;
            };
            assert!(plan.amounts.is_empty(), "{name}: {key}: {:?}", plan.amounts);
            assert_eq!(
                plan.judgement,
                Judgement::Kept,
                "{name}: {key}: {:?}",
                plan.sentences
            );
            assert_eq!(weighed(&plan.after), weighed(&inputs), "{name}: {key}");
        }
    }
}

/// Swaps that are their own inverse, where the ratio is near one: there, taken, and back again.
#[test]
fn there_and_back_is_where_it_was() {
    let (mut pairs, mut apart) = (0, Vec::new());
    for (name, inputs) in recipes() {
        let inputs = weighed_out(&inputs, 1.0);
        let before = sheet(&inputs);
        if !limits(&before).is_empty() || before.leavening.verdict.kind != VerdictKind::Agreed {
            continue;
        }
        let lines = weighed(&inputs);
        for &(place, from, _) in &lines {
            for swap in both_ways(from) {
                let to = swap.brings[0].ingredient.key;
                if lines.iter().any(|(_, key, _)| *key == to) {
                    continue;
                }
                let Some(back) = there_and_back(&inputs, place, from, to) else {
                    continue;
                };
                pairs += 1;
                for (key, was, is) in side_by_side(&inputs, &back) {
                    // What comes may lie anywhere in its range.
                    let ratio = swap.brings[0].for_a_gram;
                    let spread = match key == from {
                        true => (ratio.high / ratio.low - 1.0) / 2.0,
                        false => 0.0,
                    };
                    // Two roundings of half a step, and the hundredth below which a line stays, each way.
                    let step = if was.max(is) < 10.0 { 0.1 } else { 1.0 };
                    let near = step + (0.02 + spread) * was;
                    if (was - is).abs() > near + 1e-9 {
                        apart.push(format!("{name}: {from} to {to}: {key} {was} to {is}"));
                    }
                }
            }
        }
    }
    println!(
        "{pairs} pairs; {} apart:\n{}",
        apart.len(),
        apart.join("\n")
    );
    assert!(pairs > 100, "{pairs} pairs");
    assert!(apart.is_empty(), "{apart:#?}");
}

fn both_ways(from: &str) -> Vec<&'static Swap> {
    let Some(from) = by_key(from) else {
        return Vec::new();
    };
    let is_inverse = |swap: &&Swap| {
        let [to] = &swap.brings[..] else { return false };
        swaps_from(to.ingredient).any(|back| {
            back.is_turned != swap.is_turned
                && back.brings.len() == 1
                && back.brings[0].ingredient == from
                && swap.usual.to_percent() >= 100.0
        })
    };
    swaps_from(from).filter(is_inverse).collect()
}

fn there_and_back(inputs: &Inputs, place: LinePart, from: &str, to: &str) -> Option<Inputs> {
    let mut there = inputs.clone();
    there.swap(place, to, Some(100));
    let there = try_plan(&there).ok()?;
    if there.judgement != Judgement::Kept {
        return None;
    }
    let mut back = there.after;
    // What is read otherwise in the country's words is no matter of plans.
    let at = weighed(&back).iter().find(|(_, key, _)| *key == to)?.0;
    back.swap(at, from, Some(100));
    Some(try_plan(&back).ok()?.after)
}

#[test]
fn a_larger_cake_has_a_larger_plan() {
    let (mut plans, mut apart) = (0, Vec::new());
    for (name, inputs) in recipes().into_iter().step_by(3) {
        let inputs = weighed_out(&inputs, 1.0);
        for (place, one) in swapped(&inputs) {
            let Ok(plan) = try_plan(&one) else { continue };
            for factor in [0.5, 2.0, 10.0] {
                let mut scaled = weighed_out(&inputs, factor);
                scaled.choices.swaps = one.choices.swaps.clone();
                let scaled = try_plan(&scaled).unwrap_or_else(|why| panic!("{name}: {why}"));
                plans += 1;
                for (key, one, many) in side_by_side(&plan.after, &scaled.after) {
                    let off = (many - one * factor).abs();
                    // A step of a scale on both sides, and what stays since it would move by a hundredth at most.
                    let near = 1.0 + factor * step(one) + 0.02 * many;
                    if off > near {
                        apart.push(format!(
                            "{name}, line {}: {key} {one} times {factor} is {many}",
                            place.0
                        ));
                    }
                }
            }
        }
    }
    assert!(plans > 300, "{plans} plans");
    assert!(apart.is_empty(), "{apart:#?}");
}

fn step(grams: f64) -> f64 {
    if grams < 10.0 { 0.1 } else { 1.0 }
}

#[test]
fn what_a_plan_breaks_it_says() {
    let (mut plans, mut kept) = (0, 0);
    for (name, inputs) in recipes() {
        let before = limits(&sheet(&inputs));
        for (place, chosen) in swapped(&inputs) {
            let Ok(plan) = try_plan(&chosen) else {
                continue;
            };
            plans += 1;
            kept += usize::from(plan.judgement != Judgement::GivesUp);
            let said = plan.sentences.join(" ").to_lowercase();
            for (finding, title) in limits(&sheet(&plan.after)) {
                let was_there = before.iter().any(|(it, _)| {
                    *it == finding || (*it, finding) == ("no_leavening", "gas_short")
                });
                assert!(
                    was_there || said.contains(&title),
                    "{name}, line {}: {finding} comes and is not said: {said}",
                    place.0
                );
                assert!(
                    was_there || plan.judgement != Judgement::Kept,
                    "{name}, line {}: kept with {finding}",
                    place.0
                );
            }
            assert_sound(&name, &plan);
            assert_worth_weighing(&name, &inputs, &plan);
        }
    }
    println!("{plans} plans, {kept} of them keep the cake");
    assert!(plans > 400, "{plans} plans");
}

/// Figures that can be weighed, and a first sentence that fits the judgement.
fn assert_sound(name: &str, plan: &SwapPlan) {
    for (_, key, grams) in weighed(&plan.after) {
        assert!(grams.is_finite() && grams >= 0.0, "{name}: {key} {grams}");
    }
    let words = format!("{:?} {:?} {:?}", plan.amounts, plan.sentences, plan.swaps);
    for wrong in ["NaN", "inf ", "\"-", " -1", "  "] {
        assert!(!words.contains(wrong), "{name}: {wrong:?} in {words}");
    }
    let first = &plan.sentences[0];
    let gives_up = [
        "This makes another cake",
        "This cannot be done",
        "Limits of",
    ];
    assert_eq!(
        gives_up.iter().any(|words| first.starts_with(words)),
        plan.judgement == Judgement::GivesUp,
        "{name}: {first}"
    );
}

/// Of soda and salt a thousandth of the flour is a pinch that nobody weighs, of tartar four, of the rest a hundredth.
fn assert_worth_weighing(name: &str, inputs: &Inputs, plan: &SwapPlan) {
    let flour = sheet(inputs).balance.flour.map_or(0.0, |flour| flour.mean);
    let added = plan.amounts.iter().filter(|amount| amount.what == "added");
    if added.count() == 0 {
        return;
    }
    let comes: Vec<&str> = plan.swaps.iter().map(|swap| swap.comes.as_str()).collect();
    for (key, was, is) in side_by_side(inputs, &plan.after) {
        let least = match key {
            "baking_soda" | "salt" => 0.0015,
            "cream_of_tartar" => 0.004,
            "water" | "corn_starch" | "sunflower_oil" => 0.009,
            _ => continue,
        };
        // What the swap itself brings goes by its table.
        let name_of_it = key.replace('_', " ");
        if was == 0.0 && is > 0.0 && !comes.iter().any(|comes| comes.contains(&name_of_it)) {
            assert!(
                is >= least * flour,
                "{name}: {is} g {key} to {flour} g flour"
            );
        }
    }
}

#[test]
fn a_plan_is_the_same_twice() {
    for (name, inputs) in recipes().into_iter().step_by(6) {
        for (_, chosen) in swapped(&inputs) {
            assert_eq!(try_plan(&chosen), try_plan(&chosen), "{name}");
        }
    }
}

/// What a whole cake is to be without is not in the text that it becomes, read again.
#[test]
fn a_cake_without_has_none() {
    let none = Without::default();
    let wishes: [(&str, Without, &[Allergen]); 5] = [
        (
            "animals",
            Without {
                animals: true,
                ..none
            },
            &[Allergen::Milk, Allergen::Egg],
        ),
        (
            "gluten",
            Without {
                gluten: true,
                ..none
            },
            &[Allergen::Wheat, Allergen::Gluten],
        ),
        (
            "nuts",
            Without { nuts: true, ..none },
            &[Allergen::TreeNuts, Allergen::PineNuts, Allergen::Peanut],
        ),
        ("milk", Without { milk: true, ..none }, &[Allergen::Milk]),
        ("egg", Without { egg: true, ..none }, &[Allergen::Egg]),
    ];
    let mut plans = 0;
    for (name, inputs) in recipes() {
        for (what, without, allergens) in wishes {
            let mut chosen = inputs.clone();
            chosen.choices.swaps = SwapEntry {
                without,
                ..SwapEntry::default()
            };
            let Ok(plan) = try_plan(&chosen) else {
                continue;
            };
            plans += 1;
            let again = Inputs {
                choices: Choices {
                    region: inputs.choices.region,
                    ..Choices::default()
                },
                corrections: plan.after.corrections.clone(),
                ..Inputs::of_text(plan.after.recipe_text())
            };
            let again = sheet(&again);
            if sheet(&inputs).is_plant_based == Some(true) {
                assert_ne!(
                    again.is_plant_based,
                    Some(false),
                    "{name} without {what} was from plants:\n{}",
                    plan.after.text
                );
            }
            for note in &again.allergens {
                assert!(
                    !allergens.contains(&note.allergen),
                    "{name} without {what}: {} in lines {:?} of\n{}",
                    note.name,
                    note.lines,
                    plan.after.text
                );
            }
            if without.animals {
                assert_ne!(
                    again.is_plant_based,
                    Some(false),
                    "{name}:\n{}",
                    plan.after.text
                );
            }
        }
    }
    println!("{plans} cakes without");
    assert!(plans > 100, "{plans} plans");
}
