//! The oven: what it is set to, how long each pan bakes in it, when the cake is done, and the bakes that were timed.

use super::bake_course::bake_course;
use super::common::{button, fact, folded, paragraph, section, text_field};
use crate::baking::worksheet::{BakeSheet, OvenSheet, TimedBake};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The field of the oven's setting.
const SETTING: &str = "oven-setting";

/// The part on the oven.
pub fn oven(bench: Bench) -> Element {
    let setting = element("div")
        .class("oven__setting")
        .text_of(move || of(bench, |oven| oven.setting.clone().unwrap_or_default()));
    let from = element("p").class("hint").text_of(move || {
        of(bench, |oven| {
            let scales = oven.scales.as_deref().unwrap_or_default();
            format!("{scales} {} {}", oven.setting_from, oven.oven)
        })
    });
    let typed = text_field(
        SETTING.into(),
        "text",
        || "Your oven set to (empty: as above)".into(),
        move || bench.chosen(|chosen| chosen.oven.setting.clone()),
        move || of(bench, |oven| oven.setting_trouble.clone()),
        move |text| {
            bench.change("the oven's setting".into(), true, |inputs| {
                inputs.choices.oven.setting = text;
            });
        },
    );
    // By themselves, so that a letter which moves the times draws no bake anew before they are there.
    let told: Memo<Told> =
        Memo::new(move |_| of(bench, |oven| (oven.cannot.clone(), oven.left_out.clone())));
    section("/oven", "Oven").children([
        setting,
        from,
        element("div").class("no-print").child(typed),
        working(bench),
        element("div")
            .class("bakes")
            .children_of(move || bakes(bench, told.get())),
        done(bench),
        timed(bench),
    ])
}

/// A piece of the oven's sheet, followed.
fn of<R>(bench: Bench, read: impl FnOnce(&OvenSheet) -> R) -> R {
    bench.part(Part::Oven, |sheet| read(&sheet.oven))
}

/// Why there are no times, and what they leave out.
type Told = (Option<String>, Option<String>);

/// The bakes, or why there are none.
fn bakes(bench: Bench, (cannot, left_out): Told) -> Vec<Element> {
    if let Some(why) = cannot {
        return vec![paragraph("hint", why)];
    }
    let left_out = left_out.map(|words| paragraph("hint", words));
    bench.bakes.with(|bakes| {
        let sheets = bakes.sheets.iter().map(|sheet| bake(bench, sheet));
        left_out.into_iter().chain(sheets).collect()
    })
}

/// What is said while times are worked out.
fn working(bench: Bench) -> Element {
    let words = move || match bench.bakes.with(|bakes| bakes.sheets.is_empty()) {
        true => "Working out how long it bakes.",
        false => "Working it out anew: the times below are of a moment ago.",
    };
    element("p")
        .class("hint bakes__working no-print")
        .text_of(move || words().to_owned())
        .hidden_while(move || !bench.baking.get())
}

fn bake(bench: Bench, bake: &BakeSheet) -> Element {
    let entry = bake.entry.clone();
    let time_it = move || {
        let pan = entry.clone();
        bench.change("a timed bake".into(), true, |inputs| {
            inputs.choices.oven.bakes.push(TimedBake {
                pan,
                ..TimedBake::default()
            });
        });
    };
    let got = element("details")
        .class("figure no-print")
        .child(
            element("summary").class("figure__line").child(
                element("span")
                    .class("figure__label")
                    .text("How that was got"),
            ),
        )
        .child(paragraph("figure__how", bake.got.clone()));
    element("div")
        .class("bake")
        .child(element("h3").class("part__sub").text(bake.pan.clone()))
        .child(element("div").class("bake__time").text(bake.time.clone()))
        .child(paragraph("bake__look", bake.look.clone()))
        .children(bake_course(bake))
        .child(
            element("ul").class("bake__said").children(
                bake.said
                    .iter()
                    .map(|said| element("li").text(said.clone())),
            ),
        )
        .child(got)
        .child(button(
            "button button--plain no-print",
            "Write down how long it took",
            time_it,
        ))
}

/// When it is done, and what is to be minded.
fn done(bench: Bench) -> Element {
    let facts = move || {
        of(bench, |oven| {
            let core = oven.core.clone().map(|core| fact("Core", core));
            core.into_iter()
                .chain([
                    fact("Signs", oven.signs),
                    fact("Recipe", oven.recipe_time.clone()),
                ])
                .collect()
        })
    };
    let cautions = move || {
        of(bench, |oven| {
            let said = oven.cautions.iter();
            said.map(|said| paragraph("hint", said.clone())).collect()
        })
    };
    element("div").class("bakes__done").children([
        element("h3").class("part__sub").text("When it is done"),
        element("dl").class("facts").children_of(facts),
        element("div").children_of(cautions),
    ])
}

/// The timed bakes, to be mended and removed.
fn timed(bench: Bench) -> Element {
    let count = Memo::new(move |_| bench.chosen(|chosen| chosen.oven.bakes.len()));
    let rows = move || (0..count.get()).map(|at| timed_bake(bench, at)).collect();
    folded("Bakes that you timed").child(
        element("div")
            .child(paragraph(
                "hint",
                "Each of them tells what your oven does, and times are worked out from them in place of the recipe's.",
            ))
            .child(element("div").children_of(rows)),
    )
}

fn timed_bake(bench: Bench, at: usize) -> Element {
    let of_it = move |read: fn(&TimedBake) -> &String| {
        bench
            .chosen(|chosen| chosen.oven.bakes.get(at).map(|bake| read(bake).clone()))
            .unwrap_or_default()
    };
    let change = move |change: &dyn Fn(&mut TimedBake)| {
        bench.change("a timed bake".into(), true, |inputs| {
            if let Some(bake) = inputs.choices.oven.bakes.get_mut(at) {
                change(bake);
            }
        });
    };
    let view = move |read: fn(&crate::baking::worksheet::BakeView) -> Option<String>| {
        of(bench, |oven| oven.bakes.get(at).and_then(read))
    };
    element("fieldset").class("bakes__timed").children([
        element("legend")
            .class("part__sub")
            .text_of(move || view(|bake| Some(bake.words.clone())).unwrap_or_default()),
        text_field(
            format!("timed-{at}-minutes"),
            "text",
            || "Minutes until it was done".into(),
            move || of_it(|bake| &bake.minutes),
            move || view(|bake| bake.trouble.clone()),
            move |text| change(&|bake| bake.minutes.clone_from(&text)),
        ),
        text_field(
            format!("timed-{at}-setting"),
            "text",
            || "Oven set to (empty: as above)".into(),
            move || of_it(|bake| &bake.setting),
            || None,
            move |text| change(&|bake| bake.setting.clone_from(&text)),
        ),
        button("button button--plain", "Remove this bake", move || {
            bench.change("a timed bake is removed".into(), false, |inputs| {
                if at < inputs.choices.oven.bakes.len() {
                    inputs.choices.oven.bakes.remove(at);
                }
            });
            // The button that was touched is gone.
            device::focus(SETTING);
        }),
    ])
}
