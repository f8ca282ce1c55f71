//! What another program shares with the page.

use batterwright::baking::carry::{Shared, link, shared};
use batterwright::baking::worksheet::Inputs;

fn text(title: &str, text: &str, address: &str) -> Option<String> {
    match shared(title, text, address)? {
        Ok(Shared::Text(text)) => Some(text),
        other => panic!("{other:?}"),
    }
}

#[test]
fn title_text_and_address_are_put_together_once() {
    let plum = "Plum cake\n2 eggs";
    assert_eq!(text("Plum cake", plum, "").as_deref(), Some(plum));
    assert_eq!(
        text("From a friend", plum, "https://example.org/plum").as_deref(),
        Some("From a friend\nPlum cake\n2 eggs\nhttps://example.org/plum")
    );
    assert_eq!(
        text("", "", " https://example.org ").as_deref(),
        Some("https://example.org")
    );
    assert_eq!(text(" ", "\n", ""), None);
    // Whatever it holds is text.
    let markup = "<img src=x onerror=alert(1)>";
    assert_eq!(text("", markup, "").as_deref(), Some(markup));
}

#[test]
fn a_link_of_ours_is_opened_as_the_recipe_it_holds() {
    let inputs = Inputs::of_text("Plum cake\n2 eggs");
    let link = link::write(&inputs).expect("a short recipe").text;
    let message = format!("Try this: https://example.org/app/#/given/{link} !");
    assert_eq!(
        shared("", &message, ""),
        Some(Ok(Shared::Recipe(Box::new(inputs))))
    );
    let cut = format!("https://example.org/app/#/given/{}", &link[..12]);
    assert!(matches!(shared("", "", &cut), Some(Err(said)) if said.contains("its end is missing")));
}

#[test]
fn what_is_too_long_is_refused() {
    assert!(text("", &"a".repeat(200_000), "").is_some());
    assert!(
        matches!(shared("b", &"a".repeat(200_000), ""), Some(Err(said)) if said.contains("201 kB long, and 200 kB is the most"))
    );
}
