//! Worked examples of others: that ours understands their words, and that our ratios lie within their rounding.

use batterwright::baking::formula::{Habits, Weighed, weigh};
use batterwright::baking::ingredient::{Larder, PieceSize, Region};
use batterwright::baking::recipe::{Role, read};
use batterwright::baking::substitute::swap::{Swap, swaps_from};

const EXAMPLES: &str = include_str!("examples.tsv");

/// A row of the table.
pub struct Example {
    pub id: &'static str,
    pub region: Region,
    pub recipe: Vec<&'static str>,
    /// From 1.
    pub line: usize,
    /// A fraction.
    pub replaced: f64,
    pub to: Vec<&'static str>,
    pub gives: Vec<&'static str>,
    pub rounding: Vec<&'static str>,
    pub source: &'static str,
    pub confidence: &'static str,
    pub differs: &'static str,
    /// Why the whole plan lies elsewhere.
    pub plan_differs: &'static str,
}

pub fn examples() -> Vec<Example> {
    let mut rows = EXAMPLES.lines().filter(|row| !row.starts_with('#'));
    let header = "id\tcountry\trecipe\tline\treplaced\tto\tgives\trounding\tsource\tconfidence\tdiffers\tplan_differs";
    assert_eq!(rows.next(), Some(header));
    rows.map(example).collect()
}

fn example(row: &'static str) -> Example {
    let cells: Vec<&str> = row.split('\t').collect();
    let [
        id,
        country,
        recipe,
        line,
        replaced,
        to,
        gives,
        rounding,
        source,
        confidence,
        differs,
        plan_differs,
    ] = cells[..]
    else {
        panic!("not twelve cells: {row}");
    };
    let number = |cell: &str| -> f64 { cell.parse().unwrap_or_else(|_| panic!("{id}: {cell}")) };
    let region = match country {
        "us" => Region::Us,
        "uk" => Region::Uk,
        other => panic!("{id}: {other}"),
    };
    Example {
        id,
        region,
        recipe: recipe.split(" | ").collect(),
        line: number(line) as usize,
        replaced: number(replaced) / 100.0,
        to: to.split(' ').collect(),
        gives: gives.split(" | ").collect(),
        rounding: rounding.split(" | ").collect(),
        source,
        confidence,
        differs,
        plan_differs,
    }
}

/// Lines as the project's own reader weighs them, one ingredient each, none of them in doubt.
#[track_caller]
pub fn weighed(example: &Example, lines: &[&str]) -> Vec<Weighed> {
    let (id, region) = (example.id, example.region);
    let text = format!("Cake\n\nIngredients\n{}\n", lines.join("\n"));
    let recipe = read(&text, Larder::of(region), &[]);
    let habits = Habits {
        region,
        filling: None,
        eggs: PieceSize::Large,
    };
    let formula = weigh(&recipe, &habits);
    assert!(
        formula.unweighed.is_empty(),
        "{id}: {:?}",
        formula.unweighed
    );
    assert_eq!(formula.lines.len(), lines.len(), "{id}: {lines:?}");
    for line in &recipe.lines {
        if let Role::Ingredient(reading) = &line.role {
            assert!(reading.doubts.is_empty(), "{id}: {:?}", reading.doubts);
        }
    }
    formula.lines
}

impl Example {
    /// The line that is swapped.
    fn original(&self) -> Weighed {
        weighed(self, &self.recipe).swap_remove(self.line - 1)
    }

    /// Our swap of that ingredient for those.
    fn swap(&self) -> &'static Swap {
        let original = self.original();
        swaps_from(original.ingredient)
            .find(|swap| {
                let brings = swap.brings.iter().map(|brought| brought.ingredient.key);
                brings.eq(self.to.iter().copied())
            })
            .unwrap_or_else(|| {
                panic!(
                    "{}: no swap of {} for {:?}",
                    self.id, original.ingredient.key, self.to
                )
            })
    }
}

#[test]
fn there_are_enough_and_each_names_its_source() {
    let examples = examples();
    assert!(examples.len() >= 30, "{}", examples.len());
    assert!(examples.windows(2).all(|pair| pair[0].id < pair[1].id));
    for example in &examples {
        assert!(example.source.len() > 10, "{}", example.id);
        assert!(
            ["published", "memory"].contains(&example.confidence),
            "{}: {}",
            example.id,
            example.confidence
        );
    }
}

#[test]
fn their_words_are_understood() {
    for example in examples() {
        weighed(&example, &example.recipe);
        let given = weighed(&example, &example.gives);
        let steps = weighed(&example, &example.rounding);
        assert_eq!(given.len(), steps.len(), "{}", example.id);
        for (given, step) in given.iter().zip(&steps) {
            assert_eq!(given.ingredient, step.ingredient, "{}", example.id);
        }
        let main = given[0].ingredient.key;
        assert_eq!(main, example.to[0], "{}", example.id);
    }
}

/// Each amount that the source gives of what our swap brings: its grams, ours, and half a step of its rounding.
#[test]
fn our_ratios_lie_within_their_rounding() {
    for example in examples() {
        let (original, swap) = (example.original(), example.swap());
        let given = weighed(&example, &example.gives);
        let steps = weighed(&example, &example.rounding);
        let mut apart = Vec::new();
        for brought in &swap.brings {
            let Some(place) = given
                .iter()
                .position(|line| line.ingredient.key == brought.ingredient.key)
            else {
                continue;
            };
            let grams = original.grams.mean.to_grams() * example.replaced;
            let ours = brought.for_a_gram.mean.to_grams() * grams;
            let theirs = given[place].grams.mean.to_grams();
            let half = steps[place].grams.mean.to_grams() / 2.0;
            if (ours - theirs).abs() > half {
                apart.push(format!(
                    "{}: {ours:.2} g, theirs {theirs:.2} +- {half:.2}",
                    brought.ingredient.key
                ));
            }
        }
        assert_eq!(
            apart.is_empty(),
            example.differs.is_empty(),
            "{}: {apart:?}; said to differ: {:?}",
            example.id,
            example.differs
        );
    }
}
