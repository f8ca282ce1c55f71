//! The store itself: keys and texts, and what it answers when it will not.

use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::{JsCast, JsValue};

/// What stands before all keys of this page.
pub const OURS: &str = "batterwright/";

/// Why the store did not do what it was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// There is no room left.
    Full,
    /// There is none, or it takes nothing.
    Closed,
    /// It does not give what it holds, or does not tell what that is.
    Unread,
}

impl std::fmt::Display for Refusal {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(match self {
            Self::Full => "the space that this browser gives the page is full",
            Self::Closed => "this browser does not let the page keep anything",
            Self::Unread => "this browser does not let the page read what it keeps",
        })
    }
}

/// The store, where there is one.
fn store() -> Result<web_sys::Storage, Refusal> {
    // gloo-storage takes it for granted that the store is there, so that is asked first.
    match web_sys::window()
        .and_then(|window| window.local_storage().ok())
        .flatten()
    {
        Some(_) => Ok(LocalStorage::raw()),
        None => Err(Refusal::Closed),
    }
}

/// What stands under a key; `None` where nothing does.
pub fn read(key: &str) -> Result<Option<String>, Refusal> {
    store()?.get_item(key).map_err(|_| Refusal::Unread)
}

/// Puts a text under a key. What stood there before stays where this is refused.
pub fn write(key: &str, text: &str) -> Result<(), Refusal> {
    store()?.set_item(key, text).map_err(|error| {
        let name = js_sys::Reflect::get(&error, &"name".into())
            .ok()
            .and_then(|name| name.as_string())
            .unwrap_or_default();
        if name.contains("Quota") || name.contains("QUOTA") {
            Refusal::Full
        } else {
            Refusal::Closed
        }
    })
}

/// Takes a key away with what stands there.
pub fn remove(key: &str) -> Result<(), Refusal> {
    store()?.remove_item(key).map_err(|_| Refusal::Closed)
}

/// Every key, of whatever page.
pub fn keys() -> Result<Vec<String>, Refusal> {
    let store = store()?;
    let many = store.length().map_err(|_| Refusal::Unread)?;
    let mut keys = Vec::new();
    for at in 0..many {
        // Another window may have taken some away meanwhile.
        keys.extend(store.key(at).map_err(|_| Refusal::Unread)?);
    }
    Ok(keys)
}

/// Looks at many texts without copying them.
pub struct Glance {
    store: web_sys::Storage,
    get: js_sys::Function,
}

impl Glance {
    pub fn new() -> Result<Self, Refusal> {
        let store = store()?;
        let get = js_sys::Reflect::get(&store, &"getItem".into());
        let get = get.ok().and_then(|get| get.dyn_into().ok());
        match get {
            Some(get) => Ok(Self { store, get }),
            None => Err(Refusal::Closed),
        }
    }

    /// The length of what stands under a key, in letters, and so many of the first of them; `None` where nothing does.
    pub fn at(&self, key: &str, letters: u32) -> Result<Option<(u32, String)>, Refusal> {
        Ok(self
            .text(key)?
            .map(|text| (text.length(), text.slice(0, letters).into())))
    }

    /// The length of what stands under a key, in letters.
    pub fn length(&self, key: &str) -> Result<usize, Refusal> {
        Ok(self.text(key)?.map_or(0, |text| text.length() as usize))
    }

    fn text(&self, key: &str) -> Result<Option<js_sys::JsString>, Refusal> {
        let found = self.get.call1(&self.store, &JsValue::from_str(key));
        let found = found.map_err(|_| Refusal::Unread)?;
        Ok(found.dyn_into().ok())
    }
}
