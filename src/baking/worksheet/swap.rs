//! Swaps planned for a recipe, as they are shown: what comes, what else moves, what of the cake is kept, and the recipe as
//! it becomes.

use super::gather::{sheet_of, with_facts};
use super::swap_said::{Judgement, Said};
use super::swap_wishes;
use super::{
    Difference, Inputs, LinePart, Settings, SwapLine, Worksheet, difference, worksheet_again,
};
use crate::baking::balance::Kind;
use crate::baking::finding::{Facts, last_leavener, soda_name};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Allergen, Group, Ingredient, Larder, Own, Region, by_key};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::Looks;
use crate::baking::substitute::plan::{Amount, Change, Fate, Plan, Wish, cost as cost_of, plan};
use crate::baking::substitute::swap::{Brought, Suits, Swap, swap_between, swaps_from};
use crate::baking::substitute::{Without, by_composition, by_swap, choices, egg, lacking};
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
        let fits = |ingredient: &Ingredient| {
            entry.without.allows(ingredient)
                && !entry.missing.iter().any(|key| key == ingredient.key)
        };
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
        let said = [
            (without.animals, "plant-based"),
            (without.gluten, "without gluten"),
            (without.nuts, "without nuts"),
            (without.milk && !without.animals, "without milk"),
            (without.egg && !without.animals, "without egg"),
        ];
        let said: Vec<&str> = said
            .iter()
            .filter(|(is, _)| *is)
            .map(|(_, words)| *words)
            .collect();
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

/// The swap that costs the cake least among those that fit it, by the programme of each. What is to be gone goes wholly,
/// so that a swap for a part of it is none; one whose packet decides is taken only where there is no other.
fn best(
    facts: &Facts,
    title: Option<&str>,
    line: &Weighed,
    fits: &dyn Fn(&Ingredient) -> bool,
    without: Without,
) -> Option<&'static Swap> {
    const TRIED: usize = 5;
    let place = (line.line, line.part);
    let fitting = choices(line.ingredient, facts.kind)
        .into_iter()
        .filter(|swap| swap.most.to_percent() >= 100.0)
        .filter(|swap| swap.suits(facts.kind) != Suits::NotMeant)
        .filter(|swap| !brings_animals(facts, swap))
        .filter(|swap| swap.brings.iter().all(|brought| fits(brought.ingredient)));
    let by_packet = |swap: &Swap| {
        let unsure = |brought: &Brought| brought.ingredient.plant_based.is_none();
        without.animals && swap.brings.iter().any(unsure)
    };
    let cost = |swap: &'static Swap| {
        let wish = Wish {
            changes: vec![by_swap(place, 1.0, swap)],
            ..Wish::default()
        };
        let (cost, missed) = cost_of(facts, title, &wish)?;
        let lacking = f64::from(lacking(swap, facts.kind)) * LACKING;
        let packet = if by_packet(swap) { PACKET } else { 0.0 };
        let part = if swap.usual.to_percent() < 100.0 {
            A_PART
        } else {
            0.0
        };
        Some((
            cost + lacking
                + packet
                + part
                + new_allergens(facts, swap) * ALLERGEN
                + (swap.brings.len() - 1) as f64 * ONE_MORE
                + missed as f64 * MISSED,
            swap,
        ))
    };
    fitting
        .take(TRIED)
        .filter_map(cost)
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, swap)| swap)
}

/// How many allergens a swap brings that the recipe is free of; gluten is in wheat.
fn new_allergens(facts: &Facts, swap: &Swap) -> f64 {
    let has = |wanted: Allergen| {
        let mut there = facts.formula.lines.iter();
        there.any(|line| line.ingredient.allergens.contains(&wanted))
    };
    let is_new = |allergen: &&Allergen| {
        !(has(**allergen) || **allergen == Allergen::Gluten && has(Allergen::Wheat))
    };
    let comes = swap.brings.iter().flat_map(|it| &it.ingredient.allergens);
    comes.filter(is_new).count() as f64
}

/// Whether a swap brings something from animals into a recipe that has nothing of them.
fn brings_animals(facts: &Facts, swap: &Swap) -> bool {
    let is_of_them = |it: &Ingredient| it.plant_based == Some(false);
    let mut there = facts.formula.lines.iter();
    swap.brings.iter().any(|it| is_of_them(it.ingredient))
        && !there.any(|line| is_of_them(line.ingredient))
}

/// What each of these counts for beside the cost of a plan, in grams moved (our own weighing up): a strength that an egg
/// has and its replacer lacks, a packet that decides, a swap that practice makes for a part alone, an ingredient more to
/// buy and weigh, an allergen that the recipe is free of, a limit that is missed.
const LACKING: f64 = 10.0;
const PACKET: f64 = 200.0;
const A_PART: f64 = 100.0;
const ALLERGEN: f64 = 150.0;
const ONE_MORE: f64 = 15.0;
const MISSED: f64 = 1e4;

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

/// The name by which the reader knows an ingredient again; soda has one in the country's words.
fn read_name(ingredient: &'static Ingredient, region: Region) -> &'static str {
    match ingredient.key {
        "baking_soda" => soda_name(region),
        _ => ingredient.name,
    }
}

/// The line of an amount that stays and its words with another count, where it is counted in eggs and comes to whole ones:
/// "4 eggs, beaten" of which half goes is "2 eggs, beaten". Alone on its line, and not mended.
fn counted(inputs: &Inputs, facts: &Facts, amount: &Amount) -> Option<(usize, String)> {
    let place = amount.place?;
    let is_alone =
        (facts.formula.lines.iter()).all(|line| line.line != place.0 || line.part == place.1);
    if amount.ingredient.group != Group::Egg || !is_alone || inputs.correction(place).is_some() {
        return None;
    }
    let text = inputs.recipe_text();
    let text = text.lines().nth(place.0.checked_sub(1)?)?;
    let digits: usize = text.bytes().take_while(u8::is_ascii_digit).count();
    let before: u32 = text[..digits].parse().ok().filter(|count| *count > 0)?;
    let each = amount.before / f64::from(before);
    let count = (amount.after / each).round();
    let is_whole = (amount.after - count * each).abs() <= HALF_A_GRAM;
    // "1 eggs" is no English, and grams at the front are no count.
    let is_said = (EGG.0..=EGG.1).contains(&each) && count >= 2.0 && before >= 2;
    // "4 1/2 eggs" and "4 to 5 eggs" are other counts.
    let rest = text[digits..].strip_prefix(' ')?;
    let is_plain =
        rest.starts_with(|letter: char| letter.is_ascii_alphabetic()) && !rest.starts_with("to ");
    (is_whole && is_said && is_plain).then(|| (place.0, format!("{count:.0} {rest}")))
}

/// What rounding to whole grams leaves open.
const HALF_A_GRAM: f64 = 0.5;
/// What an egg, a white or a yolk weighs, g.
const EGG: (f64, f64) = (10.0, 80.0);

/// The inputs as they become. The old text's lines keep their words, but for those that are swapped.
fn carried_out(inputs: &Inputs, facts: &Facts, plan: &Plan) -> Inputs {
    let mut after = inputs.clone();
    after.choices.swaps = super::SwapEntry::default();
    // Words that go may be those that told whose cups and spoons the rest is in.
    after.choices.region = Some(facts.region);
    // Weights go by today's lines; then words, which keep the count of lines; then new lines, from the last upwards.
    for amount in &plan.amounts {
        if let (Some(place), Fate::Moves | Fate::Goes) = (amount.place, amount.fate)
            && !(amount.fate == Fate::Goes && amount.after <= 0.0)
            && counted(inputs, facts, amount).is_none()
        {
            after.weigh(place, Some(amount.after));
        }
    }
    for amount in &plan.amounts {
        if let Some((line, words)) = counted(inputs, facts, amount) {
            after.reword(line, &words);
        }
    }
    let region = facts.region;
    let line_of = |amount: &Amount| {
        format!(
            "{} g {}",
            show::plain(amount.after),
            read_name(amount.ingredient, region)
        )
    };
    let mut added: Vec<(usize, String)> = Vec::new();
    for gone in plan
        .amounts
        .iter()
        .filter(|amount| amount.fate == Fate::Goes)
    {
        let Some(place) = gone.place else { continue };
        let mut comes = plan
            .amounts
            .iter()
            .filter(|amount| amount.fate == Fate::Comes(place) && amount.after > 0.0)
            .map(line_of);
        if gone.after <= 0.0 {
            let alone = !facts
                .formula
                .lines
                .iter()
                .any(|line| line.line == place.0 && line.part != place.1);
            if alone {
                after.reword(place.0, &comes.next().unwrap_or_default());
            } else {
                after.weigh(place, Some(0.0));
            }
        }
        added.extend(comes.map(|text| (place.0, text)));
    }
    for new in plan
        .amounts
        .iter()
        .filter(|amount| amount.fate == Fate::Added)
    {
        let below = match new.ingredient.group {
            Group::Leavener => last_leavener(facts),
            _ => facts
                .formula
                .batter()
                .map(|line| line.line)
                .max()
                .unwrap_or(0),
        };
        added.push((below, line_of(new)));
    }
    // Stable: lines below the same one keep their order once they are put in from the last.
    added.sort_by_key(|(line, _)| *line);
    for (line, text) in added.into_iter().rev() {
        after.add_after(line, &text);
    }
    after
}
