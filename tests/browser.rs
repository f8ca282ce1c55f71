//! The page in a real browser: put on the page, typed into, and read as a person reads it.
#![cfg(target_arch = "wasm32")]

use batterwright::ui::app::start_in;
use batterwright::ui::early::Early;
use js_sys::futures::JsFuture;
use js_sys::{Function, Promise};
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{Element, Event, HtmlElement, HtmlInputElement, HtmlTextAreaElement, Storage};

wasm_bindgen_test_configure!(run_in_browser);

const RECIPE: &str =
    "Test cake\n\n2 cups flour\n100 g sugar\n1 cup buttermilk\n\nBake in a 9 inch round pan.";

/// A page of its own in the test's document, with its own empty storage.
struct Page(HtmlElement);

impl Page {
    fn open(early: &str) -> Self {
        storage()
            .clear()
            .expect("the test's browser lets storage be cleared");
        Self::open_again(early)
    }

    /// The page as it opens on what is kept already.
    fn open_again(early: &str) -> Self {
        let document = web_sys::window()
            .and_then(|window| window.document())
            .expect("the test runs in a page");
        let body = document.body().expect("the test's page has a body");
        // Only the page of the test before goes; the rest belongs to the runner.
        if let Some(before) = document.get_element_by_id("place") {
            before.remove();
        }
        let place: HtmlElement = document
            .create_element("div")
            .expect("a valid name")
            .unchecked_into();
        place.set_id("place");
        body.append_child(&place)
            .expect("a new element has no parent yet");
        start_in(
            place.clone(),
            Early {
                text: early.into(),
                cursor: None,
            },
            || (),
        );
        Self(place)
    }

    #[track_caller]
    fn find(&self, selector: &str) -> Element {
        let found = self.0.query_selector(selector).expect("a valid selector");
        found.unwrap_or_else(|| panic!("nothing on the page is {selector}"))
    }

    #[track_caller]
    fn read(&self, selector: &str) -> String {
        self.find(selector)
            .unchecked_into::<HtmlElement>()
            .inner_text()
    }

    #[track_caller]
    fn touch(&self, selector: &str) {
        self.find(selector).unchecked_into::<HtmlElement>().click();
    }

    fn paste(&self, text: &str) {
        let field: HtmlTextAreaElement = self.find("#recipe-text").unchecked_into();
        field.set_value(text);
        field
            .dispatch_event(&Event::new("input").expect("a valid name"))
            .expect("a fresh event");
    }

    fn type_into(&self, selector: &str, text: &str) {
        let field: HtmlInputElement = self.find(selector).unchecked_into();
        field.set_value(text);
        field
            .dispatch_event(&Event::new("input").expect("a valid name"))
            .expect("a fresh event");
    }
}

fn storage() -> Storage {
    let window = web_sys::window().expect("the test runs in a page");
    window
        .local_storage()
        .ok()
        .flatten()
        .expect("the test's browser has storage")
}

/// Waits until the page has followed what was done to it.
async fn settled() {
    let wait = Promise::new(&mut |done: Function, _| {
        let window = web_sys::window().expect("the test runs in a page");
        window
            .set_timeout_with_callback_and_timeout_and_arguments_0(&done, 30)
            .expect("a plain timer");
    });
    JsFuture::from(wait).await.expect("a timer never fails");
}

#[wasm_bindgen_test]
async fn a_pasted_recipe_shows_its_weights() {
    let page = Page::open("");
    page.paste(RECIPE);
    settled().await;
    assert_eq!(page.read("h1"), "Test cake");
    let sugar = page.read("[id='/line/4']");
    assert!(sugar.contains("100 g"), "{sugar}");
    assert!(page.read("[id='/line/3']").contains("flour"));
}

#[wasm_bindgen_test]
async fn what_was_typed_before_the_module_came_becomes_a_recipe() {
    let page = Page::open("Early cake\n\n200 g flour");
    settled().await;
    assert_eq!(page.read("h1"), "Early cake");
    let again = Page::open_again("");
    settled().await;
    assert_eq!(again.read("h1"), "Early cake");
}

#[wasm_bindgen_test]
async fn a_weight_can_be_mended_and_taken_back() {
    let page = Page::open(RECIPE);
    settled().await;
    page.touch("[id='/line/4'] button");
    settled().await;
    page.type_into("#own-weight-4", "123,5");
    settled().await;
    let sugar = page.read("[id='/line/4']");
    assert!(sugar.contains("mended by you"), "{sugar}");
    let kept = Page::open_again("");
    settled().await;
    assert!(
        kept.read("[id='/line/4']").contains("mended by you"),
        "a correction outlives a reload"
    );
    page.type_into("#own-weight-4", "");
    settled().await;
    assert!(!page.read("[id='/line/4']").contains("mended by you"));
}

#[wasm_bindgen_test]
async fn a_record_that_cannot_be_read_is_left_as_it_is() {
    storage()
        .clear()
        .expect("the test's browser lets storage be cleared");
    storage()
        .set_item("batterwright/open", "old")
        .expect("there is room");
    storage()
        .set_item("batterwright/recipe/old", "{ damaged")
        .expect("there is room");
    let page = Page::open_again("");
    settled().await;
    assert!(page.read(".banners").contains("set aside"));
    page.paste(RECIPE);
    settled().await;
    assert_eq!(
        storage().get_item("batterwright/recipe/old"),
        Ok(Some("{ damaged".into()))
    );
}
