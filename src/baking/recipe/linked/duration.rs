//! A length of time as ISO 8601 writes it ("PT1H5M"), in words.

use crate::baking::text::decimal;

/// The length of time in words; `None` where it is not written so, or is no time at all.
pub fn words(text: &str) -> Option<String> {
    let minutes = minutes(text.trim())?;
    if !(0.5..1e6).contains(&minutes) {
        return None;
    }
    let minutes = (minutes + 0.5) as u32;
    let mut out = String::new();
    for (count, noun) in [
        (minutes / 1440, "day"),
        (minutes / 60 % 24, "hour"),
        (minutes % 60, "minute"),
    ] {
        if count > 0 {
            if !out.is_empty() {
                out.push(' ');
            }
            out.push_str(&count.to_string());
            out.push(' ');
            out.push_str(noun);
            if count > 1 {
                out.push('s');
            }
        }
    }
    Some(out)
}

/// Whether the text is written as ISO 8601 writes lengths of time.
pub fn is_one(text: &str) -> bool {
    minutes(text.trim()).is_some()
}

fn minutes(text: &str) -> Option<f64> {
    let mut rest = text.strip_prefix(['P', 'p'])?;
    let (mut sum, mut in_day, mut count) = (0.0, false, 0);
    while !rest.is_empty() {
        if let Some(after) = rest.strip_prefix(['T', 't']) {
            in_day = true;
            rest = after;
            continue;
        }
        let end = rest.find(|sign: char| !(sign.is_ascii_digit() || sign == '.'))?;
        let unit = match (rest.as_bytes()[end].to_ascii_uppercase(), in_day) {
            (b'W', false) => 7.0 * 1440.0,
            (b'D', false) => 1440.0,
            (b'H', true) => 60.0,
            (b'M', true) => 1.0,
            (b'S', true) => 1.0 / 60.0,
            // No cake takes months; zero is what programs write there.
            (b'Y' | b'M', false) => 0.0,
            _ => return None,
        };
        sum += decimal(&rest[..end])? * unit;
        rest = &rest[end + 1..];
        count += 1;
    }
    (count > 0).then_some(sum)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_of_time_are_put_in_words() {
        for (text, expected) in [
            ("PT35M", Some("35 minutes")),
            ("PT1H5M", Some("1 hour 5 minutes")),
            ("PT90M", Some("1 hour 30 minutes")),
            ("P0Y0M0DT0H20M0.000S", Some("20 minutes")),
            ("P1DT2H", Some("1 day 2 hours")),
            ("PT1.5H", Some("1 hour 30 minutes")),
            ("PT60S", Some("1 minute")),
            ("PT0M", None),
            ("P", None),
            ("PT", None),
            ("PT5", None),
            ("PTM", None),
            ("PT5X", None),
            ("PT5é", None),
            ("35 minutes", None),
            ("PT99999999999999999999999M", None),
        ] {
            assert_eq!(words(text).as_deref(), expected, "{text}");
        }
        assert!(is_one("PT0M") && !is_one("soon"));
    }
}
