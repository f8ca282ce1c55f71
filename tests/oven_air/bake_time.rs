//! Times of baking in lines of a method, read by hand.

use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::recipe::{BakeTime, BakeWords, read};

/// The times of a line that stands in a recipe's method.
fn bakes(line: &str) -> Vec<BakeTime> {
    let text = format!("Cake\nIngredients\n100 g flour\nMethod\n{line}");
    let recipe = read(&text, Larder::of(Region::Uk), &[]);
    recipe
        .lines
        .into_iter()
        .skip(4)
        .flat_map(|line| line.mentions.bakes)
        .collect()
}

/// As the table writes them.
fn written(bakes: &[BakeTime]) -> String {
    let words: Vec<String> = bakes
        .iter()
        .map(|bake| {
            let sign = match bake.words {
                BakeWords::Step => "",
                BakeWords::Further => "+",
                BakeWords::Fact => "=",
            };
            if bake.low < bake.high {
                format!("{sign}{}-{}", bake.low, bake.high)
            } else {
                format!("{sign}{}", bake.low)
            }
        })
        .collect();
    if words.is_empty() {
        "-".into()
    } else {
        words.join(" ")
    }
}

#[test]
fn lines_are_read_as_by_hand() {
    let mut faults = Vec::new();
    let mut count = 0;
    for row in include_str!("bake_time.tsv")
        .lines()
        .filter(|row| !row.starts_with('#'))
    {
        let (line, expected) = row.split_once('\t').expect("a line and its times");
        let found = written(&bakes(line));
        if found != expected {
            faults.push(format!("{line}\n    by hand {expected}, read {found}"));
        }
        count += 1;
    }
    assert!(count >= 60);
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// What no cake takes is no time of baking.
#[test]
fn absurd_times_are_left_out() {
    for line in [
        "Bake for 0 minutes.",
        "Bake for 900 hours.",
        "Bake for 99999999999999999999999 minutes.",
        "Bake for 1/0 hours.",
        "Bake for minutes.",
        "Bake for 30",
    ] {
        assert!(bakes(line).is_empty(), "{line}");
    }
}

/// Whole recipes by hand.
#[test]
fn a_recipe_bakes_as_long_as_its_steps_together() {
    let baked = |text: &str| {
        let text = format!("Cake\n{text}");
        read(&text, Larder::of(Region::Uk), &[])
            .baked()
            .map(|baked| (baked.low, baked.high, baked.lines))
    };
    let list = "Ingredients\n100 g flour\nMethod";
    let one =
        format!("Bake: 50 minutes\n{list}\nMix.\nBake for 30 to 35 minutes.\nCool for 10 minutes.");
    assert_eq!(baked(&one), Some((30.0, 35.0, vec![7])));
    let told = format!("Bake: 50 minutes\n{list}\nMix and bake.");
    assert_eq!(baked(&told), Some((50.0, 50.0, vec![2])));
    let two = format!(
        "{list}\nBake for 15 minutes.\nReduce the oven to 150C and bake for 1 hour to 1 hour 10 minutes.\nBake the rest for 20 minutes."
    );
    assert_eq!(baked(&two), Some((75.0, 85.0, vec![5, 6])));
    assert_eq!(baked(&format!("{list}\nMix and bake.")), None);
}
