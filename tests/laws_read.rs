//! Laws of reading: they hold for any text, and random text is thrown at them.

use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::recipe::{Amount, Correction, Looks, Recipe, Role, read, read_again};
use proptest::prelude::*;

/// Pieces that lines of recipes are made of, and some that they are not.
const PIECES: [&str; 64] = [
    "1",
    "2",
    "1/2",
    "½",
    "1 ½",
    "1/0",
    "1e308",
    "-",
    "–",
    "2-3",
    "1,5",
    "1,000",
    ".",
    ",",
    "(",
    ")",
    "((",
    "[",
    "]",
    "/",
    "+",
    "×",
    "x",
    "%",
    "°",
    "\"",
    "cup",
    "cups",
    "T",
    "t",
    "tbsp.",
    "g",
    "oz",
    "fl oz",
    "can",
    "sticks",
    "flour",
    "sugar",
    "eggs",
    "butter",
    "lemon",
    "juice of",
    "zest",
    "and",
    "or",
    "plus",
    "less",
    "about",
    "packed",
    "sifted",
    "chopped",
    "for the glaze:",
    "Ingredients",
    "Method",
    "\t",
    "🥚",
    "\u{202e}",
    "<b>",
    "&frac12;",
    "each",
    "of",
    "inch",
    "pan",
    "350°F",
];

/// A line of such pieces.
fn line() -> impl Strategy<Value = String> {
    prop::collection::vec(prop::sample::select(&PIECES[..]), 0..12)
        .prop_map(|pieces| pieces.join(" "))
}

/// Lines that are an ingredient beyond doubt, with the counts they hold.
fn sure_line() -> impl Strategy<Value = (String, f64)> {
    (
        1_u32..=40,
        0_usize..4,
        prop::sample::select(&["cups", "g", "tbsp", "oz", "teaspoons", "ml"][..]),
        prop::sample::select(&["sugar", "milk", "honey", "cocoa powder"][..]),
    )
        .prop_map(|(whole, part, unit, name)| {
            let (words, value) = [("", 0.0), (" 1/2", 0.5), (" ¼", 0.25), ("¾", 0.75)][part];
            (
                format!("{whole}{words} {unit} {name}"),
                f64::from(whole) + value,
            )
        })
}

/// The amounts of every ingredient line.
fn amounts(recipe: &Recipe) -> Vec<Amount> {
    recipe
        .lines
        .iter()
        .filter_map(|line| match &line.role {
            Role::Ingredient(reading) => Some(reading.amounts.clone()),
            _ => None,
        })
        .flatten()
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(600) })]

    /// Every line is kept as it was pasted, with its number, whatever it holds.
    #[test]
    fn what_was_seen_before_changes_no_reading(before in prop::collection::vec(line(), 0..8), after in prop::collection::vec(line(), 0..8)) {
        let (before, after) = (before.join("\n"), after.join("\n"));
        let mut looks = Looks::default();
        read_again(&mut looks, &before, Larder::of(Region::Us), &[]);
        prop_assert_eq!(read_again(&mut looks, &after, Larder::of(Region::Us), &[]), read(&after, Larder::of(Region::Us), &[]));
        prop_assert_eq!(read_again(&mut looks, &after, Larder::of(Region::Uk), &[]), read(&after, Larder::of(Region::Uk), &[]));
    }

    #[test]
    fn every_line_is_kept(text in any::<String>()) {
        let recipe = read(&text, Larder::of(Region::Us), &[]);
        let kept: Vec<&str> = recipe.lines.iter().map(|line| line.text.as_str()).collect();
        prop_assert_eq!(kept, text.lines().collect::<Vec<_>>());
        prop_assert!(recipe.lines.iter().enumerate().all(|(at, line)| line.number == at + 1));
    }

    /// The same for lines made of what recipes are made of; and no amount is beyond use.
    #[test]
    fn amounts_are_fit_for_use(lines in prop::collection::vec(line(), 1..8)) {
        let text = lines.join("\n");
        let recipe = read(&text, Larder::of(Region::Uk), &[]);
        prop_assert_eq!(recipe.lines.len(), text.lines().count());
        for amount in amounts(&recipe) {
            prop_assert!(amount.low.is_finite() && amount.high.is_finite(), "{:?} in {:?}", amount, text);
            prop_assert!(0.0 <= amount.low && amount.low <= amount.high, "{:?} in {:?}", amount, text);
        }
    }

    /// A blank line at the end changes nothing above it.
    #[test]
    fn a_blank_line_at_the_end_changes_nothing(lines in prop::collection::vec(line(), 1..8)) {
        let text = lines.join("\n");
        let short = read(&text, Larder::of(Region::Us), &[]);
        let long = read(&format!("{text}\n\n"), Larder::of(Region::Us), &[]);
        let count = short.lines.len();
        prop_assert_eq!(&short.lines[..], &long.lines[..count]);
        prop_assert!(long.lines[count..].iter().all(|line| line.role == Role::Blank));
    }

    /// Blanks around a line and capitals in its name change nothing of its amount.
    #[test]
    fn blanks_and_capitals_do_not_matter((line, value) in sure_line()) {
        let plain = read(&format!("Ingredients\n{line}"), Larder::of(Region::Us), &[]);
        let spaced = read(&format!("Ingredients\n   {}\u{a0} ", line.replace(' ', "  ")), Larder::of(Region::Us), &[]);
        let bulleted = read(&format!("Ingredients\n• {}", line.replace("sugar", "SUGAR").replace("milk", "Milk")), Larder::of(Region::Us), &[]);
        prop_assert_eq!(amounts(&plain).len(), 1);
        prop_assert!((amounts(&plain)[0].low - value).abs() < 1e-9, "{}", line);
        prop_assert_eq!(amounts(&plain), amounts(&spaced));
        prop_assert_eq!(amounts(&plain), amounts(&bulleted));
    }

    /// A correction touches its own line and no other.
    #[test]
    fn a_correction_touches_one_line(lines in prop::collection::vec(line(), 1..8), at in 0_usize..8, grams in any::<f64>()) {
        let text = lines.join("\n");
        let plain = read(&text, Larder::of(Region::Us), &[]);
        let at = at % plain.lines.len().max(1);
        let Some(line) = plain.lines.get(at) else { return Ok(()) };
        let words = line.text.trim().to_owned();
        let occurrence = plain.lines[..at].iter().filter(|other| other.text.trim() == words).count();
        let correction = Correction { text: words, occurrence, grams: Some(grams), ..Correction::default() };
        let mended = read(&text, Larder::of(Region::Us), &[correction]);
        for (one, two) in plain.lines.iter().zip(&mended.lines).filter(|(one, _)| one.number != at + 1) {
            prop_assert_eq!(one, two);
        }
    }
}

/// Long texts are read in time that grows with their length and no faster.
#[test]
fn ten_thousand_lines_and_one_long_line() {
    let many = "2 1/2 cups (300 g) all-purpose flour, sifted\n1 cup xyzzy zanzibarine flour\nFold everything together and bake.\n".repeat(3_400);
    let long = "1 cup flour (".repeat(8_000);
    let marks = "<&[(".repeat(25_000);
    let start = std::time::Instant::now();
    assert_eq!(read(&many, Larder::of(Region::Us), &[]).lines.len(), 10_200);
    let after_many = start.elapsed();
    assert_eq!(read(&long, Larder::of(Region::Us), &[]).lines.len(), 1);
    assert_eq!(read(&marks, Larder::of(Region::Us), &[]).lines.len(), 1);
    println!("10,200 lines: {after_many:?}; all: {:?}", start.elapsed());
    // Unoptimised builds on busy machines are slow; a reader that is not linear would take minutes.
    assert!(start.elapsed().as_secs() < 20);
}
