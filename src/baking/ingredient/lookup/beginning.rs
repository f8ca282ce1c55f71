//! Offers for a name that is still being written.

use crate::baking::ingredient::{Ingredient, aliases, all};
use crate::baking::text::lower;

/// Ingredients with a name in which every written word begins a word: by their own names first, then by the
/// others that people write. Nothing written finds nothing.
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
    let shown = all()
        .iter()
        .filter(|ingredient| begins(&lower(ingredient.name)));
    let named = aliases()
        .iter()
        .filter(|alias| begins(alias.name))
        .map(|alias| &all()[alias.index]);
    let mut found: Vec<&'static Ingredient> = Vec::new();
    for ingredient in shown.chain(named) {
        if found.len() < at_most && !found.iter().any(|known| known.key == ingredient.key) {
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
        assert!(beginning_with("zzz", 6).is_empty());
        assert!(beginning_with("  ", 6).is_empty());
    }
}
