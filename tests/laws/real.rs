//! Real lines of recipes, for the laws.

/// The lines of the tables of readings.
pub fn real_lines() -> Vec<String> {
    [
        include_str!("../read/lines.tsv"),
        include_str!("../read/own.tsv"),
        include_str!("../read/public_domain.tsv"),
    ]
    .iter()
    .flat_map(|table| table.lines())
    .filter(|row| !row.starts_with('#'))
    .filter_map(|row| row.split('\t').nth(2))
    .map(|line| line.replace("\\t", "\t"))
    .collect()
}
