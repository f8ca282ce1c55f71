//! What another program shares with the page: a title, a text and an address, any of which may be missing.

use super::link;
use crate::baking::worksheet::Inputs;

/// The longest text that is taken, in bytes: an address that carried more would not arrive.
const LONGEST: usize = 200_000;

/// What was shared.
#[derive(Clone, Debug, PartialEq)]
pub enum Shared {
    /// Text for the reader.
    Text(String),
    /// The recipe of a link of ours.
    Recipe(Box<Inputs>),
}

/// What was shared, put together; `None` where nothing was. The title and the address stand above and below the text,
/// where they do not stand in it.
///
/// # Errors
/// A sentence where it is too long, or a link of ours that cannot be opened.
pub fn shared(title: &str, text: &str, address: &str) -> Option<Result<Shared, String>> {
    let [title, text, address] = [title, text, address].map(str::trim);
    let length = title.len() + text.len() + address.len();
    if length == 0 {
        return None;
    }
    if length > LONGEST {
        return Some(Err(format!(
            "What was shared is not taken: it is {} kB long, and {} kB is the most. Copy the recipe alone and paste it.",
            length.div_ceil(1000),
            LONGEST / 1000
        )));
    }
    if let Some(given) = [address, text].into_iter().find_map(link_in) {
        return Some(link::read(given).map(|inputs| Shared::Recipe(Box::new(inputs))));
    }
    let mut lines: Vec<&str> = Vec::new();
    lines.extend(Some(title).filter(|title| !title.is_empty() && !text.contains(title)));
    lines.extend(Some(text).filter(|text| !text.is_empty()));
    lines.extend(Some(address).filter(|address| !address.is_empty() && !text.contains(address)));
    Some(Ok(Shared::Text(lines.join("\n"))))
}

/// What stands behind our own fragment in a text, up to the next blank.
fn link_in(text: &str) -> Option<&str> {
    let (_, given) = text.split_once(link::FRAGMENT)?;
    given.split_whitespace().next()
}
