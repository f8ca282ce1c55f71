//! Text made short and long again: deflate (RFC 1951) with a text that both sides know before it, and a CRC-32
//! (ISO 3309, as in PNG and gzip) of the text in front, so that damage is told.

use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};

/// The bytes of the check.
const CHECK: usize = 4;
/// The highest level that zlib names.
const LEVEL: i32 = 9;
/// No header, the largest window.
const RAW: i32 = -15;
/// One code for all texts, which needs no table of its own in front; zlib's number for it.
const FIXED: i32 = 4;
/// A code for this text.
const OWN: i32 = 0;

/// Why bytes give no text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// They end before the text does.
    CutOff,
    /// They are not what was made, or a text longer than may be.
    Damaged,
}

/// A text as few bytes; `None` where it does not come out smaller than `most`.
pub fn squeeze(text: &str, known: &str, most: usize) -> Option<Vec<u8>> {
    [OWN, FIXED]
        .into_iter()
        .filter_map(|code| squeeze_by(code, text, known, most))
        .min_by_key(Vec::len)
}

fn squeeze_by(code: i32, text: &str, known: &str, most: usize) -> Option<Vec<u8>> {
    let mut squeezer = CompressorOxide::new(create_comp_flags_from_zip_params(LEVEL, RAW, code));
    // What both sides know fills the window; what it would come out as is left out.
    let mut unsent = vec![0; known.len() + most];
    let (status, read, _) = compress(
        &mut squeezer,
        known.as_bytes(),
        &mut unsent,
        TDEFLFlush::Sync,
    );
    if status != TDEFLStatus::Okay || read != known.len() {
        return None;
    }
    let mut bytes = vec![0; most];
    bytes
        .get_mut(..CHECK)?
        .copy_from_slice(&crc(text).to_le_bytes());
    let (status, _, written) = compress(
        &mut squeezer,
        text.as_bytes(),
        &mut bytes[CHECK..],
        TDEFLFlush::Finish,
    );
    bytes.truncate(CHECK + written);
    (status == TDEFLStatus::Done).then_some(bytes)
}

/// The text that bytes stand for, of `most` bytes at most.
///
/// # Errors
/// The [`Fault`] that they have.
pub fn spread(bytes: &[u8], known: &str, most: usize) -> Result<String, Fault> {
    let (check, body) = bytes.split_at_checked(CHECK).ok_or(Fault::CutOff)?;
    let mut text = known.as_bytes().to_vec();
    let start = text.len();
    text.resize(start + most, 0);
    let (status, read, written) = decompress(
        &mut DecompressorOxide::new(),
        body,
        &mut text,
        start,
        TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
    );
    match status {
        TINFLStatus::Done if read == body.len() => {}
        TINFLStatus::FailedCannotMakeProgress | TINFLStatus::NeedsMoreInput => {
            return Err(Fault::CutOff);
        }
        _ => return Err(Fault::Damaged),
    }
    let text = text.get(start..start + written).ok_or(Fault::Damaged)?;
    let text = std::str::from_utf8(text).map_err(|_| Fault::Damaged)?;
    if crc(text).to_le_bytes() != check {
        return Err(Fault::Damaged);
    }
    Ok(text.to_owned())
}

/// CRC-32 of a text, bit by bit: a link's text is short, and a table would be longer than this.
fn crc(text: &str) -> u32 {
    let crc = text.bytes().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(byte), |crc, _| {
            crc >> 1 ^ if crc & 1 == 1 { 0xedb8_8320 } else { 0 }
        })
    });
    !crc
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value of the standard's own catalogue of CRCs, and that of an empty text.
    #[test]
    fn the_check_is_crc_32() {
        assert_eq!(crc("123456789"), 0xcbf4_3926);
        assert_eq!(crc(""), 0);
    }

    const KNOWN: &str = "Bake the plum cake for 40 minutes.";
    const TEXT: &str = "Bake the plum cake for 50 minutes, plum side up \u{bd}.";

    fn bytes(hex: &str) -> Vec<u8> {
        let digit = |at: usize| u8::from_str_radix(&hex[at..at + 2], 16).expect("two digits");
        (0..hex.len()).step_by(2).map(digit).collect()
    }

    /// Made by zlib 1.3 through Python: `zlib.crc32`, then `zlib.compressobj` with `wbits` -15 (level 0; level 9 with
    /// fixed codes; level 9 with `KNOWN` as its dictionary).
    const BY_ZLIB: [(&str, &str); 3] = [
        (
            "",
            "255ac3d4013300ccff42616b652074686520706c756d2063616b6520666f72203530206d696e757465732c20706c756d2073696465207570\
             20c2bd2e",
        ),
        (
            "",
            "255ac3d4734acc4e5528c9485528c829cd554806f1d2f28b144c0d147233f34a4b528b752032c59929a90aa5050a87f6ea0100",
        ),
        (
            KNOWN,
            "255ac3d473c2aec214ae420722539c9992aa505aa07068af1e00",
        ),
    ];

    #[test]
    fn what_zlib_made_is_read() {
        for (known, hex) in BY_ZLIB {
            assert_eq!(spread(&bytes(hex), known, 64).as_deref(), Ok(TEXT));
        }
    }

    /// A block with a code of its own, by the same zlib at level 9, of letters from a row of linear congruences.
    #[test]
    fn a_code_of_its_own_is_read() {
        let hex = "d09808ab1d8e4b0a40510842d7ea40a84941ba7f9ef745441f3de46277b369dd0ccd63a53881c560fd6e444ee7722f91\
                   7e5d07dc6545485b5eba06aa33c93ec27484da06b2912fa47032d4100ccf0f69c88ba7f5b0c5faad01e899a4a6aaae1c\
                   c98613e7fb2171e9f8f207e103";
        let mut row = 1_u64;
        let mut letter = || {
            row = (row * 1_103_515_245 + 12_345) % (1 << 31);
            char::from(b"eeeeetttaaoinshr"[(row >> 16 & 15) as usize])
        };
        let text: String = (0..200).map(|_| letter()).collect();
        assert_eq!(spread(&bytes(hex), "", 200), Ok(text));
    }

    #[test]
    fn what_is_not_whole_or_too_long_is_a_fault() {
        let (known, hex) = BY_ZLIB[2];
        let whole = bytes(hex);
        for end in 0..whole.len() {
            assert_eq!(
                spread(&whole[..end], known, 64),
                Err(Fault::CutOff),
                "{end}"
            );
        }
        // The text has 51 bytes: the half takes two.
        assert!(spread(&whole, known, 51).is_ok());
        assert_eq!(spread(&whole, known, 50), Err(Fault::Damaged));
        assert_eq!(
            spread(&whole, "another text that both sides know.", 64),
            Err(Fault::Damaged)
        );
        let longer = [whole.as_slice(), &[0]].concat();
        assert_eq!(spread(&longer, known, 64), Err(Fault::Damaged));
        // Bits of the last byte may lie behind the end of the text.
        for at in 0..(whole.len() - 1) * 8 {
            let mut other = whole.clone();
            other[at / 8] ^= 1 << (at % 8);
            assert_ne!(spread(&other, known, 64).as_deref(), Ok(TEXT), "bit {at}");
        }
    }

    #[test]
    fn a_text_that_comes_out_too_long_is_none() {
        let squeezed = squeeze(TEXT, KNOWN, 100).expect("room enough");
        assert_eq!(spread(&squeezed, KNOWN, 64).as_deref(), Ok(TEXT));
        assert_eq!(squeeze(TEXT, KNOWN, squeezed.len()), Some(squeezed.clone()));
        for most in 0..squeezed.len() {
            assert_eq!(squeeze(TEXT, KNOWN, most), None, "{most}");
        }
    }
}
