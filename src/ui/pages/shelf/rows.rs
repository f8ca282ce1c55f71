//! The rows of the list: a family of versions each, under keys that stay while the family does.

use crate::baking::saved::{Listed, families};
use crate::baking::text::{holds, lower};
use std::collections::HashMap;
use std::sync::Arc;

/// A key holds the place of a family's first recipe, times this, and how often that family has changed.
const CHANGES: usize = 64;

/// A recipe with its versions behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Family {
    /// Its key among the rows; keys rise from row to row.
    key: usize,
    /// The recipe, then its versions.
    pub members: Vec<Arc<Listed>>,
}

/// All rows, as they are and as they were given keys.
#[derive(Default)]
pub struct Rows {
    families: Vec<Family>,
    /// The place of each recipe that was ever listed here.
    places: HashMap<String, usize>,
}

impl Rows {
    /// The rows of these recipes, in their order. A family that is as it was keeps its key, so that it is not drawn again.
    pub fn change(&mut self, recipes: &[Arc<Listed>]) {
        self.give_places(recipes);
        let of = |listed: &Arc<Listed>| Some(listed.version.as_ref()?.of.clone());
        let of: Vec<Option<String>> = recipes.iter().map(of).collect();
        let records: Vec<(&str, Option<&str>)> = recipes
            .iter()
            .zip(&of)
            .map(|(listed, of)| (listed.id.as_str(), of.as_deref()))
            .collect();
        let before: HashMap<usize, Family> = std::mem::take(&mut self.families)
            .into_iter()
            .map(|family| (family.key / CHANGES, family))
            .collect();
        for family in families(&records) {
            let members: Vec<Arc<Listed>> = family.iter().map(|at| recipes[*at].clone()).collect();
            let places = members.iter().filter_map(|it| self.places.get(&it.id));
            let place = places.min().copied().unwrap_or_default();
            let key = match before.get(&place) {
                Some(same) if same.members == members => same.key,
                Some(other) => place * CHANGES + (other.key + 1) % CHANGES,
                None => place * CHANGES,
            };
            self.families.push(Family { key, members });
        }
    }

    /// Places rise with the order of the list. Where they no longer do, all get new ones behind all that were given.
    fn give_places(&mut self, recipes: &[Arc<Listed>]) {
        let places = recipes.iter().map(|it| self.places.get(&it.id).copied());
        let mut least = Some(0);
        for place in places {
            least = match (least, place) {
                (Some(least), Some(place)) if place >= least => Some(place + 1),
                _ => None,
            };
        }
        if least.is_some() {
            return;
        }
        let first = self.places.values().max().map_or(0, |last| last + 1);
        let in_order = recipes.iter().zip(first..);
        self.places = in_order.map(|(it, place)| (it.id.clone(), place)).collect();
    }

    /// How many recipes there are.
    pub fn recipes(&self) -> usize {
        self.families.iter().map(|it| it.members.len()).sum()
    }

    /// The family of a key.
    pub fn family(&self, key: usize) -> Option<&Family> {
        let at = self.families.binary_search_by_key(&key, |it| it.key).ok()?;
        self.families.get(at)
    }

    /// The keys of the families of which one recipe's title, with its version's name, has all of these words.
    pub fn found(&self, asked: &str) -> Vec<usize> {
        let asked = lower(asked);
        let words: Vec<&str> = asked.split_whitespace().collect();
        let found = self.families.iter().filter(|it| has_words(it, &words));
        found.map(|it| it.key).collect()
    }
}

fn has_words(family: &Family, words: &[&str]) -> bool {
    words.is_empty()
        || family.members.iter().any(|listed| {
            let called = lower(&listed.called());
            words.iter().all(|word| holds(&called, word))
        })
}
