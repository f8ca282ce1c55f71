//! Roles: which line is an ingredient, a step, a heading, a note.
//!
//! Every line is first looked at alone; then the lines are walked in order, with the part of the
//! recipe that the headings opened in mind. A recipe without headings is told apart by the shape
//! of its lines.

use super::heading::Heading;
use super::ingredient_line::{self, Attempt};
use super::look::{Look, no_name, unreadable};
use super::{Line, Match, Reading, Role, Section, running_text};
use crate::baking::ingredient::Larder;
use std::sync::Arc;

/// The roles of all lines, in order.
pub fn roles(looks: &[Arc<Look>], larder: Larder<'_>) -> (Option<usize>, Vec<Role>) {
    let mut walk = Walk {
        looks,
        larder,
        section: None,
        title: None,
        is_explicit: false,
        method_ahead: looks.iter().rposition(|look| {
            look.heads()
                .is_some_and(|heading| heading.section == Section::Method && heading.is_main)
        }),
        ingredients_at: looks.iter().position(|look| {
            look.heads().is_some_and(|heading| {
                heading.is_main && matches!(heading.section, Section::Batter | Section::Beside)
            })
        }),
        first_ingredient: looks.iter().position(|look| look.is_ingredient()),
    };
    walk.see_ahead();
    let mut roles: Vec<Role> = (0..looks.len()).map(|at| walk.role(at)).collect();
    running_text::fill(looks, &mut roles, larder);
    promote(&mut roles);
    (walk.title, roles)
}

/// A recipe whose every part looks like something beside a cake ("Base", "Crumbs") has its batter in the first of them.
fn promote(roles: &mut [Role]) {
    let parts = || {
        roles.iter().filter_map(|role| match role {
            Role::Ingredient(reading) => Some(reading.section),
            _ => None,
        })
    };
    if parts().next() != Some(Section::Beside) || parts().any(|section| section == Section::Batter)
    {
        return;
    }
    let mut has_begun = false;
    for role in roles {
        match role {
            Role::Ingredient(reading) => {
                has_begun = true;
                reading.section = Section::Batter;
                for other in &mut reading.also {
                    other.section = Section::Batter;
                }
            }
            // The first part ends at the heading after its first ingredient.
            Role::Heading(_) if has_begun => return,
            _ => {}
        }
    }
}

/// The walk through the lines.
struct Walk<'a> {
    looks: &'a [Arc<Look>],
    larder: Larder<'a>,
    /// The part that is open; `None` before the first.
    section: Option<Section>,
    title: Option<usize>,
    /// Whether a heading opened the part, and not the shape of the lines.
    is_explicit: bool,
    /// The last heading of a method.
    method_ahead: Option<usize>,
    /// The first heading of ingredients.
    ingredients_at: Option<usize>,
    first_ingredient: Option<usize>,
}

impl Walk<'_> {
    /// A title that is a known ingredient's name ("Gingerbread") is told by what follows it.
    fn see_ahead(&mut self) {
        // What a page puts above its title is passed over.
        let is_furniture = |look: &Look| look.is_empty() || look.is_fact && look.words <= 12;
        let Some(first) = self.looks.iter().position(|look| !is_furniture(look)) else {
            return;
        };
        let look = &self.looks[first];
        let has_more = self.looks[first + 1..].iter().any(|look| !look.is_empty());
        let is_taken = look.is_ingredient() && look.is_known()
            || look
                .attempt
                .as_ref()
                .is_some_and(|attempt| attempt.fault.is_some() || attempt.is_measured)
            || look.heads().is_some_and(|heading| {
                (heading.is_main || look.text.ends_with(':')) && !look.bullet.heading
            })
            || look.heads().is_some_and(|heading| heading.is_main)
            || look.is_fact
            || look.is_step && (look.is_sentence || look.words > 6)
            || look.bullet.marked
            || look.bullet.numbered && look.is_step
            || look.attempt.as_ref().is_some_and(|attempt| {
                attempt.reading.aside.is_some()
                    || !attempt.reading.amounts.is_empty()
                        && attempt.reading.ingredient != Match::Unknown
            })
            || !has_more && look.is_bare_name(self.larder)
            || look.text.len() > 120
            || look.is_sentence && look.words > 14;
        if !is_taken || look.is_bake_with_bracket() {
            self.title = Some(first);
        }
    }

    fn role(&mut self, at: usize) -> Role {
        let look = &self.looks[at];
        if look.is_empty() {
            return if look.is_bare {
                Role::Note
            } else {
                Role::Blank
            };
        }
        if self.title == Some(at) {
            return Role::Title;
        }
        if look.is_dismissed {
            return Role::Note;
        }
        let opening = METHODS.iter().find_map(|start| look.starts_with(start));
        if opening.is_some_and(|step| !step.is_empty()) {
            self.section = Some(Section::Method);
            self.is_explicit = true;
            return Role::Method;
        }
        let heading = look
            .heads()
            .or_else(|| look.may_head().filter(|_| self.stands_apart(at)));
        if let Some(heading) = heading.filter(|heading| self.opens(at, *heading)) {
            // "You will need" may head the equipment.
            let is_equipment = heading.is_main
                && heading.section == Section::Batter
                && self.looks[at + 1..]
                    .iter()
                    .find(|look| !look.is_empty())
                    .is_some_and(|look| look.has_pan && !look.is_known());
            if is_equipment {
                self.section = Some(Section::Notes);
                self.is_explicit = true;
                return Role::Heading(Section::Notes);
            }
            self.section = Some(heading.section);
            self.is_explicit = true;
            return Role::Heading(heading.section);
        }
        match self.section {
            None => self.before(at),
            Some(Section::Batter | Section::Beside) => self.among_ingredients(at),
            Some(Section::Method) => self.in_method(at),
            Some(Section::Notes) => Role::Note,
        }
    }

    /// Whether a blank line stands before this one and an ingredient with its amount right after.
    fn stands_apart(&self, at: usize) -> bool {
        at > 0
            && self.looks[at - 1].is_empty()
            && self.looks[at + 1..]
                .iter()
                .find(|look| !look.is_empty())
                .is_some_and(|look| look.is_ingredient())
    }

    /// Whether a heading opens its part here. In a method, "For the glaze" may only name a step: it
    /// opens a list where ingredients follow.
    fn opens(&self, at: usize, heading: Heading) -> bool {
        if heading.is_main {
            return true;
        }
        let follows = self.looks[at + 1..]
            .iter()
            .filter(|look| !look.is_empty())
            .take(2)
            .collect::<Vec<_>>();
        let lists = follows
            .first()
            .is_some_and(|look| look.is_ingredient() || look.is_bare_name(self.larder));
        match self.section {
            Some(Section::Method | Section::Notes) => {
                if heading.section == Section::Method {
                    return false;
                }
                lists && !follows.iter().any(|look| look.is_step && look.is_sentence)
            }
            _ => heading.is_plain || lists || self.looks[at].text.ends_with(':'),
        }
    }

    /// Before any part was opened.
    fn before(&mut self, at: usize) -> Role {
        let look = &self.looks[at];
        let awaits_heading = self.ingredients_at.is_some_and(|heading| heading > at);
        if look.is_ingredient() && (!awaits_heading || look.is_known())
            || look.is_bare_name(self.larder) && self.is_near_list(at) && !awaits_heading
        {
            self.section = Some(Section::Batter);
            self.is_explicit = false;
            return self.among_ingredients(at);
        }
        if look.is_step
            && !awaits_heading
            && (look.is_sentence || look.bullet.numbered)
            && self.first_ingredient.is_none_or(|first| first < at)
        {
            self.section = Some(Section::Method);
            self.is_explicit = false;
            return Role::Method;
        }
        if let Some(fault) = unreadable(look) {
            return Role::Unread(fault);
        }
        Role::Note
    }

    /// Whether the line before or after is an ingredient with its amount.
    fn is_near_list(&self, at: usize) -> bool {
        let next = self.looks[at + 1..].iter().find(|look| !look.is_empty());
        let last = self.looks[..at].iter().rev().find(|look| !look.is_empty());
        self.looks.len() == 1
            || next.is_some_and(|look| look.is_ingredient())
            || last.is_some_and(|look| look.is_ingredient())
            || (next.is_none() && last.is_none())
    }

    /// In a list of ingredients.
    fn among_ingredients(&mut self, at: usize) -> Role {
        let look = &self.looks[at];
        let section = self.section.unwrap_or(Section::Batter);
        if look.is_fact && !look.is_ingredient() {
            return Role::Note;
        }
        let is_step = look.is_step
            && (look.words >= 5 || look.bullet.numbered || look.is_sentence || !look.is_known());
        let starts_with_figure = look.text.starts_with(|first: char| first.is_ascii_digit());
        let leads = look.attempt.as_ref().is_some_and(|attempt| {
            attempt.leads
                || attempt.has_amount && look.text.starts_with('(') && look.text.contains(") ")
        });
        let is_running = look.is_sentence
            && !(leads && (starts_with_figure || look.is_known()))
            && !look.wants_enough();
        if is_step || is_running {
            let is_late = self.method_ahead.is_none_or(|heading| heading < at);
            if is_step && is_late {
                self.section = Some(Section::Method);
                self.is_explicit = false;
            }
            return if is_step { Role::Method } else { Role::Note };
        }
        let Some(attempt) = &look.attempt else {
            return match self.long_line(at) {
                Some(sentence) => Role::Unread(sentence),
                None => Role::Note,
            };
        };
        if look.has_pan && !look.is_known() {
            return Role::Note;
        }
        if let Some(fault) = unreadable(look) {
            return Role::Unread(fault);
        }
        let is_named = attempt.has_name && look.text.contains(char::is_alphabetic);
        if attempt.has_amount || !attempt.reading.amounts.is_empty() {
            return if is_named {
                Role::Ingredient(placed(attempt, section))
            } else {
                Role::Unread(no_name(look))
            };
        }
        let is_likely = look.is_known() && (look.words <= 14 || attempt.reading.aside.is_some())
            || look.words <= 5 && is_named && look.bullet.marked;
        if is_likely && is_named {
            Role::Ingredient(placed(attempt, section))
        } else {
            Role::Note
        }
    }

    /// A line too long to hold one ingredient, in the place of one.
    fn long_line(&self, at: usize) -> Option<String> {
        let look = &self.looks[at];
        let starts_with_figure = look.text.starts_with(|first: char| first.is_ascii_digit());
        starts_with_figure.then(|| TOO_LONG.to_owned())
    }

    /// In the method. Where only the shape of the lines opened it, a list may go on below it.
    fn in_method(&mut self, at: usize) -> Role {
        let look = &self.looks[at];
        let starts_list = !self.is_explicit
            && look.is_ingredient()
            && look.is_known()
            && look.words <= 12
            && !look.bullet.numbered
            && look
                .attempt
                .as_ref()
                .is_some_and(|attempt| attempt.leads && attempt.reading.doubts.is_empty());
        if starts_list {
            // "While hot pour over:" leads to what never meets the batter.
            let leads_in = self.looks[..at]
                .iter()
                .rev()
                .find(|look| !look.is_empty())
                .is_some_and(|look| look.is_step && look.text.ends_with(':'));
            let section = match leads_in && self.first_ingredient.is_some_and(|first| first < at) {
                true => Section::Beside,
                false => Section::Batter,
            };
            self.section = Some(section);
            return self.among_ingredients(at);
        }
        Role::Method
    }
}

/// The reading, in the part where the line stands; a part named in the line itself goes first.
fn placed(attempt: &Attempt, section: Section) -> Reading {
    let mut reading = attempt.reading.clone();
    if reading.section == Section::Batter {
        reading.section = section;
    }
    reading
}

/// A line forced to be read as an ingredient, as its baker says it is one, or gives its amount.
pub fn forced(look: &Look, section: Section, has_amount: bool, larder: Larder<'_>) -> Role {
    if look.text.len() > ingredient_line::LONGEST {
        return Role::Unread(TOO_LONG.to_owned());
    }
    let attempt = ingredient_line::attempt(&look.text, larder, Section::Batter);
    match &attempt.fault {
        // What is wrong is the amount, and that is given.
        Some(fault) if !has_amount => Role::Unread(fault.clone()),
        _ => Role::Ingredient(placed(&attempt, section)),
    }
}

/// What opens the method where its first step follows on the same line.
const METHODS: [&str; 5] = [
    "method:",
    "directions:",
    "instructions:",
    "to make:",
    "how to make:",
];

/// What is said of a line with more than one ingredient can fill.
const TOO_LONG: &str =
    "This line is too long for one ingredient. Put each ingredient on a line of its own.";

/// A lone dash tight against a figure may be a minus: said where no other line has such a bullet.
pub fn doubt_minus(looks: &[Arc<Look>], lines: &mut [Line]) {
    let tight: Vec<usize> = looks
        .iter()
        .enumerate()
        .filter(|(_, look)| look.bullet.minus)
        .map(|(at, _)| at)
        .take(2)
        .collect();
    if let [only] = tight.as_slice()
        && let Some(Role::Ingredient(reading)) = lines.get_mut(*only).map(|line| &mut line.role)
    {
        reading
            .doubts
            .push("The dash before the amount is taken for a bullet, not for a minus.".to_owned());
    }
}
