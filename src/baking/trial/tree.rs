//! The versions of a recipe and their bakes, as a tree.

use super::{Changes, Trial, changes};
use serde::Serialize;
use std::collections::HashMap;

/// A recipe, or a version of one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct VersionNode {
    /// The name of its record.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// The name of the record that it was made from.
    pub of: Option<String>,
    /// What it changed of what it was made from; `None` for what stands by itself.
    pub changes: Option<Changes>,
}

/// A row of the tree.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TreeRow {
    /// How many steps it stands in.
    pub depth: usize,
    /// What stands there.
    pub node: TreeNode,
}

/// What stands in a row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum TreeNode {
    /// A version: its place among those given.
    Version(usize),
    /// A bake: its place among those given, and what changed against the one that it is held against, which is named
    /// by its place; `None` for the first.
    Trial(usize, Option<(usize, Changes)>),
}

/// Versions, each with its bakes below it, the earliest first, then the versions that were made from it. Every version comes
/// out once, and every bake of one of them. `trials` are given by the name of their record and that of their recipe's.
pub fn tree(versions: &[VersionNode], trials: &[(&str, &str, &Trial)]) -> Vec<TreeRow> {
    let at: HashMap<&str, usize> = versions
        .iter()
        .enumerate()
        .map(|(at, it)| (it.id.as_str(), at))
        .collect();
    let mut by_age: Vec<usize> = (0..trials.len()).collect();
    by_age.sort_by_key(|&trial| (trials[trial].2.baked, trials[trial].0));
    let places: HashMap<&str, usize> = trials
        .iter()
        .enumerate()
        .map(|(at, it)| (it.0, at))
        .collect();
    let mut tree = Tree {
        versions,
        trials,
        at,
        by_age,
        places,
        is_told: vec![false; versions.len()],
        rows: Vec::new(),
    };
    for version in 0..versions.len() {
        if tree.parent(version).is_none() {
            tree.tell(version, 0);
        }
    }
    // What is a version of itself in a circle stands by itself.
    for version in 0..versions.len() {
        tree.tell(version, 0);
    }
    tree.rows
}

/// A tree that is being told.
struct Tree<'a> {
    versions: &'a [VersionNode],
    trials: &'a [(&'a str, &'a str, &'a Trial)],
    at: HashMap<&'a str, usize>,
    by_age: Vec<usize>,
    places: HashMap<&'a str, usize>,
    is_told: Vec<bool>,
    rows: Vec<TreeRow>,
}

impl Tree<'_> {
    fn parent(&self, version: usize) -> Option<usize> {
        self.at.get(self.versions[version].of.as_deref()?).copied()
    }

    /// Tells a version with all that is below it; the ones that wait are a list, so that no chain is too long.
    fn tell(&mut self, version: usize, depth: usize) {
        let mut waiting = vec![(version, depth)];
        while let Some((version, depth)) = waiting.pop() {
            if std::mem::replace(&mut self.is_told[version], true) {
                continue;
            }
            self.rows.push(TreeRow {
                depth,
                node: TreeNode::Version(version),
            });
            let id = self.versions[version].id.as_str();
            let own = self
                .by_age
                .iter()
                .filter(|&&trial| self.trials[trial].1 == id);
            self.rows.extend(own.map(|&trial| TreeRow {
                depth: depth + 1,
                node: TreeNode::Trial(trial, against(trial, self.trials, &self.places)),
            }));
            let made = (0..self.versions.len()).rev();
            let made = made.filter(|&it| self.parent(it) == Some(version));
            waiting.extend(made.map(|it| (it, depth + 1)));
        }
    }
}

/// What a bake is held against, and what changed.
fn against(
    trial: usize,
    trials: &[(&str, &str, &Trial)],
    places: &HashMap<&str, usize>,
) -> Option<(usize, Changes)> {
    let (_, _, it) = trials[trial];
    let other = *places.get(it.against.as_deref()?)?;
    (other != trial).then(|| (other, changes(trials[other].2, it)))
}
