//! How the page is drawn: plain elements built by name, over Leptos' signals and effects.
//!
//! Leptos' own view types make code for every shape of element that a page has. Here one type stands
//! for every element: of 388 kB that the module came to, compressed, 304 were left the day this
//! changed. What goes in: [`Element`]s, whose text,
//! attributes, children and rows may follow signals. What comes out: elements on the page, changed
//! in place, so that focus, open details and the text in a box survive.

mod draw;
mod element;
mod sight;

pub use draw::mount;
pub use element::{Element, Words, drawing, element};
