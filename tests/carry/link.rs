//! A recipe in a link: there and back alike, short, and refused with a sentence where it is not whole.

use super::some::any_inputs;
use batterwright::baking::carry::link::{read, write};
use batterwright::baking::demo::DEMOS;
use batterwright::baking::worksheet::Inputs;
use proptest::prelude::*;

/// A recipe of 25 lines, invented.
const LOAF: &str = include_str!("lemon_loaf.txt");

fn held() -> Inputs {
    let mut inputs = Inputs::of_text("Plum cake\n\n2 cups flour \u{1f370}\n3 eggs\n");
    inputs.weigh((3, 0), Some(240.5));
    inputs.choices.made_for = "1600 m".into();
    inputs
}

/// A link made on 28 November 2026. It is to open for as long as there are links.
const HELD: &str =
    "anZZ2gKtGHixFGhgENnqBSVwJy_ANygiMiYEpeNwJUq4gG6zwYX7vBvAIFFQyANhzhed9DJXQZAVMUEq1AA";

#[test]
fn a_link_made_once_opens_for_good() {
    assert_eq!(read(HELD), Ok(held()));
}

/// Short enough for a message, with all of the method: half a thousand letters and fewer.
#[test]
fn a_recipe_of_25_lines_makes_a_short_link() {
    assert_eq!(LOAF.lines().count(), 25);
    let link = write(&Inputs::of_text(LOAF)).expect("a short recipe").text;
    assert!(link.len() <= 500, "{}", link.len());
    assert!(
        link.bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || b"-_".contains(&byte))
    );
    assert_eq!(read(&link), Ok(Inputs::of_text(LOAF)));
    for demo in DEMOS {
        let link = write(&Inputs::of_text(demo.text))
            .expect("a short recipe")
            .text;
        assert!(
            link.len() * 3 < demo.text.len() * 2,
            "{}: {}",
            demo.title,
            link.len()
        );
    }
}

/// What is said by the number of an own ingredient means another elsewhere, and stays behind; all else goes.
#[test]
fn own_ingredients_stay_behind_and_are_counted() {
    let mut inputs = Inputs::of_text("100 g plant block\n200 g flour");
    inputs.name((1, 0), Some("own/1".into()));
    inputs.weigh((1, 0), Some(90.0));
    inputs.name((2, 0), Some("own/2".into()));
    inputs.choices.swaps.missing = vec!["own/1".into(), "butter".into()];
    inputs.swap((2, 0), "water+own/1", None);
    let link = write(&inputs).expect("a short recipe");
    assert_eq!(link.left_out, 4);
    let mut by_hand = Inputs::of_text("100 g plant block\n200 g flour");
    by_hand.weigh((1, 0), Some(90.0));
    by_hand.choices.swaps.missing = vec!["butter".into()];
    assert_eq!(read(&link.text), Ok(by_hand));
}

#[test]
fn a_recipe_too_long_for_a_link_is_refused() {
    let said = "This recipe is too long for a link. Take it out as text or as a file.";
    assert_eq!(
        write(&Inputs::of_text("a".repeat(70_000))),
        Err(said.into())
    );
    // Letters of chance, which no squeezing makes shorter.
    let mut row = 1_u64;
    let mut letter = || {
        row = row.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        char::from(33 + (row >> 40) as u8 % 90)
    };
    let text: String = (0..30_000).map(|_| letter()).collect();
    assert_eq!(write(&Inputs::of_text(text)), Err(said.into()));
}

#[test]
fn each_fault_of_a_link_is_a_sentence() {
    for end in 0..HELD.len() {
        let said = read(&HELD[..end]).expect_err("it is cut off");
        // A letter less may leave bits over, which is damage; a whole group less is an end that is missing.
        assert!(
            said.contains("its end is missing") || said.contains("it is damaged"),
            "{end}: {said}"
        );
        assert!(
            end % 4 != 1 || said.contains("its end is missing"),
            "{end}: {said}"
        );
    }
    for (link, part) in [
        (
            HELD.replacen('a', "b", 1),
            "a newer version of this page made it",
        ),
        (HELD.replacen('a', "%", 1), "it is damaged"),
        (HELD.replacen('2', "3", 1), "it is damaged"),
        (HELD.replacen('g', "<", 1), "it is damaged"),
        (format!("{HELD}AAAA"), "it is damaged"),
        (
            "a".repeat(20_000),
            "it is 20000 letters long, and 16000 are the most",
        ),
    ] {
        let said = read(&link).expect_err("it is wrong");
        assert!(said.contains(part), "{said}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn there_and_back_is_the_same(inputs in any_inputs()) {
        let mut inputs = inputs;
        inputs.corrections.retain(|correction| !correction.is_empty());
        let link = write(&inputs).expect("a short recipe");
        prop_assert_eq!(link.left_out, 0);
        prop_assert_eq!(read(&link.text), Ok(inputs));
    }

    /// A damaged link never opens as another recipe. Bits behind the end of the text, within its last byte, are free.
    #[test]
    fn another_letter_opens_no_other_recipe(inputs in any_inputs(), at in any::<prop::sample::Index>(), other in "[A-Za-z0-9_-]") {
        let link = write(&inputs).expect("a short recipe").text;
        let at = at.index(link.len());
        let damaged = format!("{}{other}{}", &link[..at], &link[at + 1..]);
        prop_assert!(read(&damaged).is_ok_and(|found| read(&link) == Ok(found)) || read(&damaged).is_err(), "{damaged}");
    }
}
