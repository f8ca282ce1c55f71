//! Which recipes belong together on a shelf.

use std::collections::HashMap;

/// The order of a shelf: each recipe with all versions of it, and of those, right behind it.
///
/// Goes in: each record's name and the name of the one that it is a version of. Comes out: places in that list, one family
/// after another, in the order in which the first of each stands there. Every place comes out once: a version of what is
/// gone, or of itself in a circle, stands by itself.
pub fn families(records: &[(&str, Option<&str>)]) -> Vec<Vec<usize>> {
    let places: HashMap<&str, usize> = records
        .iter()
        .enumerate()
        .map(|(at, (name, _))| (*name, at))
        .collect();
    let first = |at: usize| {
        let mut first = at;
        // No chain is longer than the list; a circle is.
        for _ in 0..records.len() {
            match records[first].1.and_then(|of| places.get(of)) {
                Some(&of) => first = of,
                None => return first,
            }
        }
        at
    };
    let mut families: Vec<Vec<usize>> = Vec::new();
    let mut heads: HashMap<usize, usize> = HashMap::new();
    for at in 0..records.len() {
        let head = first(at);
        let family = *heads.entry(head).or_insert_with(|| {
            families.push(vec![head]);
            families.len() - 1
        });
        if at != head {
            families[family].push(at);
        }
    }
    families
}
