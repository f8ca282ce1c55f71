//! Keeping: the list of the shelf, the room that is left, the bin's days, and two windows at one record.

use batterwright::baking::ingredient::Region;
use batterwright::baking::ingredient::own::{Meaning, OwnEntry, OwnRecord};
use batterwright::baking::quantity::show;
use batterwright::baking::saved::{
    BinRecord, HEAD, KeptRecipe, Listed, ListedVersion, Merge, Room, ShelfIndex, VersionOf,
    first_words, from_text, mark, to_text,
};
use batterwright::baking::worksheet::{Inputs, LengthUnit, Settings};

const DAY: u64 = 86_400_000;

fn recipe(changed: u64, text: &str) -> KeptRecipe {
    KeptRecipe {
        changed,
        inputs: Inputs::of_text(text),
        version: None,
    }
}

#[test]
fn a_shelf_shows_a_recipe_by_its_title_and_what_it_is_a_version_of() {
    let plain = Listed::of("a", 7, &recipe(12, "\n  Plum\tcake \u{1f370}\n1 egg"));
    assert_eq!(plain.title, "Plum cake \u{1f370}");
    assert_eq!(plain.called(), "Plum cake \u{1f370}");
    assert_eq!((plain.id.as_str(), plain.mark, plain.changed), ("a", 7, 12));
    let version = KeptRecipe {
        version: Some(VersionOf {
            name: " ".into(),
            of: "a".into(),
            original: Inputs::of_text("Plum cake"),
        }),
        ..recipe(13, "Pear cake")
    };
    let version = Listed::of("b", 8, &version);
    assert_eq!(version.called(), "Pear cake, Unnamed version");
    let of = version.version.expect("it is one");
    assert_eq!((of.of.as_str(), of.from.as_str()), ("a", "Plum cake"));
    // However long a name is, a line of it is shown.
    let long = "n".repeat(100_000);
    assert_eq!(first_words(&long), "n".repeat(80));
    assert_eq!(first_words(" \n\t"), "Blank recipe");
}

#[test]
fn the_list_of_the_shelf_loads_as_it_was_written() {
    let entries = vec![
        Listed::of(
            "a",
            4_294_967_295,
            &recipe(1_764_057_600_000, "\"Plum\" \\ cake"),
        ),
        Listed {
            id: "b".into(),
            version: Some(ListedVersion {
                name: "the sweet one".into(),
                of: "a".into(),
                from: String::new(),
            }),
            ..Listed::of("b", 0, &recipe(0, ""))
        },
    ];
    let index = ShelfIndex { entries };
    let text = to_text(&index).expect("a list");
    assert_eq!(from_text::<ShelfIndex>(&text), Ok(index));
}

/// What does not fit into a line is left out, so that its record is looked at again.
#[test]
fn a_list_is_never_the_truth() {
    let odd = Listed::of("line\nfeed", 1, &recipe(1, "Cake"));
    let even = Listed::of("a", 1, &recipe(1, "Cake"));
    let index = ShelfIndex {
        entries: vec![odd, even.clone()],
    };
    let text = to_text(&index).expect("a list");
    let entries = from_text::<ShelfIndex>(&text).map(|index| index.entries);
    assert_eq!(entries, Ok(vec![even.clone()]));

    let body = r#"{"text":"a\t1\t1\tCake\nb\tmany\t1\tCake\nc\t1"}"#;
    let text = format!(r#"{{"format":"batterwright shelf","version":1,"body":{body}}}"#);
    let entries = from_text::<ShelfIndex>(&text).map(|index| index.entries);
    assert_eq!(entries, Ok(vec![even]));
    for body in ["7", "[]", r#"{"text":7}"#, "{}"] {
        let text = format!(r#"{{"format":"batterwright shelf","version":1,"body":{body}}}"#);
        assert!(from_text::<ShelfIndex>(&text).is_err(), "{body}");
    }
}

/// The head of a record holds when it was changed; the mark also tells one that was cut off.
#[test]
fn a_mark_tells_one_state_of_a_record_from_another() {
    let of = |text: &str| {
        let head: String = text.chars().take(HEAD as usize).collect();
        mark(&head, text.len() as u32)
    };
    let now = 1_764_057_600_000;
    let text = to_text(&recipe(now, "Plum cake, 2 cups flour")).expect("a record");
    let later = to_text(&recipe(now + 1, "Pear cake, 3 cups flour")).expect("a record");
    assert_eq!(of(&text), of(&text.clone()));
    assert_eq!(text.len(), later.len());
    assert_ne!(of(&text), of(&later));
    assert_ne!(of(&text), of(&text[..text.len() - 1]));
}

/// By hand, of 5 * 1,048,576 = 5,242,880 letters.
#[test]
fn the_room_that_is_left_is_told_in_recipes() {
    // 4,242,880 are left, in recipes of 1,000 letters 4,242; 1,000,000 of 5,242,880 is 19.07 %.
    let room = Room {
        recipes: 900,
        of_recipes: 900_000,
        of_bin: 60_000,
        of_rest: 40_000,
        ..Room::default()
    };
    assert_eq!(room.more_recipes(), 4242);
    let said = "19 % used. There is room for about 4,200 more recipes like yours.";
    assert_eq!(room.sentence(), said);
    assert!(!room.is_short());
    let others = Room {
        of_others: 4_000_000,
        ..room
    };
    // 242,880 are left.
    assert_eq!(others.more_recipes(), 242);
    assert!(
        others
            .parts()
            .iter()
            .any(|(_, said)| said == "4,000,000 letters")
    );
    // Bakes take room, and tell nothing of how long a recipe is: 142,880 are left.
    let bakes = Room {
        of_trials: 100_000,
        ..others
    };
    assert_eq!(bakes.more_recipes(), 142);
    let trials = ("Trials", "100,000 letters".to_owned());
    assert!(bakes.parts().contains(&trials));
}

#[test]
fn a_shelf_of_few_recipes_reckons_with_usual_ones() {
    // 5,242,880 / 1,500 is 3,495.
    let said = "Less than 1 % used. There is room for about 3,400 more recipes of usual length.";
    assert_eq!(Room::default().sentence(), said);
    // One short recipe tells nothing: 9,100 letters are left, and 9,100 / 1,500 is 6.07.
    let one = Room {
        recipes: 1,
        of_recipes: 100,
        of_others: 5_242_880 - 100 - 9_100,
        ..Room::default()
    };
    assert_eq!(one.more_recipes(), 6);
}

/// The limit is what was refused, where that is less than usual and was not reached since.
#[test]
fn what_a_browser_refuses_puts_its_limit_right() {
    let room = |used: usize, refused: usize| Room {
        recipes: 100,
        of_recipes: used,
        refused: Some(refused),
        ..Room::default()
    };
    assert_eq!(room(1_000_000, 2_500_000).limit(), 2_500_000);
    assert!(room(1_000_000, 2_500_000).how().contains("2,500,000"));
    assert_eq!(room(3_000_000, 2_500_000).limit(), 5_242_880);
    assert_eq!(room(5_000_000, 5_300_000).limit(), 5_242_880);
    let beyond = room(6_000_000, 5_300_000);
    assert_eq!(beyond.limit(), 6_000_000);
    let said = "100 % used. There is no room for another recipe.";
    assert_eq!(beyond.sentence(), said);
}

/// Ten recipes of 10,000 letters each: with room for 24 it is said, with room for 25 not yet.
#[test]
fn room_is_called_short_while_there_is_some() {
    let with = |more: usize| Room {
        recipes: 10,
        of_recipes: 100_000,
        of_others: 5_242_880 - 100_000 - more * 10_000,
        ..Room::default()
    };
    assert!(with(24).is_short() && !with(25).is_short());
    assert!(
        with(1)
            .sentence()
            .ends_with("about one more recipe like yours.")
    );
}

#[test]
fn counts_and_shares_never_promise_too_much() {
    assert_eq!(show::count_about(99), "99");
    assert_eq!(show::count_about(199), "190");
    assert_eq!(show::count_about(12_999), "12,000");
    assert_eq!(show::fullness(0.999), "99 %");
    assert_eq!(show::fullness(0.0), "Less than 1 %");
}

#[test]
fn the_bin_tells_how_many_days_are_left() {
    let record = BinRecord {
        removed: 1_764_057_600_000,
        ..BinRecord::default()
    };
    let left = |after: u64| record.days_left(record.removed + after);
    assert_eq!((left(0), left(1), left(DAY)), (30, 30, 29));
    assert_eq!(
        (left(30 * DAY - 1), left(30 * DAY), left(99 * DAY)),
        (1, 0, 0)
    );
    // A clock that was set back.
    assert_eq!(record.days_left(0), 30);
}

/// One window changes the country, the other the pans' unit and the height; a field that both change is as we have it.
#[test]
fn settings_of_two_windows_are_brought_together_field_by_field() {
    let base = Settings {
        height: "1600 m".into(),
        ..Settings::default()
    };
    let ours = Settings {
        lengths: LengthUnit::Centimetres,
        height: String::new(),
        oven_off: "+10 C".into(),
        ..base.clone()
    };
    let theirs = Settings {
        region: Region::Uk,
        oven_off: "-25 F".into(),
        ..base.clone()
    };
    let (both, moved) = Settings::merge_changes(&base, &ours, theirs);
    let by_hand = Settings {
        region: Region::Uk,
        lengths: LengthUnit::Centimetres,
        oven_off: "+10 C".into(),
        ..Settings::default()
    };
    assert_eq!((both, moved.len()), (by_hand, 0));
}

fn named(name: &str) -> OwnEntry {
    OwnEntry {
        name: name.into(),
        ..OwnEntry::default()
    }
}

/// A larder of these ingredients, as own/1, own/2 and so on.
fn larder(names: &[&str]) -> OwnRecord {
    let mut larder = OwnRecord::default();
    for name in names {
        larder.add(named(name));
    }
    larder
}

fn names(larder: &OwnRecord) -> Vec<(&str, &str)> {
    larder
        .entries
        .iter()
        .map(|entry| (entry.key.as_str(), entry.name.as_str()))
        .collect()
}

fn rename(larder: &mut OwnRecord, key: u32, name: &str) {
    larder.numbered_mut(key).expect("an entry").name = name.into();
}

/// Each window changes one ingredient, adds one and removes one: nothing of it is lost, and what both added under one
/// number gets two.
#[test]
fn larders_of_two_windows_are_brought_together() {
    let base = larder(&["flour", "block", "drink", "syrup"]);
    let mut ours = base.clone();
    rename(&mut ours, 1, "strong flour");
    ours.entries.retain(|entry| entry.key != "own/3");
    let key = ours.add(named("our cocoa"));
    ours.teach("cacao", Meaning::Ingredient(key));
    let mut theirs = base.clone();
    rename(&mut theirs, 2, "vegan block");
    theirs.entries.retain(|entry| entry.key != "own/4");
    theirs.add(named("their cream"));
    theirs.teach("whip", Meaning::Ingredient("own/5".into()));

    let (both, moved) = OwnRecord::merge_changes(&base, &ours, theirs);
    assert_eq!(
        names(&both),
        [
            ("own/1", "strong flour"),
            ("own/2", "vegan block"),
            ("own/5", "their cream"),
            ("own/6", "our cocoa"),
        ]
    );
    assert_eq!(moved, [("own/5".to_owned(), "own/6".to_owned())]);
    let means = |words: &str| both.meaning(words, false);
    assert_eq!(means("cacao"), Some(Meaning::Ingredient("own/6".into())));
    assert_eq!(means("whip"), Some(Meaning::Ingredient("own/5".into())));
}

/// What one changed and the other removed stays; what both changed stays twice.
#[test]
fn what_one_window_changed_is_not_lost_to_the_other() {
    let base = larder(&["flour", "block", "drink"]);
    let mut ours = base.clone();
    rename(&mut ours, 1, "our flour");
    rename(&mut ours, 2, "our block");
    ours.entries.retain(|entry| entry.key != "own/3");
    let mut theirs = base.clone();
    rename(&mut theirs, 1, "their flour");
    rename(&mut theirs, 3, "their drink");
    theirs.entries.retain(|entry| entry.key != "own/2");
    let (both, _) = OwnRecord::merge_changes(&base, &ours, theirs);
    assert_eq!(
        names(&both),
        [
            ("own/1", "their flour"),
            ("own/3", "their drink"),
            ("own/4", "our flour"),
            ("own/2", "our block"),
        ]
    );
}

#[test]
fn words_taught_in_two_windows_are_all_known() {
    let mut base = OwnRecord::default();
    base.teach("plain", Meaning::Ingredient("flour".into()));
    base.teach("old", Meaning::NoIngredient);
    let mut ours = base.clone();
    ours.forget("old", false);
    ours.teach("plain", Meaning::Ingredient("butter".into()));
    let mut theirs = base.clone();
    theirs.teach("knob", Meaning::Amount("15 g".into()));
    let (both, _) = OwnRecord::merge_changes(&base, &ours, theirs);
    assert_eq!(both.meaning("old", false), None);
    let plain = Some(Meaning::Ingredient("butter".into()));
    assert_eq!(both.meaning("plain", false), plain);
    let knob = Some(Meaning::Amount("15 g".into()));
    assert_eq!(both.meaning("knob", true), knob);
    // Nothing changed here: what the other did holds as it is.
    let (same, _) = OwnRecord::merge_changes(&base, &base, both.clone());
    assert_eq!(same, both);
}
