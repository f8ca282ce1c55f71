//! The sheet that is printed: one page in black, for the wall above the bench. It is drawn when somebody prints.

use crate::baking::quantity::{Mass, show};
use crate::baking::worksheet::{BowlSheet, Severity, WeighIn, WeighInSheet, WeighRow, Worksheet};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::route::Route;
use crate::ui::state::{Bakes, Bench};
use leptos::prelude::*;

/// From so many lines on, the type is made smaller, and smaller again.
const LONG: [usize; 2] = [38, 47];
/// How many letters of a method take up a line.
const LETTERS: usize = 95;

/// The printed sheet of the open recipe; there only while it is being printed.
pub fn paper(bench: Bench, route: ReadSignal<Route>) -> Element {
    let printing = device::printing();
    element("div").class("paper").children_of(move || {
        let is_recipe = matches!(route.get(), Route::Ticket(_) | Route::Bench);
        let is_wanted = printing.get() && is_recipe;
        is_wanted
            .then(|| untrack(|| sheet(bench)))
            .into_iter()
            .collect()
    })
}

fn sheet(bench: Bench) -> Element {
    bench.flush();
    let weigh_in = bench.sheet_at_scale(&WeighIn::default());
    let times = bench.bakes.with(Bakes::times);
    let version = bench.version(|version| version.called().to_owned());
    let changes = bench
        .compared(true)
        .map(|compared| compared.difference.words);
    bench.sheet(|sheet| {
        let size = LONG.iter().filter(|most| lines(&weigh_in) > **most).count();
        let class = ["paper__sheet", "paper__sheet paper__sheet--long", "paper__sheet paper__sheet--longer"];
        let title = sheet.title.clone().unwrap_or_else(|| "Untitled recipe".into());
        let title = match version {
            Some(version) => format!("{title}, {version}"),
            None => title,
        };
        element("article").class(class[size]).children([
            element("h1").class("paper__title").attribute("dir", "auto").text(title),
            paragraph(changes.unwrap_or_default()),
            facts(sheet, &weigh_in, &times),
            weights(&weigh_in),
            beside(&weigh_in),
            paragraph(totals(sheet)),
            paragraph(verdicts(sheet)),
            method(&weigh_in),
            cautions(sheet),
            notes(),
            element("p").class("paper__foot").text(
                "Weights of cups and spoons are means; the range beside them holds nine in ten. Percentages are of the flour. Batterwright.",
            ),
        ])
    })
}

/// About how many lines of type it takes.
fn lines(weigh_in: &WeighInSheet) -> usize {
    let rows: usize = weigh_in.bowls.iter().map(|bowl| bowl.rows.len() + 1).sum();
    let method = weigh_in.method.iter();
    let method: usize = method.map(|row| row.text.len() / LETTERS + 1).sum();
    // A row of the table stands a third higher than a line of words.
    rows * 4 / 3 + method + weigh_in.beside.len()
}

/// A paragraph; nothing where there are no words.
fn paragraph(words: String) -> Element {
    if words.is_empty() {
        return element("span");
    }
    element("p")
        .class("paper__words")
        .attribute("dir", "auto")
        .text(words)
}

fn head(words: &'static str) -> Element {
    element("h2").class("paper__head").text(words)
}

fn facts(sheet: &Worksheet, weigh_in: &WeighInSheet, times: &[String]) -> Element {
    let time = match times {
        [] => sheet.oven.recipe_time.clone(),
        times => times.join("; "),
    };
    let core = sheet.oven.core.clone().unwrap_or_default();
    let amount = weigh_in.amount.clone().unwrap_or_default();
    let facts = [
        ("Oven", sheet.oven.setting.clone().unwrap_or_default()),
        ("Pan", sheet.pans.baked()),
        ("Time", time),
        ("Core", core),
        ("Baked", amount),
    ];
    let facts = facts.into_iter().filter(|(_, words)| !words.is_empty());
    element("dl")
        .class("paper__facts")
        .children(facts.map(|(label, words)| {
            element("div")
                .child(element("dt").text(label))
                .child(element("dd").text(words))
        }))
}

fn weights(weigh_in: &WeighInSheet) -> Element {
    let heads = [
        ("", "Ingredient"),
        ("paper__figure", "Weigh"),
        ("paper__figure", "Nine in ten"),
        ("paper__figure", "Of flour"),
        ("", "As written"),
    ];
    let heads = heads.map(|(class, words)| {
        element("th")
            .attribute("scope", "col")
            .class(class)
            .text(words)
    });
    let bodies = weigh_in.bowls.iter().map(bowl);
    element("table")
        .class("paper__table")
        .child(element("thead").child(element("tr").children(heads)))
        .children(bodies)
}

fn bowl(bowl: &BowlSheet) -> Element {
    let title = element("th")
        .class("paper__bowl")
        .attribute("scope", "rowgroup")
        .attribute("colspan", "5")
        .text(bowl.title.clone());
    element("tbody")
        .child(element("tr").child(title))
        .children(bowl.rows.iter().map(row))
}

fn row(row: &WeighRow) -> Element {
    let counted = row.counted.as_ref();
    let name = match counted {
        Some(counted) => format!("{} ({counted})", row.name),
        None => row.name.clone(),
    };
    let figure = |words: String| element("td").class("paper__figure").text(words);
    element("tr").children([
        element("th")
            .attribute("scope", "row")
            .class("paper__name")
            .attribute("dir", "auto")
            .text(name),
        figure(row.target_shown.clone()),
        figure(row.range.clone().unwrap_or_default()),
        figure(row.percent_shown.clone().unwrap_or_default()),
        element("td")
            .attribute("dir", "auto")
            .text(row.written.clone()),
    ])
}

fn beside(weigh_in: &WeighInSheet) -> Element {
    let rows = weigh_in.beside.iter().map(|row| row.text.clone());
    let rows: Vec<String> = rows.collect();
    match rows.as_slice() {
        [] => element("span"),
        rows => paragraph(format!("Beside the scale: {}.", rows.join("; "))),
    }
}

/// What the batter comes to.
fn totals(sheet: &Worksheet) -> String {
    let Some(batter) = sheet.balance.batter else {
        return String::new();
    };
    let totals = sheet.balance.totals.iter().take(4);
    let totals =
        totals.map(|total| format!("{} {}", total.name.to_lowercase(), total.percent_shown));
    let totals: Vec<String> = totals.collect();
    let gaps = if sheet.balance.gaps.is_empty() {
        ""
    } else {
        " Lines without a weight are left out."
    };
    format!(
        "The recipe's batter: {}. Against the flour: {}.{gaps}",
        show::mass(Mass::grams(batter.mean)),
        totals.join(", ")
    )
}

/// Acid and gas, and what else is to be minded, in a few words.
fn verdicts(sheet: &Worksheet) -> String {
    let leavening = &sheet.leavening;
    let verdicts = [&leavening.verdict, &leavening.gas_verdict]
        .map(|verdict| format!("{} ({})", verdict.title, verdict.sure.to_lowercase()));
    let minded = sheet
        .findings
        .iter()
        .filter(|finding| finding.severity != Severity::Note);
    let titles = verdicts
        .into_iter()
        .chain(minded.map(|finding| finding.title.clone()));
    let titles: Vec<String> = titles.take(8).collect();
    format!("Acid, gas and findings: {}.", titles.join("; "))
}

fn method(weigh_in: &WeighInSheet) -> Element {
    let steps = weigh_in.method.iter();
    let steps = steps.map(|step| {
        element("p")
            .class("paper__step")
            .attribute("dir", "auto")
            .text(step.text.clone())
    });
    element("section").child(head("Method")).children(steps)
}

fn cautions(sheet: &Worksheet) -> Element {
    let names: Vec<String> = sheet
        .allergens
        .iter()
        .map(|note| note.name.clone())
        .collect();
    let names = match names.as_slice() {
        [] => "none that the tables know of in what was read".to_owned(),
        names => names.join(", "),
    };
    // Lines have no numbers on paper.
    let plant_based = match sheet.is_plant_based {
        Some(false) => "Not plant-based.",
        _ => &sheet.plant_based,
    };
    let cautions = sheet.cautions.iter().chain(&sheet.oven.cautions);
    let cautions: Vec<String> = cautions.cloned().collect();
    element("section")
        .child(head("Allergens and cautions"))
        .child(paragraph(format!("Allergens: {names}. {plant_based}")))
        .child(paragraph(cautions.join(" ")))
}

/// Room for what the bench teaches: ruled lines that take what is left of the page.
fn notes() -> Element {
    element("section")
        .class("paper__notes")
        .child(head("Notes at the bench"))
        .child(paragraph(
            "Date:                    Flour:                    Oven:                    Done at:"
                .to_owned(),
        ))
}
