//! Headings: which lines open a part of the recipe, and which part.

use super::Section;
use crate::baking::text::lower;

/// A heading as it was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Heading {
    /// The part that it opens.
    pub section: Section,
    /// Whether its words alone make it a heading ("Ingredients", "For the frosting:"); else only its shape does.
    pub is_plain: bool,
    /// Whether it is the head of all ingredients or of the method.
    pub is_main: bool,
}

const INGREDIENTS: &[&str] = &[
    "ingredients",
    "ingredient",
    "you will need",
    "what you need",
    "what you'll need",
    "you'll need",
    "shopping list",
    "the ingredients",
    "what you will need",
    "ingredient list",
    "ingredients list",
    "materials",
    "needed",
    "measure",
];

const METHOD: &[&str] = &[
    "method",
    "methods",
    "directions",
    "direction",
    "instructions",
    "instruction",
    "steps",
    "preparation",
    "procedure",
    "how to make",
    "how to make it",
    "to make",
    "process",
    "preparation method",
    "cooking instructions",
    "the method",
    "cooking method",
    "baking instructions",
    "what to do",
    "cooking directions",
    "to bake",
    "assembly",
    "to assemble",
    "step by step",
    "how to",
];

const NOTES: &[&str] = &[
    "notes",
    "note",
    "tips",
    "tip",
    "nutrition",
    "nutrition information",
    "nutrition facts",
    "nutritional information",
    "equipment",
    "special equipment",
    "storage",
    "variations",
    "variation",
    "recipe notes",
    "cook's notes",
    "cook's note",
    "cooks note",
    "baker's notes",
    "baker's note",
    "tools",
    "video",
    "comments",
    "reviews",
    "faq",
    "substitutions",
    "make ahead",
    "recipe tips",
    "expert tips",
    "freezing",
    "to store",
    "about this recipe",
    "description",
    "keywords",
    "top tips",
    "tips and tricks",
    "did you make this recipe",
];

/// Words that a part's name ends with, where it never meets the batter before it is baked.
const BESIDE: &[&str] = &[
    "frosting",
    "icing",
    "glaze",
    "glazing",
    "syrup",
    "filling",
    "sauce",
    "topping",
    "toppings",
    "buttercream",
    "ganache",
    "streusel",
    "drizzle",
    "decoration",
    "decorations",
    "garnish",
    "coating",
    "crust",
    "soak",
    "compote",
    "curd",
    "custard",
    "whipped cream",
    "serve",
    "decorate",
    "serving",
    "finish",
    "finishing",
    "assemble",
    "assembly",
    "crumble",
    "praline",
    "caramel",
    "brittle",
    "meringue",
    "cream filling",
    "frostings",
    "fillings",
    "dusting",
    "crumb",
    "crumbs",
    "greasing",
    "tin",
    "pan",
    "sprinkle",
    "decorating",
    "marinade",
    "swirl",
    "mousse",
    "jelly",
    "cream",
    "base",
    "top",
];

/// Words that a part's name ends with, where it is the batter or dough.
const BATTER: &[&str] = &[
    "cake",
    "cakes",
    "batter",
    "sponge",
    "sponges",
    "dough",
    "muffins",
    "muffin",
    "cupcakes",
    "cupcake",
    "loaf",
    "bread",
    "dry ingredients",
    "wet ingredients",
    "layers",
    "layer",
    "dry",
    "wet",
    "scones",
    "biscuits",
    "cookies",
    "brownies",
    "fruit",
    "mix",
    "mixture",
    "bars",
    "buns",
    "starter",
    "pancakes",
    "waffles",
    "add-ins",
    "mix-ins",
    "extras",
    "liquids",
];

/// What a line's words say of a heading; `has_hash` and `has_colon` are its shape.
pub fn heading(text: &str, has_hash: bool) -> Option<Heading> {
    let trimmed = text.trim();
    let has_colon = trimmed.ends_with(':');
    let stripped = trimmed
        .trim_end_matches([':', '.', '-', ' ', '=', '#', '_', '!', ')'])
        .trim_start_matches(['=', '-', ' ', '(']);
    if stripped.is_empty()
        || stripped.len() > 60
        || stripped.starts_with(|first: char| first.is_ascii_digit())
    {
        return None;
    }
    let lower = lower(stripped).replace('’', "'");
    // "Ingredients (makes 12)" and "Ingredients for the cake".
    let base = lower
        .split(['(', '|'])
        .next()
        .unwrap_or_default()
        .trim()
        .trim_end_matches([':', '-', ' ']);
    if base.is_empty() {
        return None;
    }
    let found = |section: Section, is_main: bool| {
        Some(Heading {
            section,
            is_plain: true,
            is_main,
        })
    };
    if INGREDIENTS.contains(&base)
        || base.ends_with(" ingredients")
            && !base.contains(|letter: char| letter.is_ascii_digit())
            && !base.starts_with(|first: char| first.is_ascii_digit())
            && base.len() < 40
    {
        let section = part(base.trim_end_matches("ingredients").trim()).unwrap_or(Section::Batter);
        return found(section, INGREDIENTS.contains(&base));
    }
    if base.starts_with("ingredients for ") && base.contains(|letter: char| letter.is_ascii_digit())
    {
        return found(Section::Batter, true);
    }
    if METHOD.contains(&base) && !(base == "assembly" && has_colon && lower.len() > 12) {
        return found(Section::Method, true);
    }
    if NOTES.contains(&base) {
        return found(Section::Notes, true);
    }
    for start in [
        "ingredients for ",
        "for ",
        "to make ",
        "ingredients - ",
        "the ",
    ] {
        if let Some(rest) = base.strip_prefix(start) {
            let rest = rest.trim_start_matches("the ").trim_start_matches("a ");
            if rest.split(' ').count() > 6 {
                continue;
            }
            let known = part(rest);
            if start == "the " && known.is_none() {
                continue;
            }
            return match known {
                Some(section) => Some(Heading {
                    section,
                    is_plain: true,
                    is_main: false,
                }),
                None if has_colon || has_hash || rest.split(' ').count() <= 3 => Some(Heading {
                    section: Section::Batter,
                    is_plain: has_colon || has_hash,
                    is_main: false,
                }),
                None => None,
            };
        }
    }
    if matches!(
        base,
        "to serve" | "to decorate" | "to finish" | "to garnish" | "to assemble" | "to top"
    ) {
        return Some(Heading {
            section: Section::Beside,
            is_plain: true,
            is_main: false,
        });
    }
    let words = base.split(' ').count();
    if let Some(section) = part(base)
        && words <= 5
    {
        return Some(Heading {
            section,
            is_plain: has_colon || has_hash || words <= 2,
            is_main: false,
        });
    }
    let is_method_part = base.starts_with("make ")
        || base.starts_with("making ")
        || base.starts_with("prepare ")
        || base.starts_with("bake ");
    if (has_colon || has_hash) && words <= 6 {
        return Some(Heading {
            section: if is_method_part {
                Section::Method
            } else {
                Section::Batter
            },
            is_plain: false,
            is_main: false,
        });
    }
    None
}

/// The part that a name ends with or is.
fn part(name: &str) -> Option<Section> {
    let name = name.trim_end_matches([' ', ':']);
    let ends = |ends: &[&str]| {
        ends.iter().any(|end| {
            name == *end
                || name
                    .strip_suffix(end)
                    .is_some_and(|before| before.ends_with([' ', '-']))
        })
    };
    if matches!(name, "batter" | "dry" | "wet") || ends(BATTER) {
        Some(Section::Batter)
    } else if ends(BESIDE) {
        Some(Section::Beside)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::{Section, heading};

    #[test]
    fn headings_open_their_part() {
        for (text, section) in [
            ("Ingredients", Some(Section::Batter)),
            ("INGREDIENTS:", Some(Section::Batter)),
            ("For the cake", Some(Section::Batter)),
            ("For the lemon glaze:", Some(Section::Beside)),
            ("Cream cheese frosting", Some(Section::Beside)),
            ("Dry ingredients", Some(Section::Batter)),
            ("Method", Some(Section::Method)),
            ("Directions:", Some(Section::Method)),
            ("Notes", Some(Section::Notes)),
            ("To serve", Some(Section::Beside)),
            ("2 cups flour", None),
            ("Salt", None),
        ] {
            assert_eq!(
                heading(text, false).map(|heading| heading.section),
                section,
                "{text}"
            );
        }
    }
}
