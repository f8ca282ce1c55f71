//! What is chosen comes to: whether the cake is kept, what to weigh, and the two ways of taking it.

use super::{Chosen, KEPT};
use crate::baking::finding::Severity;
use crate::baking::worksheet::{AmountNote, Difference, Judgement, SwapEntry, SwapNote, SwapPlan};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::common::{button, fact, is_open, paragraph, table_head};
use crate::ui::parts::differs::{rows, told};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::{leptos_dom::helpers::TimeoutHandle, prelude::*};
use std::sync::Arc;
use std::time::Duration;

/// How long nothing is typed before a plan is made anew: a key is answered first.
const PAUSE: Duration = Duration::from_millis(300);

/// Parts of the worksheet that a plan goes by.
const FOLLOWED: [Part; 5] = [
    Part::Title,
    Part::Rows,
    Part::Balance,
    Part::Leavening,
    Part::Allergens,
];

/// A plan or the sentence that says why there is none; `None` while nothing is chosen.
type Found = Option<Arc<Result<SwapPlan, String>>>;

/// The plan of what is chosen.
pub fn planned(bench: Bench, chosen: Memo<Vec<Chosen>>, kept: RwSignal<String>) -> Element {
    let found = followed(bench, chosen);
    let of = move |shown: fn(&SwapPlan) -> Vec<Element>| {
        move || {
            found.with(|found| match found.as_deref() {
                Some(Ok(plan)) => shown(plan),
                _ => Vec::new(),
            })
        }
    };
    let status = element("div")
        .class("instead__said")
        .attribute("role", "status")
        .children_of(move || found.with(|found| found.as_deref().map_or_else(Vec::new, said)));
    let plan = element("div")
        .class("instead__plan")
        .child(element("div").children_of(of(|plan| plan.swaps.iter().map(swap).collect())))
        .child(element("div").children_of(of(amounts)))
        .child(element("div").children_of(of(|plan| allergens(&plan.difference))))
        .child(element("div").class("cautions").children_of(of(cautions)))
        .child(take(bench, kept))
        .child(side_by_side(found))
        .child(to_send(found))
        .hidden_while(move || !found.with(|found| matches!(found.as_deref(), Some(Ok(_)))));
    element("div").child(status).child(plan)
}

/// The plan, made anew at once for a new choice, and once nothing is typed for a while for another recipe.
fn followed(bench: Bench, chosen: Memo<Vec<Chosen>>) -> RwSignal<Found> {
    let found = RwSignal::new(None);
    let wished = Memo::new(move |_| bench.swaps(SwapEntry::clone));
    let reckon = move || {
        // The part may have been shut while this waited.
        let is_any = wished.try_with_untracked(SwapEntry::is_any);
        let plan = is_any
            .unwrap_or_default()
            .then(|| Arc::new(bench.swap_plan()));
        let _ = found.try_set(plan);
    };
    Effect::new(move |before: Option<(SwapEntry, Option<TimeoutHandle>)>| {
        for part in FOLLOWED {
            bench.part(part, |_| ());
        }
        bench.own(|_| ());
        chosen.track();
        let wish = wished.get();
        let is_new = before.as_ref().is_none_or(|(before, _)| *before != wish);
        if let Some((_, Some(waiting))) = before {
            waiting.clear();
        }
        if is_new {
            reckon();
            return (wish, None);
        }
        (wish, set_timeout_with_handle(reckon, PAUSE).ok())
    });
    found
}

fn said(found: &Result<SwapPlan, String>) -> Vec<Element> {
    let plan = match found {
        Ok(plan) => plan,
        Err(why) => return vec![paragraph("trouble", why.clone())],
    };
    let [first, rest @ ..] = plan.sentences.as_slice() else {
        return Vec::new();
    };
    let class = match plan.judgement {
        Judgement::Kept => "verdict verdict--agreed",
        Judgement::KeptButFor => "verdict",
        Judgement::GivesUp => "verdict verdict--look",
    };
    let sum = element("div")
        .class(class)
        .child(element("p").child(element("strong").text(first.clone())))
        .children(
            rest.iter()
                .map(|more| paragraph("remedy__sentence", more.clone())),
        );
    vec![sum]
}

/// What goes and what comes, with what to mind; what else is known is folded.
fn swap(note: &SwapNote) -> Element {
    const MIND: &str = "Mind";
    let goes = format!("{} (line {})", note.goes, note.line);
    let (mind, known): (Vec<_>, Vec<_>) = note.facts.iter().partition(|(label, _)| *label == MIND);
    let facts = |facts: Vec<&(&'static str, String)>| -> Vec<Element> {
        let facts = facts.into_iter();
        facts
            .map(|(label, words)| fact(label, words.clone()))
            .collect()
    };
    let known = element("details")
        .class("figure no-print")
        .child(
            element("summary").class("figure__line").child(
                element("span")
                    .class("figure__label")
                    .text("What is known of this swap"),
            ),
        )
        .child(
            element("dl")
                .class("facts")
                .children(facts(known))
                .child(fact("Source", note.source.clone())),
        );
    element("div")
        .class("instead__swap")
        .child(
            element("dl")
                .class("facts")
                .child(fact("Out", goes))
                .child(fact("In", note.comes.clone()).class("facts__fact instead__in"))
                .children(facts(mind)),
        )
        .child(known)
}

/// What to weigh.
fn amounts(plan: &SwapPlan) -> Vec<Element> {
    if plan.amounts.is_empty() {
        return Vec::new();
    }
    let head = table_head([
        ("instead__head", "What changes"),
        ("instead__head instead__head--figure", "Before"),
        ("instead__head instead__head--figure", "After"),
    ]);
    let table = element("table")
        .class("instead__amounts")
        .child(
            element("caption")
                .class("caption")
                .text("What to weigh; everything else stays as it is."),
        )
        .child(head)
        .child(element("tbody").children(plan.amounts.iter().map(amount)));
    vec![table]
}

fn amount(amount: &AmountNote) -> Element {
    element("tr")
        .class("instead__row")
        .child(
            element("th")
                .attribute("scope", "row")
                .class("instead__name")
                .text(amount.name)
                .child(element("span").class("instead__beside").text(amount.what)),
        )
        .child(weight("instead__figure", &amount.before))
        .child(weight(
            "instead__figure instead__figure--after",
            &amount.after,
        ))
}

/// A weight, with its spoons below it: "10 g (2 1/8 tsp)".
fn weight(class: &'static str, shown: &str) -> Element {
    let cell = element("td").class(class);
    match shown.split_once(" (") {
        _ if shown.is_empty() => cell.text("none"),
        None => cell.text(shown.to_owned()),
        Some((weight, spoons)) => {
            let spoons = spoons.trim_end_matches(')').to_owned();
            cell.text(weight.to_owned())
                .text(" ")
                .child(element("span").class("instead__beside").text(spoons))
        }
    }
}

fn allergens(difference: &Difference) -> Vec<Element> {
    let row = |label: &'static str, names: &[String]| {
        (!names.is_empty()).then(|| {
            element("p")
                .child(element("strong").text(label))
                .text(names.join(", "))
        })
    };
    let came = row("Allergens that come in: ", &difference.allergens_gained);
    let went = row("Allergens that go out: ", &difference.allergens_lost);
    let none = (came.is_none() && went.is_none())
        .then(|| paragraph("", "No allergen comes in, and none goes out."));
    let read = paragraph(
        "hint",
        "By the names of the ingredients, as a help and never a guarantee: read every packet.",
    );
    [came, went, none, Some(read)]
        .into_iter()
        .flatten()
        .collect()
}

/// What the page finds in the version that it did not find before.
fn cautions(plan: &SwapPlan) -> Vec<Element> {
    let findings = plan.difference.findings_come.iter();
    let findings = findings
        .filter(|finding| finding.severity != Severity::Note)
        .map(|finding| format!("{}. {}", finding.title, finding.sentence));
    findings
        .chain(plan.cautions.iter().cloned())
        .map(|words| paragraph("cautions__sentence", words))
        .collect()
}

/// The two ways of taking it.
fn take(bench: Bench, kept: RwSignal<String>) -> Element {
    let trouble = RwSignal::new(String::new());
    let version = button(
        "button button--strong",
        "Take it as a new version",
        move || match bench.keep_swaps() {
            Ok(name) => {
                kept.set(name);
                device::show(KEPT.into(), true);
            }
            Err(why) => trouble.set(why),
        },
    );
    let recipe = button("button", "Take it into this recipe", move || {
        if let Err(why) = bench.take_swaps() {
            trouble.set(why);
        }
    });
    element("div")
        .class("no-print")
        .child(
            element("div")
                .class("mend__buttons")
                .child(version)
                .child(recipe),
        )
        .child(
            element("p")
                .class("trouble")
                .attribute("role", "status")
                .text_of(move || trouble.get()),
        )
}

/// Every figure of both, drawn while it is looked at.
fn side_by_side(found: RwSignal<Found>) -> Element {
    let open = RwSignal::new(false);
    element("details")
        .class("figure no-print")
        .on("toggle", move |event| open.set(is_open(event)))
        .child(
            element("summary").class("figure__line").child(
                element("span")
                    .class("figure__label")
                    .text("Before and after, side by side"),
            ),
        )
        .child(element("div").class("differs").children_of(move || {
            found.with(|found| match found.as_deref() {
                Some(Ok(plan)) if open.get() => rows(&plan.difference),
                _ => Vec::new(),
            })
        }))
}

/// The words for a reader.
fn to_send(found: RwSignal<Found>) -> Element {
    let words = move || {
        found.with(|found| match found.as_deref() {
            Some(Ok(plan)) => plan.difference.words.clone(),
            _ => String::new(),
        })
    };
    element("div")
        .class("no-print")
        .child(paragraph("label", "In words, to send to somebody"))
        .child(told(words))
}
