//! Swaps planned for a recipe, as they are shown: what comes, what else moves, what of the cake is kept, and the recipe as
//! it becomes.

use super::gather::{sheet_of, with_facts};
use super::swap_best::best;
use super::swap_said::{Judgement, Said};
use super::swap_taken::carried_out;
use super::swap_wishes;
use super::{
    Difference, Inputs, LinePart, Settings, SwapLine, Worksheet, difference, worksheet_again,
};
use crate::baking::balance::Kind;
use crate::baking::finding::Facts;
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Group, Ingredient, Larder, Own, by_key};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::Looks;
use crate::baking::substitute::plan::{Amount, Change, Fate, Plan, Wish, plan};
use crate::baking::substitute::swap::{Suits, Swap, swap_between, swaps_from};
use crate::baking::substitute::{Without, by_composition, by_swap, egg};
use serde::Serialize;
use std::borrow::Cow;

/// What a plan comes to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SwapPlan {
    /// What goes and what comes for it, with what is known of that.
    pub swaps: Vec<SwapNote>,
    /// What to weigh, the swapped first.
    pub amounts: Vec<AmountNote>,
    /// Whether the cake is kept, and what gives way, as sentences; the first sums it up.
    pub sentences: Vec<String>,
    /// How far the cake is kept.
    pub judgement: Judgement,
    /// Cautions that the recipe as it becomes has and the recipe has not.
    pub cautions: Vec<String>,
    /// Recipe and version side by side.
    pub difference: Difference,
    /// A name for the version.
    pub name: String,
    /// The recipe as it becomes.
    #[serde(skip)]
    pub after: Inputs,
}

/// What goes, what comes, and what is known of that.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SwapNote {
    /// The line of the text.
    pub line: usize,
    /// "240 g milk".
    pub goes: String,
    /// "228 g soy milk and 12 g vinegar".
    pub comes: String,
    /// What the original does, what becomes of taste, colour and keeping, limits and cautions: label and words.
    pub facts: Vec<(&'static str, String)>,
    /// Where the ratio is from, and how sure.
    pub source: String,
}

/// An ingredient to weigh.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AmountNote {
    /// Its name.
    pub name: &'static str,
    /// "comes in", "more", "less", "added", "left out".
    pub what: &'static str,
    /// "240 g"; empty where the recipe has none.
    pub before: String,
    /// "228 g", with spoons for what is spooned.
    pub after: String,
}

/// Plans the swaps among the inputs' choices.
///
/// # Errors
/// A sentence where nothing is chosen, where something has no swap, or where nothing can be reckoned.
pub fn swap_plan(inputs: &Inputs, settings: &Settings, own: &Own) -> Result<SwapPlan, String> {
    swap_plan_again(&mut Looks::default(), None, inputs, settings, own)
}

/// The same with what was seen of the text's lines before, and with the recipe's worksheet where it is there: that spares
/// work and changes nothing.
///
/// # Errors
/// As [`swap_plan`].
pub fn swap_plan_again(
    looks: &mut Looks,
    before: Option<&Worksheet>,
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
) -> Result<SwapPlan, String> {
    let (planned, before) = with_facts(looks, inputs, settings, own, |known| {
        let facts = &known.facts;
        let larder = Larder {
            region: facts.region,
            own,
        };
        let title = known.recipe.title.as_deref();
        swap_wishes::check(inputs, facts, larder)?;
        let chosen = Chosen::of(inputs, facts, title, larder)?;
        let plan = plan(facts, title, &chosen.wish)?;
        let planned = Planned {
            swaps: chosen.notes(facts, &plan),
            amounts: plan.amounts.iter().map(note).collect(),
            said: chosen.said(facts, &plan, title),
            name: chosen.name(&inputs.choices.swaps.without),
            after: carried_out(inputs, facts, &plan),
        };
        let before = before.map_or_else(
            || Cow::Owned(sheet_of(known, inputs, settings)),
            Cow::Borrowed,
        );
        Ok::<_, String>((planned, before))
    })?;
    let after = worksheet_again(looks, &planned.after, settings, own);
    let (judgement, sentences) = planned.said.judged(&before, &after);
    let come = after
        .cautions
        .iter()
        .filter(|caution| !before.cautions.contains(caution));
    Ok(SwapPlan {
        cautions: come.cloned().collect(),
        difference: difference(&before, &after, &planned.name),
        swaps: planned.swaps,
        amounts: planned.amounts,
        sentences,
        judgement,
        name: planned.name,
        after: planned.after,
    })
}

struct Planned {
    swaps: Vec<SwapNote>,
    amounts: Vec<AmountNote>,
    said: Said,
    name: String,
    after: Inputs,
}

/// The changes that were chosen, each with the swap of the table that it goes by, if it goes by one.
struct Chosen {
    wish: Wish,
    by: Vec<Option<&'static Swap>>,
}

impl Chosen {
    fn of(
        inputs: &Inputs,
        facts: &Facts,
        title: Option<&str>,
        larder: Larder,
    ) -> Result<Self, String> {
        let entry = &inputs.choices.swaps;
        if !entry.is_any() {
            return Err("Choose what is to be swapped.".into());
        }
        let mut chosen = Self {
            wish: Wish {
                changes: Vec::new(),
                held: Vec::new(),
                no_more: entry.nothing_new,
                lacking: entry.missing.clone(),
            },
            by: Vec::new(),
        };
        let fits =
            |ingredient: &Ingredient| entry.without.allows(ingredient) && !entry.lacks(ingredient);
        let mut without_swap = Vec::new();
        let held: Vec<LinePart> = entry
            .held
            .iter()
            .filter_map(|words| inputs.line_of(words))
            .collect();
        let asked: Vec<(LinePart, &SwapLine)> = entry
            .lines
            .iter()
            .filter_map(|swap| Some((inputs.line_of(&swap.line)?, swap)))
            .collect();
        for line in &facts.formula.lines {
            let place = (line.line, line.part);
            if held.contains(&place) {
                chosen.wish.held.push(place);
            }
            let asked = asked.iter().find(|(of, _)| *of == place);
            match asked {
                Some((_, asked)) => chosen.add_asked(line, asked, larder)?,
                None if fits(line.ingredient) => {}
                None => match best(facts, title, line, &fits, entry.without) {
                    Some(swap) => chosen.add(Some(swap), by_swap(place, 1.0, swap)),
                    None => without_swap.push((line.line, line.ingredient.name)),
                },
            }
        }
        without_swap.extend(facts.formula.unweighed.iter().filter_map(|line| {
            let ingredient = line.ingredient.filter(|ingredient| !fits(ingredient))?;
            Some((line.line, ingredient.name))
        }));
        if let Some((line, name)) = without_swap.first() {
            return Err(format!(
                "No swap that fits is known for {name} (line {line}): choose what comes in its place, or leave it out by hand."
            ));
        }
        if chosen.wish.changes.is_empty() {
            return Err("Nothing in this recipe has to change for that.".into());
        }
        Ok(chosen)
    }

    fn add(&mut self, by: Option<&'static Swap>, change: Change) {
        self.wish.changes.push(change);
        self.by.push(by);
    }

    /// What the baker chose for a line.
    fn add_asked(
        &mut self,
        line: &Weighed,
        asked: &SwapLine,
        larder: Larder,
    ) -> Result<(), String> {
        let place = (line.line, line.part);
        let swap = swap_asked(line.ingredient, &asked.to);
        let share = |most: f64| {
            asked
                .percent
                .map_or(most, |percent| f64::from(percent.min(100)) / 100.0)
        };
        if let Some(swap) = swap {
            let change = by_swap(place, share(swap.usual.to_fraction()), swap);
            self.add(Some(swap), change);
            return Ok(());
        }
        let to = larder.by_key(&asked.to).ok_or_else(|| {
            format!(
                "What was to come in the place of {} (line {}) is not in the larder any more: choose again.",
                line.ingredient.name, line.line
            )
        })?;
        let change = by_composition(place, share(1.0), line.ingredient, to);
        self.add(None, change);
        Ok(())
    }

    fn notes(&self, facts: &Facts, plan: &Plan) -> Vec<SwapNote> {
        let changes = self.wish.changes.iter().zip(&self.by);
        changes
            .filter_map(|(change, by)| {
                let line = line_at(facts, change.place)?;
                Some(swap_note(facts, plan, change, *by, line))
            })
            .collect()
    }

    fn said(&self, facts: &Facts, plan: &Plan, title: Option<&str>) -> Said {
        let changes = self.wish.changes.iter().zip(self.by.iter().copied());
        Said::of(facts, plan, title, changes)
    }

    /// A name for the version: what it is without, or what comes.
    fn name(&self, without: &Without) -> String {
        let said = without.words();
        if !said.is_empty() {
            return said.join(", ");
        }
        let comes = self
            .wish
            .changes
            .iter()
            .filter_map(|change| change.to.first());
        let names: Vec<String> = comes
            .map(|brought| brought.ingredient.name.to_owned())
            .collect();
        format!("with {}", show::listed(&names))
    }
}

pub(super) fn line_at<'a>(facts: &'a Facts, place: LinePart) -> Option<&'a Weighed> {
    facts
        .formula
        .lines
        .iter()
        .find(|line| (line.line, line.part) == place)
}

/// The swap of the trade that is meant: what was offered; for an egg also one that has what was chosen as its main
/// ingredient, since composition tells nothing of what a gel does.
pub(super) fn swap_asked(from: &Ingredient, to: &str) -> Option<&'static Swap> {
    let offered = swaps_from(from).find(|swap| key_of(swap) == to);
    match from.group {
        Group::Egg => offered.or_else(|| swap_between(from, by_key(to)?)),
        _ => offered,
    }
}

/// What a swap is chosen by: the keys of what it brings.
pub(super) fn key_of(swap: &Swap) -> String {
    let keys: Vec<&str> = swap
        .brings
        .iter()
        .map(|brought| brought.ingredient.key)
        .collect();
    keys.join("+")
}

pub(super) fn suits(swap: &Swap, kind: Kind) -> String {
    let most = swap.most.to_percent();
    let mut said = Vec::new();
    match swap.suits(kind) {
        Suits::NotMeant => said.push(format!("not for {}", kind.words())),
        Suits::MeantForOthers => said.push("for other kinds of cake".to_owned()),
        Suits::Meant | Suits::Open => {}
    }
    if most < 100.0 {
        said.push(format!("for {} of it at most", show::percent(swap.most)));
    }
    said.join(", ")
}

fn swap_note(
    facts: &Facts,
    plan: &Plan,
    change: &Change,
    by: Option<&'static Swap>,
    line: &Weighed,
) -> SwapNote {
    let goes = line.grams.mean.to_grams() * change.share;
    let comes = plan
        .amounts
        .iter()
        .filter(|amount| amount.fate == Fate::Comes(change.place))
        .map(|amount| {
            format!(
                "{} {}",
                show::mass(Mass::grams(amount.after)),
                amount.ingredient.name
            )
        });
    let comes: Vec<String> = comes.collect();
    let mut known: Vec<(&'static str, String)> = Vec::new();
    let mut say = |label: &'static str, words: String| {
        if !words.is_empty() {
            known.push((label, show::sentence(&words)));
        }
    };
    if let Some(swap) = by {
        let jobs: Vec<String> = swap.jobs.iter().map(|job| job.words().to_owned()).collect();
        say("What it does there", show::listed(&jobs));
        say("Taste", swap.taste.to_owned());
        say("Colour", swap.colour.to_owned());
        say("Keeping", swap.keeping.to_owned());
        say("Mind", swap.caution.to_owned());
        say("Limits", suits(swap, facts.kind));
        say("Note", swap.note.to_owned());
    }
    let main = change.to.first().map(|brought| brought.ingredient);
    if line.ingredient.group == Group::Egg
        && let Some(given) = main.and_then(egg::given)
    {
        say(
            "In the place of egg",
            format!("{} {}", given.ingredient.name, given.result),
        );
    }
    SwapNote {
        line: line.line,
        goes: format!("{} {}", show::mass(Mass::grams(goes)), line.ingredient.name),
        comes: match comes.is_empty() {
            true => "the same".into(),
            false => show::listed(&comes),
        },
        facts: known,
        source: match by {
            Some(swap) if swap.place.is_empty() => swap.cited.words(),
            Some(swap) => format!("{}; {}", swap.cited.words(), swap.place),
            None => "No swap of the trade: by what the two are made of.".into(),
        },
    }
}

fn note(amount: &Amount) -> AmountNote {
    let shown = |grams: f64| match (amount.ingredient.group, amount.ingredient.teaspoon()) {
        (Group::Leavener, Some(teaspoon)) => format!(
            "{} ({})",
            show::mass(Mass::grams(grams)),
            show::teaspoons(grams / teaspoon)
        ),
        _ => show::mass(Mass::grams(grams)),
    };
    AmountNote {
        name: amount.ingredient.name,
        what: match amount.fate {
            Fate::Comes(_) => "comes in",
            Fate::Added => "added",
            Fate::Goes if amount.after <= 0.0 => "left out",
            Fate::Goes => "less",
            Fate::Moves if amount.after <= 0.0 => "left out",
            Fate::Moves if amount.after > amount.before => "more",
            Fate::Moves => "less",
        },
        before: if amount.before > 0.0 {
            shown(amount.before)
        } else {
            String::new()
        },
        after: if amount.after > 0.0 {
            shown(amount.after)
        } else {
            "none".into()
        },
    }
}
