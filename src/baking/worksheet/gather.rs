//! The flow itself: read, weigh, facts, judge, gather.

use super::altitude::altitude_sheet;
use super::leavening::leavening_sheet;
use super::line::sheet_lines;
use super::oven::oven_sheet;
use super::pans::{jar_caution, pan_sheet};
use super::said::MOST_BEYOND;
use super::totals::balance_sheet;
use super::{
    AllergenNote, Choices, CountrySheet, CrumbTold, Inputs, Settings, SourceNote, Status,
    VerdictKind, Worksheet,
};
use crate::baking::balance::{
    By, Kind, SETTING_SOURCES, SUGAR_SOURCES, percentages, recognise, setting, standing,
};
use crate::baking::chemistry::bowl;
use crate::baking::chemistry::course::Handling;
use crate::baking::finding::{Facts, findings};
use crate::baking::formula::{Formula, Habits, Place, weigh};
use crate::baking::ingredient::{Allergen, Group, Ingredient, Larder, Law, Own};
use crate::baking::oven::altitude_table::ALTITUDE_SOURCES;
use crate::baking::oven::charge::Batch;
use crate::baking::oven::forecast::HEAT_SOURCES;
use crate::baking::pan::{Asked, batter_of, fit};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Certainty, Looks, Recipe, Role, linked, read_again};
use crate::baking::source::{self, Source};
use std::borrow::Cow;

/// The worksheet of a recipe: a pure function of what the baker gave.
pub fn worksheet(inputs: &Inputs, settings: &Settings) -> Worksheet {
    worksheet_again(
        &mut Looks::default(),
        inputs,
        settings,
        Larder::of(settings.region).own,
    )
}

/// The same with the baker's own larder, and with what was seen of the text's lines before: that spares work and
/// changes nothing.
pub fn worksheet_again(
    looks: &mut Looks,
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
) -> Worksheet {
    with_facts(looks, inputs, settings, own, |known| {
        sheet_of(known, inputs, settings)
    })
}

/// What the flow finds out before it judges.
pub(super) struct Known<'a> {
    text: &'a Cow<'a, str>,
    country: CountrySheet,
    pub recipe: &'a Recipe,
    /// All facts of its formula.
    pub facts: Facts<'a>,
}

/// Reads, weighs and finds the facts, and hands them on.
pub(super) fn with_facts<R>(
    looks: &mut Looks,
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
    then: impl FnOnce(Known) -> R,
) -> R {
    let text = inputs.recipe_text();
    let country = country(looks, &text, inputs, settings);
    let region = country.region;
    let larder = Larder { region, own };
    let recipe = read_again(looks, &text, larder, &inputs.corrections);
    let habits = Habits {
        region,
        filling: settings.cup_habit.filling(),
        eggs: settings.eggs.0,
    };
    let formula = weigh(&recipe, &habits);

    let percentages = percentages(&formula);
    let choices = &inputs.choices;
    let recognised = recognise(
        &formula,
        &percentages,
        recipe.title.as_deref(),
        choices.kind,
    );
    let standing = standing(&formula, &percentages, &recognised);
    let handling = handling(choices, settings);
    let bowl = bowl(&formula, &handling).map(|bowl| match choices.batter.crumb_ph() {
        Ok(Some(ph)) => bowl.with_measured(ph),
        _ => bowl.with_told(&told(&choices.crumbs), percentages.batter.mean),
    });
    let batter_ph = bowl.as_ref().map(|bowl| bowl.batter_ph.mean);
    let setting = setting(&formula, batter_ph).filter(|_| recognised.kind != Kind::Cookie);
    let density = choices.batter.density().ok().flatten();
    let batch = Batch {
        formula: &formula,
        kind: recognised.kind,
        setting: setting.as_ref(),
        density: density.unwrap_or(batter_of(recognised.kind).density).mean,
        handling,
        bowl: bowl.as_ref(),
    };
    let charge = batch.charge(settings.air());
    let asked = Asked {
        own: choices.own_pan.as_ref(),
        shelf: &choices.shelf,
        amount: &choices.amount,
        density,
        expansion: charge
            .as_ref()
            .and_then(|charge| charge.expansion(recognised.kind)),
    };
    let fit = fit(
        &recipe,
        &formula,
        percentages.batter,
        recognised.kind,
        &asked,
    );

    let unread = unread(&recipe);
    let facts = Facts {
        formula: &formula,
        percentages: &percentages,
        kind: recognised.kind,
        kind_by: recognised.by,
        standing: &standing,
        servings: servings(&recipe),
        bowl: bowl.as_ref(),
        setting: setting.as_ref(),
        charge: charge.as_ref(),
        handling,
        fit: &fit,
        unread: &unread,
        region,
    };
    then(Known {
        text: &text,
        country,
        recipe: &recipe,
        facts,
    })
}

/// Judges, and gathers all of it.
pub(super) fn sheet_of(known: Known, inputs: &Inputs, settings: &Settings) -> Worksheet {
    let Known {
        text,
        country,
        recipe,
        facts,
    } = known;
    let (is_plant_based, plant_based) = plant_based(recipe, facts.formula);
    let (formula, choices, region) = (facts.formula, &inputs.choices, country.region);
    let findings = findings(&facts);
    let leavening = leavening_sheet(&facts, &choices.batter);
    let altitude = altitude_sheet(&facts, choices, settings);
    let oven = oven_sheet(&facts, recipe, choices, settings);

    let lines = sheet_lines(
        recipe,
        formula,
        facts.percentages,
        facts.fit,
        &inputs.corrections,
    );
    Worksheet {
        title: recipe.title.clone(),
        country,
        taken_from: match text {
            Cow::Owned(_) => linked::text_of(&inputs.text).map(|page| page.said),
            Cow::Borrowed(_) => None,
        },
        balance: balance_sheet(&facts),
        pans: pan_sheet(&facts, choices, settings.lengths),
        sources: sources(&facts, altitude.is_some(), oven.ask.is_some()),
        oven,
        altitude,
        allergens: allergens(formula, Law::of(region)),
        plant_based,
        is_plant_based,
        cautions: cautions(formula, jar_caution(facts.fit)),
        summary: summary(&lines, &leavening),
        findings,
        leavening,
        lines,
    }
}

/// How the batter is handled, as far as the baker said so, under the air of the baker's height.
fn handling(choices: &Choices, settings: &Settings) -> Handling {
    let usual = Handling::default();
    Handling {
        waits: choices.batter.waits().ok().flatten().unwrap_or(usual.waits),
        air: settings.air().to_atmospheres(),
        ..usual
    }
}

/// Whose cups, spoons and words the recipe is in, and how that is known.
fn country(looks: &mut Looks, text: &str, inputs: &Inputs, settings: &Settings) -> CountrySheet {
    if let Some(region) = inputs.choices.region {
        return CountrySheet {
            region,
            why: format!("{}: you said so.", region.words()),
            chosen: true,
            lines: Vec::new(),
        };
    }
    let guess = looks.guess(text, settings.region);
    let signs: Vec<String> = guess
        .because
        .iter()
        .map(|(line, words)| format!("\"{words}\" (line {line})"))
        .collect();
    let name = guess.region.words();
    let why = match guess.certainty {
        Certainty::Nothing => format!("{name}: yours, since no word of the recipe tells another."),
        _ if signs.is_empty() => format!("{name}: yours, which its words fit."),
        Certainty::Clear => format!("{name}, by its words: {}.", signs.join(", ")),
        Certainty::Likely => format!("{name}, likely, by its words: {}.", signs.join(", ")),
    };
    CountrySheet {
        region: guess.region,
        why,
        chosen: false,
        lines: guess.because.iter().map(|(line, _)| *line).collect(),
    }
}

/// How many the recipe says it makes, the first figure of what is written.
fn servings(recipe: &Recipe) -> Option<f64> {
    recipe.lines.iter().find_map(|line| {
        let words = line.mentions.makes.as_deref()?;
        let start = words.find(|letter: char| letter.is_ascii_digit())?;
        let figure: f64 = words[start..]
            .bytes()
            .take_while(u8::is_ascii_digit)
            .take(4)
            .fold(0.0, |sum, digit| sum * 10.0 + f64::from(digit - b'0'));
        (figure >= 1.0).then_some(figure)
    })
}

/// Lines in the batter's place that could not be read.
fn unread(recipe: &Recipe) -> Vec<usize> {
    recipe
        .lines
        .iter()
        .filter(|line| matches!(line.role, Role::Unread(_)))
        .map(|line| line.number)
        .collect()
}

/// The kind of cake that a recipe is recognised as, or is said to be; `None` where nothing tells.
pub fn kind_of(inputs: &Inputs, settings: &Settings, own: &Own) -> Option<Kind> {
    with_facts(&mut Looks::default(), inputs, settings, own, |known| {
        let facts = known.facts;
        (facts.kind_by != By::Neither).then_some(facts.kind)
    })
}

/// Base in a kilogram of batter beyond what is reckoned, meq, where the crumb of a recipe is read at a pH; `None` where
/// nothing in it brings acid, base or a buffer. What was measured before is left aside.
pub fn crumb_beyond(inputs: &Inputs, settings: &Settings, own: &Own, ph: f64) -> Option<f64> {
    let mut plain = inputs.clone();
    plain.choices.crumbs.clear();
    plain.choices.batter.crumb_ph.clear();
    with_facts(&mut Looks::default(), &plain, settings, own, |known| {
        let batter = known.facts.percentages.batter.mean;
        let bowl = known.facts.bowl.filter(|_| batter > Mass::ZERO)?;
        Some(bowl.beyond(ph, batter))
    })
}

/// What crumbs of trials tell, as far as they are figures at all.
fn told(crumbs: &[CrumbTold]) -> Vec<f64> {
    let told = crumbs.iter().map(|crumb| crumb.beyond);
    told.filter(|beyond| beyond.abs() < MOST_BEYOND).collect()
}

/// The allergens of everything that was understood, batter or not, weighed or not.
fn allergens(formula: &Formula, law: Law) -> Vec<AllergenNote> {
    Allergen::ALL
        .into_iter()
        .filter_map(|allergen| {
            let lines: Vec<usize> = understood(formula)
                .filter(|(_, ingredient)| {
                    ingredient.is_some_and(|it| it.allergens.contains(&allergen))
                })
                .map(|(line, _)| line)
                .collect();
            (!lines.is_empty()).then(|| AllergenNote {
                allergen,
                // What one country's law leaves out may still hurt: it is named, and said to be left out.
                name: match allergen.named_by(law) {
                    Some(_) => allergen.words().to_owned(),
                    None => format!("{} (not on the list of {})", allergen.words(), law.words()),
                },
                lines: in_order(lines),
            })
        })
        .collect()
}

/// Every ingredient line with what it is, weighed or not.
fn understood(formula: &Formula) -> impl Iterator<Item = (usize, Option<&'static Ingredient>)> {
    let weighed = formula
        .lines
        .iter()
        .map(|line| (line.line, Some(line.ingredient)));
    weighed.chain(
        formula
            .unweighed
            .iter()
            .map(|line| (line.line, line.ingredient)),
    )
}

fn in_order(mut lines: Vec<usize>) -> Vec<usize> {
    lines.sort_unstable();
    lines
}

/// Whether it comes from plants alone, as far as its lines tell: the answer, and a sentence.
fn plant_based(recipe: &Recipe, formula: &Formula) -> (Option<bool>, String) {
    let (mut unsure, mut from_animals) = (unread(recipe), Vec::new());
    for (line, ingredient) in understood(formula) {
        match ingredient.and_then(|ingredient| ingredient.plant_based) {
            Some(true) => {}
            Some(false) => from_animals.push(line),
            None => unsure.push(line),
        }
    }
    let (unsure, from_animals) = (in_order(unsure), in_order(from_animals));
    if formula.lines.is_empty() && formula.unweighed.is_empty() {
        (None, String::new())
    } else if !from_animals.is_empty() {
        let lines = show::lines(&from_animals);
        (Some(false), format!("Not plant-based: see {lines}."))
    } else if !unsure.is_empty() {
        let lines = show::lines(&unsure);
        let sentence = format!("Plant-based if the packets of {lines} say so.");
        (None, sentence)
    } else {
        let sentence = "Plant-based by its ingredients; the packets decide.";
        (Some(true), sentence.into())
    }
}

/// The usual cautions, as far as they apply.
fn cautions(formula: &Formula, of_jars: Option<String>) -> Vec<String> {
    let mut cautions = vec![
        "Allergens are read from names, as a help and never a guarantee: read every packet, and mind what shares your bench.".to_owned(),
    ];
    let has = |group: Group| {
        formula
            .lines
            .iter()
            .any(|line| line.ingredient.group == group)
    };
    if has(Group::Flour) || has(Group::Egg) {
        cautions.push(
            "Don't taste or serve raw batter: raw flour and raw egg can make people ill."
                .to_owned(),
        );
    }
    if formula
        .lines
        .iter()
        .any(|line| line.ingredient.key == "bakers_ammonia")
    {
        cautions.push("Baker's ammonia is for thin, dry biscuits only: in a cake the ammonia stays. Its fumes hurt eyes and lungs.".to_owned());
    }
    cautions.extend(of_jars);
    cautions.push("All figures are estimates for a baker's judgement and a test bake. Where food is sold or given away, local food rules and licensed practice decide.".to_owned());
    cautions
}

/// Every source that a figure of this formula is from.
fn sources(facts: &Facts, has_altitude: bool, is_baked: bool) -> Vec<SourceNote> {
    let mut used: Vec<&'static Source> = Vec::new();
    let named = |keys: &'static [&'static str]| keys.iter().filter_map(|key| source::by_key(key));
    if facts.setting.is_some() {
        used.extend(named(&SETTING_SOURCES));
    }
    if has_altitude {
        used.extend(named(&ALTITUDE_SOURCES));
    }
    if is_baked {
        used.extend(named(&HEAT_SOURCES));
    }
    if facts.fit.own_fill.is_some() || facts.fit.split.is_some() {
        let batter = batter_of(facts.kind);
        used.push(batter.density_cited.source);
        used.extend(batter.fill.map(|fill| fill.cited.source));
    }
    for line in &facts.formula.lines {
        used.push(line.ingredient.cited.source);
        used.extend(line.how.cited.map(|cited| cited.source));
        if line.place != Place::Batter {
            continue;
        }
        if let Some(sugars) = &line.ingredient.sugars {
            used.push(sugars.cited.source);
            used.extend(named(&SUGAR_SOURCES));
        }
        if let Some(acidity) = line.ingredient.acidity {
            used.extend([acidity.ph_cited.source, acidity.buffer_cited.source]);
            used.extend(acidity.acids_cited.map(|cited| cited.source));
        }
        used.extend(
            line.ingredient
                .leavening
                .map(|leavening| leavening.cited.source),
        );
    }
    source::all()
        .iter()
        .filter(|source| used.iter().any(|it| it.key == source.key))
        .map(|source| SourceNote {
            key: source.key,
            citation: source.citation,
        })
        .collect()
}

/// One sentence for the top of the page and for a screen reader.
fn summary(lines: &[super::SheetLine], leavening: &super::LeaveningSheet) -> String {
    let weighed = lines
        .iter()
        .filter(|line| line.status == Status::Weighed)
        .count();
    let missed = lines
        .iter()
        .filter(|line| matches!(line.status, Status::NotWeighed | Status::NotRead) && line.flagged)
        .count();
    if weighed + missed == 0 {
        return "No ingredients yet. Paste a recipe, one ingredient a line.".into();
    }
    let mut summary = match weighed {
        1 => "1 ingredient weighed".to_owned(),
        count => format!("{count} ingredients weighed"),
    };
    if missed > 0 {
        summary.push_str(&format!(", {missed} without a weight"));
    }
    let gas = match leavening.gas_verdict.kind {
        VerdictKind::CannotTell => String::new(),
        _ => format!(" {}.", leavening.gas_verdict.title),
    };
    format!("{summary}. {}.{gas}", leavening.verdict.title)
}
