//! Every row of the tables of signs and causes.

use batterwright::baking::diagnosis::{Figure, Place, causes, signs};
use std::collections::BTreeSet;

/// So many signs are asked for; every one has words, a table, and causes of which each is named once.
#[test]
fn every_sign_has_causes_with_their_tables() {
    assert!(signs().len() >= 25, "{}", signs().len());
    for sign in signs() {
        assert!(!sign.words.is_empty() && sign.tables > 0, "{}", sign.key);
        let mut places = BTreeSet::new();
        for named in &sign.named {
            assert!(causes().get(named.cause).is_some(), "{}", sign.key);
            assert!(places.insert(named.cause), "{} names one twice", sign.key);
            assert!(!named.sources.is_empty() && named.sources.len() <= sign.tables);
            assert!(
                named
                    .sources
                    .iter()
                    .all(|source| !source.citation.is_empty())
            );
        }
    }
}

/// Every cause is named for a sign, says what would tell it and what mends it, each in whole sentences; what raw batter, mould or
/// a swap bring is minded.
#[test]
fn every_cause_can_be_answered_for() {
    for cause in causes() {
        let place = causes().iter().position(|it| it.key == cause.key);
        let place = place.expect("its own place");
        assert!(
            signs().iter().any(|sign| !sign.sources(place).is_empty()),
            "{}",
            cause.key
        );
        for words in [cause.how, cause.tells, cause.remedy] {
            assert!(words.ends_with(['.', '?']), "{}: {words}", cause.key);
        }
        assert!((1.0..=3.0).contains(&cause.prior), "{}", cause.key);
        if cause.place == Place::Formula {
            assert_ne!(
                cause.figure,
                Figure::None,
                "{} stands in the formula",
                cause.key
            );
        }
    }
    for key in ["underbaked", "mould", "egg_little", "ammonia"] {
        let found = causes().iter().find(|cause| cause.key == key);
        assert!(
            found.is_some_and(|cause| !cause.caution.is_empty()),
            "{key}"
        );
    }
}

/// Typed by hand from the tables read: Gisslen names four causes of a low cake, a supplier too much liquid alone for fallen
/// sides, McGee uneven soda for brown specks.
#[test]
fn tables_are_as_they_were_read() {
    let named = |sign: &str, table: &str| {
        let sign = signs().iter().find(|it| it.key == sign).expect("a sign");
        let of_table = sign
            .named
            .iter()
            .filter(|named| named.sources.iter().any(|source| source.key == table));
        of_table
            .map(|named| causes()[named.cause].key)
            .collect::<Vec<_>>()
    };
    assert_eq!(
        named("low", "gisslen_faults"),
        ["flour_little", "gas_little", "liquid_much", "oven_hot"]
    );
    assert_eq!(named("sides_in", "supplier_faults"), ["liquid_much"]);
    assert_eq!(named("brown_spots", "mcgee"), ["soda_lumps"]);
    assert_eq!(
        named("dense", "gisslen_faults"),
        [
            "fat_much",
            "gas_little",
            "liquid_much",
            "oven_cool",
            "sugar_much"
        ]
    );
}
