//! How much of the room that a browser gives a page is used, and for how many more recipes there is some.

use crate::baking::quantity::show;

/// The letters, of keys and of values, that a browser keeps for one site in local storage. The HTML standard suggests
/// five megabytes, without saying of what; that browsers count 5 * 2^20 letters is common practice, from memory. No
/// browser tells its limit, so it is corrected by what one refuses.
pub const USUAL: usize = 5 * 1024 * 1024;
/// A recipe of usual length with what is chosen for it, in letters: a judgement of our own.
const USUAL_RECIPE: usize = 1_500;
/// A shelf of so many recipes tells better how long they are.
const TELLING: usize = 10;
/// With room for fewer recipes than this, it is time to say so.
const FEW: usize = 25;

/// What is kept, in letters, and what is known of the limit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Room {
    /// Recipes.
    pub recipes: usize,
    /// What they take.
    pub of_recipes: usize,
    /// What bakes that were written down take.
    pub of_trials: usize,
    /// What rests in the bin.
    pub of_bin: usize,
    /// The rest of what is this page's own: settings, own ingredients, the list of the shelf, the reserve.
    pub of_rest: usize,
    /// What other pages of the same site keep.
    pub of_others: usize,
    /// So many letters the store has refused to hold.
    pub refused: Option<usize>,
}

impl Room {
    /// All that is kept, in letters.
    pub fn used(&self) -> usize {
        self.of_recipes + self.of_trials + self.of_bin + self.of_rest + self.of_others
    }

    /// What was refused, where that tells more than is known of browsers, and the store has not come to hold as much since.
    fn refused_below_usual(&self) -> Option<usize> {
        self.refused
            .filter(|refused| *refused < USUAL && *refused > self.used())
    }

    /// The limit, as well as it is known: what the browser refused, or else the usual one; never less than there is.
    pub fn limit(&self) -> usize {
        self.refused_below_usual().unwrap_or(USUAL).max(self.used())
    }

    /// Used of the limit, from 0 to 1.
    pub fn share(&self) -> f64 {
        // The limit is at least what is used, and where nothing is, nothing was refused either.
        self.used() as f64 / self.limit().max(1) as f64
    }

    /// What a recipe takes here, by the mean of the shelf, and what such a recipe is called.
    fn of_a_recipe(&self) -> (usize, &'static str) {
        match self.recipes {
            // Too few to tell by.
            0..TELLING => (USUAL_RECIPE, "of usual length"),
            many => ((self.of_recipes / many).max(1), "like yours"),
        }
    }

    /// For how many more recipes there is room, if they are like those of the shelf.
    pub fn more_recipes(&self) -> usize {
        (self.limit() - self.used()) / self.of_a_recipe().0
    }

    /// Whether the room is running short.
    pub fn is_short(&self) -> bool {
        self.more_recipes() < FEW
    }

    /// How much is used and how much is left, in a sentence or two.
    pub fn sentence(&self) -> String {
        let (_, like) = self.of_a_recipe();
        let left = match self.more_recipes() {
            0 => "There is no room for another recipe.".to_owned(),
            1 => format!("There is room for about one more recipe {like}."),
            more => format!(
                "There is room for about {} more recipes {like}.",
                show::count_about(more)
            ),
        };
        format!("{} used. {left}", show::fullness(self.share()))
    }

    /// How the limit is got and how sure it is.
    pub fn how(&self) -> String {
        match self.refused_below_usual() {
            Some(refused) => format!(
                "This browser has refused to keep {} letters, so that is taken for its limit.",
                show::count(refused)
            ),
            None => format!(
                "No browser tells how many letters it keeps for a page. Most stop at {} (common practice, from memory; the \
                 HTML standard suggests five megabytes). That is put right when this one refuses to keep as many.",
                show::count(self.limit())
            ),
        }
    }

    /// What the used room is used for: words and letters.
    pub fn parts(&self) -> Vec<(&'static str, String)> {
        let parts = [
            ("Recipes", self.of_recipes),
            ("Trials", self.of_trials),
            ("Bin", self.of_bin),
            ("Settings, own ingredients, list, reserve", self.of_rest),
            ("Other pages of this site", self.of_others),
        ];
        let used = parts.into_iter().filter(|(_, letters)| *letters > 0);
        used.map(|(what, letters)| (what, format!("{} letters", show::count(letters))))
            .collect()
    }
}
