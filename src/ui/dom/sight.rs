//! What of the page is in sight: while the page is in haste, what lies out of it is drawn a moment later. A page that
//! begins draws what comes first, and then the rest piece by piece, so that it answers in between.

use leptos::prelude::{GetUntracked, RwSignal, Track};
use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IntersectionObserver, IntersectionObserverEntry};

/// How many of the elements that may wait are drawn at once when the page begins: as many as a screen shows.
const AT_ONCE: usize = 2;

/// Something that is still to be drawn.
pub type Piece = Box<dyn FnOnce()>;

/// What a page that begins has drawn at once, and what it still has to draw.
#[derive(Default)]
struct Beginning {
    drawn: usize,
    pieces: VecDeque<Piece>,
}

/// Where something is drawn: whether that is in sight, and whether the page is in haste.
#[derive(Clone)]
pub struct Scene {
    haste: RwSignal<bool>,
    /// There until everything is drawn of a page that begins piece by piece.
    beginning: Rc<RefCell<Option<Beginning>>>,
    /// Of the nearest watched element around it; true where nothing is watched.
    in_sight: Rc<Cell<bool>>,
}

/// Tells whether an element is in sight, for as long as it is kept.
pub struct Watch {
    observer: IntersectionObserver,
    _closure: Closure<dyn FnMut(js_sys::Array)>,
}

impl Scene {
    /// The whole page; `by_pieces` where it is to begin so.
    pub fn new(haste: RwSignal<bool>, by_pieces: bool) -> Self {
        Self {
            haste,
            beginning: Rc::new(RefCell::new(by_pieces.then(Beginning::default))),
            in_sight: Rc::new(Cell::new(true)),
        }
    }

    /// Whether the inside of an element that may wait is a piece to be drawn later; it then has to be handed to
    /// [`Scene::add_piece`].
    pub fn is_piece(&self) -> bool {
        let mut beginning = self.beginning.borrow_mut();
        beginning.as_mut().is_some_and(|beginning| {
            beginning.drawn += 1;
            beginning.drawn > AT_ONCE
        })
    }

    /// Has this drawn after all that waits already.
    pub fn add_piece(&self, piece: Piece) {
        if let Some(beginning) = self.beginning.borrow_mut().as_mut() {
            beginning.pieces.push_back(piece);
        }
    }

    /// Draws the next piece, and tells whether there was one. Once there is none, the page has begun.
    pub fn draw_piece(&self) -> bool {
        let piece = match self.beginning.borrow_mut().as_mut() {
            Some(beginning) => beginning.pieces.pop_front(),
            None => None,
        };
        match piece {
            Some(piece) => piece(),
            None => {
                self.beginning.take();
                return false;
            }
        }
        true
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
            beginning: self.beginning.clone(),
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
