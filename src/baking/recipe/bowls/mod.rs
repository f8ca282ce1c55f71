//! Which bowl each ingredient is weighed into, and in which order: by the method, and where that says nothing by the
//! recipe's own parts.
//!
//! Goes in: a read recipe. Comes out: bowls, each ingredient of the list in one of them and in no other. Whatever the
//! method does not name stands with its likes and says so.

mod called;
mod clause;

use super::method::{Listed, Step};
use super::{Reading, Recipe, Role, Section, heading};
use crate::baking::ingredient::Group;
use called::{Called, Kin};
use clause::{Clause, Deed, clauses};

/// What is weighed into one vessel, one thing after the other.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bowl {
    /// The part of the recipe that it belongs to, as its heading says: "For the glaze".
    pub heading: Option<String>,
    /// The vessel, where the method names one: "large bowl".
    pub vessel: Option<String>,
    /// The lines of the method that fill it.
    pub lines: Vec<usize>,
    /// What goes in.
    pub portions: Vec<Portion>,
    /// Whether it meets the cake only after it is baked.
    pub is_beside: bool,
}

/// An ingredient in a bowl.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Portion {
    /// The line of the text, from 1, and which of its ingredients, from 0.
    pub place: (usize, usize),
    /// Whether the method names it.
    pub is_named: bool,
    /// Lines of the method that use a part of it elsewhere: "the remaining sugar".
    pub again: Vec<usize>,
}

/// More ingredients, or clauses of a method, than any one recipe has. A paste of many recipes is weighed by its list alone:
/// seeking each name in each clause would take longer than anybody waits.
const MOST: usize = 120;
const MOST_CLAUSES: usize = 400;

/// What is named together and never meets on the scale.
const APART: &[&str] = &[
    "alternate",
    "alternately",
    "alternating",
    "apart",
    "separately",
];

/// An ingredient of the list as it is sought in the method.
struct Item<'a> {
    place: (usize, usize),
    reading: &'a Reading,
    /// The part of the list that it stands in, from 0.
    component: usize,
}

impl Item<'_> {
    fn group(&self) -> Option<Group> {
        self.reading.ingredient.taken().map(|known| known.group)
    }

    fn is_beside(&self) -> bool {
        self.reading.section == Section::Beside
    }
}

/// The bowls of a recipe. What is optional, for serving or for the pan is in none of them.
pub fn bowls(recipe: &Recipe) -> Vec<Bowl> {
    let (items, headings) = items(recipe);
    let clauses = clauses(recipe);
    if items.len() > MOST || clauses.len() > MOST_CLAUSES {
        return by_list(&items, &headings);
    }
    let mut sorter = Sorter::of(&items, &headings);
    for (at, clause) in clauses.iter().enumerate() {
        sorter.take(clause, &clauses[at + 1..]);
    }
    sorter.finish()
}

/// The ingredients of the list, and the headings of its parts.
fn items(recipe: &Recipe) -> (Vec<Item<'_>>, Vec<Option<String>>) {
    let mut headings: Vec<Option<String>> = vec![None];
    let (mut items, mut is_open) = (Vec::new(), false);
    for line in &recipe.lines {
        match &line.role {
            Role::Heading(Section::Batter | Section::Beside) => {
                headings.push(heading_words(&line.text));
                is_open = true;
            }
            Role::Heading(_) => is_open = false,
            Role::Ingredient(first) => {
                let parts = first.all().enumerate();
                items.extend(parts.filter(|(_, reading)| reading.aside.is_none()).map(
                    |(part, reading)| Item {
                        place: (line.number, part),
                        reading,
                        component: if is_open { headings.len() - 1 } else { 0 },
                    },
                ));
            }
            _ => {}
        }
    }
    (items, headings)
}

/// A bowl for each part of the list, what meets the baked cake only behind the others.
fn by_list(items: &[Item], headings: &[Option<String>]) -> Vec<Bowl> {
    let mut bowls: Vec<Bowl> = headings
        .iter()
        .map(|heading| Bowl {
            heading: heading.clone(),
            ..Bowl::default()
        })
        .collect();
    for item in items {
        let bowl = &mut bowls[item.component];
        bowl.is_beside = item.is_beside();
        bowl.portions.push(Portion::unnamed(item));
    }
    bowls.retain(|bowl| !bowl.portions.is_empty());
    bowls.sort_by_key(|bowl| bowl.is_beside);
    bowls
}

impl Portion {
    fn unnamed(item: &Item) -> Self {
        Self {
            place: item.place,
            is_named: false,
            again: Vec::new(),
        }
    }
}

/// A heading without its colon and marks; `None` for the head of all ingredients.
fn heading_words(text: &str) -> Option<String> {
    let marks = |letter: char| !letter.is_alphanumeric() && letter != ')';
    let words = text.trim_matches(marks);
    let is_main = heading::heading(words, false).is_some_and(|heading| heading.is_main);
    (!is_main).then(|| words.to_owned())
}

/// An ingredient that a clause names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Named {
    /// Whether it is poured into something that stands behind it.
    is_poured: bool,
    /// The word of the clause that names it.
    word: usize,
    /// Its place in the list.
    item: usize,
}

/// Puts ingredients into bowls as clause after clause names them.
struct Sorter<'a> {
    items: &'a [Item<'a>],
    headings: &'a [Option<String>],
    listed: Vec<Listed>,
    called: Called,
    /// The bowl of each item, once it has one.
    of: Vec<Option<usize>>,
    bowls: Vec<Bowl>,
    now: Option<usize>,
    /// The part of the list that the method is at.
    component: usize,
    has_baked: bool,
}

impl<'a> Sorter<'a> {
    fn of(items: &'a [Item<'a>], headings: &'a [Option<String>]) -> Self {
        let listed = Listed::of(items.iter().map(|item| item.reading));
        Self {
            called: Called::of(items, &listed),
            listed,
            items,
            headings,
            of: vec![None; items.len()],
            bowls: Vec::new(),
            now: None,
            component: items.first().map_or(0, |item| item.component),
            has_baked: false,
        }
    }

    fn take(&mut self, clause: &Clause, later: &[Clause]) {
        self.move_on(&clause.step);
        let named = self.named(clause, later);
        let (fresh, known): (Vec<Named>, Vec<Named>) =
            named.into_iter().partition(|it| self.of[it.item].is_none());
        if clause.step.has(called::PARTLY) {
            self.used_again(&known, clause.step.line);
        }
        if !fresh.is_empty() {
            self.fill(clause, &fresh, &known);
        } else if clause.deed == Deed::Add
            && let Some(target) = self.target(clause, &known)
        {
            // What is poured together goes on in the bowl that it was poured into.
            self.now = Some(target);
        }
        self.has_baked |= clause.bakes;
    }

    /// Notes which part of the list the method has come to.
    fn move_on(&mut self, step: &Step) {
        let meant = (0..self.headings.len()).find(|at| {
            let heading = self.headings[*at].as_deref().unwrap_or_default();
            let has_items = self.items.iter().any(|item| item.component == *at);
            has_items && called::names_part(step, heading)
        });
        if let Some(meant) = meant {
            self.component = meant;
        }
    }

    /// What a clause names, in its order; what is poured into something stands behind that.
    fn named(&self, clause: &Clause, later: &[Clause]) -> Vec<Named> {
        // What is done to the tin or the oven weighs nothing.
        if clause.deed == Deed::Other {
            return Vec::new();
        }
        let step = &clause.step;
        let places = 0..self.items.len();
        let by_words: Vec<Option<(usize, usize)>> = places
            .clone()
            .map(|at| self.listed[at].span_in(step, &self.listed))
            .collect();
        // A word that is one ingredient's own name stands for no other of that part of the list.
        let called = |at: usize| {
            let is_others = |place: usize| {
                (0..self.items.len()).any(|other| {
                    let component = self.items[other].component;
                    by_words[other].is_some_and(|(from, to)| (from..to).contains(&place))
                        && (component == self.component || component == self.items[at].component)
                })
            };
            let place = self.called.place_in(at, step);
            place.filter(|place| !is_others(*place))
        };
        let by_kin = |at: usize| {
            let place = self.place_by_kin(at, step)?;
            // "The dry things" are those that have no step of their own.
            let has_step = |later: &Clause| {
                !later.step.has(called::PARTLY) && self.listed[at].is_in(&later.step, &self.listed)
            };
            (self.of[at].is_some() || !later.iter().any(has_step)).then_some(place)
        };
        let mut named: Vec<Named> = places
            .filter_map(|at| {
                let own = by_words[at].map(|(from, _)| from);
                let word = own.or_else(|| called(at)).or_else(|| by_kin(at))?;
                Some(Named {
                    is_poured: clause.into.is_some_and(|into| word < into),
                    word,
                    item: at,
                })
            })
            .collect();
        named.sort_unstable();
        self.keep_own_part(&mut named);
        named
    }

    /// Whether the clause names it by what it is like: "the dry things", "everything else".
    fn place_by_kin(&self, at: usize, step: &Step) -> Option<usize> {
        let (place, kin) = Kin::in_step(step)?;
        let item = &self.items[at];
        let is_here = item.component == self.component || !item.is_beside();
        let is_open = self.of[at].is_none();
        let fits = match kin {
            Kin::Rest => is_open && !item.is_beside(),
            Kin::Dry | Kin::Wet => {
                let heading = self.headings[item.component].as_deref().unwrap_or_default();
                match called::kin_of_heading(heading) {
                    Some(of_part) => of_part == kin,
                    None if self.has_part(kin) => false,
                    None => called::is_dry(item) == (kin == Kin::Dry),
                }
            }
            Kin::Both => true,
        };
        (is_here && fits).then_some(place)
    }

    /// Whether a part of the list is headed so.
    fn has_part(&self, kin: Kin) -> bool {
        let headings = self.headings.iter().flatten();
        headings
            .filter_map(|heading| called::kin_of_heading(heading))
            .any(|part| part == kin)
    }

    /// Of things that one word names in several parts of the list, the one of the part that the method is at.
    fn keep_own_part(&self, named: &mut Vec<Named>) {
        let component = |it: &Named| self.items[it.item].component;
        let all = named.clone();
        named.retain(|it| {
            let is_rival =
                |other: &&Named| other.word == it.word && component(other) != component(it);
            let mut rivals = all.iter().filter(is_rival);
            component(it) == self.component
                || !rivals.any(|other| component(other) == self.component)
        });
    }

    fn used_again(&mut self, known: &[Named], line: usize) {
        for it in known {
            let place = self.items[it.item].place;
            let portions = self.bowls.iter_mut().flat_map(|bowl| &mut bowl.portions);
            for portion in portions.filter(|portion| portion.place == place) {
                if !portion.again.contains(&line) {
                    portion.again.push(line);
                }
            }
        }
    }

    /// The bowl that a clause goes to, told by what is in it already.
    fn target(&self, clause: &Clause, known: &[Named]) -> Option<usize> {
        let into = clause.into.unwrap_or(0);
        let behind = known.iter().find(|it| it.word > into);
        behind.and_then(|it| self.of[it.item])
    }

    fn fill(&mut self, clause: &Clause, fresh: &[Named], known: &[Named]) {
        let (last, fresh): (Vec<Named>, Vec<Named>) = fresh.iter().partition(|it| {
            let next = clause.step.words.get(it.word + 1);
            next.is_some_and(|next| next == "last")
        });
        let is_dry = |it: &&Named| called::is_dry(&self.items[it.item]);
        let lots: Vec<Vec<Named>> = if clause.step.has(APART) {
            // They never meet on the scale.
            let (dry, wet): (Vec<Named>, Vec<Named>) = fresh.iter().partition(is_dry);
            vec![dry, wet]
        } else {
            let is_into_fresh = clause.into.is_some_and(|into| {
                known.is_empty() && fresh.first().is_some_and(|first| first.word > into)
            });
            let is_new = clause.vessel.as_ref().is_some_and(|vessel| vessel.is_new);
            if clause.deed == Deed::Add
                && !is_into_fresh
                && !is_new
                && self.goes_on(clause, &fresh, known)
            {
                self.put(clause, &fresh);
                Vec::new()
            } else {
                vec![fresh]
            }
        };
        for lot in lots.into_iter().chain([last]) {
            if !lot.is_empty() {
                self.open(clause);
                self.put(clause, &lot);
            }
        }
    }

    /// Whether something is weighed onto what the bowl on the scale holds.
    fn goes_on(&self, clause: &Clause, fresh: &[Named], known: &[Named]) -> bool {
        let Some(now) = self.now else { return false };
        let held = || (0..self.items.len()).filter(|at| self.of[*at] == Some(now));
        let is_beside = held().all(|at| self.items[at].is_beside());
        // A bowl that has left the scale is full of dough by now: what comes later is weighed by itself.
        if now + 1 != self.bowls.len() || self.has_baked && !is_beside {
            return false;
        }
        if self
            .target(clause, known)
            .is_some_and(|target| target != now)
        {
            return false;
        }
        if fresh
            .iter()
            .any(|it| self.items[it.item].is_beside() != is_beside)
        {
            return false;
        }
        let is_dry = |at: usize| called::is_dry(&self.items[at]);
        let holds_dry_only = held().all(is_dry);
        let comes_dry = fresh.iter().all(|it| is_dry(it.item));
        let is_mixed_apart = comes_dry && fresh.len() > 1 && !holds_dry_only;
        let is_for_another = holds_dry_only && !comes_dry && self.has_wet_before(now);
        !is_mixed_apart && !is_for_another
    }

    fn has_wet_before(&self, now: usize) -> bool {
        (0..self.items.len()).any(|at| {
            self.of[at].is_some_and(|bowl| bowl < now) && !called::is_dry(&self.items[at])
        })
    }

    fn open(&mut self, clause: &Clause) {
        let vessel = clause.vessel.as_ref();
        self.bowls.push(Bowl {
            vessel: vessel
                .filter(|_| clause.deed != Deed::Later)
                .map(|vessel| vessel.words.clone()),
            ..Bowl::default()
        });
        self.now = Some(self.bowls.len() - 1);
    }

    fn put(&mut self, clause: &Clause, fresh: &[Named]) {
        let Some(now) = self.now else { return };
        for it in fresh {
            self.of[it.item] = Some(now);
            self.bowls[now].portions.push(Portion {
                place: self.items[it.item].place,
                is_named: true,
                again: Vec::new(),
            });
        }
        let bowl = &mut self.bowls[now];
        if bowl.lines.last() != Some(&clause.step.line) {
            bowl.lines.push(clause.step.line);
        }
        if bowl.vessel.is_none() && clause.deed != Deed::Later {
            bowl.vessel = clause.vessel.as_ref().map(|vessel| vessel.words.clone());
        }
        if let Some(first) = fresh.first() {
            self.component = self.items[first.item].component;
        }
    }

    /// Puts what no clause named where it belongs, and gives bowls their headings.
    fn finish(mut self) -> Vec<Bowl> {
        for at in 0..self.items.len() {
            if self.of[at].is_none() {
                self.place_unnamed(at);
            }
        }
        for (at, bowl) in self.bowls.iter_mut().enumerate() {
            let mut held = (0..self.items.len()).filter(|item| self.of[*item] == Some(at));
            let first = held.next().map(|item| &self.items[item]);
            let component = first.map_or(0, |item| item.component);
            bowl.is_beside = first.is_some_and(Item::is_beside);
            if held.all(|item| self.items[item].component == component) {
                bowl.heading.clone_from(&self.headings[component]);
            }
        }
        // What meets the baked cake only is weighed last.
        self.bowls.sort_by_key(|bowl| bowl.is_beside);
        self.bowls
    }

    fn place_unnamed(&mut self, at: usize) {
        let item = &self.items[at];
        let likes = |bowl: &usize| {
            let held = (0..self.items.len()).filter(|other| self.of[*other] == Some(*bowl));
            let mut count = [0_usize; 2];
            for other in held {
                let other = &self.items[other];
                count[0] += usize::from(other.component == item.component);
                count[1] += usize::from(called::is_dry(other) == called::is_dry(item));
            }
            let is_same_side = (0..self.items.len())
                .filter(|other| self.of[*other] == Some(*bowl))
                .all(|other| self.items[other].is_beside() == item.is_beside());
            // With no method, a part of the list is a bowl.
            is_same_side.then_some((count[0] > 0, count[1]))
        };
        let of_part = |bowl: &usize| likes(bowl).is_some_and(|(is_part, _)| is_part);
        let is_filled_by_method = |bowl: &usize| !self.bowls[*bowl].lines.is_empty();
        let best = (0..self.bowls.len())
            .filter(|bowl| of_part(bowl) || is_filled_by_method(bowl) && likes(bowl).is_some())
            .max_by_key(|bowl| (likes(bowl), std::cmp::Reverse(*bowl)));
        let bowl = best.unwrap_or_else(|| {
            self.bowls.push(Bowl::default());
            self.bowls.len() - 1
        });
        self.of[at] = Some(bowl);
        let portions = &mut self.bowls[bowl].portions;
        // The list's own order tells best where in the bowl it goes.
        let before = portions.iter().position(|it| it.place > item.place);
        portions.insert(before.unwrap_or(portions.len()), Portion::unnamed(item));
    }
}
