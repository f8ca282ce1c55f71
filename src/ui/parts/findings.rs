//! What is to be said of the formula, gravest first, each with its remedies.

use super::common::{button, line_links, paragraph, section};
use crate::baking::finding::{Finding, Remedy, Severity};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// How many are drawn; a long paste can bring thousands.
const MOST: usize = 100;

/// Every finding.
pub fn findings(bench: Bench) -> Element {
    let shown = move || {
        bench.part(Part::Findings, |sheet| {
            sheet
                .findings
                .iter()
                .take(MOST)
                .map(|found| finding(bench, found, Some("h3")))
                .collect()
        })
    };
    let words = move || match bench.part(Part::Findings, |sheet| sheet.findings.len()) {
        0 => "Nothing was found that wants mending.".to_owned(),
        all if all > MOST => format!("The first {MOST} of {all} are shown."),
        _ => String::new(),
    };
    section("/findings", "Findings")
        .child(element("div").class("findings").children_of(shown))
        .child(element("p").class("hint").text_of(words))
}

/// One finding; its title is an element of that name. Without one only what would mend it is shown.
pub fn finding(bench: Bench, finding: &Finding, title: Option<&'static str>) -> Element {
    let (look, word) = match finding.severity {
        Severity::Fault => ("fault", "Fault"),
        Severity::Look => ("look", "Look"),
        Severity::Note => ("note", "Note"),
    };
    let limit = (!finding.limit.is_empty())
        .then(|| paragraph("finding__why", format!("Limit: {}", finding.limit)));
    let more = element("details")
        .class("finding__more")
        .child(
            element("summary")
                .class("finding__summary")
                .text("Why, and by what limit"),
        )
        .child(paragraph("finding__why", finding.why))
        .children(limit);
    let head = title.map(|title| {
        element("div")
            .child(paragraph("finding__grave", word))
            .child(
                element(title)
                    .class("finding__title")
                    .text(finding.title.clone()),
            )
            .child(paragraph("finding__sentence", finding.sentence.clone()))
    });
    element("article")
        .class(format!("finding finding--{look}"))
        .children(head)
        .children(
            finding
                .remedies
                .iter()
                .map(|offered| remedy(bench, offered.clone())),
        )
        .child(more)
        .child(line_links(bench, &finding.lines))
}

fn remedy(bench: Bench, remedy: Remedy) -> Element {
    let sentence = paragraph("remedy__sentence", remedy.sentence.clone());
    let label = remedy.label.clone();
    let apply = button("button button--strong", label, move || bench.apply(&remedy));
    element("div").class("remedy").child(apply).child(sentence)
}
