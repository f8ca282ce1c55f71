//! The timers of the bench: those that run, the times that the method names, and one of one's own.

use super::common::{button, paragraph, text_field};
use crate::baking::quantity::show;
use crate::baking::recipe::minutes_typed;
use crate::baking::timer::LONGEST;
use crate::baking::worksheet::{TimeOffer, WeighInSheet};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The timers.
pub fn timers(bench: Bench, sheet: Memo<WeighInSheet>) -> Element {
    let ids = Memo::new(move |_| {
        bench.timers(|timers| {
            timers
                .timers
                .iter()
                .map(|timer| timer.id)
                .collect::<Vec<_>>()
        })
    });
    let running = element("ul")
        .class("timers")
        .attribute("aria-label", "Timers")
        .children_of(move || ids.get().into_iter().map(|id| timer(bench, id)).collect());
    let offers = Memo::new(move |_| sheet.with(|sheet| sheet.timers.clone()));
    let looked_for = Memo::new(move |_| look_at(bench));
    let offered = element("ul")
        .class("timers__offers")
        .attribute("aria-label", "Times to start a timer with")
        .children_of(move || {
            let all = looked_for.get().into_iter().chain(offers.get());
            all.map(|offer| start(bench, offer)).collect()
        });
    element("section")
        .class("part timers-part")
        .attribute("id", "/timers")
        .attribute("aria-labelledby", "timers-title")
        .children([
            element("h2")
                .class("part__title")
                .attribute("id", "timers-title")
                .text("Timers"),
            running,
            offered,
            own(bench),
            sound(),
        ])
}

/// The moment from which the cake is looked at, as heat flow has it.
fn look_at(bench: Bench) -> Option<TimeOffer> {
    bench.bakes.with(|bakes| {
        let sheet = bakes.sheets.last()?;
        let [early, ..] = sheet.minutes?;
        let minutes = (early * 0.95).floor().max(1.0);
        Some(TimeOffer {
            name: "Look at the cake".to_owned(),
            minutes,
            words: format!("Look at the cake: reckoned {}", sheet.time),
        })
    })
}

fn start(bench: Bench, offer: TimeOffer) -> Element {
    let TimeOffer {
        name,
        minutes,
        words,
    } = offer;
    let shown = format!("{name}, {} min", show::plain(minutes));
    let label = format!("Start a timer: {shown}; {words}");
    let start = button("button timers__start", "", move || {
        bench.start_timer(&name, minutes);
    })
    .attribute("aria-label", label)
    .child(element("span").text(shown))
    .child(element("span").class("timers__from").text(words));
    element("li").child(start)
}

fn timer(bench: Bench, id: u32) -> Element {
    let of = move |read: fn(&crate::baking::timer::Timer, u64) -> String| {
        let now = bench.clock();
        bench.timers(|timers| {
            let timer = timers.timers.iter().find(|timer| timer.id == id);
            timer.map(|timer| read(timer, now)).unwrap_or_default()
        })
    };
    let name = untrack(|| of(|timer, _| timer.name.clone()));
    let is_stopped = Memo::new(move |_| {
        bench.timers(|timers| {
            let timer = timers.timers.iter().find(|timer| timer.id == id);
            timer.is_some_and(|timer| timer.left.is_some())
        })
    });
    let label = name.clone();
    let turn = element("button")
        .class("button")
        .attribute("type", "button")
        .attribute_of("aria-label", move || {
            let what = if is_stopped.get() {
                "Go on with"
            } else {
                "Hold"
            };
            Some(format!("{what} {label}"))
        })
        .on_touch(move || bench.change_timer(id, |timer, now| timer.turn(now)))
        .text_of(move || if is_stopped.get() { "Go on" } else { "Hold" }.to_owned());
    let more = button("button", "1 minute more", move || {
        bench.change_timer(id, |timer, now| timer.add(1.0, now));
    });
    let stop = button("button", "Stop", move || bench.put_timer_away(id));
    element("li")
        .class("timer")
        .child(
            element("p")
                .class("timer__name")
                .text(name.clone())
                .text(" ")
                .child(
                    element("span")
                        .class("timer__recipe")
                        .text(untrack(|| of(|timer, _| timer.recipe.clone()))),
                ),
        )
        .child(
            element("p")
                .class("timer__left")
                .attribute("role", "timer")
                .attribute("aria-label", format!("{name}, time left"))
                .text_of(move || of(crate::baking::timer::Timer::shown)),
        )
        .child(
            element("div")
                .class("timer__buttons")
                .child(turn)
                .child(more.attribute("aria-label", format!("1 minute more for {name}")))
                .child(stop.attribute("aria-label", format!("Stop {name}"))),
        )
}

/// A timer of one's own.
fn own(bench: Bench) -> Element {
    let name = RwSignal::new(String::new());
    let minutes = RwSignal::new(String::new());
    let trouble = RwSignal::new(None::<String>);
    let begin = move || {
        let typed = minutes.get_untracked();
        match minutes_typed(&typed).filter(|[low, _]| *low <= LONGEST) {
            None => trouble.set(Some(format!(
                "\"{}\" is no time to wait for: write minutes, such as 10, or 1 h 15 min.",
                typed.trim()
            ))),
            Some([low, _]) => {
                let called = name.get_untracked();
                let called = match called.trim() {
                    "" => "Timer",
                    called => called,
                };
                if bench.start_timer(called, low) {
                    name.set(String::new());
                    minutes.set(String::new());
                    trouble.set(None);
                } else {
                    trouble.set(Some(
                        "There are twenty timers already: stop one of them first.".to_owned(),
                    ));
                }
            }
        }
    };
    element("form")
        .class("timers__own")
        .on("submit", move |event| {
            event.prevent_default();
            begin();
        })
        .children([
            text_field(
                "timer-name".into(),
                "text",
                || "Another timer: what for".into(),
                move || name.get(),
                || None,
                move |typed| name.set(typed),
            ),
            text_field(
                "timer-minutes".into(),
                "text",
                || "How long, in minutes".into(),
                move || minutes.get(),
                move || trouble.get(),
                move |typed| {
                    minutes.set(typed);
                    trouble.set(None);
                },
            ),
            element("button")
                .class("button")
                .attribute("type", "submit")
                .text("Start it"),
        ])
}

/// What can be heard of a timer.
fn sound() -> Element {
    let mark = crate::ui::device::marks("data-sound", "batterwright:kitchen");
    paragraph("hint", "").text_of(move || {
        match mark.get().as_str() {
            "ready" => "A timer rings aloud while this page is open, and shakes a phone that can. A locked phone may keep it quiet until it is woken: the time itself is never lost.",
            "cannot" => "This browser cannot ring aloud: the alarm is shown at the head of every page.",
            _ => "A timer rings aloud once you have touched this page; until then the alarm is only shown.",
        }
        .to_owned()
    })
}
