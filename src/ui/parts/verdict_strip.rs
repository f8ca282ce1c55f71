//! The verdicts at the head of the ticket, each a link to its part.

use crate::baking::finding::Severity;
use crate::baking::worksheet::{SheetLine, Status, Verdict, VerdictKind, Worksheet};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// One verdict as shown.
struct Tile {
    address: &'static str,
    of: &'static str,
    title: String,
    beside: String,
    look: &'static str,
    mark: &'static str,
}

/// The strip of verdicts.
pub fn verdict_strip(bench: Bench) -> Element {
    let shown = move || {
        for part in [Part::Rows, Part::Pans, Part::Findings] {
            bench.part(part, |_| ());
        }
        bench.part(Part::Leavening, |sheet| {
            tiles(sheet).into_iter().map(tile).collect()
        })
    };
    element("nav")
        .may_wait()
        .class("strip")
        .attribute("aria-label", "Verdicts")
        .child(element("ul").class("strip__list").children_of(shown))
}

fn tile(tile: Tile) -> Element {
    let mark = element("span")
        .class("tile__mark")
        .attribute("aria-hidden", "true")
        .text(tile.mark);
    let link = element("a")
        .class(format!("tile tile--{}", tile.look))
        .attribute("href", tile.address)
        .child(element("span").class("tile__of").text(tile.of))
        .child(
            element("span")
                .class("tile__title")
                .child(mark)
                .text(tile.title),
        )
        .child(element("span").class("tile__beside").text(tile.beside));
    element("li").class("strip__item").child(link)
}

fn tiles(sheet: &Worksheet) -> Vec<Tile> {
    let verdict = |address, of, verdict: &Verdict| Tile {
        address,
        of,
        title: verdict.title.clone(),
        beside: beside(verdict),
        look: look(verdict),
        mark: mark(verdict.kind),
    };
    let count = |is: fn(&&SheetLine) -> bool| sheet.lines.iter().filter(is).count();
    let weighed = count(|line| line.status == Status::Weighed);
    // "To taste" and the like have no weight and miss none.
    let unweighed =
        count(|line| line.flagged && matches!(line.status, Status::NotWeighed | Status::NotRead));
    let unsure = count(|line| line.flagged && line.status == Status::Weighed);
    let to_check = match unsure {
        0 => String::new(),
        _ => format!("{unsure} to check"),
    };
    let (title, beside, look, mark) = match (weighed, unweighed) {
        (0, 0) => ("Nothing yet".to_owned(), String::new(), "plain", ""),
        (_, 0) => (
            match weighed {
                1 => "1 line weighed".to_owned(),
                _ => format!("{weighed} lines weighed"),
            },
            to_check,
            "agreed",
            "=",
        ),
        _ => (
            format!("{unweighed} without a weight"),
            format!("{weighed} weighed"),
            "look",
            "?",
        ),
    };
    let weights = Tile {
        address: "#/weights",
        of: "Weights",
        title,
        beside,
        look,
        mark,
    };
    let pan = Tile {
        address: "#/pan",
        of: "Pan",
        title: sheet
            .pans
            .factor_shown
            .clone()
            .unwrap_or_else(|| "Another pan?".into()),
        beside: match sheet.pans.shelf.as_slice() {
            [] => sheet.pans.own.label.clone(),
            [one] => one.label.clone(),
            several => format!("{} kinds of pan", several.len()),
        },
        look: "plain",
        mark: "",
    };
    vec![
        verdict("#/acid", "Acid and soda", &sheet.leavening.verdict),
        verdict("#/gas", "Gas", &sheet.leavening.gas_verdict),
        weights,
        pan,
        findings(sheet),
    ]
}

fn findings(sheet: &Worksheet) -> Tile {
    let count = |severity| {
        sheet
            .findings
            .iter()
            .filter(|finding| finding.severity == severity)
            .count()
    };
    let (faults, looks) = (count(Severity::Fault), count(Severity::Look));
    let words = |count: usize, one: &str, many: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        _ => Some(format!("{count} {many}")),
    };
    let parts = [
        words(faults, "fault", "faults"),
        words(looks, "thing to look at", "things to look at"),
    ];
    let said: Vec<String> = parts.into_iter().flatten().collect();
    let (look, mark) = match (faults, looks) {
        (0, 0) if sheet.lines.is_empty() => ("plain", ""),
        (0, 0) => ("agreed", "="),
        (0, _) => ("look", "?"),
        _ => ("fault", "!"),
    };
    let first = sheet.findings.first();
    Tile {
        address: "#/findings",
        of: "Findings",
        title: match said.is_empty() {
            true if sheet.lines.is_empty() => "Nothing yet".into(),
            true => "Nothing to mend".into(),
            false => said.join(", "),
        },
        beside: first
            .map(|finding| finding.title.clone())
            .unwrap_or_default(),
        look,
        mark,
    }
}

/// How sure a verdict is, unless its title says so already.
pub fn beside(verdict: &Verdict) -> String {
    if verdict.sure == verdict.title {
        String::new()
    } else {
        verdict.sure.clone()
    }
}

/// The look of a verdict, a modifier of classes.
pub fn look(verdict: &Verdict) -> &'static str {
    match verdict.kind {
        VerdictKind::Short | VerdictKind::Spare if verdict.mild => "look",
        VerdictKind::Agreed => "agreed",
        VerdictKind::Short | VerdictKind::Spare => "fault",
        VerdictKind::TooClose => "look",
        VerdictKind::CannotTell => "plain",
    }
}

/// The mark of a verdict, so that colour never stands alone.
pub fn mark(kind: VerdictKind) -> &'static str {
    match kind {
        VerdictKind::Agreed => "=",
        VerdictKind::Short => "−",
        VerdictKind::Spare => "+",
        VerdictKind::TooClose => "±",
        VerdictKind::CannotTell => "?",
    }
}
