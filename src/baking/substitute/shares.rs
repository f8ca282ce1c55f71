//! Unknowns that nothing tells apart, as the same ingredient on two lines, move as one and share the change.

use super::programme::{Programme, Unknown};

/// Unknowns with one price that bring the same to every row, by their places.
pub struct Together {
    members: Vec<usize>,
}

/// All unknowns, those that are alike together.
pub fn together(programme: &Programme) -> Vec<Together> {
    let alike = |one: usize, other: usize| {
        programme.unknowns[one].price == programme.unknowns[other].price
            && (programme.rows.iter()).all(|row| row.per_unit[one] == row.per_unit[other])
    };
    let mut found: Vec<Together> = Vec::new();
    for place in 0..programme.unknowns.len() {
        match found.iter_mut().find(|it| alike(it.members[0], place)) {
            Some(it) => it.members.push(place),
            None => found.push(Together {
                members: vec![place],
            }),
        }
    }
    found
}

impl Together {
    /// The place of the first.
    pub fn first(&self) -> usize {
        self.members[0]
    }

    /// The sum over its members of what `figure` says of one.
    pub fn sum(&self, figure: impl Fn(usize) -> f64) -> f64 {
        self.members.iter().map(|place| figure(*place)).sum()
    }

    /// Writes into `amounts` what the members become when they change by `change` in all: each in proportion to what
    /// was there of it, or evenly where there was nothing, as far as each may go.
    pub fn share(&self, change: f64, unknowns: &[Unknown], amounts: &mut [f64]) {
        let (mut left, mut open) = (change, self.members.clone());
        while !open.is_empty() {
            let there: f64 = open.iter().map(|place| unknowns[*place].start.abs()).sum();
            let even = 1.0 / open.len() as f64;
            for &place in &open {
                let unknown = &unknowns[place];
                let part = if there > 0.0 {
                    unknown.start.abs() / there
                } else {
                    even
                };
                amounts[place] = unknown.held() + left * part;
            }
            let fits = |place: &usize| unknowns[*place].within(amounts[*place]) == amounts[*place];
            let (rest, full): (Vec<usize>, _) = open.into_iter().partition(fits);
            if full.is_empty() {
                return;
            }
            for place in full {
                amounts[place] = unknowns[place].within(amounts[place]);
                left -= amounts[place] - unknowns[place].held();
            }
            open = rest;
        }
    }
}
