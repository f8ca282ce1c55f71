//! Pictures of bakes in the one file: only as many as it has room for.

use super::Everything;
use super::everything::{LARGEST, write};
use crate::baking::saved::{kind, quoted};
use serde_json::Value;
use std::collections::BTreeMap;

/// The largest picture, in letters of base64: 40 kB, four letters for three bytes.
const LARGEST_PICTURE: usize = 40_000_usize.div_ceil(3) * 4;
/// How a JPEG begins in base64: its bytes ff d8 ff.
const JPEG: &str = "/9j/";
/// What a picture takes in the file besides its key and itself: quotation marks, blanks, an end of line.
const AROUND: usize = 16;
/// What the key of a picture begins with; 24 hexadecimal figures follow.
const KEY: &str = "picture-";

impl Everything {
    /// The keys of the pictures that its bakes name, those of the latest bakes first; each once.
    pub fn picture_keys(&self) -> Vec<&str> {
        let mut trials: Vec<_> = self.trials.iter().collect();
        trials.sort_by_key(|carried| std::cmp::Reverse(carried.id));
        let mut keys: Vec<&str> = Vec::new();
        for picture in trials.iter().flat_map(|carried| &carried.trial.pictures) {
            if !keys.contains(&picture.key.as_str()) {
                keys.push(&picture.key);
            }
        }
        keys
    }

    /// Takes in pictures, those of the latest bakes first, as far as the file has room for them; gives how many of those
    /// that its bakes name are left out.
    ///
    /// # Errors
    /// As for [`write`].
    pub fn add_pictures(&mut self, mut packed: BTreeMap<String, String>) -> Result<usize, String> {
        let mut room = LARGEST.saturating_sub(write(self)?.len());
        let keys: Vec<String> = self.picture_keys().into_iter().map(str::to_owned).collect();
        let mut left_out = 0;
        for key in keys {
            let picture = packed.remove(&key).filter(|picture| is_picture(picture));
            let takes = picture
                .as_ref()
                .map_or(0, |picture| key.len() + picture.len() + AROUND);
            match picture {
                Some(picture) if is_key(&key) && takes <= room => {
                    room -= takes;
                    self.pictures.insert(key, picture);
                }
                _ => left_out += 1,
            }
        }
        Ok(left_out)
    }
}

/// The pictures of a file.
///
/// # Errors
/// A sentence's middle with the place.
pub(super) fn read(pictures: Value) -> Result<BTreeMap<String, String>, String> {
    let rows = match pictures {
        Value::Null => return Ok(BTreeMap::new()),
        Value::Object(rows) => rows,
        other => {
            return Err(format!(
                "its pictures is {}, which it cannot be",
                kind(&other)
            ));
        }
    };
    let mut read = BTreeMap::new();
    for (key, picture) in rows {
        match picture {
            _ if !is_key(&key) => {
                return Err(format!("pictures: {} is no key of a picture", quoted(&key)));
            }
            Value::String(picture) if is_picture(&picture) => {
                read.insert(key, picture);
            }
            _ => {
                return Err(format!(
                    "pictures: {} is no JPEG of 40 kB at most, in base64",
                    quoted(&key)
                ));
            }
        }
    }
    Ok(read)
}

fn is_key(key: &str) -> bool {
    key.strip_prefix(KEY).is_some_and(|sum| {
        let is_figure = |letter: u8| letter.is_ascii_digit() || (b'a'..=b'f').contains(&letter);
        sum.len() == 24 && sum.bytes().all(is_figure)
    })
}

/// Whether it is base64 of what begins as a JPEG does, and no longer than a picture may be.
fn is_picture(picture: &str) -> bool {
    let letters = picture.trim_end_matches('=');
    let is_letter = |letter: u8| letter.is_ascii_alphanumeric() || letter == b'+' || letter == b'/';
    picture.len() <= LARGEST_PICTURE
        && picture.len().is_multiple_of(4)
        && picture.len() - letters.len() <= 2
        && picture.starts_with(JPEG)
        && letters.bytes().all(is_letter)
}
