//! The few things that the page asks of the browser besides drawing: clock, chance, address, files.

use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, FocusOptions, HtmlAnchorElement, HtmlElement, Url};

/// What a browser tells the page before it prints it.
const BEFORE_PRINT: &str = "beforeprint";

/// The clock, in milliseconds since 1970.
pub fn now() -> f64 {
    js_sys::Date::now()
}

/// The moment as ISO 8601 writes it.
pub fn moment() -> String {
    js_sys::Date::new_0().to_iso_string().into()
}

/// A name that no other record has: the clock and a random number, in base 36.
pub fn fresh_id() -> String {
    let chance = (js_sys::Math::random() * 1e12) as u64;
    let digits = |mut number: u64| {
        let mut text = Vec::new();
        while number > 0 {
            text.push(char::from_digit((number % 36) as u32, 36).unwrap_or('0'));
            number /= 36;
        }
        text.into_iter().rev().collect::<String>()
    };
    format!("{}-{}", digits(now() as u64), digits(chance))
}

/// A moment as this device writes dates.
pub fn date_shown(milliseconds: f64) -> String {
    let date = js_sys::Date::new(&JsValue::from_f64(milliseconds));
    String::from(date.to_locale_string("default", &JsValue::UNDEFINED))
}

/// The day and the time of a moment, in short, as this device writes them.
pub fn moment_shown(milliseconds: f64) -> String {
    let date = js_sys::Date::new(&JsValue::from_f64(milliseconds));
    let how = js_sys::Object::new();
    for (name, value) in [("dateStyle", "medium"), ("timeStyle", "short")] {
        // An object of our own takes any field.
        let _ = js_sys::Reflect::set(&how, &name.into(), &value.into());
    }
    String::from(date.to_locale_string("default", &how))
}

/// The time of day of a moment, as this device writes it.
pub fn time_shown(milliseconds: f64) -> String {
    let date = js_sys::Date::new(&JsValue::from_f64(milliseconds));
    String::from(date.to_locale_time_string("default"))
}

/// The part of the address from `#` on.
pub fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// The address of the page itself: no query, nothing from `#` on.
pub fn page_address() -> String {
    let location = window().location();
    let [origin, path] = [location.origin(), location.pathname()].map(Result::unwrap_or_default);
    origin + &path
}

/// What the query of the address says under these names; empty where it says nothing.
pub fn query<const COUNT: usize>(names: [&str; COUNT]) -> [String; COUNT] {
    let query = window().location().search().unwrap_or_default();
    let query = web_sys::UrlSearchParams::new_with_str(&query).ok();
    names.map(|name| {
        query
            .as_ref()
            .and_then(|query| query.get(name))
            .unwrap_or_default()
    })
}

/// Takes query and fragment off the address, another place in their stead. Nobody is told, and nothing is loaded.
pub fn tidy_address(hash: &str) {
    let address = page_address() + hash;
    if let Ok(history) = window().history() {
        // A refusal leaves an address that opens the same again.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&address));
    }
}

/// Goes to another page or place.
pub fn go(hash: &str) {
    // The address bar takes any text; a refusal leaves the page where it is.
    let _ = window().location().set_hash(hash);
}

/// Calls back once the next frame is on the screen.
pub fn after_frame(call: impl FnOnce() + 'static) {
    request_animation_frame(move || set_timeout(call, Duration::ZERO));
}

/// Once the page is drawn: scrolls to the element of that id, and focuses it if it can be.
pub fn show(id: String, focus: bool) {
    let stays = has_stayed();
    after_frame(move || {
        // Who has gone on by then is not called back.
        if focus && !stays() {
            return;
        }
        let Some(element) = document().get_element_by_id(&id) else {
            return;
        };
        element.scroll_into_view();
        if focus && let Some(element) = element.dyn_ref::<HtmlElement>() {
            let _ = element.focus();
        }
    });
}

/// Once the page is drawn: puts the focus on the element of that id, and leaves the page where it stands.
pub fn focus(id: impl Into<String>) {
    let id: String = id.into();
    let stays = has_stayed();
    after_frame(move || {
        if stays() {
            focus_now(&id);
        }
    });
}

/// Tells later whether the focus is where it is now, or has gone with what had it.
fn has_stayed() -> impl Fn() -> bool {
    let before = document().active_element();
    move || {
        let now = document().active_element();
        now == before || is_lost(now)
    }
}

/// Whether nothing has the focus.
fn is_lost(focused: Option<web_sys::Element>) -> bool {
    focused.is_none_or(|element| element.tag_name() == "BODY")
}

/// Once the page is drawn: the same, but only where what had the focus has gone with it.
pub fn focus_if_lost(id: &'static str) {
    after_frame(move || {
        if is_lost(document().active_element()) {
            focus_now(id);
        }
    });
}

fn focus_now(id: &str) {
    let element = document().get_element_by_id(id);
    if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        let quietly = FocusOptions::new();
        quietly.set_prevent_scroll(true);
        // Where the focus cannot go there it stays where it was.
        let _ = element.focus_with_options(&quietly);
    }
}

/// Sends an event of ours to the script that keeps the page for offline use.
pub fn tell(event: &str) {
    if let Ok(event) = web_sys::CustomEvent::new(event) {
        let _ = window().dispatch_event(&event);
    }
}

/// True where the html element carries this mark (`data-` name and value).
pub fn marked(name: &str, value: &str) -> bool {
    document()
        .document_element()
        .and_then(|root| root.get_attribute(name))
        .as_deref()
        == Some(value)
}

/// The mark of that name on the html element, followed; the event tells that it has changed.
pub fn marks(name: &'static str, event: &'static str) -> RwSignal<String> {
    let read = move || {
        let root = document().document_element();
        root.and_then(|root| root.get_attribute(name))
            .unwrap_or_default()
    };
    let mark = RwSignal::new(read());
    let listening = window_event_listener_untyped(event, move |_| mark.set(read()));
    on_cleanup(move || listening.remove());
    mark
}

/// Puts a mark on the html element.
pub fn mark(name: &str, value: &str) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute(name, value);
    }
}

/// Hands the text to the browser as a file to be saved.
pub fn download(name: &str, text: &str) {
    // A browser that refuses leaves the text where it was, on the page or in its record.
    let _ = try_download(name, text);
}

fn try_download(name: &str, text: &str) -> Result<(), JsValue> {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence(&parts)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}

/// Puts the text where it can be pasted from, and says whether the browser let it.
pub fn copy(text: &str, then: impl FnOnce(bool) + 'static) {
    match ask_browser("clipboard", "writeText", &text.into()) {
        Some(asked) => settle(&asked, move |done| then(done.is_some())),
        None => then(false),
    }
}

/// Whether the browser can hand text on to another program.
pub fn can_share() -> bool {
    of_browser("share").is_some_and(|share| share.is_function())
}

/// Hands something on to a program that the person chooses, under the names that browsers give its pieces: "title",
/// "text", "url". Whoever chooses none changes nothing.
pub fn share(pieces: &[(&str, &str)]) {
    let what = js_sys::Object::new();
    for (name, piece) in pieces {
        let _ = js_sys::Reflect::set(&what, &(*name).into(), &(*piece).into());
    }
    if let Some(asked) = ask_browser("", "share", &what) {
        settle(&asked, |_| ());
    }
}

/// Whether the browser has promised to keep what is kept here until the person clears it; `None` where it does not tell.
pub fn is_kept_firmly(then: impl FnOnce(Option<bool>) + 'static) {
    ask_to_keep("persisted", then);
}

/// Asks the browser for that promise. Some ask the person, some decide by how often the page is used.
pub fn keep_firmly(then: impl FnOnce(Option<bool>) + 'static) {
    ask_to_keep("persist", then);
}

fn ask_to_keep(name: &str, then: impl FnOnce(Option<bool>) + 'static) {
    match ask_browser("storage", name, &JsValue::UNDEFINED) {
        Some(asked) => settle(&asked, move |answer| {
            then(answer.and_then(|answer| answer.as_bool()))
        }),
        None => then(None),
    }
}

/// Something that the browser's own record has; `None` where it has none.
fn of_browser(name: &str) -> Option<JsValue> {
    let browser = get(&window(), "navigator")?;
    get(&browser, name).filter(|found| !found.is_undefined())
}

/// What stands under that name in something of the browser's.
pub fn get(of: &JsValue, name: &str) -> Option<JsValue> {
    js_sys::Reflect::get(of, &name.into()).ok()
}

/// Calls what the browser offers by that name, in that place of its record, and gives the promise.
fn ask_browser(place: &str, name: &str, with: &JsValue) -> Option<js_sys::Promise> {
    let of = match place {
        "" => get(&window(), "navigator")?,
        place => of_browser(place)?,
    };
    ask(&of, name, with)
}

/// Calls what something of the browser's offers by that name, and gives the promise.
pub fn ask(of: &JsValue, name: &str, with: &JsValue) -> Option<js_sys::Promise> {
    let call: js_sys::Function = get(of, name)?.dyn_into().ok()?;
    call.call1(of, with).ok()?.dyn_into().ok()
}

/// Hands on what a promise gives; `None` where it is refused.
pub fn settle(promise: &js_sys::Promise, then: impl FnOnce(Option<JsValue>) + 'static) {
    let then = Rc::new(Cell::new(Some(then)));
    let hand_on = move |given: Option<JsValue>| {
        if let Some(then) = then.take() {
            then(given);
        }
    };
    // Either of the two is called, and what is called is let go of with the page.
    let refuse = hand_on.clone();
    let given = Closure::<dyn FnMut(JsValue)>::new(move |given| hand_on(Some(given)));
    let refused = Closure::<dyn FnMut(JsValue)>::new(move |_| refuse(None));
    let _ = promise.then2(&given, &refused);
    given.forget();
    refused.forget();
}

/// The largest file that is opened, in bytes: some thousands of recipes, and far more than any page that holds one.
const LARGEST_FILE: f64 = 32e6;

/// Reads the file that was chosen in a field, and hands its text on, or a sentence that says why it has none.
pub fn read_file(
    event: &web_sys::Event,
    then: impl FnOnce(Result<String, &'static str>) + 'static,
) {
    let Some(file) = chosen_files(event).into_iter().next() else {
        return;
    };
    let size = get(&file, "size").and_then(|size| size.as_f64());
    if size.is_none_or(|size| size > LARGEST_FILE) {
        then(Err("This file is larger than 32 MB, so it was not opened."));
        return;
    }
    if let Some(text) = text_of(&file) {
        settle(&text, |text| {
            let text = text.and_then(|text| text.as_string());
            then(text.ok_or("This file could not be read as text."));
        });
    }
}

/// The files that were chosen. The field is emptied, so that the same ones can be chosen again.
pub fn chosen_files(event: &web_sys::Event) -> Vec<JsValue> {
    let Some(field) = event.target().map(JsValue::from) else {
        return Vec::new();
    };
    let files = get(&field, "files").map(|files| js_sys::Array::from(&files).to_vec());
    let _ = js_sys::Reflect::set(&field, &"value".into(), &"".into());
    files.unwrap_or_default()
}

/// The promise of a file's text.
fn text_of(file: &JsValue) -> Option<js_sys::Promise> {
    let text: js_sys::Function = get(file, "text")?.dyn_into().ok()?;
    text.call0(file).ok()?.dyn_into().ok()
}

/// Lets go of an address that was made for something of this page.
pub fn let_go(address: &str) {
    let _ = Url::revoke_object_url(address);
}

/// True while the page is being printed. The page listens for as long as it lives.
pub fn printing() -> RwSignal<bool> {
    let printing = RwSignal::new(false);
    let _ = window_event_listener_untyped(BEFORE_PRINT, move |_| printing.set(true));
    let _ = window_event_listener_untyped("afterprint", move |_| printing.set(false));
    printing
}

/// Opens the browser's own way to print, once what is printed is drawn.
pub fn print() {
    tell(BEFORE_PRINT);
    after_frame(|| {
        // A browser without one does nothing.
        let _ = window().print();
    });
}
