//! What of the page is in sight: while the page is in haste, what lies out of it is drawn a moment later.

use leptos::prelude::{GetUntracked, RwSignal, Track};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IntersectionObserver, IntersectionObserverEntry};

/// Where something is drawn: whether that is in sight, and whether the page is in haste.
#[derive(Clone)]
pub struct Scene {
    haste: RwSignal<bool>,
    /// Of the nearest watched element around it; true where nothing is watched.
    in_sight: Rc<Cell<bool>>,
}

/// Tells whether an element is in sight, for as long as it is kept.
pub struct Watch {
    observer: IntersectionObserver,
    _closure: Closure<dyn FnMut(js_sys::Array)>,
}

impl Scene {
    /// The whole page.
    pub fn new(haste: RwSignal<bool>) -> Self {
        Self {
            haste,
            in_sight: Rc::new(Cell::new(true)),
        }
    }

    /// Whether what is drawn there already may stay as it is for now. Who asks is asked to draw again when the haste is over.
    pub fn may_wait(&self) -> bool {
        let waits = !self.in_sight.get() && self.haste.get_untracked();
        if waits {
            self.haste.track();
        }
        waits
    }

    /// The inside of an element, with what watches it; the same scene in a browser that cannot tell.
    pub fn inside(&self, element: &web_sys::Element) -> (Self, Option<Watch>) {
        let in_sight = Rc::new(Cell::new(true));
        let told = in_sight.clone();
        let closure = Closure::new(move |entries: js_sys::Array| {
            // The last entry is the newest.
            let newest = entries.pop().unchecked_into::<IntersectionObserverEntry>();
            told.set(newest.is_intersecting());
        });
        let made: Result<_, JsValue> = IntersectionObserver::new(closure.as_ref().unchecked_ref());
        let Ok(observer) = made else {
            return (self.clone(), None);
        };
        observer.observe(element);
        let scene = Self {
            haste: self.haste,
            in_sight,
        };
        let watch = Watch {
            observer,
            _closure: closure,
        };
        (scene, Some(watch))
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}
