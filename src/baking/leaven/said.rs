//! An answer in words.

use super::shelf::{Amounts, Leavener};
use super::{Answer, Bench, Dose, GivesWay, NOTABLE, Outcome, Per};
use crate::baking::finding::Remedy;
use crate::baking::quantity::{Mass, show};

/// The answer of these amounts.
pub fn answer(
    bench: &Bench,
    before: Outcome,
    (amounts, after): (Amounts, Outcome),
    by_spoons: Option<Outcome>,
) -> Answer {
    let doses = doses(bench, &amounts);
    let edits = bench.edits(&amounts);
    let mut gives_way = gives_way(bench, &after);
    if edits.is_empty() && bench.is_judged_well() {
        gives_way.retain(|what| *what != GivesWay::Ph);
    }
    let used = listed(doses.iter().map(|dose| dose.shown.clone()));
    let mut sentences = Vec::new();
    if edits.is_empty() {
        sentences.push(match gives_way.is_empty() {
            true => "The leavening is as wished: leave it as it is.".to_owned(),
            false => "Nothing in this cupboard brings it nearer: leave it as it is.".to_owned(),
        });
    } else {
        sentences.push(match used.is_empty() {
            true => "Use no leavening.".to_owned(),
            false => format!("Use {used}."),
        });
    }
    sentences.extend(gives_way.iter().map(|what| why(bench, *what, &after)));
    if let Some(spoons) = by_spoons.filter(|_| !edits.is_empty()) {
        sentences.push(format!(
            "Measured in spoons, the crumb comes to pH {} and the gas to {} of the flour.",
            show::ph(spoons.ph.mean.value()),
            show::percent(spoons.gas.mean),
        ));
    }
    let soda = bench.shelves.iter().zip(&amounts).any(|(shelf, tenths)| {
        matches!(shelf.leavener, Leavener::Soda | Leavener::Potassium)
            && *tenths > shelf.own_tenths()
    });
    if soda {
        sentences.push(
            "Mix it in last and bake at once: soda and acid give their gas on the bench.".into(),
        );
    }
    let remedy = (!edits.is_empty()).then(|| Remedy {
        label: sentences[0].trim_end_matches('.').to_owned(),
        sentence: sentences[1..].join(" "),
        edits,
    });
    Answer {
        before,
        after,
        by_spoons,
        doses,
        remedy,
        gives_way,
        sentences,
    }
}

/// The leaveners in use before or after.
fn doses(bench: &Bench, amounts: &Amounts) -> Vec<Dose> {
    bench
        .shelves
        .iter()
        .zip(amounts)
        .filter(|(shelf, tenths)| **tenths > 0 || shelf.own() > 0.0)
        .map(|(shelf, tenths)| {
            let grams = shelf.grams(*tenths);
            let mass = show::mass(Mass::grams(grams));
            Dose {
                name: shelf.name,
                before: shelf.own(),
                grams,
                shown: match shelf.ingredient.teaspoon() {
                    _ if grams <= 0.0 => format!("no {}", shelf.name),
                    Some(teaspoon) => {
                        let spoons = show::teaspoons(grams / teaspoon);
                        format!("{mass} ({spoons}) {}", shelf.name)
                    }
                    None => format!("{mass} {}", shelf.name),
                },
            }
        })
        .collect()
}

fn gives_way(bench: &Bench, after: &Outcome) -> Vec<GivesWay> {
    let (band, gas) = (bench.wish.ph, bench.wish.gas);
    let ph = after.ph.mean.value();
    let made = after.gas.mean.to_percent();
    let too_little = made < gas.low && !bench.facts.kind.leans_on_air();
    [
        (
            ph < band.low - NOTABLE || ph > band.high + NOTABLE,
            GivesWay::Ph,
        ),
        (too_little || made > gas.high, GivesWay::Gas),
        (bench.is_salty(after), GivesWay::Sodium),
    ]
    .into_iter()
    .filter_map(|(so, what)| so.then_some(what))
    .collect()
}

fn why(bench: &Bench, what: GivesWay, after: &Outcome) -> String {
    let (band, gas) = (bench.wish.ph, bench.wish.gas);
    match what {
        GivesWay::Ph => format!(
            "The pH gives way: the nearest that this cupboard comes to is {}, where {} to {} is wished.",
            show::ph(after.ph.mean.value()),
            show::ph(band.low),
            show::ph(band.high)
        ),
        GivesWay::Gas => format!(
            "The gas gives way: the nearest that this cupboard comes to is {} of the flour, where {} to {} % is wished.",
            show::percent(after.gas.mean),
            show::plain(gas.low),
            show::plain(gas.high)
        ),
        GivesWay::Sodium => format!(
            "The sodium limit gives way: the other ingredients bring {} mg {} by themselves.",
            show::trimmed(bench.sodium_of(&[0; 4]), 0),
            match bench.wish.sodium_per {
                Per::Hundred => "in 100 g of batter",
                Per::Serving => "in each serving",
            }
        ),
    }
}

/// "a", "a and b", "a, b and c".
fn listed(items: impl Iterator<Item = String>) -> String {
    let items: Vec<String> = items.collect();
    match items.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}
