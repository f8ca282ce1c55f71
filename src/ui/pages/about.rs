//! How the figures are got, how far to trust them, and what this page cannot know.

use crate::baking::{ingredient, source};
use leptos::prelude::*;

const STEPS: [(&str, &str); 6] = [
    (
        "Reading",
        "Each line is read for an amount, a measure and an ingredient. A line that cannot be read stays, is marked, and keeps totals from claiming what they do not know. Touch a line to mend it.",
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
        "Volumes by geometry from inside sizes. The factor makes the batter stand as high in the other pan, as far as the two shapes allow.",
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
#[component]
pub fn About() -> impl IntoView {
    document().set_title("About · Batterwright");
    let steps = STEPS.map(|(name, words)| view! { <div class="facts__fact"><dt class="facts__label">{name}</dt><dd class="facts__words">{words}</dd></div> });
    let limits = LIMITS.map(|words| view! { <li>{words}</li> });
    let sources = source::all()
        .iter()
        .map(|source| view! { <li class="sources__source">{source.citation}</li> });
    view! {
        <div class="sheet">
            <h1 class="sheet__title">"About the figures"</h1>
            <p>
                "Batterwright turns a recipe in cups into grams with their spread, sets its acid against its soda, and rescales it for another pan. It works without a network."
            </p>
            <h2 class="part__title">"How they are got"</h2>
            <dl class="facts">{steps.into_iter().collect_view()}</dl>
            <h2 class="part__title">"How far to trust them"</h2>
            <p>"Each figure names its source and one of these: published, worked out from published figures, common practice without a source, or from memory. The last two are the ones to doubt first."</p>
            <h2 class="part__title">"Limits and cautions"</h2>
            <ul class="plain-list">{limits.into_iter().collect_view()}</ul>
            <h2 class="part__title">"Sources"</h2>
            <p>{format!("The tables hold {} ingredients under {} names.", ingredient::all().len(), ingredient::aliases().len())}</p>
            <ul class="sources">{sources.collect_view()}</ul>
            <h2 class="part__title">"Licence"</h2>
            <p>"Free to use, change and share under the MIT licence or the Apache licence 2.0, as you choose. There is no warranty."</p>
        </div>
    }
}
