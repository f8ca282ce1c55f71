//! The only rounding: figures as a person reads them.

use super::{Height, Length, LengthUnit, Mass, Share, Volume};
use crate::baking::estimate::Estimate;

/// A weight as kitchen scales show it: tenths of a gram below 20 g, where leavening and salt lie, whole grams
/// from there.
pub fn mass(mass: Mass) -> String {
    format!("{} g", mass_figure(mass.to_grams()))
}

/// A range of weights: "259 to 319 g"; `None` where both ends look alike.
pub fn mass_range(estimate: &Estimate<Mass>) -> Option<String> {
    let (low, high) = (
        mass_figure(estimate.low.to_grams()),
        mass_figure(estimate.high.to_grams()),
    );
    (low != high).then(|| format!("{low} to {high} g"))
}

/// The figure alone, with thousands apart.
fn mass_figure(grams: f64) -> String {
    let grams = grams.max(0.0);
    if grams < 0.095 && grams > 0.0 {
        fixed(grams, 2)
    } else if grams < 19.95 {
        trimmed(grams, 1)
    } else {
        thousands(grams.round())
    }
}

/// A share in per cent: tenths below 10 %, whole numbers from there.
pub fn percent(share: Share) -> String {
    let percent = share.to_percent();
    if percent.abs() < 9.95 {
        format!("{} %", trimmed(percent, 1))
    } else {
        format!("{} %", thousands(percent.round()))
    }
}

/// A share in per cent with its range, where both ends don't look alike: "107 % (101 % to 114 %)".
pub fn percent_with_range(estimate: &Estimate<Share>) -> String {
    let [low, mean, high] = [estimate.low, estimate.mean, estimate.high].map(percent);
    if low == high {
        mean
    } else {
        format!("{mean} ({low} to {high})")
    }
}

/// Grams in 100 g of something, in tenths throughout so that figures below one another line up; less than that in
/// hundredths.
pub fn of_100_grams(grams: f64) -> String {
    let decimals = if grams > 0.0 && grams < 0.05 { 2 } else { 1 };
    format!("{} g", fixed(grams, decimals))
}

/// Small grams in milligrams: tenths below 10, whole numbers from there.
pub fn milligrams(grams: f64) -> String {
    format!("{} mg", milliequivalents(grams * 1000.0))
}

/// Milliequivalents: tenths below 10, whole numbers from there.
pub fn milliequivalents(value: f64) -> String {
    if value.abs() < 9.95 {
        trimmed(value, 1)
    } else {
        thousands(value.round())
    }
}

/// A volume in millilitres below a litre, in litres from there.
pub fn volume(volume: Volume) -> String {
    let millilitres = volume.to_millilitres();
    if millilitres < 995.0 {
        format!("{} mL", fixed(millilitres, 0))
    } else {
        format!("{} L", fixed(millilitres / 1000.0, 2))
    }
}

/// A length in the baker's unit.
pub fn length(length: Length, unit: LengthUnit) -> String {
    format!("{} {}", length_figure(length, unit), unit.short())
}

/// A length in the baker's unit as it would be typed: fine enough that inches and centimetres turned into one
/// another and back are what they were.
pub fn length_typed(length: Length, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inches => trimmed(length.to_inches(), 3),
        LengthUnit::Centimetres => {
            // Half a thousandth of an inch is what inches as typed cannot tell; eighths of an inch need more than hundredths.
            let centimetres = length.to_centimetres();
            let off = ((centimetres * 100.0).round() / 100.0 - centimetres).abs();
            trimmed(centimetres, if off < 0.0013 { 2 } else { 3 })
        }
    }
}

/// A length in the baker's unit, the figure alone.
pub fn length_figure(length: Length, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inches => trimmed(length.to_inches(), 2),
        LengthUnit::Centimetres => trimmed(length.to_centimetres(), 1),
    }
}

/// A height above the sea in both units: "1,600 m (5,250 ft)".
pub fn height(height: Height) -> String {
    format!(
        "{} m ({} ft)",
        thousands(height.to_metres().round()),
        thousands((height.to_feet() / 10.0).round() * 10.0)
    )
}

/// A pH, in tenths; the model claims no more.
pub fn ph(value: f64) -> String {
    fixed(value, 1)
}

/// A plain factor: "1.56".
pub fn factor(value: f64) -> String {
    if value >= 9.995 {
        trimmed(value, 1)
    } else {
        trimmed(value, 2)
    }
}

/// US teaspoons to the nearest eighth: "1 1/8 tsp"; "a scant 1/8 tsp" for less than that.
pub fn teaspoons(count: f64) -> String {
    let eighths = (count * 8.0).round().max(0.0);
    if eighths < 1.0 {
        return "a scant 1/8 tsp".to_owned();
    }
    let whole = (eighths / 8.0) as u64;
    let part = match eighths as u64 % 8 {
        1 => "1/8",
        2 => "1/4",
        3 => "3/8",
        4 => "1/2",
        5 => "5/8",
        6 => "3/4",
        7 => "7/8",
        _ => "",
    };
    match (whole, part) {
        (whole, "") => format!("{whole} tsp"),
        (0, part) => format!("{part} tsp"),
        (whole, part) => format!("{whole} {part} tsp"),
    }
}

/// Things in a row: "this", "this and that", "this, that and more".
pub fn listed(words: &[String]) -> String {
    match words.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}

/// Numbers of lines in a sentence: "line 4", "lines 4 and 7", "lines 4, 5 and 7".
pub fn lines(numbers: &[usize]) -> String {
    let mut numbers = numbers.to_vec();
    numbers.dedup();
    match numbers.as_slice() {
        [] => String::new(),
        [one] => format!("line {one}"),
        [most @ .., last] => {
            let most: Vec<String> = most.iter().map(usize::to_string).collect();
            format!("lines {} and {last}", most.join(", "))
        }
    }
}

/// The first letter made a capital, for a sentence that starts with a name.
pub fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => std::iter::once(first.to_ascii_uppercase())
            .chain(letters)
            .collect(),
        None => String::new(),
    }
}

/// Words with a small first letter, for within a sentence.
pub fn amid(words: &str) -> String {
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => std::iter::once(first.to_ascii_lowercase())
            .chain(letters)
            .collect(),
        None => String::new(),
    }
}

/// A plain number as it would be written down: at most two decimals.
pub fn plain(value: f64) -> String {
    trimmed(value, 2)
}

/// A number with so many decimals (nine at most), needless zeros taken off.
pub fn trimmed(value: f64, decimals: u32) -> String {
    let text = fixed(value, decimals);
    if decimals == 0 {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A number with exactly so many decimals (nine at most), halves rounded away from zero.
///
/// By whole numbers: the standard library's way is exact to the last of a thousand digits, which takes longer than all
/// the rest of a worksheet and 15 kB.
pub fn fixed(value: f64, decimals: u32) -> String {
    let scale = 10_u64.pow(decimals.min(9));
    // A value beyond all that a kitchen holds ends at the largest number; what is no number reads as nothing.
    let scaled = (value.abs() * scale as f64).round() as u64;
    let sign = if value < 0.0 && scaled > 0 { "-" } else { "" };
    let (whole, part) = (scaled / scale, scaled % scale);
    if scale == 1 {
        return format!("{sign}{whole}");
    }
    let width = decimals.min(9) as usize;
    format!("{sign}{whole}.{part:0width$}")
}

/// How many there are, with thousands apart by a comma.
pub fn count(many: usize) -> String {
    thousands(many as f64)
}

/// A count that is no surer than its first two figures, rounded down to them.
pub fn count_about(many: usize) -> String {
    let mut step = 1;
    while many / step >= 100 {
        step *= 10;
    }
    count(many / step * step)
}

/// How full something is, from 0 to 1, in per cent, rounded down: only what is full is called so.
pub fn fullness(share: f64) -> String {
    match (share * 100.0).floor() {
        0.0 => "Less than 1 %".to_owned(),
        percent => format!("{} %", fixed(percent, 0)),
    }
}

/// A whole number with thousands apart by a comma.
fn thousands(value: f64) -> String {
    let text = fixed(value, 0);
    let (sign, digits) = text
        .strip_prefix('-')
        .map_or(("", text.as_str()), |rest| ("-", rest));
    let mut out = String::with_capacity(text.len() + text.len() / 3);
    out.push_str(sign);
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_read_as_a_scale_shows_them() {
        assert_eq!(mass(Mass::grams(19.94)), "19.9 g");
        assert_eq!(mass(Mass::grams(19.96)), "20 g");
        assert_eq!(mass(Mass::grams(11.5)), "11.5 g");
        assert_eq!(mass(Mass::grams(4.0)), "4 g");
        assert_eq!(mass(Mass::grams(0.04)), "0.04 g");
        assert_eq!(mass(Mass::grams(1234.4)), "1,234 g");
        assert_eq!(mass(Mass::ZERO), "0 g");
    }

    #[test]
    fn spoons_come_in_eighths() {
        assert_eq!(teaspoons(1.13), "1 1/8 tsp");
        assert_eq!(teaspoons(0.5), "1/2 tsp");
        assert_eq!(teaspoons(0.02), "a scant 1/8 tsp");
        assert_eq!(teaspoons(1.97), "2 tsp");
    }

    /// Against the standard library, and at the half, which goes away from zero.
    #[test]
    fn figures_are_those_of_the_standard_library() {
        for value in [
            0.0, 0.04, 1.0, 1.234, 9.994, 12.3456, 250.0, 99_999.87, -3.21,
        ] {
            assert_eq!(fixed(value, 2), format!("{value:.2}"));
            assert_eq!(fixed(value, 0), format!("{value:.0}"));
        }
        assert_eq!(
            (fixed(0.5, 0), fixed(-0.5, 0), fixed(-0.2, 0)),
            ("1".into(), "-1".into(), "0".into())
        );
        assert_eq!(
            (trimmed(2.50, 2), trimmed(100.0, 0)),
            ("2.5".into(), "100".into())
        );
        assert_eq!(
            (fixed(f64::NAN, 1), fixed(1e300, 0)),
            ("0.0".into(), u64::MAX.to_string())
        );
    }

    #[test]
    fn lines_are_listed_as_people_say_them() {
        assert_eq!(lines(&[4]), "line 4");
        assert_eq!(lines(&[4, 5, 7]), "lines 4, 5 and 7");
        assert_eq!(lines(&[4, 4]), "line 4");
    }
}
