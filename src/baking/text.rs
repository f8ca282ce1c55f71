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
    fn letters_of_western_europe_are_lowered() {
        assert_eq!(
            lower("CRÈME Brûlée ÆØÅ Œufs × ÷ ß"),
            "crème brûlée æøå œufs × ÷ ß"
        );
    }
}
