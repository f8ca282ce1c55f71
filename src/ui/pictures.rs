//! Pictures of bakes. Shrinking and keeping them are nothing but calls to the browser, which a script of the page makes
//! (`public/pictures.js`); here is what it is asked, and what it answers.

use super::device;
use leptos::prelude::{window, *};
use wasm_bindgen::JsValue;

/// Where the script stands.
const SCRIPT: &str = "batterwrightPictures";
const NO_SCRIPT: &str =
    "The part of the page that keeps pictures has not loaded. Everything else is kept.";

/// Whether a picture can be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sight {
    /// It is looked for.
    Sought,
    /// At this address.
    At(String),
    /// It is not on this device.
    Missing,
}

fn ask(name: &str, with: &JsValue, then: impl FnOnce(Option<JsValue>) + 'static) {
    let script = device::get(&window(), SCRIPT).filter(|script| !script.is_undefined());
    match script.and_then(|script| device::ask(&script, name, with)) {
        Some(asked) => device::settle(&asked, then),
        None => then(None),
    }
}

/// An answer by that name; where there is none, the sentence that says why.
fn answer(given: Option<JsValue>, name: &str) -> Result<JsValue, String> {
    let given = given.ok_or(NO_SCRIPT)?;
    match device::get(&given, "trouble").and_then(|trouble| trouble.as_string()) {
        Some(trouble) => Err(trouble),
        None => device::get(&given, name).ok_or_else(|| NO_SCRIPT.into()),
    }
}

/// Shrinks and keeps the picture of a file, and hands on its key, or a sentence that says why it is not kept.
pub fn take(file: &JsValue, then: impl FnOnce(Result<String, String>) + 'static) {
    ask("take", file, move |given| {
        let key = answer(given, "id").map(|key| key.as_string().unwrap_or_default());
        then(key);
    });
}

/// Where the picture of that key can be seen, for as long as who asks is on the page.
pub fn sight(key: &str) -> RwSignal<Sight> {
    let sight = RwSignal::new(Sight::Sought);
    ask("address", &key.into(), move |given| {
        let address = given.and_then(|given| given.as_string());
        let found = address.clone().map_or(Sight::Missing, Sight::At);
        // Who asked may have left the page by then.
        if let (Some(_), Some(address)) = (sight.try_set(found), address) {
            device::let_go(&address);
        }
    });
    on_cleanup(move || {
        if let Some(Sight::At(address)) = sight.try_get_untracked() {
            device::let_go(&address);
        }
    });
    sight
}
