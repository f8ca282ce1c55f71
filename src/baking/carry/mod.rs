//! How recipes leave the page and come back: everything as one file, and one recipe in a link, as text and as linked
//! data.
//!
//! What comes in was written by anyone: it is taken whole or refused whole, with the reason and the place, and nothing
//! here writes anything. [`merge`] gives the list of what is to be written.

mod as_text;
mod everything;
mod keys;
pub mod link;
mod linked_data;
mod merge;
mod merge_trials;
mod pictures;
mod preview;
mod said;
mod shared;

pub use as_text::as_text;
pub use everything::{Carried, CarriedTrial, Everything, read, write};
pub use linked_data::linked_data;
pub use merge::{Taken, WhenBoth, Writes, merge};
pub use preview::{Here, Preview, Row, Standing, preview};
pub use said::larder_words;
pub use shared::{Shared, shared};
