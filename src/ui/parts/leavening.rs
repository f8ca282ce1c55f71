//! Acid and gas: the verdicts, the two rules, who brings what, and what would mend it.

use super::acid_shares::acid_shares;
use super::batter_said::batter_said;
use super::common::{figure, folded, paragraph, section};
use super::findings::finding;
use super::gas_course::gas_course;
use super::gas_rule::gas_rule;
use super::ph_rule::ph_rule;
use super::verdict_strip::{beside, look, mark};
use crate::baking::finding;
use crate::baking::worksheet::{LeaveningSheet, Verdict};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

const NOT_RECKONED: &str = "The strength of the flour, enzymes, how the batter is mixed, how old the powder is. A crumb's pH is known to 0.4 at best, the gas made to a tenth, the gas held to a third. All of this advises a baker's judgement and a test bake, and replaces neither.";

/// The part on acid, soda and gas.
pub fn leavening(bench: Bench) -> Element {
    let place = |of: fn(&LeaveningSheet) -> Vec<Element>| {
        element("div")
            .children_of(move || bench.part(Part::Leavening, |sheet| of(&sheet.leavening)))
    };
    let acid = place(|sheet| {
        let rule = sheet.rule.as_ref().map(ph_rule);
        [verdict(&sheet.verdict)].into_iter().chain(rule).collect()
    });
    let gas = place(|sheet| {
        let rule = sheet.gas.as_ref().map(gas_rule);
        let course = sheet.gas.as_ref().and_then(gas_course);
        [verdict(&sheet.gas_verdict)]
            .into_iter()
            .chain(rule)
            .chain(course)
            .collect()
    });
    let figures = place(|sheet| {
        sheet
            .figures
            .iter()
            .map(|shown| figure(shown.label.clone(), shown.value.clone(), shown.how.clone()))
            .collect()
    });
    let mends = move || {
        bench.part(Part::Findings, |sheet| {
            let about = sheet
                .findings
                .iter()
                .filter(|finding| about_leavening(finding));
            // What the verdict has said already is not said again; what mends it stands right below.
            let said = [
                &sheet.leavening.verdict.title,
                &sheet.leavening.gas_verdict.title,
            ];
            about
                .map(|about| finding(bench, about, (!said.contains(&&about.title)).then_some("p")))
                .collect()
        })
    };
    section("/acid", "Acid and gas").children([
        acid,
        super::kind::kind(bench),
        element("div").class("findings").children_of(mends),
        super::leavening_plan::plan_panel(bench),
        acid_shares(bench),
        figures,
        element("h3")
            .class("part__sub")
            .attribute("id", "/gas")
            .text("Gas"),
        gas,
        batter_said(bench),
        super::mixing::mixing(bench),
        folded("What is not reckoned").child(paragraph("hint", NOT_RECKONED)),
    ])
}

/// Findings whose remedies belong beside the rules.
fn about_leavening(finding: &finding::Finding) -> bool {
    ["soda", "gas", "acid", "leaven"]
        .iter()
        .any(|word| finding.name.contains(word))
}

fn verdict(verdict: &Verdict) -> Element {
    let title = element("p")
        .class("verdict__title")
        .child(
            element("span")
                .class("verdict__mark")
                .attribute("aria-hidden", "true")
                .text(mark(verdict.kind)),
        )
        .child(element("strong").text(verdict.title.clone()))
        .text(" ")
        .child(element("span").class("verdict__sure").text(beside(verdict)));
    element("div")
        .class(format!("verdict verdict--{}", look(verdict)))
        .child(title)
        .child(paragraph("verdict__sentence", verdict.sentence.clone()))
}
