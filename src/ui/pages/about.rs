//! How the figures are got, how far to trust them, and what this page cannot know.

use crate::baking::{ingredient, source};
use crate::ui::dom::{Element, element};
use crate::ui::parts::fact;
use leptos::prelude::document;

const STEPS: [(&str, &str); 6] = [
    (
        "Reading",
        "Each line is read for its amounts, measures and ingredients, in the words of the country that the recipe's own words tell. A line that cannot be read stays, is marked, and keeps totals from claiming what they do not know. Touch a line to mend it; what you mend is remembered for the same words.",
    ),
    (
        "Weighing",
        "A cup is not one weight: it depends on how it was filled. Each weight carries the range in which nine cups in ten fall. A weight written in the recipe, or given by you, beats a cup.",
    ),
    (
        "Percentages",
        "All the flour is 100 %, and everything else is set against it, as bakers do.",
    ),
    (
        "Acid and soda",
        "Acids, soda and whatever buffers are counted in milliequivalents and set against one another. Where the spread covers both sides of a limit, the verdict says so.",
    ),
    (
        "Gas",
        "Carbon dioxide from soda and powder, against what a batter of that much flour can use.",
    ),
    (
        "Pan",
        "Volumes by geometry from inside sizes; what charts print is never reckoned with. The factor fills the other pans as high as the recipe fills its own, part for part. Batter is shared out so that it stands equally deep, or to the same share of depths that differ by more than a third.",
    ),
];

const LIMITS: [&str; 5] = [
    "Figures are estimates from tables; your flour, fruit and powder differ from them. Where it matters, use a scale and bake a trial.",
    "Allergens are a help and never a guarantee. Read every packet, and mind what shares your kitchen.",
    "Raw flour and raw egg are not to be eaten, in batter or in dough.",
    "If you sell what you bake, local food rules and licensed practice decide, not this page.",
    "Nothing that you write leaves this device. Clearing this browser's data removes your recipes with it.",
];

/// The page about the figures.
pub fn about() -> Element {
    document().set_title("About · Batterwright");
    let head = |words: &'static str| element("h2").class("part__title").text(words);
    let words = |words: &'static str| element("p").text(words);
    let count = format!(
        "The tables hold {} ingredients under {} names.",
        ingredient::all().len(),
        ingredient::aliases().len()
    );
    element("div").class("sheet").children([
        element("h1").class("sheet__title").text("About the figures"),
        words("Batterwright turns a recipe in cups into grams with their spread, sets its acid against its soda, and rescales it for another pan. It works without a network."),
        head("How they are got"),
        element("dl").class("facts").children(STEPS.iter().map(|(name, words)| fact(name, *words))),
        head("How far to trust them"),
        words("Each figure names its source and one of these: published, worked out from published figures, common practice without a source, or from memory. The last two are the ones to doubt first. What you give of an ingredient of your own is called your own."),
        head("Limits and cautions"),
        element("ul").class("plain-list").children(LIMITS.iter().map(|words| element("li").text(*words))),
        head("Sources"),
        element("p").text(count),
        element("ul").class("sources").children(
            source::all().iter().map(|source| element("li").class("sources__source").text(source.citation)),
        ),
        head("Licence"),
        words("Free to use, change and share under the MIT licence or the Apache licence 2.0, as you choose. There is no warranty."),
    ])
}
