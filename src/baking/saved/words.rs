//! Words from outside, short and harmless enough to stand in a sentence or a list.

/// As many letters as tell which text it is.
const QUOTED: usize = 40;
/// As many letters as a title is shown with.
const TITLE: usize = 80;

/// A text in a sentence: at most 40 letters of it, in quotation marks, and nothing in it that turns the sentence around
/// or breaks it up.
pub fn quoted(text: &str) -> String {
    let cut = if text.chars().nth(QUOTED).is_some() {
        "\u{2026}"
    } else {
        ""
    };
    let letters: String = text.chars().take(QUOTED).map(harmless).collect();
    format!("\"{letters}{cut}\"")
}

/// What a text is called where there is room for one line: its first one with words on it.
pub fn first_words(text: &str) -> String {
    let line = text
        .lines()
        .map(str::trim)
        .find(|line| !line.is_empty())
        .unwrap_or("Blank recipe");
    line.chars().take(TITLE).collect()
}

/// Signs that are no letters, and marks that change which way what follows runs (Unicode's bidirectional controls).
fn harmless(letter: char) -> char {
    match letter {
        '\u{61c}'
        | '\u{200e}'
        | '\u{200f}'
        | '\u{202a}'..='\u{202e}'
        | '\u{2066}'..='\u{2069}'
        | '\u{2028}'
        | '\u{2029}' => '\u{fffd}',
        letter if letter.is_control() => '\u{fffd}',
        letter => letter,
    }
}
