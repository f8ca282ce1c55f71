//! Linked data: a web page's source, or JSON, to the plain recipe text that the reader takes.
//!
//! Goes in: what a person pastes or opens. Comes out: a [`Page`], or nothing where the text is a recipe already.
//! The recipe that the page describes for machines goes first (schema.org's Recipe as JSON-LD, then as microdata,
//! RDFa or a microformat), else the text that a person would see. Markup is read as text and never run, and all
//! of it takes time in proportion to the text.

mod duration;
mod graph;
mod json;
mod marked;
mod markup;
mod sheet;
mod visible;

use serde_json::Value;
use sheet::Sheet;
pub use sheet::is_list_name;

/// A recipe's text as it was taken from a page, and how.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// The text for the reader.
    pub text: String,
    /// What was done, in a sentence for the person.
    pub said: String,
}

/// The recipe text of a page's source or of linked data; `None` where the text is neither.
pub fn text_of(pasted: &str) -> Option<Page> {
    let text = pasted.trim_start_matches(['\u{feff}', ' ', '\t', '\r', '\n']);
    if json::looks_so(text) {
        return Some(alone(pasted, text));
    }
    markup::is_source(text).then(|| page(pasted))
}

/// JSON that stands on its own.
fn alone(pasted: &str, text: &str) -> Page {
    let trouble = match json::read(text) {
        Ok(value) => {
            let picked = pick(graph::recipes(&value));
            if let Some((sheet, others)) = picked.filter(|(sheet, _)| sheet.rank() > 0) {
                return told(
                    &sheet,
                    "Read from linked data (schema.org Recipe): ",
                    others,
                );
            }
            "This JSON holds no schema.org Recipe; it is left as it was pasted.".to_owned()
        }
        Err(reason) => sentence(&[
            "This JSON cannot be read: ",
            &reason,
            ". It is left as it was pasted.",
        ]),
    };
    Page {
        text: pasted.to_owned(),
        said: trouble,
    }
}

/// The source of a page: the best recipe marked in it, else its text.
fn page(source: &str) -> Page {
    let (values, damage) = scripts(source);
    let linked = pick(values.iter().flat_map(graph::recipes).collect());
    let rank = linked.as_ref().map_or(0, |(sheet, _)| sheet.rank());
    let mut marked = None;
    if rank < Sheet::WHOLE {
        let mut kind = "";
        let mut sheets = Vec::new();
        for found in marked::recipes(source) {
            // The page's first way of marking is its way.
            if kind.is_empty() || kind == found.kind {
                kind = found.kind;
                sheets.push(found.sheet);
            }
        }
        marked = pick(sheets)
            .filter(|(sheet, _)| sheet.rank() > rank)
            .map(|(sheet, others)| (sheet, others, kind));
    }
    let mut page = if let Some((sheet, others, kind)) =
        marked.filter(|(sheet, ..)| sheet.rank() >= Sheet::LISTED)
    {
        told(
            &sheet,
            &sentence(&["Read from the recipe marked in the page (", kind, "): "]),
            others,
        )
    } else if let Some((sheet, others)) = linked.filter(|_| rank >= Sheet::LISTED) {
        told(
            &sheet,
            "Read from the page's linked data (schema.org Recipe): ",
            others,
        )
    } else {
        let text = visible::page(source);
        if text.is_empty() {
            Page {
                text: source.to_owned(),
                said:
                    "This page's source holds no recipe and no text; it is left as it was pasted."
                        .to_owned(),
            }
        } else {
            Page {
                text,
                said: "No linked recipe in this page; its text is taken without the markup."
                    .to_owned(),
            }
        }
    };
    if let Some(reason) = damage {
        page.said.push_str(&sentence(&[
            " Linked data in the page cannot be read: ",
            &reason,
            ".",
        ]));
    }
    page
}

/// What the page's linked data holds, and what is wrong with the first block that is damaged.
fn scripts(source: &str) -> (Vec<Value>, Option<String>) {
    let mut values = Vec::new();
    let mut damage = None;
    let mut pieces = markup::Pieces::of(source);
    while let Some(piece) = pieces.next() {
        if let markup::Piece::Raw(tag, content) = piece
            && tag.is_linked_data()
            && !content.trim().is_empty()
        {
            match json::read(content) {
                Ok(value) => values.push(value),
                Err(reason) => {
                    damage.get_or_insert(reason);
                }
            }
        }
    }
    (values, damage)
}

/// The first of the fullest recipes, and how many others list ingredients too. The same recipe told twice is one.
fn pick(mut sheets: Vec<Sheet>) -> Option<(Sheet, usize)> {
    let best = sheets.iter().map(Sheet::rank).max()?;
    let at = sheets.iter().position(|sheet| sheet.rank() == best)?;
    let sheet = sheets.swap_remove(at);
    let others = sheets
        .iter()
        .filter(|other| other.rank() >= Sheet::LISTED && other.ingredients != sheet.ingredients)
        .count();
    Some((sheet, others))
}

/// A recipe with where it was found.
fn told(sheet: &Sheet, found: &str, others: usize) -> Page {
    let mut said = found.to_owned();
    said.push_str(&sheet.counts());
    said.push('.');
    match others {
        0 => {}
        1 => said.push_str(" Another recipe there is left out."),
        _ => said.push_str(&sentence(&[
            " ",
            &others.to_string(),
            " other recipes there are left out.",
        ])),
    }
    Page {
        text: sheet.text(),
        said,
    }
}

/// Parts of a sentence put together.
fn sentence(parts: &[&str]) -> String {
    parts.concat()
}

#[cfg(test)]
mod tests {
    use super::text_of;

    #[test]
    fn ordinary_recipe_text_is_no_page() {
        for text in [
            "",
            "   \n",
            "2 cups flour\n1 egg",
            "I <3 this cake\n2 cups flour\n1 egg",
            "<3 cake",
            "[ ] 2 cups flour\n[ ] 1 egg\n[x] salt",
            "[ ]",
            "[]",
            "{ }",
            "{Cake}\n2 cups flour",
            "{\"Best\" cake}\n2 cups flour",
            "[1] flour",
            "a < b > c",
            "2 cups <b>flour</b>\n1 egg",
            "Cake\n2 cups flour<br>\n1 egg\n2 tsp salt\n1 cup milk",
            "bake <30 minutes, then <10 more>",
        ] {
            assert_eq!(text_of(text), None, "{text:?}");
        }
    }

    #[test]
    fn damaged_json_on_its_own_is_left_whole_with_the_reason() {
        let text = "{\"@type\": \"Recipe\",\n \"name\": \"Cake\", \"recipeIngredient\": [\"1 egg\"";
        let page = text_of(text).expect("it is JSON");
        assert_eq!(page.text, text);
        assert_eq!(
            page.said,
            "This JSON cannot be read: it is cut off. It is left as it was pasted."
        );
        let page = text_of("{\"name\": \"Cake\",\n \"x\": what}").expect("it is JSON");
        assert_eq!(
            page.said,
            "This JSON cannot be read: it is damaged at line 2. It is left as it was pasted."
        );
    }

    #[test]
    fn json_without_a_recipe_is_left_whole() {
        let page = text_of("{\"@type\": \"WebSite\", \"name\": \"Example\"}").expect("it is JSON");
        assert_eq!(page.text, "{\"@type\": \"WebSite\", \"name\": \"Example\"}");
        assert_eq!(
            page.said,
            "This JSON holds no schema.org Recipe; it is left as it was pasted."
        );
    }

    #[test]
    fn the_same_recipe_told_twice_is_one() {
        let recipe = "{\"@type\":\"Recipe\",\"name\":\"A\",\"recipeIngredient\":[\"1 egg\"],\"recipeInstructions\":\"Beat.\"}";
        let page = text_of(&format!("[{recipe},{recipe}]")).expect("it is JSON");
        assert_eq!(
            page.said,
            "Read from linked data (schema.org Recipe): 1 ingredient, 1 step."
        );
    }

    #[test]
    fn a_page_without_text_is_left_whole() {
        let source = "<!doctype html><html><body><div id=\"root\"></div></body></html>";
        assert_eq!(
            text_of(source).map(|page| page.text).as_deref(),
            Some(source)
        );
    }

    #[test]
    fn deep_nesting_neither_overflows_nor_panics() {
        let deep = |open: &str, close: &str| [open.repeat(60_000), close.repeat(60_000)].concat();
        for text in [
            deep("<div>", "</div>"),
            deep(
                "<div itemscope itemtype='https://schema.org/Recipe'>",
                "</div>",
            ),
            ["{\"a\":", &deep("[", "]"), "}"].concat(),
            deep("{\"mainEntity\":", "}"),
            deep("<script type='application/ld+json'>[", "]</script>"),
            "<ul><li itemprop=recipeIngredient>".repeat(60_000),
        ] {
            assert!(text_of(&text).is_some());
        }
    }
}
