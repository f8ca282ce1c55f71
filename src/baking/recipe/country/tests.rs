use super::*;
use Region::{Au, Ca, Nz, Uk, Us};

/// Invented recipes, the home of the baker, and the country by hand; `None` where nothing can be told.
const RECIPES: &[(&str, Region, Option<Region>)] = &[
    // One country alone says it so.
    (
        "2 sticks unsalted butter\n2 cups all-purpose flour\nBake at 350°F.",
        Uk,
        Some(Us),
    ),
    ("1 cup (2 sticks) butter, softened", Nz, Some(Us)),
    ("1 tsp kosher salt\n1 cup heavy cream", Au, Some(Us)),
    ("2 cups powdered sugar\n1 tsp vanilla", Uk, Some(Us)),
    ("3 cups confectioners’ sugar\n1 tsp salt", Uk, Some(Us)),
    (
        "225g/8oz self-raising flour\n225g/8oz caster sugar\nHeat the oven to 180C/160C fan/gas 4.",
        Us,
        Some(Uk),
    ),
    (
        "8 oz plain flour\n4 oz caster sugar\n1/2 tsp bicarbonate of soda",
        Us,
        Some(Uk),
    ),
    (
        "284 ml double cream\n100 g light muscovado sugar",
        Us,
        Some(Uk),
    ),
    ("Line a 2 lb loaf tin. Bake at gas mark 4.", Us, Some(Uk)),
    (
        "100 g plain chocolate\n300 ml semi-skimmed milk",
        Us,
        Some(Uk),
    ),
    (
        "90 ml rapeseed oil\n200 g plain flour\n220 g caster sugar\n1 tsp bicarbonate of soda",
        Us,
        Some(Uk),
    ),
    ("300 ml thickened cream\n1 cup caster sugar", Us, Some(Au)),
    ("1 tablespoon (20 ml) golden syrup", Uk, Some(Au)),
    (
        "All spoons are level; a 20ml tablespoon is used.",
        Us,
        Some(Au),
    ),
    (
        "2 cups self-raising flour\n1 cup caster sugar\nHeat the oven to 180°C (160°C fan-forced).",
        Us,
        Some(Au),
    ),
    ("1 tsp bi-carb soda\n2 cups plain flour", Uk, Some(Au)),
    ("2 cups high-grade flour\n1 tsp baking soda", Us, Some(Nz)),
    (
        "1 cup standard flour\n1 cup caster sugar\n150 g butter",
        Au,
        Some(Nz),
    ),
    ("Bake at 180°C fan bake.\n1 cup icing sugar", Uk, Some(Nz)),
    ("1 cup homo milk\n2 cups all-purpose flour", Us, Some(Ca)),
    (
        "1 cup (250 mL) all-purpose flour\n1 tsp (5 mL) baking powder\n1/2 cup (125 mL) icing sugar",
        Us,
        Some(Ca),
    ),
    (
        "2 cups graham wafer crumbs\n1 cup 35% whipping cream",
        Uk,
        Some(Ca),
    ),
    ("1 tbsp wine biscuits", Us, Some(Nz)),
    // Several say it so: the baker's own goes first, else the one with more recipes.
    ("2 cups all-purpose flour\n1 tsp baking soda", Ca, Some(Ca)),
    ("2 cups all-purpose flour\n1 tsp baking soda", Us, Some(Us)),
    ("2 cups all-purpose flour\n1 tsp baking soda", Uk, Some(Us)),
    ("2 cups all-purpose flour\n1 tsp baking soda", Nz, Some(Us)),
    ("100 g caster sugar", Au, Some(Au)),
    ("100 g caster sugar", Nz, Some(Nz)),
    ("100 g caster sugar", Ca, Some(Uk)),
    (
        "2 cups plain flour\n1 cup sultanas\n1 cup caster sugar",
        Us,
        Some(Au),
    ),
    (
        "2 cups plain flour\n1 cup sultanas\n1 cup caster sugar",
        Nz,
        Some(Nz),
    ),
    ("50 g desiccated coconut\n20 g cornflour", Us, Some(Uk)),
    // Nothing is told, or a hint only.
    ("", Nz, None),
    ("2 cups flour\n1 cup sugar\n2 eggs", Us, None),
    ("2 cups flour\n1 cup sugar\n2 eggs", Uk, None),
    ("200 g flour\n100 g sugar\n100 g butter\n2 eggs", Us, None),
    ("1 tsp salt\n1 tsp vanilla", Ca, None),
    ("2 tbsp canola oil", Uk, None),
    ("Spread the frosting.", Uk, None),
    ("1 tsp baking soda", Au, None),
    ("Grease a 12-hole muffin tin.", Us, None),
    ("Heat the oven to 350°F (180°C).", Nz, None),
    ("1 cinnamon stick\n1 tbsp butter", Uk, None),
    (
        "Line the tin. Line the tin. Tin after tin after tin.",
        Us,
        None,
    ),
    ("1 tsp kosher", Uk, None),
];

#[test]
fn the_country_is_told_from_the_words() {
    for (text, home, expected) in RECIPES {
        let guess = guess(text, *home);
        let told = (guess.certainty != Certainty::Nothing).then_some(guess.region);
        assert_eq!(told, *expected, "{text:?} at home in {home:?}: {guess:?}");
        if expected.is_none() {
            assert_eq!(guess.region, *home, "{text:?}");
            assert!(guess.because.is_empty(), "{text:?}");
        }
    }
}

#[test]
fn a_guess_is_clear_where_one_country_leads_by_far() {
    for (text, certainty) in [
        // 5 for us, 1 for ca: a lead of 4.
        ("2 sticks butter", Certainty::Clear),
        // 4 for us, 1 for ca: a lead of 3.
        ("1 tsp kosher salt", Certainty::Likely),
        ("300 ml thickened cream", Certainty::Clear),
        ("100 g caster sugar", Certainty::Likely),
        ("Bake at gas mark 6.", Certainty::Clear),
    ] {
        assert_eq!(guess(text, Us).certainty, certainty, "{text}");
    }
}

#[test]
fn the_strongest_signs_are_named_with_their_lines() {
    let text = "Cake\n200 g Caster Sugar\n1 tsp salt\n300 ml double cream\n2 tbsp black treacle\nBake at gas mark 4.";
    assert_eq!(
        guess(text, Us).because,
        [
            (6, "gas mark".to_owned()),
            (5, "black treacle".to_owned()),
            (4, "double cream".to_owned())
        ]
    );
}

#[test]
fn a_word_counts_once_and_whole() {
    // Two hints of 1 each for uk, au and nz, however often they stand.
    assert_eq!(
        guess("icing icing tin\ntin icing", Us).certainty,
        Certainty::Nothing
    );
    assert_eq!(guess("thickened creamy", Us).certainty, Certainty::Nothing);
    assert_eq!(guess("unthickened cream", Us).certainty, Certainty::Nothing);
}

#[test]
fn words_and_figures_are_made_plain() {
    for (line, expected) in [
        ("180C/160ºC Fan", "180 c 160 ° c fan"),
        ("1½ cups all‑purpose", "1 ½ cups all purpose"),
        ("Confectioner's GLACÉ 9×13", "confectioners glace 9 x 13"),
        ("  2%  milk ", "2 % milk"),
    ] {
        let mut out = String::new();
        write_plain(line, &mut out);
        assert_eq!(out, expected, "{line}");
    }
}
