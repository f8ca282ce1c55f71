//! Who brings acid and who brings base, line by line, with bars.

use super::common::{line_link, paragraph};
use crate::baking::worksheet::AcidShare;
use crate::ui::dom::{Element, drawing, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// How many lines are shown; no recipe has more.
const LINES: usize = 300;

/// The table of acid and base.
pub fn acid_shares(bench: Bench) -> Element {
    let head = |class: &'static str, words: &'static str| {
        element("th")
            .attribute("scope", "col")
            .class(class)
            .text(words)
    };
    let bars = element("th").attribute("scope", "col").child(
        element("span")
            .class("unseen")
            .text("Drawn: acid to the left, base to the right"),
    );
    let heads = element("tr")
        .child(head("", "Ingredient"))
        .child(bars)
        .child(head("shares__head--figure", "Brings"));
    let rows = move || {
        bench.part(Part::Leavening, |sheet| {
            let shares = &sheet.leavening.shares;
            let largest = shares
                .iter()
                .map(|share| share.acid.mean.abs())
                .fold(0.0, f64::max);
            shares
                .iter()
                .take(LINES)
                .map(|share| row(bench, share, largest))
                .collect()
        })
    };
    let caption =
        "Acid and base by line, in milliequivalents (meq): one of acid answers one of soda";
    element("table")
        .class("shares")
        .child(element("caption").class("caption").text(caption))
        .child(element("thead").child(heads))
        .child(element("tbody").children_of(rows))
        .hidden_while(move || {
            bench.part(Part::Leavening, |sheet| sheet.leavening.shares.is_empty())
        })
}

fn row(bench: Bench, share: &AcidShare, largest: f64) -> Element {
    // Half of a bar is fifty units wide.
    let long = if largest > 0.0 && !share.unknown {
        share.acid.mean.abs() / largest * 50.0
    } else {
        0.0
    };
    let (from, class) = if share.acid.mean >= 0.0 {
        (50.0 - long, "bar__acid")
    } else {
        (50.0, "bar__base")
    };
    let name = element("details")
        .class("shares__details")
        .child(
            element("summary")
                .class("shares__summary")
                .text(share.name.clone()),
        )
        .child(paragraph("shares__how", share.how.clone()))
        .child(line_link(bench, share.line));
    let middle = drawing("line")
        .class("bar__middle")
        .figure("x1", 50.0)
        .figure("x2", 50.0)
        .figure("y2", 16.0);
    let bar = drawing("rect")
        .class(class)
        .figure("x", from)
        .figure("width", long)
        .figure("y", 3.0)
        .figure("height", 10.0);
    let drawn = drawing("svg")
        .class("bar")
        .attribute("viewBox", "0 0 100 16")
        .attribute("preserveAspectRatio", "none")
        .attribute("aria-hidden", "true")
        .child(middle)
        .child(bar);
    let figure = if share.unknown {
        "not known".to_owned()
    } else {
        share.shown.clone()
    };
    element("tr")
        .class("shares__row")
        .child(
            element("th")
                .class("shares__name")
                .attribute("scope", "row")
                .child(name),
        )
        .child(element("td").class("shares__bar").child(drawn))
        .child(element("td").class("shares__figure").text(figure))
}
