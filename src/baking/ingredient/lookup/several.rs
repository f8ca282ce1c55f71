//! Names that hold several ingredients: "butter or margarine", "salt and pepper".

use super::Match;
use super::index::Index;
use super::{Found, capital, members, parts, sure, words};
use crate::baking::ingredient::Larder;

/// "Butter or margarine", "vegetable or canola oil": the first is taken, the others are offered.
pub fn one_of(
    index: &Index,
    left: &[String],
    right: &[String],
    larder: Larder<'_>,
) -> Option<Found> {
    let right_found = parts(index, right, larder);
    // "Almond or vanilla extract": the last words belong to both.
    let mut first = None;
    let shared_until = right
        .iter()
        .position(|word| words::cuts(word) || words::is_or(word))
        .unwrap_or(right.len());
    let right_head = &right[..shared_until];
    if !left.is_empty() {
        // "Molasses or brown sugar" is no molasses sugar: most heads are only shared by what is no thing of its own.
        let stands_alone = index.whole(left, larder).is_some();
        for from in 1..right_head.len() {
            let is_shared = right_head
                .last()
                .is_some_and(|head| words::is_shared_head(head));
            if stands_alone && !is_shared {
                break;
            }
            let mut whole = index.undescribed(left);
            whole.extend_from_slice(&right_head[from..]);
            if let Some(matched) = index.whole(&whole, larder) {
                first = Some(sure(matched, &whole));
                break;
            }
        }
        first = first.or_else(|| parts(index, left, larder));
    }
    let Some(mut found) = first else {
        // Nothing known stands first: "good quality or other butter".
        let mut found = right_found?;
        if left.iter().any(|word| !index.is_describing(word))
            && let Some(ingredient) = found.matched.taken()
        {
            found.doubts.push(format!(
                "\"{}\" is not in the tables; {} is taken.",
                left.join(" "),
                ingredient.name
            ));
        }
        return Some(found);
    };
    let Some(other) = right_found.filter(|other| other.doubts.is_empty()) else {
        return Some(found);
    };
    let (Some(one), Some(two)) = (found.matched.taken(), other.matched.taken()) else {
        return Some(found);
    };
    if one.key != two.key {
        let mut several = members(&found.matched);
        several.extend(
            members(&other.matched)
                .into_iter()
                .filter(|ingredient| ingredient.key != one.key),
        );
        if one.group != two.group {
            found.doubts.push(format!(
                "{} or {}: the first is taken.",
                capital(one.name),
                two.name
            ));
        }
        found.matched = Match::OneOf(several);
    }
    Some(found)
}

/// "Salt and pepper": the first is taken, the other named.
pub fn both(index: &Index, left: &[String], right: &[String], larder: Larder<'_>) -> Option<Found> {
    // "Lemon and orange zest".
    if let Some(last) = right.last().filter(|_| right.len() > 1) {
        let mut whole = left.to_vec();
        whole.push(last.clone());
        if let Some(matched) = index.whole(&whole, larder) {
            let mut found = sure(matched, &whole);
            found.also = parts(index, right, larder)
                .and_then(|other| other.matched.taken())
                .into_iter()
                .collect();
            return Some(found);
        }
    }
    let left_found = parts(index, left, larder);
    let right_found = parts(index, right, larder);
    match (left_found, right_found) {
        (Some(mut found), Some(other)) => {
            found.also.extend(
                other
                    .matched
                    .taken()
                    .filter(|two| found.matched.taken().is_some_and(|one| one.key != two.key)),
            );
            found.also.extend(other.also);
            Some(found)
        }
        (Some(mut found), None) => {
            found.doubts.push(format!(
                "\"{}\" is not in the tables. Give it a line of its own.",
                right.join(" ")
            ));
            Some(found)
        }
        (None, Some(mut found)) => {
            found.doubts.push(format!(
                "\"{}\" is not in the tables. Give it a line of its own.",
                left.join(" ")
            ));
            Some(found)
        }
        (None, None) => None,
    }
}
