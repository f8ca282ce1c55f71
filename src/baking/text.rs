//! Two small readings of text that the standard library has too, at a price: its number reading carries a table of
//! 10 kB that no compression makes smaller, its change of case the tables of every script.

/// A plain decimal number, such as "12", "0.5" or ".25"; `None` for anything else, signs and exponents too.
///
/// Exact to the last bit for up to 15 figures (the quotient of two numbers that a double holds exactly),
/// within one unit of the last place beyond.
pub fn decimal(text: &str) -> Option<f64> {
    /// As many figures as a double can tell apart, and some.
    const FIGURES: u64 = 10_u64.pow(17);
    let (mut value, mut scale, mut point, mut figures) = (0_u64, 1_u64, false, 0);
    for byte in text.bytes() {
        match byte {
            b'.' if !point => point = true,
            b'0'..=b'9' => {
                figures += 1;
                if value < FIGURES && scale < FIGURES {
                    value = value * 10 + u64::from(byte - b'0');
                    scale = if point { scale * 10 } else { scale };
                } else if !point {
                    return None;
                }
            }
            _ => return None,
        }
    }
    (figures > 0).then(|| value as f64 / scale as f64)
}

/// The text in lower case: the letters of Western European languages; those of others are left as they are.
pub fn lower(text: &str) -> String {
    if text.is_ascii() {
        return text.to_ascii_lowercase();
    }
    text.chars().map(lower_letter).collect()
}

/// A letter in lower case, as [`lower`] has it.
pub fn lower_letter(letter: char) -> char {
    match letter {
        'A'..='Z' => letter.to_ascii_lowercase(),
        'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(letter as u32 + 0x20).unwrap_or(letter),
        'Œ' => 'œ',
        _ => letter,
    }
}

/// Whether the words stand anywhere in the text. For lines and notes: the standard library's search makes itself
/// ready at a cost that pays in long texts only.
pub fn holds(text: &str, words: &str) -> bool {
    let Some((first, others)) = words.as_bytes().split_first() else {
        return true;
    };
    let mut rest = text.as_bytes();
    while let [letter, after @ ..] = rest {
        if letter == first && after.starts_with(others) {
            return true;
        }
        rest = after;
    }
    false
}

/// Whether the text begins with words in lower case, whatever its own case.
pub fn begins(text: &str, words: &str) -> bool {
    text.get(..words.len())
        .is_some_and(|start| start.eq_ignore_ascii_case(words))
}

/// Which of the letters "a" to "z" a text has, a bit each.
pub const fn letters(text: &str) -> u32 {
    let bytes = text.as_bytes();
    let (mut letters, mut at) = (0, 0);
    while at < bytes.len() {
        if bytes[at].is_ascii_lowercase() {
            letters |= 1 << (bytes[at] - b'a');
        }
        at += 1;
    }
    letters
}

/// Phrases of which any may stand in a note. Each comes with its letters, and only where all of them are in the
/// note is it looked for: a hundred phrases are asked of every note, and hardly one is there.
pub struct Phrases(pub &'static [(u32, &'static str)]);

impl Phrases {
    /// Phrases with their letters.
    pub const fn of<const COUNT: usize>(
        phrases: [&'static str; COUNT],
    ) -> [(u32, &'static str); COUNT] {
        let mut out = [(0, ""); COUNT];
        let mut at = 0;
        while at < COUNT {
            out[at] = (letters(phrases[at]), phrases[at]);
            at += 1;
        }
        out
    }

    /// Whether any of them stands in a text in lower case, whose letters are these.
    pub fn any_in(&self, text: &str, letters: u32) -> bool {
        self.0
            .iter()
            .any(|(own, words)| own & !letters == 0 && holds(text, words))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_are_read_as_the_standard_library_reads_them() {
        for text in [
            "0",
            "12",
            "0.5",
            ".25",
            "5.",
            "11.92",
            "1.415625",
            "100000",
            "0.1",
            "99.99",
            "007",
            "1234567.125",
        ] {
            assert_eq!(decimal(text), text.parse().ok(), "{text}");
        }
        let long = "0.33333333333333333333333333";
        assert!((decimal(long).unwrap_or(0.0) - 1.0 / 3.0).abs() < 1e-15);
    }

    #[test]
    fn what_is_no_decimal_is_none() {
        for text in [
            "",
            ".",
            "1e5",
            "-1",
            "+1",
            "1.2.3",
            "1,5",
            "NaN",
            "inf",
            "１",
            "99999999999999999999",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }

    #[test]
    fn words_are_found_wherever_they_stand() {
        for (text, words, is_there) in [
            ("to serve", "to serve", true),
            ("butter to serve", "to serve", true),
            ("to servants", "to serve", false),
            ("aab", "ab", true),
            ("a", "ab", false),
            ("crème", "ème", true),
            ("", "a", false),
            ("any", "", true),
        ] {
            assert_eq!(holds(text, words), is_there, "{words:?} in {text:?}");
        }
    }

    #[test]
    fn the_beginning_is_told_in_any_case() {
        for (text, words, is_so) in [
            ("Or oil", "or ", true),
            ("or", "or ", false),
            ("for oil", "or ", false),
            ("é", "e", false),
            ("OR", "or", true),
        ] {
            assert_eq!(begins(text, words), is_so, "{words:?} in {text:?}");
        }
    }

    #[test]
    fn phrases_are_told_by_their_letters_first() {
        const TWO: Phrases = Phrases(&Phrases::of(["to serve", "(opt"]));
        for (text, is_there) in [
            ("cream, to serve", true),
            ("salt (opt)", true),
            ("to oil", false),
            ("serve to", false),
        ] {
            assert_eq!(TWO.any_in(text, letters(text)), is_there, "{text}");
        }
    }

    #[test]
    fn letters_of_western_europe_are_lowered() {
        assert_eq!(
            lower("CRÈME Brûlée ÆØÅ Œufs × ÷ ß"),
            "crème brûlée æøå œufs × ÷ ß"
        );
    }
}
