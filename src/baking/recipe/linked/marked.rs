//! Recipes marked in a page's own elements: microdata, RDFa, and the recipe microformat.
//!
//! One walk over the tags. Inside a recipe one property is taken at a time, as a slice of the source from its tag
//! to its end; what a nested item says of itself (an author's name) is passed over with it.

use super::graph::{last_part, time_line};
use super::markup::{Piece, Pieces, Tag, is_block, is_open_ended, is_void};
use super::sheet::{Line, Sheet, is_list_name};
use super::visible;

/// A recipe and the way it is marked.
pub struct Marked {
    /// The recipe.
    pub sheet: Sheet,
    /// The name of the way.
    pub kind: &'static str,
}

const MICRODATA: &str = "microdata";
const RDFA: &str = "RDFa";
const MICROFORMAT: &str = "microformat";

/// What a property says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Property {
    Name,
    Makes,
    Time(&'static str),
    Tool,
    Ingredient,
    Step,
    /// A heading that no property names: among ingredients it names a group.
    Heading,
    /// Any other, with all that is in it.
    Other,
}

/// Every recipe that is marked, in order.
pub fn recipes(source: &str) -> Vec<Marked> {
    let mut walk = Walk {
        source,
        found: Vec::new(),
        scope: None,
        capture: None,
        group: None,
    };
    let mut pieces = Pieces::of(source);
    while let Some(piece) = pieces.next() {
        match piece {
            Piece::Open(tag) => walk.open(tag, pieces.start, pieces.at),
            Piece::Close(name) => walk.close(name, pieces.start),
            _ => {}
        }
    }
    walk.capture_ends(source.len());
    walk.scope_ends();
    walk.found
}

/// An element that is open, and how many of its name are open in it.
struct Open<'a> {
    name: &'a str,
    depth: usize,
    /// How many elements on lines of their own are open in it.
    blocks: usize,
}

impl<'a> Open<'a> {
    fn of(name: &'a str) -> Self {
        Self {
            name,
            depth: 1,
            blocks: 0,
        }
    }

    fn opens(&mut self, name: &str) {
        self.depth += usize::from(self.name.eq_ignore_ascii_case(name));
        self.blocks += usize::from(is_block(name) && !is_open_ended(name));
    }

    /// Whether this end is its own, or that of the element around it where its own was left out.
    fn closes(&mut self, name: &str) -> bool {
        if self.name.eq_ignore_ascii_case(name) {
            self.depth -= 1;
        }
        let is_whole = is_block(name) && !is_open_ended(name);
        let may_lack_end = !is_block(self.name) || is_open_ended(self.name);
        if is_whole && self.blocks == 0 && may_lack_end {
            return true;
        }
        self.blocks -= usize::from(is_whole && self.blocks > 0);
        self.depth == 0
    }
}

struct Walk<'a> {
    source: &'a str,
    found: Vec<Marked>,
    /// The recipe that is open.
    scope: Option<(Open<'a>, Marked)>,
    /// The property that is open, and where its inside starts.
    capture: Option<(Open<'a>, Property, usize)>,
    /// The last heading, until it is known what follows.
    group: Option<String>,
}

impl<'a> Walk<'a> {
    fn open(&mut self, tag: Tag<'a>, start: usize, inside: usize) {
        let is_void = is_void(tag.name);
        let kind = self.scope.as_ref().map(|(_, marked)| marked.kind);
        let marks = Marks::of(tag, kind);
        if let Some((open, property, _)) = &mut self.capture {
            // The end of an item is often left out: the next of its kind ends it.
            let is_next = ["li", "p", "dd", "dt", "td"]
                .iter()
                .any(|name| tag.is(name))
                && tag.is(open.name)
                && marks.property == Some(*property);
            if is_next {
                self.capture_ends(start);
            } else if !is_void {
                open.opens(tag.name);
            }
        }
        if let Some((open, _)) = &mut self.scope
            && !is_void
        {
            open.opens(tag.name);
        }
        if self.capture.is_some() {
            return;
        }
        let is_implied = self
            .scope
            .as_ref()
            .is_some_and(|(open, _)| open.name.is_empty());
        if let Some(kind) = marks.recipe.filter(|_| kind.is_none() || is_implied) {
            self.scope_ends();
            self.scope_opens(tag.name, kind);
            return;
        }
        let Some(property) = marks.property else {
            return;
        };
        if self.scope.is_none() {
            // A piece of a page may leave out the element around the recipe.
            if !matches!(property, Property::Ingredient | Property::Step) {
                return;
            }
            self.scope_opens("", marks.kind);
        }
        match marks.value {
            Some(value) if property != Property::Other => {
                let lines = visible::value_lines(value);
                self.take(property, lines);
            }
            _ if is_void => {}
            _ => {
                let open = Open::of(tag.name);
                self.capture = Some((open, property, inside));
            }
        }
    }

    fn close(&mut self, name: &str, start: usize) {
        if let Some((open, ..)) = &mut self.capture
            && open.closes(name)
        {
            self.capture_ends(start);
        }
        if let Some((open, _)) = &mut self.scope
            && !open.name.is_empty()
            && open.closes(name)
        {
            self.capture_ends(start);
            self.scope_ends();
        }
    }

    fn scope_opens(&mut self, name: &'a str, kind: &'static str) {
        let sheet = Sheet::default();
        self.scope = Some((Open::of(name), Marked { sheet, kind }));
    }

    fn scope_ends(&mut self) {
        self.group = None;
        if let Some((_, marked)) = self.scope.take() {
            // A class is any page's word: alone it is a recipe only where both lists are there.
            let least = if marked.kind == MICROFORMAT {
                Sheet::WHOLE
            } else {
                1
            };
            if marked.sheet.rank() >= least {
                self.found.push(marked);
            }
        }
    }

    fn capture_ends(&mut self, end: usize) {
        let Some((_, property, from)) = self.capture.take() else {
            return;
        };
        if property == Property::Other {
            return;
        }
        let inside = self.source.get(from..end).unwrap_or_default();
        let lines = visible::lines(inside);
        let is_list = ["<li", "<br", "<LI", "<BR"]
            .iter()
            .any(|tag| inside.contains(tag));
        if property == Property::Ingredient && !is_list {
            self.take(property, vec![lines.join(" ")]);
        } else {
            self.take(property, lines);
        }
    }

    fn take(&mut self, property: Property, lines: Vec<String>) {
        let Some((_, marked)) = &mut self.scope else {
            return;
        };
        let sheet = &mut marked.sheet;
        match property {
            Property::Name if sheet.name.is_empty() => sheet.name = lines.join(" "),
            Property::Makes => sheet.set_makes(&lines.join(" ")),
            Property::Time(label) => sheet.times.extend(time_line(label, &lines.join(" "))),
            Property::Tool => sheet.tools.extend(lines),
            Property::Ingredient => add(&mut sheet.ingredients, self.group.take(), lines),
            Property::Step => add(&mut sheet.steps, self.group.take(), lines),
            Property::Heading => self.group = Some(lines.join(" ")),
            Property::Name | Property::Other => {}
        }
    }
}

/// Lines of a list, after the name of their group.
fn add(list: &mut Vec<Line>, group: Option<String>, lines: Vec<String>) {
    let is_told = |words: &String| !words.is_empty() && !is_list_name(words);
    list.extend(group.filter(is_told).map(Line::Heading));
    list.extend(lines.into_iter().filter(is_told).map(Line::Entry));
}

/// What the attributes of a tag say.
struct Marks<'a> {
    /// The way a recipe is marked that opens here.
    recipe: Option<&'static str>,
    property: Option<Property>,
    /// The way the property is marked.
    kind: &'static str,
    /// The value where it is no text of the page.
    value: Option<&'a str>,
}

impl<'a> Marks<'a> {
    /// Reads a tag inside a recipe that is marked in some way, or outside of any.
    fn of(tag: Tag<'a>, scope: Option<&'static str>) -> Self {
        let mut marks = Self {
            recipe: None,
            property: None,
            kind: scope.unwrap_or(MICRODATA),
            value: None,
        };
        let (mut has_item, mut by_class) = (false, None);
        for (name, value) in tag.attributes() {
            let is = |wanted: &str| name.eq_ignore_ascii_case(wanted);
            let is_type = |word: &str| last_part(word) == "Recipe";
            if is("itemscope") {
                has_item = true;
            } else if is("itemtype") && value.split_ascii_whitespace().any(is_type) {
                marks.recipe = Some(MICRODATA);
            } else if is("typeof") {
                has_item = true;
                if value.split_ascii_whitespace().any(is_type) {
                    marks.recipe = Some(RDFA);
                }
            } else if is("itemprop") || is("property") {
                marks.kind = if is("property") { RDFA } else { MICRODATA };
                marks.property = marks
                    .property
                    .or(value.split_ascii_whitespace().find_map(property));
            } else if is("class") {
                if value
                    .split_ascii_whitespace()
                    .any(|word| matches!(word, "h-recipe" | "hrecipe"))
                {
                    marks.recipe = marks.recipe.or(Some(MICROFORMAT));
                }
                by_class = value.split_ascii_whitespace().find_map(by_class_name);
            } else if is("content") || is("datetime") && marks.value.is_none() {
                marks.value = Some(value);
            }
        }
        if scope == Some(MICROFORMAT) || scope.is_none() && marks.property.is_none() {
            marks.property = by_class;
            marks.kind = MICROFORMAT;
        }
        if marks.property.is_none() && has_item && marks.recipe.is_none() {
            marks.property = Some(Property::Other);
        }
        if marks.property.is_none()
            && scope.is_some()
            && matches!(tag.name.as_bytes(), [b'h' | b'H', b'2'..=b'6'])
        {
            marks.property = Some(Property::Heading);
        }
        marks
    }
}

/// The property of a name in microdata or RDFa, with or without its vocabulary.
fn property(name: &str) -> Option<Property> {
    Some(match last_part(name) {
        "name" => Property::Name,
        "recipeYield" | "yield" => Property::Makes,
        "prepTime" => Property::Time("Prep: "),
        "cookTime" => Property::Time("Bake: "),
        "totalTime" => Property::Time("Total: "),
        "tool" => Property::Tool,
        "recipeIngredient" | "ingredients" | "ingredient" => Property::Ingredient,
        "recipeInstructions" | "instructions" | "instruction" => Property::Step,
        _ => return None,
    })
}

/// The property of a class in the microformat.
fn by_class_name(class: &str) -> Option<Property> {
    Some(match class {
        "p-name" | "fn" => Property::Name,
        "p-yield" | "yield" => Property::Makes,
        "dt-duration" | "duration" => Property::Time("Total: "),
        "p-ingredient" | "ingredient" => Property::Ingredient,
        "e-instructions" | "instructions" | "instruction" => Property::Step,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(source: &str) -> Vec<String> {
        recipes(source)
            .into_iter()
            .map(|marked| [marked.kind, "\n", &marked.sheet.text()].concat())
            .collect()
    }

    #[test]
    fn the_name_is_the_recipe_s_own() {
        let source = "<div itemscope itemtype='https://schema.org/Recipe'>\
            <span itemprop=author itemscope itemtype='https://schema.org/Person'><b itemprop=name>Someone</b></span>\
            <h1 itemprop=name>Buns</h1><i itemprop='recipeIngredient'>1 egg</i></div><b itemprop=name>Site</b>";
        assert_eq!(texts(source), ["microdata\nBuns\n\nIngredients\n1 egg\n"]);
    }

    #[test]
    fn ends_left_out_do_not_run_ingredients_together() {
        let source =
            "<ul><li itemprop=ingredients>1 egg<li itemprop=ingredients>2 cups <b>flour</b></ul>";
        assert_eq!(
            texts(source),
            ["microdata\nIngredients\n1 egg\n2 cups flour\n"]
        );
    }

    #[test]
    fn headings_between_ingredients_name_groups() {
        let source = "<div typeof='schema:Recipe'><h2>Ingredients</h2><p property='schema:recipeIngredient'>1 egg</p>\
            <h3>Glaze</h3><p property='schema:recipeIngredient'>1 tbsp milk</p><h2>Method</h2>\
            <div property='schema:recipeInstructions'><p>Mix.</p><p>Bake.</p></div></div>";
        assert_eq!(
            texts(source),
            ["RDFa\nIngredients\n1 egg\n\nGlaze\n1 tbsp milk\n\nMethod\nMix.\nBake.\n"]
        );
    }

    #[test]
    fn a_class_alone_needs_both_lists() {
        let list = "<ul><li class='ingredient'>1 egg</li></ul>";
        assert!(texts(list).is_empty());
        let whole =
            "<ul><li class='x p-ingredient'>1 egg</li></ul><div class=e-instructions>Boil.</div>";
        assert_eq!(
            texts(whole),
            ["microformat\nIngredients\n1 egg\n\nMethod\nBoil.\n"]
        );
    }
}
