//! The page at the bench: what to weigh, what the oven is set to, timers, the method. Made for a phone beside the scale.

use crate::baking::worksheet::{MethodRow, WeighInSheet};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{self, button, fact, paragraph, tick};
use crate::ui::shown::Part;
use crate::ui::state::{Bakes, Bench};
use leptos::prelude::*;

/// The page at the bench.
pub fn bench(bench: Bench) -> Element {
    bench.flush();
    bench.take_up_weigh_in();
    let title = move || {
        bench
            .part(Part::Title, |sheet| sheet.title.clone())
            .unwrap_or_else(|| "Untitled recipe".into())
    };
    Effect::new(move |_| document().set_title(&format!("Bench: {} · Batterwright", title())));
    let sheet = Memo::new(move |_| bench.weigh_in_sheet());
    stay_awake();
    element("div").class("sheet at-bench").children([
        element("h1")
            .class("sheet__title")
            .child(element("span").class("at-bench__page").text("Bench "))
            .child(element("span").attribute("dir", "auto").text_of(title)),
        undo(bench),
        unkept(bench),
        facts(bench),
        head(sheet),
        parts::weigh_in(bench, sheet),
        after(bench, sheet),
        strays(sheet),
        parts::misses(bench, sheet),
        beside(sheet),
        parts::timers(bench, sheet),
        method(bench, sheet),
        done(bench),
        write_down(bench),
        awake(),
    ])
}

/// Keeps the screen on while this page is shown.
fn stay_awake() {
    device::tell("batterwright:stay-awake");
    on_cleanup(|| device::tell("batterwright:may-sleep"));
}

/// Whether the screen stays on.
fn awake() -> Element {
    let mark = device::marks("data-awake", "batterwright:kitchen");
    paragraph("hint at-bench__awake", "").attribute("role", "status").text_of(move || {
        match mark.get().as_str() {
            "yes" => "The screen stays on while this page is open.",
            "cannot" => "This browser cannot keep the screen on: set your phone to lock later. Nothing is lost when it does.",
            _ => "The screen may go dark by itself; nothing is lost when it does.",
        }
        .to_owned()
    })
}

/// What was just done, with the way back.
fn undo(bench: Bench) -> Element {
    element("div")
        .class("done-place")
        .attribute("role", "status")
        .children_of(move || {
            let Some(what) = bench.bench_undo() else {
                return Vec::new();
            };
            let bar = element("div")
                .class("done")
                .child(paragraph("done__words", format!("{what}.")))
                .child(button("button", "Take it back", move || {
                    bench.take_bench_back();
                    device::focus("main");
                }));
            vec![bar]
        })
}

fn unkept(bench: Bench) -> Element {
    element("div").attribute("role", "alert").children_of(move || {
        let why = bench.bench_unkept().map(|why| {
            paragraph(
                "trouble",
                format!("What is done at the bench is not being kept: {why}. It holds while this page is open."),
            )
        });
        why.into_iter().collect()
    })
}

/// Oven, pan and time: what has to be in view.
fn facts(bench: Bench) -> Element {
    element("dl")
        .class("facts at-bench__facts")
        .children_of(move || {
            let oven = bench.part(Part::Oven, |sheet| sheet.oven.clone());
            let pans = bench.part(Part::Pans, |sheet| sheet.pans.baked());
            let times = bench.bakes.with(Bakes::times);
            let mut facts = Vec::new();
            if let Some(setting) = oven.setting {
                facts.push(fact("Oven", setting));
            }
            facts.push(fact("Pan", pans));
            let time = match (times.is_empty(), &oven.cannot) {
                (false, _) => times.join("; "),
                (true, Some(_)) => oven.recipe_time.clone(),
                (true, None) => "Being worked out.".to_owned(),
            };
            facts.push(fact("Time", time));
            if let Some(core) = oven.core_usual {
                facts.push(fact("Core", core));
            }
            facts
        })
}

/// How far the weigh-in is.
fn head(sheet: Memo<WeighInSheet>) -> Element {
    let of = move |read: fn(&WeighInSheet) -> String| sheet.with(read);
    let so_far = element("p")
        .class("at-bench__so-far")
        .attribute("role", "status")
        .text_of(move || of(|sheet| format!("{} of {} weighed", sheet.done, sheet.weighings)));
    let amount = paragraph("hint", "").text_of(move || {
        of(|sheet| match (&sheet.amount, &sheet.grown) {
            (None, None) => String::new(),
            (amount, grown) => {
                let amount = amount.as_ref().map(|words| format!("{words}."));
                let both: Vec<String> = amount.into_iter().chain(grown.clone()).collect();
                both.join(" ")
            }
        })
    });
    element("div")
        .class("at-bench__head")
        .child(so_far)
        .child(amount)
}

/// What stands below the bowls: how the scale is used, and the ways back.
fn after(bench: Bench, sheet: Memo<WeighInSheet>) -> Element {
    let as_planned = button("button", "Weigh as planned again", move || {
        bench.grow_no_more();
    })
    .hidden_while(move || sheet.with(|sheet| sheet.grown.is_none()));
    let anew = button(
        "button button--plain",
        "Start the weigh-in anew",
        move || {
            bench.start_anew();
        },
    )
    .hidden_while(move || bench.weigh_in(|weigh_in| weigh_in.is_untouched()));
    let zeroed = tick(
        "I zero the scale before each weight",
        move || bench.weigh_in(|weigh_in| weigh_in.zeroed),
        move || bench.turn_zeroed(),
    );
    element("div")
        .class("at-bench__after")
        .children([as_planned, zeroed, anew])
}

/// What is in a bowl and no longer in the recipe.
fn strays(sheet: Memo<WeighInSheet>) -> Element {
    element("div").children_of(move || {
        let strays = sheet.with(|sheet| sheet.strays.clone());
        strays
            .into_iter()
            .map(|words| paragraph("gap", words))
            .collect()
    })
}

/// What goes in no bowl.
fn beside(sheet: Memo<WeighInSheet>) -> Element {
    let rows = Memo::new(move |_| sheet.with(|sheet| sheet.beside.clone()));
    element("div")
        .class("at-bench__beside")
        .hidden_while(move || rows.with(Vec::is_empty))
        .child(element("h2").class("part__title").text("Beside the scale"))
        .child(element("ul").class("plain-list").children_of(move || {
            let rows = rows.get().into_iter();
            rows.map(|row| {
                element("li")
                    .child(element("strong").attribute("dir", "auto").text(row.text))
                    .text(format!(" {}", row.why))
            })
            .collect()
        }))
}

/// The method, to be ticked line by line.
fn method(bench: Bench, sheet: Memo<WeighInSheet>) -> Element {
    let lines = Memo::new(move |_| {
        sheet.with(|sheet| {
            let lines = sheet.method.iter();
            lines
                .map(|row| (row.line, row.text.clone()))
                .collect::<Vec<_>>()
        })
    });
    let is_done = move |line: usize| {
        sheet.with(|sheet| {
            let is_it = |row: &&MethodRow| row.line == line;
            sheet
                .method
                .iter()
                .find(is_it)
                .is_some_and(|row| row.is_done)
        })
    };
    let steps = move || {
        let lines = lines.get().into_iter();
        lines
            .map(|(line, text)| {
                let step = element("button")
                    .class("step__button")
                    .attribute("type", "button")
                    .attribute_of("aria-pressed", move || Some(is_done(line).to_string()))
                    .on_touch(move || bench.turn_step(line))
                    .child(
                        element("span")
                            .class("weight__tick")
                            .attribute("aria-hidden", "true"),
                    )
                    .child(element("span").attribute("dir", "auto").text(text));
                element("li").class("step").child(step)
            })
            .collect()
    };
    element("div")
        .class("at-bench__method")
        .hidden_while(move || lines.with(Vec::is_empty))
        .child(element("h2").class("part__title").text("Method"))
        .child(element("ol").class("steps").children_of(steps))
}

/// The bake, once it is out of the oven.
fn write_down(bench: Bench) -> Element {
    let write = move || {
        let id = bench.write_trial_down();
        device::go(&format!("#/trials/{id}"));
    };
    element("div")
        .class("at-bench__done")
        .child(element("h2").class("part__title").text("When it is out"))
        .child(paragraph(
            "",
            "Written down as it was weighed, this bake can be held against the next one.",
        ))
        .child(button("button", "Write this bake down", write))
}

/// What tells that it is done, and what is to be minded.
fn done(bench: Bench) -> Element {
    let of = move || {
        bench.part(Part::Oven, |sheet| {
            let oven = &sheet.oven;
            let core = oven.core.as_ref().map(|core| format!("{core}. "));
            let signs = format!("{}{}", core.unwrap_or_default(), oven.signs);
            (signs, oven.cautions.clone())
        })
    };
    let look = move || {
        bench.bakes.with(|bakes| {
            let last = bakes.sheets.last();
            last.map_or_else(String::new, |sheet| sheet.look.clone())
        })
    };
    element("div")
        .class("at-bench__done")
        .child(element("h2").class("part__title").text("Done when"))
        .child(paragraph("", "").text_of(move || of().0))
        .child(paragraph("", "").text_of(look))
        .child(element("div").class("cautions").children_of(move || {
            let raw =
                "Raw flour and raw egg are not to be eaten, in batter or in dough.".to_owned();
            let all = of().1.into_iter().chain([raw]);
            all.map(|words| paragraph("cautions__sentence", words))
                .collect()
        }))
}
