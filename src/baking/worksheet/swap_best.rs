//! Which of the trade's swaps a line takes where the baker asks for a whole cake without something.

use crate::baking::finding::Facts;
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Allergen, Ingredient};
use crate::baking::substitute::plan::{Wish, cost as cost_of};
use crate::baking::substitute::swap::{Brought, Suits, Swap};
use crate::baking::substitute::{Without, by_swap, choices, lacking};

/// The swap that costs the cake least among those that fit it, by the programme of each. What is to be gone goes wholly,
/// so that a swap for a part of it is none; one whose packet decides is taken only where there is no other.
pub(super) fn best(
    facts: &Facts,
    title: Option<&str>,
    line: &Weighed,
    fits: &dyn Fn(&Ingredient) -> bool,
    without: Without,
) -> Option<&'static Swap> {
    const TRIED: usize = 5;
    let place = (line.line, line.part);
    let fitting = choices(line.ingredient, facts.kind)
        .into_iter()
        .filter(|swap| swap.most.to_percent() >= 100.0)
        .filter(|swap| swap.suits(facts.kind) != Suits::NotMeant)
        .filter(|swap| !brings_animals(facts, swap))
        .filter(|swap| swap.brings.iter().all(|brought| fits(brought.ingredient)));
    let by_packet = |swap: &Swap| {
        let unsure = |brought: &Brought| brought.ingredient.plant_based.is_none();
        without.animals && swap.brings.iter().any(unsure)
    };
    let cost = |swap: &'static Swap| {
        let wish = Wish {
            changes: vec![by_swap(place, 1.0, swap)],
            ..Wish::default()
        };
        let (cost, missed) = cost_of(facts, title, &wish)?;
        let lacking = f64::from(lacking(swap, facts.kind)) * LACKING;
        let packet = if by_packet(swap) { PACKET } else { 0.0 };
        let part = if swap.usual.to_percent() < 100.0 {
            A_PART
        } else {
            0.0
        };
        Some((
            cost + lacking
                + packet
                + part
                + new_allergens(facts, swap) * ALLERGEN
                + (swap.brings.len() - 1) as f64 * ONE_MORE
                + missed as f64 * MISSED,
            swap,
        ))
    };
    fitting
        .take(TRIED)
        .filter_map(cost)
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, swap)| swap)
}

/// How many allergens a swap brings that the recipe is free of; gluten is in wheat.
fn new_allergens(facts: &Facts, swap: &Swap) -> f64 {
    let has = |wanted: Allergen| {
        let mut there = facts.formula.lines.iter();
        there.any(|line| line.ingredient.allergens.contains(&wanted))
    };
    let is_new = |allergen: &&Allergen| {
        !(has(**allergen) || **allergen == Allergen::Gluten && has(Allergen::Wheat))
    };
    let comes = swap.brings.iter().flat_map(|it| &it.ingredient.allergens);
    comes.filter(is_new).count() as f64
}

/// Whether a swap brings something from animals into a recipe that has nothing of them.
fn brings_animals(facts: &Facts, swap: &Swap) -> bool {
    let is_of_them = |it: &Ingredient| it.plant_based == Some(false);
    let mut there = facts.formula.lines.iter();
    swap.brings.iter().any(|it| is_of_them(it.ingredient))
        && !there.any(|line| is_of_them(line.ingredient))
}

/// What each of these counts for beside the cost of a plan, in grams moved (our own weighing up): a strength that an egg
/// has and its replacer lacks, a packet that decides, a swap that practice makes for a part alone, an ingredient more to
/// buy and weigh, an allergen that the recipe is free of, a limit that is missed.
const LACKING: f64 = 10.0;
const PACKET: f64 = 200.0;
const A_PART: f64 = 100.0;
const ALLERGEN: f64 = 150.0;
const ONE_MORE: f64 = 15.0;
const MISSED: f64 = 1e4;
