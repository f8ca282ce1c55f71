//! A figure as people copy it from a packet or a scale.

use crate::baking::text::decimal;

/// The figure that was typed, `None` where nothing was. A comma may stand for the point, a unit behind it is passed
/// over, and "<0.5" of a packet is read as half of that.
///
/// # Errors
/// A sentence that says what was found and what to write.
pub fn figure(typed: &str) -> Result<Option<f64>, String> {
    let typed = typed.trim();
    let bare = ["mg", "g", "%"]
        .iter()
        .find_map(|unit| typed.strip_suffix(unit))
        .unwrap_or(typed)
        .trim();
    if typed.is_empty() {
        return Ok(None);
    }
    if bare.starts_with(['-', '\u{2212}']) {
        return Err(format!(
            "\"{typed}\" is less than nothing: write 0 or more."
        ));
    }
    let (bare, part) = match bare.strip_prefix('<') {
        Some(most) => (most.trim(), 0.5),
        None => (bare, 1.0),
    };
    if let Some((whole, rest)) = bare.split_once(',')
        && rest.len() == 3
        && !whole.trim_start_matches('0').is_empty()
    {
        return Err(format!(
            "\"{typed}\" can be read in two ways: write {whole}{rest} or {whole}.{rest}."
        ));
    }
    match decimal(&bare.replace(',', ".")) {
        Some(value) => Ok(Some(value * part)),
        None => Err(format!(
            "\"{typed}\" is not a number: write one, such as 12 or 0.5."
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn figures_of_packets_are_read() {
        for (typed, value) in [
            ("12", 12.0),
            (" 0,5 ", 0.5),
            ("3.1 g", 3.1),
            ("120mg", 120.0),
            ("<0.5", 0.25),
            ("0,125", 0.125),
        ] {
            assert_eq!(figure(typed), Ok(Some(value)), "{typed}");
        }
        assert_eq!(figure("  "), Ok(None));
    }

    #[test]
    fn what_is_no_figure_is_a_sentence() {
        for (typed, words) in [
            ("-1", "less than nothing"),
            ("trace", "not a number"),
            ("1,200", "two ways"),
            ("g", "not a number"),
            ("1e5", "not a number"),
            ("NaN", "not a number"),
        ] {
            let said = figure(typed).expect_err("no figure");
            assert!(said.contains(words) && said.contains(typed), "{said}");
        }
    }
}
