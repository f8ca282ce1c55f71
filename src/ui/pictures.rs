//! Pictures of bakes. Shrinking and keeping them are nothing but calls to the browser, which a script of the page makes
//! (`public/pictures.js`); here is what it is asked, and what it answers.

use super::device;
use leptos::prelude::{window, *};
use std::collections::BTreeMap;
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

/// The pictures of those keys that are here, each a JPEG in base64.
pub fn pack(keys: &[&str], then: impl FnOnce(BTreeMap<String, String>) + 'static) {
    let keys: js_sys::Array = keys.iter().map(|key| JsValue::from_str(key)).collect();
    ask("pack", &keys, move |given| {
        let packed = given.and_then(|given| given.as_string());
        let packed = packed.and_then(|packed| serde_json::from_str(&packed).ok());
        then(packed.unwrap_or_default());
    });
}

/// Keeps packed pictures, and hands on how many were new, or a sentence that says why they are not kept.
pub fn unpack(
    packed: &BTreeMap<String, String>,
    then: impl FnOnce(Result<usize, String>) + 'static,
) {
    let packed = serde_json::to_string(packed).unwrap_or_default();
    ask("unpack", &packed.into(), move |given| {
        let came = answer(given, "came").map(|came| came.as_f64().unwrap_or(0.0) as usize);
        then(came);
    });
}
