//! Bytes as letters that an address takes as they are: base64url without padding, RFC 4648, section 5.

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// The letters for bytes.
pub fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let mut bits = 0_u32;
        for at in 0..3 {
            bits = bits << 8 | u32::from(three.get(at).copied().unwrap_or(0));
        }
        // So many letters hold so many bytes.
        for at in 0..=three.len() {
            let six = bits >> (18 - 6 * at) & 63;
            text.push(char::from(LETTERS[six as usize]));
        }
    }
    text
}

/// The bytes of letters; `None` where a letter is none of them, or bits are left over.
pub fn decode(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3 + 3);
    let (mut bits, mut count) = (0_u32, 0);
    for letter in text.bytes() {
        let six = match letter {
            b'A'..=b'Z' => letter - b'A',
            b'a'..=b'z' => letter - b'a' + 26,
            b'0'..=b'9' => letter - b'0' + 52,
            b'-' => 62,
            b'_' => 63,
            _ => return None,
        };
        bits = bits << 6 | u32::from(six);
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count) as u8);
            bits &= (1 << count) - 1;
        }
    }
    // Six bits hold no byte, and what is left of the last one is nothing.
    (count < 6 && bits == 0).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648, section 10, without the padding; the last two by hand, for the two letters that base64 has otherwise.
    const KNOWN: [(&[u8], &str); 9] = [
        (b"", ""),
        (b"f", "Zg"),
        (b"fo", "Zm8"),
        (b"foo", "Zm9v"),
        (b"foob", "Zm9vYg"),
        (b"fooba", "Zm9vYmE"),
        (b"foobar", "Zm9vYmFy"),
        (&[0xfb, 0xff, 0xbf], "-_-_"),
        (&[0xff], "_w"),
    ];

    #[test]
    fn the_vectors_of_the_standard_hold_both_ways() {
        for (bytes, text) in KNOWN {
            assert_eq!(encode(bytes), text);
            assert_eq!(decode(text).as_deref(), Some(bytes), "{text}");
        }
        let all: Vec<u8> = (0..=255).collect();
        assert_eq!(decode(&encode(&all)), Some(all));
    }

    #[test]
    fn what_is_no_base64url_is_none() {
        for text in [
            "Z",
            "Zm9vY",
            "Zh",
            "Zm9=",
            "Zg==",
            "Zm+v",
            "Zm/v",
            "Zm v",
            "Zm\u{e9}v",
        ] {
            assert_eq!(decode(text), None, "{text}");
        }
    }
}
