//! Why a bake failed: what was seen, to be ticked, and what may be behind it.

use super::common::{button, paragraph, tick};
use super::kind::kind_of_bake;
use crate::baking::diagnosis::{Group, signs};
use crate::baking::finding::Remedy;
use crate::baking::quantity::show;
use crate::baking::worksheet::{CauseView, DiagnosisSheet};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The groups of signs in the order in which a cake is looked at.
const GROUPS: [(Group, &str); 6] = [
    (Group::Shape, "Shape"),
    (Group::Crumb, "Crumb"),
    (Group::Crust, "Crust"),
    (Group::Taste, "Taste and smell"),
    (Group::Colour, "Colour"),
    (Group::Pan, "Batter and pan"),
];

/// The signs of a trial.
pub fn signs_seen(bench: Bench, id: u64) -> Element {
    let groups = GROUPS.into_iter().map(|(group, title)| {
        let ticks = signs()
            .iter()
            .filter(move |sign| sign.group == group)
            .map(move |sign| {
                let words = match sign.also {
                    "" => sign.words.to_owned(),
                    also => format!("{} ({also})", sign.words),
                };
                let is_set = move || {
                    bench.trials(|all| {
                        let kept = all.iter().find(|kept| kept.id == id);
                        kept.is_some_and(|kept| kept.trial.seen.iter().any(|it| it == sign.key))
                    })
                };
                tick(words, is_set, move || {
                    bench.change_trial(id, |trial| trial.turn_seen(sign.key));
                })
            });
        let line = element("summary")
            .class("figure__line")
            .child(element("span").class("figure__label").text(title))
            .child(
                element("span")
                    .class("figure__value")
                    .text_of(move || count(bench, id, group)),
            );
        element("details")
            .class("figure no-print")
            .child(line)
            .child(
                element("div")
                    .attribute("role", "group")
                    .attribute("aria-label", title)
                    .children(ticks),
            )
    });
    element("div").class("diagnosis__signs").children(groups)
}

/// How many of a group are ticked, in words; nothing where none is.
fn count(bench: Bench, id: u64, group: Group) -> String {
    let seen = bench.trials(|all| {
        let kept = all.iter().find(|kept| kept.id == id);
        let keys = kept.map_or(&[][..], |kept| &kept.trial.seen);
        let of_group = signs().iter().filter(|sign| sign.group == group);
        of_group
            .filter(|sign| keys.iter().any(|key| key == sign.key))
            .count()
    });
    match seen {
        0 => String::new(),
        seen => format!("{seen} seen"),
    }
}

/// The causes of what was seen.
pub fn causes_found(bench: Bench, id: u64, found: Memo<Option<DiagnosisSheet>>) -> Element {
    let trouble = RwSignal::new(String::new());
    let said = move || {
        found.with(|found| {
            found
                .as_ref()
                .map_or_else(String::new, |found| found.said.clone())
        })
    };
    let drawn = move || {
        found.with(|found| {
            let Some(found) = found else {
                return Vec::new();
            };
            let judged =
                (!found.causes.is_empty()).then(|| paragraph("hint", found.judged_as.clone()));
            let causes = found.causes.iter().map(|it| cause(bench, id, it, trouble));
            judged
                .into_iter()
                .chain(causes)
                .chain(beside(found))
                .collect()
        })
    };
    let seen = move || {
        bench.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == id);
            let keys = kept.map_or(&[][..], |kept| &kept.trial.seen);
            let seen = signs()
                .iter()
                .filter(|sign| keys.iter().any(|key| key == sign.key));
            let words: Vec<String> = seen.map(|sign| show::amid(sign.words)).collect();
            match words.is_empty() {
                true => String::new(),
                false => format!("Seen: {}.", words.join("; ")),
            }
        })
    };
    let meant = kind_of_bake(bench, id).hidden_while(move || {
        found.with(|found| found.as_ref().is_none_or(|it| it.causes.is_empty()))
    });
    element("div")
        .class("diagnosis")
        // The ticks are not printed.
        .child(element("p").class("print-alone").text_of(seen))
        .child(
            element("p")
                .class("trial__line diagnosis__said")
                .attribute("role", "status")
                .text_of(said),
        )
        .child(
            element("p")
                .class("trouble")
                .attribute("role", "status")
                .text_of(move || trouble.get()),
        )
        .child(meant)
        .child(element("div").class("diagnosis__causes").children_of(drawn))
}

fn cause(bench: Bench, id: u64, view: &CauseView, trouble: RwSignal<String>) -> Element {
    let line = element("summary")
        .class("figure__line")
        .child(element("span").class("figure__label").text(view.name))
        .text(" ")
        .child(
            element("strong")
                .class("figure__value")
                .text(view.verdict.clone()),
        );
    let evidence = view.evidence.iter().map(|(words, factor)| {
        element("li")
            .text(words.clone())
            .text(" ")
            .child(element("strong").text(format!("{}.", capital(factor))))
    });
    let caution = (!view.caution.is_empty()).then(|| paragraph("cautions__sentence", view.caution));
    let remedies = view
        .remedies
        .iter()
        .map(|it| remedy(bench, id, it.clone(), trouble));
    element("details")
        .class("figure diagnosis__cause")
        .child(line)
        .child(paragraph("", view.how))
        .child(
            element("h3")
                .class("lesson__title")
                .text("What speaks for and against it"),
        )
        .child(
            element("ul")
                .class("diagnosis__evidence")
                .children(evidence),
        )
        .child(element("h3").class("lesson__title").text("What would tell"))
        .child(paragraph("", view.tells))
        .child(element("h3").class("lesson__title").text("What mends it"))
        .child(paragraph("", view.remedy))
        .children(remedies)
        .children(caution)
}

fn capital(words: &str) -> String {
    crate::baking::quantity::show::sentence(words)
}

/// A change of the recipe, made as a new version by one touch.
fn remedy(bench: Bench, id: u64, remedy: Remedy, trouble: RwSignal<String>) -> Element {
    let sentence = paragraph("remedy__sentence", remedy.sentence.clone());
    let label = format!("{}, as a new version", remedy.label);
    let take = button("button button--strong", label, move || {
        match bench.trial_as_version(id, &remedy.label, Some(&remedy)) {
            Ok(()) => device::go("#/"),
            Err(why) => trouble.set(format!("It could not be kept: {why}.")),
        }
    });
    element("div")
        .class("remedy no-print")
        .child(take)
        .child(sentence)
}

/// What stands below the causes.
fn beside(found: &DiagnosisSheet) -> Vec<Element> {
    let list = |title: &'static str, rows: Vec<String>| {
        (!rows.is_empty()).then(|| {
            element("div")
                .child(element("h3").class("lesson__title").text(title))
                .child(
                    element("ul")
                        .class("diagnosis__evidence")
                        .children(rows.into_iter().map(|row| element("li").text(row))),
                )
        })
    };
    let ruled_out = found.ruled_out.iter();
    let ruled_out = ruled_out
        .map(|(name, figure)| format!("{name}: {figure}"))
        .collect();
    let unknown: Vec<String> = found.unknown.iter().map(|it| capital(it)).collect();
    let sources = found.sources.iter().map(|it| it.citation.to_owned());
    let how = (!found.causes.is_empty()).then(|| {
        element("details")
            .class("figure no-print")
            .child(
                element("summary").class("figure__line").child(
                    element("span")
                        .class("figure__label")
                        .text("How this was got"),
                ),
            )
            .child(paragraph("figure__how", found.how.clone()))
            .child(
                element("ul")
                    .class("diagnosis__evidence")
                    .children(sources.map(|it| element("li").text(it))),
            )
    });
    [
        list("Told apart by", found.apart.clone()),
        list("Ruled out by the figures", ruled_out),
        list("Worth measuring next time", unknown),
        list("Left aside", found.troubles.clone()),
        how,
    ]
    .into_iter()
    .flatten()
    .collect()
}
