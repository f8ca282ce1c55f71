//! Lines with every figure doubled, by their text alone: nothing of the reader is used.

/// A number as it stands in a line: its value as a mixed fraction, and where it ends.
struct Numeral {
    over: u64,
    under: u64,
    end: usize,
}

const SIGNS: [(char, u64, u64); 10] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅕', 1, 5),
];

/// A run of figures and its value.
fn whole(text: &[char], at: usize) -> Option<(u64, usize)> {
    let figures = text
        .iter()
        .skip(at)
        .take_while(|sign| sign.is_ascii_digit());
    let figures: String = figures.collect();
    Some((figures.parse().ok()?, at + figures.len()))
}

/// "1/2" or "½", less than one.
fn part(text: &[char], at: usize) -> Option<Numeral> {
    if let Some((_, over, under)) = SIGNS.iter().find(|sign| text.get(at) == Some(&sign.0)) {
        return Some(Numeral {
            over: *over,
            under: *under,
            end: at + 1,
        });
    }
    let (over, slash) = whole(text, at)?;
    let (under, end) = whole(text, slash + 1).filter(|_| text.get(slash) == Some(&'/'))?;
    (over < under).then_some(Numeral { over, under, end })
}

/// "3", "1.5", ".5", "3/4", "1 1/2", "1½", "1-1/2".
fn numeral(text: &[char], at: usize) -> Option<Numeral> {
    if let Some(part) = part(text, at) {
        return Some(part);
    }
    let starts_with_point = text[at] == '.' && (at == 0 || text[at - 1] == ' ');
    let (value, end) = whole(text, at).or(starts_with_point.then_some((0, at)))?;
    if text.get(end) == Some(&'.')
        && let Some((tenths, after)) = whole(text, end + 1)
    {
        let under = 10_u64.pow(u32::try_from(after - end - 1).ok()?);
        return Some(Numeral {
            over: value * under + tenths,
            under,
            end: after,
        });
    }
    let gap = usize::from(matches!(text.get(end), Some(' ' | '-')));
    match part(text, end + gap) {
        Some(part) => Some(Numeral {
            over: value * part.under + part.over,
            ..part
        }),
        None => (!starts_with_point).then_some(Numeral {
            over: value,
            under: 1,
            end,
        }),
    }
}

/// The line with every number twice as large, and how many numbers it has.
pub fn doubled(line: &str) -> (String, usize) {
    let text: Vec<char> = line.chars().collect();
    let (mut out, mut count, mut at) = (String::new(), 0, 0);
    while at < text.len() {
        let Some(found) = numeral(&text, at) else {
            out.push(text[at]);
            at += 1;
            continue;
        };
        let twice = 2 * found.over;
        let (whole, rest, under) = (twice / found.under, twice % found.under, found.under);
        out += &match (whole, rest) {
            (_, 0) => format!("{whole}"),
            (_, _) if under.is_multiple_of(10) => format!("{}", twice as f64 / under as f64),
            (0, _) => format!("{rest}/{under}"),
            (_, _) => format!("{whole} {rest}/{under}"),
        };
        count += 1;
        at = found.end;
    }
    (out, count)
}

#[test]
fn figures_are_doubled_however_they_are_written() {
    for (line, twice, count) in [
        ("1 cup milk", "2 cup milk", 1),
        ("1 1/2 cups", "3 cups", 1),
        ("1½ cups", "3 cups", 1),
        ("2/3 cup", "1 1/3 cup", 1),
        ("1/8 tsp", "2/8 tsp", 1),
        ("0.75 kg", "1.5 kg", 1),
        (".5 cup . 1", "1 cup . 2", 2),
        ("2-3 eggs", "4-6 eggs", 2),
        ("1-1/4 cups (150g)", "2 2/4 cups (300g)", 2),
        ("a cup", "a cup", 0),
    ] {
        assert_eq!(doubled(line), (twice.to_owned(), count), "{line}");
    }
}
