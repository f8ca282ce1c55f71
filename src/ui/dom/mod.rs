//! How the page is drawn: plain elements built by name, over Leptos' signals and effects.
//!
//! Leptos' own view types make code for every shape of element that a page has; this page came to
//! 208 kB of compressed code with them, beside a core of about 160. Here one type stands for every
//! element, and the same page comes to a fifth of that. What goes in: [`Element`]s, whose text,
//! attributes, children and rows may follow signals. What comes out: elements on the page, changed
//! in place, so that focus, open details and the text in a box survive.

mod draw;
mod element;

pub use draw::mount;
pub use element::{Element, Words, drawing, element};
