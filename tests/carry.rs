//! How recipes leave the page and come back: nothing is lost, and what is wrong is refused whole.

#[path = "carry/bakes.rs"]
mod bakes;
#[path = "carry/everything.rs"]
mod everything;
#[path = "carry/link.rs"]
mod link;
#[path = "carry/merging.rs"]
mod merging;
#[path = "carry/shared.rs"]
mod shared;
#[path = "carry/some.rs"]
mod some;
#[path = "carry/words.rs"]
mod words;
