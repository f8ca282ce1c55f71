//! One bake, written down: what went in, what was done, what came out, how it scored, what it teaches.

use super::begin_measures;
use super::trials::{allergens, removed, unkept};
use crate::baking::ingredient::{Group, by_key};
use crate::baking::trial::{Changes, OutcomeField, OvenSaid, Scale, TrialSheet};
use crate::baking::worksheet::SheetLine;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{
    button, causes_found, figure, hinted_field, paragraph, pictures, signs_seen, text_field,
    trial_weights,
};
use crate::ui::state::Bench;
use crate::ui::storage::KeptTrial;
use leptos::prelude::*;

/// What has to be followed of a trial.
#[derive(Clone, Copy)]
struct Page {
    bench: Bench,
    id: u64,
    sheet: Memo<Option<TrialSheet>>,
    changes: Memo<Option<Changes>>,
}

/// The page of one trial.
pub fn trial(bench: Bench, id: u64) -> Element {
    bench.flush();
    bench.take_up_trials_soon();
    let reckoned = Memo::new(move |_| bench.reckoned_trial(id));
    let page = Page {
        bench,
        id,
        sheet: Memo::new(move |_| {
            reckoned.with(|trial| Some(bench.trial_sheet(id, trial.as_ref()?)))
        }),
        changes: Memo::new(move |_| bench.trial_changes(id)),
    };
    Effect::new(move |_| document().set_title(&format!("{} · Batterwright", title(bench, id))));
    let is_there = Memo::new(move |_| bench.trials(|all| all.iter().any(|kept| kept.id == id)));
    let back = element("a")
        .class("back")
        .attribute("href", "#/trials")
        .text("All trials");
    element("div").class("sheet trials").children([
        back,
        element("h1")
            .class("sheet__title")
            .attribute("dir", "auto")
            .text_of(move || title(bench, id)),
        removed(bench),
        unkept(bench),
        element("div").class("trial").children_of(move || match is_there.get() {
            true => form(page),
            // Before they are read nobody knows.
            false if !bench.knows_trials() => Vec::new(),
            false => vec![paragraph(
                "hint",
                "There is no such trial among those of the open recipe: it was removed, or is of another one.",
            )],
        }),
    ])
}

fn title(bench: Bench, id: u64) -> String {
    bench.trials(|all| {
        let kept = all.iter().find(|kept| kept.id == id);
        kept.map_or_else(|| "No such trial".to_owned(), KeptTrial::called)
    })
}

fn form(page: Page) -> Vec<Element> {
    let Page { bench, id, .. } = page;
    vec![
        name(page),
        section("What changed", vec![held_against(page), changed(page)]),
        section("What went in", vec![trial_weights(bench, id)]),
        section("What was done", vec![fields(page, &OutcomeField::DONE)]),
        section(
            "What came out",
            vec![fields(page, &OutcomeField::CAME), figures(page)],
        ),
        section("How it scored", scores(page)),
        section("What was wrong", faults(page)),
        section("Pictures", vec![pictures(bench, id)]),
        section("Notes", vec![notes(page)]),
        section(
            "What it teaches",
            vec![lessons(page), measures(page), oven(page)],
        ),
        section("To be minded", vec![cautions(page)]),
        section("What next", vec![next(page)]),
    ]
}

/// A part of the page with its heading.
fn section(title: &'static str, parts: Vec<Element>) -> Element {
    element("section")
        .class("part trial__part")
        .attribute("aria-label", title)
        .child(element("h2").class("part__title").text(title))
        .children(parts)
}

/// A piece of the trial, followed.
fn of<R: Default>(page: Page, read: impl FnOnce(&crate::baking::trial::Trial) -> R) -> R {
    page.bench.trials(|all| {
        let kept = all.iter().find(|kept| kept.id == page.id);
        kept.map(|kept| read(&kept.trial)).unwrap_or_default()
    })
}

fn name(page: Page) -> Element {
    hinted_field(
        "trial-name".into(),
        "text",
        || "Name of this trial".to_owned(),
        Some("Such as \"less sugar\". Empty: its day."),
        move || of(page, |trial| trial.name.clone()),
        || None,
        move |typed| page.bench.change_trial(page.id, |trial| trial.name = typed),
    )
}

/// Which bake it is held against.
fn held_against(page: Page) -> Element {
    let Page { bench, id, .. } = page;
    let options = move || {
        let none = element("option")
            .attribute("value", "")
            .text("nothing: it is the first");
        let others = bench.trials(|all| {
            let others = all.iter().filter(|kept| kept.id != id);
            others
                .map(|kept| {
                    element("option")
                        .attribute("value", kept.name())
                        .text(kept.called())
                })
                .collect::<Vec<_>>()
        });
        std::iter::once(none).chain(others).collect::<Vec<_>>()
    };
    let select = element("select")
        .class("input")
        .attribute("id", "trial-against")
        // As they are when the page is drawn: a list that changed under the finger would choose another.
        .children(untrack(options))
        .value_of(move || of(page, |trial| trial.against.clone().unwrap_or_default()))
        .on_value("change", move |chosen| {
            bench.change_trial(id, |trial| {
                trial.against = Some(chosen).filter(|chosen| !chosen.is_empty());
            });
        });
    element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", "trial-against")
                .text("Held against"),
        )
        .child(select)
}

fn changed(page: Page) -> Element {
    element("div")
        .attribute("role", "status")
        .children_of(move || {
            page.changes.with(|changes| match changes {
                None => vec![paragraph(
                    "hint",
                    "Held against nothing, it stands for itself: the control for what comes after.",
                )],
                Some(changes) => {
                    let line = match changes.line.as_str() {
                        "" => "Nothing changed.".to_owned(),
                        line => format!("{}.", crate::baking::quantity::show::sentence(line)),
                    };
                    let mut said = vec![
                        paragraph("trial__line", line),
                        paragraph(
                            if changes.is_mixed() {
                                "tree__mark"
                            } else {
                                "hint"
                            },
                            changes.tells.clone(),
                        ),
                    ];
                    said.extend(allergens(changes));
                    said
                }
            })
        })
}

fn fields(page: Page, fields: &'static [OutcomeField]) -> Element {
    let fields = fields.iter().map(|&which| field(page, which));
    element("div").class("trial__fields").children(fields)
}

fn field(page: Page, which: OutcomeField) -> Element {
    let Page {
        bench, id, sheet, ..
    } = page;
    let trouble = move || {
        sheet.with(|sheet| {
            let troubles = &sheet.as_ref()?.troubles;
            let found = troubles.iter().find(|it| it.field == which)?;
            Some(found.sentence.clone())
        })
    };
    hinted_field(
        format!("trial-field-{}", which as usize),
        which.keypad(),
        move || which.label().to_owned(),
        Some(which.hint()),
        move || of(page, |trial| trial.typed(which).to_owned()),
        trouble,
        move |typed| bench.change_trial(id, |trial| trial.say(which, typed)),
    )
}

/// What follows from the figures.
fn figures(page: Page) -> Element {
    element("div").class("figures").children_of(move || {
        page.sheet.with(|sheet| {
            let figures = sheet.as_ref().map_or(&[][..], |sheet| &sheet.figures);
            let drawn = figures
                .iter()
                .map(|it| figure(it.label.to_owned(), it.value.clone(), it.how.clone()));
            drawn.collect()
        })
    })
}

fn scores(page: Page) -> Vec<Element> {
    let hint = paragraph(
        "hint",
        "What is scored follows the AACC's method for cakes (10-90.01, from memory); the five steps are our own. Leave out what you did not look at.",
    );
    let scales = Scale::ALL.map(|scale| score(page, scale));
    vec![hint, element("div").class("trial__fields").children(scales)]
}

/// One scale: five steps to touch, and the word of the one that holds.
fn score(page: Page, scale: Scale) -> Element {
    let Page { bench, id, .. } = page;
    let points = Memo::new(move |_| of(page, |trial| trial.points(scale)));
    let steps = (1..=5_u8).map(|step| {
        let words = scale.steps()[usize::from(step) - 1];
        element("button")
            .class("score__step")
            .attribute("type", "button")
            .attribute("aria-label", format!("{}: {step}, {words}", scale.words()))
            .attribute_of("aria-pressed", move || {
                Some((points.get() == Some(step)).to_string())
            })
            .text(step.to_string())
            .on_touch(move || {
                let now = Some(step).filter(|_| points.get_untracked() != Some(step));
                bench.change_trial(id, |trial| trial.score(scale, now));
            })
    });
    let words = move || match points.get() {
        Some(step) => scale.steps()[usize::from(step) - 1].to_owned(),
        None => {
            let [first, _, _, _, last] = scale.steps();
            format!("1 {first} to 5 {last}")
        }
    };
    element("div")
        .class("score")
        .attribute("role", "group")
        .attribute("aria-label", scale.words())
        .child(
            element("p")
                .class("score__line")
                .child(element("span").class("score__name").text(scale.words()))
                .child(element("span").class("score__words").text_of(words)),
        )
        .child(element("div").class("score__steps").children(steps))
}

/// What was seen, and what may be behind it.
fn faults(page: Page) -> Vec<Element> {
    let Page {
        bench, id, sheet, ..
    } = page;
    let asked = Memo::new(move |_| {
        sheet.with(|sheet| bench.asked_diagnosis(id, &sheet.as_ref()?.measured))
    });
    let minutes = RwSignal::new(None);
    bench.follow_time_of(asked, minutes);
    let found = Memo::new(move |_| {
        let minutes = minutes.get();
        asked.with(|asked| Some(bench.trial_diagnosis(asked.as_ref()?, minutes)))
    });
    vec![signs_seen(bench, id), causes_found(bench, id, found)]
}

fn notes(page: Page) -> Element {
    let Page { bench, id, .. } = page;
    let area = element("textarea")
        .class("input trial__notes")
        .attribute("id", "trial-notes")
        .attribute("rows", "4")
        .attribute("dir", "auto")
        .value_of(move || of(page, |trial| trial.notes.clone()))
        .on_value("input", move |typed| {
            bench.change_trial(id, |trial| trial.notes = typed);
        });
    element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", "trial-notes")
                .text("In your own words"),
        )
        .child(area)
}

/// What it teaches, each to be taken and to be taken back.
fn lessons(page: Page) -> Element {
    element("div").class("lessons").children_of(move || {
        let lessons = page
            .sheet
            .with(|sheet| sheet.as_ref().map_or(Vec::new(), |sheet| sheet.lessons.clone()));
        if lessons.is_empty() {
            return vec![paragraph(
                "hint",
                "Nothing yet. A pH of the crumb moves the buffers of this recipe, and minutes in the oven anchor its time.",
            )];
        }
        // What is taken goes into what is open.
        let open = page.bench.open_id();
        let is_other = page.bench.trials_now(|all| {
            let kept = all.iter().find(|kept| kept.id == page.id);
            kept.is_some_and(|kept| kept.recipe != open)
        });
        let other = is_other.then(|| {
            paragraph("hint", "This bake is of another version than the open one. What you take goes into the open one.")
        });
        let lessons = lessons
            .into_iter()
            .map(|lesson| {
                let touch = lesson.taught.map(|taught| {
                    let is_taken = lesson.is_taken;
                    let words = if is_taken { "Take it back" } else { "Go by it" };
                    button("button", words, move || {
                        page.bench.turn_lesson(&taught, !is_taken);
                    })
                    .attribute("aria-label", format!("{words}: {}", lesson.title))
                });
                let state = lesson.is_taken.then(|| {
                    paragraph("hint", "The recipe goes by it.").attribute("role", "status")
                });
                element("div")
                    .class("lesson")
                    .child(element("h3").class("lesson__title").text(lesson.title))
                    .child(paragraph("", lesson.words))
                    .children(state)
                    .children(touch)
            });
        other.into_iter().chain(lessons).collect()
    })
}

/// The cups and spoons that are least sure: weighed three times, the baker's own takes the place of the tables'.
fn measures(page: Page) -> Element {
    element("div").class("lessons").children_of(move || {
        let least_sure = page.sheet.with(|sheet| {
            let lines = sheet.as_ref().map_or(&[][..], |sheet| &sheet.worksheet.lines);
            least_sure(lines)
        });
        if least_sure.is_empty() {
            return Vec::new();
        }
        let offers = least_sure.into_iter().map(|(words, like, range)| {
            let label = format!("Weigh your own {words} ({range})");
            button("button button--plain", label, move || {
                begin_measures(page.bench, &words, like);
            })
        });
        std::iter::once(element("h3").class("lesson__title").text("Your own cups"))
            .chain([paragraph(
                "",
                "These weights are least sure. Fill your own cup or spoon three times and weigh it: the mean and its range take the place of the table's in every recipe, until you remove them from the larder.",
            )])
            .chain(offers)
            .collect()
    })
}

/// A weight that is less sure than this is worth weighing: half its range against its mean.
const UNSURE: f64 = 0.04;

/// Up to three ingredients whose weights are least sure: what the recipe calls them, their keys, their ranges.
fn least_sure(lines: &[SheetLine]) -> Vec<(String, &'static str, String)> {
    let mut found: Vec<(f64, &SheetLine)> = lines
        .iter()
        .filter_map(|line| {
            let grams = line.grams.filter(|grams| grams.mean > 0.0)?;
            let half = (grams.high - grams.low) / 2.0 / grams.mean;
            // A spice is as unsure, and moves nothing.
            let key = line.ingredient?;
            let counts = grams.mean >= 10.0
                || by_key(key).is_some_and(|known| known.group == Group::Leavener);
            (half > UNSURE && counts && !line.words.is_empty()).then_some((half, line))
        })
        .collect();
    found.sort_by(|one, other| other.0.total_cmp(&one.0));
    let found = found.into_iter().take(3);
    found
        .filter_map(|(_, line)| {
            Some((
                line.words.clone(),
                line.ingredient?,
                line.range_shown.clone()?,
            ))
        })
        .collect()
}

/// What all timed bakes tell of the oven, when it is asked for; what is taken can be taken back.
fn oven(page: Page) -> Element {
    let Page { bench, .. } = page;
    let said = RwSignal::new(None::<OvenSaid>);
    let is_asked = RwSignal::new(false);
    // What stood in the settings before.
    let before = RwSignal::new(None::<String>);
    let ask = move || {
        is_asked.set(true);
        said.set(None);
        bench.ask_oven(said);
    };
    let drawn = move || {
        let Some(OvenSaid { words, typed }) = said.get() else {
            let words = is_asked.get().then_some("Being worked out.");
            return words
                .map(|words| paragraph("hint", words))
                .into_iter()
                .collect();
        };
        let touch = match (typed, before.get()) {
            (_, Some(old)) => Some(button("button", "Take it back", move || {
                bench.set(|settings| settings.oven_off = old.clone());
                before.set(None);
            })),
            (Some(typed), None) => Some(button("button", "Set the oven's dial so", move || {
                before.set(Some(bench.settings_now().oven_off));
                bench.set(|settings| settings.oven_off = typed.clone());
            })),
            (None, None) => None,
        };
        std::iter::once(paragraph("", words)).chain(touch).collect()
    };
    element("div").class("lessons").children([
        element("h3").class("lesson__title").text("Your oven"),
        button(
            "button button--plain",
            "Ask all timed bakes about the oven",
            ask,
        ),
        element("div")
            .attribute("role", "status")
            .children_of(drawn),
    ])
}

fn cautions(page: Page) -> Element {
    element("div").class("cautions").children_of(move || {
        let said = page.sheet.with(|sheet| {
            sheet
                .as_ref()
                .map_or(Vec::new(), |sheet| sheet.cautions.clone())
        });
        said.into_iter()
            .map(|words| paragraph("cautions__sentence", words))
            .collect()
    })
}

/// What can be made of it: a version of the recipe as it was baked, or nothing.
fn next(page: Page) -> Element {
    let Page { bench, id, .. } = page;
    let name = RwSignal::new(String::new());
    let trouble = RwSignal::new(None::<String>);
    let keep = move || {
        let typed = name.get_untracked();
        if typed.trim().is_empty() {
            trouble.set(Some("Write a name, such as \"less sugar\".".into()));
            return;
        }
        match bench.trial_as_version(id, &typed, None) {
            Ok(()) => device::go("#/"),
            Err(why) => trouble.set(Some(format!("It could not be kept: {why}."))),
        }
    };
    element("div").class("trial__next").children([
        text_field(
            "trial-version".into(),
            "text",
            || "Keep it as a version called".to_owned(),
            move || name.get(),
            move || trouble.get(),
            move |typed| {
                trouble.set(None);
                name.set(typed);
            },
        ),
        button("button", "Make a version as it was baked", keep),
        button("button button--plain", "Remove this trial", move || {
            bench.remove_trial(id);
            device::go("#/trials");
        }),
    ])
}
