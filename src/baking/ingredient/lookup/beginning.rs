//! Offers for a name that is still being written.

use crate::baking::ingredient::{Ingredient, aliases, all};
use crate::baking::text::lower;

/// Ingredients with a name in which every written word begins a word: by their own names first, then by the
/// others that people write, and those that begin so before all others. Nothing written finds nothing.
pub fn beginning_with(written: &str, at_most: usize) -> Vec<&'static Ingredient> {
    let written = lower(written);
    let parts: Vec<&str> = written.split_whitespace().collect();
    let begins = |name: &str| {
        let words = || name.split([' ', '-', '(']);
        !parts.is_empty()
            && parts
                .iter()
                .all(|part| words().any(|word| word.starts_with(part)))
    };
    let shown = || {
        all()
            .iter()
            .map(|ingredient| (lower(ingredient.name), ingredient))
    };
    let named = || {
        aliases()
            .iter()
            .map(|alias| (alias.name.to_owned(), &all()[alias.index]))
    };
    // Names that begin so come before names with a later word that does.
    let first = |name: &str| begins(name) && name.starts_with(written.trim());
    let ranked = (shown().filter(|(name, _)| first(name)))
        .chain(named().filter(|(name, _)| first(name)))
        .chain(shown().filter(|(name, _)| begins(name)))
        .chain(named().filter(|(name, _)| begins(name)));
    let mut found: Vec<&'static Ingredient> = Vec::new();
    for (_, ingredient) in ranked {
        if found.len() == at_most {
            break;
        }
        if !found.iter().any(|known| known.key == ingredient.key) {
            found.push(ingredient);
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::beginning_with;

    #[test]
    fn ingredients_are_found_by_the_beginnings_of_words() {
        let found = beginning_with("Butterm", 6);
        assert!(
            found
                .iter()
                .any(|ingredient| ingredient.key == "buttermilk")
        );
        assert!(found.len() <= 6);
        assert_eq!(beginning_with("but", 6)[0].key, "butter");
        assert!(beginning_with("zzz", 6).is_empty());
        assert!(beginning_with("  ", 6).is_empty());
    }
}
