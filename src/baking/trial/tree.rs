//! The versions of a recipe and their bakes, as a tree.

use super::{Changes, Trial};
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
    /// A bake: its place among those given, and the place of the one that it is held against; `None` for the first.
    Trial(usize, Option<usize>),
}

/// Versions, each with its bakes below it, the earliest first, then the versions that were made from it. Every version comes
/// out once, and every bake of one of them. `trials` are given by the name of their record and that of their recipe's.
pub fn tree(versions: &[VersionNode], trials: &[(&str, &str, &Trial)]) -> Vec<TreeRow> {
    let at: HashMap<&str, usize> = versions
        .iter()
        .enumerate()
        .map(|(at, it)| (it.id.as_str(), at))
        .collect();
    let places: HashMap<&str, usize> = trials
        .iter()
        .enumerate()
        .map(|(at, it)| (it.0, at))
        .collect();
    let mut by_age: Vec<usize> = (0..trials.len()).collect();
    by_age.sort_by_key(|&trial| (trials[trial].2.baked, trials[trial].0));
    let mut bakes = vec![Vec::new(); versions.len()];
    for trial in by_age {
        if let Some(&version) = at.get(trials[trial].1) {
            bakes[version].push(trial);
        }
    }
    let parent = |it: &VersionNode| at.get(it.of.as_deref()?).copied();
    let parents: Vec<Option<usize>> = versions.iter().map(parent).collect();
    let mut made = vec![Vec::new(); versions.len()];
    // The last first: of those that wait the last is told next.
    for (version, parent) in parents.iter().enumerate().rev() {
        if let Some(parent) = *parent {
            made[parent].push(version);
        }
    }
    let mut tree = Tree {
        trials,
        bakes,
        made,
        places,
        is_told: vec![false; versions.len()],
        rows: Vec::new(),
    };
    for (version, parent) in parents.iter().enumerate() {
        if parent.is_none() {
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
    trials: &'a [(&'a str, &'a str, &'a Trial)],
    /// The bakes of each version, the earliest first.
    bakes: Vec<Vec<usize>>,
    /// What was made from each version.
    made: Vec<Vec<usize>>,
    places: HashMap<&'a str, usize>,
    is_told: Vec<bool>,
    rows: Vec<TreeRow>,
}

impl Tree<'_> {
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
            for trial in std::mem::take(&mut self.bakes[version]) {
                self.rows.push(TreeRow {
                    depth: depth + 1,
                    node: TreeNode::Trial(trial, self.against(trial)),
                });
            }
            waiting.extend(self.made[version].iter().map(|it| (*it, depth + 1)));
        }
    }

    /// What a bake is held against.
    fn against(&self, trial: usize) -> Option<usize> {
        let against = self.trials[trial].2.against.as_deref()?;
        let other = self.places.get(against).copied();
        other.filter(|other| *other != trial)
    }
}
