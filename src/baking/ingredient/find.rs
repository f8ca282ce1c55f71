//! Looking an ingredient up by a few letters of any of its names, with the name that they are of.

use super::own::OwnEntry;
use super::{Alias, Group, Region, aliases, all, lookup};
use crate::baking::text::lower;

/// An ingredient that was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Hit {
    /// Its key, of the tables or of a baker's own.
    pub key: String,
    /// Its name.
    pub name: String,
    /// The family it belongs to.
    pub group: Group,
    /// The name that was written, where it is another than its own.
    pub by: Option<String>,
    /// Where that name has this meaning; empty where everywhere.
    pub regions: Vec<Region>,
}

/// How well a name fits what was written: the lower, the better.
fn rank(name: &str, written: &str, parts: &[&str]) -> Option<u8> {
    if name == written {
        return Some(0);
    }
    if name.starts_with(written) {
        return Some(1);
    }
    let words = || name.split([' ', '-', '(', ',']);
    let fits = |part: &&str| words().any(|word| word.starts_with(part));
    parts.iter().all(fits).then_some(2)
}

/// Ingredients with a name in which every written word begins a word: names that are what was written first, a baker's
/// own before the tables', words of this country before those of others. Nothing written finds nothing.
pub fn find(written: &str, own: &[OwnEntry], region: Region, at_most: usize) -> Vec<Hit> {
    let found = find_written(&lower(written.trim()), own, region, at_most);
    if !found.is_empty() {
        return found;
    }
    // Accents and plurals that the tables do not have.
    let plain: Vec<String> = written.split_whitespace().map(lookup::plain_word).collect();
    find_written(&plain.join(" "), own, region, at_most)
}

fn find_written(written: &str, own: &[OwnEntry], region: Region, at_most: usize) -> Vec<Hit> {
    let parts: Vec<&str> = written.split_whitespace().collect();
    if parts.is_empty() {
        return Vec::new();
    }
    let mut hits: Vec<(u8, Hit)> = Vec::new();
    for entry in own {
        for (place, name) in entry.names().enumerate() {
            if let Some(rank) = rank(&lower(name), written, &parts) {
                let hit = Hit {
                    key: entry.key.clone(),
                    name: entry.shown_name(),
                    group: Group::Own,
                    by: (place > 0).then(|| name.to_owned()),
                    regions: Vec::new(),
                };
                hits.push((rank * 2, hit));
            }
        }
    }
    let of_table = |index: usize, by: Option<&Alias>| {
        let known = &all()[index];
        Hit {
            key: known.key.to_owned(),
            name: known.name.to_owned(),
            group: known.group,
            by: by.map(|alias| alias.name.to_owned()),
            regions: Vec::new(),
        }
    };
    for (index, known) in all().iter().enumerate() {
        if let Some(rank) = rank(&lower(known.name), written, &parts) {
            hits.push((rank * 2, of_table(index, None)));
        }
    }
    for alias in aliases() {
        if let Some(rank) = rank(alias.name, written, &parts) {
            let elsewhere = alias.region.is_some_and(|there| there != region);
            hits.push((
                rank * 2 + u8::from(elsewhere),
                of_table(alias.index, Some(alias)),
            ));
        }
    }
    // The order within a rank stays: own ones, then names, then other names. Picked rank by rank: a sort is more code.
    let mut found: Vec<Hit> = Vec::new();
    let ranks = 0..=5;
    let ranked = ranks.flat_map(|rank| hits.iter().filter(move |(its, _)| *its == rank));
    for (_, hit) in ranked {
        if found.len() == at_most {
            break;
        }
        if found.iter().any(|known| known.key == hit.key) {
            continue;
        }
        found.push(Hit {
            regions: regions(hit),
            ..hit.clone()
        });
    }
    found
}

/// Where the name of a hit has its meaning.
fn regions(hit: &Hit) -> Vec<Region> {
    let Some(by) = &hit.by else {
        return Vec::new();
    };
    aliases()
        .iter()
        .filter(|alias| alias.name == by && all()[alias.index].key == hit.key)
        .filter_map(|alias| alias.region)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn first(written: &str, region: Region) -> Option<Hit> {
        find(written, &[], region, 8).into_iter().next()
    }

    #[track_caller]
    fn finds(written: &str, region: Region, key: &str) -> Hit {
        let found = first(written, region).unwrap_or_else(|| panic!("{written} finds nothing"));
        assert_eq!(found.key, key, "{written}");
        found
    }

    #[test]
    fn any_name_of_any_country_finds_it() {
        let hit = finds("bicarb", Region::Us, "baking_soda");
        assert_eq!((hit.by.as_deref(), hit.regions.len()), (Some("bicarb"), 0));
        finds("caster sugar", Region::Us, "caster_sugar");
        // The same word on the two sides of the Atlantic.
        let hit = finds("cornflour", Region::Uk, "corn_starch");
        assert_eq!(hit.regions, [Region::Au, Region::Nz, Region::Uk]);
        finds("cornflour", Region::Us, "corn_flour");
        let both = find("cornflour", &[], Region::Us, 8);
        assert!(both.iter().any(|hit| hit.key == "corn_starch"));
    }

    #[test]
    fn letters_case_plurals_and_accents_are_forgiven() {
        finds("Butterm", Region::Us, "buttermilk");
        finds("  EGGS ", Region::Us, "egg");
        assert!(first("purées", Region::Us).is_some());
        assert_eq!(first("", Region::Us), None);
        assert_eq!(first("zzz", Region::Us), None);
    }

    #[test]
    fn a_bakers_own_come_first() {
        let own = OwnEntry {
            key: "own/1".into(),
            name: "Hazel block".into(),
            also_called: "butter of the stall".into(),
            ..OwnEntry::default()
        };
        let found = find("butter", std::slice::from_ref(&own), Region::Us, 20);
        assert_eq!(found[0].key, "butter");
        let ours = found.iter().find(|hit| hit.key == "own/1");
        assert_eq!(
            ours.and_then(|hit| hit.by.as_deref()),
            Some("butter of the stall")
        );
        let found = find("hazel", &[own], Region::Us, 20);
        assert_eq!(found[0].name, "Hazel block");
        assert!(found[1..].iter().any(|hit| hit.key.starts_with("hazelnut")));
    }
}
